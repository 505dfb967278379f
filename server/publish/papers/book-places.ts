/** server/publish/papers/book-places.ts - places in the book as a paper cites them: few, merged, in the order of the book.
 *  May import: schema types, shared/cite, shared/drill, siblings. */
import type { Line } from "../../../schema/paper.ts";
import type { Reference } from "../../../schema/reference.ts";
import type { Passage } from "../../../schema/work.ts";
import { formatMerged, nextInBook } from "../../../shared/cite/merge-references.ts";
import type { WorkRows } from "../../../shared/drill/exercise-rows.ts";
import { compareRanked } from "../../../shared/rank.ts";
import { reference } from "./spans.ts";

export interface BookPlaces {
  /** All passages, in the order of the book. */
  passages: readonly Passage[];
  /** The places of citations in the form the work uses, that is each passage by its first reference. Empty for none. */
  line: (citations: readonly { references: readonly Reference[] }[]) => Line;
  /** Titles of the texts that are no translation. */
  originals: ReadonlySet<string>;
  /** Passages with all their references: "A ff. 2v–3v; B f. 1r; tr. pp. 21–22". */
  allOf: (passages: readonly Passage[]) => string;
}

export function bookPlaces(book: WorkRows): BookPlaces {
  const passages = book
    .all("passages")
    .filter(({ work }) => work === book.work.id)
    .sort(compareRanked);
  const isNext = nextInBook(passages.map(({ references }) => references));
  return {
    passages,
    originals: new Set(book.layers.flatMap(({ is, title }) => (is === "original" ? [title] : []))),
    line: (citations) => {
      const places = formatMerged(
        citations.flatMap(({ references: [first] }) => first ?? []),
        isNext,
      );
      return places === "" ? [] : [reference(places)];
    },
    allOf: (some) =>
      formatMerged(
        some.flatMap(({ references }) => references),
        isNext,
      ),
  };
}
