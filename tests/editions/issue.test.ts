/** tests/editions/issue.test.ts - an edition is frozen, a reading changes, and the slip says what and why. */
import { beforeEach, describe, expect, test } from "vitest";
import { IssueRequest } from "../../schema/issue.ts";
import type { PaperAsk } from "../../schema/paper.ts";
import { demoBook } from "../../server/demo/book.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { compareEditions, editionLines } from "../../server/publish/editions/compare-editions.ts";
import { issueEdition } from "../../server/publish/editions/issue-edition.ts";
import { plainWords } from "../../server/publish/editions/paper-items.ts";
import { paperOfSlip, slipAgainstNow, storeSlip } from "../../server/publish/editions/slips.ts";
import { buildPaper } from "../../server/publish/papers/build-paper.ts";
import { allRows, getAttachment, readRow, replay, type Store, writeChange } from "../../server/store/index.ts";
import { correctionOf } from "../../shared/text/correction.ts";
import { accepted, emptyStore, NOW, request, set } from "../store/store-builders.ts";
import { idOf } from "./small-paper.ts";

const { exercises, work } = demoBook();
const REASON = "A shaft is given to a hand, and the close of the exercise knows of reins lost in the turn.";

let store: Store;
beforeEach(() => {
  store = emptyStore();
  loadDemo(store, NOW);
});

const sheet = (exercise: string): PaperAsk => ({
  kind: "ride sheet",
  parts: [{ exercise, from: null, to: null, variant: null }],
  size: "A4",
  way: "mounted",
  choice: [],
  notesAt: "foot",
  style: "notes and bibliography",
  occasion: "",
});

const issuing = (name: string, exercise: string): IssueRequest =>
  IssueRequest.parse({
    id: idOf(`change ${name}`),
    edition: idOf(name),
    who: "the editor",
    sitting: null,
    ask: sheet(exercise),
    title: "Of the change upon the wall",
    issued: "2026-10-01",
    forms: ["pdf"],
    recipients: [{ who: "the Tuesday class", on: "2026-10-01" }],
  });

const issue = async (name: string, exercise = exercises.change) =>
  accepted(await issueEdition(store, issuing(name, exercise), { now: NOW }));

/** Adopts a reading of the second exercise with its reason. */
function adopt(title: string): void {
  const reading = allRows(store).readings?.find(({ value }) => value.title === title);
  if (reading === undefined) throw new Error(`No reading “${title}”.`);
  const status = { is: "adopted", on: "2026-10-08", sitting: null, reason: REASON, condition: "" };
  const edit = set("readings", reading.value.id, reading.version, { status });
  accepted(writeChange(store, { ...request(900, [edit]), why: `Adopt “${title}”` }, { now: NOW }));
}

describe("issuing", () => {
  test("numbers editions of a work from 1 and keeps their bytes, choice and model", async () => {
    const first = await issue("a");
    const second = await issue("b", exercises.circle);
    expect([first.number, second.number]).toEqual([1, 2]);
    const row = readRow(store, "editions", idOf("a"))?.value;
    expect(row).toMatchObject({
      work,
      number: 1,
      exercises: [exercises.change],
      recipients: [{ who: "the Tuesday class" }],
    });
    const [paper] = row?.papers ?? [];
    const bytes = getAttachment(store, paper?.attachment ?? "")?.bytes;
    expect(
      Buffer.from(bytes ?? [])
        .subarray(0, 5)
        .toString(),
    ).toBe("%PDF-");
    expect(row?.choice.length).toBeGreaterThan(0);
    expect(replay(store)).toEqual(allRows(store));
  });

  test("issues once what is sent twice", async () => {
    const first = await issue("a");
    const again = await issue("a");
    expect(again.edition).toBe(first.edition);
    expect(allRows(store).editions).toHaveLength(1);
  });

  test("gives the same check code to the same words, and another to other words", async () => {
    const codes = [(await issue("a")).check, (await issue("b")).check];
    expect(codes[0]).toBe(codes[1]);
    expect(codes[0]).toMatch(/^[2-9A-HJ-NP-TV-Z]{5}$/);
    adopt("to the other hand; the reins change too");
    expect((await issue("c")).check).not.toBe(codes[0]);
  });

  test("is refused when something is written while the paper is set, and stores nothing", async () => {
    const pending = issueEdition(store, issuing("a", exercises.change), { now: NOW });
    adopt("to the other hand; the reins change too");
    const outcome = await pending;
    expect(outcome).toMatchObject({ ok: false, refusal: { error: { code: "paper_overtaken" } } });
    expect(allRows(store).editions ?? []).toEqual([]);
  });

  test("is refused for an exercise that is not there", async () => {
    expect(await issueEdition(store, issuing("a", idOf("none")), { now: NOW })).toMatchObject({ ok: false });
  });
});

describe("correcting", () => {
  test("an edition that is still right is not corrected", async () => {
    await issue("a");
    expect(accepted(compareEditions(store, idOf("a"), null))).toEqual({ entries: [], renumbered: "" });
    expect(editionLines(store, work)).toMatchObject([{ differences: 0, problem: "", edition: { number: 1 } }]);
  });

  test("tells step by step what a decision changed, with its reason, and who holds what is wrong", async () => {
    await issue("a");
    const before = Buffer.from(
      getAttachment(store, readRow(store, "editions", idOf("a"))?.value.papers[0]?.attachment ?? "")?.bytes ?? [],
    );
    // What the list keeps ends with the decision.
    expect(editionLines(store, work)).toMatchObject([{ differences: 0 }]);
    adopt("to the other hand; the reins change too");
    const { entries } = accepted(compareEditions(store, idOf("a"), null));
    expect(entries.length).toBeGreaterThan(0);
    expect(entries.some(({ shown }) => /^Step \d/.test(shown))).toBe(true);
    expect(entries.some(({ why }) => why.includes(REASON))).toBe(true);
    const [line] = editionLines(store, work);
    expect(line).toMatchObject({
      differences: entries.length,
      changed: [...new Set(entries.map(({ shown }) => shown.split(", ")[0]))],
      edition: { recipients: [{ who: "the Tuesday class" }] },
    });
    // What was issued stays as it was issued.
    const after = readRow(store, "editions", idOf("a"))?.value.papers[0]?.attachment ?? "";
    expect(Buffer.from(getAttachment(store, after)?.bytes ?? []).equals(before)).toBe(true);
  });

  test("keeps a slip between two editions, which says the words of both", async () => {
    await issue("a");
    adopt("to the other hand; the reins change too");
    await issue("b");
    const asked = { id: idOf("slip change"), slip: idOf("slip"), who: "the editor", sitting: null };
    const slip = accepted(
      storeSlip(store, { ...asked, from: idOf("a"), to: idOf("b"), on: "2026-10-09" }, { now: NOW }),
    );
    const paper = accepted(paperOfSlip(store, idOf("slip")));
    const said = JSON.stringify(paper.blocks);
    for (const { shown, was, now } of slip.entries) {
      expect(said).toContain(JSON.stringify(shown).slice(1, -1));
      const { do: _do, ...parts } = correctionOf(was, now);
      for (const words of Object.values(parts)) {
        const inner = words.replace(/“/gu, "‘").replace(/”/gu, "’");
        expect(said).toContain(JSON.stringify(inner).slice(1, -1));
      }
    }
    expect(paper.title).toBe("Corrections to “Of the change upon the wall”");
    expect(said).toContain("edition 2 of 1 October 2026, check code ");
    // Each entry is what the two papers say there.
    const [older, newer] = [idOf("a"), idOf("b")].map((id) =>
      JSON.stringify(readRow(store, "editions", id)?.value.model),
    );
    expect(older).not.toBe(newer);
    const now = accepted(buildPaper(store, sheet(exercises.change)));
    const nowWords = now.blocks.flatMap((block) =>
      block.is === "table" ? block.rows.flatMap(({ cells }) => cells.flat().map(plainWords)) : [],
    );
    for (const { shown, now: words } of slip.entries) {
      if (/^Step \d+, /.test(shown) && words !== "") expect(nowWords).toContain(words);
    }
  });

  test("refuses a slip between editions that say the same", async () => {
    await issue("a");
    await issue("b");
    const asked = { id: idOf("slip change"), slip: idOf("slip"), who: "the editor", sitting: null };
    expect(
      storeSlip(store, { ...asked, from: idOf("a"), to: idOf("b"), on: "2026-10-09" }, { now: NOW }),
    ).toMatchObject({
      ok: false,
      refusal: { error: { code: "nothing_to_correct" } },
    });
    expect(allRows(store).slips ?? []).toEqual([]);
  });

  test("makes a slip against the work as it is now, without keeping it", async () => {
    await issue("a");
    adopt("to the other hand; the reins change too");
    const paper = accepted(slipAgainstNow(store, idOf("a"), "2026-10-09"));
    expect(JSON.stringify(paper.blocks)).toContain("the work as it stands on 9 October 2026");
    expect(allRows(store).slips ?? []).toEqual([]);
  });

  test("says so when the paper can no longer be made", async () => {
    await issue("a");
    const gone = idOf("gone");
    const row = readRow(store, "editions", idOf("a"));
    const model = structuredClone(row?.value.model ?? {}) as { ask: PaperAsk };
    model.ask.parts[0] = { exercise: gone, from: null, to: null, variant: null };
    accepted(
      writeChange(store, request(901, [set("editions", idOf("a"), row?.version ?? 1, { model })]), { now: NOW }),
    );
    expect(editionLines(store, work)).toMatchObject([{ differences: null, problem: expect.stringContaining(gone) }]);
  });
});
