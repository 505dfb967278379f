/** server/publish/papers/quote-lines.ts - where words stand and what they are, in each text that has them.
 *  May import: schema types, shared/cite, server/publish, siblings. */
import type { Citation } from "../../../schema/drill.ts";
import type { Line, Span } from "../../../schema/paper.ts";
import { shortenQuote } from "../../../shared/cite/citation-line.ts";
import { quotedByPlace } from "../cited.ts";
import type { BookPlaces } from "./book-places.ts";
import { reference, said, soft, words } from "./spans.ts";

/** Longest quotation under a step, in characters; of a longer one the middle is left out, and "…" says so. */
const LONGEST = 160;

/** "A f. 3r, ll. 1–9 “ride a circle” “circulum equitet”; f. 3v …": places apart, each with its words. Empty for none. */
export function quotesLine(places: BookPlaces, citations: readonly Citation[], longest = LONGEST): Line {
  const groups = quotedByPlace(citations).map(({ reference: place, texts }): Line => {
    const [first] = texts[0]?.citations ?? [];
    const where = first === undefined ? [] : places.line([first]);
    const quotes = texts.flatMap(({ citations: list }) =>
      list.flatMap((citation) => [words(" "), ...quote(citation, longest)]),
    );
    return [...(where.length === 0 && place !== "" ? [reference(place)] : where), ...quotes];
  });
  return groups.flatMap((line, index) => (index === 0 ? line : [words("; "), ...line]));
}

/** The words of one citation in their own language; a gap between words, and reworded ones, are told as such. */
function quote({ quote: full, language, state }: Citation, longest: number): Span[] {
  const text = shortenQuote(full, longest);
  const told: Span = text === "" ? soft("(between words)") : said(`“${text}”`, language);
  return state === "reworded" ? [told, soft(" (reworded since it was marked)")] : [told];
}
