/** shared/ground/place-in-words.ts - a place of the ground as a rider would say it.
 *  May import: siblings in shared/ground. Metres on the ground frame. */
import type { RidingGround } from "./grounds.ts";
import { distance, type Point } from "./plane.ts";
import { placeOfStation } from "./stations.ts";

/** How near a station must be for a place to be told by it. */
const NEAR = 6;
const AT = 2;

/** "near the well", "toward the foot of the ground, on the left". */
export function placeInWords(ground: RidingGround, at: Point): string {
  const [near] = ground.stations
    .map((station) => ({ name: station.name, off: distance(at, placeOfStation(station, at)) }))
    .sort((a, b) => a.off - b.off);
  if (near && near.off < NEAR) return `${near.off < AT ? "at" : "near"} ${near.name}`;
  const across = Math.abs(at.x) < ground.width / 6 ? "" : at.x < 0 ? "left" : "right";
  const along = Math.abs(at.y) < ground.length / 6 ? "" : at.y < 0 ? "foot" : "head";
  if (along === "") return across === "" ? "in the middle of the ground" : `toward the ${across} wall`;
  return `toward the ${along} of the ground${across === "" ? "" : `, on the ${across}`}`;
}
