/** server/publish/letter.ts - a letter with all open questions to one person, part by part, for text and DOCX alike.
 *  May import: schema types, shared. It holds no clock: same rows, same letter. */
import type { Question } from "../../schema/crux.ts";
import type { Rows } from "../../schema/record.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { citationsOf } from "../../shared/drill/citations.ts";
import { type CurrentText, type WorkRows, workRows } from "../../shared/drill/exercise-rows.ts";
import { compareCodeUnits, compareRanked } from "../../shared/rank.ts";
import { wordsInContext } from "../../shared/text/words-in-context.ts";
import { type LetterCount, letterCount } from "./letter-count.ts";
import { stopped } from "./stopped.ts";

export type LetterPart =
  | { is: "to"; words: string }
  | { is: "title"; words: string }
  | { is: "note"; words: string }
  /** The questions of one exercise, or of the whole work, follow. */
  | { is: "heading"; words: string }
  | { is: "question"; number: number; words: string; asked: string }
  | { is: "reference"; words: string }
  /** Words of the text; those in question stand in the middle. */
  | { is: "said"; before: string; words: string; after: string; language: string }
  | { is: "paragraph"; lead: string; words: string }
  | { is: "reading"; title: string; words: string };

/** How much is shown around the words, in UTF-16 units. */
const AROUND = { before: 110, after: 170 };

/** Whom open questions of the work are addressed to, by name. */
export function addresseesOf(rows: Rows): string[] {
  const open = (rows.questions ?? []).filter(({ value }) => value.state.is === "open" && value.to !== "");
  return [...new Set(open.map(({ value }) => value.to))].sort(compareCodeUnits);
}

/** Null when the person is asked nothing that is still open. Throws RangeError when the work is not among the rows. */
export function letterTo(rows: Rows, workId: string, to: string): LetterPart[] | null {
  const laid = workRows(rows, workId);
  const questions = laid.all("questions").filter((question) => question.state.is === "open" && question.to === to);
  if (questions.length === 0) return null;
  const groups = byExercise(laid, questions);
  let number = 0;
  const parts = groups.flatMap(({ heading, list, exercise }): LetterPart[] => {
    const count = exercise === null ? null : letterCount(rows, exercise, list);
    return [
      { is: "heading", words: heading },
      ...list.flatMap((question) => {
        number += 1;
        return questionParts(laid, question, number, count);
      }),
    ];
  });
  const { title, invented } = laid.work;
  return [
    { is: "to", words: to },
    { is: "title", words: `Open questions on “${title}”` },
    ...(invented ? [{ is: "note" as const, words: "The book is an invented one, which comes with the program." }] : []),
    ...parts,
  ];
}

/** Exercises in the order of the book, what belongs to none at the end; questions in the order of their words. */
function byExercise(laid: WorkRows, questions: readonly Question[]) {
  const exercises = laid.all("exercises").sort(compareRanked);
  const of = (id: string | null) =>
    questions.filter((question) => exerciseOf(laid, question) === id).sort(byPlace(laid));
  return [
    ...exercises.map(({ id, label, title }) => ({
      exercise: id as string | null,
      heading: label === "" ? title : `${label}. ${title}`,
      list: of(id),
    })),
    { exercise: null, heading: "Of the whole work", list: of(null) },
  ].filter(({ list }) => list.length > 0);
}

const exerciseOf = (laid: WorkRows, { exercise, crux }: Question): string | null =>
  exercise ?? (crux === null ? null : (laid.cruxes.get(crux)?.exercise ?? null));

interface Place {
  reference: string;
  rank: readonly [passage: string, layer: string, from: number];
  current: CurrentText;
  from: number;
  to: number;
}

function placesOf(laid: WorkRows, of: "questions" | "cruxes", id: string): Place[] {
  const anchors = laid.marksOf(of, id).flatMap((mark) => laid.anchorsOf(mark.id));
  return anchors
    .flatMap((anchor): Place[] => {
      if (anchor.is !== "text" || anchor.fate === "lost") return [];
      const [current, passage] = [laid.currentText(anchor.text), laid.find("passages", anchor.passage)];
      if (current === null || passage === undefined) return [];
      const [first] = passage.references;
      const reference = first ? formatReference(first) : "";
      const rank = [passage.rank + passage.id, current.layer.rank, anchor.from] as const;
      return [{ reference, rank, current, from: anchor.from, to: anchor.to }];
    })
    .sort(({ rank: a }, { rank: b }) => compareCodeUnits(a[0], b[0]) || compareCodeUnits(a[1], b[1]) || a[2] - b[2]);
}

/** Its own words, else those of its crux. */
function wordsOf(laid: WorkRows, { id, crux }: Question): Place[] {
  const own = placesOf(laid, "questions", id);
  return own.length > 0 || crux === null ? own : placesOf(laid, "cruxes", crux);
}

function byPlace(laid: WorkRows): (a: Question, b: Question) => number {
  const rank = (question: Question) => wordsOf(laid, question)[0]?.rank ?? (["\uffff", "", 0] as const);
  return (a, b) => {
    const [first, second] = [rank(a), rank(b)];
    return compareCodeUnits(first[0], second[0]) || first[2] - second[2] || compareCodeUnits(a.id, b.id);
  };
}

function questionParts(laid: WorkRows, question: Question, number: number, count: LetterCount | null): LetterPart[] {
  const crux = question.crux === null ? undefined : laid.cruxes.get(question.crux);
  const readings = crux ? laid.readingsOf(crux.id).filter(({ status }) => status.is !== "ruled out") : [];
  const matters = [crux?.note ?? "", count?.matters(question) ?? ""].filter((words) => words !== "");
  const answers = question.answers.map(({ label }) => `“${label}”`);
  return [
    { is: "question", number, words: question.text, asked: question.asked ?? "" },
    ...quoteParts(laid, question),
    ...(readings.length > 0 ? [{ is: "paragraph" as const, lead: "It has been read as:", words: "" }] : []),
    ...readings.map(({ title, argument, holder }): LetterPart => {
      const by = holder === "" ? "" : ` (${holder})`;
      return { is: "reading", title: `${title}${by}`, words: argument === "" ? "" : stopped(argument) };
    }),
    ...(matters.length > 0
      ? [{ is: "paragraph" as const, lead: "Why it matters:", words: matters.map(stopped).join(" ") }]
      : []),
    ...(answers.length > 0
      ? [{ is: "paragraph" as const, lead: "You might say:", words: `${answers.join(", or ")}.` }]
      : []),
  ];
}

function quoteParts(laid: WorkRows, question: Question): LetterPart[] {
  const places = wordsOf(laid, question);
  if (places.length === 0) {
    const lost = citationsOf(laid, "questions", question.id).map(({ quote }) => `“${quote}”`);
    return lost.length === 0
      ? []
      : [{ is: "paragraph", lead: "Of words that are no longer in the text:", words: lost.join(", ") }];
  }
  let last = "";
  return places.flatMap(({ reference, current, from, to }): LetterPart[] => {
    const { quote, hits, cutBefore, cutAfter } = wordsInContext(current.text.text, [{ from, to }], AROUND);
    const [hit = { from: 0, to: 0 }] = hits;
    const said: LetterPart = {
      is: "said",
      before: `${cutBefore ? "… " : ""}${oneLine(quote.slice(0, hit.from))}`,
      words: oneLine(quote.slice(hit.from, hit.to)),
      after: `${oneLine(quote.slice(hit.to))}${cutAfter ? " …" : ""}`,
      language: current.layer.language,
    };
    const head: LetterPart[] = reference === "" || reference === last ? [] : [{ is: "reference", words: reference }];
    last = reference;
    return [...head, said];
  });
}

const oneLine = (words: string): string => words.replace(/\s+/gu, " ");
