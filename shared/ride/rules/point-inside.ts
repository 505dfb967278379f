/** shared/ride/rules/point-inside.ts - a point that is carried low or middle stays on the rider's side of the wall.
 *  May import: shared/ground, shared/hands, types of shared/ride, siblings. Keeps rule V35 (shared/ride/rules/RULES.md).
 *  Metres, seconds. Hours are clock positions from the rider: 12 ahead, 3 right, 9 left. */
import { inWords } from "../../ground/figures/figure.ts";
import { distanceToWall } from "../../ground/grounds.ts";
import { poseOn } from "../../ground/piece.ts";
import { beside, type Pose } from "../../ground/plane.ts";
import { mayBe, possible } from "../../hands/known.ts";
import { HANDS, type ObjectState, type Zone, zonesOf } from "../../hands/state.ts";
import type { Ridden } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { SHARE } from "./kit.ts";
import type { Window } from "./moments.ts";
import { inGate } from "./place.ts";
import { type Judgement, kept, type RideRule, type Seen, type Verdict, verdictOfAll, verdictOver } from "./rule.ts";
import { hoursOf, isPointOut, isWeapon, LEVELS, LOW, pointSetBy } from "./turning.ts";

/** What lies before the hand of a weapon whose length is not known is at most this. A guess: a long lance. */
const LONGEST = 4;
/** How far past the wall a point is worth a word: what a hand that is not drawn to the hair may be out. A choice. */
const WORTH_A_WORD = 0.1;
/** Metres, and hundredths of a degree, between the places of a window that are looked at. */
const APART = { metres: 0.25, turn: 500 };

interface Place {
  seconds: number;
  pose: Pose;
}

/** The places of the window from which a point so far before the rider could come past the wall. */
function nearWall({ ground }: Ridden, { piece, from, to, parts }: Window, reach: number): Place[] {
  const [first, last] = parts;
  const metres = piece.length * (last - first);
  const turn = piece.is === "turn" ? Math.abs(piece.sweep) * (last - first) : 0;
  const steps = Math.max(1, Math.ceil(metres / APART.metres), Math.ceil(turn / APART.turn));
  const near: Place[] = [];
  for (let step = 0; step <= steps; step += 1) {
    const seconds = from + ((to - from) * step) / steps;
    const pose = poseOn(piece, first + ((last - first) * step) / steps);
    const away = distanceToWall(ground, pose) - reach;
    if (away <= 0) near.push({ seconds, pose });
    // Nothing comes past the wall before the horse has gone as far as that.
    else if (turn === 0 && metres > 0) step += Math.max(0, Math.ceil((away / metres) * steps) - 1);
    else if (turn === 0) break;
  }
  return near;
}

interface Past {
  seconds: number;
  metres: number;
}

/** How far past the wall a point at that hour comes, where it first does; null where it stays inside or looks out of a gate. */
function pastAt({ ground }: Ridden, near: readonly Place[], hour: number, reach: number): Past | null {
  const angle = (hour * Math.PI) / 6;
  for (const { seconds, pose } of near) {
    const point = beside(pose, reach * Math.cos(angle), -reach * Math.sin(angle));
    const metres = -distanceToWall(ground, point);
    if (metres > WORTH_A_WORD && !inGate(ground, point)) return { seconds, metres };
  }
  return null;
}

/** Metres that may lie before the hand that is nearest to the butt. */
function reachesOf({ object, grip }: ObjectState): number[] {
  const zones = HANDS.map((hand) => possible<Zone | null>(grip[hand], [null, ...zonesOf(object)]));
  const shares = zones.flatMap((each) => each.flatMap((zone) => (zone === null ? [] : (SHARE[zone] ?? []))));
  const length = object.lengthMetres;
  if (length === null || shares.length === 0) return [0, LONGEST];
  const held = zones.every((each) => each.length === 1) ? [Math.min(...shares)] : shares;
  return [...new Set(held.map((share) => length * (1 - share)))];
}

/** The first moment at which it may come past, with the verdict; `past` is null where it never can. */
function verdictIn(ridden: Ridden, window: Window, held: ObjectState): { verdict: Verdict; past: Past | null } {
  if (!isPointOut(held) || !possible(held.level, LEVELS).some((level) => LOW.includes(level)))
    return { verdict: "kept", past: null };
  const reaches = reachesOf(held);
  const near = nearWall(ridden, window, Math.max(...reaches));
  if (near.length === 0) return { verdict: "kept", past: null };
  const hours = hoursOf(held);
  if (hours === null) return { verdict: "cannot tell", past: null };
  const pasts = hours.flatMap((hour) => reaches.map((reach) => pastAt(ridden, near, hour, reach)));
  const levels = possible(held.level, LEVELS);
  const cases = pasts.flatMap((past) => levels.map((level) => past !== null && LOW.includes(level)));
  const stands = mayBe(held.frame, "planted") || HANDS.every((hand) => mayBe<Zone | null>(held.grip[hand], null));
  return {
    verdict: verdictOver(stands ? [...cases, false] : cases),
    past: pasts.find((past) => past !== null) ?? null,
  };
}

function check(ridden: Ridden, _: RideContext, { windows }: Seen): Judgement[] {
  // Where the track runs along the wall itself, the wall is the line that is ridden.
  if (ridden.ground.trackOffset === 0) return [];
  return ridden.stages.flatMap((__, stage) =>
    windows(stage).flatMap((window) => {
      const weapons = window.states[0]?.objects.filter(isWeapon) ?? [];
      return weapons.map(({ object }): Judgement => {
        const told = window.states.flatMap((state) =>
          state.objects.filter((held) => held.object.id === object.id).map((held) => verdictIn(ridden, window, held)),
        );
        const verdict = verdictOfAll(told.map((one) => one.verdict));
        if (verdict === "kept") return kept(stage);
        // Where the step itself turns the point inward or raises it, it is taken to do so in time.
        const look = told.at(-1)?.verdict === "broken";
        const past = told.findLast((one) => one.verdict === "broken")?.past ?? null;
        const set = past === null ? null : pointSetBy(ridden, stage, object.id);
        const ride = window.ridden.action;
        const metres = inWords(Math.round((past?.metres ?? 0) * 10) / 10);
        return {
          verdict,
          stage,
          about: "point",
          ...{ from: past?.seconds ?? window.from, to: window.to, timed: true, lasts: false },
          action: set?.stage === stage ? set.action : ride,
          quote: [...(set === null ? [] : [set.action]), ...(ride === null ? [] : [ride])],
          is:
            verdict === "broken"
              ? `the point of the ${object.name} is not high and comes ${metres} m past the wall`
              : `in this step the point of the ${object.name} comes where it is ${metres} m past the wall and not high; the words do not say whether beside the wall or away from it`,
          lift: "Either the point is raised or brought inward there, or the way lies farther from the wall",
          look,
        };
      });
    }),
  );
}

export const pointInside: RideRule = {
  code: "point-inside",
  words: "says",
  sentence:
    "A point that is carried low or middle stays inside the wall, where the horse goes by it or ends before it.",
  basis: "common practice",
  source: `Riding practice without a source. The point is reckoned from the rider’s middle, by the length of the weapon and where along it the hand is; less than ${WORTH_A_WORD} m is not told, nor what is planted, nor at a gate in the wall.`,
  severity: "notes",
  reach: "piece",
  check,
};
