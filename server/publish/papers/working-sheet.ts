/** server/publish/papers/working-sheet.ts - the text at the left, at the right its cruxes and questions in the order of their words,
 *  each with these words and space to write: for a sitting with the translator.
 *  May import: schema types, shared, siblings. */
import type { Question } from "../../../schema/crux.ts";
import type { Block, Line, PlainBlock, Span } from "../../../schema/paper.ts";
import type { Passage } from "../../../schema/work.ts";
import { shortenQuote } from "../../../shared/cite/citation-line.ts";
import { formatReference } from "../../../shared/cite/format-reference.ts";
import type { SignedCrux } from "../crux-signs.ts";
import { onFootBlocks } from "./as-ridden.ts";
import { rowsOfCrux } from "./crux-note.ts";
import { dayWords } from "./day-words.ts";
import { markedText, type TextMark } from "./marked-text.ts";
import { keyLine } from "./occurring-keys.ts";
import type { PaperContext } from "./paper-context.ts";
import { occasionOf, type PaperBody, titleOf } from "./paper-frame.ts";
import type { BuiltPart } from "./paper-part.ts";
import { cruxAnchor } from "./paper-signs.ts";
import { type CurrentText, currentTextsOf } from "./passage-texts.ts";
import { questionAnchor } from "./questions-and-trials.ts";
import { heading, lined, paragraph, reference, said, soft, strong, words } from "./spans.ts";

/** Longest words of the text beside a note, in characters. */
const LONGEST = 60;
/** Ruled lines below each note, and fewest beside a passage that has none. */
const FOR_EACH = 3;
const LEAST = 4;

/** A question with the sign it has on this paper: "?1". */
interface SignedQuestion {
  question: Question;
  sign: string;
}

export function workingSheet(context: PaperContext): PaperBody {
  const titles = context.parts.map(({ drill }) => titleOf(drill.exercise)).join(" · ");
  const questions = signQuestions(context);
  return {
    title: `Working sheet: ${titles}`,
    running: titles,
    blocks: context.parts.flatMap((part, index) => [
      heading(1, [words(titleOf(part.drill.exercise))], {
        of: [{ kind: "exercises", id: part.drill.exercise.id }],
      }),
      ...(index === 0 ? [...occasionOf(context.ask), workingKey(questions.length > 0)] : []),
      ...onFootBlocks(part),
      ...part.rows.passages.map((passage) => passageBlock(context, passage, questions)),
      ...elsewhere(context, part, questions),
      ...emptyPart(part),
    ]),
  };
}

function workingKey(asks: boolean): PlainBlock {
  const open: Line = [lined("not settled", "not settled"), words(" †")];
  return paragraph("key", keyLine(asks ? [open, [strong("?1"), words(" a question")]] : [open]));
}

function emptyPart({ rows }: BuiltPart): PlainBlock[] {
  if (rows.passages.length > 0) return [];
  return [paragraph("open", [words("No passage of the text belongs to this exercise yet.")])];
}

/** Open questions, numbered over the paper in the order their exercises ask them. */
function signQuestions({ parts, book }: PaperContext): SignedQuestion[] {
  const ids = new Set(parts.flatMap(({ drill }) => drill.questions.map(({ id }) => id)));
  return [...ids].flatMap((id, index) => {
    const question = book.find("questions", id);
    return question === undefined ? [] : [{ question, sign: `?${index + 1}` }];
  });
}

function passageBlock(context: PaperContext, passage: Passage, questions: readonly SignedQuestion[]): Block {
  const texts = currentTextsOf(context.book, passage);
  const of = [{ kind: "passages" as const, id: passage.id }];
  const cruxes = context.signs.list.flatMap((signed) => {
    const here = wordsIn(context, "cruxes", signed.at[0]?.crux.crux ?? "", texts);
    return here === null ? [] : [{ here, blocks: cruxEntries(context, [signed], here) }];
  });
  const asked = questions.flatMap((signed) => {
    const here = wordsIn(context, "questions", signed.question.id, texts);
    return here === null ? [] : [{ here, blocks: questionEntries(context, [signed], here) }];
  });
  // A question about a crux comes behind it where both are tied to the same words.
  const notes = [...cruxes, ...asked].sort((a, b) => a.here.text - b.here.text || a.here.to - b.here.to);
  const places = passage.references.map((one) => formatReference(one)).join("; ");
  const left = texts.flatMap((current, index) => textBlocks(context, current, questions, index === 0));
  const right = notes.flatMap(({ blocks }): PlainBlock[] => [...blocks, { is: "writing", lines: FOR_EACH }]);
  return {
    is: "beside",
    left: [
      paragraph("small", [reference(places)], of),
      ...(left.length === 0
        ? [paragraph("open", [soft("No words of it are in any text that is read now.")], of)]
        : left),
    ],
    right: [...right, ...furtherLines(texts, notes.length)],
  };
}

/** The first text large, the others below it, each with its name. */
function textBlocks(
  { book, signs }: PaperContext,
  { text, layer }: CurrentText,
  questions: readonly SignedQuestion[],
  leading: boolean,
): PlainBlock[] {
  const of = [{ kind: "passageTexts" as const, id: text.id }];
  const marks: TextMark[] = book.anchorsIn(text.passage).flatMap((anchor) => {
    if (anchor.text !== text.id) return [];
    const mark = book.find("marks", anchor.mark);
    if (mark?.as !== "words") return [];
    const place = { from: anchor.from, to: anchor.to };
    if (mark.of === "cruxes") {
      const sign = signs.span(mark.target);
      const taken = signs.list.find(({ at: [first] }) => first?.crux.crux === mark.target)?.at[0]?.crux.taken ?? null;
      return sign.length === 0 ? [] : [{ ...place, signs: sign, standing: taken === null ? "not settled" : null }];
    }
    const question = mark.of === "questions" && questions.find(({ question: one }) => one.id === mark.target);
    if (!question) return [];
    return [{ ...place, signs: [words("\u202f"), questionSign(question)], standing: null }];
  });
  return [
    ...markedText(text.text, layer.language, marks).map((line, index) =>
      leading
        ? paragraph("quote", line, of)
        : paragraph("small", [...(index === 0 ? [soft(`${layer.title} · `)] : []), ...line], of),
    ),
  ];
}

function questionSign({ question, sign }: SignedQuestion): Span {
  return { ...strong(sign), to: `#${questionAnchor(question.id)}` };
}

interface WordsHere {
  /** Which of the texts of the passage, from 0, and where in it they end: there the sign stands. */
  text: number;
  to: number;
  quoted: Line;
}

/** The words of a passage that something is tied to, in the first of its texts that has them. Null for none. */
function wordsIn(
  { book }: PaperContext,
  of: "cruxes" | "questions",
  id: string,
  texts: readonly CurrentText[],
): WordsHere | null {
  const anchors = book.marksOf(of, id).flatMap((mark) => book.anchorsOf(mark.id));
  for (const [index, { text, layer }] of texts.entries()) {
    const here = anchors.flatMap((anchor) => (anchor.is === "text" && anchor.text === text.id ? [anchor] : []));
    const [first] = here.sort((a, b) => a.to - b.to);
    if (first === undefined) continue;
    const quote = shortenQuote(first.quote, LONGEST);
    return { text: index, to: first.to, quoted: quote === "" ? [] : [said(`“${quote}”`, layer.language)] };
  }
  return null;
}

const quotedFirst = (here: WordsHere | undefined): Line[] =>
  here === undefined || here.quoted.length === 0 ? [] : [here.quoted];

function cruxEntries({ book }: PaperContext, cruxes: readonly SignedCrux[], here?: WordsHere): PlainBlock[] {
  if (cruxes.length === 0) return [];
  const items = cruxes.flatMap(({ sign, at: [first] }) => {
    if (first === undefined) return [];
    const { crux } = first;
    const readings = book.readingsOf(crux.crux).map(({ title, holder, status, id }): Line => {
      const how = [holder, status.is === "standing" ? "" : status.is, id === crux.taken?.reading ? "read so here" : ""];
      const told = [...new Set(how.filter((part) => part !== ""))].join(", ");
      return [words(title), ...(told === "" ? [] : [soft(` (${told})`)])];
    });
    return [
      {
        anchor: cruxAnchor(sign),
        head: [strong(`†${sign}`)],
        lines: [...quotedFirst(here), [words(crux.title), soft(` (${crux.is})`)], ...readings],
        of: rowsOfCrux(crux),
      },
    ];
  });
  return [{ is: "entries", as: "apparatus", items }];
}

function questionEntries({ signs }: PaperContext, asked: readonly SignedQuestion[], here?: WordsHere): PlainBlock[] {
  if (asked.length === 0) return [];
  const items = asked.map(({ question, sign }) => {
    const { id, text, to, asked: on, crux } = question;
    const whom = [to === "" ? "" : `to ${to}`, on === null ? "" : `asked ${dayWords(on)}`].filter(
      (part) => part !== "",
    );
    return {
      anchor: questionAnchor(id),
      head: [strong(sign)],
      lines: [
        ...quotedFirst(here),
        [words(text), ...(crux === null ? [] : signs.span(crux))],
        ...(whom.length === 0 ? [] : [[soft(whom.join(", "))]]),
      ],
      of: [{ kind: "questions" as const, id }],
    };
  });
  return [{ is: "entries", as: "questions", items }];
}

/** Cruxes and questions of the exercise that are tied to no words of its passages. */
function elsewhere(
  context: PaperContext,
  { rows, drill }: BuiltPart,
  questions: readonly SignedQuestion[],
): PlainBlock[] {
  const texts = rows.passages.flatMap((passage) => currentTextsOf(context.book, passage));
  const own = new Set(
    [...drill.elements.flatMap((element) => element.cruxes), ...drill.cruxes].map(({ crux }) => crux),
  );
  const cruxes = context.signs.list.filter(({ at: [first] }) => {
    const id = first?.crux.crux ?? "";
    return own.has(id) && wordsIn(context, "cruxes", id, texts) === null;
  });
  const asked = questions.filter(
    ({ question }) =>
      drill.questions.some(({ id }) => id === question.id) &&
      wordsIn(context, "questions", question.id, texts) === null,
  );
  const blocks = [...cruxEntries(context, cruxes), ...questionEntries(context, asked)];
  return blocks.length === 0 ? [] : [heading(2, [words("Tied to no words of these passages")]), ...blocks];
}

/** Enough to fill the height of the text beside it, at about 45 letters a line and two lines of it to a ruled one. */
function furtherLines(texts: readonly CurrentText[], notes: number): PlainBlock[] {
  const length = texts.reduce((sum, { text }) => sum + text.text.length, 0);
  const lines = Math.min(30, Math.round(length / 90) - (FOR_EACH + 2) * notes);
  const least = notes === 0 ? LEAST : 0;
  return Math.max(lines, least) < 1 ? [] : [{ is: "writing", lines: Math.max(lines, least) }];
}
