/** server/publish/papers/glossary.ts - words followed through the work, and the movements and holds of its steps: what they are,
 *  where, and in which steps.
 *  May import: schema types, shared/drill, shared/text, siblings. By the word as it is folded for searching, so that no machine's
 *  language decides the order. */
import type { Term } from "../../../schema/crux.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { citationsOf } from "../../../shared/drill/citations.ts";
import { compareCodeUnits, compareRanked } from "../../../shared/rank.ts";
import { foldForSearch } from "../../../shared/text/fold.ts";
import { stopped } from "../stopped.ts";
import { holdLine, usedHolds } from "./holds-page.ts";
import { movementActs, usedMovements } from "./movement-lines.ts";
import type { PaperContext } from "./paper-context.ts";
import { emphasis, heading, type Of, said, soft, words } from "./spans.ts";
import { glossaryAnchor, usesOfThings } from "./thing-index.ts";

type Item = Extract<PlainBlock, { is: "entries" }>["items"][number];

/** Nothing where no word is followed and nothing that has a name is done. */
export function glossaryBlocks(context: PaperContext): PlainBlock[] {
  const terms = termsInOrder(context).map((term) => ({
    word: term.word,
    item: {
      anchor: glossaryAnchor(term.id),
      head: [said(term.word, term.language)],
      lines: termLines(context, term),
      of: [
        { kind: "terms" as const, id: term.id },
        ...sensesOf(context, term.id).map(({ id }) => ({ kind: "senses" as const, id })),
      ],
    },
  }));
  const items = [...terms, ...namedItems(context)]
    .sort((a, b) => compareCodeUnits(foldForSearch(a.word), foldForSearch(b.word)) || compareCodeUnits(a.word, b.word))
    .map(({ item }) => item);
  if (items.length === 0) return [];
  return [heading(2, [words("Glossary")], { anchor: "glossary" }), { is: "entries", as: "glossary", items }];
}

/** Movements and holds that the steps use. */
function namedItems(context: PaperContext): { word: string; item: Item }[] {
  const usesOf = usesOfThings(context);
  const item = (kind: "movements" | "holds", row: { id: string; name: string; note: string }, done: Line) => {
    const word = withoutArticle(row.name);
    const where = context.places.line(citationsOf(context.book, kind, row.id));
    const note: Line = row.note === "" ? [] : [soft(` ${stopped(row.note)}`)];
    const of: Of = [{ kind, id: row.id }];
    const lines = [
      [...done, words("."), ...note, ...(where.length === 0 ? [] : [words(" "), ...where])],
      [soft("In "), ...usesOf(row.id)],
    ];
    return { word, item: { anchor: glossaryAnchor(row.id), head: [words(word)], lines, of } };
  };
  return [
    ...usedMovements(context, context.parts).map(({ movement, part }) =>
      item("movements", movement, movementActs(context, part, movement)),
    ),
    ...usedHolds(context).map((used) => item("holds", used.hold, holdLine(context, used))),
  ];
}

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
