/** server/publish/papers/paper-context.ts - what everything on one paper is built with.
 *  May import: schema types, shared/drill, siblings. */
import type { PaperAsk, Span } from "../../../schema/paper.ts";
import type { Rows } from "../../../schema/record.ts";
import type { WorkRows } from "../../../shared/drill/exercise-rows.ts";
import { namesOf } from "../../../shared/drill/names.ts";
import type { Names } from "../../../shared/drill/words.ts";
import { type BookPlaces, bookPlaces } from "./book-places.ts";
import type { LaidRows } from "./laid-rows.ts";
import { type BuiltPart, buildPart } from "./paper-part.ts";
import { type PaperSigns, signPaper } from "./paper-signs.ts";
import { words } from "./spans.ts";

/** A source that is cited, and where in it. */
export interface CitedSource {
  source: string;
  where: string;
}

export interface PaperContext {
  ask: PaperAsk;
  rows: Rows;
  book: WorkRows;
  parts: readonly BuiltPart[];
  signs: PaperSigns;
  places: BookPlaces;
  names: Names;
  /** Stands in a line for the citation of a source until all of them are known: the first and the later forms depend on
   *  what comes before. `finishPaper` puts the words in its place. */
  cite: (source: string, where: string) => Span;
  cited: ReadonlyMap<Span, CitedSource>;
}

/** Throws RangeError where something that is asked for is not among the rows: `problemWithAsk` is asked first. */
export function paperContext(laid: LaidRows, ask: PaperAsk): PaperContext {
  const { rows } = laid;
  const exercise = rows.exercises?.find(({ value }) => value.id === ask.parts[0]?.exercise)?.value;
  if (exercise === undefined) throw new RangeError("A paper has at least one exercise that is among the rows.");
  const book = laid.book(exercise.work);
  const parts = ask.parts.map((part) => buildPart(laid, book, part, ask));
  const cited = new Map<Span, CitedSource>();
  return {
    ask,
    rows,
    book,
    parts,
    signs: signPaper(parts.map(({ drill }) => drill)),
    places: bookPlaces(book),
    names: namesOf(rows),
    cite: (source, where) => {
      const span = words("");
      cited.set(span, { source, where });
      return span;
    },
    cited,
  };
}
