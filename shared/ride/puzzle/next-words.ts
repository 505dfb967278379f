/** shared/ride/puzzle/next-words.ts - why something is worth settling, as a colleague says it.
 *  May import: shared/decide, siblings. Keeps rule P13 (shared/ride/puzzle/RULES.md). */
import type { Puzzle, Ranked } from "../../decide/index.ts";
import type { Open } from "./open-questions.ts";
import { stageWords } from "./told-member.ts";
import type { WeighedExercise, WeighedStage } from "./weighed.ts";

/** `all`: how many ways hold. “Ask the translator about ‘…’: either answer leaves 2 of the 4 ways, and one way to ride steps 4 to 7; it settles ‘…’ too.” */
export function nextSentence(
  weighed: WeighedExercise,
  puzzle: Puzzle,
  open: Open,
  ranked: Ranked,
  all: bigint,
): string {
  const effect = effectWords(weighed, puzzle, open, ranked, all);
  return `${headWords(open)}: ${effect}${alsoWords(weighed, ranked)}.`;
}

function headWords({ kind, means, to, title }: Open): string {
  const about = `‘${title.replace(/[?.]+$/, "")}’`;
  switch (means) {
    case "ask":
      if (kind === "crux") return `Ask about ${about}`;
      return to === "" ? `Ask ${about}` : `Ask ${to} about ${about}`;
    case "picture":
      return `Look at the pictures and the witnesses for ${about}`;
    case "foot":
      return `Try ${about} on foot`;
    case "mounted":
      return `Try ${about} mounted`;
  }
}

function effectWords(
  weighed: WeighedExercise,
  puzzle: Puzzle,
  { candidate }: Open,
  ranked: Ranked,
  all: bigint,
): string {
  const { answers } = ranked;
  const left = answers.map(({ holding }) => holding);
  const [first] = left;
  const alike = first !== undefined && left.every((one) => one === first);
  const each = answers.length === 2 ? "either answer" : "any answer";
  const asked = new Set(candidate.answers.flatMap(({ allows }) => allows.map(({ crux }) => crux)));
  const steps = stagesOf(weighed, puzzle, asked);
  const within = stepWords(weighed, steps);
  if (alike && settledWithin(puzzle, steps, asked, ranked))
    return `${each} leaves ${waysWords(first, all)}, and one way to ride ${within}`;
  if (alike) return `${each} leaves ${waysWords(first, all)}`;
  const none = answers.filter(({ holding }) => holding === 0n);
  const some = answers.filter(({ holding }) => holding > 0n);
  const told = some.map(({ label, holding }) => `‘${label}’ leaves ${waysWords(holding, all)}`);
  return listed([...told, ...(none.length === 0 ? [] : [`${listed(none.map(({ label }) => `‘${label}’`))} none`])]);
}

function waysWords(ways: bigint, all: bigint): string {
  if (ways === all) return all === 2n ? "both ways" : `all ${all} ways`;
  return `${ways === 1n ? "one" : ways} of the ${all} ways`;
}

/** What every answer that leaves anything also decides, whichever way. */
function alsoWords({ cruxes }: WeighedExercise, { answers }: Ranked): string {
  const some = answers.filter(({ holding }) => holding > 0n);
  const decided = some.map(({ decides, lapses }) => new Set([...decides.map(({ crux }) => crux), ...lapses]));
  const [first = new Set<string>(), ...rest] = decided;
  const always = [...first].filter((crux) => rest.every((other) => other.has(crux)));
  if (always.length === 0 || some.length < 2) return "";
  const titles = always.map((id) => `‘${cruxes.find((one) => one.id === id)?.title ?? ""}’`);
  return `; it settles ${listed(titles)} too`;
}

/** Stages that the cruxes touch, from the first to the last. */
function stagesOf({ stages }: WeighedExercise, puzzle: Puzzle, asked: ReadonlySet<string>): WeighedStage[] {
  const touched = puzzle.stages.flatMap(({ touches }, index) =>
    touches.some((crux) => asked.has(crux)) ? [index] : [],
  );
  const [from, to] = [touched[0], touched.at(-1)];
  if (from === undefined || to === undefined) return [];
  const ids = new Set(puzzle.stages.slice(from, to + 1).map(({ id }) => id));
  return stages.filter(({ id }) => ids.has(id));
}

/** Whether every crux that bears on these stages is settled by any of the answers. */
function settledWithin(
  puzzle: Puzzle,
  steps: readonly WeighedStage[],
  asked: ReadonlySet<string>,
  { answers }: Ranked,
): boolean {
  const ids = new Set(steps.map(({ id }) => id));
  const bearing = new Set(puzzle.stages.filter(({ id }) => ids.has(id)).flatMap(({ touches }) => touches));
  if (asked.size !== 1 || steps.length === 0) return false;
  return [...bearing].every(
    (crux) =>
      asked.has(crux) ||
      isSettled(puzzle, crux) ||
      answers.every(({ decides, lapses }) => lapses.includes(crux) || decides.some((one) => one.crux === crux)),
  );
}

function isSettled({ cruxes }: Puzzle, id: string): boolean {
  const crux = cruxes.find((one) => one.id === id);
  return crux === undefined || crux.readings.length - crux.ruledOut.length < 2;
}

/** "step 4", "steps 4 to 7"; "it" where no step has a number. */
function stepWords(weighed: WeighedExercise, steps: readonly WeighedStage[]): string {
  const numbered = steps.filter(({ number }) => number !== null);
  const [first, last] = [numbered[0], numbered.at(-1)];
  if (first === undefined || last === undefined) return "it";
  if (first === last) return stageWords(weighed, first);
  if (first.exercise !== last.exercise) return `from ${stageWords(weighed, first)} to ${stageWords(weighed, last)}`;
  return stageWords(weighed, last).replace(/^step (\d+)/, `steps ${first.number} to $1`);
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}
