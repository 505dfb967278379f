/** tests/client/edition-words.test.ts - what is said of an edition whose paper would say something else now. */
import { describe, expect, test } from "vitest";
import { changedWords, dayWords, listed } from "../../client/print/edition-words.ts";
import type { EditionLine } from "../../schema/issue.ts";

describe("what changed since an edition", () => {
  test.each<[changed: string[], says: string]>([
    [[], ""],
    [["Step 5"], "Since then step 5 changed."],
    [["Throughout"], "Since then 1 place changed."],
    [["Step 3", "New step 4", "Heading", "Throughout"], "Since then steps 3 and 4 and 2 other places changed."],
    [
      ["1", "2", "3", "4", "5", "6", "7", "8"].map((number) => `Step ${number}`),
      "Since then steps 1, 2, 3, 4, 5 and 3 more changed.",
    ],
  ])("%j", (changed, says) => {
    expect(changedWords({ changed } as EditionLine)).toBe(says);
  });

  test("names and days as in a sentence", () => {
    expect([listed([]), listed(["Ada"]), listed(["Ada", "Bram"]), listed(["Ada", "Bram", "the class"])]).toEqual([
      "",
      "Ada",
      "Ada and Bram",
      "Ada, Bram and the class",
    ]);
    expect(dayWords("2026-10-17")).toBe("17 October 2026");
  });
});
