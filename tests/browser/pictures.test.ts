/** tests/browser/pictures.test.ts - pictures in the Read room: shown beside the passage that rests on them, their parts lit
 *  with what rests on them, enlarged by keyboard, and a new part given as evidence by four numbers. */
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { allRows, readRows } from "../../server/store/index.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { type RunningApp, runningApp } from "../kit/running-app.ts";

const FACE = "the rider's face, turned to the stair";

describeInBrowser("pictures beside the passage", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
  });
  afterAll(async () => browser?.close());

  /** The passage in which the step that rests on the picture alone stands. */
  const passage = () => {
    const step = readRows(app.store, "elements").find(
      ({ value }) => value.is === "step" && value.title === "The spear behind him",
    );
    const mark = readRows(app.store, "marks").find(({ value }) => value.target === step?.value.id)?.value.id;
    const anchor = readRows(app.store, "anchors").find(({ value }) => value.mark === mark)?.value;
    return anchor?.is === "text" ? anchor.passage : "";
  };

  test("a part in words brings forward what rests on it, and is outlined", async () => {
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/read/${passage()}`);
      const beside = page.locator(".passage-pictures");
      const image = beside.getByRole("img", { name: /^Picture: The boar passed/ });
      await expect.poll(() => image.evaluate((one) => (one as HTMLImageElement).naturalWidth)).toBe(960);
      await beside.getByRole("button", { name: FACE }).focus();
      await page.keyboard.press("Enter");
      await page.locator(".gloss.elements.active").getByRole("button", { name: "The spear behind him" }).waitFor();
      const face = readRows(app.store, "regions").find(({ value }) => value.label === FACE)?.value.corners;
      const lit = await beside.locator("path.lit").evaluateAll((paths) => paths.map((path) => path.getAttribute("d")));
      expect(lit).toContain(`M${face?.[0]?.join(" ")}H${face?.[1]?.[0]}V${face?.[1]?.[1]}H${face?.[0]?.[0]}Z`);

      await beside.getByRole("button", { name: /^enlarge/ }).focus();
      await page.keyboard.press("Enter");
      const large = page.getByRole("dialog", { name: /^The boar passed/ });
      await large.getByText("The boar seems the less surprised").waitFor();
      await page.keyboard.press("Escape");
      await large.waitFor({ state: "detached" });
    });
  });

  test("a passage that rests on no picture shows none", async () => {
    await withPage(browser, async (page) => {
      const first = readRows(app.store, "passages")[0]?.value.id;
      await page.goto(`${app.address}/read/${first}`);
      await page.locator("#leaf h1").waitFor();
      expect(await page.locator(".passage-pictures").count()).toBe(0);
    });
  });

  test("a new part is evidence for a reading, given by its edges", async () => {
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/read/${passage()}`);
      await page.locator(".gloss.cruxes .gloss-title").first().click();
      await page.getByRole("button", { name: "a picture", exact: true }).first().click();
      const form = page.locator(".picture-form");
      for (const [edge, pixels] of [
        ["right", "200"],
        ["bottom", "180"],
        ["left", "100"],
        ["top", "60"],
      ] as const) {
        await form.locator(".four label").filter({ hasText: edge }).locator("input").fill(pixels);
      }
      await form.getByLabel("What it shows").fill("the two lines above the boar");
      await form.getByRole("button", { name: "Add" }).click();
      await form.waitFor({ state: "detached" });
      await page.locator(".bases li").getByText("picture: the two lines above the boar").waitFor();
      const { regions, readings } = allRows(app.store);
      const made = regions?.find(({ value }) => value.label === "the two lines above the boar")?.value;
      expect(made?.corners).toEqual([
        [100, 60],
        [200, 180],
      ]);
      expect(
        readings?.some(({ value }) => value.evidence.some((one) => one.is === "picture" && one.region === made?.id)),
      ).toBe(true);
      // Shown beside the passage at once.
      await page.locator(".passage-pictures").getByRole("button", { name: "the two lines above the boar" }).waitFor();
    });
  });
});
