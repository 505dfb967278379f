/** tests/tei/edition.test.ts - a work as TEI: valid, nothing dangling, every step with its words, nothing lost to markup. */
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import type { Rows } from "../../schema/record.ts";
import { runCommandLine } from "../../server/commands/run.ts";
import { teiEdition } from "../../server/publish/tei/edition.ts";
import { xmlCharacters } from "../../server/publish/xml-characters.ts";
import { citedRangeOf, referenceOfRange } from "../../shared/cite/cited-range.ts";
import { exerciseRows } from "../../shared/drill/exercise-rows.ts";
import { type RunningApp, refusalOf, runningApp, send } from "../kit/running-app.ts";
import { teiComplaints, testWithTeiSchema } from "../kit/tei-schema.ts";
import { everyNode, named, wordsIn, type XmlNode, xmlTree } from "../kit/xml-tree.ts";
import { demoRows } from "../ride/rides.ts";
import { bookRows, ID } from "../store/full-book.ts";
import { anyFullBook, anyReference, anyWork, fullBook } from "./any-work.ts";

const { rows } = demoRows();
const work = rows.works?.[0]?.value.id ?? "";
const tree = xmlTree(teiEdition(rows, work));
const between = anchored(tree);
const byName = new Map(everyNode(tree).map((node) => [node.attributes["xml:id"], node]));

/** Attributes that hold pointers. */
const POINTING = ["ana", "corresp", "from", "to", "target", "targetEnd", "source", "wit", "exclude", "facs", "ref"];

function expectWhole(root: XmlNode): void {
  const nodes = everyNode(root);
  const ids = nodes.flatMap(({ attributes }) => attributes["xml:id"] ?? []);
  expect(new Set(ids).size).toBe(ids.length);
  const known = new Set(ids);
  const dangling = nodes
    .filter(({ name }) => name !== "citedRange")
    .flatMap(({ attributes }) => POINTING.flatMap((key) => attributes[key]?.split(" ") ?? []))
    .filter((pointer) => !pointer.startsWith("#") || !known.has(pointer.slice(1)));
  expect(dangling).toEqual([]);
}

/** The words between two anchors, as a reader of the file would gather them; null where one of the two is not there. */
type Between = (from: string, to: string) => string | null;

function anchored(root: XmlNode): Between {
  const places = new Map<string, { passage: number; offset: number }>();
  const texts = named(root, "div", { type: "passage" }).map((division, passage) => {
    let words = "";
    const gather = (node: XmlNode): void => {
      for (const child of node.children) {
        if (typeof child === "string") words += child;
        else if (child.name === "anchor")
          places.set(child.attributes["xml:id"] ?? "", { passage, offset: words.length });
        else if (!/^(note|gap|milestone|pb|lb|cb)$/.test(child.name)) gather(child);
      }
    };
    const blocks = division.children.filter((child) => typeof child !== "string" && child.name !== "milestone");
    for (const [index, block] of (blocks as XmlNode[]).entries()) {
      if (index > 0) words += "\n";
      gather(block);
    }
    return words;
  });
  return (from, to) => {
    const [first, last] = [places.get(from.slice(1)), places.get(to.slice(1))];
    if (!first || !last || first.passage !== last.passage) return null;
    return texts[first.passage]?.slice(first.offset, last.offset) ?? null;
  };
}

describe("the invented book", () => {
  testWithTeiSchema("[X12] is valid", () => {
    const edition = teiEdition(rows, work);
    expect(teiComplaints([edition])).toEqual([]);
    expect(teiComplaints([edition.replaceAll("standOff", "aside")]).length).toBeGreaterThan(0);
  });

  test("[X9] has every name once, and nothing points at nothing", () => {
    expectWhole(tree);
  });

  test("[X7] [X8] has every step and action with the words it rests on, and the anchors stand round those words", () => {
    for (const { value } of rows.anchors ?? []) {
      if (value.is !== "text") continue;
      const span = byName.get(`span-${value.id}`);
      expect(span && wordsIn(span)).toBe(value.quote);
      const { from = "", to = "" } = span?.attributes ?? {};
      expect(between(from, to)).toBe(value.quote);
    }
    const structures = new Set(named(tree, "fs").map(({ attributes }) => attributes["xml:id"]));
    for (const { value } of rows.elements ?? []) expect(structures).toContain(`element-${value.id}`);
    for (const { value } of rows.actions ?? []) expect(structures).toContain(`action-${value.id}`);
  });

  test("[X8] numbers the steps as they are decided", () => {
    for (const { value } of rows.exercises ?? []) {
      const numbers = exerciseRows(rows, value.id).elements.flatMap(({ id }) => {
        return byName.get(`element-${id}`)?.attributes.n ?? [];
      });
      expect(numbers).toEqual(numbers.map((_, index) => String(index + 1)));
    }
  });

  test("[X11] has an app for every crux, with who holds each reading", () => {
    const people = new Map(named(tree, "respStmt").map((one) => [`#${one.attributes["xml:id"]}`, wordsIn(one)]));
    for (const { value } of rows.readings ?? []) {
      const reading = byName.get(`reading-${value.id}`);
      expect(people.get(reading?.attributes.source ?? "")?.endsWith(value.holder)).toBe(true);
    }
    expect(named(tree, "app").length).toBe(rows.cruxes?.length);
    for (const app of named(tree, "app")) {
      const [lemma] = named(app, "lem");
      const { from = "", to = "" } = app.attributes;
      if (lemma) expect(between(from, to)).toBe(wordsIn(lemma));
    }
  });

  test("[X1] is the same whatever order the rows come in", () => {
    const turned = Object.fromEntries(Object.entries(rows).map(([kind, list]) => [kind, [...list].reverse()])) as Rows;
    expect(teiEdition(turned, work)).toBe(teiEdition(rows, work));
  });
});

describe("a book with a row of every kind", () => {
  const full = fullBook(bookRows("f".repeat(64)));

  test("[X9] [X11] names witnesses, sources, pictures, certainty; nothing dangles", () => {
    const made = structuredClone(full);
    const reading = made.readings?.find(({ value }) => value.id === ID.reading)?.value;
    const crux = made.cruxes?.find(({ value }) => value.id === ID.crux)?.value;
    if (!reading || !crux) throw new Error("The book has that crux.");
    Object.assign(reading, {
      holder: "A",
      confidence: "0.25",
      status: { is: "ruled out", on: "2026-05-04", sitting: null, reason: "No & no." },
    });
    Object.assign(crux, { is: "witnesses differ" });
    const edition = xmlTree(teiEdition(made, ID.work));
    expectWhole(edition);
    const [rdg] = named(edition, "rdg", { "xml:id": `reading-${ID.reading}` });
    expect(rdg?.attributes).toMatchObject({ wit: `#witness-${ID.witness}`, type: "ruled-out", cert: "0.25" });
    expect(named(edition, "certainty")[0]?.attributes).toEqual({
      target: `#reading-${ID.reading}`,
      locus: "value",
      degree: "0.25",
    });
    expect(named(edition, "witness", { n: "A" }).length).toBe(1);
    expect(named(edition, "bibl", { "xml:id": `source-${ID.source}` }).map(wordsIn)[0]).toContain(
      "The Book of the Court",
    );
    expect(named(edition, "zone").length).toBe(1);
    expect(named(edition, "note", { type: "status" }).map(wordsIn)).toEqual(["ruled out, 2026-05-04: No & no."]);
    for (const kind of ["question", "note", "advice"])
      expect(named(edition, "note", { type: kind }).length).toBeGreaterThan(0);
  });

  test("a work that nobody brought a text of is still a document", () => {
    const bare = { works: full.works };
    expect(named(xmlTree(teiEdition(bare, ID.work)), "body").length).toBe(1);
  });

  testWithTeiSchema("[X12] all of these, and books made by chance, are valid", () => {
    const books = fc.sample(anyFullBook, 12).map((made) => teiEdition(made, ID.work));
    const works = fc.sample(anyWork, 12).map((made) => teiEdition(made.rows, made.work));
    const bare = teiEdition({ works: full.works }, ID.work);
    expect(teiComplaints([bare, ...books, ...works])).toEqual([]);
  });
});

describe("laws", () => {
  test("odd words in every field of every row come out as themselves and as nothing else", () => {
    fc.assert(
      fc.property(anyFullBook, (made) => {
        const edition = xmlTree(teiEdition(made, ID.work));
        expectWhole(edition);
        const [title] = named(edition, "title");
        expect(title && wordsIn(title)).toBe(xmlCharacters(made.works?.[0]?.value.title ?? ""));
        const notes = named(edition, "note", { type: "note" }).map(wordsIn);
        expect(notes).toEqual((made.notes ?? []).map(({ value }) => xmlCharacters(value.text)));
      }),
      { numRuns: 40 },
    );
  });

  test("[X7] wherever a mark begins and ends, the words between its anchors are its words", () => {
    fc.assert(
      fc.property(anyWork, (made) => {
        const edition = xmlTree(teiEdition(made.rows, made.work));
        expectWhole(edition);
        const found = anchored(edition);
        for (const span of named(edition, "span")) {
          const { from = "", to = "" } = span.attributes;
          // A mark inside one character is moved to its beginning: no file can hold half of it.
          const words = wordsIn(span).replaceAll("\uFFFD", "");
          if (wordsIn(span) === words) expect(found(from, to)).toBe(words);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("[C26] every reference comes back from its range", () => {
    fc.assert(
      fc.property(anyReference, (reference) => {
        const range = citedRangeOf(reference);
        expect(referenceOfRange(range)).toEqual(reference);
        for (const word of [range.unit, range.from, range.to]) expect(word).toMatch(/^[^\p{C}\p{Z}]+$/u);
      }),
      { numRuns: 500 },
    );
  });
});

describe("as it is asked for", () => {
  let app: RunningApp;
  beforeAll(async () => {
    app = await runningApp();
  });

  async function command(...args: string[]): Promise<{ code: number; bytes: Buffer; errors: string }> {
    const chunks: Uint8Array[] = [];
    const errors: string[] = [];
    const code = await runCommandLine([...args, "--file", app.file], {
      out: (text) => chunks.push(Buffer.from(`${text}\n`)),
      bytes: (bytes) => chunks.push(bytes),
      error: (text) => errors.push(text),
      environment: {},
      now: "2026-05-04T10:00:00.000Z",
    });
    return { code, bytes: Buffer.concat(chunks), errors: errors.join("\n") };
  }

  test("window and command line give the same bytes", async () => {
    const edition = await send(app, `/api/works/${work}/edition.tei.xml`);
    expect(edition.headers["content-type"]).toMatch(/^application\/tei\+xml/);
    expect((await command("tei", "The Varne Riding-House Book")).bytes.equals(edition.bytes)).toBe(true);
  });

  test("a work that is not there is refused in words", async () => {
    const reply = await send(app, "/api/works/0190c000-0000-7000-8000-000000000000/edition.tei.xml");
    expect(reply.status).toBe(404);
    expect(refusalOf(reply).sentence).toMatch(/There is no work with the id/);
    expect(await command("tei", "Nothing")).toMatchObject({
      code: 1,
      errors: expect.stringMatching(/No work is called “Nothing”/),
    });
  });
});
