/** server/publish/papers/dangling.ts - citations of a paper that lead nowhere: none is printed.
 *  May import: schema types, shared/drill, server/errors, siblings. A mark whose words are lost, a basis that names a mark, picture, trial or
 *  source no longer there, a passage without its text: each is listed with where it would have stood on the paper. */
import type { DrillElement } from "../../../schema/drill.ts";
import type { Mark, Markable } from "../../../schema/mark.ts";
import type { PaperKind } from "../../../schema/paper.ts";
import { shortenQuote } from "../../../shared/cite/citation-line.ts";
import { remarksOf } from "../../../shared/drill/questions-and-notes.ts";
import { type Outcome, refused } from "../../errors.ts";
import { sensesOf, termsInOrder } from "./glossary.ts";
import { usedHolds } from "./holds-page.ts";
import { usedMovements } from "./movement-lines.ts";
import { numbersWords } from "./numbers-words.ts";
import type { PaperContext } from "./paper-context.ts";
import { titleOf } from "./paper-frame.ts";
import type { BuiltPart } from "./paper-part.ts";

export interface DanglingCitation {
  where: string;
  sentence: string;
  /** What cites it, so that a person can go there. */
  at: { kind: Markable; id: string };
}

/** What a kind of paper cites. */
const CITES: { readonly [kind in PaperKind]: { steps: boolean; readings: boolean; book: boolean } } = {
  "ride sheet": { steps: true, readings: false, book: false },
  "class handout": { steps: true, readings: false, book: false },
  "caller's sheet": { steps: true, readings: false, book: false },
  "working sheet": { steps: false, readings: true, book: false },
  appendix: { steps: true, readings: true, book: true },
  "correction slip": { steps: false, readings: false, book: false },
};

/** Null when every citation leads somewhere. */
export function problemWithCitations(context: PaperContext): Extract<Outcome<never>, { ok: false }> | null {
  const found = danglingCitations(context);
  const [first] = found;
  if (first === undefined) return null;
  const count = found.length === 1 ? "1 citation leads" : `${found.length} citations lead`;
  return refused(
    "citation_dangling",
    `Nothing was printed: ${count} nowhere. The first is at ${first.where}: ${first.sentence} Tie it to words again, or take it away; then print.`,
    { issues: found },
  );
}

/** In the order of the paper, each once. */
export function danglingCitations(context: PaperContext): DanglingCitation[] {
  const found = new Map<string, DanglingCitation>();
  const { steps, readings, book } = CITES[context.ask.kind];
  const add = (where: string, kind: Markable, id: string, sentences: readonly string[]): void => {
    for (const sentence of sentences) found.set(`${where}\n${sentence}`, { where, sentence, at: { kind, id } });
  };
  const addOf = (where: string, kind: Markable, id: string): void =>
    add(where, kind, id, troublesOf(context, kind, id));
  for (const part of context.parts) {
    const title = `“${titleOf(part.drill.exercise)}”`;
    if (steps) {
      for (const { id, title: name } of part.drill.standing) {
        addOf(`${title}, throughout (${name})`, "standings", id);
      }
      for (const element of part.drill.elements) {
        add(`${title}, ${placeOf(element)}`, "elements", element.id, elementTroubles(context, part, element));
      }
    }
    if (readings) {
      for (const { id, text } of part.drill.questions) {
        addOf(`${title}, the question “${shortenQuote(text, 60)}”`, "questions", id);
      }
    }
    if (book) for (const { id } of remarksOf(part.rows)) addOf(`${title}, a note`, "notes", id);
  }
  if (readings) {
    for (const { sign, at } of context.signs.list) {
      const [first] = at;
      if (first === undefined) continue;
      const { crux, title, taken, others } = first.crux;
      addOf(`†${sign} (${title})`, "cruxes", crux);
      if (!book) continue;
      for (const reading of [...(taken === null ? [] : [taken]), ...others]) {
        const evidence = context.book.find("readings", reading.reading)?.evidence ?? [];
        const where = `†${sign} (${title}), the reading “${reading.title}”`;
        add(where, "readings", reading.reading, basisTroubles(context, evidence));
      }
    }
  }
  if (book) {
    for (const term of termsInOrder(context)) {
      addOf(`the word “${term.word}”`, "terms", term.id);
      for (const { id, title } of sensesOf(context, term.id)) {
        addOf(`the word “${term.word}”, “${title}”`, "senses", id);
      }
    }
    for (const { hold } of usedHolds(context)) addOf(`the hold “${hold.name}”`, "holds", hold.id);
    for (const { movement } of usedMovements(context, context.parts)) {
      addOf(`the movement “${movement.name}”`, "movements", movement.id);
    }
  }
  return [...found.values()];
}

function placeOf(element: DrillElement): string {
  const { title, text } = element;
  const named = title === "" ? text : title;
  return named === "" ? numbersWords([element]) : `${numbersWords([element])} (${shortenQuote(named, 60)})`;
}

/** Of its own words and those of what is done in it, and of every value as it is taken. */
function elementTroubles(context: PaperContext, { rows }: BuiltPart, element: DrillElement): string[] {
  const actions = element.actions.filter(({ inherited }) => !inherited).map(({ id }) => id);
  const taken = new Set(
    [...element.values, ...element.actions.flatMap(({ values }) => values)].flatMap(({ reading, crux }) =>
      reading !== null ? [reading] : crux !== null ? rows.readingsOf(crux).map(({ id }) => id) : [],
    ),
  );
  return [
    ...troublesOf(context, "elements", element.id),
    ...actions.flatMap((id) => troublesOf(context, "actions", id)),
    ...[...taken].flatMap((id) => basisTroubles(context, rows.find("readings", id)?.values ?? [])),
  ];
}

/** Of the marks on a thing, and of every basis in its row. */
function troublesOf(context: PaperContext, of: Markable, id: string): string[] {
  const { book } = context;
  const marks = book.marksOf(of, id);
  const row = book.find(of, id);
  return [...marks.flatMap((mark) => markTroubles(context, mark)), ...basisTroubles(context, row)];
}

/** Every basis anywhere in a value: the support of a row, of its slots, of what a reading gives. */
function basisTroubles(context: PaperContext, value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap((part) => basisTroubles(context, part));
  if (typeof value !== "object" || value === null) return [];
  const fields = value as Record<string, unknown>;
  const own = oneTrouble(context, fields);
  return [...own, ...Object.values(fields).flatMap((part) => basisTroubles(context, part))];
}

function oneTrouble(context: PaperContext, { is, mark, region, source, trial }: Record<string, unknown>): string[] {
  const { book } = context;
  if (is === "words" && typeof mark === "string") {
    const row = book.find("marks", mark);
    return row === undefined ? ["it rests on words whose mark is no longer there."] : markTroubles(context, row);
  }
  if (is === "picture" && typeof region === "string") return regionTroubles(context, region);
  if (is === "parallel" && typeof source === "string" && book.find("sources", source) === undefined) {
    return ["it names a parallel in a source that is no longer there."];
  }
  if (is === "trial" && typeof trial === "string" && book.find("trials", trial) === undefined) {
    return ["it rests on a trial that is no longer there."];
  }
  return [];
}

function regionTroubles({ book }: PaperContext, id: string): string[] {
  const region = book.find("regions", id);
  if (region === undefined) return ["it rests on a part of a picture that is no longer there."];
  return book.find("pictures", region.picture) === undefined ? ["it rests on a picture that is no longer there."] : [];
}

/** A mark leads somewhere where one of its places is in a text that is read now, and none of these is lost. */
function markTroubles(context: PaperContext, mark: Mark): string[] {
  const { book } = context;
  const anchors = book.anchorsOf(mark.id);
  if (anchors.length === 0) return ["its mark stands nowhere in the text."];
  const now = anchors.filter((anchor) => anchor.is === "region" || book.currentText(anchor.text) !== null);
  if (now.length === 0)
    return anchors.map((anchor) => lostSentence(anchor.is === "text" ? anchor.quote : "")).slice(0, 1);
  return now.flatMap((anchor) => {
    if (anchor.is === "region") return regionTroubles(context, anchor.region);
    if (anchor.fate === "lost") return [lostSentence(anchor.quote)];
    return book.find("passages", anchor.passage) === undefined ? ["the passage it cites is no longer there."] : [];
  });
}

function lostSentence(quote: string): string {
  const words = shortenQuote(quote, 60);
  return words === ""
    ? "the place it cites is no longer in the text."
    : `the words “${words}” are no longer in the text.`;
}
