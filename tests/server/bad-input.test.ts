/** tests/server/bad-input.test.ts - everything wrong that may be sent: status, code, words; and nothing is half stored.
 *  Long, because it is one table of cases. */
import { beforeAll, describe, expect, test } from "vitest";
import { IMPORT_LIMIT_BYTES } from "../../schema/imported.ts";
import { demoBook } from "../../server/demo/book.ts";
import { readRow } from "../../server/store/index.ts";
import { type RunningApp, refusalOf, runningApp, type Sent, send, sendJson, storeAsText } from "../kit/running-app.ts";

const book = demoBook();
const NOBODY = "00000000-0000-4000-8000-000000000001";
const NEW_ID = "00000000-0000-4000-8000-000000000002";
const change = (edits: unknown[], more: object = {}) => ({
  id: NEW_ID,
  who: "a tester",
  why: "a try",
  sitting: null,
  group: null,
  edits,
  ...more,
});
const json = (body: string, type = "application/json"): Sent => ({ headers: { "content-type": type }, body });
const bytes = (body: string | Uint8Array): Sent => ({ headers: { "content-type": "application/octet-stream" }, body });
const preview = (name: string) => `/api/import/preview?name=${encodeURIComponent(name)}`;
const options = (more: object = {}) => ({
  id: NEW_ID,
  who: "a tester",
  name: "notes.txt",
  text: 1,
  from: "",
  to: "",
  work: { is: "new", title: "Notes", author: "" },
  layer: { is: "original", title: "Notes", by: "", language: "", urn: "" },
  exercises: "none",
  title: "",
  ...more,
});
const accept = (more: object = {}) => `/api/import/accept?options=${encodeURIComponent(JSON.stringify(options(more)))}`;
const tei = (body: string, before = "") =>
  `<?xml version="1.0"?>${before}<TEI xmlns="http://www.tei-c.org/ns/1.0"><teiHeader/><text><body>${body}</body></text></TEI>`;
const BOMB = `<!DOCTYPE TEI [<!ENTITY a "ha">${Array.from({ length: 24 }, (_, index) => `<!ENTITY ${"b".repeat(index + 1)} "&${"b".repeat(index) || "a"};&${"b".repeat(index) || "a"};">`).join("")}]>`;

type Case = [name: string, path: string, sent: Sent, status: number, code: string, words: RegExp];

const CASES: Case[] = [
  ["an address with nothing", "/api/nothing", {}, 404, "address_unknown", /Nothing answers at GET \/api\/nothing/],
  ["a wrong method", "/api/contents", json("{}"), 404, "address_unknown", /POST \/api\/contents/],
  [
    "a schema that is not published",
    "/schema/../package.json",
    {},
    404,
    "address_unknown",
    /drill\.schema\.json|Nothing/,
  ],
  ["a passage that is not there", `/api/passages/${NOBODY}`, {}, 404, "row_unknown", new RegExp(NOBODY)],
  ["an exercise by a word", "/api/exercises/three", {}, 404, "row_unknown", /three/],
  ["the drill of no exercise", `/api/exercises/${NOBODY}/drill.json`, {}, 404, "row_unknown", new RegExp(NOBODY)],
  ["a file that is not kept", "/api/attachments/abc", {}, 404, "attachment_missing", /abc/],
  ["history of no work", `/api/changes?work=${NOBODY}`, {}, 404, "row_unknown", new RegExp(NOBODY)],
  ["history before a word", "/api/changes?before=soon", {}, 422, "body_invalid", /query\.before/],
  [
    "a change to undo that is not there",
    `/api/changes/${NOBODY}/undo`,
    json(JSON.stringify({ id: NEW_ID, who: "x", why: "" })),
    404,
    "change_unknown",
    new RegExp(NOBODY),
  ],
  ["no JSON at all", "/api/changes", json("hello"), 400, "body_not_json", /line 1, column 1/],
  ["JSON that breaks off", "/api/changes", json('{\n  "id": 1,\n  "who" 2}'), 400, "body_not_json", /line 3, column 9/],
  [
    "a word inside JSON",
    "/api/changes",
    json(`{"id": "${"x".repeat(200)}",\n "who": nobody}`),
    400,
    "body_not_json",
    /line 2, column (9|10)/,
  ],
  ["an empty body", "/api/changes", json(""), 400, "body_not_json", /the body is empty/],
  [
    "JSON in another encoding",
    "/api/changes",
    { headers: { "content-type": "application/json" }, body: Buffer.from('{"who":"J\xe9r"}', "latin1") },
    400,
    "body_not_json",
    /UTF-8/,
  ],
  [
    "a form for JSON",
    "/api/changes",
    json("a=1", "application/x-www-form-urlencoded"),
    415,
    "media_type_wrong",
    /application\/json; got “application\/x-www-form/,
  ],
  [
    "an unknown field of a change",
    "/api/changes",
    json(JSON.stringify(change([], { colour: "red" }))),
    422,
    "body_invalid",
    /colour|edits/,
  ],
  [
    "21 MB of JSON",
    "/api/changes",
    json(`"${"x".repeat(21 * 1024 * 1024)}"`),
    413,
    "body_too_large",
    /has 22 MB; at most 20 MB/,
  ],
  [
    "a drill under no reading",
    `/api/exercises/${book.exercises.circle}/drill.json?choice=${NOBODY}:${NOBODY}`,
    {},
    422,
    "reading_of_other_crux",
    /no crux with the id/,
  ],
  [
    "a drill ridden on a bicycle",
    `/api/exercises/${book.exercises.circle}/drill.json?way=bicycle`,
    {},
    422,
    "body_invalid",
    /query\.way/,
  ],
  [
    "a drill with a field too many",
    `/api/exercises/${book.exercises.circle}/drill.json?size=big`,
    {},
    422,
    "body_invalid",
    /size/,
  ],
  [
    "a drill in no version",
    `/api/exercises/${book.exercises.circle}/drill.json?variant=${NOBODY}`,
    {},
    404,
    "row_unknown",
    /version/,
  ],
  [
    "another page writing",
    "/api/changes",
    { headers: { "content-type": "application/json", origin: "http://elsewhere.example" }, body: "{}" },
    403,
    "origin_foreign",
    /elsewhere\.example/,
  ],
  [
    "a page of a file writing",
    "/api/changes",
    { headers: { "content-type": "application/json", origin: "null" }, body: "{}" },
    403,
    "origin_foreign",
    /A page of null/,
  ],
  [
    "a name that was made to point here",
    "/api/contents",
    { headers: { host: "elsewhere.example:80" } },
    403,
    "host_foreign",
    /elsewhere\.example/,
  ],
  ["an empty file", preview("notes.txt"), bytes(""), 422, "file_empty", /“notes\.txt” holds no words/],
  ["only blanks", preview("notes.txt"), bytes(" \n\n\t"), 422, "file_empty", /check that the right file/],
  [
    "broken XML",
    preview("book.xml"),
    bytes(tei("<p>one<p>")),
    422,
    "broken_xml",
    /not well-formed XML: .* at line 1, column/,
  ],
  [
    "XML in another encoding",
    preview("book.xml"),
    bytes(Buffer.from(tei("<p>caf\xe9</p>"), "latin1")),
    415,
    "wrong_encoding",
    /line 1, column/,
  ],
  [
    "an entity bomb",
    preview("book.xml"),
    bytes(tei(`<p>&${"b".repeat(24)};</p>`, BOMB)),
    422,
    "entity_bomb",
    /Nothing was read/,
  ],
  [
    "a picture",
    preview("leaf.txt"),
    bytes(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0])),
    415,
    "file_binary",
    /not a text/,
  ],
  [
    "other XML",
    preview("page.xml"),
    bytes("<html><p>words</p></html>"),
    422,
    "xml_not_tei",
    /outermost element is <html>/,
  ],
  [
    "a file as a form",
    preview("notes.txt"),
    json("x", "multipart/form-data; boundary=x"),
    415,
    "media_type_wrong",
    /Send the file itself/,
  ],
  ["a preview without a name", "/api/import/preview", bytes("7.1\nwords"), 422, "body_invalid", /query\.name/],
  ["an import without options", "/api/import/accept", bytes("7.1\nwords"), 422, "body_invalid", /\?options=/],
  ["options that are not JSON", "/api/import/accept?options=%7B", bytes("7.1\nwords"), 400, "body_not_json", /line 1/],
  ["an unknown option", accept({ colour: "red" }), bytes("7.1\nwords"), 422, "body_invalid", /colour/],
  ["a text the file has not", accept({ text: 4 }), bytes("7.1\nwords"), 422, "text_unknown", /no text 4/],
  ["a range that is not there", accept({ from: "9" }), bytes("7.1\nwords"), 422, "selection_not_found", /“9”/],
  ["a range that cannot be read", accept({ from: "7.1ff." }), bytes("7.1\nwords"), 422, "selection_unreadable", /7\.1/],
  [
    "a range backwards",
    accept({ from: "8.1", to: "7.1" }),
    bytes("7.1\nwords\n\n8.1\nmore"),
    422,
    "selection_backwards",
    /first place first/,
  ],
  [
    "a URN that is none",
    accept({ layer: { ...options().layer, urn: "urn:isbn:1" } }),
    bytes("7.1\nwords"),
    422,
    "value_invalid",
    /urn:cts:/,
  ],
  [
    "into no work",
    accept({ work: { is: "there", id: NOBODY } }),
    bytes("7.1\nwords"),
    404,
    "row_unknown",
    new RegExp(NOBODY),
  ],
  [
    "a layer of a title that is there",
    accept({ work: { is: "there", id: book.work }, layer: { ...options().layer, title: "Varne, tr." } }),
    bytes("7.1\nwords"),
    409,
    "layer_there",
    /another title/,
  ],
];

describe("what is wrong is refused with a sentence, and nothing is stored", () => {
  let app: RunningApp;
  let before: string;
  beforeAll(async () => {
    app = await runningApp();
    before = storeAsText(app);
  });

  test.each(CASES)("%s", async (_name, path, sent, status, code, words) => {
    const reply = await send(app, path, sent);
    expect([reply.status, refusalOf(reply).code]).toEqual([status, code]);
    expect(refusalOf(reply).sentence + JSON.stringify(refusalOf(reply).issues ?? [])).toMatch(words);
    expect(reply.text).not.toMatch(/\bat .*\.ts:\d+/);
    expect(storeAsText(app)).toBe(before);
  });

  test("all issues of a change are told, not the first alone", async () => {
    const reply = await sendJson(app, "/api/changes", { id: "x", edits: [] });
    expect(reply.status).toBe(422);
    expect(refusalOf(reply).issues?.map(({ where }) => where)).toEqual([
      "id",
      "who",
      "why",
      "sitting",
      "group",
      "edits",
    ]);
  });

  test("an unknown field of a row is told by its path", async () => {
    const edit = { do: "set", kind: "works", id: book.work, base: 1, fields: { colour: "red", title: "" } };
    const reply = await sendJson(app, "/api/changes", change([edit]));
    expect([reply.status, refusalOf(reply).code]).toEqual([422, "value_invalid"]);
    expect(refusalOf(reply).issues?.[0]?.where).toBe("edits[0].fields.colour");
    expect(storeAsText(app)).toBe(before);
  });

  test("a version the row has not reached is refused", async () => {
    const edit = { do: "set", kind: "works", id: book.work, base: 9, fields: { note: "late" } };
    const reply = await sendJson(app, "/api/changes", change([edit]));
    expect([reply.status, refusalOf(reply).code]).toEqual([409, "version_unknown"]);
    expect(storeAsText(app)).toBe(before);
  });
});

describe("what came meanwhile", () => {
  test("the same field shows both; disjoint fields are merged", async () => {
    const app = await runningApp();
    const set = (number: number, fields: object) =>
      sendJson(app, "/api/changes", {
        ...change([{ do: "set", kind: "works", id: book.work, base: 1, fields }]),
        id: `00000000-0000-4000-8000-00000000010${number}`,
      });
    expect((await set(1, { note: "first" })).status).toBe(200);
    const reply = await set(2, { note: "second" });
    expect([reply.status, refusalOf(reply).code]).toEqual([409, "conflict"]);
    expect(refusalOf(reply).conflicts).toMatchObject([
      { field: "note", theirs: "first", yours: "second", who: "a tester" },
    ]);
    const merged = await set(3, { author: "somebody" });
    expect(JSON.parse(merged.text).merged).toMatchObject([{ kind: "works", fields: ["note"] }]);
    expect(readRow(app.store, "works", book.work)?.value).toMatchObject({ note: "first", author: "somebody" });
  });

  test("typing on a stale text is answered with the current one", async () => {
    const app = await runningApp();
    const passage = JSON.parse((await send(app, "/api/contents")).text).works[0].passages[0].passage as string;
    const bundle = JSON.parse((await send(app, `/api/passages/${passage}`)).text);
    const text = bundle.rows.passageTexts.find(
      (row: { value: { passage: string } }) => row.value.passage === passage,
    ).value;
    const insert = (words: string) => [
      { stepType: "replace", from: 1, to: 1, slice: { content: [{ type: "text", text: words }] } },
    ];
    const amend = (number: number, words: string) =>
      sendJson(app, `/api/passages/${passage}/amend`, {
        id: `00000000-0000-4000-8000-00000000020${number}`,
        who: "a tester",
        why: "a slip",
        sitting: null,
        text: text.id,
        steps: insert(words),
      });
    expect((await amend(1, "One. ")).status).toBe(200);
    const before = storeAsText(app);
    const reply = await amend(2, "Two. ");
    expect([reply.status, refusalOf(reply).code]).toEqual([409, "stale_text"]);
    expect(refusalOf(reply).current).toMatchObject({ kind: "passageTexts", value: { number: 2 } });
    expect(JSON.stringify(refusalOf(reply).current)).toContain("One. ");
    expect(storeAsText(app)).toBe(before);
  });
});

test("a file over the limit is refused while it is sent, and stores nothing", async () => {
  const app = await runningApp({ empty: true });
  const before = storeAsText(app);
  const reply = await send(app, accept(), bytes(new Uint8Array(IMPORT_LIMIT_BYTES + 1).fill(97)));
  expect([reply.status, refusalOf(reply).code]).toEqual([413, "file_too_large"]);
  expect(refusalOf(reply).sentence).toMatch(/65 MB; at most 64 MB are read at once\. Bring it in by parts/);
  expect(storeAsText(app)).toBe(before);
});

test("50 MB of text are answered, one way or the other, in a sentence or as passages", {
  timeout: 120_000,
}, async () => {
  const app = await runningApp({ empty: true });
  const paragraph = `${"The horse goes on as before. ".repeat(18)}\n\n`;
  const body = Array.from({ length: 400 }, (_, index) => `7.${index + 1}\n${paragraph.repeat(1)}`).join("");
  const whole = body.repeat(Math.ceil((50 * 1024 * 1024) / body.length));
  const reply = await send(app, preview("long.txt"), bytes(whole));
  if (reply.status === 200) expect(JSON.parse(reply.text).texts[0].passages.length).toBeGreaterThan(400);
  else expect(refusalOf(reply).sentence).toMatch(/by parts/);
});
