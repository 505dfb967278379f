/** tests/store/laws.test.ts - any sequence of changes, by any writers: the log proves the rows, undo takes back, and what
 *  is refused leaves no trace. Rules S7, S10-S14, S24-S26. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ChangeRequest, Edit } from "../../schema/change.ts";
import type { Kind } from "../../schema/record.ts";
import type { Outcome } from "../../server/errors.ts";
import {
  allRows,
  amendPassage,
  readChange,
  readHistory,
  readRows,
  replay,
  type Store,
  undoChange,
  writeChange,
} from "../../server/store/index.ts";
import { indexMentions, mentionLines, namedBy } from "../../server/store/mentions.ts";
import { anchor, ID, idOf, TEXT } from "./full-book.ts";
import { accepted, bookStore, create, NOW, remove, request, set } from "./store-builders.ts";

const at = { now: NOW };

/** One thing somebody does, told by numbers that pick a row, a field value, a version behind the newest. */
type Doing =
  | { do: "note" | "set" | "remove" | "anchor" | "amend" | "resend"; a: number; b: number }
  | { do: "undo"; a: number; b: number };

const doing: fc.Arbitrary<Doing> = fc.record({
  do: fc.constantFrom("note", "set", "set", "remove", "anchor", "amend", "undo", "undo", "resend"),
  a: fc.nat(1000),
  b: fc.nat(40),
});

const SETTABLE: [Kind, string][] = [
  ["sittings", "place"],
  ["notes", "text"],
  ["readings", "argument"],
  ["elements", "role"],
  ["cruxes", "note"],
  ["faults", "correction"],
];
const REMOVABLE: Kind[] = [
  "notes",
  "faults",
  "marks",
  "anchors",
  "elements",
  "holds",
  "waivers",
  "lessons",
  "terms",
  "trials",
  "cruxes",
  "exercises",
];

function pick<T>(list: readonly T[], number: number): T | undefined {
  return list[number % Math.max(1, list.length)];
}

function editsFor(store: Store, { do: verb, a, b }: Doing, number: number): Edit[] {
  if (verb === "note") return [create("notes", { id: idOf(9000 + number), work: ID.work, text: `n${b}` })];
  if (verb === "anchor") {
    const mark = pick(readRows(store, "marks"), a);
    const from = a % TEXT.length;
    const made = anchor(idOf(8000 + number), mark?.value.id ?? ID.noteMark, from, Math.min(TEXT.length, from + b));
    return [create("anchors", made)];
  }
  if (verb === "set") {
    return SETTABLE.filter((_, index) => ((b + 1) >> index) % 2 === 1).flatMap(([of, field]) => {
      const row = pick(readRows(store, of), a);
      // Some writers have an older version; some a field another has changed.
      return row === undefined
        ? []
        : [set(of, row.value.id, Math.max(1, row.version - (a % 3)), { [field]: `v${b % 4}` })];
    });
  }
  const kind = pick(REMOVABLE, b) ?? "notes";
  const row = pick(readRows(store, kind), a);
  return row === undefined ? [] : [remove(kind, row.value.id, row.version)];
}

function act(store: Store, one: Doing, number: number, sent: Map<number, ChangeRequest>): Outcome<unknown> | null {
  if (one.do === "amend") {
    const texts = readRows(store, "passageTexts").filter(
      ({ value }) => value.passage === ID.passage && value.revision === ID.revision,
    );
    const current = texts.reduce<(typeof texts)[number] | undefined>(
      (best, row) => (best !== undefined && best.value.number > row.value.number ? best : row),
      undefined,
    );
    if (current === undefined) return null;
    const from = 1 + (one.a % Math.max(1, current.value.text.length));
    const step =
      one.b % 2 === 0
        ? { stepType: "replace", from, to: from, slice: { content: [{ type: "text", text: "zo " }] } }
        : { stepType: "replace", from, to: Math.min(from + one.b, current.value.text.length + 1) };
    const amendment = {
      id: idOf(number),
      who: "Ada",
      why: "typing",
      sitting: null,
      text: current.value.id,
      steps: [step],
    };
    return amendPassage(store, ID.passage, amendment, { ...at, newId: () => idOf(7000 + number) });
  }
  if (one.do === "undo") {
    const entry = pick(
      readHistory(store).filter(({ number: of }) => of > 1),
      one.a % 3,
    );
    return entry === undefined
      ? null
      : undoChange(store, { id: idOf(number), who: "Bea", why: "", undoes: entry.id }, at);
  }
  if (one.do === "resend") {
    const again = pick([...sent.values()], one.a);
    return again === undefined ? null : writeChange(store, again, at);
  }
  const edits = editsFor(store, one, number);
  if (edits.length === 0) return null;
  const made = request(number, edits, pick(["Ada", "Bea"], one.a));
  const outcome = writeChange(store, made, at);
  // What was refused or had no effect is not remembered: sent again later it is judged anew.
  if (outcome.ok && readChange(store, made.id) !== null) sent.set(number, made);
  return outcome;
}

test("[S7] [S11] [S14] [S24] after any sequence of changes", () => {
  fc.assert(
    fc.property(fc.array(doing, { minLength: 1, maxLength: 14 }), (doings) => {
      const store = bookStore();
      const sent = new Map<number, ChangeRequest>();
      for (const [index, one] of doings.entries()) {
        const number = 100 + index;
        const before = allRows(store);
        const outcome = act(store, one, number, sent);
        const after = allRows(store);
        if (outcome === null) continue;
        if (!outcome.ok) {
          expect(after, "a refusal leaves no trace").toEqual(before);
          expect(outcome.refusal.error.sentence).toMatch(/\.$/);
          continue;
        }
        if (one.do === "resend") {
          expect(after, "sending again writes nothing").toEqual(before);
          continue;
        }
        if (readHistory(store, { limit: 1 })[0]?.id !== idOf(number)) {
          expect(after, "what is not logged was not written").toEqual(before);
          continue;
        }
        // Undone at once it is as it was before, and undoing that gives it back.
        const undo = (id: number, undoes: number) =>
          undoChange(store, { id: idOf(id), who: "Cy", why: "", undoes: idOf(undoes) }, at);
        if (one.do !== "undo") {
          accepted(undo(number + 200, number));
          expect(valuesOf(store), "undo").toEqual(values(before));
          accepted(undo(number + 400, number + 200));
          expect(valuesOf(store), "undo of undo").toEqual(values(after));
        }
      }
      expect(replay(store), "replay").toEqual(allRows(store));
      expect(store.db.pragma("foreign_key_check")).toEqual([]);
      expect(mentionLines(store), "mentions").toEqual(rebuiltMentions(store));
      const numbers = readHistory(store, { limit: 1000 }).map(({ number }) => number);
      expect(numbers).toEqual(numbers.map((_, index) => numbers.length - index));
      store.close();
    }),
    { numRuns: 120 },
  );
});

describe("[S12] disjoint merges", () => {
  const fields = ["place", "note", "on", "who"] as const;
  const given = {
    place: ["court", "wall"],
    note: ["cold", "warm"],
    on: ["2026-05-05", "2026-05-06"],
    who: [["Bea"], []],
  };
  test("commute", () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([...fields]), fc.shuffledSubarray([...fields]), (first, second) => {
        const mine = first.filter((field) => !second.includes(field));
        const sets = [mine, second].map((names, writer) =>
          Object.fromEntries(names.map((name) => [name, given[name][writer]])),
        );
        const results = [sets, [...sets].reverse()].map((order) => {
          const store = bookStore();
          for (const [index, change] of order.entries()) {
            accepted(writeChange(store, request(index + 2, [set("sittings", ID.sitting, 1, change)]), at));
          }
          return valuesOf(store);
        });
        expect(results[0]).toEqual(results[1]);
      }),
      { numRuns: 30 },
    );
  });

  test("and the same field in two different ways always conflicts", () => {
    fc.assert(
      fc.property(fc.constantFrom(...fields), (field) => {
        const store = bookStore();
        accepted(writeChange(store, request(2, [set("sittings", ID.sitting, 1, { [field]: given[field][0] })]), at));
        const outcome = writeChange(
          store,
          request(3, [set("sittings", ID.sitting, 1, { [field]: given[field][1] })]),
          at,
        );
        expect(outcome).toMatchObject({
          refusal: {
            error: { code: "conflict", conflicts: [{ field, theirs: given[field][0], yours: given[field][1] }] },
          },
        });
      }),
      { numRuns: 8 },
    );
  });
});

function rebuiltMentions(store: Store): string[] {
  store.db.exec('SAVEPOINT rebuild; DELETE FROM "mentions"');
  for (const [kind, rows] of Object.entries(allRows(store)) as [Kind, { value: { id: string } }[]][]) {
    for (const { value } of rows) indexMentions(store, kind, value.id, namedBy(store, kind, value));
  }
  const lines = mentionLines(store);
  store.db.exec("ROLLBACK TO rebuild; RELEASE rebuild");
  return lines;
}

function values(rows: ReturnType<typeof allRows>) {
  return Object.entries(rows).map(([kind, list]) => [kind, list.map(({ value }) => value)]);
}

function valuesOf(store: Store) {
  return values(allRows(store));
}
