/** server/commands/find-row.ts - a work or an exercise by its id, title or label, as a person types it.
 *  May import: schema types, server/store, server/errors. */
import type { RecordOf } from "../../schema/record.ts";
import { compareRanked } from "../../shared/rank.ts";
import { done, type Outcome, refused } from "../errors.ts";
import { readRows, type Store } from "../store/index.ts";

export function findWork(store: Store, asked: string): Outcome<RecordOf<"works">> {
  const all = readRows(store, "works").map(({ value }) => value);
  return theOne("work", asked, all, ({ id, title }) => [id, title]);
}

/** By id, by title, or by label where only one exercise has it. */
export function findExercise(store: Store, asked: string): Outcome<RecordOf<"exercises">> {
  const all = readRows(store, "exercises").map(({ value }) => value);
  return theOne("exercise", asked, all, ({ id, title, label }) => [id, title, label]);
}

function theOne<T extends { id: string; title: string; rank: string }>(
  what: string,
  asked: string,
  all: T[],
  namesOf: (row: T) => string[],
): Outcome<T> {
  const wanted = asked.trim().toLowerCase();
  const found = all.sort(compareRanked).filter((row) => namesOf(row).some((name) => name.toLowerCase() === wanted));
  const [first, second] = found;
  if (first !== undefined && second === undefined) return done(first);
  const listed = (first === undefined ? all : found).slice(0, 8).map(({ id, title }) => `“${title}” (${id})`);
  const choose = listed.length === 0 ? `There is no ${what} yet.` : `Choose from ${listed.join(", ")}.`;
  const problem =
    first === undefined ? `No ${what} is called “${asked}”` : `More than one ${what} is called “${asked}”`;
  return refused("row_unknown", `${problem}. ${choose}`);
}
