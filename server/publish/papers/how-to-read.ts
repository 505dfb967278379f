/** server/publish/papers/how-to-read.ts - the first pages of the book part: how it is read, and what its sigla stand for.
 *  May import: schema types, shared/drill, siblings. */
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { Layer, Revision, Witness } from "../../../schema/work.ts";
import { compareRanked } from "../../../shared/rank.ts";
import { stopped } from "../stopped.ts";
import { dayWords } from "./day-words.ts";
import type { PaperContext } from "./paper-context.ts";
import { lineKey } from "./paper-frame.ts";
import { heading, paragraph, soft, strong, words } from "./spans.ts";

export function howToRead(context: PaperContext): PlainBlock[] {
  return [
    heading(2, [words("How to read it")], { anchor: "how-to-read" }),
    paragraph("body", [
      words(
        "Each exercise is told step by step: what the horse does, what each hand does, where the weapon is. Below each step " +
          `stand the places in the book that it rests on, with their words${hasBoth(context) ? ", the original’s in italics" : ""}, and ` +
          "whatever else it rests on, each after what is believed because of it. Words are quoted in full; of more than forty " +
          "the beginning and the end, with […] between. Numbers of steps are the editor’s.",
      ),
    ]),
    paragraph("body", [words("The line under the words says how well the text warrants them:")]),
    lineKey(),
    ...signsParagraph(context),
    paragraph("body", [
      words(
        "Places are cited by leaf, side and line (f. 3r, ll. 1–9), by section (7.13) or by page, after the siglum of the " +
          "witness where there are several. Where an exercise is treated only in part, it says so.",
      ),
    ]),
    ...siglaBlocks(context),
  ];
}

const hasBoth = ({ book }: PaperContext): boolean => new Set(book.layers.map(({ is }) => is)).size > 1;

/** Nothing on a paper that has no sign. */
function signsParagraph({ signs }: PaperContext): PlainBlock[] {
  if (signs.list.length === 0) return [];
  const open = signs.list.some(({ at }) => at.some(({ crux }) => crux.taken === null));
  return [
    paragraph("body", [
      words("A sign such as "),
      strong("†a"),
      words(
        " stands where the text can be understood in more than one way. Its note gives the words in question, then ] and the " +
          `reading taken here with its reason, then every other reading with who holds it and why.${open ? " “Not settled” says that none is taken." : ""}`,
      ),
    ]),
  ];
}

/** Witnesses by their sigla, then the texts that are quoted. Nothing where there are neither. */
function siglaBlocks({ book }: PaperContext): PlainBlock[] {
  const witnesses = book
    .all("witnesses")
    .filter(({ work }) => work === book.work.id)
    .sort(compareRanked);
  const items = witnesses.map((witness) => ({
    anchor: `witness-${witness.id}`,
    head: [strong(witness.siglum)],
    lines: witnessLines(witness),
    of: [{ kind: "witnesses" as const, id: witness.id }],
  }));
  const rows = book.layers.map((layer) => ({
    name: layer.title,
    words: layerLine(layer, book.newestRevision(layer.id)),
  }));
  if (items.length === 0 && rows.length === 0) return [];
  return [
    heading(2, [words("Witnesses and texts")], { anchor: "witnesses" }),
    ...(items.length === 0 ? [] : [{ is: "entries" as const, as: "sigla" as const, items }]),
    ...(rows.length === 0 ? [] : [{ is: "facts" as const, rows }]),
  ];
}

function witnessLines({ is, name, place, date, note }: Witness): Line[] {
  const about = [name === "" ? `a ${is}` : name, place, date].filter((part) => part !== "").join(", ");
  return [[words(stopped(about))], ...(note === "" ? [] : [[soft(note)]])];
}

/** "Translation by ..., in English, first print of 30 August 2026." */
function layerLine({ is, by, language }: Layer, revision: Revision | null): Line {
  const received = revision === null || revision.received === null ? "" : ` of ${dayWords(revision.received)}`;
  const pieces = [
    is === "original" ? "the original" : "a translation",
    is === "original" ? (by === "" ? "" : `edited by ${by}`) : by === "" ? "" : `by ${by}`,
    language === "" ? "" : `in ${languageName(language)}`,
    revision === null ? "" : `${revision.label}${received}`,
  ];
  return [words(stopped(pieces.filter((piece) => piece !== "").join(", ")))];
}

/** By a table, so that no machine's language decides; a tag that is not in it stands for itself. */
function languageName(tag: string): string {
  return LANGUAGES[tag.toLowerCase().split("-")[0] ?? ""] ?? tag;
}

const LANGUAGES: { readonly [tag: string]: string } = {
  ar: "Arabic",
  ca: "Catalan",
  cs: "Czech",
  de: "German",
  el: "Greek",
  en: "English",
  es: "Spanish",
  fa: "Persian",
  fr: "French",
  grc: "Ancient Greek",
  he: "Hebrew",
  hu: "Hungarian",
  it: "Italian",
  la: "Latin",
  nl: "Dutch",
  ota: "Ottoman Turkish",
  pl: "Polish",
  pt: "Portuguese",
  ru: "Russian",
  tr: "Turkish",
};
