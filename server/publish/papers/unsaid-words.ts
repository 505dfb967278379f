/** server/publish/papers/unsaid-words.ts - words of an exercise that nothing is said of yet, and remarks on its words.
 *  May import: schema types, shared/cite, siblings. So that nobody takes a paper for more than it is. */
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import { shortenQuote } from "../../../shared/cite/citation-line.ts";
import { remarksOf } from "../../../shared/drill/questions-and-notes.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { quotesLine } from "./quote-lines.ts";
import { heading, reference, said, words } from "./spans.ts";

/** Longest quotation of words that nobody has spoken of, in characters. */
const LONGEST = 600;

export function unsaidBlocks({ drill }: BuiltPart, level: number): PlainBlock[] {
  const { unmarked } = drill.treated;
  if (unmarked.length === 0) return [];
  const byPlace = new Map<string, Line>();
  for (const { reference: place, language, quote } of unmarked) {
    const line = byPlace.get(place) ?? [reference(place)];
    byPlace.set(place, [...line, words(" "), said(`“${shortenQuote(quote, LONGEST)}”`, language)]);
  }
  const items = [...byPlace.values()].map((line) => ({ words: line, of: [] }));
  return [heading(level, [words("Words nothing is said of yet")]), { is: "list", ordered: false, items }];
}

export function remarkBlocks({ places }: PaperContext, { rows }: BuiltPart, level: number): PlainBlock[] {
  const items = remarksOf(rows).map(({ id, text, citations }) => {
    const cited = quotesLine(places, citations);
    return {
      words: [...(cited.length === 0 ? [] : [...cited, words(" ")]), words(text)],
      of: [{ kind: "notes" as const, id }],
    };
  });
  return items.length === 0 ? [] : [heading(level, [words("Notes")]), { is: "list", ordered: false, items }];
}
