/** tests/browser/find.test.ts - finding by the keyboard alone: the field is come to from anywhere, words are found while they
 *  are typed, arrows and Enter go there, and Escape comes back. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBook } from "../../server/demo/book.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { type RunningApp, runningApp } from "../kit/running-app.ts";

const AXE = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

describeInBrowser("finding from the bar", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
  });
  afterAll(async () => browser?.close());

  const onFirstPage = (use: (page: Page) => Promise<void>, options = {}) =>
    withPage(
      browser,
      async (page) => {
        await page.goto(app.address);
        await page.locator(".gloss").first().waitFor();
        await use(page);
      },
      options,
    );
  const field = (page: Page) => page.getByRole("combobox", { name: /^Find words/ });
  const chosen = (page: Page) => page.locator('.find-line[aria-selected="true"]');
  /** The line with these words is there; the field names the chosen one. */
  const found = (page: Page, words: string | RegExp) => page.getByRole("option", { name: words }).first().waitFor();

  test("words of a text: typed, gone to with Enter, and lit", async () => {
    await onFirstPage(async (page) => {
      await page.keyboard.press("Control+k");
      // Enter before the answer is there waits for it.
      await page.keyboard.type("PUTÉO");
      await page.keyboard.press("Enter");
      const lit = page.locator(".text-pane.original .found-words");
      await lit.waitFor();
      expect((await lit.textContent())?.toLowerCase()).toBe("puteo");
      expect(await lit.isVisible()).toBe(true);
      expect(await field(page).getAttribute("aria-expanded")).toBe("false");
      expect(await page.evaluate(() => document.activeElement?.id)).toBe("leaf");
    });
  });

  test("a step: arrows choose it, Enter brings it forward on its passage", async () => {
    await onFirstPage(async (page) => {
      await page.locator(".ProseMirror").first().focus();
      // On locked text every letter is a command; this one still comes to the field.
      await page.keyboard.press("/");
      expect(await field(page).evaluate((input) => input === document.activeElement)).toBe(true);
      await page.keyboard.type('"back to the gate"');
      await found(page, /Back to the gate/);
      const lines = await page.locator(".find-line").count();
      for (let press = 0; press < lines; press += 1) {
        const text = await chosen(page).textContent();
        if (text?.startsWith("Back to the gate, the point")) break;
        await page.keyboard.press("ArrowDown");
      }
      const id = await chosen(page).getAttribute("id");
      expect(await field(page).getAttribute("aria-activedescendant")).toBe(id);
      await page.keyboard.press("Enter");
      const forward = page.locator(".gloss.elements.active");
      await forward.getByText("Back to the gate, the point on the left").waitFor();
      await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toBe("gloss-title");
    });
  });

  test("something to do: it is done", async () => {
    await onFirstPage(async (page) => {
      await page.keyboard.press("Control+k");
      await page.keyboard.type("bring in");
      await found(page, "Bring in a text");
      await chosen(page).waitFor();
      while ((await chosen(page).textContent()) !== "Bring in a text") await page.keyboard.press("ArrowUp");
      await page.keyboard.press("Enter");
      await page.waitForURL(/\/import/);
    });
  });

  test("nothing is found: it says so; Escape closes and comes back; a slash in a field is a slash", async () => {
    await onFirstPage(async (page) => {
      const before = page.getByRole("button", { name: "after" });
      await before.focus();
      await page.keyboard.press("/");
      await page.keyboard.type("zebra/");
      await page.getByText("Nothing in the works says “zebra/”.").waitFor();
      await page.keyboard.press("Escape");
      expect(await page.locator(".find-panel").isVisible()).toBe(false);
      await page.keyboard.press("Escape");
      expect(await before.evaluate((button) => button === document.activeElement)).toBe(true);
    });
  });

  test.each(["light", "dark"] as const)(
    "the open list keeps axe-core's rules for WCAG 2 A and AA, %s",
    async (colorScheme) => {
      await onFirstPage(
        async (page) => {
          await page.keyboard.press("Control+k");
          await page.keyboard.type("wall");
          await chosen(page).waitFor();
          await page.evaluate(readFileSync(AXE, "utf8"));
          const results = await page.evaluate(() =>
            (window as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run({
              runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa"],
            }),
          );
          expect(
            results.violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160))}`),
          ).toEqual([]);
        },
        { colorScheme },
      );
    },
  );

  test("from another room, and on a phone, where the field is a line of its own", async () => {
    await withPage(
      browser,
      async (page) => {
        await page.goto(`${app.address}/print/${demoBook().exercises.circle}`);
        await field(page).waitFor();
        const [box, rooms] = await Promise.all([
          page.locator(".find").boundingBox(),
          page.getByRole("navigation", { name: "Rooms" }).boundingBox(),
        ]);
        expect(box?.y).toBeGreaterThanOrEqual((rooms?.y ?? 0) + (rooms?.height ?? 0));
        expect(box?.width).toBeGreaterThan(340);
        await field(page).fill("semel circumierit");
        await page.locator(".find-line.found").first().click();
        await page.locator(".found-words").first().waitFor();
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
      },
      { viewport: { width: 390, height: 844 } },
    );
  });
});
