/** tests/demo/issued-sheets.test.ts - the invented book comes with an edition that proved wrong, and its correction. */
import { expect, test } from "vitest";
import { demoBook } from "../../server/demo/book.ts";
import { issueDemoSheets } from "../../server/demo/issued-sheets.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { editionLines } from "../../server/publish/editions/compare-editions.ts";
import { allRows, replay } from "../../server/store/index.ts";
import { accepted, emptyStore, NOW } from "../store/store-builders.ts";

test("a handout was issued, corrected, and issued again; the class still holds the wrong one", async () => {
  const store = emptyStore();
  loadDemo(store, NOW);
  accepted(await issueDemoSheets(store, NOW));
  const [second, first] = editionLines(store, demoBook().work);
  expect(second).toMatchObject({ differences: 0, edition: { number: 2 } });
  expect(first).toMatchObject({ edition: { number: 1 }, slips: [{ to: second?.edition.id }] });
  expect(first?.differences).toBeGreaterThan(0);
  expect(first?.edition.recipients.map(({ who }) => who)).toContain("the October class");
  const entries = allRows(store).slips?.[0]?.value.entries ?? [];
  expect(entries.map(({ now }) => now).join(" ")).toContain("the point goes round with it");
  expect(entries.map(({ why }) => why).join(" ")).toContain("Four of the six");
  expect(replay(store)).toEqual(allRows(store));
});
