/** client/ride/pointed-span.ts - the stretch of a lane that is pointed at or has the focus, so that all its words can be read. */
import { signal } from "@preact/signals";
import type { LaneSpan } from "../../shared/ride/ridden.ts";

export interface Pointed {
  lane: string;
  span: LaneSpan;
}
export const pointed = signal<Pointed | null>(null);

/** It is pointed at no longer, unless another is by now. */
export function pointAway(span: LaneSpan): void {
  if (pointed.value?.span === span) pointed.value = null;
}
