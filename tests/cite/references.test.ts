/** References: published forms, our own forms both ways, refusals, order. Rules C1-C9 and C19. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FolioPoint, Reference } from "../../schema/reference.ts";
import {
  compareReferences,
  containsReference,
  endsBeforeItBegins,
  folioFromLocus,
  formatReference,
  formatReferences,
  locusOf,
  parseReference,
  parseReferences,
  romanValue,
} from "../../shared/cite/index.ts";

function read(text: string): Reference {
  const result = parseReference(text);
  if (!result.ok) throw new Error(result.sentence);
  return result.reference;
}

const folio = (from: FolioPoint, to?: FolioPoint, witness = ""): Reference =>
  to === undefined ? { kind: "folio", witness, from } : { kind: "folio", witness, from, to };
const r = (leaf: number, line?: number): FolioPoint =>
  line === undefined ? { leaf, side: "r" } : { leaf, side: "r", line };
const v = (leaf: number, line?: number): FolioPoint =>
  line === undefined ? { leaf, side: "v" } : { leaf, side: "v", line };

describe("published forms of folio references", () => {
  // TEI P5 Guidelines, chapter on manuscript description: the contents of <locus> in its examples.
  it.each([
    ["fols. 5r -7v", folio(r(5), v(7)), "ff. 5–7v"],
    ["fols. 7v -8v", folio(v(7), v(8)), "ff. 7v–8v"],
    ["fol. 8v", folio(v(8)), "f. 8v"],
    ["fols. 8v-10v", folio(v(8), v(10)), "ff. 8v–10v"],
    ["fols. 14r-126v", folio(r(14), v(126)), "ff. 14–126v"],
    ["f. 1-223", folio(r(1), v(223)), "ff. 1–223v"],
    ["f. 1r", folio(r(1)), "f. 1r"],
    ["ff. 1r-24v", folio(r(1), v(24)), "ff. 1–24v"],
    ["f. 118rb", folio({ leaf: 118, side: "r", column: "b" }), "f. 118rb"],
    ["f. 1r:1-2v:30", folio(r(1, 1), v(2, 30)), "ff. 1r, l. 1–2v, l. 30"],
    // The TEI consortium's own test file testall.xml.
    ["ff.20r-21v", folio(r(20), v(21)), "ff. 20–21v"],
    ["ff. 22r-33v", folio(r(22), v(33)), "ff. 22–33v"],
    ["f. 34r", folio(r(34)), "f. 34r"],
  ])("[C2] %s", (text, reference, written) => {
    expect(read(text)).toEqual(reference);
    expect(formatReference(reference)).toBe(written);
    expect(read(written)).toEqual(reference);
  });

  it("[C2][C6] reads the lists of the same chapters", () => {
    // TEI P5 Guidelines, <locus>: "fols 12-14, 16r".
    expect(parseReferences("fols 12-14, 16r")).toEqual({ ok: true, references: [folio(r(12), v(14)), folio(r(16))] });
    expect(parseReferences("A ff. 1–12v, 18–24r; 7.13")).toEqual({
      ok: true,
      references: [folio(r(1), v(12), "A"), folio(r(18), r(24), "A"), { kind: "section", from: ["7", "13"] }],
    });
  });

  it("[C19] reads the normal form of from and to", () => {
    // TEI P5 Guidelines: <locus from="1r:1" to="2v:30">; testall.xml writes the line without a colon.
    expect(folioFromLocus("", "1r:1", "2v:30")).toEqual(folio(r(1, 1), v(2, 30)));
    expect(folioFromLocus("", "1v24", "2r8")).toEqual(folio(v(1, 24), r(2, 8)));
    expect(folioFromLocus("", "34r", "34r")).toEqual(folio(r(34)));
    expect(folioFromLocus("", "34", "35")).toBeNull();
  });
});

describe("our own forms", () => {
  it.each([
    ["7.13–17", { kind: "section", from: ["7", "13"], to: ["7", "17"] }],
    ["7.13–8.2", { kind: "section", from: ["7", "13"], to: ["8", "2"] }],
    ["7.13–§ 8", { kind: "section", from: ["7", "13"], to: ["8"] }],
    ["7–8.2", { kind: "section", from: ["7"], to: ["8", "2"] }],
    ["782–785", { kind: "section", from: ["782"], to: ["785"] }],
    ["12a", { kind: "section", from: ["12a"] }],
    ["praef.1", { kind: "section", from: ["praef", "1"] }],
    ["§ 12v", { kind: "section", from: ["12v"] }],
    ["§ f.7", { kind: "section", from: ["f", "7"] }],
    ["§ p3", { kind: "section", from: ["p3"] }],
    ["f. 7r, ll. 10–17", folio(r(7, 10), r(7, 17))],
    ["f. 12v, ll. 3–4", folio(v(12, 3), v(12, 4))],
    ["ff. 1–12v", folio(r(1), v(12))],
    ["ff. 18–24r", folio(r(18), r(24))],
    ["f. 7r–v", folio(r(7), v(7))],
    ["ff. 7r, l. 10–8v, l. 2", folio(r(7, 10), v(8, 2))],
    ["f. 7r, l. 10–7v, l. 2", folio(r(7, 10), v(7, 2))],
    ["f. 3vb", folio({ leaf: 3, side: "v", column: "b" })],
    [
      "f. 3va, ll. 5–9",
      folio({ leaf: 3, side: "v", column: "a", line: 5 }, { leaf: 3, side: "v", column: "a", line: 9 }),
    ],
    ["A f. 7r", folio(r(7), undefined, "A")],
    ["A1 ff. 7–9v", folio(r(7), v(9), "A1")],
    ["p. 212, l. 3", { kind: "page", of: "", from: { page: "212", line: 3 } }],
    ["p. 212, ll. 3–7", { kind: "page", of: "", from: { page: "212", line: 3 }, to: { page: "212", line: 7 } }],
    ["pp. 212–214", { kind: "page", of: "", from: { page: "212" }, to: { page: "214" } }],
    ["pp. xii–xv", { kind: "page", of: "", from: { page: "xii" }, to: { page: "xv" } }],
    ["tr. p. 21", { kind: "page", of: "tr.", from: { page: "21" } }],
  ] as [string, Reference][])("[C1] %s, both ways", (text, reference) => {
    expect(read(text)).toEqual(reference);
    expect(formatReference(reference)).toBe(text);
  });

  it.each([
    ["  7.13 - 17 ", "7.13–17"],
    ["§§ 782–785", "782–785"],
    ["¶ 782", "782"],
    ["7. 13", "7.13"],
    ["fol. 3vb", "f. 3vb"],
    ["folio 12 verso", "f. 12v"],
    ["f. 7", "f. 7r–v"],
    ["f.7r l.10-17", "f. 7r, ll. 10–17"],
    ["f. 3va–b", "f. 3va–3vb"],
    ["ff. 112r–14v", "ff. 112–114v"],
    ["pp. 212–14", "pp. 212–214"],
    ["p. 212, l. 3–7", "p. 212, ll. 3–7"],
    ["pages 3-4", "pp. 3–4"],
    ["pp. 212, l. 3–214", "pp. 212, l. 3–214"],
  ])("[C3] reads %j as %s", (text, written) => {
    expect(formatReference(read(text))).toBe(written);
  });

  it("[C1] leaves the name out on request, and joins several", () => {
    expect(formatReference(folio(r(7), undefined, "A"), { withName: false })).toBe("f. 7r");
    expect(formatReferences([folio(r(7), undefined, "A"), { kind: "section", from: ["7"] }])).toBe("A f. 7r; 7");
  });

  it("[C1] whatever is written is read back", () => {
    fc.assert(
      fc.property(anyReference(), (reference) => {
        fc.pre(!endsBeforeItBegins(reference));
        expect(read(formatReference(reference))).toEqual(reference);
      }),
      { numRuns: 2000 },
    );
  });

  it("[C19] and so is the normal form", () => {
    fc.assert(
      fc.property(anyReference(), (reference) => {
        if (reference.kind !== "folio") return;
        const { from, to } = locusOf(reference);
        expect(folioFromLocus(reference.witness, from, to)).toEqual(reference);
      }),
    );
  });
});

describe("refusals", () => {
  it.each([
    ["", "reference_empty", "A reference is needed, such as 7.13–17 (sections)"],
    ["x".repeat(301), "reference_too_long", "at most 300 characters; this one has 301"],
    ["7.13; 8", "reference_several", "give them one by one"],
    [
      "7.13 ff.",
      "reference_following",
      `"7.13 ff." does not say where the passage ends: write its last place, as in 7.13–17.`,
    ],
    ["f. 7r ff", "reference_following", "does not say where the passage ends"],
    ["12v", "reference_bare_folio", `"12v" may be a leaf or a section: write "f. 12v" or "§ 12v".`],
    ["118rb", "reference_bare_folio", `write "f. 118rb"`],
    ["f. 7a", "reference_side_missing", "Leaf 7 needs its side here: write 7r (recto) or 7v (verso)."],
    ["f. 7, l. 3", "reference_side_missing", "write 7r (recto) or 7v (verso)"],
    ["7.17–13", "reference_backwards", "ends before it begins: write the first place first, and the last in full"],
    ["782–5", "reference_backwards", "the last in full"],
    ["f. 8v–8r", "reference_backwards", "ends before it begins"],
    ["pp. xv–xii", "reference_backwards", "ends before it begins"],
    [
      "f. 0r",
      "reference_unreadable",
      "cannot be read as a reference: write 7.13–17 (sections), f. 7r, ll. 10–17 (a leaf) or pp. 212–214 (pages), without the title of the work.",
    ],
    ["On the Spear 7.13", "reference_unreadable", "without the title of the work"],
    ["7..13", "reference_unreadable", "cannot be read"],
    ["7–8–9", "reference_unreadable", "cannot be read"],
    ["f. x", "reference_unreadable", "cannot be read"],
    ["1.2.3.4.5.6.7", "reference_unreadable", "cannot be read"],
  ])("[C4][C5] %j is %s", (text, code, words) => {
    const result = parseReference(text);
    expect(result).toMatchObject({ ok: false, code });
    expect(!result.ok && result.sentence).toContain(words);
  });

  it.each(["p.p7", "p.f7", "pp. f7-f9"])("[C1] %s is a page whose name begins as a label does", (text) => {
    const result = parseReference(text);
    expect(result.ok && result.reference.kind).toBe("page");
    if (result.ok) expect(parseReference(formatReference(result.reference))).toEqual(result);
  });

  it("[C5] never throws, and refuses a list whole", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(..."7.13–-f.rvlp, ;§ab\n0"), maxLength: 20 }), (text) => {
        const result = parseReference(text);
        if (!result.ok) expect(result.sentence).toMatch(/[.]$/u);
        else expect(parseReference(formatReference(result.reference))).toEqual(result);
      }),
      { numRuns: 2000 },
    );
    expect(parseReferences("7.13; nothing here")).toMatchObject({ ok: false, code: "reference_unreadable" });
  });
});

describe("order", () => {
  it.each([
    ["[C7] sections by number", ["2", "10", "12", "12a", "12b", "13"]],
    ["[C7] levels, the whole before its parts", ["7", "7.2", "7.13", "8"]],
    ["[C7] front matter in roman numerals first", ["p. iv", "p. ix", "p. xii", "p. 1", "p. 2", "p. 10"]],
    [
      "[C7] leaves, sides, columns, lines",
      ["f. 7r", "f. 7r, l. 2", "f. 7r, l. 10", "f. 7ra", "f. 7ra, l. 3", "f. 7rb", "f. 7v", "f. 8r"],
    ],
    ["[C8] witnesses apart", ["A f. 9r", "B f. 1r"]],
    ["[C8] the wider first of those that begin together", ["7.13–20", "7.13–17", "7.13"]],
    ["[C8] sections, folios, pages", ["99", "f. 1r", "p. 1"]],
  ])("%s", (_name, texts) => {
    const references = texts.map(read);
    expect(
      [...references]
        .reverse()
        .sort(compareReferences)
        .map((one) => formatReference(one)),
    ).toEqual(texts);
  });

  it("[C8] is total: antisymmetric, transitive, 0 only for the same place", () => {
    fc.assert(
      fc.property(anyReference(), anyReference(), anyReference(), (a, b, c) => {
        expect(Math.sign(compareReferences(a, b))).toBe(-Math.sign(compareReferences(b, a)) + 0);
        expect(compareReferences(a, a)).toBe(0);
        const [x, y, z] = [a, b, c].sort(compareReferences) as [Reference, Reference, Reference];
        expect(compareReferences(x, y)).toBeLessThanOrEqual(0);
        expect(compareReferences(y, z)).toBeLessThanOrEqual(0);
        expect(compareReferences(x, z)).toBeLessThanOrEqual(0);
        if (compareReferences(a, b) === 0) expect(containsReference(a, b) && containsReference(b, a)).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it.each([
    ["7", "7.13", true],
    ["7.13", "7", false],
    ["7.13–17", "7.15", true],
    ["7.13–17", "7.18", false],
    ["7.13–17", "7.17.2", true],
    ["7–8", "8.99", true],
    ["f. 7r", "f. 7r, l. 3", true],
    ["ff. 7–8v", "f. 8v, ll. 3–9", true],
    ["ff. 7v–8v", "f. 7r", false],
    ["A f. 7r", "B f. 7r", false],
    ["pp. xii–3", "p. 2", true],
    ["7", "p. 7", false],
  ])("[C9] %s holds %s: %s", (range, point, holds) => {
    expect(containsReference(read(range), read(point))).toBe(holds);
  });

  it.each([
    ["iv", 4],
    ["XIX", 19],
    ["iiii", 4],
    ["mcmxc", 1990],
    ["c", null],
    ["Iv", null],
    ["iix", null],
    ["", null],
    ["7", null],
  ])("[C7] %j is worth %s", (name, value) => {
    expect(romanValue(name)).toBe(value);
  });
});

/** References in the form a reader gives: ranges whose ends differ, names without the signs that part things. */
function anyReference(): fc.Arbitrary<Reference> {
  const name = fc.oneof(
    fc.integer({ min: 1, max: 30 }).map(String),
    fc.constantFrom("12a", "12b", "pr", "xii", "iv", "f", "p", "pp", "12v", "fol", "p3", "A", "3vb", "é"),
  );
  const levels = fc.array(name, { minLength: 1, maxLength: 4 });
  const section = fc.record({ kind: fc.constant("section" as const), from: levels }, {});
  const line = fc.option(fc.integer({ min: 1, max: 12 }), { nil: undefined });
  const point = fc
    .record({
      leaf: fc.integer({ min: 1, max: 9 }),
      side: fc.constantFrom("r" as const, "v" as const),
      column: fc.option(fc.constantFrom("a" as const, "b" as const), { nil: undefined }),
      line,
    })
    .map(withoutUndefined);
  const page = fc.record({ page: fc.constantFrom("1", "2", "9", "12", "xii", "iv", "A3"), line }).map(withoutUndefined);
  const witness = fc.constantFrom("", "A", "B", "A1", "MS A", "Γ");
  const of = fc.constantFrom("", "tr.", "print");
  const single: fc.Arbitrary<Reference> = fc.oneof(
    section,
    fc.record({ kind: fc.constant("folio" as const), witness, from: point }),
    fc.record({ kind: fc.constant("page" as const), of, from: page }),
  );
  const ranged: fc.Arbitrary<Reference> = fc.oneof(
    fc.record({ kind: fc.constant("section" as const), from: levels, to: levels }),
    fc.record({ kind: fc.constant("folio" as const), witness, from: point, to: point }),
    fc.record({ kind: fc.constant("page" as const), of, from: page, to: page }),
  );
  return fc.oneof(
    single,
    ranged.filter((reference) => JSON.stringify(reference.from) !== JSON.stringify(reference.to)),
  );
}

function withoutUndefined<T extends object>(value: T): T {
  return Object.fromEntries(Object.entries(value).filter(([, held]) => held !== undefined)) as T;
}
