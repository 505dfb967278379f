/** tests/browser/paper-page.test.ts - a paper as a page in a browser: against axe-core's rules for WCAG 2 A and AA, nothing
 *  wider than the window, no script and nothing loaded; and printed from there. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { richPaper } from "../papers-written/paper-kit.ts";
import { readPdf, squashed } from "../papers-written/read-pdf.ts";
import { written } from "../papers-written/written.ts";

const AXE = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

describeInBrowser("a paper as a page", () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(async () => browser?.close());

  const kinds = ["ride sheet", "class handout", "caller's sheet", "working sheet", "appendix"] as const;

  test.each(kinds.flatMap((kind) => [1100, 700, 380].map((width) => [kind, width] as const)))(
    "%s, %i wide, can be read by everybody",
    async (kind, width) => {
      const page = new TextDecoder().decode(await written(richPaper({ kind }), "html"));
      await withPage(
        browser,
        async (tab) => {
          const asked: string[] = [];
          tab.on("request", (request) => asked.push(request.url()));
          await tab.setContent(page);
          await tab.evaluate(readFileSync(AXE, "utf8"));
          const found = await tab.evaluate(() =>
            (window as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run({
              runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa"],
            }),
          );
          const told = found.violations.map(
            ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`,
          );
          expect(told).toEqual([]);
          expect(
            await tab.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
          ).toBeLessThanOrEqual(0);
          expect(asked.filter((url) => !url.startsWith("data:"))).toEqual([]);
          expect(await tab.evaluate(() => document.fonts.check('16px "Gentium Plus"'))).toBe(true);
        },
        { viewport: { width, height: 900 } },
      );
    },
  );

  test("is printed with its words, running heads and numbers of pages", async () => {
    const page = new TextDecoder().decode(await written(richPaper({ kind: "class handout" }), "html"));
    await withPage(browser, async (tab) => {
      await tab.setContent(page);
      const pdf = await readPdf(await tab.pdf({ preferCSSPageSize: true }));
      expect(pdf.pages.length).toBeGreaterThan(1);
      expect(squashed(pdf.pages.at(-1) ?? "")).toContain(`${pdf.pages.length}of${pdf.pages.length}`);
      expect(squashed(pdf.pages[1] ?? "")).toContain("Thebookofthelowcourt");
    });
  });
});
