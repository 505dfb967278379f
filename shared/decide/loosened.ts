/** shared/decide/loosened.ts - a puzzle that is easier to count and in which at least as much holds.
 *  May import: siblings in shared/decide. From some stage on a crux is taken as not known: the stage may go any way that one
 *  of its readings allows. An assignment that holds still holds; one that surely holds in the loosened puzzle surely
 *  holds. So its counts bound those of the puzzle from above and from below. */
import type { IndexedPuzzle } from "./indexed.ts";
import { indexed } from "./indexed.ts";
import { layersOf } from "./layers.ts";
import type { Puzzle, PuzzleCrux, Stage, Successor } from "./puzzle.ts";

/** Loosened until no more than `most` combinations come together; null when that cannot be had. */
export function loosenedToFit(puzzle: Puzzle, most: number): IndexedPuzzle | null {
  let loose = puzzle;
  for (;;) {
    const index = indexed(loose);
    const layered = layersOf(index, index.values, most);
    if (!("tooMany" in layered)) return index;
    const { tooMany, stage } = layered;
    const ahead = tooMany
      .map((own) => ({
        own,
        touches: index.touches.flatMap((some, at) => (some.includes(own) && at >= stage ? [at] : [])),
      }))
      .filter(({ touches }) => touches.length > 0)
      .sort((a, b) => (b.touches.at(-1) as number) - (a.touches.at(-1) as number));
    const [longest] = ahead;
    const crux = longest && loose.cruxes[longest.own];
    if (!longest || !crux) return null;
    // The crux may be in play only because this very stage touches it; a later one is let go first.
    const [first, second] = longest.touches;
    loose = loosened(loose, crux, second !== undefined && first === stage ? second : (first as number));
  }
}

/** The crux is not known in this stage (counted from 0) and all after it. */
export function loosened(puzzle: Puzzle, crux: PuzzleCrux, from: number): Puzzle {
  const readings: (string | null)[] = crux.readings.filter((reading) => !crux.ruledOut.includes(reading));
  if (crux.arisesWhen.length > 0) readings.push(null);
  const stages = puzzle.stages.map((stage, index): Stage => {
    if (index < from || !stage.touches.includes(crux.id)) return stage;
    const run: Stage["run"] = (state, readingOf, without) =>
      distinct(
        readings.flatMap((reading) =>
          stage.run(state, (other) => (other === crux.id ? reading : readingOf(other)), without),
        ),
      );
    return { ...stage, touches: stage.touches.filter((other) => other !== crux.id), run };
  });
  return { ...puzzle, stages };
}

function distinct(ways: readonly Successor[]): Successor[] {
  const barring = ({ hits }: Successor) => hits.filter(({ bars }) => bars).map(({ rule }) => rule);
  return [...new Map(ways.map((way) => [JSON.stringify([way.state, barring(way)]), way])).values()];
}
