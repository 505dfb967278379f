/** tests/browser/two-windows.test.ts - two windows on one passage never overwrite each other silently: different fields
 *  merge, one field asks, and typing on the text is laid on top of what the other stored. */
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { demoBook } from "../../server/demo/book.ts";
import { readRows } from "../../server/store/index.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { activeGloss } from "../kit/page-words.ts";
import { type RunningApp, runningApp } from "../kit/running-app.ts";

const FIRST_WORDS = "Let him set out from the gate";

describeInBrowser("two windows on one passage", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
  });
  afterAll(async () => browser?.close());

  const passageText = () => {
    const texts = readRows(app.store, "passageTexts").filter(({ value }) =>
      value.text.includes("out from the gate at an easy canter"),
    );
    return texts.sort((a, b) => b.value.number - a.value.number)[0]?.value;
  };
  const stepTitle = () =>
    readRows(app.store, "elements")
      .map(({ value }) => value)
      .filter((element) => element.is === "step" && element.exercise === demoBook().exercises.circle)
      .sort((a, b) => (a.rank < b.rank ? -1 : 1))
      .map((element) => (element.is === "step" ? element.title : ""))[0];

  const open = async (page: Page) => {
    await page.goto(`${app.address}/read/${passageText()?.passage}`);
    await page.locator(".text-pane").getByText(FIRST_WORDS).waitFor();
  };
  const openFirstStep = async (page: Page) => {
    await page.locator(".head.number").first().click();
    await activeGloss(page).getByRole("button", { name: /^1 / }).click();
    return activeGloss(page).getByRole("textbox", { name: "Title of the step" });
  };
  const inTwo = (use: (one: Page, other: Page) => Promise<void>) =>
    withPage(browser, (one) => withPage(browser, (other) => use(one, other)));

  test("the same field: the later writer sees both and decides; nothing typed is lost", async () => {
    await inTwo(async (one, other) => {
      await Promise.all([open(one), open(other)]);
      const theirs = await openFirstStep(one);
      const mine = await openFirstStep(other);
      await mine.fill("About the well, as I call it");
      await theirs.fill("Round the well, as they call it");
      await theirs.press("Enter");
      await expect.poll(stepTitle).toBe("Round the well, as they call it");
      await mine.press("Enter");
      const dialog = other.getByRole("dialog", { name: "Somebody wrote there first" });
      await dialog.getByText("Round the well, as they call it").first().waitFor();
      await dialog.getByText("About the well, as I call it").first().waitFor();
      expect(stepTitle()).toBe("Round the well, as they call it");
      await dialog
        .getByRole("radio", { name: /you|mine/i })
        .first()
        .check();
      await dialog.getByRole("button", { name: "Write mine" }).click();
      await expect.poll(stepTitle).toBe("About the well, as I call it");
      await expect.poll(() => theirs.inputValue()).toBe("About the well, as I call it");
    });
  });

  test("typing on the text in both: the later is told what came, and both changes stand", async () => {
    await inTwo(async (one, other) => {
      await Promise.all([open(one), open(other)]);
      const before = passageText()?.text ?? "";
      const unlock = async (page: Page, at: "Home" | "End", words: string) => {
        await page.getByRole("button", { name: "amend" }).first().click();
        const text = page.locator(".text-pane.unlocked .ProseMirror");
        await text.focus();
        await page.keyboard.press(`Control+${at}`);
        await page.keyboard.type(words);
        await page.getByRole("textbox", { name: "Why do the words change?" }).fill(`added at ${at}`);
      };
      await unlock(one, "Home", "First. ");
      await unlock(other, "End", " Last.");
      await one.getByRole("button", { name: "Store the amended text" }).click();
      await expect.poll(() => passageText()?.number).toBe(2);
      await other.getByText("Another window amended this passage after you began").waitFor();
      await other.locator("ins").getByText("First.").waitFor();
      await other.getByRole("button", { name: "Put my typing on top of it" }).click();
      await other.getByRole("button", { name: "Store the amended text" }).click();
      await expect.poll(() => passageText()?.text).toBe(`First. ${before} Last.`);
      // The marks went with their words.
      const anchors = readRows(app.store, "anchors").flatMap(({ value }) =>
        value.is === "text" && value.text === passageText()?.id ? [value] : [],
      );
      expect(anchors.length).toBeGreaterThan(5);
      for (const anchor of anchors) expect(passageText()?.text.slice(anchor.from, anchor.to)).toBe(anchor.quote);
    });
  });
});
