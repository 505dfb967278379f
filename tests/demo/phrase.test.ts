/** tests/demo/phrase.test.ts - naming words by quoting them: found once, or refused; and the typed form of a passage. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { demoId } from "../../server/demo/demo-id.ts";
import { folio } from "../../server/demo/leaf.ts";
import { passageDoc } from "../../server/demo/passage-doc.ts";
import { findPhrase, nth, phraseAnchor, type QuotedText } from "../../server/demo/phrase.ts";
import { projectDoc } from "../../shared/text/projection.ts";

const quoted = (words: string): QuotedText => ({ passage: "p", text: "t", words, name: "a passage" });
const verse = quoted("He turns the spear, and turns, and the spear returns.");

describe("a phrase", () => {
  test.each([
    ["He", 0, 2],
    ["the spear,", 9, 19],
    [nth("turns", 1), 3, 8],
    [nth("turns", 2), 24, 29],
    [nth("turns", 3), 47, 52],
  ])("%j stands at %i to %i", (phrase, from, to) => {
    expect(findPhrase(verse, phrase)).toMatchObject({ from, to });
  });

  test.each([
    ["the lance", /"the lance" does not stand in a passage/],
    ["turns", /"turns" stands 3 times in a passage: say which/],
    [nth("turns", 4), /"turns" does not stand a 4th time/],
    ["", /empty phrase/],
  ])("%j is refused", (phrase, sentence) => {
    expect(() => findPhrase(verse, phrase)).toThrow(sentence);
  });

  test("every slice is found again by its number, and its anchor quotes it", () => {
    const slices = fc
      .tuple(
        fc.string({ unit: fc.constantFrom("a", "b", " ", "é", "𝄞"), minLength: 1, maxLength: 30 }),
        fc.nat(),
        fc.nat(),
      )
      .map(([words, a, b]) => ({ words, from: a % words.length, to: (a % words.length) + 1 + (b % words.length) }))
      .filter(({ words, to }) => to <= words.length);
    fc.assert(
      fc.property(slices, ({ words, from, to }) => {
        const phrase = words.slice(from, to);
        let before = 0;
        for (let at = words.indexOf(phrase); at < from; at = words.indexOf(phrase, at + 1)) before += 1;
        const found = findPhrase(quoted(words), nth(phrase, before + 1));
        expect([found.from, found.to]).toEqual([from, to]);
        expect(phraseAnchor(found).quote).toBe(phrase);
      }),
    );
  });
});

describe("a passage as it is typed", () => {
  test("runs its lines on, parts paragraphs, and gives what stands in brackets no width", () => {
    const doc = passageDoc(`
      He rides
      on. ⟦folio 3v⟧And on⟦note: So A.⟧.

      He halts.⟦gap: torn⟧`);
    expect(projectDoc(doc)).toBe("He rides on. And on.\nHe halts.");
    const atoms: string[] = [];
    doc.descendants((node) => {
      if (node.isAtom && !node.isText) atoms.push(`${node.type.name} ${Object.values(node.attrs).join("")}`);
    });
    expect(atoms).toEqual(["milestone folio3v", "note So A.", "gap torn"]);
  });

  test("refuses a bracket it does not know", () => {
    expect(() => passageDoc("He ⟦leaf 3⟧ rides.")).toThrow(/got "leaf 3"/);
  });
});

test("ids are counted, and of the form the schema wants", () => {
  expect(demoId(1)).toBe("018cc251-f400-7000-8000-000000000001");
  expect(demoId(255)).toBe("018cc251-f400-7000-8000-0000000000ff");
  expect(() => demoId(0)).toThrow(RangeError);
});

test("a side of a leaf must say recto or verso", () => {
  expect(folio("A", "3v", 1, 9)).toEqual({
    kind: "folio",
    witness: "A",
    from: { leaf: 3, side: "v", line: 1 },
    to: { leaf: 3, side: "v", line: 9 },
  });
  expect(() => folio("A", "3", 1, 9)).toThrow(/got "3"/);
});
