/** tests/publish/drill-out.test.ts - drill.json and the page: the same bytes from window and command line, valid against
 *  the published schema, with every citation on the page. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import { beforeAll, describe, expect, test } from "vitest";
import type { Citation, Drill } from "../../schema/drill.ts";
import { demoBook } from "../../server/demo/book.ts";
import { repoRoot } from "../../server/paths.ts";
import { AS_ADOPTED } from "../../server/publish/drill-options.ts";
import { drillPageOf } from "../../server/publish/drill-page.ts";
import { drillJson, drillOf, drillPage } from "../../server/publish/publish-drill.ts";
import { readRows } from "../../server/store/index.ts";
import { fromCommandLine } from "../kit/from-command-line.ts";
import { type RunningApp, runningApp, send } from "../kit/running-app.ts";

const { exercises } = demoBook();
let app: RunningApp;
beforeAll(async () => {
  app = await runningApp();
});

function drillNow(exercise: string): Drill {
  const drill = drillOf(app.store, exercise, AS_ADOPTED);
  if (!drill.ok) throw new Error(drill.refusal.error.sentence);
  return drill.value;
}

describe.each(Object.entries(exercises))("the exercise “%s”", (_name, id) => {
  test("gives the same bytes from the window and the command line, each time", async () => {
    const json = (await send(app, `/api/exercises/${id}/drill.json`)).bytes;
    const page = (await send(app, `/api/exercises/${id}/drill.html?way=mounted`)).bytes;
    expect((await fromCommandLine(app, "drill", id)).equals(json)).toBe(true);
    expect((await fromCommandLine(app, "drill", id, "--page", "--way", "mounted")).equals(page)).toBe(true);
    const again = [drillJson(app.store, id, AS_ADOPTED), drillPage(app.store, id, AS_ADOPTED)];
    expect(again.map((made) => made.ok && Buffer.from(made.value))).toEqual([json, page]);
  });

  test("is valid against the published schema", async () => {
    const schema = JSON.parse(readFileSync(join(repoRoot, "schema", "published", "drill.schema.json"), "utf8"));
    const validate = new Ajv2020({ strict: false, allErrors: true, validateFormats: false }).compile(schema);
    const drill: Drill = JSON.parse((await send(app, `/api/exercises/${id}/drill.json`)).text);
    validate(drill);
    expect(validate.errors).toBeNull();
    expect(validate({ ...drill, colour: "red" })).toBe(false);
  });

  test("has every citation on its page", () => {
    const drill = drillNow(id);
    const page = wordsOf(drillPageOf(drill));
    const citations = allCitations(drill);
    expect(citations.length).toBeGreaterThan(2);
    for (const { reference, quote } of citations) {
      expect(page).toContain(reference);
      expect(page).toContain(quote.replace(/\s+/g, " ").trim());
    }
  });

  test("says on its page what is treated, and the caution", () => {
    const drill = drillNow(id);
    const page = wordsOf(drillPageOf(drill));
    expect(page).toContain(drill.treated.sentence);
    expect(page.includes("Words nothing is said of yet")).toBe(drill.treated.unmarked.length > 0);
    for (const { quote } of drill.treated.unmarked) expect(page).toContain(quote);
    expect(page).toContain(drill.caution);
  });

  test("quotes what stands in the texts now", () => {
    const texts = readRows(app.store, "passageTexts").map(({ value }) => value.text);
    for (const { quote, state } of allCitations(drillNow(id))) {
      expect(state).not.toBe("lost");
      expect(texts.some((text) => text.includes(quote))).toBe(true);
    }
  });
});

describe("the page", () => {
  test("needs nothing else: no script, no address but its own places", () => {
    const page = drillPageOf(drillNow(exercises.circle));
    expect(page).not.toMatch(/<script|<link|<img|@import|src=|https?:/);
    expect([...page.matchAll(/href="([^"]*)"/g)].every(([, to]) => to?.startsWith("#crux-"))).toBe(true);
    expect([...page.matchAll(/url\(([^)]{0,30})/g)].every(([, to]) => to?.startsWith("data:font/woff2;base64,"))).toBe(
      true,
    );
    expect(Buffer.byteLength(page)).toBeLessThan(400_000);
  });

  test("takes no words for tags", () => {
    const drill = drillNow(exercises.circle);
    const title = `<script>alert("1 & 2")</script>`;
    const page = drillPageOf({ ...drill, exercise: { ...drill.exercise, title } });
    expect(page).not.toContain("<script");
    expect(page).toContain("&lt;script&gt;alert(&quot;1 &amp; 2&quot;)");
  });

  test("another reading changes the sheet, and says that it was chosen", async () => {
    const crux = drillNow(exercises.circle).elements.flatMap(({ cruxes }) => cruxes)[0];
    const other = crux?.others[0];
    const path = `/api/exercises/${exercises.circle}/drill.html?choice=${crux?.crux}:${other?.reading}`;
    const page = wordsOf((await send(app, path)).text);
    expect(page).toMatch(new RegExp(`${escapedForPattern(other?.title ?? "?")} \\(chosen for this sheet`));
    expect(page).not.toBe(wordsOf(drillPageOf(drillNow(exercises.circle))));
  });

  test("is shown in the window's frame and runs nothing", async () => {
    const { headers } = await send(app, `/api/exercises/${exercises.circle}/drill.html`);
    expect(headers["content-security-policy"]).toMatch(/default-src 'none'.*frame-ancestors 'self'/);
    expect(headers["x-content-type-options"]).toBe("nosniff");
  });
});

function allCitations(drill: Drill): Citation[] {
  const ofCrux = (crux: Drill["cruxes"][number]) => crux.citations;
  return [
    ...drill.standing.flatMap(({ citations }) => citations),
    ...drill.elements.flatMap((element) => [
      ...element.citations,
      ...element.values.flatMap(({ citations }) => citations),
      ...element.cruxes.flatMap(ofCrux),
      ...element.actions.flatMap((action) => [
        ...action.citations,
        ...action.values.flatMap(({ citations }) => citations),
      ]),
    ]),
    ...drill.cruxes.flatMap(ofCrux),
    ...drill.questions.flatMap(({ citations }) => citations),
    ...drill.notes.flatMap(({ citations }) => citations),
  ];
}

/** The words of a page without tags, style and fonts; blanks as one. */
function wordsOf(page: string): string {
  const body = page.slice(page.indexOf("<body>"));
  const plain = body
    .replace(/<[^>]*>/g, "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"');
  return plain.replaceAll("&amp;", "&").replace(/\s+/g, " ");
}

function escapedForPattern(words: string): string {
  return words.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}
