/** tests/browser/print.test.ts - the Print room in a real browser: the order and extent of several exercises, the sides the
 *  paper takes, the way from a reference to its words, and what is said where a paper cannot be made. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBook } from "../../server/demo/book.ts";
import { readRows } from "../../server/store/index.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { type RunningApp, runningApp } from "../kit/running-app.ts";

const { exercises } = demoBook();

describeInBrowser("asking for a paper", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
  });
  afterAll(async () => browser?.close());

  const titles = (page: Page) => page.locator(".parts .said").allTextContents();

  test("exercises are put in order by keyboard and by dragging, and the paper follows", async () => {
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/print/${exercises.circle}`);
      await page.getByLabel("Paper").selectOption("class handout");
      await page.getByLabel("Add").selectOption(exercises.change);
      await page.getByLabel("Add").selectOption(exercises.turned);
      const before = await titles(page);
      const last = before[2] ?? "";
      const up = page.getByRole("button", { name: new RegExp(`^up ?: ${last}`) });
      await up.focus();
      await page.keyboard.press("Enter");
      await expect.poll(() => titles(page)).toEqual([before[0], last, before[1]]);
      // The focus goes with it, so that the next press moves it on; at the top it stands on "down".
      await page.keyboard.press("Enter");
      await expect.poll(() => titles(page)).toEqual([last, before[0], before[1]]);
      await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toContain("down");

      await page.locator(".dragged").first().dragTo(page.locator(".part-of-paper").last());
      await expect.poll(() => titles(page)).toEqual([before[0], before[1], last]);
      const headings = page.frameLocator("iframe.paper:not(.coming)").locator("h2");
      await expect
        .poll(async () => (await headings.allTextContents()).filter((heading) => before.includes(heading)))
        .toEqual(before);

      const part = page.locator(".part-of-paper").first();
      await part.locator("summary").click();
      await part.locator(".cut select").last().selectOption({ index: 2 });
      await part.getByText("up to step 2").waitFor();
    });
  });

  test("says how many sides the PDF takes, and leads from a reference to its words", async () => {
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/print/${exercises.circle}`);
      await page
        .locator(".paper-state")
        .getByText(/^(One side|\d+ sides) of A4 as PDF\./)
        .waitFor();
      const paper = page.frameLocator("iframe.paper:not(.coming)");
      const reference = paper.locator("tr[id^=step-] .ref[role=link]").first();
      await reference.focus();
      await reference.press("Enter");
      await page.locator(".gloss.elements.active, .gloss.elements").first().waitFor();
      expect(new URL(page.url()).pathname).toMatch(/^\/read\//);
    });
  });

  test("the form of an edition opens in view with the focus in it", async () => {
    await withPage(
      browser,
      async (page) => {
        await page.goto(`${app.address}/print/${exercises.boar}`);
        await page.getByRole("button", { name: "Issue as an edition …" }).click();
        const title = page.getByLabel("Title", { exact: true });
        await expect.poll(() => title.evaluate((field) => field === document.activeElement)).toBe(true);
        const box = await page.getByRole("button", { name: "Issue", exact: true }).boundingBox();
        expect((box?.y ?? 1000) + (box?.height ?? 0)).toBeLessThanOrEqual(701);
      },
      { viewport: { width: 1280, height: 700 } },
    );
  });

  test("a citation that leads nowhere is named, with a link to where it can be mended", async () => {
    const broken = await runningApp();
    const element = readRows(broken.store, "elements").find(({ value }) => value.exercise === exercises.circle)?.value;
    const mark = readRows(broken.store, "marks").find(({ value }) => value.target === element?.id)?.value.id;
    const anchors = readRows(broken.store, "anchors").filter(({ value }) => value.mark === mark);
    await fetch(`${broken.address}/api/changes`, {
      method: "POST",
      headers: { "content-type": "application/json", origin: broken.address },
      body: JSON.stringify({
        id: "018cc251-f400-7000-8000-00000000aaaa",
        who: "Ada",
        why: "Lose the words of a step",
        sitting: null,
        group: null,
        edits: anchors.map(({ value, version }) => ({
          do: "set",
          kind: "anchors",
          id: value.id,
          base: version,
          fields: { fate: "lost" },
        })),
      }),
    });
    await withPage(browser, async (page) => {
      await page.goto(`${broken.address}/print/${exercises.circle}`);
      const alert = page.getByRole("alert");
      await alert.getByText("Nothing was printed").waitFor();
      await alert.getByRole("link").first().click();
      await page.locator("#leaf h1").waitFor();
      expect(new URL(page.url()).pathname).toMatch(/^\/read\//);
    });
  });
});
