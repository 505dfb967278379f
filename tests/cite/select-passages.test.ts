/** tests/cite/select-passages.test.ts - choosing a range of an imported text by its references. */
import { describe, expect, test } from "vitest";
import { formatReferences } from "../../shared/cite/format-reference.ts";
import { selectPassages } from "../../shared/cite/select-passages.ts";
import { imported } from "../import/shown.ts";

const sections = ["7.1", "7.2", "7.13", "7.14", "8.1", "10.1"]
  .map((label) => `${label}\nWords of ${label}.`)
  .join("\n\n");
const text = imported(sections, "plain", "reins.txt").texts[0];
if (text === undefined) throw new Error("the text of these tests was not read");

describe("[C27] selectPassages", () => {
  test.each<[string | undefined, string | undefined, string[]]>([
    [undefined, undefined, ["7.1", "7.2", "7.13", "7.14", "8.1", "10.1"]],
    ["7", undefined, ["7.1", "7.2", "7.13", "7.14"]],
    ["7.13", undefined, ["7.13"]],
    ["7.2-7.13", undefined, ["7.2", "7.13"]],
    ["7.2-13", undefined, ["7.2", "7.13"]],
    ["7.13", "8", ["7.13", "7.14", "8.1"]],
    ["7", "7", ["7.1", "7.2", "7.13", "7.14"]],
    ["8", "10.1", ["8.1", "10.1"]],
    [undefined, "7.2", ["7.1", "7.2"]],
  ])("%s to %s", (from, to, expected) => {
    const result = selectPassages(text, from, to);
    expect(result.ok && result.passages.map(({ references }) => formatReferences(references))).toEqual(expected);
  });

  test.each([
    ["9", undefined, "selection_not_found"],
    ["7.2-7.99", undefined, "selection_not_found"],
    ["7.13", "9.1", "selection_not_found"],
    ["8", "7.1", "selection_backwards"],
    ["the end", undefined, "selection_unreadable"],
  ])("%s to %s is refused", (from, to, code) => {
    const result = selectPassages(text, from, to);
    expect(result.ok ? "taken" : result.refusal.code).toBe(code);
  });

  test("a refusal names what there is", () => {
    const result = selectPassages(text, "9");
    expect(result.ok ? "" : result.refusal.sentence).toBe(
      "Expected a reference of “reins”, but nothing stands at “9”. The text goes from 7.1 to 10.1; its divisions are 7, 8, 10. Choose from these.",
    );
  });
});
