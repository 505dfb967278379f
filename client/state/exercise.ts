/** client/state/exercise.ts - opening a whole exercise or a whole work, for the rooms that are not about one passage. */
import { signal } from "@preact/signals";
import type { Bundle } from "../../schema/api.ts";
import { compareRanked } from "../../shared/rank.ts";
import { ask, type Refused } from "./api.ts";
import { exercise, heldWork, passageId } from "./passage.ts";
import { replaceRows } from "./rows.ts";

/** The exercise whose rows this window has; null while none was opened, or its rows are on the way. */
export const openExerciseId = signal<string | null>(null);
export const exerciseRefusal = signal<Refused | null>(null);

/** Fetches the rows of an exercise. Its first passage becomes the open one unless another of it is open already, so that
 *  Read shows words of what is ridden, and news of changes refreshes the same rows. */
export async function openExercise(id: string): Promise<void> {
  // Until they are there, rows of something else must not pass for those of this exercise.
  if (exercise.value?.id !== id) openExerciseId.value = null;
  heldWork.value = null;
  const answer = await ask<Bundle>(`/api/exercises/${id}`);
  exerciseRefusal.value = answer.ok ? null : answer.error;
  if (!answer.ok) {
    openExerciseId.value = null;
    return;
  }
  const { rows, at } = answer.value;
  const own = (rows.passages ?? [])
    .map(({ value }) => value)
    .filter((passage) => passage.exercise === id)
    .sort(compareRanked);
  replaceRows(rows, at);
  if (!own.some((passage) => passage.id === passageId.value)) passageId.value = own[0]?.id ?? null;
  openExerciseId.value = id;
}

/** Fetches the rows of a whole work. No exercise is open then; the open passage stays, where it is of the work. */
export async function openWork(id: string): Promise<void> {
  openExerciseId.value = null;
  if (heldWork.value !== id) heldWork.value = null;
  const answer = await ask<Bundle>(`/api/works/${id}`);
  exerciseRefusal.value = answer.ok ? null : answer.error;
  if (!answer.ok) return;
  const { rows, at } = answer.value;
  replaceRows(rows, at);
  heldWork.value = id;
  const passages = (rows.passages ?? []).map(({ value }) => value).sort(compareRanked);
  if (!passages.some((passage) => passage.id === passageId.value)) passageId.value = passages[0]?.id ?? null;
}
