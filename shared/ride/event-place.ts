/** shared/ride/event-place.ts - where on the way of a stage an event lies that its words name.
 *  May import: shared/ground, siblings in shared/ride. Keeps rule R32 (shared/ride/RULES.md). Metres. */

import { poseOn } from "../ground/piece.ts";
import { distance, type Point } from "../ground/plane.ts";
import { type GroundStation, placeOfStation } from "../ground/stations.ts";
import type { Drafted } from "./course.ts";
import { type DraftPlace, joinedOf } from "./cut-draft.ts";
import type { EventMeant } from "./event-meant.ts";
import { BESIDE } from "./places.ts";

/** By the id of an act that is done when or until something happens: a place of the stage, or seconds of the ride where it
 *  is another rider who does it. */
export type EventsOn = ReadonlyMap<string, DraftPlace | { seconds: number }>;

/** Null where the way does not come to it: no halt, no such figure, no place within `BESIDE`. */
export function placeOfEvent(drafted: readonly Drafted[], meant: EventMeant): DraftPlace | null {
  switch (meant.is) {
    case "station":
      return placeOn(drafted, passesOf(drafted, meant.station)[meant.time - 1] ?? null, meant.on);
    case "figure": {
      const rides = ({ ridden }: Drafted): boolean => ridden.action === meant.action && !ridden.joins;
      const stages = [...new Set(drafted.filter(rides).map(({ ridden }) => ridden.stage))];
      const own = (one: Drafted): boolean => rides(one) && one.ridden.stage === stages[meant.time - 1];
      const index = meant.ends ? drafted.findLastIndex(own) : drafted.findIndex(own);
      return index === -1 ? null : { index, part: meant.ends ? 1 : 0 };
    }
    case "halt": {
      const index = drafted.findIndex(({ piece, ridden }) => piece.is === "halt" && ridden.action !== null);
      return index === -1 ? null : { index, part: 0 };
    }
  }
}

/** So many metres on along the way; null where it ends before that. */
function placeOn(drafted: readonly Drafted[], from: DraftPlace | null, metres: number): DraftPlace | null {
  if (from === null || metres === 0) return from;
  let left = (drafted[from.index]?.piece.length ?? 0) * from.part + metres;
  let { index } = from;
  while (left < 0 && index > joinedOf(drafted)) {
    index -= 1;
    left += drafted[index]?.piece.length ?? 0;
  }
  for (let length = drafted[index]?.piece.length ?? 0; left > length; length = drafted[index]?.piece.length ?? 0) {
    if (index === drafted.length - 1) return null;
    left -= length;
    index += 1;
  }
  const { length } = (drafted[index] as Drafted).piece;
  return left < 0 || length === 0 ? null : { index, part: left / length };
}

/** A pass that is this much farther than the nearest is none of its own: a bend in the way there. */
const NEARLY = 0.5;
/** Metres between the places that are tried. */
const APART = 0.25;

/** Where the way, without lines supplied before it, is nearest to a station, each time it comes there. Where it sets out
 *  from there, that does not count: it comes there when it comes again. */
function passesOf(drafted: readonly Drafted[], station: GroundStation): DraftPlace[] {
  const tried = triedPlaces(drafted, station);
  const least = Math.min(...tried.map(({ metres }) => metres));
  const most = Math.max(...tried.map(({ metres }) => metres));
  // Round a place all the way is never past it.
  if (!(least <= BESIDE && most - least > NEARLY)) return [];
  const passes: (DraftPlace & { metres: number })[] = [];
  for (const [at, one] of tried.entries()) {
    const [before, after] = [tried[at - 1], tried[at + 1]];
    if (before === undefined || one.metres > least + NEARLY) continue;
    if (before.metres > one.metres && (after === undefined || after.metres >= one.metres)) passes.push(one);
  }
  return passes.map(({ index, part }) => nearestAbout(drafted, station, { index, part }));
}

function triedPlaces(drafted: readonly Drafted[], station: GroundStation): (DraftPlace & { metres: number })[] {
  const tried: (DraftPlace & { metres: number })[] = [];
  for (let index = joinedOf(drafted); index < drafted.length; index += 1) {
    const { piece } = drafted[index] as Drafted;
    if (piece.length === 0) continue;
    const steps = Math.max(1, Math.ceil(piece.length / APART));
    for (let step = tried.length === 0 ? 0 : 1; step <= steps; step += 1) {
      const part = step / steps;
      tried.push({ index, part, metres: awayFrom(station, poseOn(piece, part)) });
    }
  }
  return tried;
}

function awayFrom(station: GroundStation, place: Point): number {
  return distance(place, placeOfStation(station, place));
}

/** The nearest place on the piece about one that was tried, to a tenth of a millimetre. */
function nearestAbout(drafted: readonly Drafted[], station: GroundStation, { index, part }: DraftPlace): DraftPlace {
  const { piece } = drafted[index] as Drafted;
  const reach = APART / piece.length;
  let [low, high] = [Math.max(0, part - reach), Math.min(1, part + reach)];
  while ((high - low) * piece.length > 1e-4) {
    const [first, second] = [low + (high - low) / 3, high - (high - low) / 3];
    if (awayFrom(station, poseOn(piece, first)) <= awayFrom(station, poseOn(piece, second))) high = second;
    else low = first;
  }
  return { index, part: (low + high) / 2 };
}
