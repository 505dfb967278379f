/** shared/ride/rules/gaps.ts - gaps that the text asks riders to keep, and where they are not kept.
 *  May import: schema types, shared/drill, shared/ground, shared/ride, siblings. Keeps rule V63 (shared/ride/rules/RULES.md).
 *  Metres between the outsides of two horses, seconds of the common clock. Looked at ten times a second. */
import type { Citation, Drill } from "../../../schema/drill.ts";
import type { Element } from "../../../schema/exercise.ts";
import { nearestPlaces } from "../../ground/nearest.ts";
import { bodyEnds, poseOfRider, type Rider } from "../../ground/riders.ts";
import { compareRanked } from "../../rank.ts";
import { isNamed } from "../event-meant.ts";
import type { Ridden } from "../ridden.ts";
import { rolesOf } from "../roles.ts";
import { type Gap, gapIn } from "./gap-words.ts";

/** A demand of the text that gives a gap. */
export interface GapAsked {
  element: string;
  demand: string;
  gap: Gap;
  /** Who keeps it; "": every rider to the one before him. */
  role: string;
  /** Elements over which it is kept. */
  over: ReadonlySet<string>;
  citations: readonly Citation[];
}

/** The gaps an exercise asks for. `elements`: its rows, in any order. */
export function gapsAsked(elements: readonly Element[], drill: Drill): GapAsked[] {
  const order = [...elements].sort(compareRanked);
  const at = (id: string | null, otherwise: number): number =>
    id === null ? otherwise : order.findIndex((element) => element.id === id);
  const roles = rolesOf(drill.elements);
  return drill.elements.flatMap(({ id, citations }) => {
    const row = order.find((element) => element.id === id);
    const gap = row?.is === "advice" ? gapIn(row.demand, roles) : null;
    if (row?.is !== "advice" || gap === null) return [];
    const [from, to] = [at(row.from, 0), at(row.to, order.length - 1)];
    const over = new Set(order.slice(Math.max(0, from), to + 1).map((element) => element.id));
    return [{ element: id, demand: row.demand, gap, role: row.role, over, citations }];
  });
}

export interface RiderOfRole {
  rider: Rider;
  ridden: Ridden;
  role?: string | null;
}

/** Where a gap is not kept: by whom, and how much there is instead. */
export interface GapBroken {
  asked: GapAsked;
  keeps: RiderOfRole;
  other: RiderOfRole;
  metres: number;
  seconds: number;
}

/** Part of a gap by which "about so much" may be out. A choice of this design. */
const ABOUT = 0.25;
const A_SECOND = 10;
/** Metres by which rounding may be out. */
const NEAR = 0.01;

/** Each gap and pair of riders once, at the moment where it is farthest from what is asked. */
export function brokenGaps(riders: readonly RiderOfRole[], asked: readonly GapAsked[]): GapBroken[] {
  return asked.flatMap((one) =>
    pairsOf(riders, one).flatMap(([keeps, other]) => {
      const worst = worstOf(keeps, other, one);
      return worst === null ? [] : [{ asked: one, keeps, other, ...worst }];
    }),
  );
}

function pairsOf(riders: readonly RiderOfRole[], { role, demand }: GapAsked): [RiderOfRole, RiderOfRole][] {
  if (role === "")
    return riders.slice(1).flatMap((rider, index): [RiderOfRole, RiderOfRole][] => {
      const before = riders[index];
      return before === undefined ? [] : [[rider, before]];
    });
  const others = riders.filter((rider) => rider.role !== role);
  const named = others.filter((rider) => rider.role && isNamed(demand, rider.role));
  const meant = named.length > 0 ? named : others;
  return riders
    .filter((rider) => rider.role === role)
    .flatMap((keeps) => meant.map((other): [RiderOfRole, RiderOfRole] => [keeps, other]));
}

function worstOf(
  { rider, ridden }: RiderOfRole,
  { rider: other }: RiderOfRole,
  { gap, over }: GapAsked,
): { metres: number; seconds: number } | null {
  let worst: { metres: number; seconds: number; off: number } | null = null;
  for (const stage of ridden.stages) {
    if (!over.has(stage.element)) continue;
    const from = Math.max(stage.from + rider.starts, other.starts);
    const to = Math.min(stage.to + rider.starts, other.starts + other.timed.duration);
    for (let moment = 0; from + moment / A_SECOND <= to; moment += 1) {
      const seconds = from + moment / A_SECOND;
      const metres = between(rider, other, seconds);
      const off = offBy(gap, metres);
      if (off > NEAR && (worst === null || off > worst.off + 1e-6)) worst = { metres, seconds, off };
    }
  }
  return worst;
}

function between(a: Rider, b: Rider, seconds: number): number {
  const [one, other] = [a, b].map((rider) => bodyEnds(poseOfRider(rider, seconds), rider.body));
  if (one === undefined || other === undefined) return 0;
  return Math.max(0, nearestPlaces(one, other).metres - a.body.halfWidth - b.body.halfWidth);
}

/** Metres by which it is not what is asked; at most 0 where it is. */
function offBy({ metres: asked, is }: Gap, metres: number): number {
  if (is === "at least") return asked - metres;
  if (is === "at most") return metres - asked;
  return Math.abs(metres - asked) - asked * ABOUT;
}
