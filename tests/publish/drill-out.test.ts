/** tests/publish/drill-out.test.ts - drill.json: the same bytes from window and command line, valid against the published
 *  schema, every quotation from the texts as they stand; and the same paper from both. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import Ajv2020 from "ajv/dist/2020.js";
import { beforeAll, describe, expect, test } from "vitest";
import type { Citation, Drill } from "../../schema/drill.ts";
import type { PaperAsk } from "../../schema/paper.ts";
import { demoBook } from "../../server/demo/book.ts";
import { repoRoot } from "../../server/paths.ts";
import { AS_ADOPTED } from "../../server/publish/drill-options.ts";
import { drillJson, drillOf } from "../../server/publish/publish-drill.ts";
import { DEFAULT_STYLE } from "../../server/publish/styles/citation-styles.ts";
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
    expect((await fromCommandLine(app, "drill", id)).equals(json)).toBe(true);
    const again = drillJson(app.store, id, AS_ADOPTED);
    expect(again.ok && Buffer.from(again.value).equals(json)).toBe(true);
  });

  test("is valid against the published schema", async () => {
    const schema = JSON.parse(readFileSync(join(repoRoot, "schema", "published", "drill.schema.json"), "utf8"));
    const validate = new Ajv2020({ strict: false, allErrors: true, validateFormats: false }).compile(schema);
    const drill: Drill = JSON.parse((await send(app, `/api/exercises/${id}/drill.json`)).text);
    validate(drill);
    expect(validate.errors).toBeNull();
    expect(validate({ ...drill, colour: "red" })).toBe(false);
  });

  test("quotes what stands in the texts now", () => {
    const texts = readRows(app.store, "passageTexts").map(({ value }) => value.text);
    for (const { quote, state } of allCitations(drillNow(id))) {
      expect(state).not.toBe("lost");
      expect(texts.some((text) => text.includes(quote))).toBe(true);
    }
  });
});

test.each(["pdf", "docx", "html"])(
  "a paper as %s has the same bytes from the window and the command line",
  async (form) => {
    const ask: PaperAsk = {
      kind: "ride sheet",
      parts: [{ exercise: exercises.circle, from: null, to: null, variant: null }],
      size: "A4",
      way: "mounted",
      choice: [],
      notesAt: "foot",
      style: DEFAULT_STYLE,
      occasion: "for the Tuesday class",
    };
    const sent = await send(app, `/api/paper.${form}?ask=${encodeURIComponent(JSON.stringify(ask))}`);
    expect(sent.headers["content-security-policy"]).toMatch(/default-src 'none'.*frame-ancestors 'self'/);
    expect(sent.headers["x-content-type-options"]).toBe("nosniff");
    const asked = ["paper", "ride-sheet", exercises.circle, "--as", form, "--occasion", ask.occasion];
    expect((await fromCommandLine(app, ...asked)).equals(sent.bytes)).toBe(true);
  },
);

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
