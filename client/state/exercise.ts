/** client/state/exercise.ts - opening a whole exercise, for the rooms that ride or print it and not one passage of it. */
import { signal } from "@preact/signals";
import type { Bundle } from "../../schema/api.ts";
import { compareRanked } from "../../shared/rank.ts";
import { ask, type Refused } from "./api.ts";
import { passageId } from "./passage.ts";
import { replaceRows } from "./rows.ts";

/** The exercise whose rows this window has; null while none was opened, or its rows are on the way. */
export const openExerciseId = signal<string | null>(null);
export const exerciseRefusal = signal<Refused | null>(null);

/** Fetches the rows of an exercise. Its first passage becomes the open one unless another of it is open already, so that
 *  Read shows words of what is ridden, and news of changes refreshes the same rows. */
export async function openExercise(id: string): Promise<void> {
  const answer = await ask<Bundle>(`/api/exercises/${id}`);
  exerciseRefusal.value = answer.ok ? null : answer.error;
  if (!answer.ok) {
    openExerciseId.value = null;
    return;
  }
  const { rows, at } = answer.value;
  const own = (rows.passages ?? [])
    .map(({ value }) => value)
    .filter(({ exercise }) => exercise === id)
    .sort(compareRanked);
  replaceRows(rows, at);
  if (!own.some((passage) => passage.id === passageId.value)) passageId.value = own[0]?.id ?? null;
  openExerciseId.value = id;
}
