/** tests/bench/big-book.ts - a book of invented exercises as large as a real one: steps, cruxes with their readings, evidence,
 *  questions, trials, sources. The same every time.
 *  May import: schema, tests/drill builders. */
import type { Edit } from "../../schema/change.ts";
import { passageSchema } from "../../schema/editor.ts";
import { KINDS, type Rows } from "../../schema/record.ts";
import type { Basis } from "../../schema/slot.ts";
import { held, idOf, said, WorkBuilder } from "../drill/build-rows.ts";

export interface BigBook {
  rows: Rows;
  work: string;
  exercises: string[];
  steps: number;
  cruxes: number;
}

export interface BigBookSize {
  exercises: number;
  /** Of each exercise. */
  steps: number;
  cruxes: number;
}

const WORDS =
  "let him ride the horse about the well at an easy canter with the spear low beside his right boot and when he has gone once round he brings it across before him".split(
    " ",
  );
const PASSAGES = 3;
/** In each layer; the invented book that comes with the program has as many. */
const WORDS_A_STEP = 40;
const SOURCES = 20;

/** `cruxes` at most `steps`. */
export function bigBook({ exercises, steps, cruxes }: BigBookSize): BigBook {
  const book = new WorkBuilder("A large invented book", { author: "nobody" });
  const translation = book.layer("The translation");
  const original = book.layer("The original", { is: "original", language: "la" });
  const lance = book.object("lance", "shaft");
  const ground = idOf("the big ground");
  const length = (of: number) => said({ is: "exact" as const, of }, "supplied", []);
  book.put("grounds", {
    id: ground,
    work: book.work,
    rank: "a0",
    name: "the big ground",
    is: "rectangular",
    slots: { length: length(60), width: length(20) },
    note: "",
  });
  const sources = Array.from({ length: SOURCES }, (_, index) => {
    const item = {
      id: index,
      type: index % 3 === 0 ? "article-journal" : "book",
      title: `Of Riding, Part ${index + 1}`,
      author: [{ family: `Writer${String.fromCharCode(65 + index)}`, given: "A." }],
      issued: { "date-parts": [[1900 + index]] },
      publisher: "A Press",
    };
    return book.put("sources", { id: idOf(`source ${index}`), work: book.work, item });
  });
  const made: string[] = [];
  for (let number = 1; number <= exercises; number += 1) {
    const exercise = book.exercise(`Exercise ${number}`, { label: String(number), ground });
    made.push(exercise);
    const textLength = WORDS_A_STEP * Math.ceil(steps / PASSAGES) + 40;
    const texts = Array.from({ length: PASSAGES }, (_, index) => {
      const passage = book.passage(
        `passage ${number} ${index}`,
        [{ kind: "section", from: [String(number), String(index + 1)] }],
        exercise,
      );
      const words = (salt: number) =>
        Array.from({ length: textLength }, (_unused, at) => `${WORDS[(at * 7 + salt) % WORDS.length]}${at}`).join(" ");
      return [book.text(passage, translation, words(number)), book.text(passage, original, words(number + 3))] as const;
    });
    for (let step = 1; step <= steps; step += 1) {
      const [text = "", latin = ""] = texts[step % PASSAGES] ?? [];
      const element = book.step(`Step ${step} of ${number}`, exercise);
      // Its first word in the passage it is told in, which it shares with every third step.
      const first = 30 * Math.ceil(step / PASSAGES);
      const at = (word: number) => `${WORDS[(word * 7 + number) % WORDS.length]}${word} `;
      const mark = (of: "elements" | "actions" | "cruxes", id: string, word: number) =>
        book.mark(of, id, text, at(word), at(word + 6));
      mark("elements", element, first);
      book.mark("elements", element, latin, `${WORDS[(first * 7 + number + 3) % WORDS.length]}${first} `);
      const words = (word: number): Basis => ({ is: "words", mark: mark("elements", element, word) });
      const crux = step <= cruxes ? book.crux(`Crux ${step} of ${number}`, exercise, { note: "A note on it." }) : null;
      if (crux !== null) mark("cruxes", crux, first + 10);
      const turn = { to: "left" as const, viewpoint: "rider" as const };
      const ride = book.action(element, "ride", {
        figure: said("circle", "stated", [words(first + 8)]),
        turn:
          crux === null
            ? said(turn, "implied", [{ is: "premise", text: "The well is on his left." }])
            : held(`Crux ${step} of ${number}`),
        size: length(10 + (step % 3)),
      });
      const parallel = {
        is: "parallel",
        source: sources[(number * step) % SOURCES] ?? "",
        where: `p. ${step + 10}`,
        text: "He does so there.",
      } as const;
      const why: Basis = step % 3 === 0 ? parallel : { is: "premise", text: "It was so before." };
      book.action(element, "raise", {
        object: said(lance, "stated", [words(first + 14)]),
        level: said("high", "implied", [why]),
      });
      if (crux === null) continue;
      for (const [index, to] of (["left", "right", "inside"] as const).entries()) {
        book.reading(`Reading ${index} of crux ${step} of ${number}`, crux, {
          argument: `${index}: because the sentence before it says so, and because nothing else would bring him round to the gate again.`,
          holder: index === 0 ? "the editor" : "the translator",
          evidence: index === 0 ? [words(first + 20), { ...parallel, text: "" }] : [],
          values: [
            {
              at: { kind: "actions", id: ride, slot: "turn" },
              value: said({ to, viewpoint: "rider" }, "supplied", []),
            },
          ],
          status:
            index === 0
              ? { is: "adopted", on: "2026-01-02", sitting: null, reason: "It is the plainer one.", condition: "" }
              : index === 1
                ? { is: "standing" }
                : { is: "ruled out", on: "2026-01-02", sitting: null, reason: "There is no inside here." },
        });
      }
    }
    book.question(`Is it so in exercise ${number}?`, exercise, null);
    const [first = ""] = texts[0] ?? [];
    const note = book.put("notes", { id: idOf(`note ${number}`), work: book.work, text: "A remark." });
    book.mark("notes", note, first, `${WORDS[(35 + number) % WORDS.length]}5 `);
    book.put("trials", {
      id: idOf(`trial ${number}`),
      exercise,
      on: "2026-02-03",
      who: "a rider",
      way: "mounted",
      choice: [],
      variant: null,
      kit: null,
      edition: null,
      drill: null,
      outcome: "in part",
      findings: [{ element: null, text: "It went well." }],
      note: "",
    });
  }
  return { rows: book.rows(), work: book.work, exercises: made, steps: exercises * steps, cruxes: exercises * cruxes };
}

/** Every row as the edit that makes it, so that a store can hold the book. The builder leaves the documents of texts empty. */
export function editsOf(rows: Rows): Edit[] {
  return KINDS.flatMap((kind) =>
    (rows[kind] ?? []).map(({ value }) => {
      const filled = kind === "passageTexts" ? { ...value, doc: docOf((value as { text: string }).text) } : value;
      return { do: "create", kind, value: { ...filled } as Record<string, unknown> } as Edit;
    }),
  );
}

function docOf(text: string): unknown {
  const paragraphs = text
    .split("\n")
    .map((line) => passageSchema.node("paragraph", null, line === "" ? [] : [passageSchema.text(line)]));
  return passageSchema.node("doc", null, paragraphs).toJSON();
}
