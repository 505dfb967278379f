/** Many places as few. Rules C20-C22. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Reference } from "../../schema/reference.ts";
import {
  compareReferences,
  containsReference,
  formatMerged,
  mergeReferences,
  nextInBook,
  parseReferences,
} from "../../shared/cite/index.ts";

function read(text: string): Reference[] {
  const result = parseReferences(text);
  if (!result.ok) throw new Error(result.sentence);
  return result.references;
}

describe("places one right behind the other", () => {
  const table: [why: string, given: string, merged: string][] = [
    ["[C21] sections that count on", "7.13; 7.14", "7.13–14"],
    ["[C21] but not over a chapter", "7.13; 8.1", "7.13; 8.1"],
    ["[C21] nor over a gap", "7.13; 7.15", "7.13; 7.15"],
    ["[C21] four sides of two leaves", "f. 12r; f. 12v; f. 13r; f. 13v", "ff. 12–13v"],
    ["[C21] sides one after another", "f. 12v; f. 13r", "ff. 12v–13r"],
    ["[C21] lines of one side", "f. 3r, ll. 1–9; f. 3r, ll. 10–18", "f. 3r, ll. 1–18"],
    [
      "[C21] lines that leave one out stay apart",
      "f. 3r, ll. 1–8; f. 3r, ll. 10–18",
      "f. 3r, ll. 1–8; f. 3r, ll. 10–18",
    ],
    [
      "[C21] how many lines a side has is not known",
      "f. 3r, ll. 1–9; f. 3v, ll. 1–9",
      "f. 3r, ll. 1–9; f. 3v, ll. 1–9",
    ],
    ["[C21] pages", "p. 12; p. 13; p. 15", "pp. 12–13; p. 15"],
    ["[C21] roman pages do not count on: they are names", "p. xii; p. xiii", "p. xii; p. xiii"],
    ["[C20] each once", "7.13; 7.13", "7.13"],
    ["[C20] what lies within another", "7; 7.13", "7"],
    ["[C20] what overlaps", "7.13–15; 7.14–17", "7.13–17"],
    ["[C20] in order", "8.1; 7.13", "7.13; 8.1"],
    [
      "[C21] witnesses apart, each named once",
      "A f. 1r; A f. 3r; B f. 1v; tr. p. 3",
      "A f. 1r; f. 3r; B f. 1v; tr. p. 3",
    ],
  ];
  test.each(table)("%s: %s", (_why, given, merged) => {
    expect(formatMerged(read(given))).toBe(merged);
  });
});

describe("[C21] by the order of the book", () => {
  const passages = [
    "A f. 3r, ll. 1–9; tr. p. 18",
    "A f. 3r, ll. 10–18; tr. p. 18",
    "A f. 3v, ll. 1–9; tr. p. 19",
    "A f. 5r, l. 1",
  ].map(read);
  const isNext = nextInBook(passages);
  test.each([
    ["A f. 3r, ll. 1–9; A f. 3r, ll. 10–18; A f. 3v, ll. 1–9", "A f. 3r, l. 1–3v, l. 9"],
    ["A f. 3v, ll. 1–9; A f. 5r, l. 1", "A ff. 3v, l. 1–5r, l. 1"],
    ["A f. 3r, ll. 1–9; A f. 3v, ll. 1–9", "A f. 3r, ll. 1–9; f. 3v, ll. 1–9"],
    ["B f. 3r, ll. 10–18; B f. 3v, ll. 1–9", "B f. 3r, ll. 10–18; f. 3v, ll. 1–9"],
  ])("%s", (given, merged) => {
    expect(formatMerged(read(given), isNext)).toBe(merged);
  });
});

describe("laws", () => {
  const number = fc.integer({ min: 1, max: 6 });
  const section = fc.tuple(number, number, fc.option(number)).map(([chapter, from, length]): Reference => {
    const start = { kind: "section" as const, from: [String(chapter), String(from)] };
    return length === null ? start : { ...start, to: [String(chapter), String(from + length)] };
  });
  const side = fc.constantFrom("r" as const, "v" as const);
  const folio = fc
    .tuple(fc.constantFrom("A", "B"), number, side, fc.option(fc.tuple(number, number)))
    .map(([witness, leaf, at, lines]): Reference => {
      if (lines === null) return { kind: "folio", witness, from: { leaf, side: at } };
      const [line, more] = lines;
      return { kind: "folio", witness, from: { leaf, side: at, line }, to: { leaf, side: at, line: line + more } };
    });
  const list = fc.array(fc.oneof(section, folio), { maxLength: 8 });

  test("[C22] every given place lies in a merged one", () => {
    fc.assert(
      fc.property(list, (references) => {
        const merged = mergeReferences(references);
        for (const one of references) expect(merged.some((range) => containsReference(range, one))).toBe(true);
      }),
    );
  });

  test("[C22] every end of a merged place is an end of a given one", () => {
    const ends = (reference: Reference) =>
      [reference.from, reference.to ?? reference.from].map((end) => JSON.stringify(end));
    fc.assert(
      fc.property(list, (references) => {
        const given = new Set(references.flatMap(ends));
        for (const end of mergeReferences(references).flatMap(ends)) expect(given.has(end)).toBe(true);
      }),
    );
  });

  test("[C20] merging again changes nothing, and the order given does not matter", () => {
    fc.assert(
      fc.property(list, (references) => {
        const merged = mergeReferences(references);
        expect(mergeReferences(merged)).toEqual(merged);
        expect(mergeReferences([...references].reverse())).toEqual(merged);
        expect([...merged].sort(compareReferences)).toEqual(merged);
      }),
    );
  });
});
