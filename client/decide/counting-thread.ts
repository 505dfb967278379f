/** client/decide/counting-thread.ts - one thread that counts, and who waits for it: one thing at a time, a newer ask in the place of an
 *  older one of its kind, and what nobody waits for any longer is broken off. */
import { rowsNow } from "../state/rows.ts";
import type { CountAsk, CountValues, FromCounter, LaidOut, ToCounter, Weighing } from "./count-message.ts";
import { NOTHING_HELD, rowsToSend } from "./rows-sent.ts";

export type Told<T> =
  | { is: "done"; value: T }
  | { is: "failed"; sentence: string }
  /** A newer ask came, or a person stopped it. */
  | { is: "dropped" };

export interface Progress {
  asker: string;
  /** The furthest stage that was looked at, from 1, of so many. */
  stage: number;
  of: number;
}

/** A count that has run no longer is let finish even when nobody waits for it, in milliseconds: laying the exercises out
 *  anew would cost more. */
const LET_FINISH = 250;

interface Waiting {
  asker: string;
  weighing: Weighing;
  asked: CountAsk;
  settle: (told: Told<CountValues[keyof CountValues]>) => void;
  layOut: (laid: LaidOut) => void;
}

export class CountingThread {
  readonly #askers: readonly string[];
  readonly #tellProgress: (progress: Progress | null) => void;
  readonly #waiting = new Map<string, Waiting>();
  #worker: Worker | null = null;
  #held = NOTHING_HELD;
  #running: (Waiting & { job: number; since: number; wanted: boolean }) | null = null;
  #jobs = 0;
  #breakOff: ReturnType<typeof setTimeout> | undefined;

  /** The first of `askers` that waits is served first. */
  constructor(askers: readonly string[], tellProgress: (progress: Progress | null) => void = () => undefined) {
    this.#askers = askers;
    this.#tellProgress = tellProgress;
  }

  /** Asks under the rows as they are when its turn comes. */
  ask(waiting: Waiting): void {
    this.drop(waiting.asker);
    this.#waiting.set(waiting.asker, waiting);
    this.#serve();
  }

  /** What this asker waits for is wanted no longer. */
  drop(asker: string): void {
    this.#waiting.get(asker)?.settle({ is: "dropped" });
    this.#waiting.delete(asker);
    const running = this.#running;
    if (running?.asker !== asker || !running.wanted) return;
    running.wanted = false;
    running.settle({ is: "dropped" });
    const left = LET_FINISH - (performance.now() - running.since);
    if (left <= 0) this.#stop();
    else this.#breakOff = setTimeout(() => this.#stop(), left);
  }

  #serve(): void {
    if (this.#running !== null) return;
    const next = this.#askers.flatMap((asker) => this.#waiting.get(asker) ?? [])[0];
    if (next === undefined) return;
    this.#waiting.delete(next.asker);
    this.#jobs += 1;
    this.#running = { ...next, job: this.#jobs, since: performance.now(), wanted: true };
    const { sent, held } = rowsToSend(this.#held, rowsNow.value);
    this.#held = held;
    const message: ToCounter = { job: this.#jobs, rows: sent, weighing: next.weighing, asked: next.asked };
    this.#thread().postMessage(message);
  }

  #thread(): Worker {
    if (this.#worker !== null) return this.#worker;
    const made = new Worker(new URL("./count-worker.ts", import.meta.url), { type: "module" });
    made.onmessage = ({ data }: MessageEvent<FromCounter>) => this.#take(data);
    made.onerror = (event) => {
      event.preventDefault();
      const sentence =
        "The count could not be begun. Load the page again; if that does not help, start the program anew.";
      const told = this.#running;
      this.#stop();
      if (told?.wanted) told.settle({ is: "failed", sentence });
    };
    this.#worker = made;
    return made;
  }

  #take(message: FromCounter): void {
    const running = this.#running;
    if (running === null || message.job !== running.job) return;
    if (message.is === "laid out") {
      if (running.wanted) running.layOut(message.laid);
    } else if (message.is === "progress") {
      const { stage, of } = message;
      if (running.wanted) this.#tellProgress({ asker: running.asker, stage, of });
    } else {
      this.#finish();
      if (running.wanted) running.settle(message);
      this.#serve();
    }
  }

  #finish(): void {
    clearTimeout(this.#breakOff);
    this.#running = null;
    this.#tellProgress(null);
  }

  /** Ends the thread with what it computes; the next ask begins a new one, which is told all rows again. */
  #stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#held = NOTHING_HELD;
    this.#finish();
    this.#serve();
  }
}
