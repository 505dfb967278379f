/** server/find/step-entries.ts - the elements of every exercise with the words of their acts, whatever reading they stand
 *  under: a step that no reading taken keeps is found as well.
 *  May import: schema types, shared/drill, shared/rank, server/store, siblings. */
import type { Kind, RecordOf, Rows } from "../../schema/record.ts";
import type { Slot } from "../../schema/slot.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import { namesOf } from "../../shared/drill/names.ts";
import type { Names } from "../../shared/drill/words.ts";
import { compareRanked } from "../../shared/rank.ts";
import { readRows, type Store } from "../store/index.ts";
import { type Entry, type Part, part } from "./entry.ts";

/** Kinds that the values of acts name. */
const NAMED = ["objects", "holds", "movements", "stations", "threats"] as const satisfies readonly Kind[];

export function namesInStore(store: Store): Names {
  return namesOf(Object.fromEntries(NAMED.map((kind) => [kind, readRows(store, kind)])) as Rows);
}

/** Actions by what owns them, each list in order. */
export function actionsByOwner(store: Store): Map<string, RecordOf<"actions">[]> {
  const owned = new Map<string, RecordOf<"actions">[]>();
  for (const { value } of readRows(store, "actions")) {
    const list = owned.get(value.owner);
    if (list) list.push(value);
    else owned.set(value.owner, [value]);
  }
  for (const list of owned.values()) list.sort(compareRanked);
  return owned;
}

/** What the acts are in words, and their notes. What a crux holds is found with the crux. */
export function actParts(actions: readonly RecordOf<"actions">[], names: Names): Part[] {
  const acts = actions.map(({ act }) => actWords(act, names, null)).filter(Boolean);
  return [...part("", acts.join("; ")), ...actions.flatMap(({ note }) => part("note", note))];
}

export function stepEntries(store: Store): Entry[] {
  const names = namesInStore(store);
  const owned = actionsByOwner(store);
  const exercises = readRows(store, "exercises")
    .map(({ value }) => value)
    .sort(compareRanked);
  const elements = new Map<string, RecordOf<"elements">[]>();
  for (const { value } of readRows(store, "elements")) {
    const list = elements.get(value.exercise);
    if (list) list.push(value);
    else elements.set(value.exercise, [value]);
  }
  return exercises.flatMap((exercise) => {
    let after: Entry | null = null;
    return (elements.get(exercise.id) ?? []).sort(compareRanked).map((element) => {
      after = entryOf(element, exercise.work, owned.get(element.id) ?? [], names, after);
      return after;
    });
  });
}

/** An element without words of its own is read with the one before it. */
function entryOf(
  element: RecordOf<"elements">,
  work: string,
  actions: readonly RecordOf<"actions">[],
  names: Names,
  after: Entry | null,
): Entry {
  const shown = { kind: "elements", id: element.id } as const;
  return {
    kind: "elements",
    id: element.id,
    work,
    exercise: element.exercise,
    title: titleOf(element),
    parts: [
      ...actParts(actions, names),
      ...part("cue", "cue" in element ? saidWords(element.cue) : ""),
      ...exceptionParts(element),
      ...part("note", element.note),
      ...part("who rides it", element.role),
    ],
    place: {
      is: "tied",
      ties: [{ of: shown, shown }, ...actions.map(({ id }) => ({ of: { kind: "actions", id } as const, shown }))],
      after,
    },
  };
}

function titleOf(element: RecordOf<"elements">): string {
  switch (element.is) {
    case "step":
    case "again":
      return element.title;
    case "advice":
      return element.demand;
    case "untreated":
      return "not yet treated";
  }
}

function exceptionParts(element: RecordOf<"elements">): Part[] {
  if (element.is !== "again") return [];
  return element.except.flatMap((exception) => (exception.is === "words" ? part("save that", exception.words) : []));
}

function saidWords(slot: Slot<unknown> | undefined): string {
  return slot?.is === "said" ? String(slot.value) : "";
}
