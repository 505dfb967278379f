/** tests/browser/decide.test.ts - the Decide room: what is picked there, against a count by brute force over the same rows; a
 *  clash, a decision, a letter read back, and the alarm for an adopted reading that cannot be ridden. */
import { readFileSync } from "node:fs";
import mammoth from "mammoth";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Rows } from "../../schema/record.ts";
import { demoBook } from "../../server/demo/book.ts";
import { readBundle, readRows } from "../../server/store/index.ts";
import { type Count, countByBruteForce } from "../../shared/decide/brute-force.ts";
import { exercisePuzzle } from "../../shared/ride/puzzle/index.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { type RunningApp, runningApp, sendJson } from "../kit/running-app.ts";

const { exercises, work } = demoBook();
const WIDE = { viewport: { width: 1400, height: 900 }, acceptDownloads: true };

type Pick = { crux: string; reading: string };

/** The count by trying every assignment, with all other readings of the picked cruxes ruled out. */
function oracle(rows: Rows, exercise: string, picks: readonly Pick[]): Count {
  const { puzzle } = exercisePuzzle(rows, [exercise]);
  const cruxes = puzzle.cruxes.map((crux) => {
    const own = picks.find((pick) => pick.crux === crux.id);
    return own ? { ...crux, ruledOut: crux.readings.filter((reading) => reading !== own.reading) } : crux;
  });
  return countByBruteForce({ ...puzzle, cruxes });
}

/** What the room says of the count: 1,024 is read as 1024. */
function numbersIn(sentence: string): { all: bigint; holding: bigint } {
  const plain = sentence.replaceAll(",", "");
  const all = BigInt(/Of (\d+) ways/.exec(plain)?.[1] ?? "1");
  if (/none can|cannot be ridden/.test(plain)) return { all, holding: 0n };
  const told = /(\d+|all) can be ridden/.exec(plain.replace(/Of \d+ ways to read it/, ""))?.[1];
  return { all, holding: told === undefined ? 1n : told === "all" ? all : BigInt(told) };
}

describeInBrowser("the Decide room", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
  });
  afterAll(async () => browser?.close());

  const rowsOf = (exercise: string) => {
    const bundle = readBundle(app.store, { exercise });
    if (!bundle.ok) throw new Error(bundle.refusal.error.sentence);
    return bundle.value.rows;
  };
  const titleOf = (reading: string) =>
    readRows(app.store, "readings").find(({ value }) => value.id === reading)?.value.title ?? "";

  test.each([
    ["the change upon the wall", exercises.change],
    ["the two spears", exercises.spears],
  ])(
    "%s: what holds, and what holds under every reading that is picked, as counted by brute force",
    async (_name, exercise) => {
      await withPage(
        browser,
        async (page) => {
          await openDecide(page, app, exercise);
          const rows = rowsOf(exercise);
          const open = oracle(rows, exercise, []);
          expect(numbersIn(await countOf(page))).toEqual({ all: open.all, holding: open.holding });

          for (const { crux, reading, holding, verdict } of open.shares) {
            const row = page.locator(".reading-row").filter({ has: page.getByText(titleOf(reading), { exact: true }) });
            if (verdict === "ruled out") continue;
            const whole = open.shares.reduce((sum, other) => (other.crux === crux ? sum + other.holding : sum), 0n);
            if (whole > 0n)
              expect(await row.locator(".share-words").textContent()).toBe(`${grouped(holding)} of ${grouped(whole)}`);
            expect(await row.locator(".verdict").textContent()).toBe(verdict === "possible" ? "" : verdict);
          }

          const picks: Pick[] = [];
          for (const { crux, reading } of somePossible(open)) {
            picks.push({ crux, reading });
            const before = await countOf(page);
            await page
              .locator(".pick")
              .filter({ hasText: titleOf(reading) })
              .first()
              .click();
            await changed(page, before);
            const { all, holding } = oracle(rows, exercise, picks);
            expect(numbersIn(await countOf(page))).toEqual({ all, holding });
          }
          expect(await page.locator(".picked-word").count()).toBe(picks.length);
          const narrow = await countOf(page);
          await page.getByRole("button", { name: "let all go" }).click();
          await changed(page, narrow);
          expect(numbersIn(await countOf(page))).toEqual({ all: open.all, holding: open.holding });
        },
        WIDE,
      );
    },
  );

  test("a reading that is ruled out in another window leaves the count here, and comes back with the undo", async () => {
    await withPage(
      browser,
      async (page) => {
        const exercise = exercises.spears;
        await openDecide(page, app, exercise);
        const before = await countOf(page);
        const open = oracle(rowsOf(exercise), exercise, []);
        const one = open.shares.find(({ verdict }) => verdict === "possible");
        const row = readRows(app.store, "readings").find(({ value }) => value.id === one?.reading);
        if (row === undefined) throw new Error("The exercise has a reading that is possible.");
        const id = "0190c000-0000-7000-8000-0000000000d1";
        const status = { is: "ruled out", on: "2026-05-04", sitting: null, reason: "a test" };
        const edits = [{ do: "set", kind: "readings", id: row.value.id, base: row.version, fields: { status } }];
        const change = { id, who: "another", why: "ruled out", sitting: null, group: null, edits };
        expect((await sendJson(app, "/api/changes", change)).status).toBe(200);
        await changed(page, before);
        const { all, holding } = oracle(rowsOf(exercise), exercise, []);
        expect(numbersIn(await countOf(page))).toEqual({ all, holding });
        const undoing = { id: "0190c000-0000-7000-8000-0000000000d2", who: "another", why: "taken back" };
        expect((await sendJson(app, `/api/changes/${id}/undo`, undoing)).status).toBe(200);
        await page.waitForFunction((words) => document.querySelector(".count")?.textContent === words, before);
      },
      WIDE,
    );
  });

  test("a reading is picked by the keyboard, and let go by the same key", async () => {
    await withPage(
      browser,
      async (page) => {
        await openDecide(page, app);
        await page.locator(".pick").first().focus();
        await page.keyboard.press("ArrowDown");
        const second = page.locator(".pick").nth(1);
        expect(await second.evaluate((element) => element === document.activeElement)).toBe(true);
        await page.keyboard.press("Space");
        expect(await second.getAttribute("aria-pressed")).toBe("true");
        await page.keyboard.press("Enter");
        expect(await second.getAttribute("aria-pressed")).toBe("false");
        await page.keyboard.press("End");
        expect(
          await page
            .locator(".pick")
            .last()
            .evaluate((element) => element === document.activeElement),
        ).toBe(true);
      },
      WIDE,
    );
  });

  test("a dead reading says why, and without a rule of the clash the picture is another and can be had back", async () => {
    await withPage(
      browser,
      async (page) => {
        await openDecide(page, app);
        const before = await countOf(page);
        await page.locator(".reading-row.dead .why").first().click();
        const reason = page.locator(".why-not");
        await reason.locator(".clash li").first().waitFor();
        expect(await reason.locator(".clash li .said").count()).toBeGreaterThan(0);
        await reason.getByRole("button", { name: "Show it without the weakest rule" }).click();
        await page.getByText("Shown without a rule:").waitFor();
        await page.getByRole("button", { name: "count it again" }).click();
        await page.getByText("Shown without a rule:").waitFor({ state: "detached" });
        await page.waitForFunction((words) => document.querySelector(".count")?.textContent === words, before);
      },
      WIDE,
    );
  });

  test("a reading is adopted with its reason, stands in what was decided, and alarms where it cannot be ridden", async () => {
    await withPage(
      browser,
      async (page) => {
        await openDecide(page, app);
        const dead = page
          .locator(".crux-entry")
          .filter({ has: page.locator(".reading-row.dead") })
          .first();
        const title = (await dead.locator(".reading-row.dead .title").first().textContent()) ?? "";
        await dead.getByRole("button", { name: "decide…" }).click();
        await dead.getByRole("button", { name: `adopt: “${title}”` }).click();
        await dead.getByLabel("It is adopted because").fill("to see what happens");
        await dead.getByRole("button", { name: /^Adopt it/ }).click();
        const alarm = `“${title}” is adopted at †`;
        await dead.locator(".alarm").getByText(alarm).waitFor();
        await dead.getByRole("button", { name: "what was decided" }).click();
        await dead.locator(".decisions li").first().getByText("to see what happens").waitFor();
        expect(await dead.locator(".decisions li").first().textContent()).toMatch(/adopted/);

        await page.getByRole("link", { name: "Ride", exact: true }).click();
        await page.locator(".ride .alarm").getByText(alarm).waitFor();
        await page.getByRole("link", { name: "Decide", exact: true }).click();
        await page.locator(".crux-entry").first().waitFor();
        await dead.getByRole("link", { name: "open in Read" }).click();
        await page.locator(".gloss.cruxes .alarm").getByText(alarm).first().waitFor();
        await page.getByRole("button", { name: "undo", exact: true }).first().click();
        await page.locator(".alarm").waitFor({ state: "detached" });
      },
      WIDE,
    );
  });

  test("a letter is read in the window, and saved as DOCX has the same words", async () => {
    await withPage(
      browser,
      async (page) => {
        await openDecide(page, app);
        await page.locator(".letters button").first().click();
        const letter = page.getByLabel("The letter");
        await letter.waitFor();
        const text = await letter.inputValue();
        const [file] = await Promise.all([
          page.waitForEvent("download"),
          page.getByRole("link", { name: "Save as DOCX" }).click(),
        ]);
        expect(file.suggestedFilename()).toMatch(/^letter-to-.+\.docx$/);
        const { value } = await mammoth.extractRawText({ buffer: readFileSync(await file.path()) });
        expect(bare(value)).toEqual(bare(text));
        const [asked] = await page.locator(".questions-list li p:first-child").allTextContents();
        expect(bare(text).join(" ")).toContain(bare(asked?.replace("?", "") ?? "").join(" "));
      },
      WIDE,
    );
  });

  test("the whole work, a term in all its places, and a work without exercises", async () => {
    const empty = await runningApp({ empty: true });
    await withPage(
      browser,
      async (page) => {
        await page.goto(`${app.address}/decide/work/${work}`);
        await page.locator(".crux-entry").first().waitFor();
        const titles = await page.locator(".of-exercise h2").allTextContents();
        expect(new Set(titles).size).toBe(titles.length);
        expect(titles.length).toBeGreaterThan(1);
        await page.locator(".terms-list a").first().click();
        const marks = readRows(app.store, "marks").filter(({ value }) => value.of === "senses" || value.of === "terms");
        await page.locator(".term-place").first().waitFor();
        expect(await page.locator(".term-place").count()).toBe(marks.length);
        const place = page.locator(".term-place").first();
        await place.getByRole("combobox").selectOption("open");
        await page.getByText("at one place: which sense it has there is not chosen.").waitFor();

        await page.goto(`${empty.address}/decide`);
        await page.getByText("There is no exercise here yet.").waitFor();
      },
      WIDE,
    );
  });
});

async function openDecide(page: Page, { address }: RunningApp, exercise = exercises.change): Promise<void> {
  await page.goto(`${address}/decide/${exercise}`);
  await page.locator(".crux-entry .share-words").first().waitFor();
}

async function countOf(page: Page): Promise<string> {
  return (await page.locator(".count").textContent()) ?? "";
}

async function changed(page: Page, before: string): Promise<void> {
  await page.waitForFunction((words) => document.querySelector(".count")?.textContent !== words, before);
}

/** One possible reading of each of two cruxes, of which each narrows the count. */
function somePossible({ shares }: Count): Pick[] {
  const cruxes = new Set(shares.filter(({ verdict }) => verdict === "possible").map(({ crux }) => crux));
  return [...cruxes]
    .slice(0, 2)
    .flatMap((crux) => shares.find((share) => share.crux === crux && share.verdict === "possible") ?? []);
}

const grouped = (count: bigint): string => count.toLocaleString("en-GB");

/** Words alone, without the signs only the plain text needs. */
const bare = (text: string): string[] =>
  text
    .replace(/^ *(- |-{3,}$)/gm, "")
    .replace(/[*–]/g, "")
    .split(/\s+/)
    .filter((word) => word !== "");
