/** client/frame/find-asking.ts - asks the server for words while they are typed: after a moment's pause, one question at a
 *  time, and what was asked before is dropped. */
import { signal } from "@preact/signals";
import type { FindAnswer } from "../../schema/find.ts";
import { wantedWords } from "../../shared/text/wanted-words.ts";
import { ask, type Refused } from "../state/api.ts";

/** Shorter than the pause between two words of a quick typist. */
const PAUSE_MS = 120;
/** How many of each group are listed, at first and when more are wanted. */
export const FEW = 5;
export const MANY = 100;

/** What was last answered, and the words it answers; null while there are none. */
export const answered = signal<{ typed: string; answer: FindAnswer } | null>(null);
export const findRefusal = signal<Refused | null>(null);
/** Whether an answer is on the way. */
export const asking = signal(false);

let waiting: ReturnType<typeof setTimeout> | undefined;
let running: AbortController | null = null;

/** Asks for the words as they stand now. Nothing is asked where there is no letter or digit. */
export function askFor(typed: string, limit = FEW): void {
  stopAsking();
  findRefusal.value = null;
  if (wantedWords(typed).length === 0) {
    answered.value = null;
    return;
  }
  asking.value = true;
  waiting = setTimeout(() => void fetchAnswer(typed, limit), PAUSE_MS);
}

export function stopAsking(): void {
  clearTimeout(waiting);
  running?.abort();
  running = null;
  asking.value = false;
}

async function fetchAnswer(typed: string, limit: number): Promise<void> {
  const own = new AbortController();
  running = own;
  const came = await ask<FindAnswer>(`/api/find?q=${encodeURIComponent(typed)}&limit=${limit}`, undefined, own.signal);
  if (running !== own) return;
  running = null;
  asking.value = false;
  if (came.ok) answered.value = { typed, answer: came.value };
  else findRefusal.value = came.error;
}
