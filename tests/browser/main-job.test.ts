/** tests/browser/main-job.test.ts - the whole main job in a real browser: a TEI chapter comes in, three steps, a crux with
 *  two readings and a question are marked, one reading is adopted, the page is loaded anew, and the drill goes out.
 *  The file is held against the published schema, and every citation against the source text read by other means. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { Citation, Drill } from "../../schema/drill.ts";
import { describeInBrowser, openBrowser, withPage } from "../kit/browser.ts";
import { checkDataPath } from "../kit/check-data.ts";
import { activeGloss, pressOnWords, selectWords } from "../kit/page-words.ts";
import { type RunningApp, runningApp } from "../kit/running-app.ts";
import { temporaryFolder } from "../kit/temporary-store-path.ts";

const OWN_CHAPTER = `<?xml version="1.0" encoding="UTF-8"?>
<TEI xmlns="http://www.tei-c.org/ns/1.0">
  <teiHeader><fileDesc><titleStmt><title>Of the hedge and the pole</title><author>an unnamed master</author></titleStmt>
  <publicationStmt><p>invented</p></publicationStmt><sourceDesc><p>invented</p></sourceDesc></fileDesc>
  <encodingDesc><refsDecl><cRefPattern n="section" matchPattern="(.+)\\.(.+)" replacementPattern="#xpath(/TEI/text/body/div/div[@n='$1']/div[@n='$2'])"/><cRefPattern n="chapter" matchPattern="(.+)" replacementPattern="#xpath(/TEI/text/body/div/div[@n='$1'])"/></refsDecl></encodingDesc></teiHeader>
  <text><body><div type="edition" n="urn:cts:invented:hedge.pole.tr1" xml:lang="en">
    <div type="textpart" subtype="chapter" n="7"><head>Of the pole</head>
      <div type="textpart" subtype="section" n="1"><p>Let him ride along the hedge at a walk, the pole low beside him.</p></div>
      <div type="textpart" subtype="section" n="2"><p>At the oak he turns, and gives it to the other; then he rides back the way he came, and halts.</p></div>
    </div></div></body></text></TEI>`;

/** One run of the job: a file, the part of it to take, and the words to mark. */
interface Job {
  file: string;
  title: string;
  from: string;
  to: string;
  /** The passage to open, by its reference; its words to mark. */
  passage: string;
  steps: [string, string, string];
  crux: string;
  /** URN of the text as the user enters it, or "" where the file has it. */
  urn: string;
  expectedUrn: string;
  /** The words of a section of the source, markup stripped by regular expressions alone. */
  source(section: string): string;
}

const fold = (text: string) => text.replace(/\s+/g, " ").trim();

function ownJob(): Job {
  const file = join(temporaryFolder(), "hedge.xml");
  writeFileSync(file, OWN_CHAPTER);
  return {
    file,
    title: "Of the hedge and the pole",
    from: "7",
    to: "7",
    passage: "7.2",
    steps: ["At the oak he turns", "he rides back the way he came", "and halts"],
    crux: "gives it to the other",
    urn: "",
    expectedUrn: "urn:cts:invented:hedge.pole.tr1:7.2",
    source: (section) => {
      const n = section.split(".")[1];
      return fold(new RegExp(`subtype="section" n="${n}"><p>(.*?)</p>`, "s").exec(OWN_CHAPTER)?.[1] ?? "");
    },
  };
}

/** Xenophon, On the Art of Horsemanship, from the Perseus TEI P4 file of the minor works (CC BY-SA 3.0 US). */
function realJob(path: string): Job {
  return {
    file: path,
    title: "On the Art of Horsemanship",
    from: "7.13",
    to: "7.17",
    passage: "7.17",
    steps: [
      "As soon as the horse faces the straight",
      "push him along at once",
      "practise increasing the pace after turning",
    ],
    crux: "after turning",
    urn: "urn:cts:greekLit:tlg0032.tlg013.perseus-eng2:",
    expectedUrn: "urn:cts:greekLit:tlg0032.tlg013.perseus-eng2:7.17",
    source: (section) => {
      const [chapter, n] = section.split(".");
      const xml = readFileSync(path, "latin1");
      const work = xml.slice(xml.indexOf('<text n="Horse.">'));
      const within = work.slice(work.indexOf(`<milestone unit="chapter" n="${chapter}"/>`));
      const start = within.indexOf(`<milestone unit="section" n="${n}"/>`);
      const words = within.slice(start, within.indexOf('<milestone unit="section"', start + 1));
      return fold(words.replace(/<note.*?<\/note>/gs, "").replace(/<[^>]+>/g, ""));
    },
  };
}

describeInBrowser("the main job", () => {
  let browser: Browser;
  let app: RunningApp;
  beforeAll(async () => {
    browser = await openBrowser();
    app = await runningApp({ empty: true });
  });
  afterAll(async () => browser?.close());

  test("a TEI chapter of our own goes in, and a cited drill comes out", async () => {
    await withPage(browser, (page) => doTheJob(page, app, ownJob()), { viewport: { width: 1400, height: 900 } });
  });

  const real = checkDataPath("texts", "xenophon", "xen.opuscula_eng.xml");
  test.skipIf(real === null)(
    "so does a chapter of a real TEI P4 file (skipped where ../shared/data is missing)",
    async () => {
      await withPage(browser, (page) => doTheJob(page, app, realJob(real ?? "")), {
        viewport: { width: 1400, height: 900 },
      });
    },
  );
});

async function doTheJob(page: Page, { address }: RunningApp, job: Job): Promise<void> {
  // Bring it in: nothing is stored before the passages were seen.
  await page.goto(`${address}/import`);
  await page.setInputFiles("input[type=file]", job.file);
  await page.getByRole("button", { name: "Look at it" }).click();
  await page.getByRole("heading", { name: /as (it|they) would be stored/ }).waitFor();
  const several = page.getByRole("radio", { name: new RegExp(`^${job.title}`) });
  if (await several.count()) await several.check();
  await page.getByRole("textbox", { name: "from", exact: true }).fill(job.from);
  await page.getByRole("textbox", { name: "to", exact: true }).fill(job.to);
  if (job.urn) await page.getByRole("textbox", { name: "CTS URN" }).fill(job.urn);
  await page.getByRole("radio", { name: "one for all of it" }).check();
  const exerciseTitle = page.getByRole("textbox", { name: "Title of the exercise" });
  await exerciseTitle.fill("The exercise brought in");
  await page.getByRole("button", { name: /^Bring in \d+ passages?/ }).click();
  await page.waitForURL(/\/read\//);
  await page
    .locator(".contents")
    .getByRole("link", { name: new RegExp(`^${job.passage.replace(".", "\\.")}\\b`) })
    .click();
  await page.locator(".leaf .ref").filter({ hasText: job.passage }).waitFor();

  // Three steps, by letter; the first gets a title and an act.
  for (const [index, words] of job.steps.entries()) {
    await pressOnWords(page, words, "s");
    await activeGloss(page)
      .locator(".form-head")
      .getByText(String(index + 1))
      .waitFor();
  }
  await page.locator(".head.number").first().click();

  await activeGloss(page).getByRole("button", { name: /^1 / }).click();
  const title = activeGloss(page).getByRole("textbox", { name: "Title of the step" });
  await title.fill("The turn");
  await title.press("Enter");
  await activeGloss(page).getByRole("button", { name: "+ the horse…" }).click();
  await activeGloss(page).getByRole("group", { name: "What the horse does" }).getByRole("button").first().click();
  await activeGloss(page)
    .getByRole("combobox", { name: /figure/i })
    .selectOption({ label: "circle" });
  await expect.poll(() => page.locator(".strip").textContent()).toContain("Stored");

  // A crux with two readings.
  await selectWords(page, job.crux);
  await page.keyboard.press("c");
  await page.getByRole("button", { name: "Open the crux" }).click();
  for (const reading of ["the other hand", "the other side"]) {
    await page.getByPlaceholder(/(first|another) reading, in a few words/).fill(reading);
    await page.getByRole("button", { name: "Add a reading" }).click();
    await page.getByRole("button", { name: `adopt: “${reading}”` }).waitFor();
  }
  // A question about it.
  await selectWords(page, job.crux);
  await page.keyboard.press("q");
  await page.getByRole("textbox", { name: "Question", exact: true }).fill("Is a hand meant, or a side?");
  await page.getByRole("combobox", { name: "Addressed to" }).fill("the translator");
  await page.getByRole("combobox", { name: "About which crux" }).selectOption({ index: 1 });
  await page.getByRole("button", { name: "Ask", exact: true }).click();
  await page.locator(".gloss.questions").waitFor();
  // Adopt, with a reason.
  await page.locator(".gloss.cruxes .gloss-title").click();
  await page.getByRole("button", { name: "adopt: “the other hand”" }).click();
  await page.getByRole("textbox", { name: "It is adopted because" }).fill("one gives to a hand");
  await page.keyboard.press("Enter");
  await page.locator(".desk").getByText("adopted").first().waitFor();
  // The side of the first step's circle hangs on it.
  await page.locator(".head.number").first().click();
  await activeGloss(page).getByRole("button", { name: /^1 / }).click();
  await activeGloss(page)
    .getByRole("button", { name: /to which side.*: else$/i })
    .click();
  await activeGloss(page).getByRole("button", { name: "it is in a crux…" }).click();
  await activeGloss(page).getByRole("button", { name: /^† / }).first().click();
  await page.locator(".strip").getByText("Stored").waitFor();

  // Load it anew: all of it is there.
  await page.reload();
  await page.locator(".gloss.cruxes").getByText("adopted").waitFor();
  // Heads are drawn a moment after the glosses.
  await expect.poll(() => page.locator(".pair .text-pane").first().locator(".head.number").count()).toBe(3);
  await page.locator(".gloss.elements").filter({ hasText: "The turn" }).waitFor();

  // Out: the file, its schema, its citations.
  await page.getByRole("navigation", { name: "Rooms" }).getByRole("link", { name: "Print" }).click();
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByText("Save drill.json").click()]);
  const bytes = readFileSync((await download.path()) ?? "", "utf8");
  const drill = JSON.parse(bytes) as Drill;
  const schema = (await (await fetch(`${address}/schema/drill.schema.json`)).json()) as object;
  const validate = new Ajv2020({ strict: false }).compile(schema);
  expect(validate(drill), JSON.stringify(validate.errors)).toBe(true);

  const steps = drill.elements.filter((element) => element.is === "step");
  expect(steps.map((step) => step.number)).toEqual([1, 2, 3]);
  expect(steps.map((step) => step.citations.map((citation) => citation.quote))).toEqual(
    job.steps.map((words) => [words]),
  );
  expect(steps[0]?.actions.map((action) => action.text).join()).toContain("circle");
  expect(steps[0]?.cruxes.map((crux) => crux.taken?.title)).toEqual(["the other hand"]);
  expect(steps[0]?.cruxes.flatMap((crux) => crux.others.map((other) => other.title))).toEqual(["the other side"]);
  expect(drill.questions.map((question) => question.text)).toEqual(["Is a hand meant, or a side?"]);
  for (const citation of citationsIn(drill)) {
    expect(citation.reference).toBe(job.passage);
    const source = job.source(citation.reference);
    expect(source.slice(citation.from, citation.to)).toBe(citation.quote);
    expect(citation.urn?.startsWith(job.expectedUrn)).toBe(true);
  }
}

/** Every citation of a drill, wherever it stands. */
function citationsIn(drill: Drill): Citation[] {
  const found: Citation[] = [];
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const item of value) walk(item);
    else if (typeof value === "object" && value !== null) {
      if ("quote" in value && "reference" in value && "from" in value) found.push(value as Citation);
      for (const inner of Object.values(value)) walk(inner);
    }
  };
  walk(drill);
  expect(found.length).toBeGreaterThanOrEqual(4);
  return found;
}
