/** tests/browser/accessible.test.ts - every room, light and dark, wide and narrow, against axe-core's rules for WCAG 2 A
 *  and AA (contrast among them); and nothing wider than the window at 200 % (half the width) or on a phone. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { AxeResults } from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBook } from "../../server/demo/book.ts";
import { issueDemoSheets } from "../../server/demo/issued-sheets.ts";
import { readRows } from "../../server/store/index.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { NOW, type RunningApp, runningApp } from "../kit/running-app.ts";

const AXE = createRequire(import.meta.url).resolve("axe-core/axe.min.js");

describeInBrowser("every room can be read by everybody", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
    await issueDemoSheets(app.store, NOW);
  });
  afterAll(async () => browser?.close());

  const { exercises } = demoBook();
  const passageOf = (exercise: string) =>
    readRows(app.store, "passages").find(({ value }) => value.exercise === exercise)?.value.id ?? "";
  const passageWithPicture = () =>
    readRows(app.store, "passages").find(({ value }) => {
      const [first] = value.references;
      return first?.kind === "folio" && first.from.leaf === 8 && first.from.side === "v" && first.from.line === 15;
    })?.value.id ?? "";
  const rooms: [name: string, path: () => string, ready: string, act?: (page: Page) => Promise<void>][] = [
    ["a passage", () => `/read/${passageOf(exercises.change)}`, ".gloss.elements"],
    [
      "a step's form",
      () => `/read/${passageOf(exercises.change)}`,
      ".gloss.elements",
      async (page) => {
        await page.locator(".gloss.elements .gloss-title").first().click();
        await page.locator(".form-head").waitFor();
      },
    ],
    [
      "a crux laid out",
      () => `/read/${passageOf(exercises.change)}`,
      ".gloss.cruxes",
      async (page) => {
        await page.locator(".gloss.cruxes .gloss-title").first().click();
        await page.locator(".desk").waitFor();
      },
    ],
    [
      "decide",
      () => `/decide/${exercises.change}`,
      ".crux-entry .share-words",
      async (page) => {
        await page.locator(".pick").first().click();
        await page.getByRole("button", { name: "decide…" }).first().click();
        await page.locator(".to-decide").first().waitFor();
      },
    ],
    [
      "a letter",
      () => `/decide/${exercises.change}`,
      ".letters button",
      async (page) => {
        await page.locator(".letters button").first().click();
        await page.getByLabel("The letter").waitFor();
      },
    ],
    ["a term", () => `/decide/term/${readRows(app.store, "terms")[0]?.value.id}`, ".term-place"],
    ["ride", () => `/ride/${exercises.change}`, ".plan"],
    ["bringing in", () => "/import", "input[type=file]"],
    ["print", () => `/print/${exercises.circle}`, "iframe"],
    [
      "a handout of several exercises, being issued",
      () => `/print/${exercises.circle}`,
      "iframe",
      async (page) => {
        await page.getByLabel("Paper").selectOption("class handout");
        await page.getByLabel("Add").selectOption(exercises.change);
        await page.locator(".part-order").first().waitFor();
        await page.getByRole("button", { name: "Issue as an edition …" }).click();
      },
    ],
    [
      "editions, compared",
      () => `/print/editions/${demoBook().work}`,
      "section.edition",
      async (page) => {
        await page.getByLabel("Compare it with").last().selectOption("now");
        await page.locator("dl.compared").waitFor();
      },
    ],
    [
      "a picture, enlarged",
      () => `/read/${passageWithPicture()}`,
      ".passage-pictures",
      async (page) => {
        await page.getByRole("button", { name: /^enlarge/ }).click();
        await page.locator(".large-picture").waitFor();
      },
    ],
    ["history", () => `/history/${demoBook().work}`, "main li"],
  ];
  const looks = [
    { name: "light", width: 1400, colorScheme: "light" },
    { name: "dark", width: 1400, colorScheme: "dark" },
    { name: "light, at 200 %", width: 700, colorScheme: "light" },
    { name: "dark, on a phone", width: 390, colorScheme: "dark" },
  ] as const;

  test.each(rooms.flatMap((room) => looks.map((look) => [room[0], look.name, room, look] as const)))(
    "%s, %s",
    async (_room, _look, [, path, ready, act], look) => {
      await withPage(
        browser,
        async (page) => {
          await page.goto(`${app.address}${path()}`);
          await page.locator(ready).first().waitFor();
          await act?.(page);
          // The window's policy lets no script in; the rules are evaluated from outside.
          await page.evaluate(readFileSync(AXE, "utf8"));
          const found = await page.evaluate(() =>
            (window as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run({
              runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa"],
              iframes: false,
            }),
          );
          expect(
            found.violations.map(
              ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(" | ")}`,
            ),
          ).toEqual([]);
          const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
          expect(overflow).toBeLessThanOrEqual(0);
        },
        { viewport: { width: look.width, height: 900 }, colorScheme: look.colorScheme },
      );
    },
  );
});
