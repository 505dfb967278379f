/** shared/drawing/step-beginnings.ts - where each step begins on the ground, those that begin together in one place.
 *  May import: shared/ground, types of shared/ride. Keeps rules W9-W10 (shared/drawing/RULES.md). Metres. */
import { poseOn } from "../ground/piece.ts";
import { distance, type Pose } from "../ground/plane.ts";
import type { Ridden, RiddenStage } from "../ride/ridden.ts";

/** A place where steps begin, with their printed numbers in order. */
export interface Beginning {
  pose: Pose;
  numbers: number[];
}

/** What is done again has its number where it first begins. Places nearer than `apart` metres are one. */
export function stepBeginnings(ride: Ridden, apart: number, range = { from: 0, to: ride.stages.length }): Beginning[] {
  const places: Beginning[] = [];
  const seen = new Set<number>();
  for (let stage = range.from; stage < range.to; stage += 1) {
    const { number, pieces } = ride.stages[stage] as RiddenStage;
    if (number === null || seen.has(number)) continue;
    seen.add(number);
    const pose = beginningOf(ride, pieces);
    const near = places.find((place) => distance(place.pose, pose) < apart);
    if (near) near.numbers.push(number);
    else places.push({ pose, numbers: [number] });
  }
  return places;
}

/** The same for several rides: what begins in one place for two riders has its number there once. */
export function beginningsTogether(rides: readonly (readonly Beginning[])[], apart: number): Beginning[] {
  const places: Beginning[] = [];
  for (const { pose, numbers } of rides.flat()) {
    const near = places.find((place) => distance(place.pose, pose) < apart);
    if (near) near.numbers = [...new Set([...near.numbers, ...numbers])].sort((a, b) => a - b);
    else places.push({ pose, numbers: [...numbers] });
  }
  return places;
}

/** Where a stage begins once it has been joined to the one before; where it takes no way, where that one ended. */
function beginningOf(ride: Ridden, { from, to }: RiddenStage["pieces"]): Pose {
  const { pieces, start } = ride.timed.path;
  let first = from;
  while (first < to - 1 && ride.pieces[first]?.joins) first += 1;
  const piece = pieces[first];
  if (piece !== undefined && to > from) return poseOn(piece, 0);
  const before = pieces[from - 1];
  return before ? poseOn(before, 1) : start;
}
