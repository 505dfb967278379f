/** client/ride/gone-to.ts - what was gone to last: a finding, or two riders at their nearest. It is shown on plan and words
 *  until the moment moves on. */
import { batch, signal } from "@preact/signals";
import type { Nearest } from "../../shared/ground/distances.ts";
import type { Finding } from "../../shared/ride/ridden.ts";

export const chosenFinding = signal<Finding | null>(null);
export const nearestShown = signal<Nearest | null>(null);

/** Nothing is gone to: the moment moved on. */
export function moveOn(): void {
  batch(() => {
    chosenFinding.value = null;
    nearestShown.value = null;
  });
}
