/** tests/store/read.test.ts - the contents, and all that bears on one exercise or passage. Rules S27 and S28. */
import { describe, expect, test } from "vitest";
import type { Edit } from "../../schema/change.ts";
import { KINDS, type Kind, type Row } from "../../schema/record.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { amendPassage, readBundle, readContents, readRows, type Store, writeChange } from "../../server/store/index.ts";
import { namedBy } from "../../server/store/mentions.ts";
import { anchor, ID, idOf, paragraph, TEXT } from "./full-book.ts";
import { accepted, bookStore, create, emptyStore, NOW, request, set } from "./store-builders.ts";

const at = { now: NOW };
const write = (store: Store, number: number, edits: Edit[]) => accepted(writeChange(store, request(number, edits), at));
const progress = (store: Store, passage = ID.passage) =>
  readContents(store).works[0]?.passages.find((one) => one.passage === passage);

function openedDemo(): Store {
  const store = emptyStore();
  loadDemo(store, NOW);
  return store;
}

describe("[S28] how far a passage is worked", () => {
  test("the book as it is", () => {
    // 13 words; "Ride to the left hand," is the step's, "the spear" the note's: 5 + 2 of them.
    expect(progress(bookStore())).toEqual({
      ...{ passage: ID.passage, opening: TEXT, worked: 7 / 13, untreated: false },
      ...{ openCruxes: 1, openQuestions: 0, lostMarks: 0 },
    });
    expect(progress(bookStore(), ID.passage2)).toMatchObject({
      worked: 0,
      untreated: true,
      opening: "Then do it again.",
    });
  });

  test("an action's words are its element's; an untreated element's are not worked", () => {
    const store = bookStore();
    const mark = (id: string, of: string, target: string | undefined) =>
      create("marks", { id, work: ID.work, of, target, as: "words" });
    write(store, 2, [
      ...[mark(idOf(1), "actions", ID.turn), create("anchors", anchor(idOf(2), idOf(1), 23, 26))],
      ...[mark(idOf(3), "elements", ID.untreated), create("anchors", anchor(idOf(4), idOf(3), 47, 50))],
    ]);
    expect(progress(store)).toMatchObject({ worked: 8 / 13, untreated: true });
  });

  test("so are the words of anything else that is entered: a standing instruction, a hold, a sense, a crux", () => {
    const tied = { standings: ID.standing, holds: ID.hold, senses: ID.sense, cruxes: ID.crux, questions: ID.question };
    for (const [of, target] of Object.entries(tied)) {
      const store = bookStore();
      const mark = create("marks", { id: idOf(1), work: ID.work, of, target, as: "words" });
      write(store, 2, [mark, create("anchors", anchor(idOf(2), idOf(1), 23, 26))]);
      expect(progress(store)?.worked, of).toBe(8 / 13);
    }
  });

  test("a crux is open until a reading is adopted; a question until it is answered; the lost are counted", () => {
    const store = bookStore();
    const mark = create("marks", { id: idOf(1), work: ID.work, of: "questions", target: ID.question, as: "words" });
    write(store, 2, [
      ...[
        mark,
        create("anchors", anchor(idOf(2), idOf(1), 0, 4)),
        set("questions", ID.question, 1, { state: { is: "open" } }),
      ],
      set("readings", ID.reading, 1, {
        status: { is: "adopted", on: "2026-05-04", sitting: null, reason: "x", condition: "" },
      }),
    ]);
    expect(progress(store)).toMatchObject({ openCruxes: 0, openQuestions: 1, lostMarks: 0 });
    const steps = [{ stepType: "replace", from: 1, to: 6 }];
    accepted(
      amendPassage(store, ID.passage, { id: idOf(3), who: "Ada", why: "cut", sitting: null, text: ID.text, steps }, at),
    );
    expect(progress(store)).toMatchObject({ lostMarks: 1, openQuestions: 1, opening: TEXT.slice(5) });
  });

  test("works, exercises and passages come by rank, and an empty store has none", () => {
    const store = bookStore();
    const first = {
      id: idOf(1),
      rank: "A0",
      title: "First",
      author: "",
      levels: [],
      note: "",
      source: null,
      invented: false,
    };
    write(store, 2, [create("works", first), set("passages", ID.passage2, 1, { rank: "Zz" })]);
    const { works, at: newest } = readContents(store);
    expect(works.map(({ rows }) => rows.works?.[0]?.value.title)).toEqual(["First", "The Book of the Court"]);
    expect(works[1]?.passages.map(({ passage }) => passage)).toEqual([ID.passage2, ID.passage]);
    expect(Object.keys(works[1]?.rows ?? {})).toEqual([
      "works",
      "witnesses",
      "layers",
      "revisions",
      "exercises",
      "passages",
    ]);
    expect(newest).toBe(2);
    expect(readContents(emptyStore())).toEqual({ works: [], at: 0 });
  });
});

describe("[S27] a bundle", () => {
  const flat = (rows: object) => Object.values(rows as Record<string, Row[]>).flat();
  const ids = (rows: object, kind: Kind) => (rows as Record<string, Row[]>)[kind]?.map(({ value }) => value.id) ?? [];

  test("by passage and by exercise is the same, has every kind but papers, and each row once", () => {
    const store = bookStore();
    const { rows, at: newest } = accepted(readBundle(store, { passage: ID.passage2 }));
    expect(accepted(readBundle(store, { exercise: ID.exercise })).rows).toEqual(rows);
    expect(newest).toBe(1);
    expect(KINDS.filter((kind) => !(kind in rows))).toEqual(["editions", "slips", "reports", "lessons"]);
    const keys = flat(rows).map(({ kind, value }) => `${kind} ${value.id}`);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test("of a whole work has all that the bundles of its exercises and passages have, and no more", () => {
    const store = openedDemo();
    const [work] = readRows(store, "works").map(({ value }) => value.id);
    const whole = accepted(readBundle(store, { work: work ?? "" })).rows;
    const parts = readRows(store, "passages").map(
      ({ value }) => accepted(readBundle(store, { passage: value.id })).rows,
    );
    const keysOf = (rows: object) => flat(rows).map(({ kind, value }) => `${kind} ${value.id}`);
    expect(keysOf(whole).sort()).toEqual([...new Set(parts.flatMap(keysOf))].sort());
    const refused = readBundle(store, { work: idOf(7) });
    expect(refused.ok ? "" : refused.refusal.error.sentence).toMatch(
      /^There is no work with the id .*Go back to the contents/,
    );
  });

  test("holds every row that its rows name, as far as it bears on the exercise", () => {
    const store = bookStore();
    const { rows } = accepted(readBundle(store, { passage: ID.passage }));
    const held = new Set(flat(rows).map(({ kind, value }) => `${kind} ${value.id}`));
    const missing = flat(rows).flatMap(({ kind, value }) =>
      namedBy(store, kind, value as never).filter(
        ({ to, id, hold }) => hold !== "frozen" && to !== "editions" && !held.has(`${to} ${id}`),
      ),
    );
    expect(missing).toEqual([]);
  });

  test("has the current texts of the newest revision of each layer only", () => {
    const store = bookStore();
    const steps = [{ stepType: "replace", from: 1, to: 1, slice: { content: [{ type: "text", text: "So: " }] } }];
    accepted(
      amendPassage(
        store,
        ID.passage,
        { id: idOf(3), who: "Ada", why: "so", sitting: null, text: ID.text, steps },
        { ...at, newId: () => idOf(9) },
      ),
    );
    expect(ids(accepted(readBundle(store, { passage: ID.passage })).rows, "passageTexts").sort()).toEqual(
      [idOf(9), ID.text2, ID.originalText].sort(),
    );
    const revision = {
      id: idOf(1),
      layer: ID.layer,
      rank: "a2",
      label: "summer",
      received: null,
      from: "",
      attachment: null,
      note: "",
    };
    const text = {
      id: idOf(2),
      passage: ID.passage,
      revision: idOf(1),
      number: 1,
      doc: paragraph("New."),
      text: "New.",
      steps: [],
    };
    write(store, 4, [create("revisions", revision), create("passageTexts", text)]);
    expect(ids(accepted(readBundle(store, { passage: ID.passage })).rows, "passageTexts").sort()).toEqual(
      [idOf(2), ID.originalText].sort(),
    );
  });

  test("leaves out what belongs to another exercise, but for what its evidence rests on", () => {
    const store = bookStore();
    const exercise = { id: idOf(1), work: ID.work, rank: "a1", label: "2", title: "Other", note: "", ground: null };
    const passage = {
      id: idOf(2),
      work: ID.work,
      exercise: idOf(1),
      rank: "a2",
      references: [{ kind: "section", from: ["3"] }],
    };
    const text = {
      id: idOf(3),
      passage: idOf(2),
      revision: ID.revision,
      number: 1,
      doc: paragraph("To the left."),
      text: "To the left.",
      steps: [],
    };
    const note = (number: number) => create("notes", { id: idOf(number), work: ID.work, text: "n" });
    const mark = (number: number, target: string | undefined, of = "notes") =>
      create("marks", { id: idOf(number), work: ID.work, of, target, as: "for" });
    const there = (number: number, on: number) =>
      create("anchors", { ...anchor(idOf(number), idOf(on), 0, 2), passage: idOf(2), text: idOf(3), quote: "To" });
    write(store, 2, [
      ...[create("exercises", exercise), create("passages", passage), create("passageTexts", text), note(10)],
      ...[mark(20, idOf(10)), mark(21, ID.reading, "readings"), there(30, 20), there(31, 21)],
    ]);
    const { rows } = accepted(readBundle(store, { passage: ID.passage }));
    expect(ids(rows, "exercises").sort()).toEqual([idOf(1), ID.exercise]);
    expect(ids(rows, "marks")).toContain(idOf(21));
    expect(ids(rows, "marks")).not.toContain(idOf(20));
    // Its passage is there to be cited, and so are the words, which would else be told as lost.
    expect(ids(rows, "passages")).toContain(idOf(2));
    expect(ids(rows, "passageTexts")).toContain(idOf(3));
    expect(ids(accepted(readBundle(store, { exercise: idOf(1) })).rows, "elements")).not.toContain(ID.advice);
  });

  test("a passage that stands in no exercise is alone, with what is shared", () => {
    const store = bookStore();
    write(store, 2, [set("passages", ID.passage2, 1, { exercise: null })]);
    const { rows } = accepted(readBundle(store, { passage: ID.passage2 }));
    expect(ids(rows, "passages")).toContain(ID.passage2);
    expect(ids(rows, "passageTexts")).toContain(ID.text2);
    expect(ids(rows, "holds")).toEqual([ID.hold]);
  });

  test("of a passage or an exercise that is not there is refused", () => {
    const store = bookStore();
    expect(readBundle(store, { passage: idOf(1) })).toMatchObject({
      refusal: { error: { code: "row_unknown", sentence: expect.stringContaining("no passage") } },
    });
    expect(readBundle(store, { exercise: ID.passage })).toMatchObject({
      refusal: { error: { code: "row_unknown", sentence: expect.stringContaining("no exercise") } },
    });
  });
});
