/** server/publish/cited.ts - citations gathered for a paper: where it stands, and the words that stand there.
 *  May import: schema types. */
import type { Citation, DrillElement } from "../../schema/drill.ts";

/** The words of one text at one place, in the order of the text. */
export interface QuotedText {
  language: string;
  citations: Citation[];
}

/** Each place once, with the words of each text that stand there. Words that stand within longer quoted ones are left out. */
export function quotedByPlace(citations: readonly Citation[]): { reference: string; texts: QuotedText[] }[] {
  const byReference = new Map<string, Map<string, Citation[]>>();
  for (const citation of citations) {
    const byLayer = byReference.get(citation.reference) ?? new Map<string, Citation[]>();
    byReference.set(citation.reference, byLayer);
    byLayer.set(citation.layer, [...(byLayer.get(citation.layer) ?? []), citation]);
  }
  return [...byReference].map(([reference, byLayer]) => ({
    reference,
    texts: [...byLayer.values()].map((list) => ({ language: list[0]?.language ?? "", citations: outermost(list) })),
  }));
}

/** Citations of one text that lie in no other of the list, in the order of the text. */
function outermost(citations: readonly Citation[]): Citation[] {
  const byPlace = [...citations].sort((a, b) => a.from - b.from || b.to - a.to);
  const kept: Citation[] = [];
  for (const citation of byPlace) {
    const within = kept.some(
      (other) =>
        other.from <= citation.from &&
        citation.to <= other.to &&
        other.state === citation.state &&
        other.quote.includes(citation.quote),
    );
    if (!within) kept.push(citation);
  }
  return kept;
}

/** All places an element rests on: its own words, and those of what is done in it and of every value. What a step only
 *  inherits is cited at the instruction. */
export function citationsOfElement(element: DrillElement): Citation[] {
  const own = element.actions.filter((action) => !action.inherited);
  return [
    ...element.citations,
    ...element.values.flatMap((value) => value.citations),
    ...own.flatMap((action) => [...action.citations, ...action.values.flatMap((value) => value.citations)]),
  ];
}
