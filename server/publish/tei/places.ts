/** server/publish/tei/places.ts - where marks stand in the texts as they are read now, and the anchors their ends need.
 *  May import: schema types, shared, siblings. Offsets: UTF-16 units from 0, half-open. */
import type { TextAnchor } from "../../../schema/mark.ts";
import type { RecordOf } from "../../../schema/record.ts";
import type { CurrentText, WorkRows } from "../../../shared/drill/exercise-rows.ts";
import { compareRanked } from "../../../shared/rank.ts";

/** A passage in one text of the work. */
export interface PassageNow extends CurrentText {
  passage: RecordOf<"passages">;
  /** Place in the book and number of the text, from 1. */
  order: readonly [passage: number, layer: number];
  /** Begins the names of the anchors in it: "w1.12" is the twelfth passage of the first text. */
  name: string;
}

export interface Places {
  /** By layer, in the order of the book. */
  texts: ReadonlyMap<string, readonly PassageNow[]>;
  /** Offsets at which the text of this id needs an anchor, rising. */
  offsetsIn: (text: string) => readonly number[];
  /** xml:ids of the anchors at both ends; null where the words are lost or no longer stand there. */
  endsOf: (anchor: TextAnchor) => { from: string; to: string } | null;
  /** For sorting by the book: passage, text, offset; null as above. */
  orderOf: (anchor: TextAnchor) => readonly [number, number, number] | null;
  /** The words there as they are now; those that were marked where they are lost. */
  quoteOf: (anchor: TextAnchor) => string;
}

export function placesOf(rows: WorkRows): Places {
  const byText = new Map<string, PassageNow>();
  const texts = new Map<string, PassageNow[]>(rows.layers.map(({ id }) => [id, []]));
  const numbers = new Map(rows.layers.map(({ id }, index) => [id, index + 1]));
  const passages = rows
    .all("passages")
    .filter(({ work }) => work === rows.work.id)
    .sort(compareRanked);
  const current = new Map<string, CurrentText[]>();
  for (const { id } of rows.all("passageTexts")) {
    const now = rows.currentText(id);
    if (now) current.set(now.text.passage, [...(current.get(now.text.passage) ?? []), now]);
  }
  for (const [index, passage] of passages.entries()) {
    for (const now of current.get(passage.id) ?? []) {
      const order = [index + 1, numbers.get(now.layer.id) ?? 0] as const;
      const place = { ...now, passage, order, name: `w${order[1]}.${order[0]}` };
      byText.set(now.text.id, place);
      texts.get(now.layer.id)?.push(place);
    }
  }
  const standing = (anchor: TextAnchor): PassageNow | null =>
    anchor.fate === "lost" ? null : (byText.get(anchor.text) ?? null);
  const offsets = new Map<string, Set<number>>();
  for (const anchor of rows.all("anchors")) {
    if (anchor.is !== "text" || standing(anchor) === null) continue;
    const known = offsets.get(anchor.text) ?? new Set();
    offsets.set(anchor.text, known.add(anchor.from).add(anchor.to));
  }
  return {
    texts,
    offsetsIn: (text) => [...(offsets.get(text) ?? [])].sort((a, b) => a - b),
    endsOf: (anchor) => {
      const place = standing(anchor);
      if (place === null) return null;
      return { from: anchorName(place.name, anchor.from), to: anchorName(place.name, anchor.to) };
    },
    orderOf: (anchor) => {
      const place = standing(anchor);
      return place === null ? null : [...place.order, anchor.from];
    },
    quoteOf: (anchor) => {
      const place = standing(anchor);
      return place === null ? anchor.quote : place.text.text.slice(anchor.from, anchor.to);
    },
  };
}

/** xml:id of the anchor at an offset of a passage. */
export const anchorName = (passage: string, offset: number): string => `${passage}.${offset}`;
