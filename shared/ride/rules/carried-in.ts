/** shared/ride/rules/carried-in.ts - what the rules remember from one stage to the next.
 *  May import: nothing. */

export interface HoldInForce {
  hold: string;
  object: string;
  /** The stage and action that took the object to it. */
  stage: number;
  action: string;
}

/** What the text last did with the reins. */
export type ReinStory = "not told" | "held" | "laid" | "let go";

/** What was so before the first stage: by the instructions, or where a ride is judged from the middle. */
export interface CarriedIn {
  /** By object. */
  holds: ReadonlyMap<string, HoldInForce>;
  reins: ReinStory;
}

export const NOTHING_CARRIED_IN: CarriedIn = Object.freeze({
  holds: new Map<string, HoldInForce>(),
  reins: "not told",
});
