/** server/publish/cited.ts - citations on the page: where it stands, and the words that stand there.
 *  May import: schema types, shared/cite, siblings. */
import type { Citation, DrillElement, DrillValue } from "../../schema/drill.ts";
import { shortenQuote } from "../../shared/cite/citation-line.ts";
import { html, joined, type Markup } from "./markup.ts";

/** Longest quotation on the page, in characters; of a longer one the middle is left out, and "…" says so. */
export const LONGEST_ON_PAGE = 600;

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

/** Gathered under the reference, each text on a line of its own: `f. 7r, ll. 4–9 “words” “words”`. Null when there are
 *  none. */
export function citedPlaces(citations: readonly Citation[]): Markup | null {
  if (citations.length === 0) return null;
  const groups = quotedByPlace(citations).map(({ reference, texts }) => {
    const lines = texts.map(({ citations: list }, index) => {
      const quotes = joined(list.map(quoted), " ");
      return index === 0
        ? html`<span><span class="ref">${reference}</span> ${quotes}</span>`
        : html`<span class="beside">${quotes}</span>`;
    });
    return html`<span class="place">${joined(lines, " ")}</span>`;
  });
  return joined(groups, " ");
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

/** The words of one citation, in their own language; a gap between words and lost words are told as such. */
function quoted(citation: Citation): Markup {
  const words = shortenQuote(citation.quote, LONGEST_ON_PAGE);
  const state =
    citation.state === "lost"
      ? html` <span class="soft">(no longer in the text)</span>`
      : citation.state === "reworded"
        ? html` <span class="soft">(reworded since it was marked)</span>`
        : null;
  if (words === "") return html`<span class="soft">(between words)</span>${state}`;
  return html`<bdi class="said" lang="${citation.language}">“${words}”</bdi>${state}`;
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

/** Something that is no words of the text, and what is believed because of it. */
export interface Rest {
  rests: string;
  /** "level: high", or an act in words, each once. None for a part not treated, which asserts nothing. */
  supports: string[];
}

/** What an element itself is there for, as the words before what it rests on. */
const ITSELF = {
  step: "that it is done",
  again: "that it is done",
  advice: "that it is asked",
  untreated: null,
} as const;

/** What it rests on besides words, each once, with all it supports. What an act rests on supports its values too, and
 *  they are not told again. */
export function restsOfElement(element: DrillElement): Rest[] {
  const bySentence = new Map<string, Set<string>>();
  const add = (rests: readonly string[], supports: string | null): void => {
    for (const sentence of rests) {
      const known = bySentence.get(sentence) ?? new Set();
      bySentence.set(sentence, supports === null ? known : known.add(supports));
    }
  };
  const addValue = ({ rests, label, text }: DrillValue, told: readonly string[]): void =>
    add(
      rests.filter((sentence) => !told.includes(sentence)),
      `${label}: ${text}`,
    );
  add(element.rests, ITSELF[element.is]);
  for (const value of element.values) addValue(value, []);
  for (const action of element.actions) {
    if (action.inherited) continue;
    add(action.rests, action.text);
    for (const value of action.values) addValue(value, action.rests);
  }
  return [...bySentence].map(([rests, supports]) => ({ rests, supports: [...supports] }));
}
