/** tests/publish/letter.test.ts - letters with open questions: what stands in them, the same words as text and as DOCX, the same
 *  bytes from window and command line, and no clock. */
import mammoth from "mammoth";
import { beforeAll, describe, expect, test } from "vitest";
import type { RecordOf } from "../../schema/record.ts";
import { demoBook } from "../../server/demo/book.ts";
import { letterTo } from "../../server/publish/letter.ts";
import { letterText } from "../../server/publish/letter-text.ts";
import { readBundle, readRows } from "../../server/store/index.ts";
import { fromCommandLine } from "../kit/from-command-line.ts";
import { NOW, type Reply, type RunningApp, refusalOf, runningApp, send, sendJson } from "../kit/running-app.ts";

const { work } = demoBook();
let app: RunningApp;
/** Every letter as the window gets it, by addressee: the text, and the bytes of the DOCX. */
const letters = new Map<string, { text: Reply; docx: Reply }>();
beforeAll(async () => {
  app = await runningApp();
  for (const to of addressees()) {
    letters.set(to, { text: await send(app, letterPath(to, "txt")), docx: await send(app, letterPath(to, "docx")) });
  }
}, 120_000);

const openQuestions = () =>
  readRows(app.store, "questions")
    .map(({ value }) => value)
    .filter(({ state, to }) => state.is === "open" && to !== "");
const addressees = () => [...new Set(openQuestions().map(({ to }) => to))];
const letterPath = (to: string, as: string) => `/api/works/${work}/letter?to=${encodeURIComponent(to)}&as=${as}`;
const asText = (to: string) => letters.get(to)?.text.text ?? "";

/** Words alone, without the signs that only the plain text needs, and without its line breaks. */
const bare = (text: string) =>
  text
    .replace(/^ *(- |-{3,}$)/gm, "")
    .replace(/[*–]/g, "")
    .split(/\s+/)
    .filter((word) => word !== "");

describe("a letter", () => {
  test("has every open question of its addressee, and of nobody else, each with its words and readings", () => {
    expect(addressees().length).toBeGreaterThan(1);
    for (const to of addressees()) {
      const words = bare(asText(to)).join(" ");
      for (const question of openQuestions()) {
        const asked = bare(question.text).join(" ");
        if (question.to !== to) {
          expect(words).not.toContain(asked);
          continue;
        }
        expect(words).toContain(asked);
        for (const quote of quotesOf(question)) expect(words).toContain(bare(quote).join(" "));
        const readings = readRows(app.store, "readings").filter(({ value }) => value.crux === question.crux);
        for (const { value } of readings) {
          if (value.status.is !== "ruled out") expect(words).toContain(bare(value.title).join(" "));
        }
      }
    }
  });

  function quotesOf(question: RecordOf<"questions">): string[] {
    const marks = readRows(app.store, "marks").filter(
      ({ value }) => value.of === "questions" && value.target === question.id,
    );
    return readRows(app.store, "anchors").flatMap(({ value }) =>
      value.is === "text" && marks.some((mark) => mark.value.id === value.mark) ? [value.quote] : [],
    );
  }

  test("as DOCX has the very words of the text, in the same order", async () => {
    for (const [to, { docx }] of letters) {
      const { bytes, headers } = docx;
      expect(headers["content-type"]).toBe("application/vnd.openxmlformats-officedocument.wordprocessingml.document");
      const { value, messages } = await mammoth.extractRawText({ buffer: bytes });
      expect(messages).toEqual([]);
      expect(bare(value)).toEqual(bare(asText(to)));
    }
  });

  test("is the same, byte for byte, from the window and from the command line, now and later", async () => {
    const title = readRows(app.store, "works")[0]?.value.title ?? "";
    const [to = ""] = addressees();
    const first = letters.get(to);
    expect(await fromCommandLine(app, "letter", title, to)).toEqual(first?.text.bytes);
    // A zip archive tells time in steps of two seconds.
    await new Promise((done) => setTimeout(done, 2100));
    expect(await fromCommandLine(app, "letter", title, to, "--as", "docx")).toEqual(first?.docx.bytes);
  });

  test("keeps to lines that a mail keeps", () => {
    for (const to of addressees()) {
      for (const line of asText(to).split("\n")) expect([...line].length, line).toBeLessThanOrEqual(76);
    }
  });

  test("a question that is answered is in it no longer", async () => {
    const own = await runningApp();
    const [question] = openQuestions();
    if (question === undefined) throw new Error("The invented book asks something.");
    const rows = () => {
      const bundle = readBundle(own.store, { work });
      if (!bundle.ok) throw new Error(bundle.refusal.error.sentence);
      return bundle.value.rows;
    };
    const before = letterText(letterTo(rows(), work, question.to) ?? []);
    const state = { is: "answered", on: "2026-05-04", sitting: null, answer: "so it is" };
    const edits = [{ do: "set", kind: "questions", id: question.id, base: 1, fields: { state } }];
    const change = {
      id: "0190c000-0000-7000-8000-0000000000aa",
      who: "a test",
      why: "",
      sitting: null,
      group: null,
      edits,
    };
    expect((await sendJson(own, "/api/changes", change)).status, NOW).toBe(200);
    expect(bare(before).join(" ")).toContain(question.text);
    expect(bare(letterText(letterTo(rows(), work, question.to) ?? [])).join(" ")).not.toContain(question.text);
  });

  test.each<[name: string, path: string, status: number, sentence: RegExp]>([
    [
      "somebody who is asked nothing",
      letterPath("the cook", "txt"),
      404,
      /asked of “the cook”. Open questions are addressed to “/,
    ],
    ["another form", letterPath("Y. Varne", "pdf"), 422, /as/],
    ["nobody", `/api/works/${work}/letter`, 422, /to/],
    [
      "a work that is not there",
      "/api/works/0190c000-0000-7000-8000-000000000000/letter?to=a",
      404,
      /no work with the id/,
    ],
  ])("%s is refused", async (_name, path, status, sentence) => {
    const reply = await send(app, path);
    expect(reply.status).toBe(status);
    expect(refusalOf(reply).sentence).toMatch(sentence);
  });
});
