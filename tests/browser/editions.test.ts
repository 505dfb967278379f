/** tests/browser/editions.test.ts - the Print room in a real browser: an edition is issued, a reading changes, and the list
 *  says who holds what is wrong; the slip is made, read back, and says the words of both. */
import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBook } from "../../server/demo/book.ts";
import { allRows, getAttachment } from "../../server/store/index.ts";
import { correctionOf } from "../../shared/text/correction.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { pdfWords } from "../kit/pdf-words.ts";
import { type RunningApp, runningApp } from "../kit/running-app.ts";

const { exercises, work } = demoBook();
const READING = "to the other hand; the reins change too";
const REASON = "One gives to a hand, and reins are lost in this turn.";

describeInBrowser("issuing and correcting", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
  });
  afterAll(async () => browser?.close());

  test("freezes an edition, changes a reading, and prints the slip with the words of both", async () => {
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/print/${exercises.change}`);
      await page.getByRole("button", { name: "Issue as an edition …" }).click();
      await page.getByLabel("Goes to").fill("the Tuesday class\nAda");
      await page.getByRole("button", { name: "Issue", exact: true }).click();
      await page.getByText("Edition 1 is issued").waitFor();
      await expect
        .poll(() => allRows(app.store).editions?.map(({ value }) => value.recipients.map(({ who }) => who)))
        .toEqual([["the Tuesday class", "Ada"]]);

      await adoptInDecide(page, app);

      await page.goto(`${app.address}/print/editions/${work}`);
      const wrong = page.locator("section.wrong");
      await wrong.locator("li").waitFor();
      expect(await wrong.locator("li").textContent()).toMatch(
        /^The Tuesday class and Ada hold edition 1, .*Since then .+ changed\./,
      );
      const edition = page.locator("section.edition");
      await wrong.getByRole("button", { name: /^make the slip/ }).click();
      expect(await edition.getByLabel("Compare it with").inputValue()).toBe("now");
      const entries = edition.locator("dl.compared");
      await entries.waitFor();
      expect(await entries.textContent()).toContain(REASON);

      await edition
        .getByRole("button", { name: /^Issue it anew to those who hold it, with a correction slip/ })
        .click();
      const slipLink = page.getByRole("link", { name: "Correction slip to edition 2" });
      await slipLink.waitFor();
      const slip = await fetch(`${app.address}${await slipLink.getAttribute("href")}`);
      expect(slip.headers.get("content-type")).toContain("application/pdf");
      const said = await pdfWords(new Uint8Array(await slip.arrayBuffer()));
      const kept = allRows(app.store).slips?.[0]?.value.entries ?? [];
      expect(kept.length).toBeGreaterThan(0);
      for (const { shown, was, now } of kept) {
        const { do: _do, ...parts } = correctionOf(was, now);
        for (const words of [shown, ...Object.values(parts)]) {
          expect(said).toContain(squeezed(words.replace(/“/gu, "‘").replace(/”/gu, "’")));
        }
      }
      expect(said).toContain(squeezed(REASON));
    });
  });

  test("an old edition is saved as it was issued, and a report is entered against its step", async () => {
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/print/editions/${work}`);
      const first = page.locator("#edition-1");
      const [saved] = await Promise.all([
        page.waitForEvent("download"),
        first.getByRole("link", { name: "PDF as it was issued" }).click(),
      ]);
      const bytes = readFileSync((await saved.path()) ?? "");
      const kept =
        allRows(app.store).editions?.find(({ value }) => value.number === 1)?.value.papers[0]?.attachment ?? "";
      expect(bytes.equals(Buffer.from(getAttachment(app.store, kept)?.bytes ?? []))).toBe(true);

      await first.getByRole("button", { name: /^enter an error somebody found/ }).click();
      await first.getByLabel("Who found it").fill("Ada");
      await first.locator(".report select").selectOption({ index: 2 });
      await first.getByLabel("What is wrong").fill("There is no room for this beside the wall.");
      await first.getByRole("button", { name: "Enter it" }).click();
      await first.locator(".reports li p").first().getByText("There is no room for this beside the wall.").waitFor();
      const report = allRows(app.store).reports?.[0]?.value;
      expect(report).toMatchObject({ who: "Ada", shown: "2", state: "new" });
      await first.getByRole("button", { name: /^answer it/ }).click();
      await first.getByLabel("Answer", { exact: true }).fill("There is: see the plan.");
      await first.getByRole("button", { name: "Answer", exact: true }).click();
      await first.getByText("Answered: There is: see the plan.").waitFor();
    });
  });

  test("choices are remembered a paper, and what is wrong is said in words", async () => {
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/print/${exercises.circle}`);
      await page.getByLabel("Paper").selectOption("caller's sheet");
      await page.getByLabel("A5").check();
      await page.getByLabel("Paper").selectOption("ride sheet");
      expect(await page.getByLabel("A4").isChecked()).toBe(true);
      await page.reload();
      await page.getByLabel("Paper").selectOption("caller's sheet");
      expect(await page.getByLabel("A5").isChecked()).toBe(true);
      // From the third step to the first: refused in a sentence, not an empty frame.
      await expect.poll(() => page.locator(".cut select").first().locator("option").count()).toBeGreaterThan(3);
      await page.locator(".cut select").first().selectOption({ index: 3 });
      await page.locator(".cut select").last().selectOption({ index: 1 });
      await page.getByRole("alert").getByText("ends before it begins").waitFor();
    });
  });
});

const squeezed = (words: string): string => words.replace(/\s+/gu, "");

/** Through the Decide room, as a person does. */
async function adoptInDecide(page: Page, app: RunningApp): Promise<void> {
  await page.goto(`${app.address}/decide/${exercises.change}`);
  const entry = page.locator(".crux-entry").filter({ hasText: READING }).first();
  await entry.getByRole("button", { name: "decide…" }).click();
  await entry.getByRole("button", { name: `adopt: “${READING}”` }).click();
  await entry.getByLabel("It is adopted because").fill(REASON);
  await entry.getByRole("button", { name: /^Adopt it/ }).click();
  await expect
    .poll(() => allRows(app.store).readings?.find(({ value }) => value.title === READING)?.value.status.is)
    .toBe("adopted");
}
