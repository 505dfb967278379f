/** tests/browser/history.test.ts - the history in a real browser: what was done in one sitting stands together, and taking
 *  back what somebody changed since says, in words, what both are. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBook } from "../../server/demo/book.ts";
import { readRows } from "../../server/store/index.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { type RunningApp, runningApp } from "../kit/running-app.ts";

describeInBrowser("the history", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
  });
  afterAll(async () => browser?.close());

  const rename = async (number: number, sitting: string | null, title: string) => {
    const crux = readRows(app.store, "cruxes")[0];
    if (crux === undefined) throw new Error("The demo has no crux.");
    const fields = { title };
    const answer = await fetch(`${app.address}/api/changes`, {
      method: "POST",
      headers: { "content-type": "application/json", origin: app.address },
      body: JSON.stringify({
        id: `018cc251-f400-7000-8000-0000000bb00${number}`,
        who: "Ada",
        why: `Call the crux “${title}”`,
        sitting,
        group: null,
        edits: [{ do: "set", kind: "cruxes", id: crux.value.id, base: crux.version, fields }],
      }),
    });
    expect(answer.status).toBe(200);
  };

  test("what was done in a sitting stands together under it", async () => {
    const sitting = readRows(app.store, "sittings")[0]?.value;
    await rename(1, null, "Alone");
    await rename(2, sitting?.id ?? null, "First of the sitting");
    await rename(3, sitting?.id ?? null, "Second of the sitting");
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/history/${demoBook().work}`);
      const together = page.locator(".day .sitting");
      await together.getByRole("heading", { name: /^Sitting of \d+ \w+ \d{4}, with / }).waitFor();
      expect(await together.locator(".why").allTextContents()).toEqual([
        "Call the crux “Second of the sitting”",
        "Call the crux “First of the sitting”",
      ]);
      expect(await together.locator(".touched").first().textContent()).toContain("Changed 1 crux.");
    });
  });

  test("what was changed since is told before it would be lost", async () => {
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/history/${demoBook().work}`);
      const entry = page.locator(".day li").filter({ hasText: "Call the crux “First of the sitting”" });
      await entry.getByRole("button", { name: "undo" }).click();
      const told = entry.getByRole("alert").locator("li");
      await told.waitFor();
      expect(await told.textContent()).toContain("now “Second of the sitting”, by Ada");
      expect(await told.textContent()).toContain("taking back would make it “Alone”");
      await expect
        .poll(() => readRows(app.store, "cruxes").some(({ value }) => value.title === "Second of the sitting"))
        .toBe(true);
    });
  });
});
