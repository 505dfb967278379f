/** shared/ride/lay-out.ts - when each act of a stage is done, in seconds of the ride.
 *  May import: schema types, siblings in shared/ride. Keeps rules R23-R26 (shared/ride/RULES.md). What the text does not time lies
 *  anywhere in its stage: it is laid out evenly in the order of the text, and marked as not timed. */
import type { ValueOf } from "../../schema/values.ts";
import type { Course, Drafted } from "./course.ts";
import { type DraftPlace, fractionOf, joinedOf } from "./cut-draft.ts";
import type { EventsOn } from "./event-place.ts";
import { isGait, isRide, takesTime, timingOf } from "./horse-order.ts";
import type { RiddenAct } from "./ride-context.ts";

/** An act with its moment. `until`: the end of an act that takes an interval, null for one that does not. */
export interface Laid {
  act: RiddenAct;
  seconds: number;
  until: number | null;
  timed: boolean;
  /** Acts with one and the same moment in the text, done together; null for one alone. */
  together: string | null;
}

/** Before the way, of the horse, of the hands, after the way: at one moment they come in this order. */
type Phase = 0 | 1 | 2 | 3;
type Placed = Omit<Laid, "act"> & { phase: Phase };

/** Where a stage lies in the course. */
export interface StageSpan {
  first: number;
  drafted: readonly Drafted[];
  /** Where on it acts are done that wait for something. */
  events: EventsOn;
  from: number;
  to: number;
}

/** In the order they are done. */
export function layOut(acts: readonly RiddenAct[], course: Course, span: StageSpan): Laid[] {
  const placed = new Map<RiddenAct, Placed>();
  const begins = figureTimes(acts, course, span);
  for (const act of acts) {
    const fixed = isRide(act)
      ? horseAt(begins.get(act.id)?.from ?? span.to, true)
      : placeOf(act, begins, acts, course, span);
    if (fixed !== null) placed.set(act, fixed);
  }
  layBetween(acts, placed, begins, course, span);
  layTied(acts, placed, span);
  return acts
    .map((act, index) => ({ act, index, place: placed.get(act) ?? unsaid(span.from) }))
    .sort((a, b) => a.place.seconds - b.place.seconds || a.place.phase - b.place.phase || a.index - b.index)
    .map(({ act, place: { seconds, until, timed, together } }) => ({ act, seconds, until, timed, together }));
}

const horseAt = (seconds: number, timed: boolean): Placed => ({
  seconds,
  until: null,
  timed,
  together: null,
  phase: 1,
});
const unsaid = (seconds: number): Placed => ({ seconds, until: null, timed: false, together: null, phase: 2 });

/** From the first piece of a figure that does not join, to the end of its last. */
function figureTimes(
  acts: readonly RiddenAct[],
  course: Course,
  { first, drafted }: StageSpan,
): Map<string, { from: number; to: number }> {
  const times = new Map<string, { from: number; to: number }>();
  const time = (index: number): number => course.times[first + index] as number;
  for (const { id } of acts) {
    const of = drafted.flatMap(({ ridden }, index) => (ridden.action === id ? [index] : []));
    const begin = of.find((index) => drafted[index]?.ridden.joins === false) ?? of[0];
    const end = of.at(-1);
    if (begin !== undefined && end !== undefined) times.set(id, { from: time(begin), to: time(end + 1) });
  }
  return times;
}

type Begins = ReadonlyMap<string, { from: number; to: number }>;

/** Null for what is laid between the others, or hangs on another act. */
function placeOf(
  act: RiddenAct,
  begins: Begins,
  acts: readonly RiddenAct[],
  course: Course,
  span: StageSpan,
): Placed | null {
  const timing = timingOf(act);
  const phase = isGait(act) ? 1 : 2;
  switch (timing?.is) {
    case "before":
      return { seconds: span.from, until: null, timed: true, together: null, phase: 0 };
    case "after":
      return { seconds: span.to, until: null, timed: true, together: null, phase: 3 };
    case "at":
      return atFraction(course, span, [timing.over, timing.of], null, phase);
    case "during":
      return atFraction(course, span, timing.from, timing.to, phase);
    case "throughout":
      return { seconds: span.from, until: span.to, timed: true, together: null, phase };
    case "until": {
      const until = whenOf(act, course, span);
      return { seconds: span.from, until: until ?? span.to, timed: false, together: null, phase };
    }
    case "when": {
      const seconds = whenOf(act, course, span);
      if (seconds !== null) return { seconds, until: null, timed: true, together: `when ${timing.event}`, phase };
      return unplaced(act, begins, acts, span);
    }
    case "with":
    case "after action":
      return null;
    default:
      return unplaced(act, begins, acts, span);
  }
}

/** An act whose moment is not said, or not in words that name one. */
function unplaced(act: RiddenAct, begins: Begins, acts: readonly RiddenAct[], span: StageSpan): Placed | null {
  if (isGait(act)) return horseAt(begins.get(act.id)?.from ?? gaitBegins(act, begins, acts, span), false);
  return takesTime(act) ? null : unsaid(span.from);
}

/** Seconds at which what the act waits for happens; null where its words name nothing that happens in the stage. */
function whenOf({ id }: RiddenAct, course: Course, span: StageSpan): number | null {
  const at = span.events.get(id);
  if (at === undefined) return null;
  if ("index" in at) return secondsOn(course, span, at);
  return span.from <= at.seconds && at.seconds <= span.to ? at.seconds : null;
}

function secondsOn(course: Course, { first }: StageSpan, { index, part }: DraftPlace): number {
  const start = course.times[first + index] as number;
  return start + ((course.times[first + index + 1] as number) - start) * part;
}

/** With the figure that follows it in the text; from the start where none follows. */
function gaitBegins(act: RiddenAct, begins: Begins, acts: readonly RiddenAct[], span: StageSpan): number {
  const index = acts.indexOf(act);
  const next = acts.find((other, at) => at > index && isRide(other) && begins.has(other.id));
  const before = acts.some((other, at) => at < index && isRide(other));
  return next !== undefined && before ? (begins.get(next.id)?.from ?? span.from) : span.from;
}

function atFraction(
  course: Course,
  span: StageSpan,
  [over, of]: readonly [number, number],
  until: readonly [number, number] | null,
  phase: Phase,
): Placed {
  const seconds = secondsAt(course, span, over, of);
  const shared = common(over, of);
  const end = until === null ? null : Math.max(seconds, secondsAt(course, span, ...until));
  return {
    seconds,
    until: end,
    timed: true,
    together: until === null ? `${over / shared}/${of / shared}` : null,
    phase,
  };
}

/** The moment at a fraction of the way; what lies past its end is its end. */
function secondsAt(course: Course, span: StageSpan, over: number, of: number): number {
  if (!(of >= 1 && over >= 0)) return span.from;
  const at = fractionOf(span.drafted, over, of);
  return at === null ? span.from : secondsOn(course, span, at);
}

/** The greatest common divisor, so that one half and two quarters are one moment. */
function common(a: number, b: number): number {
  return b === 0 ? Math.max(1, a) : common(b, a % b);
}

/** Acts of the hands that nothing times, evenly between those of the text around them that are timed. Not before the
 *  figure that stands before them in the text, nor after the end of the one that follows. */
function layBetween(
  acts: readonly RiddenAct[],
  placed: Map<RiddenAct, Placed>,
  begins: Begins,
  course: Course,
  span: StageSpan,
): void {
  let least = course.times[span.first + joinedOf(span.drafted)] ?? span.from;
  let run: RiddenAct[] = [];
  const flush = (most: number): void => {
    const to = Math.max(least, most);
    for (const [index, act] of run.entries()) {
      placed.set(act, unsaid(least + ((to - least) * (index + 1)) / (run.length + 1)));
    }
    run = [];
  };
  for (const act of acts) {
    const place = placed.get(act);
    if (place === undefined) {
      if (!isTied(act)) run.push(act);
    } else if (begins.has(act.id)) {
      const figure = begins.get(act.id);
      if (figure === undefined || begins.size === 1) continue;
      if (run.length > 0) flush(figure.to);
      least = Math.max(least, figure.from);
    } else if (place.timed && place.phase === 2 && place.until === null) {
      flush(place.seconds);
      least = Math.max(least, place.seconds);
    }
  }
  flush(span.to);
}

const isTied = (act: RiddenAct): boolean => {
  const is = timingOf(act)?.is;
  return is === "with" || is === "after action";
};

/** With another act, or halfway between it and the next moment; from the start where that act is not in the stage, or
 *  each hangs on the other. */
function layTied(acts: readonly RiddenAct[], placed: Map<RiddenAct, Placed>, span: StageSpan): void {
  const tied = acts.filter((act) => !placed.has(act));
  for (let left = tied.length; left > 0; left -= 1) {
    for (const act of tied) {
      const timing = timingOf(act) as Extract<ValueOf<"timing">, { action: string }>;
      const other = acts.find(({ id }) => id === timing.action);
      const place = other === undefined ? undefined : placed.get(other);
      if (placed.has(act) || other === undefined || place === undefined) continue;
      if (timing.is === "with") {
        const key = place.together ?? `with ${other.id}`;
        if (!isRide(other)) placed.set(other, { ...place, together: key });
        placed.set(act, {
          ...place,
          until: null,
          together: isRide(other) ? null : key,
          phase: isRide(other) ? 2 : place.phase,
        });
        continue;
      }
      const end = endOf(other, place, acts, placed, span);
      placed.set(act, {
        seconds: end,
        until: null,
        timed: place.timed,
        together: null,
        phase: place.phase === 1 ? 2 : place.phase,
      });
    }
  }
  for (const act of tied) if (!placed.has(act)) placed.set(act, unsaid(span.from));
}

/** When an act that comes after another is done: halfway to the next moment of the hands. */
function endOf(
  other: RiddenAct,
  place: Placed,
  acts: readonly RiddenAct[],
  placed: ReadonlyMap<RiddenAct, Placed>,
  span: StageSpan,
): number {
  const after = acts
    .flatMap((act) => (act === other || isRide(act) || isGait(act) ? [] : [placed.get(act)?.seconds ?? span.to]))
    .filter((seconds) => seconds > place.seconds);
  return (place.seconds + Math.min(span.to, ...after)) / 2;
}
