/** shared/decide/assignments.ts - every way to read a puzzle, one after another.
 *  May import: siblings in shared/decide. Keeps rules N1-N3 (shared/decide/RULES.md). */
import type { Assignment, Puzzle, PuzzleCrux, ReadIn, Tie } from "./puzzle.ts";

/** Each assignment once: a crux that does not arise is given nothing, so it counts once. Ruled-out readings are left
 *  out; *require* and *exclude* are kept. The order is that of the cruxes, parents before what arises under them.
 *  Throws RangeError when cruxes arise in a circle, or a tie or condition names a crux that is not there. */
export function* assignments(puzzle: Puzzle): Generator<Assignment> {
  for (const assignment of extend(puzzle, parentsFirst(puzzle.cruxes), 0, new Map())) {
    if (tiesHold(puzzle, assignment)) yield assignment;
  }
}

export function tiesHold({ requires, excludes }: Puzzle, assignment: Assignment): boolean {
  const applies = (tie: Tie) => assignment.get(tie.crux) === tie.reading;
  return (
    requires.every((tie) => !applies(tie) || readsIn(assignment, tie.of)) &&
    excludes.every((tie) => !applies(tie) || !readsIn(assignment, tie.of))
  );
}

/** Whether the crux arises and is read as one of these. */
export function readsIn(assignment: Assignment, { crux, readings }: ReadIn): boolean {
  const reading = assignment.get(crux);
  return reading !== undefined && readings.includes(reading);
}

function* extend(
  puzzle: Puzzle,
  cruxes: readonly PuzzleCrux[],
  index: number,
  taken: Map<string, string>,
): Generator<Assignment> {
  const crux = cruxes[index];
  if (crux === undefined) {
    yield new Map(taken);
    return;
  }
  if (!crux.arisesWhen.every((condition) => readsIn(taken, condition))) {
    yield* extend(puzzle, cruxes, index + 1, taken);
    return;
  }
  for (const reading of crux.readings) {
    if (crux.ruledOut.includes(reading)) continue;
    taken.set(crux.id, reading);
    // What is excluded already stays excluded whatever follows; what is required may still come.
    if (!excluded(puzzle, taken)) yield* extend(puzzle, cruxes, index + 1, taken);
  }
  taken.delete(crux.id);
}

function excluded({ excludes }: Puzzle, taken: Assignment): boolean {
  return excludes.some((tie) => taken.get(tie.crux) === tie.reading && readsIn(taken, tie.of));
}

/** The cruxes with every one after those it arises under, otherwise in the order given. */
export function parentsFirst(cruxes: readonly PuzzleCrux[]): PuzzleCrux[] {
  const byId = new Map(cruxes.map((crux) => [crux.id, crux]));
  const placed = new Map<string, PuzzleCrux>();
  const place = (id: string, above: readonly string[]): void => {
    if (placed.has(id)) return;
    const crux = byId.get(id);
    if (!crux) throw new RangeError(`The crux ${above.at(-1)} arises under ${id}, which is not in the puzzle.`);
    if (above.includes(id)) {
      throw new RangeError(`Cruxes arise in a circle: ${[...above.slice(above.indexOf(id)), id].join(", ")}.`);
    }
    for (const condition of crux.arisesWhen) place(condition.crux, [...above, id]);
    placed.set(id, crux);
  };
  for (const crux of cruxes) place(crux.id, []);
  return [...placed.values()];
}
