/** shared/ground/school-grounds.ts - the two ready-made grounds with their published letters.
 *  May import: siblings in shared/ground. Letters after FEI Dressage Rules Art. 429 (distances as several riding guides
 *  repeat them). A letter marks the wall; how far inside it the track lies is said by whoever uses the ground. */
import { type RidingGround, rectangularGround } from "./grounds.ts";
import type { GroundStation } from "./stations.ts";

/** Letter, metres from the left long side and from the foot, and the letter across the ground (itself on the middle line). */
type Letter = [name: string, fromLeft: number, fromFoot: number, across: string];

const SHORT: readonly Letter[] = [
  ["A", 10, 0, "A"],
  ["K", 0, 6, "F"],
  ["E", 0, 20, "B"],
  ["H", 0, 34, "M"],
  ["C", 10, 40, "C"],
  ["M", 20, 34, "H"],
  ["B", 20, 20, "E"],
  ["F", 20, 6, "K"],
  ["D", 10, 6, "D"],
  ["X", 10, 20, "X"],
  ["G", 10, 34, "G"],
];

const LONG: readonly Letter[] = [
  ["A", 10, 0, "A"],
  ["K", 0, 6, "F"],
  ["V", 0, 18, "P"],
  ["E", 0, 30, "B"],
  ["S", 0, 42, "R"],
  ["H", 0, 54, "M"],
  ["C", 10, 60, "C"],
  ["M", 20, 54, "H"],
  ["R", 20, 42, "S"],
  ["B", 20, 30, "E"],
  ["P", 20, 18, "V"],
  ["F", 20, 6, "K"],
  ["D", 10, 6, "D"],
  ["L", 10, 18, "L"],
  ["X", 10, 30, "X"],
  ["I", 10, 42, "I"],
  ["G", 10, 54, "G"],
];

/** The 20 m by 40 m ground. Throws RangeError for a track offset outside 0 to less than 10 m. */
export function schoolGround20x40(trackOffset: number): RidingGround {
  return schoolGround(40, SHORT, trackOffset);
}

/** The 20 m by 60 m ground. Throws RangeError for a track offset outside 0 to less than 10 m. */
export function schoolGround20x60(trackOffset: number): RidingGround {
  return schoolGround(60, LONG, trackOffset);
}

function schoolGround(length: number, letters: readonly Letter[], trackOffset: number): RidingGround {
  const stations: GroundStation[] = letters.map(([name, fromLeft, fromFoot, across]) => ({
    id: name,
    name,
    outline: { is: "point", at: { x: fromLeft - 10, y: fromFoot - length / 2 } },
    partner: across,
  }));
  const made = rectangularGround({ width: 20, length, trackOffset, stations });
  if (!made.ok) throw new RangeError(made.sentence);
  return made.ground;
}
