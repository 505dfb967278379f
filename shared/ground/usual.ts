/** shared/ground/usual.ts - what a figure is given where the text does not say, each with where it comes from.
 *  May import: siblings in shared/ground. Keeps rule G30 (shared/ground/RULES.md). Metres and seconds.
 *  Nothing here is used in silence: a figure that takes a value from here says so in its notes. */
import { TOLERANCE, type Tolerance } from "./plane.ts";

/** Settings of one ride. All are lengths above 0 unless said. */
export type Usual = {
  readonly tolerance: Tolerance;
  /** How far from the wall every line stays, 0 or more; 0 lets the line run along the wall itself. */
  readonly margin: number;
  /** The tightest arc of a supplied line. */
  readonly leastRadius: number;
  /** The radius of a supplied line where there is room for it; where there is not, the least. Below the least it is none. */
  readonly joinRadius: number;
  readonly cornerDiameter: number;
  readonly circleDiameter: number;
  readonly volteDiameter: number;
  readonly halfVolteDiameter: number;
  readonly eightDiameter: number;
  readonly oblongWidth: number;
  readonly spiralInner: number;
  /** How much the diameter of a spiral changes from half circle to half circle. */
  readonly spiralStep: number;
  readonly serpentineLoops: number;
  readonly smallHalfCircle: number;
  readonly reinBack: number;
  /** Seconds a halt lasts when nothing says how long. */
  readonly haltSeconds: number;
};

/** Corner: quarter of a volte of about 6 m (FEI Dressage Rules Art. 409.2); volte 6, 8 or 10 m (Art. 410.1). The circle
 *  of 20 m and the rest are common practice without a source. */
export const USUAL: Usual = Object.freeze({
  tolerance: TOLERANCE,
  margin: 0,
  leastRadius: 3,
  joinRadius: 3,
  cornerDiameter: 6,
  circleDiameter: 20,
  volteDiameter: 8,
  halfVolteDiameter: 6,
  eightDiameter: 10,
  oblongWidth: 10,
  spiralInner: 6,
  spiralStep: 2,
  serpentineLoops: 3,
  smallHalfCircle: 3,
  reinBack: 3,
  haltSeconds: 2,
});

/** The radii a supplied line is tried with, the widest first. */
export function joinRadii({ joinRadius, leastRadius }: Usual): readonly number[] {
  return joinRadius > leastRadius ? [joinRadius, leastRadius] : [leastRadius];
}
