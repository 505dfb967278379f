/** client/decide/term-places.ts - the places of a term in the whole work, in the order of the book, with the words around them. */
import type { TextAnchor } from "../../schema/mark.ts";
import type { RecordOf } from "../../schema/record.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { compareRanked } from "../../shared/rank.ts";
import { type WordsInContext, wordsInContext } from "../../shared/text/words-in-context.ts";
import { all, one, ranked } from "../state/rows.ts";

/** One text of a place: a translation or an original. */
export interface PlacedWords {
  anchor: TextAnchor;
  layer: RecordOf<"layers">;
  context: WordsInContext;
}

export interface TermPlace {
  mark: RecordOf<"marks">;
  passage: RecordOf<"passages">;
  reference: string;
  /** The sense it has here; null while it is open. */
  sense: RecordOf<"senses"> | null;
  /** Translations first. */
  words: PlacedWords[];
  /** The mark lost its words, or they are of a text that is no longer read. */
  lost: boolean;
}

const AROUND = { before: 42, after: 60 };

export const sensesOf = (term: string): RecordOf<"senses">[] => ranked("senses").filter((sense) => sense.term === term);

export function placesOfTerm(term: string): TermPlace[] {
  const senses = new Map(sensesOf(term).map((sense) => [sense.id, sense]));
  const byMark = new Map<string, TextAnchor[]>();
  for (const anchor of all("anchors")) {
    if (anchor.is === "text") byMark.set(anchor.mark, [...(byMark.get(anchor.mark) ?? []), anchor]);
  }
  const isOf = ({ of, target, as }: RecordOf<"marks">) =>
    as === "words" && ((of === "terms" && target === term) || (of === "senses" && senses.has(target)));
  return all("marks")
    .filter(isOf)
    .flatMap((mark) => placeOf(mark, byMark.get(mark.id) ?? [], senses.get(mark.target) ?? null))
    .sort(inBookOrder);
}

function placeOf(
  mark: RecordOf<"marks">,
  anchors: readonly TextAnchor[],
  sense: RecordOf<"senses"> | null,
): TermPlace[] {
  const words = anchors.flatMap(placedWords).sort(originalsLast);
  const passage = one("passages", (words[0]?.anchor ?? anchors[0])?.passage);
  if (passage === null) return [];
  const [first] = passage.references;
  const reference = first ? formatReference(first) : "";
  return [{ mark, passage, reference, sense, words, lost: words.length === 0 }];
}

function placedWords(anchor: TextAnchor): PlacedWords[] {
  const text = one("passageTexts", anchor.text);
  const layer = one("layers", one("revisions", text?.revision)?.layer);
  if (text === null || layer === null || anchor.fate === "lost") return [];
  return [{ anchor, layer, context: wordsInContext(text.text, [anchor], AROUND) }];
}

function originalsLast(a: PlacedWords, b: PlacedWords): number {
  return Number(a.layer.is === "original") - Number(b.layer.is === "original") || compareRanked(a.layer, b.layer);
}

function inBookOrder(a: TermPlace, b: TermPlace): number {
  return compareRanked(a.passage, b.passage) || (a.words[0]?.anchor.from ?? 0) - (b.words[0]?.anchor.from ?? 0);
}

/** Things of a kind whose words share some with a place: cruxes there, elements there. */
export function thingsAt(kind: "cruxes" | "elements", places: readonly TermPlace[]): string[] {
  const spans = places.flatMap(({ words }) => words.map(({ anchor }) => anchor));
  const touches = (anchor: TextAnchor) =>
    spans.some((span) => span.text === anchor.text && span.from < anchor.to && anchor.from < span.to);
  const targets = all("anchors").flatMap((anchor) => {
    const mark = anchor.is === "text" && touches(anchor) ? one("marks", anchor.mark) : null;
    if (mark === null || mark.as !== "words") return [];
    if (mark.of === kind) return [mark.target];
    const action = kind === "elements" && mark.of === "actions" ? one("actions", mark.target) : null;
    return action?.ownerKind === "elements" ? [action.owner] : [];
  });
  return [...new Set(targets)];
}
