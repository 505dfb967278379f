/** shared/drawing/plan-frame.ts - the frame of the plan: metres on the ground to metres on the page. The y of the ground is
 *  turned over here and nowhere else.
 *  May import: shared/ground, types of shared/ride. Keeps rules W18-W19 (shared/drawing/RULES.md). */
import type { RidingGround } from "../ground/grounds.ts";
import { boxOf } from "../ground/path.ts";
import { type Box, boxAround } from "../ground/piece.ts";
import type { Point, Pose } from "../ground/plane.ts";
import type { GroundStation } from "../ground/stations.ts";
import type { Ridden } from "../ride/ridden.ts";

/** For groups whose paths are given in the frame of the ground. */
export const GROUND_TO_PAGE = "scale(1 -1)";
export const onPage = ({ x, y }: Point): Point => ({ x, y: 0 - y });

/** The transform that puts a drawing in decimetres, ahead up, where the horse is. */
export function atPose(pose: Pose): string {
  const { x, y } = onPage(pose);
  return `translate(${x.toFixed(3)} ${y.toFixed(3)}) rotate(${turnOnPage(pose).toFixed(2)}) scale(.1)`;
}

/** Degrees clockwise that turn "up" to where the horse looks. */
export const turnOnPage = ({ heading }: Pose): number => 90 - heading / 100;

/** What the plan shows, in metres on the page. */
export interface Frame {
  left: number;
  top: number;
  width: number;
  height: number;
}

/** The ground, its stations and everything that is ridden, with room round it for the horse's breadth and the names. */
export function frameOf(rides: readonly Ridden[]): Frame {
  const [first] = rides;
  if (first === undefined) return { left: -10, top: -10, width: 20, height: 20 };
  const { ground } = first;
  const corners = [
    { x: -ground.width / 2, y: -ground.length / 2 },
    { x: ground.width / 2, y: ground.length / 2 },
  ];
  const paths = rides.flatMap(({ timed }) => cornersOf(boxOf(timed.path)));
  const box = boxAround([...corners, ...paths, ...ground.stations.flatMap(cornersOfStation)]);
  const around = Math.max(1.5, Math.max(box.right - box.left, box.head - box.foot) * 0.065);
  const height = box.head - box.foot + around * 2;
  // Names of stations in the side walls stand outside them; about so wide at the usual height of the plan.
  const letter = (height / USUAL_HEIGHT) * LETTER;
  const besideWall = (side: -1 | 1) =>
    Math.max(
      0,
      ...ground.stations.filter((one) => wallSide(one, ground) === side).map(({ name }) => (name.length + 3) * letter),
    );
  const left = Math.min(box.left, -ground.width / 2 - besideWall(-1)) - around;
  const right = Math.max(box.right, ground.width / 2 + besideWall(1)) + around;
  return { left, top: -box.head - around, width: right - left, height };
}

/** CSS pixels: how high the plan usually is, and how wide a letter of a name. */
const USUAL_HEIGHT = 430;
const LETTER = 6;

/** The side wall a station lies in: -1 left, 1 right, 0 neither. */
export function wallSide({ outline }: GroundStation, ground: RidingGround): -1 | 0 | 1 {
  if (outline.is !== "point" || Math.abs(outline.at.y) > ground.length / 2 - 0.5) return 0;
  if (Math.abs(Math.abs(outline.at.x) - ground.width / 2) > 0.6) return 0;
  return outline.at.x < 0 ? -1 : 1;
}

const cornersOf = ({ left, right, foot, head }: Box): Point[] => [
  { x: left, y: foot },
  { x: right, y: head },
];

/** Places that lie farthest out of a station. */
export function cornersOfStation({ outline }: GroundStation): readonly Point[] {
  switch (outline.is) {
    case "point":
      return [outline.at];
    case "line":
      return [outline.from, outline.to];
    case "area":
      return outline.corners;
  }
}
