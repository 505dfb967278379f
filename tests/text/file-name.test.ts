/** tests/text/file-name.test.ts - titles as names of files. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { fileName } from "../../shared/text/file-name.ts";

test.each([
  ["Of the circle about the well", "of-the-circle-about-the-well"],
  ["2. Of the change: upon the wall", "2-of-the-change-upon-the-wall"],
  ["Équitation à l’épée", "equitation-a-l-epee"],
  ["كتاب", "كتاب"],
  ["../..", "paper"],
  ["", "paper"],
])("“%s” is %s", (title, name) => {
  expect(fileName(title)).toBe(name);
});

test("any title gives a name that leaves its folder nowhere, ends within bounds and halves no character", () => {
  fc.assert(
    fc.property(fc.string({ unit: "grapheme", maxLength: 200 }), (title) => {
      const name = fileName(title);
      expect(name).toMatch(/^[\p{L}\p{N}-]+$/u);
      expect(name.length).toBeLessThanOrEqual(80);
      expect(() => encodeURIComponent(name)).not.toThrow();
    }),
  );
});
