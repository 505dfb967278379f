/** tests/server/import-accept.test.ts - a text brought in through the running server: what becomes of it, alongside what
 *  is there, and back out again. */

import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Imported, ImportOptions } from "../../schema/api.ts";
import type { RecordOf } from "../../schema/record.ts";
import { allRows, getAttachment, readRows, replay } from "../../server/store/index.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { compareRanked } from "../../shared/rank.ts";
import { describeWithCheckData } from "../kit/check-data.ts";
import { type Reply, type RunningApp, refusalOf, runningApp, send, sendJson } from "../kit/running-app.ts";

const ENGLISH =
  "# Of the circle\n\n7.1\nLet him ride a circle.\n\n7.2\nLet him turn.\n\n# Of the wall\n\n8.1\nAlong the wall.\n";
const LATIN = "7.1\nCirculum equitet.\n\n7.1a\nTum pausam faciat.\n\n7.2\nVertat.\n\n9.1\nIn fine.\n";

let counter = 0;
function nextId(): string {
  counter += 1;
  return `00000000-0000-4000-8000-${String(counter).padStart(12, "0")}`;
}

function bringIn(app: RunningApp, words: string | Buffer, more: Partial<ImportOptions> = {}): Promise<Reply> {
  const options: ImportOptions = {
    id: nextId(),
    who: "a tester",
    name: "book.md",
    text: 1,
    from: "",
    to: "",
    work: { is: "new", title: "A Book", author: "Nobody" },
    layer: { is: "translation", title: "English", by: "a translator", language: "en", urn: "" },
    exercises: "by division",
    title: "",
    ...more,
  };
  const path = `/api/import/accept?options=${encodeURIComponent(JSON.stringify(options))}`;
  return send(app, path, { headers: { "content-type": "application/octet-stream" }, body: words });
}

/** Passages in the order of the work: first reference, exercise by its title, words by layer. */
function bookAsTable({ store }: RunningApp): string[] {
  const layers = new Map(readRows(store, "layers").map(({ value }) => [value.id, value.title]));
  const revisions = new Map(readRows(store, "revisions").map(({ value }) => [value.id, layers.get(value.layer) ?? ""]));
  const exercises = new Map(readRows(store, "exercises").map(({ value }) => [value.id, value.title]));
  const texts = readRows(store, "passageTexts").map(({ value }) => value);
  const passages: RecordOf<"passages">[] = readRows(store, "passages").map(({ value }) => value);
  return passages.sort(compareRanked).map(({ id, exercise, references }) => {
    const words = texts
      .filter(({ passage }) => passage === id)
      .map((text) => `${revisions.get(text.revision)}: ${text.text}`);
    return [
      references.map((one) => formatReference(one)).join("; "),
      exercises.get(exercise ?? "") ?? "-",
      ...words.sort(),
    ].join(" | ");
  });
}

describe("a text brought in", () => {
  test("becomes one change: work, text, exercises by division, passages in order, and the file itself", async () => {
    const app = await runningApp({ empty: true });
    const imported = JSON.parse((await bringIn(app, ENGLISH)).text) as Imported;
    expect(imported).toMatchObject({ change: 1, passages: 3, unmatched: [] });
    expect(bookAsTable(app)).toEqual([
      "7.1 | Of the circle | English: Let him ride a circle.",
      "7.2 | Of the circle | English: Let him turn.",
      "8.1 | Of the wall | English: Along the wall.",
    ]);
    const [revision] = readRows(app.store, "revisions");
    expect(revision?.value).toMatchObject({ from: "book.md", received: "2026-05-04" });
    expect(getAttachment(app.store, revision?.value.attachment ?? "")?.bytes.toString()).toBe(ENGLISH);
    expect((await send(app, `/api/attachments/${revision?.value.attachment}`)).text).toBe(ENGLISH);
    expect(replay(app.store)).toEqual(allRows(app.store));
  });

  test("only the range that was asked for", async () => {
    const app = await runningApp({ empty: true });
    await bringIn(app, ENGLISH, { from: "7.2", to: "8", exercises: "one", title: "Both" });
    expect(bookAsTable(app)).toEqual(["7.2 | Both | English: Let him turn.", "8.1 | Both | English: Along the wall."]);
  });

  test("alongside another text passages meet by reference; others are new at their place, and told", async () => {
    const app = await runningApp({ empty: true });
    const { work } = JSON.parse((await bringIn(app, ENGLISH)).text) as Imported;
    const layer = { is: "original" as const, title: "Latin", by: "", language: "la", urn: "" };
    const reply = await bringIn(app, LATIN, {
      name: "latin.txt",
      work: { is: "there", id: work },
      layer,
      exercises: "none",
    });
    expect(JSON.parse(reply.text)).toMatchObject({ passages: 4, unmatched: ["7.1a", "9.1"] });
    expect(bookAsTable(app)).toEqual([
      "7.1 | Of the circle | English: Let him ride a circle. | Latin: Circulum equitet.",
      "7.1a | - | Latin: Tum pausam faciat.",
      "7.2 | Of the circle | English: Let him turn. | Latin: Vertat.",
      "9.1 | - | Latin: In fine.",
      "8.1 | Of the wall | English: Along the wall.",
    ]);
  });

  test("is taken back whole by one undo", async () => {
    const app = await runningApp({ empty: true });
    const before = allRows(app.store);
    await bringIn(app, ENGLISH);
    const [entry] = JSON.parse((await send(app, "/api/changes")).text);
    expect(entry.group).toBe(entry.id);
    const undone = await sendJson(app, `/api/changes/${entry.id}/undo`, {
      id: nextId(),
      who: "a tester",
      why: "wrong file",
    });
    expect(undone.status).toBe(200);
    expect(allRows(app.store)).toEqual(before);
  });

  test("the same title twice in one work is refused with what to do", async () => {
    const app = await runningApp({ empty: true });
    const { work } = JSON.parse((await bringIn(app, ENGLISH)).text) as Imported;
    const reply = await bringIn(app, ENGLISH, { work: { is: "there", id: work } });
    expect(reply.status).toBe(409);
    expect(refusalOf(reply).sentence).toMatch(
      /“A Book” already has a text called “English”.*give the new text another title/,
    );
  });

  test("other windows hear of it", async () => {
    const app = await runningApp({ empty: true });
    const heard = await fetch(`${app.address}/api/events`);
    const reader = heard.body?.getReader();
    const decoder = new TextDecoder();
    let text = "";
    await bringIn(app, ENGLISH);
    while (!/data: .*\n\n/.test(text)) text += decoder.decode((await reader?.read())?.value);
    const news = JSON.parse(/data: (.*)\n/.exec(text)?.[1] ?? "{}");
    expect(news).toMatchObject({ change: 1, who: "a tester" });
    expect(news.touched.filter((row: { kind: string }) => row.kind === "passages")).toHaveLength(3);
    await reader?.cancel();
  });
});

describeWithCheckData("a published text", (path) => {
  test("a chapter of Xenophon in English and Greek stand side by side, section by section", {
    timeout: 60_000,
  }, async () => {
    const app = await runningApp({ empty: true });
    const english = readFileSync(path("texts", "xenophon", "xen.opuscula_eng.xml"));
    const greek = readFileSync(path("texts", "xenophon", "xen.opuscula_gk.xml"));
    const numberOf = async (bytes: Buffer, name: string, title: RegExp): Promise<number> => {
      const headers = { "content-type": "application/octet-stream" };
      const read = JSON.parse((await send(app, `/api/import/preview?name=${name}`, { headers, body: bytes })).text);
      return read.texts.find((text: { title: string }) => title.test(text.title)).number;
    };
    const first = await bringIn(app, english, {
      name: "english.xml",
      text: await numberOf(english, "english.xml", /Horsemanship/),
      from: "7",
    });
    const { work, passages } = JSON.parse(first.text) as Imported;
    expect(passages).toBe(19);
    const second = await bringIn(app, greek, {
      name: "greek.xml",
      text: await numberOf(greek, "greek.xml", /ippik|equitan|Horsemanship|ἱππικ/i),
      from: "7",
      work: { is: "there", id: work },
      layer: { is: "original", title: "Greek", by: "", language: "grc", urn: "" },
    });
    expect(JSON.parse(second.text)).toMatchObject({ passages: 19, unmatched: [] });
    expect(readRows(app.store, "passages")).toHaveLength(19);
    expect(readRows(app.store, "passageTexts")).toHaveLength(38);
  });
});
