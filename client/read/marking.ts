/** client/read/marking.ts - what can be done with selected words, as edits: a step, words added to one, a crux, a
 *  question, a term, advice, a note, words left untreated. What is entered from inside a mark is stated. */
import type { Edit } from "../../schema/change.ts";
import type { Markable, TextAnchor } from "../../schema/mark.ts";
import type { RecordOf } from "../../schema/record.ts";
import type { Support } from "../../schema/slot.ts";
import { rankBetween } from "../../shared/rank.ts";
import { anchorRange } from "../../shared/text/anchor-range.ts";
import { quoteAt } from "../../shared/text/quote.ts";
import { elements, exercise, marksByText, passage, texts, work } from "../state/passage.ts";
import { all, one, ranked } from "../state/rows.ts";
import { today } from "../state/session.ts";
import { create, newId, write } from "../state/write.ts";
import { choose, type Thing, type Words } from "./focus.ts";

/** The quoted words of a selection. */
export function quoteOf(words: Words): string {
  return one("passageTexts", words.text)?.text.slice(words.from, words.to) ?? "";
}

function anchorEdit(words: Words, mark: string, after: string | null): Edit {
  const text = one("passageTexts", words.text);
  if (text === null) throw new RangeError(`No passage text ${words.text} is open.`);
  const value: TextAnchor = {
    id: newId(),
    mark,
    rank: rankBetween(after, null),
    is: "text",
    passage: text.passage,
    text: text.id,
    ...anchorRange(words.from, words.to),
    ...quoteAt(text.text, words.from, words.to),
    fate: "same",
  };
  return create("anchors", value);
}

export function markEdits(
  words: Words,
  of: Markable,
  target: string,
  mark = newId(),
  as: RecordOf<"marks">["as"] = "words",
): { mark: string; edits: Edit[] } {
  const row: RecordOf<"marks"> = { id: mark, work: workId(), of, target, as };
  return { mark, edits: [create("marks", row), anchorEdit(words, mark, null)] };
}

function workId(): string {
  const id = work.value?.id;
  if (id === undefined) throw new RangeError("No work is open.");
  return id;
}

const stated = (mark: string): Support => ({ warrant: "stated", basis: [{ is: "words", mark }] });

/** Where in the exercise an element for these words belongs: after the last element whose words come before them. */
function rankAt(words: Words): string {
  const order = ranked("passages").map((other) => other.id);
  const leading = texts.value[0]?.text.id;
  const placeOf = (anchor: TextAnchor) =>
    order.indexOf(anchor.passage) * 1e7 + (anchor.text === words.text || anchor.text === leading ? anchor.from : 0);
  const here = order.indexOf(passage.value?.id ?? "") * 1e7 + words.from;
  const firstPlace = new Map<string, number>();
  for (const list of marksByText.value.values()) {
    for (const { mark, anchor } of list) {
      // Within the passage only the same text can be compared by offset.
      if (mark.of !== "elements" || (anchor.passage === passage.value?.id && anchor.text !== words.text)) continue;
      const place = placeOf(anchor);
      if (place < (firstPlace.get(mark.target) ?? Number.POSITIVE_INFINITY)) firstPlace.set(mark.target, place);
    }
  }
  const list = elements.value;
  const index = list.findLastIndex((element) => (firstPlace.get(element.id) ?? Number.POSITIVE_INFINITY) < here);
  return rankBetween(list[index]?.rank ?? null, list[index + 1]?.rank ?? null);
}

/** Everything an element has before its kind is known. */
function elementBase(words: Words, mark: string) {
  const owner = exercise.value;
  if (owner === null) throw new RangeError("The passage stands in no exercise.");
  return {
    id: newId(),
    exercise: owner.id,
    rank: rankAt(words),
    guard: [],
    existence: stated(mark),
    order: null,
    role: "",
    copyOf: null,
    note: "",
  };
}

async function makeElement(
  words: Words,
  why: string,
  rest: (base: ReturnType<typeof elementBase>) => RecordOf<"elements">,
  open = true,
) {
  const mark = newId();
  const element = rest(elementBase(words, mark));
  const { edits } = markEdits(words, "elements", element.id, mark);
  if (await write([create("elements", element), ...edits], why)) choose({ kind: "elements", id: element.id }, open);
}

export const makeStep = (words: Words) =>
  makeElement(words, `A step from “${brief(words)}”`, (base) => ({ ...base, is: "step", title: "" }));

export const makeAdvice = (words: Words) =>
  makeElement(
    words,
    `Advice: “${brief(words)}”`,
    (base) => ({ ...base, is: "advice", demand: quoteOf(words), from: null, to: null, rule: null }),
    false,
  );

export const leaveUntreated = (words: Words) =>
  makeElement(
    words,
    `“${brief(words)}” left untreated`,
    (base) => ({
      ...base,
      is: "untreated",
      fromPassage: passage.value?.id ?? "",
      toPassage: passage.value?.id ?? "",
      estimate: null,
    }),
    false,
  );

export const makeAgain = (words: Words, of: Extract<RecordOf<"elements">, { is: "again" }>["of"]) =>
  makeElement(words, `Again: “${brief(words)}”`, (base) => ({
    ...base,
    is: "again",
    title: "",
    of,
    manner: "as it is",
    except: [],
  }));

/** More words for something that is marked already: one more piece of its mark. A step gets a mark of its own for them,
 *  since its acts rest on the words they were entered from, and must not come to rest on others. */
export async function addWords(words: Words, to: Thing): Promise<void> {
  const mark = all("marks").find(
    (candidate) => candidate.of === to.kind && candidate.target === to.id && candidate.as === "words",
  );
  const why = `More words: “${brief(words)}”`;
  if (mark === undefined || to.kind === "elements") {
    const { edits } = markEdits(words, to.kind, to.id);
    if (await write(edits, why)) choose(to);
    return;
  }
  const last = ranked("anchors")
    .filter((anchor) => anchor.mark === mark.id)
    .at(-1);
  if (await write([anchorEdit(words, mark.id, last?.rank ?? null)], why)) choose(to);
}

export async function openCrux(words: Words, is: RecordOf<"cruxes">["is"], title: string): Promise<void> {
  const crux: RecordOf<"cruxes"> = {
    id: newId(),
    work: workId(),
    exercise: exercise.value?.id ?? null,
    is,
    scope: "place",
    title,
    note: "",
    arisesWhen: [],
    leftFree: null,
    exceptions: [],
  };
  const { edits } = markEdits(words, "cruxes", crux.id);
  if (await write([create("cruxes", crux), ...edits], `Crux: “${title}”`))
    choose({ kind: "cruxes", id: crux.id }, true);
}

export async function askQuestion(words: Words, text: string, to: string, crux: string | null): Promise<void> {
  const question: RecordOf<"questions"> = {
    id: newId(),
    work: workId(),
    exercise: exercise.value?.id ?? null,
    crux,
    text,
    to,
    by: "person",
    asked: today(),
    effort: null,
    answers: [],
    state: { is: "open" },
  };
  const { edits } = markEdits(words, "questions", question.id);
  if (await write([create("questions", question), ...edits], `Question: ${text}`))
    choose({ kind: "questions", id: question.id });
}

/** Tags words with a sense, or with a term whose sense here is open; makes the term when it is new. */
export async function tagTerm(
  words: Words,
  choice: { sense: string } | { term: string } | { word: string },
): Promise<void> {
  if ("sense" in choice || "term" in choice) {
    const thing: Thing = "sense" in choice ? { kind: "senses", id: choice.sense } : { kind: "terms", id: choice.term };
    const { edits } = markEdits(words, thing.kind, thing.id);
    if (await write(edits, `Term: “${brief(words)}”`)) choose(thing);
    return;
  }
  const layer = texts.value.find(({ text }) => text.id === words.text)?.layer;
  const term: RecordOf<"terms"> = {
    id: newId(),
    work: workId(),
    word: choice.word,
    language: layer?.language ?? "",
    note: "",
  };
  const { edits } = markEdits(words, "terms", term.id);
  if (await write([create("terms", term), ...edits], `Term: “${choice.word}”`))
    choose({ kind: "terms", id: term.id }, true);
}

export async function makeNote(words: Words, text: string): Promise<void> {
  const note: RecordOf<"notes"> = { id: newId(), work: workId(), text };
  const { edits } = markEdits(words, "notes", note.id);
  if (await write([create("notes", note), ...edits], `Note on “${brief(words)}”`))
    choose({ kind: "notes", id: note.id });
}

function brief(words: Words): string {
  const quote = quoteOf(words);
  return quote.length > 40 ? `${quote.slice(0, 38)}…` : quote;
}
