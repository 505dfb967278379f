/** shared/ride/way-to.ts - a supplied line from where the horse is to a pose, also where it has to come round first.
 *  May import: shared/ground. Keeps rule R18 (shared/ride/RULES.md). Metres. */
import type { Manege } from "../ground/figures/figure.ts";
import { staysInside } from "../ground/figures/onto.ts";
import { isInside } from "../ground/grounds.ts";
import { shortestJoin } from "../ground/join.ts";
import { type Piece, straight } from "../ground/piece.ts";
import { beside, type Pose } from "../ground/plane.ts";
import { joinRadii } from "../ground/usual.ts";

/** Metres straight on into the pose that are tried, none first: a horse on the track that is to go the other way has no
 *  shortest line that keeps inside the wall, but one that comes back to the track before. */
const STRAIGHT_IN = [0, 4, 8, 12, 16, 24];

/** The pieces, none when it is there already; null when no line keeps on the ground. */
export function wayTo(manege: Manege, from: Pose, to: Pose): readonly Piece[] | null {
  for (const radius of joinRadii(manege.usual)) {
    const way = wayWith(manege, from, to, radius);
    if (way !== null) return way;
  }
  return null;
}

function wayWith(manege: Manege, from: Pose, to: Pose, radius: number): readonly Piece[] | null {
  for (const metres of STRAIGHT_IN) {
    const before = metres === 0 ? to : { ...beside(to, -metres), heading: to.heading };
    if (metres > 0 && !isInside(manege.ground, before)) continue;
    const join = shortestJoin(from, before, radius, (way) => staysInside(manege, way.pieces));
    if (join !== null) return metres === 0 ? join.pieces : [...join.pieces, straight(before, to)];
  }
  return null;
}
