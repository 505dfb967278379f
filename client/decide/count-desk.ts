/** client/decide/count-desk.ts - asks the counting thread, one thing at a time: a newer ask takes the place of an older one of
 *  its kind, and a count nobody waits for any longer is broken off. */
import { signal } from "@preact/signals";
import { rowsNow } from "../state/rows.ts";
import type { CountAsk, CountValues, FromCounter, LaidOut, ToCounter, Weighing } from "./count-message.ts";
import { NOTHING_HELD, rowsToSend } from "./rows-sent.ts";

/** Who asks; the first of these that waits is served first. */
const ASKERS = ["count", "beside", "why", "next", "alarm", "alarm as adopted"] as const;
export type Asker = (typeof ASKERS)[number];

export type Told<T> =
  | { is: "done"; value: T }
  | { is: "failed"; sentence: string }
  /** A newer ask came, or a person stopped it. */
  | { is: "dropped" };

/** How far the count that is running has come; null while none has run long enough to speak of. */
export const progress = signal<{ asker: Asker; stage: number; of: number } | null>(null);

/** A count that has run no longer is let finish even when nobody waits for it, in milliseconds: laying the exercises out
 *  anew would cost more. */
const LET_FINISH = 250;

interface Waiting {
  asker: Asker;
  weighing: Weighing;
  asked: CountAsk;
  settle: (told: Told<CountValues[keyof CountValues]>) => void;
  layOut: (laid: LaidOut) => void;
}

const waiting = new Map<Asker, Waiting>();
let worker: Worker | null = null;
let held = NOTHING_HELD;
let running: (Waiting & { job: number; since: number; wanted: boolean }) | null = null;
let jobs = 0;
let breakOff: ReturnType<typeof setTimeout> | undefined;

/** Asks under the rows as they are when its turn comes. `layOut` is told what is counted, before a count is done. */
export function askCount<D extends CountAsk["do"]>(
  asker: Asker,
  weighing: Weighing,
  asked: Extract<CountAsk, { do: D }>,
  layOut: (laid: LaidOut) => void = () => undefined,
): Promise<Told<CountValues[D]>> {
  drop(asker);
  return new Promise((resolve) => {
    waiting.set(asker, { asker, weighing, asked, settle: resolve as Waiting["settle"], layOut });
    serve();
  });
}

/** What this asker waits for is wanted no longer. */
export function drop(asker: Asker): void {
  waiting.get(asker)?.settle({ is: "dropped" });
  waiting.delete(asker);
  if (running?.asker !== asker || !running.wanted) return;
  running.wanted = false;
  running.settle({ is: "dropped" });
  const left = LET_FINISH - (performance.now() - running.since);
  if (left <= 0) stop();
  else breakOff = setTimeout(stop, left);
}

function serve(): void {
  if (running !== null) return;
  const next = ASKERS.flatMap((asker) => waiting.get(asker) ?? [])[0];
  if (next === undefined) return;
  waiting.delete(next.asker);
  jobs += 1;
  running = { ...next, job: jobs, since: performance.now(), wanted: true };
  const { sent, held: now } = rowsToSend(held, rowsNow.value);
  held = now;
  const message: ToCounter = { job: jobs, rows: sent, weighing: next.weighing, asked: next.asked };
  counter().postMessage(message);
}

function counter(): Worker {
  if (worker !== null) return worker;
  const made = new Worker(new URL("./count-worker.ts", import.meta.url), { type: "module" });
  made.onmessage = ({ data }: MessageEvent<FromCounter>) => take(data);
  made.onerror = (event) => {
    event.preventDefault();
    const sentence =
      "The count could not be begun. Load the page again; if that does not help, start the program anew.";
    const told = running;
    stop();
    if (told?.wanted) told.settle({ is: "failed", sentence });
  };
  worker = made;
  return made;
}

function take(message: FromCounter): void {
  if (running === null || message.job !== running.job) return;
  if (message.is === "laid out") {
    if (running.wanted) running.layOut(message.laid);
    return;
  }
  if (message.is === "progress") {
    if (running.wanted) progress.value = { asker: running.asker, stage: message.stage, of: message.of };
    return;
  }
  const { wanted, settle } = running;
  finish();
  if (wanted) settle(message);
  serve();
}

function finish(): void {
  clearTimeout(breakOff);
  running = null;
  progress.value = null;
}

/** Ends the thread with what it computes; the next ask begins a new one, which is told all rows again. */
function stop(): void {
  worker?.terminate();
  worker = null;
  held = NOTHING_HELD;
  finish();
  serve();
}
