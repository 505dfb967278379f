/** tests/ride-rules/made-ride.ts - rides made by hand, one line a step: what is done, over which pieces, with which words.
 *  Quicker than rows where a test is about a rule and not about compiling; the states come from the real acts. */
import type { Verb } from "../../schema/act.ts";
import type { Citation, DrillElement } from "../../schema/drill.ts";
import type { Rule, Waiver } from "../../schema/riding.ts";
import type { Known } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import { rectangularGround } from "../../shared/ground/grounds.ts";
import { pathOf } from "../../shared/ground/path.ts";
import { arcFrom, halt, type Piece, poseOn, straight, turnOnSpot } from "../../shared/ground/piece.ts";
import { beside, type Pose, poseAt, TOLERANCE } from "../../shared/ground/plane.ts";
import type { GroundStation } from "../../shared/ground/stations.ts";
import { timePath } from "../../shared/ground/timed-path.ts";
import { applyAct } from "../../shared/hands/apply.ts";
import type { KnownHold } from "../../shared/hands/apply-hold.ts";
import { known } from "../../shared/hands/known.ts";
import type { KnownAct } from "../../shared/hands/known-act.ts";
import { type ControlState, consistent, startState } from "../../shared/hands/state.ts";
import type { Instant, Ridden, RiddenPiece, RiddenStage, RiddenThreat } from "../../shared/ride/ridden.ts";
import type { RiddenAct, RideContext } from "../../shared/ride/ride-context.ts";
import { rider, SPEAR } from "../hands/riders.ts";

export interface MadeAct {
  known: KnownAct;
  /** Part of the stage at which it is done, 0 to 1; null: the text does not say when. */
  at: number | null;
  words: string;
}

/** An act by plain values; `at` its moment in the step, absent for "not said". A value that is a Known already stays. */
export function act(verb: Verb, slots: Record<string, unknown> = {}, at: number | null = null, words = ""): MadeAct {
  const entries = Object.entries(slots).map(([name, value]) => [name, isKnownValue(value) ? value : known(value)]);
  return { known: { verb, slots: Object.fromEntries(entries) }, at, words };
}

function isKnownValue(value: unknown): value is Known<unknown> {
  const is = typeof value === "object" && value !== null && "is" in value ? value.is : null;
  return is === "one of" || is === "unknown";
}

export type Go =
  | { go: "on"; metres: number }
  | { go: "bend"; to: "left" | "right"; across: number; degrees: number }
  | { go: "turn"; to: "left" | "right"; degrees: number }
  | { go: "stand"; seconds: number };
export type MadePiece = Go & Partial<Pick<RiddenPiece, "figure" | "gait" | "speed" | "joins" | "gaitSupplied">>;

export const on = (metres: number, more: Partial<RiddenPiece> = {}): MadePiece => ({ go: "on", metres, ...more });
export const bend = (to: "left" | "right", across = 12, degrees = 360, more: Partial<RiddenPiece> = {}): MadePiece => ({
  go: "bend",
  to,
  across,
  degrees,
  figure: "circle",
  ...more,
});

export interface MadeStep {
  acts?: MadeAct[];
  goes?: MadePiece[];
  is?: RiddenStage["is"];
  again?: { of: number; round: number; mirrored: boolean };
  refused?: string;
  threat?: Partial<RiddenThreat>;
}

export interface MadeHold {
  name: string;
  strong?: boolean;
  hands?: "one" | "two";
  slots: Record<string, unknown>;
}

export interface Made {
  steps: MadeStep[];
  /** Absent: the rider of the examples, spear at the balance in the right hand, reins in the left. */
  start?: ControlState;
  holds?: Record<string, MadeHold>;
  rules?: Partial<Rule>[];
  waivers?: Partial<Waiver>[];
  /** Demands over steps, from and to counted from 0, and the rule that checks them. */
  demands?: { rule: string; from: number; to: number }[];
  stations?: GroundStation[];
  begins?: Pose;
  /** Metres; absent: the track runs along the wall itself. */
  trackOffset?: number;
  way?: Ridden["way"];
}

export interface MadeRide {
  ridden: Ridden;
  context: RideContext;
}

export const elementOf = (step: number): string => `element ${step + 1}`;
export const actionOf = (step: number, at: number): string => `act ${step + 1}.${at + 1}`;

export function madeRide(made: Made): MadeRide {
  const start = made.start ?? rider();
  const holds = new Map(Object.entries(made.holds ?? {}).map(([id, hold]) => [id, knownHoldOf(hold)]));
  const actContext = {
    isReins: (id: string) => id === "reins",
    hold: (id: string) => holds.get(id) ?? null,
    movement: () => null,
  };
  const pieces: Piece[] = [];
  const told: RiddenPiece[] = [];
  let pose = made.begins ?? poseAt(0, 0, 9_000);
  const spans = made.steps.map(({ goes = [on(10)], is, refused }, stage) => {
    const from = pieces.length;
    if (is !== "untreated" && refused === undefined)
      for (const go of goes) {
        const piece = pieceOf(pose, go);
        pieces.push(piece);
        told.push(toldPiece(go, stage));
        pose = poseOn(piece, 1);
      }
    return { from, to: pieces.length };
  });
  const path = pathOf(pieces.length > 0 ? pieces : [halt(pose, 1)], TOLERANCE);
  const timed = timePath(path, told.length > 0 ? told.map(({ speed }) => Math.max(speed, 0.1)) : [1]);

  let state = start;
  const stages = made.steps.map((step, index): RiddenStage => {
    const span = spans[index] ?? { from: 0, to: 0 };
    const [from, to] = [timed.times[span.from] ?? 0, timed.times[span.to] ?? 0];
    const before = state;
    const instants = (step.acts ?? []).map(({ known: done, at }, order): Instant => {
      state = applyAct(state, done, actContext);
      return {
        seconds: at === null ? from : from + (to - from) * at,
        piece: span.to > span.from ? span.from : null,
        timed: at !== null,
        actions: [actionOf(index, order)],
        after: state,
      };
    });
    if (step.is === "untreated")
      state = startState(
        start.objects.map(({ object }) => object),
        start.way,
      );
    const source = step.again === undefined ? elementOf(index) : elementOf(step.again.of);
    return {
      element: elementOf(index),
      source,
      round: step.again?.round ?? 0,
      mirrored: step.again?.mirrored ?? false,
      number: step.is === "untreated" ? null : index + 1,
      title: `The ${index + 1}th thing`,
      is: step.is ?? (step.again === undefined ? "step" : "again"),
      ...{ from, to, pieces: span },
      joined: Math.max(
        0,
        (step.goes ?? []).findIndex(({ joins }) => joins !== true),
      ),
      refusal: step.refused ?? null,
      refused: step.refused === undefined ? [] : [{ action: null, sentence: step.refused }],
      ...{ notes: [], withoutPartner: [], before, instants, after: state },
    };
  });
  const threats = made.steps.flatMap(({ threat }, stage): RiddenThreat[] => {
    const at = stages[stage];
    if (threat === undefined || at === undefined) return [];
    const { from, to } = at;
    return [
      {
        threat: "threat",
        name: "the rider in red",
        stage,
        from,
        to,
        mount: null,
        hour: null,
        weaponSide: null,
        ...threat,
      },
    ];
  });
  const ground = rectangularGround({
    width: 60,
    length: 120,
    trackOffset: made.trackOffset ?? 0,
    stations: made.stations ?? [],
  });
  if (!ground.ok) throw new RangeError(ground.sentence);
  const ridden = {
    ...{
      exercise: "exercise",
      title: "A made ride",
      way: made.way ?? "mounted",
      ground: ground.ground,
      groundName: "the ground",
    },
    ...{
      groundSupplied: false,
      stages,
      timed,
      pieces: told,
      metres: 0,
      strides: null,
      lanes: [],
      threats,
      findings: [],
    },
    ...{ treated: "", supplied: [], quoted: [] },
  } satisfies Ridden;
  return { ridden, context: contextOf(made, ridden, holds) };
}

function pieceOf(pose: Pose, go: MadePiece): Piece {
  switch (go.go) {
    case "on":
      return straight(pose, beside(pose, go.metres));
    case "bend":
      return arcFrom(pose, go.across / 2, (go.to === "left" ? 1 : -1) * go.degrees * 100);
    case "turn":
      return turnOnSpot(pose, (go.to === "left" ? 1 : -1) * go.degrees * 100);
    case "stand":
      return halt(pose, go.seconds);
  }
}

function toldPiece(
  { figure, gait = "walk", speed = 1.7, joins = false, gaitSupplied = false, go }: MadePiece,
  stage: number,
): RiddenPiece {
  const usual = { on: "straight", bend: "circle", turn: "turn", stand: "halt" } as const;
  const action = joins ? null : actionOf(stage, 0);
  return {
    stage,
    action,
    figure: joins ? null : (figure ?? usual[go]),
    joins,
    gait,
    pace: null,
    gaitSupplied,
    speed,
    strideLength: null,
  };
}

function knownHoldOf({ hands = "one", slots }: MadeHold): KnownHold {
  return { hands, slots: Object.fromEntries(Object.entries(slots).map(([slot, value]) => [slot, known(value)])) };
}

const citation = (quote: string): Citation => ({
  ...{
    reference: "f. 12v",
    references: [],
    layer: "The translation",
    language: "en",
    quote,
    from: 0,
    to: quote.length,
    state: "same",
  },
});

function contextOf(made: Made, ridden: Ridden, holds: ReadonlyMap<string, KnownHold>): RideContext {
  const acts = made.steps.map(({ acts: own = [] }, stage) =>
    own.map(({ known: done, words }, at): RiddenAct => {
      const id = actionOf(stage, at);
      const citations = words === "" ? [] : [citation(words)];
      const drill = {
        id,
        part: "rider",
        verb: done.verb,
        text: done.verb,
        standing: "stated",
        inherited: false,
        onlyUnder: [],
        values: [],
        rests: [],
        citations,
      };
      return {
        id,
        via: null,
        drill: drill as RiddenAct["drill"],
        known: done,
        timing: null as Known<ValueOf<"timing">> | null,
        words: done.verb,
        mirrored: false,
        idle: false,
      };
    }),
  );
  const elements = made.steps.map(
    (_, at) =>
      ({
        id: elementOf(at),
        values: [],
        is: "step",
        number: at + 1,
        title: `The ${at + 1}th thing`,
        cruxes: [],
        citations: [],
      }) as unknown as DrillElement,
  );
  const demands = (made.demands ?? []).map(({ rule, from, to }, at) => ({
    id: `demand ${at}`,
    is: "advice",
    rule: `row of ${rule}`,
    from: elementOf(from),
    to: elementOf(to),
  }));
  const rules = [
    ...(made.rules ?? []).map((row, at) => ({ id: `rule ${at}`, work: "work", support: [], ...row })),
    ...(made.demands ?? []).map(({ rule }) => ({
      id: `row of ${rule}`,
      work: "work",
      code: rule,
      support: [],
      severity: "warns",
    })),
  ];
  const tables: Record<string, { id: string }[]> = {
    rules,
    waivers: (made.waivers ?? []).map((row, at) => ({ id: `waiver ${at}`, basis: [], ...row })),
    holds: Object.entries(made.holds ?? {}).map(([id, hold]) => ({
      id,
      name: hold.name,
      strong: hold.strong ?? false,
    })),
    objects: [{ ...SPEAR }, { id: "reins", is: "reins", name: "reins" }] as { id: string }[],
    elements: demands,
  };
  const find = (kind: string, id: string) => tables[kind]?.find((row) => row.id === id);
  const names = (kind: string, id: string) => (find(kind, id) as { name?: string } | undefined)?.name ?? null;
  return {
    ...{ allRows: {}, options: {}, settlement: null, supplied: new Map(), names },
    rows: { work: { id: "work" }, find, all: (kind: string) => tables[kind] ?? [] },
    compiled: {
      followed: [],
      drill: {
        layers: [{ title: "The translation", is: "translation" }],
        cruxes: [],
        elements: [...elements, ...demands],
      },
    },
    actsOf: (stage: number) => acts[stage] ?? [],
    act: (stage: number, id: string) => acts[stage]?.find((one) => one.id === id) ?? null,
    element: (id: string) => elements.find((one) => one.id === id) ?? null,
    hold: (_: number, id: string) => holds.get(id) ?? null,
    rideUnder: () => ({ ridden, context: null }),
  } as unknown as RideContext;
}

/** The rider of the examples with some of his state otherwise. */
export function riderWith(
  change: Partial<ControlState>,
  spear: Partial<ControlState["objects"][number]> = {},
): ControlState {
  const base = rider();
  return consistent({ ...base, ...change, objects: base.objects.map((held) => ({ ...held, ...spear })) });
}
