/** tests/import/check-data.test.ts - real texts: what is read is held against counts and words found in other ways.
 *  Sources: Perseus TEI P4 of Xenophon's minor works and the same text by chapter and section as JSON; Dakyns's
 *  translation as plain text; US Infantry Drill Regulations 1911; TEI P5-Test files and Guidelines examples. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ImportedFile, type ImportedText } from "../../schema/imported.ts";
import { readImport } from "../../server/import/read-import.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { selectPassages } from "../../shared/cite/select-passages.ts";
import { describeWithCheckData } from "../kit/check-data.ts";

const read = (path: string) => {
  const result = readImport(readFileSync(path), { name: path.replace(/^.*\//, "") });
  if (!result.ok) throw new Error(result.refusal.sentence);
  return ImportedFile.parse(result.file);
};

const bySection = (text: ImportedText | undefined) =>
  new Map<string, string>(
    (text?.passages ?? []).map((passage) => [
      formatReference(passage.references[0] ?? { kind: "section", from: ["?"] }),
      passage.text,
    ]),
  );

/** The JSON counts chapters and sections from 0. */
const fromJson = (path: string) => {
  const { text } = JSON.parse(readFileSync(path, "utf8")) as { text: Record<string, Record<string, string>> };
  return new Map<string, string>(
    Object.entries(text).flatMap(([chapter, sections]) =>
      Object.entries(sections).map(
        ([section, words]) => [`${Number(chapter) + 1}.${Number(section) + 1}`, words] as const,
      ),
    ),
  );
};

/** The JSON is of a later edition of the same text: other apostrophes, quotation marks and dashes, hyphens, blanks. */
const folded = (words: string) =>
  words
    .normalize("NFC")
    .replace(/[\u02bc\u2019\u2018']/gu, "")
    .replace(/[“”"]/gu, "")
    .replace(/[\u2010-\u2015-]/gu, "-")
    .replace(/\s+/gu, "");

const letters = (words: string) => words.replace(/[^\p{L}]/gu, "");

describeWithCheckData("[I7] [I8] Xenophon, minor works (Perseus TEI P4)", (path) => {
  const english = path("texts", "xenophon", "xen.opuscula_eng.xml");
  const greek = path("texts", "xenophon", "xen.opuscula_gk.xml");

  test.each([
    ["English", english],
    ["Greek", greek],
  ])("%s: seven works, as many sections as section milestones", (_language, file) => {
    const raw = readFileSync(file, "utf8");
    const { texts, format } = read(file);
    expect(format).toBe("tei-p4");
    expect(texts.map(({ number }) => number)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(new Set(texts.map(({ urn }) => urn))).toEqual(new Set([""]));
    for (const [at, source] of raw
      .split(/<text n="/)
      .slice(1)
      .entries()) {
      const sections = source.match(/<milestone[^>]*unit="section"[^>]*>/g) ?? [];
      const text = texts[at];
      expect(text?.levels).toEqual(["chapter", "section"]);
      expect(text?.passages.length, text?.title).toBe(sections.length);
    }
  });

  test.each([
    ["English", english, 4, "xenophon__on-the-art-of-horsemanship__english.json"],
    ["English", english, 1, "xenophon__on-the-cavalry-commander__english.json"],
    ["Greek", greek, 4, "xenophon__on-the-art-of-horsemanship__grc.json"],
    ["Greek", greek, 1, "xenophon__on-the-cavalry-commander__grc.json"],
  ] as const)("%s words of work %#, section by section, are those of the JSON", (language, file, at, json) => {
    const mine = bySection(read(file).texts[at]);
    const theirs = fromJson(path("texts", "xenophon", json));
    expect([...mine.keys()].sort()).toEqual([...theirs.keys()].sort());
    const different = [...mine].filter(
      ([label, words]) => letters(folded(words)) !== letters(folded(theirs.get(label) ?? "")),
    );
    expect({ language, different: different.map(([label]) => label) }).toEqual({ language, different: [] });
  });

  test("On Horsemanship 7.13-17 in both languages: twelve chapters, the same words and stops", () => {
    for (const [file, json] of [
      [english, "xenophon__on-the-art-of-horsemanship__english.json"],
      [greek, "xenophon__on-the-art-of-horsemanship__grc.json"],
    ] as const) {
      const text = read(file).texts[4];
      if (text === undefined) throw new Error("the fifth work is missing");
      expect(new Set(text.passages.map(({ division }) => division?.label)).size).toBe(12);
      const chosen = selectPassages(text, "7.13-7.17");
      const theirs = fromJson(path("texts", "xenophon", json));
      expect(chosen.ok && chosen.passages.map(({ text: words }) => folded(words))).toEqual(
        [13, 14, 15, 16, 17].map((section) => folded(theirs.get(`7.${section}`) ?? "")),
      );
    }
  });

  test("[I1] every undefined entity is reported with its place in the file", () => {
    for (const file of [english, greek]) {
      const lines = readFileSync(file, "utf8").split("\n");
      const told = read(file).dropped.filter(({ what }) => what.startsWith("entity"));
      expect(told.map(({ what }) => what)).toEqual([
        "entity &responsibility;",
        "entity &fund.AnnCPB;",
        "entity &Perseus.publish;",
      ]);
      for (const { what, place } of told) {
        expect(lines[place.line - 1]?.slice(place.column - 1)).toMatch(
          new RegExp(`^${what.slice(7).replace(".", "\\.")}`),
        );
      }
    }
  });

  test("notes are kept: as many as the file has, those in heads apart", () => {
    const raw = readFileSync(english, "utf8");
    const notes = raw.slice(raw.indexOf("<text>")).match(/<note\b/g) ?? [];
    const kept = JSON.stringify(read(english).texts).match(/"type":"note"/g) ?? [];
    expect(kept.length).toBe(notes.length);
  });
});

describeWithCheckData("[I12] [I13] Dakyns's On Horsemanship as plain text", (path) => {
  const file = path("texts", "xenophon", "gutenberg-1176", "1176.txt");

  test("twelve chapters; VII is chapter 7 and begins where it should", () => {
    const raw = readFileSync(file, "utf8");
    const romans = raw.match(/^[IVX]+\r?$/gm) ?? [];
    const [text] = read(file).texts;
    const chapters = new Set(text?.passages.flatMap(({ division }) => division?.label ?? []));
    expect(chapters.size).toBe(romans.length);
    expect(text?.levels).toEqual(["chapter", "paragraph"]);
    expect(bySection(text).get("7.1")).toMatch(
      /^The master, let us suppose, has received his horse and is ready to mount\. We will/,
    );
    expect([text?.title, text?.author, text?.translator, text?.language]).toEqual([
      "On Horsemanship",
      "Xenophon",
      "H. G. Dakyns",
      "en",
    ]);
  });

  test("[I1] no word between the notices is lost: passages, notes and headings make up the text", () => {
    const raw = readFileSync(file, "utf8")
      .replace(/^[\s\S]*?\*\*\* START OF[^\n]*\n/, "")
      .replace(/\*\*\* END OF[\s\S]*$/, "");
    const { texts } = read(file);
    const kept: string[] = [];
    for (const passage of texts.flatMap(({ passages }) => passages)) {
      for (const [, words] of JSON.stringify(passage.doc).matchAll(/"text":"((?:[^"\\]|\\.)*)"/g))
        kept.push(JSON.parse(`"${words}"`) as string);
    }
    const romans = /^[IVX]+\r?$/gm;
    const count = (words: string) => {
      const counts = new Map<string, number>();
      for (const [one] of words.matchAll(/[\p{L}\p{M}]+/gu)) counts.set(one, (counts.get(one) ?? 0) + 1);
      return [...counts].sort(([a], [b]) => (a < b ? -1 : 1));
    };
    expect(count(kept.join(" "))).toEqual(count(raw.replace(romans, "")));
  });
});

describeWithCheckData("[I12] US Infantry Drill Regulations 1911 as plain text", (path) => {
  const file = path("texts", "us-drill-1911", "20866-8.txt");

  test("paragraphs 1 to 807, each once, where a line begins with the next number", () => {
    const lines = readFileSync(file, "latin1").split(/\r?\n/);
    const { texts, encoding } = read(file);
    const numbered = (texts[0]?.passages ?? []).filter(
      ({ references }) => formatReference(references[0] ?? { kind: "section", from: [""] }) !== "front",
    );
    expect(encoding).toBe("windows-1252 (guessed)");
    expect(numbered.map(({ references }) => references)).toEqual(
      Array.from({ length: 807 }, (_, at) => [{ kind: "section", from: [String(at + 1)] }]),
    );
    for (const [at, { place }] of numbered.entries())
      expect(lines[place.line - 1]).toMatch(new RegExp(`^${at + 1}\\. `));
  });

  test("782 to 785, the sabre, its mounted wording and the bridle hand", () => {
    const [text] = read(file).texts;
    if (text === undefined) throw new Error("no text was read");
    const chosen = selectPassages(text, "782", "785");
    if (!chosen.ok) throw new Error(chosen.refusal.sentence);
    expect(chosen.passages.map(({ division }) => division?.title)).toEqual(Array(4).fill("MANUAL OF THE SABER."));
    expect(chosen.passages[0]?.text.split("\n")[0]).toBe("1. Draw, 2. SABER.");
    expect(chosen.passages[0]?.text).toContain(
      "they reach with the right hand over the bridle hand and without the aid of the bridle hand draw the saber as before",
    );
    expect(chosen.passages[0]?.text.split("\n").length).toBe(6);
    expect(chosen.passages[2]?.text).toContain("If mounted, the hand is held behind the thigh");
  });
});

describeWithCheckData("[I2] TEI test files and examples", (path) => {
  for (const folder of ["P5-Test", "guidelines-examples", "trial"]) {
    test.each(readdirSync(path("tei", folder)).filter((name) => name.endsWith(".xml")))(
      `${folder}/%s is read, or refused with a sentence`,
      (name) => {
        const bytes = readFileSync(join(path("tei", folder), name));
        const result = readImport(bytes, { name });
        // Words inside <body>, by a plain search: comments and tags taken out.
        const raw = bytes.toString("utf8").replace(/<!--[\s\S]*?-->/g, "");
        const body = /<body\b[^>]*>([\s\S]*)<\/body>/.exec(raw)?.[1] ?? "";
        const hasWords = /\p{L}/u.test(body.replace(/<[^>]*>/g, ""));
        const isTei = /<(TEI|TEI\.2|teiCorpus)\b/.test(raw.slice(0, 400));
        expect([isTei, hasWords, result.ok ? "read" : result.refusal.code]).toEqual(
          isTei ? [true, hasWords, hasWords ? "read" : "tei_without_text"] : [false, hasWords, "xml_not_tei"],
        );
        if (result.ok) expect(ImportedFile.parse(result.file).texts.length).toBeGreaterThan(0);
      },
    );
  }
});
