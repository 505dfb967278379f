/** tests/browser/browser-kit.test.ts - the ground the other browser tests stand on: a Chromium opens, the built window
 *  is there, and an error inside a page never goes unseen. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { distPath } from "../../server/paths.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";

describeInBrowser("the browser", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
  });

  test("opens a page", async () => {
    const title = await withPage(browser, async (page) => {
      await page.setContent("<title>The court</title>");
      return page.title();
    });
    expect(title).toBe("The court");
  });

  test("an uncaught error in the page fails the test that opened it", async () => {
    const opened = withPage(browser, async (page) => {
      await page.setContent("<script>throw new Error('the spear is lost')</script>");
      await page.waitForTimeout(50);
    });
    await expect(opened).rejects.toThrow(/1 uncaught error.*the spear is lost/s);
  });

  test("the client was built, with everything it loads beside it", () => {
    const html = readFileSync(join(distPath, "index.html"), "utf8");
    expect(html).toMatch(/src="\/assets\/[^"]+\.js"/);
    expect(html).not.toMatch(/https?:/);
  });
});
