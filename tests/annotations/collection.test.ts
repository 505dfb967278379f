/** tests/annotations/collection.test.ts - every mark as a Web Annotation: held against the assertions of the W3C and its
 *  JSON-LD context, quotes checked by counting code points in the texts. */
import { readFileSync } from "node:fs";
import Ajv from "ajv-draft-04";
import addFormats from "ajv-formats";
import fc from "fast-check";
import jsonld from "jsonld";
import { beforeAll, describe, expect, test } from "vitest";
import type { Rows } from "../../schema/record.ts";
import { runCommandLine } from "../../server/commands/run.ts";
import { annotationCollection } from "../../server/publish/annotations/collection.ts";
import { type Annotation, CONTEXT, type Target } from "../../server/publish/annotations/web-annotation.ts";
import { describeWithCheckData } from "../kit/check-data.ts";
import { type RunningApp, refusalOf, runningApp, send } from "../kit/running-app.ts";
import { demoRows } from "../ride/rides.ts";
import { bookRows, ID } from "../store/full-book.ts";
import { anyFullBook, anyWork, fullBook } from "../tei/any-work.ts";

const { rows } = demoRows();
const work = rows.works?.[0]?.value.id ?? "";
const itemsOf = (from: Rows, id: string): Annotation[] => annotationCollection(from, id).first?.items ?? [];

/** The words a target quotes, and those it counts to, from the text itself. */
function readTarget(from: Rows, { source, selector }: Target): { exact: string | null; counted: string | null } {
  const text = from.passageTexts?.find(({ value }) => source.id === `urn:uuid:${value.id}`)?.value.text;
  const list = Array.isArray(selector) ? selector : [];
  const quote = list.find((one) => one.type === "TextQuoteSelector");
  const position = list.find((one) => one.type === "TextPositionSelector");
  const points = text === undefined ? null : [...text];
  const counted = points && position ? points.slice(position.start, position.end).join("") : null;
  if (points && quote && position) {
    const before = points.slice(0, position.start).join("");
    const after = points.slice(position.end).join("");
    expect(before.endsWith(quote.prefix)).toBe(true);
    expect(after.startsWith(quote.suffix)).toBe(true);
  }
  return { exact: quote?.exact ?? null, counted };
}

function expectTrue(from: Rows, id: string): void {
  const items = itemsOf(from, id);
  const anchors = (from.anchors ?? []).flatMap(({ value }) => (value.is === "text" ? [value] : []));
  for (const item of items) {
    const own = anchors.filter(({ mark }) => item.id === `urn:uuid:${mark}`);
    const texts = item.target.filter(({ source }) => source.type === "Text");
    expect(texts.length).toBe(own.length);
    for (const target of texts) {
      const { exact, counted } = readTarget(from, target);
      if (exact !== null && counted !== null) expect(counted).toBe(exact);
      if (exact === null) expect(counted).toBe("");
    }
  }
}

describe("the invented book", () => {
  const collection = annotationCollection(rows, work);
  const items = collection.first?.items ?? [];

  test("has an annotation for every mark, each once, with the words of its anchors", () => {
    expect(items.map(({ id }) => id).sort()).toEqual(
      (rows.marks ?? []).map(({ value }) => `urn:uuid:${value.id}`).sort(),
    );
    expect(collection.total).toBe(items.length);
    expectTrue(rows, work);
    const quotes = items.flatMap(({ target }) => target.flatMap((one) => readTarget(rows, one).exact ?? []));
    const wanted = (rows.anchors ?? []).flatMap(({ value }) =>
      value.is === "text" && value.quote !== "" ? [value.quote] : [],
    );
    expect(quotes.sort()).toEqual(wanted.sort());
  });

  test("says what each is, in words, and which row it is", () => {
    const tags = new Set(
      items.flatMap(({ body: [tag] }) => (tag && "value" in tag ? [tag.value.replace(/ \d+$/, "")] : [])),
    );
    for (const tag of ["step", "action", "crux (silent)", "question to Y. Varne", "note"]) expect(tags).toContain(tag);
    for (const { body } of items) {
      expect(body.at(-1)).toMatchObject({ type: "SpecificResource", purpose: "identifying" });
      expect(body.some((one) => "value" in one && one.value === "")).toBe(false);
    }
  });

  test("names nobody as its maker, tells no time, and uses no Composite, List or Independents", () => {
    expect(JSON.stringify(collection)).not.toMatch(
      /"(creator|created|modified|generated|generator)"|Composite|Independents|"List"/,
    );
  });

  test("is the same whatever order the rows come in", () => {
    const turned = Object.fromEntries(Object.entries(rows).map(([kind, list]) => [kind, [...list].reverse()])) as Rows;
    expect(annotationCollection(turned, work)).toEqual(collection);
  });
});

describe("laws", () => {
  test("offsets are code points, whatever the words and wherever a mark begins and ends", () => {
    fc.assert(
      fc.property(anyWork, (made) => expectTrue(made.rows, made.work)),
      { numRuns: 80 },
    );
  });

  test("pictures and gaps have places too, and an empty work has no page", () => {
    const full = fullBook(bookRows("f".repeat(64)));
    const regions = itemsOf(full, ID.work)
      .flatMap(({ target }) => target)
      .filter(({ source }) => source.type === "Image");
    expect(regions.map(({ selector }) => selector)).toEqual([
      {
        type: "FragmentSelector",
        conformsTo: "http://www.w3.org/TR/media-frags/",
        value: expect.stringMatching(/^xywh=pixel:\d+,\d+,\d+,\d+$/),
      },
    ]);
    expect(annotationCollection({ works: full.works }, ID.work)).toEqual({
      ...{ "@context": CONTEXT, id: expect.stringMatching(/^urn:uuid:[0-9a-f-]{36}$/), type: "AnnotationCollection" },
      ...{ label: "The Book of the Court", total: 0 },
    });
  });

  test("words that no longer stand in the text keep their quote", () => {
    const lost = structuredClone(rows);
    const anchor = lost.anchors?.[0]?.value;
    if (anchor?.is !== "text") throw new Error("The first anchor is in words.");
    for (const { value } of lost.anchors ?? [])
      if (value.mark === anchor.mark && value.is === "text") value.fate = "lost";
    const item = itemsOf(lost, work).find(({ id }) => id === `urn:uuid:${anchor.mark}`);
    expect(item?.target.map(({ selector }) => selector)).toContainEqual([
      { type: "TextQuoteSelector", exact: anchor.quote, prefix: anchor.prefix, suffix: anchor.suffix },
    ]);
  });
});

describeWithCheckData("by the standard", (path) => {
  const read = (...parts: string[]) => JSON.parse(readFileSync(path("webanno", ...parts), "utf8"));
  const ajv = new Ajv({ strict: false, allErrors: true });
  addFormats.default(ajv);
  for (const name of [
    "annotations",
    "bodyTarget",
    "choiceSet",
    "collections",
    "id",
    "otherProperties",
    "specificResource",
  ])
    ajv.addSchema(read("tests", "definitions", `${name}.json`), `${name}.json`);
  const musts = (read("tests", "annotations", "annotationMusts.test").assertions as string[]).map((name) => {
    const schema = read("tests", ...name.split("/"));
    return { name, fits: ajv.compile(schema), wanted: schema.expectedResult === "valid" };
  });
  /** Which of the W3C's demands on an annotation are not met. */
  const unmet = (annotation: object) =>
    musts.filter(({ fits, wanted }) => fits({ "@context": CONTEXT, ...annotation }) !== wanted).map(({ name }) => name);

  test("the assertions tell right from wrong on the W3C's own samples", () => {
    expect(musts.length).toBeGreaterThan(50);
    expect(unmet(read("spec", "model", "wd2", "examples", "correct", "anno23.json"))).toEqual([]);
    expect(unmet({ id: "urn:uuid:1", type: "Annotation" })).not.toEqual([]);
    expect(unmet({ ...itemsOf(rows, work)[0], id: "not a uri" })).toEqual([
      "annotations/3.1-annotationIdValidated.json",
    ]);
  });

  test("every annotation of the invented book and of books made by chance meets them all", () => {
    const full = fc.sample(anyFullBook, 10).map((book) => itemsOf(book, ID.work));
    const made = fc.sample(anyWork, 10).map((one) => itemsOf(one.rows, one.work));
    for (const annotation of [...itemsOf(rows, work), ...full.flat(), ...made.flat()])
      expect(unmet(annotation)).toEqual([]);
  }, 60_000);

  test("the context of the standard knows every term, and every annotation has its body and its target in the graph", async () => {
    const context = read("spec", "jsonld", "anno.jsonld");
    const documentLoader = async (url: string) => {
      if (url !== CONTEXT) throw new Error(`Nothing outside may be fetched: ${url}`);
      return { documentUrl: url, contextUrl: undefined, document: context };
    };
    const collection = annotationCollection(rows, work);
    const options = { documentLoader, safe: true } as Parameters<typeof jsonld.expand>[1];
    const [expanded] = (await jsonld.expand(collection as never, options)) as Record<string, unknown>[];
    expect(expanded?.["@type"]).toEqual(["http://www.w3.org/ns/activitystreams#OrderedCollection"]);
    const quads = (await jsonld.toRDF(collection as never, { documentLoader } as never)) as unknown as {
      subject: { value: string };
      predicate: { value: string };
    }[];
    const OA = "http://www.w3.org/ns/oa#";
    for (const predicate of [`${OA}hasBody`, `${OA}hasTarget`, `${OA}motivatedBy`]) {
      const subjects = new Set(
        quads.filter((quad) => quad.predicate.value === predicate).map(({ subject }) => subject.value),
      );
      expect(subjects.size).toBe(collection.total);
    }
    const exact = quads.filter(({ predicate }) => predicate.value === `${OA}exact`).length;
    expect(exact).toBe((rows.anchors ?? []).filter(({ value }) => value.is === "text" && value.from < value.to).length);
  }, 60_000);
});

describe("as it is asked for", () => {
  let app: RunningApp;
  beforeAll(async () => {
    app = await runningApp();
  });

  test("window and command line give the same bytes; a work that is not there is refused in words", async () => {
    const reply = await send(app, `/api/works/${work}/annotations.jsonld`);
    expect(reply.headers["content-type"]).toMatch(
      /^application\/ld\+json; ?profile="http:\/\/www\.w3\.org\/ns\/anno\.jsonld"/,
    );
    const chunks: Uint8Array[] = [];
    const speaking = { out: () => {}, bytes: (bytes: Uint8Array) => chunks.push(bytes), error: () => {} };
    const around = { ...speaking, environment: {}, now: "2026-05-04T10:00:00.000Z" };
    expect(await runCommandLine(["annotations", work, "--file", app.file], around)).toBe(0);
    expect(Buffer.concat(chunks).equals(reply.bytes)).toBe(true);
    const refused = await send(app, "/api/works/0190c000-0000-7000-8000-000000000000/annotations.jsonld");
    expect(refused.status).toBe(404);
    expect(refusalOf(refused).sentence).toMatch(/There is no work with the id/);
  });
});
