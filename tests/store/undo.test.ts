/** tests/store/undo.test.ts - taking changes back, one and a group, and what the history says of it. Rules S24-S26. */
import { describe, expect, test } from "vitest";
import {
  allRows,
  amendPassage,
  readChange,
  readHistory,
  readRow,
  replay,
  type Store,
  undoChange,
  writeChange,
} from "../../server/store/index.ts";
import { ID, idOf } from "./full-book.ts";
import { accepted, bookStore, create, emptyStore, NOW, remove, request, set } from "./store-builders.ts";

const at = { now: NOW };
const GROUP = idOf(77);
const undo = (store: Store, number: number, undoes: number) =>
  undoChange(store, { id: idOf(number), who: "Ada", why: "a slip", undoes: idOf(undoes) }, at);
const place = (store: Store) => readRow(store, "sittings", ID.sitting)?.value.place;
const setPlace = (store: Store, number: number, base: number, words: string, by = "Ada") =>
  accepted(writeChange(store, request(number, [set("sittings", ID.sitting, base, { place: words })], by), at));

test("[S26] versions go on counting over undo", () => {
  const store = bookStore();
  setPlace(store, 2, 1, "court");
  accepted(undo(store, 3, 2));
  expect(readRow(store, "sittings", ID.sitting)).toMatchObject({ version: 3, value: { place: "" } });
  accepted(undo(store, 4, 3));
  expect(readRow(store, "sittings", ID.sitting)).toMatchObject({ version: 4, value: { place: "court" } });
});

test("[S24] what was changed since is shown, with who and when", () => {
  const store = bookStore();
  setPlace(store, 2, 1, "court");
  setPlace(store, 3, 2, "wall", "Bea");
  expect(undo(store, 4, 2)).toMatchObject({
    ok: false,
    refusal: {
      error: {
        code: "conflict",
        conflicts: [
          { kind: "sittings", field: "place", base: "court", theirs: "wall", yours: "", who: "Bea", when: NOW },
        ],
      },
    },
  });
  accepted(undo(store, 5, 3));
  accepted(undo(store, 6, 2));
  expect(place(store)).toBe("");
});

test("[S24] a change is taken back once; an unknown one never", () => {
  const store = bookStore();
  setPlace(store, 2, 1, "court");
  accepted(undo(store, 3, 2));
  expect(undo(store, 4, 2)).toMatchObject({
    refusal: { error: { code: "already_undone", sentence: expect.stringContaining("Undo that one to have it again") } },
  });
  expect(undo(store, 4, 99)).toMatchObject({ refusal: { error: { code: "change_unknown" } } });
  expect(undo(store, 3, 2)).toMatchObject({ ok: true, value: { change: 3 } });
});

test("[S24] what others have tied to a new row since keeps it", () => {
  const store = bookStore();
  accepted(
    writeChange(
      store,
      request(2, [create("terms", { id: idOf(1), work: ID.work, word: "w", language: "", note: "" })]),
      at,
    ),
  );
  accepted(
    writeChange(
      store,
      request(3, [create("senses", { id: idOf(2), term: idOf(1), rank: "a0", title: "s", gloss: "" })]),
      at,
    ),
  );
  expect(undo(store, 4, 2)).toMatchObject({
    refusal: { error: { code: "still_needed", sentence: expect.stringContaining("sense “s” still needs it") } },
  });
});

describe("[S25] a group", () => {
  const grouped = () => {
    const store = bookStore();
    const before = allRows(store);
    accepted(
      writeChange(store, { ...request(2, [set("sittings", ID.sitting, 1, { place: "court" })]), group: GROUP }, at),
    );
    accepted(
      writeChange(
        store,
        {
          ...request(3, [set("sittings", ID.sitting, 2, { place: "wall" }), remove("faults", ID.fault)]),
          group: GROUP,
        },
        at,
      ),
    );
    return { store, before };
  };

  test("is taken back together, and done again together", () => {
    const { store, before } = grouped();
    accepted(undo(store, 4, 2));
    expect([place(store), readRow(store, "faults", ID.fault)?.value]).toEqual(["", before.faults?.[0]?.value]);
    expect(readHistory(store).map(({ number, undone }) => `${number} ${undone}`)).toEqual([
      "4 false",
      "3 true",
      "2 true",
      "1 false",
    ]);
    expect(undo(store, 5, 3)).toMatchObject({ refusal: { error: { code: "already_undone" } } });
    accepted(undo(store, 6, 4));
    expect([place(store), readRow(store, "faults", ID.fault)]).toEqual(["wall", null]);
    expect(readHistory(store).map(({ undone }) => undone)).toEqual([false, true, false, false, false]);
    expect(replay(store)).toEqual(allRows(store));
  });

  test("is kept where somebody changed a row in between", () => {
    const store = bookStore();
    accepted(
      writeChange(store, { ...request(2, [set("sittings", ID.sitting, 1, { place: "court" })]), group: GROUP }, at),
    );
    setPlace(store, 3, 2, "between", "Bea");
    accepted(
      writeChange(store, { ...request(4, [set("sittings", ID.sitting, 3, { place: "wall" })]), group: GROUP }, at),
    );
    expect(undo(store, 5, 4)).toMatchObject({
      refusal: { error: { code: "conflict", conflicts: [{ theirs: "between", base: "court" }] } },
    });
  });
});

describe("history", () => {
  test("is newest first, by work, in pages, counted by kind", () => {
    const store = bookStore();
    const other = idOf(5);
    const work = { rank: "b0", title: "Another", author: "", levels: [], note: "", source: null, invented: true };
    accepted(writeChange(store, request(2, [create("works", { id: other, ...work })]), at));
    accepted(writeChange(store, request(3, [remove("holds", ID.hold), set("notes", ID.note, 1, { text: "x" })]), at));
    expect(readHistory(store, { work: other }).map(({ number }) => number)).toEqual([2]);
    expect(readHistory(store, { work: ID.work }).map(({ number }) => number)).toEqual([3, 1]);
    expect(readHistory(store, { before: 3, limit: 1 }).map(({ number }) => number)).toEqual([2]);
    expect(readHistory(store)[0]).toEqual({
      ...{ number: 3, id: idOf(3), when: NOW, who: "Ada", why: "", group: null, undoes: null, undone: false },
      sitting: null,
      touched: [
        { kind: "anchors", made: 0, changed: 0, removed: 1 },
        { kind: "faults", made: 0, changed: 0, removed: 1 },
        { kind: "holds", made: 0, changed: 0, removed: 1 },
        { kind: "marks", made: 0, changed: 0, removed: 1 },
        { kind: "notes", made: 0, changed: 1, removed: 0 },
      ],
      passage: null,
    });
    const edits = readChange(store, idOf(3))?.edits ?? [];
    expect(edits.find(({ kind }) => kind === "notes")).toMatchObject({
      base: 1,
      version: 2,
      before: { text: "So in both." },
      after: { text: "x" },
    });
    expect(readChange(store, idOf(44))).toBeNull();
    expect(readHistory(emptyStore())).toEqual([]);
  });

  test("names the passage where a change touched texts or marked words of one alone", () => {
    const store = bookStore();
    accepted(writeChange(store, request(2, [set("notes", ID.note, 1, { text: "x" })]), at));
    const steps = [{ stepType: "replace", from: 1, to: 2 }];
    const amendment = { id: idOf(3), who: "Ada", why: "a slip", sitting: null, text: ID.text, steps };
    const amended = { ...at, newId: () => idOf(70) };
    accepted(amendPassage(store, ID.passage, amendment, amended));
    accepted(undo(store, 4, 3));
    const one = { id: ID.passage, reference: "1" };
    // The amendment and its undoing touched one passage, the note none, the whole book two.
    expect(readHistory(store).map(({ passage }) => passage)).toEqual([one, one, null, null]);
  });
});
