/** tests/store/decisions.test.ts - what was decided of a crux, read back from the log. Rule S29. */
import { describe, expect, test } from "vitest";
import { readDecisions, undoChange, writeChange } from "../../server/store/index.ts";
import { ID, idOf } from "./full-book.ts";
import { accepted, bookStore, create, NOW, remove, request, set } from "./store-builders.ts";

const standing = { is: "standing" };
const adopted = { is: "adopted", on: "2026-05-04", sitting: null, reason: "the words", condition: "" };
const ruledOut = { is: "ruled out", on: "2026-05-05", sitting: null, reason: "tried it" };
const free = { on: "2026-05-06", sitting: null, reason: "both go", default: ID.reading };

describe("[S29] decisions of a crux", () => {
  function decided() {
    const store = bookStore();
    const before = readDecisions(store, ID.crux);
    let number = 1;
    const write = (...edits: Parameters<typeof request>[1]) => {
      number += 1;
      return accepted(writeChange(store, request(number, edits), { now: NOW }));
    };
    const told = () => {
      const all = readDecisions(store, ID.crux);
      return all.slice(0, all.length - before.length).map(({ is, reason, reading }) => [is, reason, reading]);
    };
    return { store, write, told };
  }

  test("every status and its reason, newest first; other fields are none", () => {
    const { store, write, told } = decided();
    write(set("readings", ID.reading, 1, { status: adopted }));
    write(set("readings", ID.reading, 2, { argument: "more of it" }));
    write(set("readings", ID.reading, 3, { status: ruledOut }));
    write(set("readings", ID.reading, 4, { status: standing }));
    const [newest] = readDecisions(store, ID.crux);
    expect(newest).toMatchObject({ number: 5, who: "Ada", when: NOW, on: null, is: "standing" });
    expect(told()).toEqual([
      ["standing", "", ID.reading],
      ["ruled out", "tried it", ID.reading],
      ["adopted", "the words", ID.reading],
    ]);
  });

  test("leaving it free and taking it up again are of the crux as a whole", () => {
    const { write, told } = decided();
    write(set("cruxes", ID.crux, 1, { leftFree: free }));
    write(set("cruxes", ID.crux, 2, { leftFree: null }));
    write(set("cruxes", ID.crux, 3, { note: "a note" }));
    expect(told()).toEqual([
      ["no longer left free", "", null],
      ["left free", "both go", null],
    ]);
  });

  test("undo is told as what it does", () => {
    const { store, write, told } = decided();
    write(set("cruxes", ID.crux, 1, { leftFree: free }));
    accepted(undoChange(store, { id: idOf(50), who: "Ada", why: "", undoes: idOf(2) }, { now: NOW }));
    expect(told().map(([is]) => is)).toEqual(["no longer left free", "left free"]);
  });

  test("a reading that is gone is still told", () => {
    const { write, told } = decided();
    const reading = {
      ...{ id: idOf(40), crux: ID.crux, rank: "zz", title: "another", argument: "", holder: "", evidence: [] },
      ...{ requires: [], excludes: [], values: [], status: ruledOut, confidence: null },
    };
    write(create("readings", reading));
    write(remove("readings", idOf(40)));
    expect(told()).toEqual([
      ["taken away", "", idOf(40)],
      ["ruled out", "tried it", idOf(40)],
    ]);
  });

  test("a crux nobody decided has none", () => {
    expect(readDecisions(bookStore(), idOf(99))).toEqual([]);
  });
});
