/** client/decide/count-desk.ts - where counts are asked for. What a person waits for has a thread of its own, so that it never waits
 *  for what can be told a moment later. */
import { signal } from "@preact/signals";
import type { CountAsk, CountValues, LaidOut, Weighing } from "./count-message.ts";
import { CountingThread, type Progress, type Told } from "./counting-thread.ts";

const AT_ONCE = ["count", "beside", "why"] as const;
const LATER = ["nearest", "next", "alarm", "alarm as adopted"] as const;
export type Asker = (typeof AT_ONCE)[number] | (typeof LATER)[number];

/** How far the count that is waited for has come; null while none has run long enough to speak of. */
export const progress = signal<Progress | null>(null);

const atOnce = new CountingThread(AT_ONCE, (now) => {
  progress.value = now;
});
const later = new CountingThread(LATER);
const threadOf = (asker: Asker): CountingThread => ((LATER as readonly string[]).includes(asker) ? later : atOnce);

/** A newer ask takes the place of an older one of the same asker. `layOut` is told what is counted, before a count is done. */
export function askCount<D extends CountAsk["do"]>(
  asker: Asker,
  weighing: Weighing,
  asked: Extract<CountAsk, { do: D }>,
  layOut: (laid: LaidOut) => void = () => undefined,
): Promise<Told<CountValues[D]>> {
  return new Promise((resolve) => {
    const settle = resolve as (told: Told<CountValues[keyof CountValues]>) => void;
    threadOf(asker).ask({ asker, weighing, asked, settle, layOut });
  });
}

/** What this asker waits for is wanted no longer. */
export function drop(asker: Asker): void {
  threadOf(asker).drop(asker);
}
