/** shared/ride/course.ts - the path of a ride while it is being laid: pieces with what they are, and where the horse is.
 *  May import: shared/ground, siblings in shared/ride. Keeps rules R17-R22 (shared/ride/RULES.md). Metres, seconds. */
import type { Manege } from "../ground/figures/figure.ts";
import type { HorseGait } from "../ground/gaits.ts";
import { type Path, pathOf } from "../ground/path.ts";
import { halt, type Piece } from "../ground/piece.ts";
import { type Pose, settled, type Tolerance } from "../ground/plane.ts";
import { secondsOf, type TimedPath, TURN_RATE_GUESS } from "../ground/timed-path.ts";
import { STANDING } from "./gait-of.ts";
import type { RiddenPiece } from "./ridden.ts";
import type { Elsewhere } from "./ride-context.ts";

/** The ground with its usual values, and what the horse was measured to do. */
export interface Setting {
  manege: Manege;
  horse: readonly HorseGait[];
  elsewhere?: Elsewhere;
}

/** A piece with what it is. */
export interface Drafted {
  piece: Piece;
  ridden: RiddenPiece;
}

/** A figure begins at the settled place, up to 0.71 mm from where the last line ended, or up to 1 mm beside that on a
 *  line it meets: so two pieces of a ride are at most 2 mm and a tenth of a degree apart. */
export const RIDE_TOLERANCE: Tolerance = Object.freeze({ distance: 0.002, heading: 10 });

/** Grows as stages are ridden; nobody outside ride-exercise.ts keeps one. */
export class Course {
  readonly drafted: Drafted[] = [];
  /** `times[i]` seconds lie before piece i. */
  readonly times: number[] = [0];
  pose: Pose;
  /** Metres across of the circle last ridden about a station. */
  readonly sizes = new Map<string, number>();
  /** Where the horse was when the figures of an element began, and whether it was mirrored. */
  readonly began = new Map<string, { pose: Pose; mirrored: boolean }>();

  constructor(start: Pose) {
    this.pose = start;
  }

  get seconds(): number {
    return this.times[this.times.length - 1] as number;
  }

  add(drafted: readonly Drafted[]): void {
    for (const one of drafted) {
      this.drafted.push(one);
      this.times.push(this.seconds + secondsOf(one.piece, one.ridden.speed, TURN_RATE_GUESS));
    }
  }

  /** The whole path. A ride in which nothing is ridden is a moment of standing, `standingSeconds` long. */
  timed(standingSeconds: number): TimedPath {
    if (this.drafted.length === 0) this.add([standing(this.pose, standingSeconds, 0, null)]);
    const path: Path = pathOf(
      this.drafted.map(({ piece }) => piece),
      RIDE_TOLERANCE,
    );
    return { path, times: [...this.times], duration: this.seconds };
  }
}

export function standing(pose: Pose, seconds: number, stage: number, action: string | null): Drafted {
  const ridden: RiddenPiece = { stage, action, figure: action === null ? null : "halt", joins: false, ...STANDING };
  return { piece: halt(settled(pose), seconds), ridden };
}
