/** tests/browser/ride.test.ts - the Ride room in a real browser, on the invented book: it plays, is scrubbed, a finding leads
 *  to its moment and its words, by keyboard alone, on a phone, with less motion; what is set here is stored. */
import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { allRows } from "../../server/store/index.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { type RunningApp, runningApp, sendJson } from "../kit/running-app.ts";

const WIDE = { viewport: { width: 1400, height: 900 } };
const MOVING = { ...WIDE, reducedMotion: "no-preference" } as const;

describeInBrowser("the Ride room", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp();
  });
  afterAll(async () => browser?.close());

  test("plays, pauses, scrubs, and moves only what moves", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "circle about the well");
        const [first, line] = [await horseAt(page), await page.locator(".the-path").first().innerHTML()];
        await page.getByRole("button", { name: "play", exact: true }).click();
        await expect.poll(() => horseAt(page)).not.toBe(first);
        expect(await page.locator(".the-path").first().innerHTML()).toBe(line);
        await page.getByRole("button", { name: "pause" }).click();
        await page.getByRole("button", { name: "play", exact: true }).waitFor();
        await page.waitForTimeout(100);
        const stopped = await horseAt(page);
        await page.waitForTimeout(200);
        expect(await horseAt(page)).toBe(stopped);

        await scrubTo(page, 0.5);
        expect(await horseAt(page)).not.toBe(stopped);
        const playhead = await page
          .locator(".playhead")
          .evaluate((element) => (element as HTMLElement).style.transform);
        expect(Number(/translateX\(([\d.]+)%\)/.exec(playhead)?.[1])).toBeCloseTo(50, 0);
        const step = (await page.locator(".now-step").textContent()) ?? "";
        expect(step).toMatch(/^Step \d/);
        expect(await page.locator(".spoken[aria-live]").textContent()).toContain(step.trim());
        // The words of the step are washed, and some of them lit.
        expect(await page.locator(".lit-text mark").count()).toBeGreaterThan(0);

        // Looping: the turn is short, and at double speed it is over long before one stops looking.
        for (let on = 0; on < 9 && !(await page.locator(".now-step").textContent())?.includes("The turn"); on += 1) {
          await page.getByRole("button", { name: "On a step" }).click();
        }
        await page.getByLabel("loop this step").check();
        await page.getByLabel("double").check();
        await page.getByRole("button", { name: "play", exact: true }).click();
        await page.waitForTimeout(3000);
        expect(await page.locator(".now-step").textContent()).toContain("The turn");
        await page.getByRole("button", { name: "pause" }).waitFor();
      },
      MOVING,
    );
  });

  test("a finding leads to its moment, its words, and its passage in Read", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "change upon the wall");
        await page.getByRole("button", { name: "ride the first all the same" }).click();
        const finding = page
          .locator(".finding")
          .filter({ has: page.locator("a") })
          .first();
        const sentence = (await finding.locator(".sentence").textContent()) ?? "";
        const [, reference, quote] = /\(([^)]*)\) says “([^”…]*)/.exec(sentence) ?? [];
        await finding.locator(".sentence").click();
        const step = /Step (\d+)/.exec(sentence)?.[1];
        expect(await page.locator(".now-step").textContent()).toMatch(new RegExp(`^Step ${step}\\b`));
        expect(await page.locator(".passage-now > .ref span").first().textContent()).toBe(reference);
        expect(squeezed(await page.locator(".lit-text mark").allTextContents())).toContain(squeezed([quote ?? "?"]));
        expect(await page.locator(".finding-place").count()).toBe(1);
        await finding.getByRole("link").click();
        await page
          .locator(".leaf .ref")
          .filter({ hasText: reference ?? "?" })
          .waitFor();
      },
      WIDE,
    );
  });

  test("a finding is set aside with its reason and taken up again; a rule can be asked no more", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "change upon the wall");
        await page.getByRole("button", { name: "ride the first all the same" }).click();
        const finding = page.locator(".finding.bars").first();
        const sentence = (await finding.locator(".sentence").textContent()) ?? "";
        await finding.getByRole("button", { name: "set aside…" }).click();
        await page.keyboard.type("tried at the walk, and it goes");
        await page.keyboard.press("Enter");
        const waived = page.locator(".finding.waived").filter({ hasText: "tried at the walk" }).first();
        await waived.waitFor();
        expect(await waived.locator(".sentence").textContent()).toBe(sentence);
        // What is written shows at once; it is stored a moment later.
        await expect
          .poll(() => allRows(app.store).waivers?.map(({ value }) => value.reason))
          .toEqual(["tried at the walk, and it goes"]);
        await waived.getByRole("button", { name: "take it up again" }).click();
        await expect.poll(() => page.locator(".finding.waived").count()).toBe(0);

        await page.getByRole("button", { name: "see and set them" }).click();
        const table = page.locator(".rules-table");
        expect(await table.evaluate((element) => element.getBoundingClientRect().top)).toBeLessThan(200);
        const rule = page.getByLabel(/^A breach of: The horse does not turn toward its own point/);
        const before = rulesKept(app);
        await rule.selectOption("off");
        await expect.poll(() => page.getByText("into its own point").count()).toBe(0);
        await expect.poll(() => rulesKept(app)).toEqual([...before, "own-point: off"].sort());
        // Back at what is usual nothing is kept of it.
        await rule.selectOption("bars");
        await expect.poll(() => page.getByText("into its own point").count()).toBeGreaterThan(0);
        await expect.poll(() => rulesKept(app)).toEqual(before);
      },
      WIDE,
    );
  });

  test("by keyboard alone: play, step, reach a finding, go to its words", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "change upon the wall");
        await page.getByRole("button", { name: "ride the first all the same" }).press("Enter");
        await page.locator(".finding.bars").first().waitFor();
        await page.keyboard.press("ArrowRight");
        expect(await page.locator(".spoken[aria-live]").textContent()).toMatch(/^Step 2/);
        await page.keyboard.press("ArrowLeft");
        expect(await page.locator(".spoken[aria-live]").textContent()).toMatch(/^Step 1/);
        await page.keyboard.press("Space");
        await page.getByRole("button", { name: "pause" }).waitFor();
        await page.keyboard.press("Space");
        await page.getByRole("button", { name: "play", exact: true }).waitFor();
        await tabTo(page, ".finding:has(a) .sentence");
        await page.keyboard.press("Enter");
        expect(await page.locator(".finding.on").count()).toBe(1);
        expect(await page.locator(".lit-text mark").count()).toBeGreaterThan(0);
        await tabTo(page, ".readings-ridden select");
      },
      MOVING,
    );
  });

  test("on a phone: all of it in one column, large targets, lanes as a list", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "circle about the well");
        const width = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(width).toBeLessThanOrEqual(390);
        for (const name of ["Back a step", "play", "On a step"]) {
          const box = await page.getByRole("button", { name, exact: true }).boundingBox();
          expect(box?.height, name).toBeGreaterThanOrEqual(56);
          expect(box?.width, name).toBeGreaterThanOrEqual(56);
        }
        expect(await page.locator(".lanes").isVisible()).toBe(false);
        const horse = page.locator(".lanes-now > div").first();
        const before = await horse.textContent();
        for (let step = 0; step < 3; step += 1) await page.getByRole("button", { name: "On a step" }).tap();
        expect(await horse.textContent()).not.toBe(before);
        const plan = await page.locator(".plan").boundingBox();
        expect(plan?.width).toBeGreaterThan(340);
      },
      { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
    );
  });

  test("with less motion it goes from moment to moment, and stands still between", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "circle about the well");
        await page.getByLabel("double").check();
        await page.getByRole("button", { name: "play", exact: true }).click();
        const seen = new Set<string>();
        for (let look = 0; look < 40; look += 1) {
          seen.add(await horseAt(page));
          await page.waitForTimeout(50);
        }
        // In two seconds of watching a gliding horse would have been in as many places as one looked.
        expect(seen.size).toBeLessThan(8);
      },
      WIDE,
    );
  });

  test("two readings together, riders that touch, and the plan as a file", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "circle about the well");
        expect(await page.locator(".line.soft").count()).toBe(0);
        await page.getByLabel("Beside it, in soft ink").selectOption({ label: "twice, as in B" });
        expect(await page.locator(".line.soft").count()).toBeGreaterThan(0);
        expect(await page.locator(".lane.soft").count()).toBeGreaterThan(0);
        expect(await page.locator(".two").textContent()).toMatch(
          /once, as in A.*twice, as in B.*In the second, at step 1: horse “twice” \(in the first “once”\)/,
        );
        expect(await page.locator(".lane .different").count()).toBe(2);
        expect(await page.locator(".differences path").count()).toBeGreaterThan(0);

        await page.getByRole("button", { name: "Add a rider" }).click();
        expect(await page.locator(".placed").textContent()).toMatch(/B then keeps a horse’s length from the others/);
        expect(await page.locator(".near-pairs .touch").count()).toBe(0);
        await page.getByLabel("In what rider B is set off").selectOption("metres behind");
        await page.getByLabel("How far rider B is set off").fill("5");
        expect(await page.locator(".placed").count()).toBe(0);
        await page.getByLabel("How rider B rides it").selectOption("mirrored");
        const near = page.locator(".near-pairs li").first();
        expect(await near.textContent()).toMatch(/^A and B: they touch at \d+:\d\d, \S+/);
        await near.getByRole("button", { name: "go there" }).click();
        const at = /at (\d+:\d\d),/.exec((await near.textContent()) ?? "")?.[1];
        expect(await page.locator(".transport .time b").textContent()).toBe(at);
        expect(await page.locator(".nearest").count()).toBe(1);

        const [file] = await Promise.all([
          page.waitForEvent("download"),
          page.getByRole("button", { name: "save this moment as SVG" }).click(),
        ]);
        expect(file.suggestedFilename()).toMatch(/^of-the-circle-about-the-well-\d+m\d+s\.svg$/);
        const svg = readFileSync(await file.path(), "utf8");
        expect(svg).toContain('xmlns="http://www.w3.org/2000/svg"');
        expect(svg).not.toMatch(/class=|var\(|calc\(|NaN/);
        for (const station of ["the gate", "the well"]) expect(svg).toContain(station);
      },
      WIDE,
    );
  });

  test("what nobody settled is shown by its first reading, unless that cannot be ridden; then it is said which is shown and why", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "change upon the wall");
        const said = page.locator(".shown-instead");
        await said.waitFor();
        expect(await said.textContent()).toMatch(
          /The other hand, or the other side: the first reading of step 3 cannot be ridden, so “to the other side, in the same hand” is shown\. Nobody has settled it\./,
        );
        expect(await page.locator(".finding.bars:not(.unsure)").count()).toBe(0);
        // What is ridden is not offered beside itself.
        const beside = page.getByLabel("Beside it, in soft ink").locator("option");
        expect(await beside.allTextContents()).not.toContain("to the other side, in the same hand");
        await said.getByRole("button").click();
        await page.locator(".finding.bars").first().waitFor();
        await page.getByLabel("The other hand, or the other side").selectOption("");
        await said.waitFor();
        expect(await page.locator(".finding.bars:not(.unsure)").count()).toBe(0);
        // Two readings that do the same to the ride are one line, and it is said.
        await openRide(page, app, "knot that two ride");
        await page.getByLabel("Beside it, in soft ink").selectOption({ label: "when he comes into the knot" });
        expect(await page.locator(".two").textContent()).toMatch(
          /They differ in nothing that is ridden\. One line is drawn for both\./,
        );
        expect(await page.locator(".differences path").count()).toBe(0);
      },
      WIDE,
    );
  });

  test("findings of the two spears lead to the words that matter, and nothing that is pressed moves meanwhile", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "two spears");
        await page.locator(".shown-instead").waitFor();
        const aside = "draws the point aside, to the side of the hand that has it";
        for (const [step, words] of [
          [5, [aside, "to the right, he turns"]],
          [7, [aside]],
        ] as const) {
          const finding = page
            .locator(".finding")
            .filter({ hasText: new RegExp(`^Step ${step}, .*into its own point`) })
            .first();
          const places = () =>
            Promise.all(
              [".finding .sentence >> nth=1", ".play .go", ".scrub input"].map((one) =>
                page.locator(one).boundingBox(),
              ),
            );
          await finding.locator(".sentence").scrollIntoViewIfNeeded();
          const before = await places();
          await finding.locator(".sentence").click();
          expect(await places()).toEqual(before);
          expect(await page.locator(".now-step").textContent()).toMatch(new RegExp(`^Step ${step}\\b`));
          const lit = squeezed(await page.locator(".lit-text mark").allTextContents());
          for (const quote of words) expect(lit).toContain(quote);
          // The words stay in view however far down the finding stands.
          expect(await page.locator(".lit-text mark").first().isVisible()).toBe(true);
          const [shown, first] = await Promise.all(
            [page.locator(".beside-the-ground"), page.locator(".passage-now")].map((one) => one.boundingBox()),
          );
          expect(first?.y).toBeGreaterThanOrEqual((shown?.y ?? 0) - 1);
        }
      },
      WIDE,
    );
  });

  test("lanes tell whole words, and all of them where one points; the step that is ridden has its number", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "change upon the wall");
        await page.locator(".shown-instead").waitFor();
        await page.evaluate(() => document.fonts.ready);
        // Words are fitted once more when their face has come in.
        const cut = () =>
          page
            .locator(".lane .span > span")
            .evaluateAll((all) =>
              all.filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.textContent),
            );
        await expect.poll(cut, { timeout: 10_000 }).toEqual([]);
        const span = page.locator(".lane .span").filter({ hasText: "…" }).first();
        const short = ((await span.textContent()) ?? "").replace(" …", "");
        await span.hover();
        const told = (await page.locator(".lane-told").textContent()) ?? "";
        expect(told).toMatch(/^horse, \d+:\d\d to \d+:\d\d: /);
        expect(told).toContain(short);
        expect(told).not.toContain("…");
        for (let step = 2; step <= 9; step += 1) {
          await page.keyboard.press("ArrowRight");
          const number = /^Step (\d+)/.exec((await page.locator(".now-step").textContent()) ?? "")?.[1];
          expect(await page.locator(".scrub .marks .now").textContent()).toBe(number);
          expect(await page.locator(".axis .now").textContent()).toBe(number);
          const crowded = await page.locator(".scrub .marks span:not(.tick)").evaluateAll((all) => {
            const boxes = all.map((one) => one.getBoundingClientRect()).sort((a, b) => a.left - b.left);
            return boxes.filter((box, at) => at > 0 && box.left < (boxes[at - 1]?.right ?? 0)).length;
          });
          expect(crowded).toBe(0);
        }
      },
      WIDE,
    );
  });

  test("two parts are ridden at once, the second waiting for the first; a horse's own speed goes before the published", async () => {
    await withPage(
      browser,
      async (page) => {
        await openRide(page, app, "knot that two ride");
        const letters = page.locator(".rider-letter text");
        expect((await letters.allTextContents()).sort()).toEqual(["A", "B"]);
        const second = page.locator(".riders .moving-rider").first();
        const waits = await second.getAttribute("transform");
        await page.getByLabel("Moment of the ride").fill("12");
        expect(await second.getAttribute("transform")).toBe(waits);
        await page.getByLabel("Moment of the ride").fill("60");
        expect(await second.getAttribute("transform")).not.toBe(waits);
        expect(await page.locator(".near-pairs li").count()).toBeGreaterThan(0);

        await page.getByLabel("Whose part rider A rides").first().selectOption("the second");
        await page.locator(".lane .span").filter({ hasText: "waits, supplied" }).first().waitFor();
        await page.getByText(/^It waits for “/).waitFor();
        await page.getByRole("button", { name: "Go to step 4" }).click();
        expect(await page.locator(".threat .weapon").count()).toBe(1);

        const fast = page.getByRole("region", { name: "How fast it is ridden" });
        expect(await fast.getByRole("listitem").first().textContent()).toMatch(
          /^easy canter: 3\.91 m\/s\..*from memory/,
        );
        const lasted = await page.getByLabel("Moment of the ride").getAttribute("max");
        await fast.getByLabel("canter").fill("5");
        await fast.getByLabel("canter").press("Enter");
        await expect
          .poll(() => fast.getByRole("listitem").first().textContent())
          .toMatch(/5\.00 m\/s\. Measured on this horse/);
        expect(Number(await page.getByLabel("Moment of the ride").getAttribute("max"))).toBeLessThan(Number(lasted));
      },
      WIDE,
    );
  });

  test("an exercise of which nothing is treated says so, and so does a book without exercises", async () => {
    const [begun] = allRows(app.store).exercises ?? [];
    if (!begun) throw new Error("The invented book has exercises.");
    const value = {
      ...begun.value,
      id: "0190c000-0000-7000-8000-00000000e001",
      rank: "zz",
      label: "",
      title: "Not begun",
    };
    const change = {
      id: "0190c000-0000-7000-8000-00000000e002",
      who: "a test",
      why: "",
      sitting: null,
      group: null,
      edits: [{ do: "create", kind: "exercises", value }],
    };
    expect((await sendJson(app, "/api/changes", change)).status).toBe(200);
    const empty = await runningApp({ empty: true });
    await withPage(browser, async (page) => {
      await page.goto(`${app.address}/ride/${value.id}`);
      await page.getByText("Nothing of this exercise is treated yet.").waitFor();
      await page.goto(`${empty.address}/ride`);
      await page.getByText("There is no exercise to ride yet.").waitFor();
    });
  });
});

async function openRide(page: Page, { address }: RunningApp, title: string): Promise<void> {
  await page.goto(`${address}/ride`);
  const exercises = page.locator(".which select");
  const value = await exercises.locator("option").filter({ hasText: title }).getAttribute("value");
  await exercises.selectOption(value);
  await page.waitForURL(`**/ride/${value}`);
  await page.getByRole("button", { name: "play", exact: true }).waitFor();
  await page.locator(".plan .moving-rider[transform]").first().waitFor();
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
}

const rulesKept = ({ store }: RunningApp) =>
  (allRows(store).rules ?? []).map(({ value }) => `${value.code}: ${value.severity}`).sort();

async function horseAt(page: Page): Promise<string> {
  return (await page.locator(".riders .moving-rider").last().getAttribute("transform")) ?? "";
}

/** Drags the thumb to a share of the ride. */
async function scrubTo(page: Page, share: number): Promise<void> {
  await page.getByLabel("Moment of the ride").evaluate((element, part) => {
    const input = element as HTMLInputElement;
    input.value = String(Number(input.max) * part);
    input.dispatchEvent(new Event("input", { bubbles: true }));
  }, share);
}

/** Presses Tab until something has the focus. Throws Error when it is not reached. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let press = 0; press < 80; press += 1) {
    await page.keyboard.press("Tab");
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
  }
  throw new Error(`Tab does not come to ${selector}.`);
}

const squeezed = (texts: readonly string[]) => texts.join(" ").replace(/\s+/g, " ").trim();
