/** What papers keep between two askings: never past a change, never more than was said, and never another paper for it. */
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { PaperAsk } from "../../schema/paper.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { buildPaper, paperOf } from "../../server/publish/papers/build-paper.ts";
import { Recent } from "../../server/publish/recent.ts";
import { UntilNextChange } from "../../server/publish/until-next-change.ts";
import { allRows, inTransaction, readBundle, type Store, undoChange, writeChange } from "../../server/store/index.ts";
import { canonicalJson } from "../../shared/drill/canonical-json.ts";
import { compileExercise } from "../../shared/drill/compile.ts";
import { compileAgain } from "../../shared/drill/compile-again.ts";
import { exerciseRows } from "../../shared/drill/exercise-rows.ts";
import { idOf } from "../store/full-book.ts";
import { accepted, emptyStore, NOW, request, set } from "../store/store-builders.ts";
import { printed, wordsOf } from "./paper-lines.ts";
import { askFor, NO_FILES } from "./small-book.ts";

function demoStore(path = ":memory:"): { store: Store; exercises: string[]; work: string } {
  const store = emptyStore(path);
  loadDemo(store, NOW);
  const rows = allRows(store);
  const [work] = rows.works ?? [];
  return { store, exercises: (rows.exercises ?? []).map(({ value }) => value.id), work: work?.value.id ?? "" };
}

/** Gives the exercise another title. */
function entitle(store: Store, exercise: string, title: string, number = 900): string {
  const row = allRows(store).exercises?.find(({ value }) => value.id === exercise);
  const change = request(number, [set("exercises", exercise, row?.version ?? 0, { title })]);
  accepted(writeChange(store, change, { now: NOW }));
  return change.id;
}

describe("what was asked for last", () => {
  test("is made once, and goes when it was longest not asked for", () => {
    const made: string[] = [];
    const recent = new Recent<string>(2);
    const make = (key: string) => {
      made.push(key);
      return key;
    };
    const ask = (key: string) => recent.get(key, () => make(key));
    for (const key of ["a", "b", "a", "c", "a", "b"]) expect(ask(key)).toBe(key);
    expect(made).toEqual(["a", "b", "c", "b"]);
  });

  test("may be undefined", () => {
    const made: string[] = [];
    const recent = new Recent<void>(1);
    const make = () => void made.push("a");
    for (const key of ["a", "a"]) recent.get(key, make);
    expect(made).toEqual(["a"]);
  });
});

describe("what is kept until the next change", () => {
  const counting = () => {
    let made = 0;
    const kept = new UntilNextChange<number>(4);
    return (store: Store, key = "a") => kept.get(store, key, () => (made += 1));
  };

  test("is made again after a write, after what takes it back, and for another store", () => {
    const { store, exercises } = demoStore();
    const ask = counting();
    expect([ask(store), ask(store), ask(store, "b"), ask(store)]).toEqual([1, 1, 2, 1]);
    const change = entitle(store, exercises[0] ?? "", "Otherwise");
    expect([ask(store), ask(store)]).toEqual([3, 3]);
    accepted(undoChange(store, { id: idOf(901), who: "Ada", why: "", undoes: change }, { now: NOW }));
    expect(ask(store)).toBe(4);
    expect(ask(emptyStore())).toBe(5);
    expect(ask(store)).toBe(4);
  });

  test("is made again after another program wrote into the same file", () => {
    const path = join(mkdtempSync(join(tmpdir(), "kept-")), "book.sqlite");
    const { store, exercises } = demoStore(path);
    const ask = counting();
    expect(ask(store)).toBe(1);
    const other = emptyStore(path);
    entitle(other, exercises[0] ?? "", "Otherwise");
    other.close();
    expect(ask(store)).toBe(2);
    store.close();
  });

  test("is nothing within a transaction, which may be rolled back", () => {
    const { store, exercises } = demoStore();
    const ask = counting();
    const refused = inTransaction(store, () => {
      entitle(store, exercises[0] ?? "", "Never so");
      expect([ask(store), ask(store)]).toEqual([1, 2]);
      return { ok: false, refusal: { status: 409, error: { code: "stale_text", sentence: "No." } } } as never;
    });
    expect(refused.ok).toBe(false);
    entitle(store, exercises[0] ?? "", "So it is", 902);
    expect(ask(store)).toBe(3);
  });
});

describe("a paper from a store that was asked before", () => {
  const KINDS: PaperAsk["kind"][] = ["ride sheet", "class handout", "caller's sheet", "appendix", "working sheet"];

  test("tells what was written since", () => {
    const { store, exercises } = demoStore();
    const [first = ""] = exercises;
    const words = (kind: PaperAsk["kind"]) => wordsOf(printed(buildPaper(store, askFor(kind, [first]))));
    for (const kind of KINDS) expect(words(kind)).not.toContain("About another well");
    entitle(store, first, "About another well");
    for (const kind of KINDS) expect(words(kind)).toContain("About another well");
  });

  test("is the same as from rows that nobody laid out before, whatever was asked in between", () => {
    const { store, exercises, work } = demoStore();
    const rows = () => accepted(readBundle(store, { work })).rows;
    const readings = (rows().readings ?? []).map(({ value: { crux, id } }) => ({ crux, reading: id }));
    const cases: Partial<PaperAsk>[] = [{}, { size: "A5" }, { way: "on foot" }, { choice: readings.slice(0, 1) }, {}];
    for (const kind of KINDS.slice(0, 4)) {
      for (const more of cases) {
        const ask = askFor(kind, exercises.slice(0, 2), more);
        const fresh = printed(paperOf(rows(), ask, NO_FILES));
        const { blocks, notes } = printed(buildPaper(store, ask));
        // Pictures are the store's.
        const figures = (paper: typeof blocks) => JSON.stringify(paper.filter(({ is }) => is !== "figure"));
        expect(figures(blocks)).toBe(figures(fresh.blocks));
        expect(notes).toEqual(fresh.notes);
      }
    }
  }, 60_000);
});

test("an exercise compiled again is as if compiled anew, under every reading there is", () => {
  const { store, exercises } = demoStore();
  let [same, other] = [0, 0];
  for (const exercise of exercises) {
    const { rows } = accepted(readBundle(store, { exercise }));
    const laid = exerciseRows(rows, exercise);
    const settled = { way: "mounted", variant: null } as const;
    const before = compileExercise(rows, exercise, settled, laid);
    for (const { value } of rows.readings ?? []) {
      const choice = [{ crux: value.crux, reading: value.id }];
      const again = compileAgain(before, rows, { ...settled, choice });
      const anew = compileExercise(rows, exercise, { ...settled, choice }, laid);
      expect(canonicalJson(again.drill)).toBe(canonicalJson(anew.drill));
      expect(again.base.settlement.taken(value.crux, null)?.reading.id).toBe(value.id);
      if (again.drill === before.drill) same += 1;
      else other += 1;
    }
  }
  expect(same).toBeGreaterThan(0);
  expect(other).toBeGreaterThan(0);
}, 30_000);
