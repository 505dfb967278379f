/** tests/drill/article.test.ts - names with and without their article. */
import { describe, expect, test } from "vitest";
import { withArticle, withoutArticle } from "../../shared/article.ts";

describe("a name in a sentence and in a heading", () => {
  const cases: [name: string, inSentence: string, inHeading: string][] = [
    ["lance", "the lance", "lance"],
    ["the lance", "the lance", "lance"],
    ["The lance", "the lance", "lance"],
    ["a long pole", "a long pole", "long pole"],
    ["an ash staff", "an ash staff", "ash staff"],
    ["his sword", "his sword", "his sword"],
    ["theorbo", "the theorbo", "theorbo"],
    ["Anlace", "the Anlace", "Anlace"],
    ["(not settled)", "(not settled)", "(not settled)"],
    ["the", "the the", "the"],
    ["", "", ""],
  ];
  test.each(cases)("“%s” is “%s”, and “%s”", (name, inSentence, inHeading) => {
    expect(withArticle(name)).toBe(inSentence);
    expect(withoutArticle(name)).toBe(inHeading);
    expect(withArticle(withArticle(name))).toBe(name === "the" ? "the the" : inSentence);
  });
});
