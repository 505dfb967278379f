/** client/read/start-exercise.ts - an exercise begins at the open passage, and passages go into one or out of it. */
import type { RecordOf } from "../../schema/record.ts";
import { rankBetween } from "../../shared/rank.ts";
import { exercisesOfWork, passagesOfWork, setOutline } from "../state/outline.ts";
import { loadContents, passage, refreshPassage } from "../state/passage.ts";
import { create, newId, write } from "../state/write.ts";

/** Starts an exercise with the open passage and, unless `onlyThis`, the passages after it that stand in none, up to the
 *  next exercise. It comes after the exercise of the passages before it. True when stored. */
export async function startExercise(title: string, onlyThis: boolean): Promise<boolean> {
  const here = passage.value;
  if (here === null) return false;
  const passages = passagesOfWork();
  const at = passages.findIndex(({ value }) => value.id === here.id);
  const end = passages.findIndex(({ value }, index) => index > at && value.exercise !== null);
  const taken = onlyThis ? passages.slice(at, at + 1) : passages.slice(at, end === -1 ? undefined : end);

  const exercises = exercisesOfWork().map(({ value }) => value);
  const owner = passages.slice(0, at).findLast(({ value }) => value.exercise !== null)?.value.exercise;
  const before = exercises.findIndex((other) => other.id === owner);
  const id = newId();
  const row: RecordOf<"exercises"> = {
    id,
    work: here.work,
    rank: rankBetween(exercises[before]?.rank ?? null, exercises[before + 1]?.rank ?? null),
    label: "",
    title,
    note: "",
    ground: null,
  };
  const edits = [create("exercises", row), ...taken.map((other) => setOutline(other, { exercise: id }))];
  return withNewRows(await write(edits, `Exercise: ${title}`));
}

/** Puts the open passage into an exercise, or (null) into none. True when stored. */
export async function putInExercise(exercise: string | null, name: string): Promise<boolean> {
  const row = passagesOfWork().find(({ value }) => value.id === passage.value?.id);
  if (row === undefined) return false;
  return withNewRows(await write([setOutline(row, { exercise })], `The passage stands in ${name}`));
}

/** Another exercise means other rows. */
async function withNewRows(done: boolean): Promise<boolean> {
  if (done) await Promise.all([refreshPassage(), loadContents()]);
  return done;
}
