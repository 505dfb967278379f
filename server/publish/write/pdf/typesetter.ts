/** server/publish/write/pdf/typesetter.ts - has data set into pages by the thread that does it, one paper after another.
 *  May import: Node's own modules, siblings, the room above. The thread is started at the first paper and kept; it does not
 *  keep the program running. */
import { join } from "node:path";
import { Worker } from "node:worker_threads";
import { faces } from "../face-files.ts";
import type { Trial } from "./fit.ts";

const FOLDER = join(import.meta.dirname, "template");
const THREAD = join(import.meta.dirname, "typesetter-thread.mjs");

interface Asked {
  resolve: (answer: unknown) => void;
  reject: (problem: Error) => void;
}

/** The thread, and who waits for its answer; null when nobody does. */
interface Thread {
  worker: Worker;
  asked: Asked | null;
}

let thread: Thread | null = null;
/** Settled when the paper before is done, well or not. */
let before: Promise<unknown> = Promise.resolve();

export interface Typesetter {
  /** Sets data into pages, in place of those set before. */
  set(data: unknown): Promise<Trial>;
  /** The bytes of the pages set last: a tagged PDF, checked against PDF/UA-1 as far as the type setter checks. */
  bytes(): Promise<Uint8Array>;
  /** Lets the pages set last go, where their bytes are not wanted. */
  letGo(): Promise<void>;
}

/** Gives `work` the type setter to itself. What it is asked fails with an Error where the template has a mistake or the
 *  paper cannot be made accessible: these are ours to mend. */
export function withTypesetter<T>(work: (typesetter: Typesetter) => Promise<T>): Promise<T> {
  const typesetter: Typesetter = {
    set: async (data) => (await ask("set", JSON.stringify(data))) as Trial,
    bytes: async () => (await ask("bytes")) as Uint8Array,
    letGo: async () => void (await ask("letGo")),
  };
  const done = before.then(() => work(typesetter));
  before = done.catch(() => null);
  return done;
}

function ask(what: "set" | "bytes" | "letGo", words?: string): Promise<unknown> {
  thread ??= startThread();
  const { worker } = thread;
  const mine = thread;
  worker.ref();
  return new Promise((resolve, reject) => {
    mine.asked = { resolve, reject };
    worker.postMessage({ ask: what, words });
  }).finally(() => worker.unref());
}

function startThread(): Thread {
  const worker = new Worker(THREAD, {
    workerData: { folder: FOLDER, faces: faces().map(({ path }) => path) },
    execArgv: [],
  });
  const started: Thread = { worker, asked: null };
  const settle = (answer: unknown, problem: string | null): void => {
    const { asked } = started;
    started.asked = null;
    if (problem === null) asked?.resolve(answer);
    else asked?.reject(new Error(`The pages could not be set: ${problem}`));
  };
  const end = (problem: string): void => {
    if (thread === started) thread = null;
    settle(null, problem);
  };
  worker.on("message", ({ answer, problem }: { answer?: unknown; problem?: string }) =>
    settle(answer, problem ?? null),
  );
  worker.on("error", (error) => end(error.message));
  worker.on("exit", () => end("the type setter has stopped"));
  return started;
}
