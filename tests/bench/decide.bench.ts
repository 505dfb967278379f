/** Decide: the count at full size, how it grows with stages and with cruxes in play, what it is to brute force and to an
 *  answer-set solver on the same puzzles, and why-not and what-next at full size. Nothing is drawn: the puzzles are the same
 *  every run. Each answer is checked before it is timed. */
import { performance } from "node:perf_hooks";
import { clashes, count, countByBruteForce, cruxCandidate, type Puzzle, whatNext } from "../../shared/decide/index.ts";
import { programsOf, projectedModels } from "../decide/asp.ts";
import { type LongPuzzle, longPuzzle } from "../decide/long-puzzle.ts";
import { quantile, type Report } from "./harness.ts";

const FULL: LongPuzzle = { cruxes: 60, readings: 3, stages: 200, inPlay: 8, states: 4, barring: 75, silentOneIn: 0 };

function counted(puzzle: Puzzle) {
  const found = count(puzzle);
  if (!found.exact) throw new Error(found.why);
  if (found.holding === 0n) throw new Error("Something should hold.");
  return found;
}

/** What was found, what it took of the processor alone (which a busy machine does not change much), and how much memory
 *  the process holds, in megabytes. */
function noteOf(puzzle: Puzzle): string {
  counted(puzzle);
  const before = process.cpuUsage();
  const { holding, peaks, excludedPairs } = counted(puzzle);
  const processor = Math.round(process.cpuUsage(before).user / 1000);
  const memory = Math.round(process.memoryUsage().rss / 1e6);
  return `${holding} hold, ${excludedPairs.length} pairs, in play ${peaks.inPlay}, states ${peaks.states}, ${processor} ms of processor, ${memory} MB in all`;
}

export default async function decideBench(report: Report): Promise<void> {
  const full = longPuzzle(FULL);
  const note = noteOf(full);
  await report.bench(
    "decide: 60 cruxes of 3, 200 stages, 8 in play, 4 states (target 1 s)",
    { runs: 9, warmUp: 2, note },
    () => counted(full),
  );
  const silent = longPuzzle({ ...FULL, silentOneIn: 5 });
  await report.bench(
    "decide: the same with silence, so with sets of states",
    { runs: 5, warmUp: 1, note: noteOf(silent) },
    () => counted(silent),
  );
  for (const stages of [100, 200, 400, 800]) {
    const puzzle = longPuzzle({ ...FULL, stages, barring: 15_000 / stages });
    await report.bench(`decide: ${stages} stages`, { runs: 5, warmUp: 1, note: noteOf(puzzle) }, () => counted(puzzle));
  }
  // More cruxes make longer numbers too.
  const longer = longPuzzle({ ...FULL, stages: 400, cruxes: 120, barring: 38 });
  await report.bench("decide: 400 stages, 120 cruxes", { runs: 5, warmUp: 1, note: noteOf(longer) }, () =>
    counted(longer),
  );
  for (const inPlay of [5, 6, 7, 8, 9]) {
    const puzzle = longPuzzle({ ...FULL, inPlay });
    await report.bench(`decide: ${inPlay} in play`, { runs: 5, warmUp: 1, note: noteOf(puzzle) }, () =>
      counted(puzzle),
    );
  }
  await askBench(report, full);
  await oracleBench(report);
}

async function askBench(report: Report, full: Puzzle): Promise<void> {
  // A crux of the middle, one reading of which some rule bars at every stage that touches it.
  const target = { crux: "k30", reading: "r0" };
  const aimed: Puzzle = {
    ...full,
    stages: full.stages.map((stage) =>
      stage.touches.includes(target.crux)
        ? {
            ...stage,
            run: (state, readingOf) =>
              stage.run(state, readingOf).map((way) => ({
                ...way,
                hits: [...way.hits, { rule: "never so", bars: readingOf(target.crux) === target.reading }],
              })),
          }
        : stage,
    ),
  };
  const found = clashes(aimed, target);
  if (found.clashes.length === 0) throw new Error("A clash was expected.");
  const shown = `${found.clashes.length} clashes, ${found.searched} questions, ${found.complete ? "all" : "not all"} found`;
  await report.bench("decide: why not, at full size", { runs: 2, warmUp: 0, note: shown }, () =>
    clashes(aimed, target),
  );
  const candidates = full.cruxes.map((crux) => cruxCandidate(crux, 1));
  await report.bench("decide: what next, 60 cruxes", { runs: 3, warmUp: 1 }, () => whatNext(full, candidates));
}

/** The same puzzles, three ways, in one run. */
async function oracleBench(report: Report): Promise<void> {
  for (const [cruxes, inPlay] of [
    [6, 3],
    [8, 4],
    [10, 4],
    [10, 8],
  ] as const) {
    const puzzle = longPuzzle({ cruxes, readings: 3, stages: 24, inPlay, states: 4, barring: 75, silentOneIn: 6 });
    const own = counted(puzzle);
    const program = programsOf(puzzle).holding;
    if (countByBruteForce(puzzle).holding !== own.holding) throw new Error("Brute force counts otherwise.");
    if ((await projectedModels(program)) !== own.holding) throw new Error("The answer-set solver counts otherwise.");
    const times = async (work: () => unknown): Promise<number[]> => {
      const taken: number[] = [];
      for (let run = 0; run < 3; run += 1) {
        const start = performance.now();
        await work();
        taken.push(performance.now() - start);
      }
      return taken;
    };
    const blocks = await times(() => counted(puzzle));
    const brute = await times(() => countByBruteForce(puzzle));
    const solver = await times(() => projectedModels(program));
    const ratio = (other: readonly number[]) => `${(quantile(other, 0.5) / quantile(blocks, 0.5)).toFixed(1)} times`;
    const size = `${3 ** cruxes} assignments, ${inPlay} in play, ${own.holding} hold`;
    report.samples(`decide: over blocks, ${size}`, blocks);
    report.samples(`decide: brute force, ${size}`, brute, ratio(brute));
    report.samples(`decide: answer-set solver, ${size}`, solver, `${ratio(solver)}; its total only`);
  }
}
