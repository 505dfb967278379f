/** client/decide/answers.ts - what the Decide room shows, kept current while it is open: what holds under what is picked, what
 *  holds where a pick is let go, why not, and what to settle next. Rows come from the window, counts from the thread. */
import { computed, effect, signal } from "@preact/signals";
import type {
  AnsweredReading,
  DecideAnswer,
  DecideAsk,
  NextStep,
  Pick,
  WhyNot,
} from "../../shared/ride/puzzle/index.ts";
import { openExerciseId } from "../state/exercise.ts";
import { heldWork } from "../state/passage.ts";
import { all, ranked, rowsNow } from "../state/rows.ts";
import { askCount, drop } from "./count-desk.ts";
import type { LaidOut, Weighing } from "./count-message.ts";
import type { Told } from "./counting-thread.ts";
import { asAdopted, efforts, leftOut, picks, way } from "./wish.ts";

/** The exercises that lie open, in the order of the book; empty while none does. */
export const openExercises = computed<string[]>(() => {
  const work = heldWork.value;
  if (work !== null) {
    return ranked("exercises")
      .filter((exercise) => exercise.work === work)
      .map(({ id }) => id);
  }
  return openExerciseId.value === null ? [] : [openExerciseId.value];
});
const weighing = computed<Weighing | null>(() =>
  openExercises.value.length === 0 ? null : { exercises: openExercises.value, way: way.value },
);
export const askNow = computed<DecideAsk>(() => ({
  picks: picks.value,
  asAdopted: asAdopted.value,
  without: leftOut.value,
}));

/** What lies open, laid out for counting. */
export const laid = signal<LaidOut | null>(null);
/** The last that was counted; it stays while the next is under way. */
export const answered = signal<DecideAnswer | null>(null);
export const counting = signal(false);
/** Why there is no count, in a sentence; "" while there is one, or one is under way. */
export const failure = signal("");
export const stopped = signal(false);
const beside = signal<readonly AnsweredReading[]>([]);

/** Numbers of every reading, by its id; of a picked crux as if it were not picked. */
export const shares = computed<ReadonlyMap<string, AnsweredReading>>(() => {
  const known = new Map((answered.value?.shares ?? []).map((share) => [share.reading, share]));
  const pickedCruxes = new Set(picks.value.map(({ crux }) => crux));
  for (const share of beside.value) if (pickedCruxes.has(share.crux)) known.set(share.reading, share);
  return known;
});

/** What the reader asked the reason of: nothing, why nothing holds, or why one reading is dead. */
export const asked = signal<{ target: Pick | null } | null>(null);
export const why = signal<Told<WhyNot> | null>(null);
export const next = signal<Told<NextStep[]> | null>(null);

/** Open questions that bear on what lies open. */
export const openQuestions = computed(() => all("questions").filter(({ state }) => state.is === "open"));

export function askWhy(target: Pick | null): void {
  asked.value = { target };
}
export function noMoreWhy(): void {
  asked.value = null;
}
export const isAsked = (target: Pick | null): boolean => {
  const now = asked.value;
  return now !== null && now.target?.reading === target?.reading;
};

/** Breaks the count off that is under way; it is begun again when something changes, or is asked for. */
export function stopCounting(): void {
  for (const asker of ["count", "beside", "why", "next"] as const) drop(asker);
  counting.value = false;
  stopped.value = true;
}
export function countOnceMore(): void {
  stopped.value = false;
  again.value += 1;
}
const again = signal(0);

/** Counts from now on with every change, until the function it gives is called. */
export function keepCounting(): () => void {
  const ends = [effect(countAll), effect(countBeside), effect(sayWhy), effect(sayNext)];
  return () => {
    for (const end of ends) end();
    for (const asker of ["count", "beside", "why", "next"] as const) drop(asker);
    laid.value = null;
    answered.value = null;
    next.value = null;
    asked.value = null;
    beside.value = [];
  };
}

/** Whatever row changes may change the count. */
const toCount = computed(() => ({
  rows: rowsNow.value,
  weighed: weighing.value,
  ask: askNow.value,
  again: again.value,
}));

function countAll(): void {
  const { weighed, ask } = toCount.value;
  if (weighed === null) return;
  counting.value = true;
  stopped.value = false;
  const layOut = (now: LaidOut) => {
    laid.value = now;
  };
  void askCount("count", weighed, { do: "answer", ask }, layOut).then((told) => {
    if (told.is === "dropped") return;
    counting.value = false;
    failure.value = told.is === "failed" ? told.sentence : "";
    answered.value = told.is === "done" ? told.value : null;
  });
}

function countBeside(): void {
  const [weighed, ask, now] = [weighing.value, askNow.value, answered.value];
  if (weighed === null || now === null || ask.picks.length === 0) {
    beside.value = [];
    return;
  }
  void askCount("beside", weighed, { do: "beside", ask }).then((told) => {
    if (told.is === "done") beside.value = told.value;
  });
}

function sayWhy(): void {
  const [weighed, ask, target, now] = [weighing.value, askNow.value, asked.value, answered.value];
  why.value = null;
  if (weighed === null || target === null || now === null) {
    drop("why");
    return;
  }
  void askCount("why", weighed, { do: "why", ask, target: target.target }).then((told) => {
    if (told.is !== "dropped") why.value = told;
  });
}

function sayNext(): void {
  const [weighed, ask, questions, now] = [weighing.value, askNow.value, openQuestions.value, answered.value];
  if (weighed === null || now === null) return;
  void askCount("next", weighed, { do: "next", ask, questions, efforts: efforts.value }).then((told) => {
    if (told.is !== "dropped") next.value = told;
  });
}
