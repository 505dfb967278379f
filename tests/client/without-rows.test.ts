/** tests/client/without-rows.test.ts - what other rows say of one that is taken away goes out of them. */
import { describe, expect, it } from "vitest";
import { fieldsWithout, goesAlong } from "../../client/read/without-rows.ts";
import type { Kind } from "../../schema/record.ts";

const words = (mark: string) => ({ is: "words", mark });
const said = (value: unknown, warrant = "stated", basis: unknown[] = [words("m1")]) => ({
  is: "said",
  value,
  warrant,
  basis,
});
const under = (...readings: string[]) => ({ is: "reading", crux: "c1", readings });

describe("the fields of a row without what goes", () => {
  const cases: [string, Kind, Record<string, unknown>, string[], Record<string, unknown> | null][] = [
    ["names none of them", "notes", { text: "a note" }, ["x"], {}],
    [
      "a value of a reading",
      "readings",
      { values: [{ at: { kind: "actions", id: "a1", slot: "to" }, value: said("left") }] },
      ["a1"],
      { values: [] },
    ],
    [
      "an object that was held",
      "actions",
      { act: { verb: "hold", slots: { object: said("o1") } } },
      ["o1"],
      { act: { verb: "hold", slots: { object: { is: "not said" } } } },
    ],
    [
      "a crux that held a slot",
      "actions",
      { timing: { is: "in crux", crux: "c1" } },
      ["c1"],
      { timing: { is: "not said" } },
    ],
    [
      "an action it waits for",
      "actions",
      { timing: said({ is: "with", action: "a1" }) },
      ["a1"],
      { timing: { is: "not said" } },
    ],
    [
      "words that stated it",
      "elements",
      { existence: { warrant: "stated", basis: [words("m1")] } },
      ["m1"],
      { existence: { warrant: "supplied", basis: [] } },
    ],
    [
      "some of the words that stated it",
      "elements",
      { existence: { warrant: "stated", basis: [words("m1"), words("m2")] } },
      ["m1"],
      { existence: { warrant: "stated", basis: [words("m2")] } },
    ],
    ["the crux of a question", "questions", { crux: "c1", text: "which?" }, ["c1"], { crux: null }],
    ["the end of an advice", "elements", { from: "e1", to: "e2" }, ["e2"], { to: null }],
    [
      "what a free crux is computed with",
      "cruxes",
      { leftFree: { default: "r1", reason: "so" } },
      ["r1"],
      { leftFree: null },
    ],
    [
      "a reading an answer leaves beside another",
      "questions",
      { answers: [{ label: "yes", allows: [under("r1", "r2")] }] },
      ["r1"],
      { answers: [{ label: "yes", allows: [under("r2")] }] },
    ],
    ["a reading it needs", "readings", { requires: [under("r1")] }, ["r1"], { requires: [] }],
    [
      "one of the readings it is there under",
      "elements",
      { guard: [under("r1", "r2")] },
      ["r1"],
      { guard: [under("r2")] },
    ],
    ["the only reading it is there under: it cannot be without", "elements", { guard: [under("r1")] }, ["r1"], null],
    [
      "what it does again: it cannot be without",
      "elements",
      { of: { is: "elements", from: "e1", to: "e2" } },
      ["e1"],
      null,
    ],
  ];
  it.each(cases)("%s", (_name, kind, row, gone, fields) => {
    expect(fieldsWithout(kind, { id: "own", ...row }, new Set(gone))).toEqual(fields);
  });
});

describe("what goes along", () => {
  it("is what is part of a row or tied to it, and nothing else", () => {
    const gone = new Set(["e1", "c1"]);
    expect(goesAlong("actions", { ownerKind: "elements", owner: "e1" }, gone)).toBe(true);
    expect(goesAlong("marks", { of: "elements", target: "e1", work: "w1" }, gone)).toBe(true);
    expect(goesAlong("readings", { crux: "c1" }, gone)).toBe(true);
    expect(goesAlong("questions", { crux: "c1", work: "w1", exercise: null }, gone)).toBe(false);
    expect(goesAlong("elements", { exercise: "x1", from: "e1" }, gone)).toBe(false);
  });
});
