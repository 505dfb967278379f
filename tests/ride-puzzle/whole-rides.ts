/** tests/ride-puzzle/whole-rides.ts - the oracle: every assignment ridden as a whole, and judged as a ride is. */
import { expect } from "vitest";
import type { Rows } from "../../schema/record.ts";
import { assignments } from "../../shared/decide/assignments.ts";
import type { Assignment, Puzzle } from "../../shared/decide/puzzle.ts";
import { walk } from "../../shared/decide/walk.ts";
import { exercisePuzzle, type WeighedExercise, type WeighOptions } from "../../shared/ride/puzzle/index.ts";
import { rideWithContext } from "../../shared/ride/ride-exercise.ts";
import { judgeRide, listedBreaches } from "../../shared/ride/rules/judge.ts";
import { RIDE_RULES, ruleTable } from "../../shared/ride/rules/table.ts";

export interface Whole {
  /** The rules that bar and are broken, by element. */
  broken: string[];
  /** The rules that bar and cannot be told and are not broken there, by element. */
  open: string[];
}

/** What the whole ride of one role says under one way of reading. */
export function wholeRide(
  rows: Rows,
  exercise: string,
  role: string | null,
  assignment: Assignment,
  options: WeighOptions = {},
): Whole {
  const { way, variant } = options;
  const { ridden, context } = rideWithContext(rows, exercise, { choice: assignment, way, variant, role });
  const set = ruleTable((rows.rules ?? []).map(({ value }) => value));
  const bars = new Set(set.filter(({ severity }) => severity === "bars").map(({ code }) => code));
  const waived = new Set((rows.waivers ?? []).map(({ value }) => `${value.rule} ${value.element}`));
  const place = (code: string, stage: number): string[] => {
    const { element = "", source = "" } = ridden.stages[stage] ?? {};
    const isWaived = [element, source].some((one) => waived.has(`${code} ${one}`));
    return isWaived ? [] : [`${code} ${element}`];
  };
  const judged = judgeRide(
    ridden,
    context,
    RIDE_RULES.filter(({ code }) => bars.has(code)),
  );
  const broken = judged.flatMap((one) =>
    listedBreaches(one)
      .filter(({ verdict }) => verdict === "broken")
      .flatMap(({ stage }) => place(one.rule.code, stage)),
  );
  const open = judged.flatMap(({ rule, judgements }) =>
    judgements.filter(({ verdict }) => verdict === "cannot tell").flatMap(({ stage }) => place(rule.code, stage)),
  );
  return { broken: distinct(broken), open: distinct(open.filter((one) => !broken.includes(one))) };
}

function rolesIn(rows: Rows, exercise: string): (string | null)[] {
  const elements = (rows.elements ?? []).map(({ value }) => value).filter((one) => one.exercise === exercise);
  const roles = [...new Set(elements.map(({ role }) => role).filter((role) => role !== ""))];
  return roles.length === 0 ? [null] : roles;
}

export interface Compared {
  assignments: number;
  holding: number;
  surely: number;
}

/** Of one exercise more are not ridden as wholes: then every so-manieth is. */
const MOST_RIDDEN = 64;

/** Every assignment, walked and ridden: the same rules are broken at the same elements, and the same cannot be told; it
 *  holds where none is broken in any exercise, and surely where moreover all can be told. */
export function expectAsRidden(rows: Rows, exercises: readonly string[], options: WeighOptions = {}): Compared {
  const weighed = exercisePuzzle(rows, exercises, { ...options, completions: false });
  const compared: Compared = { assignments: 0, holding: 0, surely: 0 };
  const all = [...assignments(weighed.puzzle)];
  const every = Math.ceil(all.length / MOST_RIDDEN);
  for (const assignment of all.filter((_, index) => index % every === 0)) {
    const rides = exercises.flatMap((exercise) =>
      rolesIn(rows, exercise).map((role) => wholeRide(rows, exercise, role, assignment, options)),
    );
    const broken = distinct(rides.flatMap((one) => one.broken));
    const open = distinct(rides.flatMap((one) => one.open));
    const [holds, surely] = [broken.length === 0, broken.length === 0 && open.length === 0];
    const { holds: walkHolds, surelyHolds } = walk(weighed.puzzle, assignment);
    const told = titled(weighed, assignment);
    const hits = allHits(weighed.puzzle, assignment);
    expect({ ...told, ...placed(hits) }).toEqual({ ...told, ...placed({ broken, open }) });
    expect({ ...told, holds: walkHolds, surely: surelyHolds }).toEqual({ ...told, holds, surely });
    compared.assignments += 1;
    if (holds) compared.holding += 1;
    if (surely) compared.surely += 1;
  }
  return compared;
}

/** Without completions there is one way through each stage; what cannot be told is a second one to the same state. */
function allHits({ start, stages }: Puzzle, assignment: Assignment): Whole {
  let state = start[0] ?? "";
  const [broken, open]: [string[], string[]] = [[], []];
  for (const { id, run } of stages) {
    const ways = run(state, (crux) => assignment.get(crux) ?? null);
    const [surely, perhaps] = ways;
    expect(ways.length).toBeLessThan(3);
    expect(perhaps?.state ?? surely?.state).toBe(surely?.state);
    // Where several roles ride an element, all but the first have a stage with the role in its name.
    const [element = ""] = id.split(" ");
    broken.push(...(surely?.hits ?? []).map(({ rule }) => `${rule} ${element}`));
    const more = (perhaps?.hits ?? []).slice(surely?.hits.length ?? 0);
    open.push(...more.map(({ rule }) => `${rule.replace(/\?$/, "")} ${element}`));
    state = surely?.state ?? "";
  }
  return { broken: distinct(broken), open: distinct(open) };
}

/** A demand to the end of an exercise is told at its last element, whether or not that is ridden: the ride tells it at
 *  the last that is. Where is not compared; nor then whether what is broken somewhere could not be told elsewhere. */
function placed({ broken, open }: Whole): Whole {
  const without = (hits: readonly string[]): string[] =>
    distinct(hits.map((hit) => (/^(same-hand|back-where-begun) /.test(hit) ? hit.replace(/ .*/, "") : hit)));
  const there = without(broken);
  return { broken: there, open: without(open).filter((hit) => !there.includes(hit)) };
}

const distinct = (list: readonly string[]): string[] => [...new Set(list)].sort();

function titled({ cruxes }: WeighedExercise, assignment: Assignment): Record<string, string> {
  return Object.fromEntries(
    [...assignment].map(([id, reading]) => {
      const crux = cruxes.find((one) => one.id === id);
      return [crux?.title ?? id, crux?.readings.find((one) => one.id === reading)?.title ?? reading];
    }),
  );
}
