/** client/ride/lit-words.ts - where cited words stand in the texts of this window.
 *  May import: schema types, client/state. */
import { computed } from "@preact/signals";
import type { Citation } from "../../schema/drill.ts";
import type { RecordOf } from "../../schema/record.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { compareRanked } from "../../shared/rank.ts";
import { all, one } from "../state/rows.ts";

/** A passage with its texts as they are read now, translations first. */
export interface ReadPassage {
  passage: RecordOf<"passages">;
  texts: { layer: RecordOf<"layers">; text: RecordOf<"passageTexts"> }[];
}

/** Passages whose words this window has, in the order of the book. */
export const readPassages = computed<ReadPassage[]>(() => {
  const byPassage = new Map<string, ReadPassage["texts"]>();
  for (const text of all("passageTexts")) {
    const layer = one("layers", one("revisions", text.revision)?.layer);
    if (layer) byPassage.set(text.passage, [...(byPassage.get(text.passage) ?? []), { layer, text }]);
  }
  const originalsLast = (a: ReadPassage["texts"][number], b: ReadPassage["texts"][number]) =>
    Number(a.layer.is === "original") - Number(b.layer.is === "original") || compareRanked(a.layer, b.layer);
  return all("passages")
    .sort(compareRanked)
    .flatMap((passage) => {
      const texts = byPassage.get(passage.id);
      return texts ? [{ passage, texts: texts.sort(originalsLast) }] : [];
    });
});

/** UTF-16 units of the projection, half-open. */
export interface Place {
  passage: string;
  text: string;
  from: number;
  to: number;
}

/** Where the cited words stand; null when this window does not have their text, or it no longer has those words. */
export function placeOf(citation: Citation): Place | null {
  for (const { passage, texts } of readPassages.value) {
    const [first] = passage.references;
    if (first === undefined || formatReference(first) !== citation.reference) continue;
    for (const { layer, text } of texts) {
      if (layer.title !== citation.layer) continue;
      if (text.text.slice(citation.from, citation.to) !== citation.quote) continue;
      return { passage: passage.id, text: text.id, from: citation.from, to: citation.to };
    }
  }
  return null;
}

export const placesOf = (citations: readonly Citation[]): Place[] =>
  citations.flatMap((citation) => placeOf(citation) ?? []);

/** A run of words and how many of two lists of places cover it. */
export interface Run {
  from: number;
  to: number;
  step: boolean;
  now: boolean;
}

/** A text of so many units cut where a place begins or ends. */
export function runsOf(length: number, step: readonly Place[], now: readonly Place[]): Run[] {
  const cuts = new Set([0, length]);
  for (const { from, to } of [...step, ...now]) {
    cuts.add(Math.min(from, length));
    cuts.add(Math.min(to, length));
  }
  const at = [...cuts].sort((a, b) => a - b);
  const covers = (list: readonly Place[], from: number, to: number) =>
    list.some((place) => place.from <= from && to <= place.to);
  return at.slice(0, -1).map((from, index) => {
    const to = at[index + 1] as number;
    return { from, to, step: covers(step, from, to), now: covers(now, from, to) };
  });
}
