/** tests/browser/reading-and-typing.test.ts - what a hurried reader does: choosing values faster than they are stored,
 *  amending and taking it back, dragging from a numbered word, and opening a note. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBook } from "../../server/demo/book.ts";
import { readHistory, readRows } from "../../server/store/index.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { activeGloss, selectWords } from "../kit/page-words.ts";
import { type RunningApp, runningApp } from "../kit/running-app.ts";

describeInBrowser("reading and typing in one window", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
  });
  afterAll(async () => browser?.close());

  const open = async (page: Page) => {
    const passage = readRows(app.store, "passages").find(({ value }) => value.exercise === demoBook().exercises.circle);
    await page.goto(`${app.address}/read/${passage?.value.id}`);
    await page.locator(".head.number").first().waitFor();
  };
  const leading = (page: Page) => page.locator(".text-pane").first();

  test("values chosen faster than they are stored all stand, and nobody is said to have been first", async () => {
    await withPage(browser, async (page) => {
      // The answers come late, as from a slow disk.
      await page.route("**/api/changes", async (route) => {
        await new Promise((resolve) => setTimeout(resolve, 250));
        await route.continue();
      });
      await open(page);
      await page.locator(".head.number").first().click();
      await activeGloss(page).getByRole("button", { name: /^1 / }).click();
      const before = readHistory(app.store, {}).length;
      const figure = activeGloss(page)
        .getByRole("combobox", { name: /figure/i })
        .first();
      for (const label of ["volte", "half volte", "circle"]) await figure.selectOption({ label });
      const title = activeGloss(page).getByRole("textbox", { name: "Title of the step" });
      await title.fill("Quickly about");
      await title.press("Enter");
      await expect.poll(() => readHistory(app.store, {}).length).toBe(before + 4);
      const steps = readRows(app.store, "elements").filter(
        ({ value }) => value.is === "step" && value.title === "Quickly about",
      );
      expect(steps.length).toBe(1);
      const rides = readRows(app.store, "actions").filter(
        ({ value }) => value.owner === steps[0]?.value.id && value.act.verb === "ride",
      );
      expect(
        rides.map(({ value }) =>
          value.act.verb === "ride" && value.act.slots.figure?.is === "said" ? value.act.slots.figure.value : "",
        ),
      ).toEqual(["circle"]);
      expect(await page.getByRole("dialog", { name: "Somebody wrote there first" }).count()).toBe(0);
      expect(await page.getByText("Merged with what another window").count()).toBe(0);
    });
  });

  test("an amended text stands once, and taking it back shows the old words at once", async () => {
    await withPage(browser, async (page) => {
      await open(page);
      const was = await leading(page).locator(".ProseMirror").textContent();
      // Words that were selected before are not typed over.
      await selectWords(page, "an easy canter");
      await leading(page).getByRole("button", { name: "amend" }).click();
      // The caret comes with the next frame; nobody types before it is there.
      await leading(page).locator(".ProseMirror:focus").waitFor();
      await page.keyboard.press("Control+End");
      await page.keyboard.type(" Amen.");
      await page.getByRole("textbox", { name: "Why do the words change?" }).fill("a trial");
      await page.getByRole("button", { name: "Store the amended text" }).click();
      await expect.poll(() => leading(page).locator(".ProseMirror").textContent()).toContain("Amen.");
      expect(await leading(page).locator(".ProseMirror").textContent()).toContain("an easy canter");
      expect(await page.locator(".text-pane").count()).toBe(2);
      await page.locator(".strip").getByRole("button", { name: "undo" }).click();
      await expect.poll(() => leading(page).locator(".ProseMirror").textContent()).toBe(was);
      await page.locator(".strip").getByRole("button", { name: "do it again" }).click();
      await expect.poll(() => leading(page).locator(".ProseMirror").textContent()).toContain("Amen.");
      await page.locator(".leaf").focus();
      await page.keyboard.press("Control+z");
      await expect.poll(() => leading(page).locator(".ProseMirror").textContent()).toBe(was);
    });
  });

  test("a drag may begin on the first letter of a numbered mark", async () => {
    await withPage(browser, async (page) => {
      await open(page);
      // The first line of the step's words alone: the box of all of them begins further left.
      const words = await leading(page)
        .locator(".m.step")
        .first()
        .evaluate((run) => ({ x: run.getClientRects()[0]?.x ?? 0, y: run.getClientRects()[0]?.y ?? 0 }));
      const y = words.y + 12;
      await page.mouse.move(words.x + 1, y);
      await page.mouse.down();
      await page.mouse.move(words.x + 90, y, { steps: 8 });
      await page.mouse.up();
      await page.getByRole("toolbar", { name: "What these words are" }).waitFor();
      expect(await page.evaluate(() => getSelection()?.toString() ?? "")).toMatch(/^Let him/);
    });
  });
});
