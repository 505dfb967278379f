/** client/decide/alarms.ts - readings that are adopted and dead, in the exercise that lies open, for every room that uses them. Counted only
 *  while something shows it, off the main thread, and a moment after the last change.
 *  A reading is dead when no way to read the exercise holds with it; how others are adopted does not matter for that. */
import { computed, effect, signal } from "@preact/signals";
import type { AnsweredReading } from "../../shared/ride/puzzle/index.ts";
import { openExerciseId } from "../state/exercise.ts";
import { exercise, heldWork } from "../state/passage.ts";
import { all, one, rowsNow } from "../state/rows.ts";
import { openExercises } from "./answers.ts";
import { askCount, drop } from "./count-desk.ts";
import type { Weighing } from "./count-message.ts";

export interface Alarm {
  crux: string;
  sentence: string;
}

interface Counted {
  shares: ReadonlyMap<string, AnsweredReading>;
  /** Whether something holds when everything is read as adopted; null while that is not counted. */
  adoptedHolds: boolean | null;
}

/** Longer than the pause between two letters of a quick typist. */
const PAUSE_MS = 200;

const weighing = computed<Weighing | null>(() => {
  // The exercise of the passage that is open: another one may have been ridden before it was opened.
  const here = exercise.value?.id ?? openExerciseId.value;
  const open = heldWork.value === null ? (here === null ? [] : [here]) : openExercises.value;
  return open.length === 0 ? null : { exercises: open, way: "mounted" };
});
const toCount = computed(() => ({ rows: rowsNow.value, weighed: weighing.value }));

let end: (() => void) | null = null;
/** What is counted when nothing is picked; null while that is not known. Counting lasts while something reads this. */
const counted = signal<Counted | null>(null, {
  watched: () => {
    end = effect(countSoon);
  },
  unwatched: () => {
    end?.();
    end = null;
    drop("alarm");
    drop("alarm as adopted");
  },
});

function countSoon(): () => void {
  const { weighed } = toCount.value;
  const timer = setTimeout(() => {
    if (weighed === null) counted.value = null;
    else void countNow(weighed);
  }, PAUSE_MS);
  return () => clearTimeout(timer);
}

async function countNow(weighed: Weighing): Promise<void> {
  const nothing = { picks: [], without: [] };
  const plain = await askCount("alarm", weighed, { do: "answer", ask: { ...nothing, asAdopted: false } });
  // A count that fails is told where one asks for it; here it only means that nothing is known.
  if (plain.is !== "done") return;
  const shares = new Map(plain.value.shares.map((share) => [share.reading, share]));
  counted.value = { shares, adoptedHolds: counted.value?.adoptedHolds ?? null };
  const adopted = await askCount("alarm as adopted", weighed, { do: "answer", ask: { ...nothing, asAdopted: true } });
  if (adopted.is !== "done") return;
  const { exact, holding } = adopted.value;
  counted.value = { shares, adoptedHolds: exact ? holding !== "0" : null };
}

/** Shares of the readings when nothing is picked, by reading; empty while they are not known. */
export const plainShares = computed(() => counted.value?.shares ?? new Map<string, AnsweredReading>());

/** Adopted readings that no way to ride the exercise takes. */
export const deadAdopted = computed<Alarm[]>(() => {
  const known = plainShares.value;
  return all("readings").flatMap(({ id, crux, title, status }) => {
    if (status.is !== "adopted" || known.get(id)?.verdict !== "dead") return [];
    const of = one("cruxes", crux)?.title ?? "";
    return [
      {
        crux,
        sentence: `“${title}” is adopted at † ${of}, and under the rules and what else is decided it cannot be ridden.`,
      },
    ];
  });
});

/** What is the matter with what is adopted, in sentences; empty when nothing is. */
export const alarms = computed<Alarm[]>(() => {
  const dead = deadAdopted.value;
  if (dead.length > 0 || counted.value?.adoptedHolds !== false) return dead;
  return [{ crux: "", sentence: "Each adopted reading can be ridden, but not all of them together." }];
});
