/** client/read/shared-new.ts - a shared thing with a name and nothing else said of it. */
import type { RecordOf } from "../../schema/record.ts";
import { exercise, work } from "../state/passage.ts";
import { newId } from "../state/write.ts";
import { lastRank, newRow } from "./row-choice.tsx";
import type { SharedKind } from "./shared-open.ts";
import { entered } from "./support.ts";

/** Null when no work is open. An instruction stands throughout the open exercise; it can be given to the whole work. */
export function newShared<K extends SharedKind>(kind: K, name: string): RecordOf<K> | null {
  const owner = work.value?.id;
  if (owner === undefined) return null;
  const base = { id: newId(), work: owner, note: "" };
  switch (kind as SharedKind) {
    case "grounds":
      return { ...base, rank: lastRank("grounds"), name, is: "rectangular", slots: {} } as unknown as RecordOf<K>;
    case "standings":
      return {
        ...base,
        exercise: exercise.value?.id ?? null,
        rank: lastRank("standings"),
        is: "instruction",
        title: name,
        guard: [],
        existence: entered([]),
      } as unknown as RecordOf<K>;
    case "objects":
      return newRow("objects", name) as RecordOf<K> | null;
    case "holds":
      return newRow("holds", name) as RecordOf<K> | null;
    case "movements":
      return newRow("movements", name) as RecordOf<K> | null;
    case "threats":
      return newRow("threats", name) as RecordOf<K> | null;
  }
}
