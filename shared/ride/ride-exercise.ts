/** shared/ride/ride-exercise.ts - an exercise as it is ridden: its stages, path, hands and lanes, and what is found in it.
 *  May import: schema types, shared/drill, shared/ground, shared/hands, siblings in shared/ride and its rules. Keeps rules
 *  R1-R30 (shared/ride/RULES.md). Pure: the same rows give the same ride, to the byte. */
import type { DrillElement } from "../../schema/drill.ts";
import type { Kind, Rows } from "../../schema/record.ts";
import { type CompiledExercise, compileExercise } from "../drill/compile.ts";
import { compileAgain } from "../drill/compile-again.ts";
import { newBearing } from "../drill/crux-bearing.ts";
import { type ExerciseRows, exerciseRows } from "../drill/exercise-rows.ts";
import type { Manege } from "../ground/figures/figure.ts";
import { rideFigure } from "../ground/figures/ride-figure.ts";
import type { HorseGait } from "../ground/gaits.ts";
import type { Pose } from "../ground/plane.ts";
import { USUAL } from "../ground/usual.ts";
import { exactly } from "../hands/known.ts";
import type { ControlState } from "../hands/state.ts";
import { chooseReadings, unsettledWords } from "./choose-readings.ts";
import { cueOf } from "./come-to-cue.ts";
import { Course, type Setting } from "./course.ts";
import { stationNamed } from "./event-meant.ts";
import { askOf, readRide } from "./figure-ask.ts";
import { contextIn } from "./follow.ts";
import { type FoundGround, groundOf } from "./ground-of.ts";
import { isRide } from "./horse-order.ts";
import { kitGaits } from "./kit-gaits.ts";
import { lanesOf } from "./lanes.ts";
import { mirrorRidden } from "./mirror-ridden.ts";
import { mirrorState } from "./mirror-state.ts";
import { speaksOfSides } from "./mirror-words.ts";
import { rideOneStage } from "./one-stage.ts";
import { type Beginning, beginnings, poseAtStation, usualStart } from "./places.ts";
import { planStages } from "./plan.ts";
import type { PlannedStage } from "./planned.ts";
import type { Ridden, RiddenPiece, RiddenStage } from "./ridden.ts";
import type { RiddenAct, RideContext, RideOptions } from "./ride-context.ts";
import { SECONDS_AN_ACT } from "./ride-stage.ts";
import { ridesIn } from "./roles.ts";
import { NOTHING_CARRIED_IN } from "./rules/carried-in.ts";
import { holdsAtFirst } from "./rules/holds-in-force.ts";
import { findingsOf } from "./rules/index.ts";
import type { CompiledPart, PartOf } from "./sources.ts";
import { threatsOf } from "./threats-of.ts";

/** The ride with what is found in it. `rows` as a bundle of the exercise gives them, with those of any exercise that is
 *  done again. Throws RangeError when the exercise, the variant, the kit or a chosen reading is not among them. */
export function rideExercise(rows: Rows, exerciseId: string, options: RideOptions = {}): Ridden {
  return withFindings(rideWithContext(rows, exerciseId, options));
}

/** What is found in a ride, and the whole mirrored where that was asked for. */
export function withFindings({ ridden, context }: RideWithContext): Ridden {
  const found = { ...ridden, findings: findingsOf(ridden, context) };
  return context.options.rein === "mirror the world" ? mirrorRidden(found) : found;
}

export interface RideWithContext {
  ridden: Ridden;
  context: RideContext;
}

/** The ride as the rules see it, before the world is mirrored, and without findings. `rows`: those of `allRows` laid out for
 *  this exercise; `before`: it compiled with these, under the same way and variant; where the caller has them already. */
export function rideWithContext(
  allRows: Rows,
  exerciseId: string,
  options: RideOptions = {},
  rows: ExerciseRows = exerciseRows(allRows, exerciseId),
  before: CompiledExercise | null = null,
): RideWithContext {
  const variant = options.variant ?? null;
  const way = options.way ?? (variant === null ? undefined : rows.find("variants", variant)?.way) ?? "mounted";
  const { choice, supplied } = chooseReadings(rows, options.choice ?? [], way, variant, options.preferred);
  const settled = { choice, way, variant };
  const compiled =
    before === null ? compileExercise(allRows, exerciseId, settled, rows) : compileAgain(before, allRows, settled);
  const { base } = compiled;
  const role = options.role ?? null;
  const part = partIn(compiled, role);
  const partOf = partsOf(allRows, exerciseId, part, (id) =>
    partIn(compileExercise(allRows, id, { choice, way }, exerciseRows(allRows, id, rows)), role),
  );

  const found: FoundGround = options.ground
    ? { ...options.ground, supplied: false, notes: [] }
    : groundOf({ ...base, element: null, bearing: newBearing() }, rows.exercise.ground);
  const manege: Manege = { ground: found.ground, usual: { ...USUAL, ...options.usual } };
  const horse = horseOf(rows, options);
  const { elsewhere } = options;
  const setting: Setting = { manege, horse, ...(elsewhere && { elsewhere }) };
  const plans = planStages(part, partOf, found.ground, options.rein === "on the other rein");
  const state = options.rein === "on the other rein" ? mirrorState(compiled.begins) : compiled.begins;
  const begin = beginning(manege, plans, state);
  const course = new Course(begin.pose);
  const stages = rideAll(setting, course, plans, state);
  const timed = course.timed(SECONDS_AN_ACT);
  const pieces = course.drafted.map((drafted) => drafted.ridden);
  const threats = stages.flatMap((stage, index) => threatsOf(plans[index] as PlannedStage, index, stage));
  const { drill } = compiled;
  const ridden: Ridden = {
    exercise: exerciseId,
    title: drill.exercise.title,
    way,
    ground: found.ground,
    groundName: found.name,
    groundSupplied: found.supplied,
    stages,
    timed,
    pieces,
    metres: timed.path.lengths.at(-1) ?? 0,
    strides: stridesOf(pieces, timed.path.pieces),
    lanes: lanesOf({ stages, plans, drafted: course.drafted, times: timed.times, threats, names: base.names }),
    threats,
    findings: [],
    treated: drill.treated.sentence.startsWith("The whole") ? "" : drill.treated.sentence,
    supplied: [
      ...new Set([
        ...unsettledWords(drill, supplied),
        ...found.notes,
        ...begin.notes,
        ...stages.flatMap(({ notes }) => notes),
      ]),
    ],
    quoted: quotedIn(allRows, plans),
  };
  const context = contextFor({ allRows, exerciseId, options, compiled, supplied, plans, partOf, base, choice });
  return { ridden, context };
}

/** Every gait that was measured of the horse; what is measured today goes before what its kit says. */
function horseOf(rows: ExerciseRows, { kit = null, gaitSpeeds = [] }: RideOptions): readonly HorseGait[] {
  if (kit === null) return gaitSpeeds;
  const row = rows.find("kits", kit);
  if (row === undefined) throw new RangeError(`The kit ${kit} is not among the rows that were given.`);
  return [...gaitSpeeds, ...kitGaits(row)];
}

function partIn({ followed, base }: CompiledExercise, role: string | null): CompiledPart {
  const elements = followed.map((one) => one.compiled);
  return { elements: elements.filter(({ drill }) => ridesIn(drill.role, role)), base, role };
}

/** Exercises that are done again, each compiled once. */
function partsOf(rows: Rows, home: string, part: CompiledPart, compile: (exercise: string) => CompiledPart): PartOf {
  const parts = new Map<string, CompiledPart>([[home, part]]);
  return (exercise) => {
    const held = parts.get(exercise);
    if (held) return held;
    if (!rows.exercises?.some(({ value }) => value.id === exercise)) return null;
    const made = compile(exercise);
    parts.set(exercise, made);
    return made;
  };
}

/** Where the first figure sets out, where it says; else the middle of the foot. `state` is that before the ride. */
export function beginning(
  manege: Manege,
  plans: readonly Pick<PlannedStage, "acts" | "values" | "mirrored">[],
  state: ControlState,
): { pose: Pose; notes: string[] } {
  const start = usualStart(manege);
  const plan = plans.find(({ acts }) => acts.some(isRide));
  const first = plan?.acts.find(isRide);
  const ride = first === undefined ? null : readRide(first, manege.ground, start, state);
  const cue = plan === undefined ? null : cueOf(plan);
  const station = ride?.from ?? (cue && plan ? stationNamed(cue, manege.ground, plan.mirrored) : null);
  if (ride && station) return { pose: poseAtStation(manege, station, ride, true), notes: [] };
  const tried = beginnings(manege, ride);
  const fits =
    ride === null ? undefined : tried.find(({ pose }) => rideFigure(manege, pose, askOf(ride, manege.ground)).ok);
  const begin = fits ?? (tried[0] as Beginning);
  const note = `The text does not say where it begins: ${begin.where} is supplied.`;
  return { pose: begin.pose, notes: plans.length === 0 ? [] : [note] };
}

function rideAll(setting: Setting, course: Course, plans: readonly PlannedStage[], start: ControlState): RiddenStage[] {
  let state = start;
  return plans.map((plan, index) => {
    const stage = rideOneStage(setting, course, plan, index, state);
    state = stage.after;
    return stage;
  });
}

function stridesOf(pieces: readonly RiddenPiece[], path: Ridden["timed"]["path"]["pieces"]): number | null {
  let strides = 0;
  for (const [index, { speed, strideLength }] of pieces.entries()) {
    const metres = path[index]?.length ?? 0;
    if (speed === 0 || metres === 0) continue;
    if (strideLength === null || strideLength === 0) return null;
    strides += metres / strideLength;
  }
  return strides;
}

const NAMED: readonly Kind[] = [
  "stations",
  "objects",
  "holds",
  "movements",
  "threats",
  "grounds",
  "cruxes",
  "readings",
  "exercises",
];

/** Names and words of the text in which a side or an hour is spoken of. */
function quotedIn(rows: Rows, plans: readonly PlannedStage[]): string[] {
  const names = NAMED.flatMap((kind) =>
    (rows[kind] ?? []).flatMap(({ value }) => ("name" in value ? [value.name] : "title" in value ? [value.title] : [])),
  );
  const elements = plans.flatMap(({ title, notes, acts }) => [
    title,
    ...notes.flatMap((note) => note.match(/“[^”]*”/g) ?? []),
    // Words that are cited stand between quotation marks wherever they stand.
    ...acts.flatMap(({ known }) => Object.values(known.slots).flatMap((held) => wordsIn(exactly(held)))),
  ]);
  const sided = [...new Set([...names, ...elements])].filter(
    (words) => typeof words === "string" && words.includes(" ") && speaksOfSides(words),
  );
  return sided.sort();
}

/** The words in a value that are the text's own: an event, a place, a manner; no side of our own. */
function wordsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  const held = value as Record<string, unknown>;
  return [held.words, held.event, held.what].filter((words) => typeof words === "string");
}

interface ContextSources {
  allRows: Rows;
  exerciseId: string;
  options: RideOptions;
  compiled: CompiledExercise;
  supplied: ReadonlyMap<string, string>;
  plans: readonly PlannedStage[];
  partOf: PartOf;
  base: CompiledPart["base"];
  choice: ReadonlyMap<string, string>;
}

function contextFor({
  allRows,
  exerciseId,
  options,
  compiled,
  supplied,
  plans,
  partOf,
  base,
  choice,
}: ContextSources): RideContext {
  const acts = plans.map((plan) => new Map(plan.acts.map((act): [string, RiddenAct] => [act.id, act])));
  const { opening, begins } = compiled;
  // What it begins with is looked up like an act of its first stage.
  for (const { drill, known, timing } of opening) {
    const act = { id: drill.id, via: null, drill, known, timing, words: drill.text, mirrored: false, idle: false };
    if (acts[0]?.has(drill.id) === false) acts[0].set(drill.id, act);
  }
  const elements = new Map(compiled.drill.elements.map((one) => [one.id, one]));
  const element = (id: string): DrillElement | null => {
    const own = elements.get(id);
    if (own) return own;
    const row = base.rows.find("elements", id);
    return (row && partOf(row.exercise)?.elements.find(({ drill }) => drill.id === id)?.drill) ?? null;
  };
  return {
    allRows,
    rows: base.rows,
    names: base.names,
    options,
    compiled,
    settlement: base.settlement,
    supplied,
    actsOf: (stage) => plans[stage]?.acts ?? [],
    act: (stage, action) => acts[stage]?.get(action) ?? null,
    element,
    carriedIn: { ...NOTHING_CARRIED_IN, holds: holdsAtFirst(opening, begins) },
    hold: (stage, id) => {
      const plan = plans[stage];
      return plan === undefined ? null : contextIn(plan).hold(id);
    },
    rideUnder: (crux, reading) =>
      rideWithContext(allRows, exerciseId, { ...options, choice: new Map([...choice, [crux, reading]]) }, base.rows),
  };
}
