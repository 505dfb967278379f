/** server/publish/papers/glossary.ts - words followed through the work, with what they mean and where.
 *  May import: schema types, shared/drill, shared/text, siblings. By the word as it is folded for searching, so that no machine's
 *  language decides the order. */
import type { Term } from "../../../schema/crux.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import { citationsOf } from "../../../shared/drill/citations.ts";
import { compareCodeUnits, compareRanked } from "../../../shared/rank.ts";
import { foldForSearch } from "../../../shared/text/fold.ts";
import { stopped } from "../stopped.ts";
import type { PaperContext } from "./paper-context.ts";
import { emphasis, heading, said, soft, words } from "./spans.ts";

/** Nothing where no word is followed. */
export function glossaryBlocks(context: PaperContext): PlainBlock[] {
  const terms = termsInOrder(context);
  if (terms.length === 0) return [];
  const items = terms.map((term) => ({
    anchor: termAnchor(term.id),
    head: [said(term.word, term.language)],
    lines: termLines(context, term),
    of: [
      { kind: "terms" as const, id: term.id },
      ...sensesOf(context, term.id).map(({ id }) => ({ kind: "senses" as const, id })),
    ],
  }));
  return [heading(2, [words("Glossary")], { anchor: "glossary" }), { is: "entries", as: "glossary", items }];
}

export const termAnchor = (term: string): string => `term-${term}`;

export function termsInOrder({ book }: PaperContext): Term[] {
  const key = ({ word }: Term): string => foldForSearch(word);
  return book
    .all("terms")
    .filter(({ work }) => work === book.work.id)
    .sort(
      (a, b) => compareCodeUnits(key(a), key(b)) || compareCodeUnits(a.word, b.word) || compareCodeUnits(a.id, b.id),
    );
}

export function sensesOf({ book }: PaperContext, term: string) {
  return book
    .all("senses")
    .filter((sense) => sense.term === term)
    .sort(compareRanked);
}

function termLines(context: PaperContext, { id, note }: Term): Line[] {
  const { book, places } = context;
  const senses = sensesOf(context, id);
  const lines = senses.map((sense, index): Line => {
    const where = places.line(citationsOf(book, "senses", sense.id));
    return [
      ...(senses.length > 1 ? [soft(`${index + 1}. `)] : []),
      emphasis(sense.title),
      words(sense.gloss === "" ? "." : `. ${stopped(sense.gloss)}`),
      ...(where.length === 0 ? [] : [words(" "), ...where]),
    ];
  });
  const unsorted = places.line(citationsOf(book, "terms", id));
  return [
    ...lines,
    ...(unsorted.length === 0 ? [] : [[soft("Also at "), ...unsorted]]),
    ...(note === "" ? [] : [[soft(stopped(note))]]),
  ];
}
