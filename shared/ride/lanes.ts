/** shared/ride/lanes.ts - who does what when, side by side: horse, gait, lead, hands, objects, threat.
 *  May import: schema types, shared/drill, shared/hands, siblings in shared/ride. Keeps rules R28-R30 (shared/ride/RULES.md). */
import type { Names } from "../drill/words.ts";
import type { ControlState } from "../hands/state.ts";
import type { Drafted } from "./course.ts";
import { gaitTold, handTold, leadTold, objectTold, type Told, threatTold } from "./lane-words.ts";
import type { PlannedStage } from "./planned.ts";
import type { Lane, LaneSpan, RiddenStage, RiddenThreat, Standing } from "./ridden.ts";
import type { RiddenAct } from "./ride-context.ts";

export interface LaneSources {
  stages: readonly RiddenStage[];
  plans: readonly PlannedStage[];
  drafted: readonly Drafted[];
  times: readonly number[];
  threats: readonly RiddenThreat[];
  names: Names;
}

/** With the acts of each stage by their ids. */
type Followed = LaneSources & { acts: readonly ReadonlyMap<string, RiddenAct>[] };

export function lanesOf(given: LaneSources): Lane[] {
  const sources: Followed = {
    ...given,
    acts: given.plans.map(({ acts }) => new Map(acts.map((act) => [act.id, act]))),
  };
  const { stages, names } = sources;
  const first = stages[0]?.before;
  if (first === undefined) return [];
  const mounted = first.way === "mounted";
  const followed = (key: string, name: string, tell: (state: ControlState) => Told, concerns: Concerns): Lane => {
    const told = lastTold(tell);
    return { key, name, spans: stages.flatMap((_, index) => spansOf(sources, index, told, concerns)) };
  };
  const hand = (side: "left" | "right"): Lane =>
    followed(
      `${side} hand`,
      `${side} hand`,
      (state) => handTold(state, side, names),
      (act) => ofHand(act, side),
    );
  const objects = first.objects.map(({ object: { id, name } }) =>
    followed(
      id,
      name,
      (state) => {
        const held = state.objects.find(({ object }) => object.id === id);
        return held === undefined ? { words: "the text does not say", shows: "not said" } : objectTold(held, names);
      },
      (act) => ofObject(act, id, first.objects.length === 1),
    ),
  );
  const gait = followed(
    "gait",
    "gait",
    (state) => gaitTold(state, names),
    (act) => act.known.verb === "go at",
  );
  const lead = followed(
    "lead",
    "lead",
    leadTold,
    (act) => act.known.verb === "go at" && act.known.slots.lead !== undefined,
  );
  const threat: Lane[] = sources.threats.length === 0 ? [] : [threatLane(sources)];
  return [
    figureLane(sources, mounted),
    ...(mounted ? [gait, lead] : []),
    hand("left"),
    hand("right"),
    ...objects,
    ...threat,
  ];
}

/** A stage begins in the state in which the one before ended: what is told of it is known already. */
function lastTold(tell: (state: ControlState) => Told): (state: ControlState) => Told {
  let last: { state: ControlState; told: Told } | null = null;
  return (state) => {
    if (last?.state !== state) last = { state, told: tell(state) };
    return last.told;
  };
}

type Concerns = (act: RiddenAct) => boolean;

function ofHand({ drill, known, mirrored }: RiddenAct, side: "left" | "right"): boolean {
  const column = mirrored ? (side === "left" ? "right hand" : "left hand") : `${side} hand`;
  return drill.part === column || (known.slots.hand?.is === "known" && known.slots.hand.value === side);
}

function ofObject({ known }: RiddenAct, id: string, only: boolean): boolean {
  const { object } = known.slots;
  if (object === undefined) return only && OBJECT_VERBS.has(known.verb);
  return object.is === "known" && object.value === id;
}

const OBJECT_VERBS: ReadonlySet<string> = new Set([
  "hold",
  "carry",
  "spin",
  "raise",
  "lower",
  "thrust",
  "parry",
  "throw off",
]);

/** A new span where what is told changes, or where an act concerns the lane; what goes on from an earlier stage is
 *  implied by silence. */
function spansOf(
  { stages, acts: actsOf }: Followed,
  index: number,
  told: (state: ControlState) => Told,
  concerns: Concerns,
): LaneSpan[] {
  const stage = stages[index] as RiddenStage;
  const acts = actsOf[index] as ReadonlyMap<string, RiddenAct>;
  const spans: LaneSpan[] = [];
  let [state, was] = [stage.before, told(stage.before)];
  begin(spans, stage, index, stage.from, was, []);
  for (const { seconds, actions, after } of stage.instants) {
    const done = actions.flatMap((id) => acts.get(id) ?? []);
    const own = done.filter((act) => !act.idle && concerns(act));
    const is = after === state ? was : told(after);
    if (own.length > 0) begin(spans, stage, index, seconds, is, own);
    else if (was.words !== is.words || was.shows !== is.shows) begin(spans, stage, index, seconds, is, done);
    [state, was] = [after, is];
  }
  return merged(spans);
}

/** Ends the span before, or takes the place of one that took no time and had no acts. */
function begin(
  spans: LaneSpan[],
  { to }: RiddenStage,
  stage: number,
  from: number,
  { words, shows }: Told,
  actions: readonly RiddenAct[],
): void {
  const last = spans.at(-1);
  if (last && last.from === from && actions.length === 0) spans.pop();
  else if (last) last.to = from;
  const standing = shows === "not said" ? "not said" : standingOf(actions);
  spans.push({ from, to, words, shows, standing, stage, actions: actions.map(({ id }) => id) });
}

function standingOf(actions: readonly RiddenAct[]): Standing {
  return actions[0]?.drill.standing ?? "implied";
}

/** Spans that take no time give their acts to the next one, which is what is seen. */
function merged(spans: readonly LaneSpan[]): LaneSpan[] {
  const kept: LaneSpan[] = [];
  let carried: string[] = [];
  for (const [index, span] of spans.entries()) {
    if (span.to <= span.from && index < spans.length - 1) {
      carried.push(...span.actions);
      continue;
    }
    if (carried.length + span.actions.length < 2) kept.push({ ...span, actions: [...carried, ...span.actions] });
    else kept.push({ ...span, actions: [...new Set([...carried, ...span.actions])] });
    carried = [];
  }
  return kept;
}

/** The figures piece by piece; what is supplied is said to be. On foot it is the rider's own way. */
function figureLane({ stages, acts: actsOf, drafted, times }: Followed, mounted: boolean): Lane {
  const spans = stages.flatMap((stage, index): LaneSpan[] => {
    const acts = actsOf[index] as ReadonlyMap<string, RiddenAct>;
    if (stage.is === "untreated" || stage.pieces.from === stage.pieces.to) {
      const words = stage.refusal === null ? "the text does not say" : "cannot be ridden as it says";
      return [
        { from: stage.from, to: stage.to, words, standing: "not said", shows: "not said", stage: index, actions: [] },
      ];
    }
    const list: LaneSpan[] = [];
    for (let piece = stage.pieces.from; piece < stage.pieces.to; piece += 1) {
      const { ridden } = drafted[piece] as Drafted;
      const act = ridden.action === null ? undefined : acts.get(ridden.action);
      const supplied = ridden.joins || act === undefined;
      const words = ridden.joins
        ? ridden.gait === "halt"
          ? "waits, supplied"
          : "a line to join, supplied"
        : (act?.words ?? (ridden.gait === "halt" ? "stands, supplied" : "goes on, supplied"));
      const [from, to] = [times[piece] as number, times[piece + 1] as number];
      const last = list.at(-1);
      const actions = act === undefined ? [] : [act.id];
      if (last && last.words === words && last.actions[0] === actions[0]) last.to = to;
      else
        list.push({
          from,
          to,
          words,
          standing: supplied ? "supplied" : act.drill.standing,
          shows: "something",
          stage: index,
          actions,
        });
    }
    return list;
  });
  return { key: "horse", name: mounted ? "horse" : "way on foot", spans };
}

function threatLane({ stages, threats }: LaneSources): Lane {
  const spans = stages.flatMap((_, stage): LaneSpan[] => {
    const here = threats.filter((threat) => threat.stage === stage);
    const [first] = here;
    if (first === undefined) return [];
    const words = here.map(threatTold).join("; ");
    return [{ from: first.from, to: first.to, words, standing: "implied", shows: "something", stage, actions: [] }];
  });
  return { key: "threat", name: "against", spans };
}
