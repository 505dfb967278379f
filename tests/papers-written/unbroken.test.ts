/** tests/papers-written/unbroken.test.ts - a number is not parted from its unit, nor a folio from its lines. */
import { expect, test } from "vitest";
import { bound, unbrokenParts } from "../../server/publish/write/unbroken.ts";

test.each([
  ["circle left, of about 12.8 m, once", "circle left, of about 12.8\u00a0m, once"],
  ["2 min or 5 s", "2\u00a0min or 5\u00a0s"],
  ["3 more 4 steps", "3 more 4 steps"],
  ["from Step 3 to step 4", "from Step\u00a03 to step\u00a04"],
  ["A f. 3r, ll. 1–10", "A f.\u00a03r, ll.\u00a01–10"],
  ["half. 3 times", "half. 3 times"],
])("%s", (words, held) => {
  expect(bound(words)).toBe(held);
  expect(bound(held)).toBe(held);
});

test("a reference parts between places, not within one", () => {
  expect(unbrokenParts("A f. 2v, ll. 4–15; f. 5r")).toEqual(["A f. 2v,", "ll. 4–15;", "f. 5r"]);
  expect(unbrokenParts("The Third Book of the House, f. 2")).toBeNull();
  expect(unbrokenParts(" f. 2")).toBeNull();
});
