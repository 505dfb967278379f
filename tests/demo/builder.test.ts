/** tests/demo/builder.test.ts - the builder: several pieces, warrants, values by reading, and slips that are refused. */
import { describe, expect, test } from "vitest";
import { type Kind, RECORDS, type RecordOf } from "../../schema/record.ts";
import type { Slot } from "../../schema/slot.ts";
import { BookBuilder } from "../../server/demo/builder.ts";
import { does, idOf, implied, inCrux, LEFT, RIGHT, stated } from "../../server/demo/draft.ts";
import { ExerciseBuilder } from "../../server/demo/exercise-builder.ts";
import { page } from "../../server/demo/leaf.ts";

/** A book of one passage, in which he turns. */
function smallBook() {
  const book = new BookBuilder({ title: "A leaf", author: "", levels: [], note: "", source: null, invented: true });
  const revision = (is: "original" | "translation") => {
    const layer = book.add("layers", { is, title: is, by: "", language: "", witness: null, urn: "" });
    return book.rows.add("revisions", { layer, label: "1", received: null, from: "", attachment: null, note: "" });
  };
  const texts = { translation: revision("translation"), original: revision("original") };
  const exercise = new ExerciseBuilder(book, { label: "1", title: "Of turning", note: "", ground: null });
  const passage = book.passage(texts, exercise.id, [page(1)], {
    translation: "He sets out at a walk, looks about him, and turns.",
    original: "Exit passu, circumspicit, et vertit.",
  });
  const way = book.crux({
    exercise: exercise.id,
    is: "silent",
    title: "Which way",
    words: passage.both("turns", "vertit"),
    readings: {
      left: { title: "left", argument: "The heart is there.", holder: "editor" },
      right: { title: "right", argument: "The sun goes so.", holder: "translator" },
    },
  });
  return { book, exercise, passage, way };
}

function rowsOf<K extends Kind>(book: BookBuilder, kind: K): RecordOf<K>[] {
  return book.edits().flatMap((edit) => {
    if (edit.do !== "create" || edit.kind !== kind) return [];
    return [RECORDS[kind].parse(edit.value) as RecordOf<K>];
  });
}

describe("a step", () => {
  test("may lie on several pieces, which keep their order", () => {
    const { book, exercise, passage } = smallBook();
    const step = exercise.step("Out", [...passage.tr("He sets out", "and turns"), ...passage.la("Exit", "vertit")], []);
    const [mark] = rowsOf(book, "marks").filter((row) => row.target === step);
    const anchors = rowsOf(book, "anchors").filter((anchor) => anchor.mark === mark?.id);
    const quotes = [...anchors].sort((a, b) => (a.rank < b.rank ? -1 : 1)).map((row) => row.is === "text" && row.quote);
    expect(quotes).toEqual(["He sets out", "and turns", "Exit", "vertit"]);
  });

  test("lends its words to what is stated in it, unless an action or a value has words of its own", () => {
    const { book, exercise, passage } = smallBook();
    const walks = does("go at", { gait: stated("walk") });
    const looks = does(
      "look",
      { toward: implied({ is: "words", words: "all round" }, "“about”") },
      { words: passage.tr("looks about him") },
    );
    const turns = does("ride", { figure: stated("turn", passage.tr("turns")) });
    exercise.step("Out", passage.tr("He sets out at a walk"), [walks, looks, turns]);
    const quoteOf = (mark: string) =>
      rowsOf(book, "anchors").flatMap((anchor) => (anchor.mark === mark && anchor.is === "text" ? [anchor.quote] : []));
    const restsOn = (id: string, name: string) => {
      const slots: object = rowsOf(book, "actions").find((row) => row.id === id)?.act.slots ?? {};
      const held = (slots as Record<string, Slot<unknown>>)[name];
      if (held?.is !== "said") return [];
      return held.basis.flatMap((basis) => (basis.is === "words" ? quoteOf(basis.mark) : [basis.is]));
    };
    expect(restsOn(idOf(walks), "gait")).toEqual(["He sets out at a walk"]);
    expect(restsOn(idOf(looks), "toward")).toEqual(["premise"]);
    expect(restsOn(idOf(turns), "figure")).toEqual(["turns"]);
  });
});

describe("a slot in a crux", () => {
  test("has no value of its own; each reading gives one", () => {
    const { book, exercise, passage, way } = smallBook();
    const turn = does("ride", {
      figure: stated("turn"),
      turn: inCrux(way, { left: implied(LEFT, "So read."), right: implied(RIGHT, "So read.") }),
    });
    exercise.step("The turn", passage.tr("turns"), [turn]);
    const [action] = rowsOf(book, "actions");
    expect(action?.act.slots).toMatchObject({ turn: { is: "in crux", crux: way.id } });
    expect(rowsOf(book, "readings").map((reading) => reading.values)).toMatchObject([
      [{ at: { kind: "actions", id: idOf(turn), slot: "turn" }, value: { value: LEFT } }],
      [{ at: { kind: "actions", id: idOf(turn), slot: "turn" }, value: { value: RIGHT } }],
    ]);
  });

  test("cannot be given a reading the crux has not", () => {
    const { exercise, passage, way } = smallBook();
    const turn = does("ride", { turn: inCrux(way, { inward: implied(LEFT, "So read.") }) });
    expect(() => exercise.step("The turn", passage.tr("turns"), [turn])).toThrow(
      'The crux "Which way" has the readings left, right; "inward" is none.',
    );
  });
});

test("an action cannot be named before its step is written", () => {
  expect(() => idOf(does("go at", {}))).toThrow(TypeError);
});

test("a mark needs words", () => {
  const { book, way } = smallBook();
  expect(() => book.mark("cruxes", way.id, [])).toThrow(RangeError);
});
