/** tests/tei/round-trip.test.ts - TEI out and in again: the same passages, references, words and texts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { docFromJson } from "../../schema/editor.ts";
import type { Rows } from "../../schema/record.ts";
import { acceptImport } from "../../server/import/accept.ts";
import { readImport } from "../../server/import/read-import.ts";
import { teiEdition } from "../../server/publish/tei/edition.ts";
import { xmlCharacters } from "../../server/publish/xml-characters.ts";
import { openStore, readRows, type Store } from "../../server/store/index.ts";
import { compareRanked } from "../../shared/rank.ts";
import { demoRows } from "../ride/rides.ts";
import { accepted, NOW } from "../store/store-builders.ts";
import { anyWork } from "./any-work.ts";

function readBack(tei: string) {
  const read = readImport(new TextEncoder().encode(tei), { name: "book.xml" });
  if (!read.ok) throw new Error(read.refusal.sentence);
  return read.file;
}

/** Strings inside as XML can hold them. */
function asXml<T>(value: T): T {
  if (typeof value === "string") return xmlCharacters(value) as T;
  if (Array.isArray(value)) return value.map(asXml) as T;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, held]) => [key, asXml(held)])) as T;
}

describe("[X6] [I14] read back", () => {
  test("a work made by chance has the same texts, passages, references, levels, and words with all they hold", () => {
    fc.assert(
      fc.property(anyWork, (made) => {
        const there = made.texts.filter(({ docs }) => docs.some((doc) => doc !== null));
        fc.pre(there.length > 0);
        const file = readBack(teiEdition(made.rows, made.work));
        expect(file.texts.map(({ title, language, urn }) => ({ title, language, urn }))).toEqual(
          there.map(({ title, language, urn }) => ({ title, language, urn })),
        );
        for (const [index, text] of file.texts.entries()) {
          expect(text.levels).toEqual(made.levels);
          const original = there[index];
          const kept = (original?.docs ?? []).flatMap((doc, at) => (doc === null ? [] : [{ doc, at }]));
          expect(text.passages.map(({ references }) => references)).toEqual(kept.map(({ at }) => made.references[at]));
          for (const [at, { doc }] of kept.entries()) {
            const passage = text.passages[at];
            const back = docFromJson(passage?.doc as Parameters<typeof docFromJson>[0]);
            expect(back.toJSON()).toEqual(docFromJson(asXml(doc.toJSON())).toJSON());
            expect(passage?.text).toBe(xmlCharacters(projectedText(doc.toJSON())));
          }
        }
        if (made.texts[0]?.docs.some((doc) => doc !== null)) expect(file.texts[0]?.translator).toBe(made.texts[0].by);
      }),
      { numRuns: 100 },
    );
  });

  test("the invented book, brought into an empty store, is the same book", () => {
    const { rows } = demoRows();
    const work = rows.works?.[0]?.value;
    const bytes = new TextEncoder().encode(teiEdition(rows, work?.id ?? ""));
    const store = accepted(openStore(":memory:"));
    for (const text of readBack(new TextDecoder().decode(bytes)).texts) bringIn(store, bytes, text);
    expect(bookOf(rowsIn(store))).toEqual(bookOf(rows));
    store.close();
  });
});

function projectedText(doc: { content?: { content?: { text?: string }[] }[] }): string {
  return (doc.content ?? []).map((block) => (block.content ?? []).map(({ text = "" }) => text).join("")).join("\n");
}

function bringIn(store: Store, bytes: Uint8Array, text: ReturnType<typeof readBack>["texts"][number]): void {
  const there = readRows(store, "works")[0]?.value.id;
  const layer = {
    is: "original" as const,
    title: text.title,
    by: text.translator,
    language: text.language,
    urn: text.urn,
  };
  const options = {
    ...{
      id: `0190c000-0000-7000-8000-00000000000${text.number}`,
      who: "a tester",
      name: "book.xml",
      text: text.number,
    },
    ...{ from: "", to: "", layer, exercises: "by division" as const, title: "" },
    work:
      there === undefined ? { is: "new" as const, title: "The book", author: "" } : { is: "there" as const, id: there },
  };
  accepted(acceptImport(store, bytes, options, { now: NOW }));
}

function rowsIn(store: Store): Rows {
  const kinds = ["passages", "passageTexts", "layers", "revisions", "exercises"] as const;
  return Object.fromEntries(kinds.map((kind) => [kind, readRows(store, kind)])) as Rows;
}

/** Passages in their order: references, exercise, and the words of every text by its title. */
function bookOf(rows: Rows) {
  const layers = new Map(rows.layers?.map(({ value }) => [value.id, value]));
  const revisions = new Map(rows.revisions?.map(({ value }) => [value.id, layers.get(value.layer)]));
  const exercises = new Map(rows.exercises?.map(({ value }) => [value.id, `${value.label} ${value.title}`]));
  return (rows.passages ?? [])
    .map(({ value }) => value)
    .sort(compareRanked)
    .map(({ id, references, exercise }) => ({
      references,
      exercise: exercise && exercises.get(exercise),
      words: (rows.passageTexts ?? [])
        .filter(({ value }) => value.passage === id)
        .map(({ value }) => [revisions.get(value.revision)?.title, revisions.get(value.revision)?.language, value.text])
        .sort(),
    }));
}
