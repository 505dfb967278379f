/** tests/decide/asp.ts - the same puzzle as a logic program, counted by the answer-set solver clingo 5.8 (clingo-wasm).
 *  An oracle that shares no code with shared/decide but the puzzle's own functions: a model picks readings and one completion,
 *  and models are counted as projected on the readings. */
import { createRequire } from "node:module";
import type { Puzzle, PuzzleCrux, ReadIn, Stage, Successor, Tie } from "../../shared/decide/puzzle.ts";

/** Required, not imported: the package is CommonJS, and the test runner and Node each make other names of its exports. */
const { run } = createRequire(import.meta.url)("clingo-wasm") as typeof import("clingo-wasm");

/** Names come from tables: puzzles may name things in ways a program cannot. */
class Names {
  private readonly numbers = new Map<string, number>();
  of(name: string): number {
    const known = this.numbers.get(name) ?? this.numbers.size;
    this.numbers.set(name, known);
    return known;
  }
}

export interface Programs {
  /** Models: assignments, as far as ties go. */
  all: string;
  /** Models: assignments with a completion that breaks nothing. */
  holding: string;
  /** Models: assignments with a completion that breaks something. */
  broken: string;
}

export function programsOf(puzzle: Puzzle): Programs {
  const names = new Names();
  const cruxes = puzzle.cruxes.map((crux) => cruxRules(crux, names));
  const ties = [
    ...puzzle.requires.map((tie) => `:- ${taken(tie, names)}, not ${readIn(tie.of, names)}.`),
    ...puzzle.excludes.map((tie) => `:- ${taken(tie, names)}, ${readIn(tie.of, names)}.`),
  ];
  const among = [
    ...puzzle.requires,
    ...puzzle.excludes,
    ...puzzle.cruxes.flatMap(({ arisesWhen }) => arisesWhen),
  ].flatMap((one) => amongRules("of" in one ? one.of : one, names));
  const all = [...cruxes, ...ties, ...among, "#show r/2.", "#project r/2."].join("\n");
  const { clean, breaking } = stageRules(puzzle, names);
  return { all, holding: [all, ...clean].join("\n"), broken: [all, ...breaking].join("\n") };
}

function cruxRules({ id, readings, ruledOut, arisesWhen }: PuzzleCrux, names: Names): string {
  const crux = names.of(id);
  const allowed = readings.filter((reading) => !ruledOut.includes(reading));
  const body = arisesWhen.map((condition) => readIn(condition, names)).join(", ");
  const arises = `arises(${crux})${body ? ` :- ${body}` : ""}.`;
  if (allowed.length === 0) return `${arises}\n:- arises(${crux}).`;
  return `${arises}\n1 { ${allowed.map((one) => `r(${crux},${names.of(one)})`).join("; ")} } 1 :- arises(${crux}).`;
}

const taken = ({ crux, reading }: Tie, names: Names): string => `r(${names.of(crux)},${names.of(reading)})`;
const readIn = ({ crux, readings }: ReadIn, names: Names): string =>
  `among(${names.of(crux)},${names.of(JSON.stringify([...readings].sort()))})`;

function amongRules(condition: ReadIn, names: Names): string[] {
  // The guard keeps the atom known where no reading makes it true.
  const atom = readIn(condition, names);
  const crux = names.of(condition.crux);
  return [...condition.readings.map((reading) => `${atom} :- r(${crux},${names.of(reading)}).`), `${atom} :- #false.`];
}

function stageRules({ cruxes, start, stages }: Puzzle, names: Names): { clean: string[]; breaking: string[] } {
  const begin = `1 { ${[...new Set(start)].map((state) => `at(0,${names.of(state)})`).join("; ")} } 1.`;
  const clean = [begin];
  const breaking = [begin, ":- not broken."];
  let states = new Set(start);
  for (const [index, stage] of stages.entries()) {
    const next = new Set<string>();
    for (const state of states) {
      for (const readings of combinations(cruxes, stage)) {
        const body = [`at(${index},${names.of(state)})`, ...conditions(readings, names)].join(", ");
        const ways = stage.run(state, (crux) => readings.get(crux) ?? null);
        const on = ways.filter((way) => !bars(way)).map((way) => way.state);
        for (const one of on) next.add(one);
        const heads = [...new Set(on)].map((one) => `at(${index + 1},${names.of(one)})`);
        clean.push(heads.length === 0 ? `:- ${body}.` : `1 { ${heads.join("; ")} } 1 :- ${body}.`);
        const either = ways.some(bars) ? [...heads, "broken"] : heads;
        breaking.push(`1 { ${either.join("; ")} } 1 :- ${body}.`);
      }
    }
    states = next;
  }
  return { clean, breaking };
}

const bars = ({ hits }: Successor): boolean => hits.some((hit) => hit.bars);

/** Every way to read what the stage touches, each crux not arising among them where it may not. */
function combinations(cruxes: readonly PuzzleCrux[], stage: Stage): ReadonlyMap<string, string | null>[] {
  let some: Map<string, string | null>[] = [new Map()];
  for (const crux of cruxes.filter(({ id }) => stage.touches.includes(id))) {
    const readings: (string | null)[] = crux.readings.filter((reading) => !crux.ruledOut.includes(reading));
    if (crux.arisesWhen.length > 0) readings.push(null);
    some = some.flatMap((one) => readings.map((reading) => new Map([...one, [crux.id, reading]])));
  }
  return some;
}

function conditions(readings: ReadonlyMap<string, string | null>, names: Names): string[] {
  return [...readings].map(([crux, reading]) =>
    reading === null ? `not arises(${names.of(crux)})` : `r(${names.of(crux)},${names.of(reading)})`,
  );
}

/** How many models the program has, projected. Throws what the solver says when it refuses. */
export async function projectedModels(program: string): Promise<bigint> {
  const result = await run(program, 0, ["--project=project", "-q"]);
  if (result.Result === "ERROR") throw new Error(result.Error);
  return BigInt(result.Models.Number);
}
