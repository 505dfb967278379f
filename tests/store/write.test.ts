/** tests/store/write.test.ts - one request after another: what is written, merged and taken along. Rules S3-S19. */
import { describe, expect, test } from "vitest";
import type { Edit } from "../../schema/change.ts";
import { allRows, readRow, replay, type Store, undoChange, writeChange } from "../../server/store/index.ts";
import { temporaryStorePath } from "../kit/temporary-store-path.ts";
import { ID, idOf } from "./full-book.ts";
import { accepted, bookStore, create, emptyStore, NOW, remove, request, set } from "./store-builders.ts";

const at = { now: NOW };
const note = (id: number, text = "n") => create("notes", { id: idOf(id), work: ID.work, text });
const write = (store: Store, number: number, edits: Edit[], by?: string) =>
  writeChange(store, request(number, edits, by), at);

const supplied = { warrant: "supplied", basis: [] };
const step = { exercise: ID.exercise, rank: "b0", guard: [], existence: supplied, order: null, role: "", copyOf: null };
const said = (value: unknown) => ({ is: "said", value, ...supplied });
const inCrux = (crux: string) => ({ is: "in crux", crux });
const give = (slot: string, given: unknown, id = ID.turn) => ({ at: { kind: "actions", id, slot }, value: given });
const adopted = { is: "adopted", on: "2026-05-04", sitting: null, reason: "clear", condition: "" };
const turnAct = (slots: object) => set("actions", ID.turn, 1, { act: { verb: "ride", slots } });

describe("written", () => {
  test("[S3] null takes away a field that may be missing; a nullable one becomes null", () => {
    const store = bookStore();
    accepted(write(store, 2, [set("elements", ID.again, 1, { times: null, copyOf: ID.step })]));
    const { value: again } = readRow(store, "elements", ID.again) ?? {};
    expect(again).not.toHaveProperty("times");
    accepted(write(store, 3, [set("elements", ID.again, 2, { copyOf: null, title: "Once more" })]));
    expect(readRow(store, "elements", ID.again)).toMatchObject({
      version: 3,
      value: { copyOf: null, title: "Once more" },
    });
  });

  test("[S16] a slot goes into a crux and its readings get values in one change", () => {
    const store = bookStore();
    const edits = [
      turnAct({ figure: inCrux(ID.crux), turn: inCrux(ID.crux) }),
      set("readings", ID.reading2, 1, { values: [give("figure", said("volte"))] }),
    ];
    accepted(write(store, 2, edits));
    expect(
      write(store, 3, [set("actions", ID.turn, 2, { act: { verb: "ride", slots: { turn: inCrux(ID.crux) } } })]),
    ).toMatchObject({ refusal: { error: { code: "slot_not_in_crux" } } });
  });

  test("[S16] the same slot names another kind when the verb changes", () => {
    const store = bookStore();
    accepted(
      write(store, 2, [
        set("readings", ID.reading, 1, { values: [] }),
        set("readings", ID.reading2, 1, { values: [give("turn", { is: "absent" })] }),
      ]),
    );
    expect(write(store, 3, [set("actions", ID.turn, 1, { act: { verb: "wait", slots: {} } })])).toMatchObject({
      refusal: { error: { code: "slot_unknown" } },
    });
  });

  test("[S19] one reading adopted for good and one under a condition", () => {
    const store = bookStore();
    accepted(
      write(store, 2, [
        set("readings", ID.reading, 1, { status: adopted }),
        set("readings", ID.reading2, 1, { status: { ...adopted, condition: "on foot" } }),
      ]),
    );
  });

  test("[S10] the same request again gives the same answer and is stored once", () => {
    const store = bookStore();
    accepted(write(store, 2, [set("notes", ID.note, 1, { text: "Ada's" })], "Ada"));
    const sent = [note(1), set("marks", ID.noteMark, 1, { as: "against" }), remove("faults", ID.fault)];
    const first = write(store, 3, sent);
    accepted(write(store, 4, [set("notes", idOf(1), 1, { text: "changed since" })]));
    expect(write(store, 3, sent)).toEqual(first);
    expect(accepted(first).change).toBe(3);
    expect(readRow(store, "notes", idOf(1))?.version).toBe(2);
    expect(write(store, 3, [note(2)])).toMatchObject({ refusal: { error: { code: "change_id_taken" } } });
  });

  test("[S10] a request that changes nothing is not logged", () => {
    const store = bookStore();
    const outcome = accepted(write(store, 2, [set("notes", ID.note, 1, { text: "So in both." })]));
    expect(outcome).toMatchObject({ change: 1, rows: [{ version: 1 }], removed: [] });
  });

  test("[S13] a removal takes along what is part of it or tied to it, and undo brings all of it back", () => {
    const store = bookStore();
    const before = allRows(store);
    const taken = accepted(write(store, 2, [remove("holds", ID.hold)])).removed;
    expect(taken.map(({ id }) => id).sort()).toEqual([ID.hold, ID.fault, ID.regionMark, ID.regionAnchor].sort());
    accepted(undoChange(store, { id: idOf(3), who: "Ada", why: "", undoes: idOf(2) }, at));
    expect(readRow(store, "holds", ID.hold)).toEqual({ kind: "holds", version: 3, value: before.holds?.[0]?.value });
    expect(replay(store)).toEqual(allRows(store));
  });

  test("[S13] a removed id is not used again", () => {
    const store = bookStore();
    accepted(write(store, 2, [remove("faults", ID.fault)]));
    const again = create("faults", {
      id: ID.fault,
      work: ID.work,
      of: "holds",
      target: ID.hold,
      rank: "a0",
      fault: "x",
      correction: "",
    });
    expect(write(store, 3, [again])).toMatchObject({
      refusal: { error: { code: "id_removed", sentence: expect.stringContaining("Undo the removal") } },
    });
  });

  test("[S13] a whole work goes with everything in it", () => {
    const store = bookStore();
    const outcome = accepted(write(store, 2, [remove("works", ID.work)]));
    expect(outcome.removed.length).toBeGreaterThan(50);
    expect(allRows(store)).toEqual({});
    expect(replay(store)).toEqual({});
  });

  test("[S14] what an old paper named may go; what a new one names must be there", () => {
    const store = bookStore();
    accepted(write(store, 2, [create("elements", { id: idOf(1), ...step, note: "", is: "step", title: "New" })]));
    accepted(write(store, 3, [set("trials", ID.trial, 1, { findings: [{ element: idOf(1), text: "good" }] })]));
    accepted(write(store, 4, [remove("elements", idOf(1))]));
    accepted(write(store, 5, [set("trials", ID.trial, 2, { note: "still to be written" })]));
    expect(
      write(store, 6, [set("trials", ID.trial, 3, { findings: [{ element: idOf(2), text: "?" }] })]),
    ).toMatchObject({ refusal: { error: { code: "reference_unknown" } } });
  });
});

describe("[S12] two writers", () => {
  const twoWindows = (): [Store, Store] => {
    const path = temporaryStorePath();
    return [bookStore(path), emptyStore(path)];
  };

  test("disjoint fields merge, and what was merged is told", () => {
    const [mine, theirs] = twoWindows();
    accepted(write(theirs, 2, [set("sittings", ID.sitting, 1, { place: "the court" })], "Bea"));
    const outcome = accepted(write(mine, 3, [set("sittings", ID.sitting, 1, { note: "cold" })]));
    expect(outcome.merged).toEqual([{ kind: "sittings", id: ID.sitting, fields: ["place"] }]);
    expect(readRow(theirs, "sittings", ID.sitting)).toMatchObject({
      version: 3,
      value: { place: "the court", note: "cold" },
    });
    mine.close();
    theirs.close();
  });

  test("the same field conflicts: all conflicts are listed, with who and when, and nothing is stored", () => {
    const [mine, theirs] = twoWindows();
    accepted(write(theirs, 2, [set("sittings", ID.sitting, 1, { place: "the court", note: "warm" })], "Bea"));
    accepted(write(theirs, 3, [remove("faults", ID.fault)], "Cy"));
    const outcome = write(mine, 4, [
      note(1),
      set("sittings", ID.sitting, 1, { place: "the wall", note: "cold" }),
      set("faults", ID.fault, 1, { correction: "lower" }),
    ]);
    const who = (name: string) => ({ who: name, when: NOW });
    expect(outcome).toMatchObject({
      ok: false,
      refusal: {
        error: {
          code: "conflict",
          sentence:
            "Bea changed “place” of this sitting (and 2 more) meanwhile. Nothing was stored and nothing is lost: compare both, choose, and save again.",
          conflicts: [
            {
              kind: "sittings",
              id: ID.sitting,
              field: "place",
              base: "",
              theirs: "the court",
              yours: "the wall",
              ...who("Bea"),
            },
            { kind: "sittings", id: ID.sitting, field: "note", base: "", theirs: "warm", yours: "cold", ...who("Bea") },
            { kind: "faults", id: ID.fault, field: "", theirs: null, yours: { correction: "lower" }, ...who("Cy") },
          ],
        },
      },
    });
    expect(readRow(mine, "notes", idOf(1))).toBeNull();
    mine.close();
    theirs.close();
  });

  test("the same value from both is fine, and a field that came back to what it was is not in dispute", () => {
    const [mine, theirs] = twoWindows();
    accepted(write(theirs, 2, [set("sittings", ID.sitting, 1, { place: "x", who: ["the translator", "Bea"] })]));
    accepted(write(theirs, 3, [set("sittings", ID.sitting, 2, { place: "" })]));
    accepted(write(mine, 4, [set("sittings", ID.sitting, 1, { place: "mine", who: ["the translator", "Bea"] })]));
    expect(readRow(mine, "sittings", ID.sitting)).toMatchObject({ version: 4, value: { place: "mine" } });
    mine.close();
    theirs.close();
  });

  test("[S13] what another writer changed is not removed unseen; what both removed is gone", () => {
    const [mine, theirs] = twoWindows();
    accepted(write(theirs, 2, [set("faults", ID.fault, 1, { correction: "lower" })], "Bea"));
    expect(write(mine, 3, [remove("faults", ID.fault)])).toMatchObject({
      refusal: {
        error: {
          code: "conflict",
          conflicts: [{ field: "", yours: null, theirs: { correction: "lower" }, who: "Bea" }],
        },
      },
    });
    accepted(write(theirs, 4, [remove("faults", ID.fault, 2)]));
    expect(accepted(write(mine, 5, [remove("faults", ID.fault, 2)])).removed).toEqual([]);
    mine.close();
    theirs.close();
  });

  test("[S7] a writer who waits too long is told so", () => {
    const [mine, theirs] = twoWindows();
    mine.db.pragma("busy_timeout = 20");
    theirs.db.exec("BEGIN IMMEDIATE");
    expect(write(mine, 2, [note(1)])).toMatchObject({ refusal: { error: { code: "store_busy" } } });
    theirs.db.exec("ROLLBACK");
    accepted(write(mine, 2, [note(1)]));
    mine.close();
    theirs.close();
  });
});
