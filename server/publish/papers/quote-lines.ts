/** server/publish/papers/quote-lines.ts - where words stand and what they are, in each text that has them.
 *  May import: schema types, shared/cite, server/publish, siblings. */
import type { Citation } from "../../../schema/drill.ts";
import type { Line, Span } from "../../../schema/paper.ts";
import { quotedByPlace } from "../cited.ts";
import type { BookPlaces } from "./book-places.ts";
import { reference, said, soft, words } from "./spans.ts";

/** Longest quotation that is given whole, in words: the paper is the evidence. Of a longer one both ends are kept. */
export const LONGEST_WORDS = 40;

/** "A f. 3r, ll. 1–9 “ride a circle” “circulum equitet”; f. 3v …": places apart, each once with its words: those of translations,
 *  then, in italics beside them, the original's. Empty for none. */
export function quotesLine(places: BookPlaces, citations: readonly Citation[]): Line {
  const isOriginal = ({ layer }: Citation): boolean => places.originals.has(layer);
  const groups = quotedByPlace(citations).map(({ reference: place, texts }): Line => {
    const all = texts.flatMap(({ citations: list }) => list);
    const translated = all.filter((citation) => !isOriginal(citation));
    const original = all.filter(isOriginal);
    const where = all[0] === undefined ? [] : places.line([all[0]]);
    return [
      ...(where.length === 0 && place !== "" ? [reference(place)] : where),
      ...translated.flatMap((citation) => [words(" "), ...quote(citation, "said")]),
      ...original.flatMap((citation) => [words(" "), ...quote(citation, translated.length > 0 ? "emphasis" : "said")]),
    ];
  });
  return groups.flatMap((line, index) => (index === 0 ? line : [words("; "), ...line]));
}

/** The words of one citation in their own language; a gap between words, and reworded ones, are told as such. */
function quote({ quote: full, language, state }: Citation, as: "said" | "emphasis"): Span[] {
  const text = bothEnds(full);
  const told: Span = text === "" ? soft("(between words)") : { ...said(`“${text}”`, language), as };
  return state === "reworded" ? [told, soft(" (reworded since it was marked)")] : [told];
}

/** The words on one line; of more than `LONGEST_WORDS` the first two thirds of these and the last third, "…" between. */
export function bothEnds(quoted: string): string {
  const all = quoted.trim().split(/\s+/u);
  if (all.length <= LONGEST_WORDS) return all.join(" ");
  const end = Math.floor(LONGEST_WORDS / 3);
  return `${all.slice(0, LONGEST_WORDS - end).join(" ")} […] ${all.slice(-end).join(" ")}`;
}
