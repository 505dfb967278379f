/** Sources through CSL: citeproc as an oracle of its slow way, worked examples of published styles, the item schema, files
 *  that are broken. Rules C23-C25. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Ajv from "ajv";
import CSL from "citeproc";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import { repoRoot } from "../../server/paths.ts";
import { problemWithSource } from "../../server/publish/papers/problem-with-source.ts";
import { listStyles, openStyle } from "../../server/publish/styles/citation-styles.ts";
import { readCsl } from "../../server/publish/styles/read-csl.ts";
import {
  type CslAsk,
  type CslEngine,
  type CslItem,
  type CslNode,
  openCslEngine,
} from "../../shared/cite/csl-engine.ts";
import { readLocator } from "../../shared/cite/locator.ts";
import { plainOf, richText } from "../../shared/cite/rich-text.ts";
import { bigBook } from "../bench/big-book.ts";
import { describeWithCheckData } from "../kit/check-data.ts";

const OWN = join(repoRoot, "server/publish/styles");

function treeOf(path: string, root: "style" | "locale"): CslNode {
  const reading = readCsl(readFileSync(path, "utf8"), root);
  if (!reading.ok) throw new Error(`${path}, line ${reading.problem.line}: ${reading.problem.says}`);
  return reading.read.root;
}

const ownLocale = treeOf(join(OWN, "locales-en-GB.xml"), "locale");
const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** Six sources that are easily mistaken for one another: same author, same year, no author, a chapter. */
const items = new Map<string, CslItem>([
  [
    "a",
    {
      type: "book",
      title: "A First Book: With More",
      author: [{ family: "Marr", given: "Ada" }],
      issued: { "date-parts": [[1998]] },
    },
  ],
  [
    "b",
    {
      type: "book",
      title: "A Second Book",
      author: [{ family: "Marr", given: "Ada" }],
      issued: { "date-parts": [[1998]] },
    },
  ],
  [
    "c",
    {
      type: "book",
      title: "A Third Book",
      author: [{ family: "Marr", given: "Bea" }],
      issued: { "date-parts": [[1999]] },
    },
  ],
  [
    "d",
    {
      type: "chapter",
      title: "A Chapter",
      "container-title": "A Box",
      editor: [{ family: "Quill", given: "C." }],
      page: "12-19",
    },
  ],
  [
    "e",
    {
      type: "manuscript",
      title: "A Manuscript",
      archive: "The House",
      issued: { "date-parts": [[1460]], circa: true },
    },
  ],
  [
    "f",
    {
      type: "article-journal",
      title: "An Article",
      author: [{ literal: "The House" }],
      "container-title": "Annals",
      volume: 3,
    },
  ],
]);
const where = fc.constantFrom("", "p. 3", "p. 3", "4", "at the end", "ch. 2", "ff. 3r–4v");
const call = fc.record({ source: fc.constantFrom(...items.keys()), where, sameNote: fc.boolean() });

function asked(engine: CslEngine, calls: readonly { source: string; where: string; sameNote: boolean }[]): CslAsk {
  let note = 0;
  return {
    items,
    uncited: ["e"],
    calls: calls.map(({ sameNote, ...one }) => {
      note = note === 0 || !sameNote ? note + 1 : note;
      return { ...one, note: engine.inNotes ? note : 0 };
    }),
  };
}

/** One citation after another, as citeproc itself would have it: slow, and the oracle. */
function oneByOne(style: CslNode, locale: CslNode, { calls }: CslAsk): string[] {
  const engine = new CSL.Engine(
    {
      retrieveLocale: () => JSON.stringify(locale),
      retrieveItem: (id) => ({ ...JSON.parse(JSON.stringify(items.get(id))), id, volume: id === "f" ? "3" : "" }),
    },
    JSON.stringify(style),
    "en-GB",
  );
  const clusters = calls.map((one, index) => ({
    citationID: `c${index}`,
    citationItems: [{ id: one.source, ...readLocator(one.where) }],
    properties: { noteIndex: one.note },
  }));
  return engine.rebuildProcessorState(clusters, "html", []).map(([, , html]) => plainOf(richText(html)));
}

function sameAsOneByOne(style: CslNode, locale: CslNode, numRuns: number): void {
  const engine = openCslEngine(style, () => locale, "en-GB");
  fc.assert(
    fc.property(fc.array(call, { minLength: 1, maxLength: 12 }), (calls) => {
      const ask = asked(engine, calls);
      expect(engine.set(ask).citations.map(plainOf)).toEqual(oneByOne(style, locale, ask));
    }),
    { numRuns },
  );
}

describe.each(["notes-and-bibliography.csl", "author-and-year.csl"])("our own %s", (file) => {
  const style = treeOf(join(OWN, file), "style");
  const engine = openCslEngine(style, () => ownLocale, "en-GB");

  test("gives what citeproc gives one citation after another", () => {
    sameAsOneByOne(style, ownLocale, 15);
  });

  test("[C23] gives the same whatever was asked before, and changes nothing it was given", () => {
    const before = JSON.stringify([...items]);
    fc.assert(
      fc.property(fc.array(call, { maxLength: 6 }), fc.array(call, { maxLength: 6 }), (first, second) => {
        const alone = openCslEngine(style, () => ownLocale, "en-GB").set(asked(engine, second));
        engine.set(asked(engine, first));
        expect(engine.set(asked(engine, second))).toEqual(alone);
      }),
      { numRuns: 8 },
    );
    expect(JSON.stringify([...items])).toBe(before);
  });

  test("[C23] goes on after a source it does not know", () => {
    const ask = asked(engine, [{ source: "a", where: "", sameNote: false }]);
    const expected = engine.set(ask);
    expect(() => engine.set({ ...ask, items: new Map() })).toThrow(RangeError);
    expect(engine.set(ask)).toEqual(expected);
  });

  test("[C24] lets no character of a source become a look, nor lose one", () => {
    const odd = fc.string({
      unit: fc.constantFrom("<", ">", "&", "#", "[", "]", "*", "$", "x", "ö", "م", "{", "\\"),
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(odd, (text) => {
        const title = `X${text}X`;
        const ask = {
          items: new Map([["t", { type: "book", title }]]),
          calls: [{ source: "t", where: "", note: 1 }],
          uncited: [],
        };
        expect(plainOf(engine.set(ask).citations[0] ?? [])).toContain(title);
      }),
      { numRuns: 30 },
    );
  });
});

describe("our own styles", () => {
  const engineOf = (name: string): CslEngine => {
    const opened = openStyle(null, name);
    if (!opened.ok) throw new Error(opened.refusal.error.sentence);
    return opened.value;
  };
  const set = (name: string, ...calls: [source: string, where: string][]) =>
    engineOf(name).set({
      items,
      uncited: [],
      calls: calls.map(([source, at], index) => ({ source, where: at, note: index + 1 })),
    });

  test("cite in full first, then short, then as the same again", () => {
    const { citations } = set(
      "notes and bibliography",
      ["a", "p. 3"],
      ["a", "p. 3"],
      ["a", "p. 4"],
      ["d", "p. 13"],
      ["a", "f. 2r"],
    );
    expect(citations.map(plainOf)).toEqual([
      "Ada Marr, A First Book: With More (1998), p. 3.",
      "Ibid.",
      "Ibid., p. 4.",
      "C. Quill (ed.), ‘A Chapter’, in A Box (n.d.), p. 13.",
      "Marr, A First Book: With More, f. 2r.",
    ]);
  });

  test("tell two books of one year apart", () => {
    const { citations, bibliography } = set("author and year", ["a", "p. 3"], ["b", ""], ["e", "ff. 3r–4v"]);
    expect(citations.map(plainOf)).toEqual(["(Marr 1998a, p. 3)", "(Marr 1998b)", "(A Manuscript c. 1460, ff. 3r–4v)"]);
    expect(bibliography.map(({ source, text }) => [source, plainOf(text)])).toEqual([
      ["e", "A Manuscript (c. 1460) The House."],
      ["a", "Marr, Ada (1998a) A First Book: With More."],
      ["b", "Marr, Ada (1998b) A Second Book."],
    ]);
  });

  test("set titles in italics", () => {
    const [first] = set("notes and bibliography", ["a", ""]).citations;
    expect(first?.filter(({ italic }) => italic).map(({ text }) => text)).toEqual(["A First Book: With More"]);
  });
});

describe("[C25] a place in a source", () => {
  test.each([
    ["p. 12", { locator: "12", label: "page" }],
    ["pp. 12–14", { locator: "12–14", label: "page" }],
    ["12", { locator: "12", label: "page" }],
    ["ff. 3r–4v", { locator: "3r–4v", label: "folio" }],
    ["fol. 3r", { locator: "3r", label: "folio" }],
    ["ch. 4", { locator: "4", label: "chapter" }],
    ["§ 7", { locator: "7", label: "section" }],
    ["ll. 3-5", { locator: "3-5", label: "line" }],
    ["bk. ii", { locator: "ii", label: "book" }],
    ["s.v. lancea", { locator: "lancea", label: "sub-verbo" }],
    ["note of the editor", { suffix: ", note of the editor" }],
    ["at the end", { suffix: ", at the end" }],
    ["  ", {}],
  ])("%s", (written, locator) => {
    expect(readLocator(written)).toEqual(locator);
  });
});

describe("files in a folder of styles", () => {
  const NS = 'xmlns="http://purl.org/net/xbiblio/csl" version="1.0" class="note"';
  const info = "<info><title>A style</title></info>";
  const sound = `<style ${NS}>${info}<citation><layout><text variable="title"/></layout></citation></style>`;
  const folderWith = (files: Record<string, string>): string => {
    const folder = mkdtempSync(join(tmpdir(), "styles-"));
    folders.push(folder);
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
    return folder;
  };

  test("are listed behind our own, by name; a broken one stops none of the others", () => {
    const folder = folderWith({ "a.csl": sound, "b.csl": sound, "c.csl": "<style", "readme.txt": "no style" });
    const { styles, broken } = listStyles(folder);
    expect(styles.map(({ name, own, inNotes }) => [name, own, inNotes])).toEqual([
      ["notes and bibliography", true, true],
      ["author and year", true, false],
      ["A style", false, true],
      ["A style (b.csl)", false, true],
    ]);
    expect(broken.map(({ file }) => file)).toEqual(["c.csl"]);
    expect(openStyle(folder, "A style").ok).toBe(true);
  });

  test("that are not there at all are no trouble", () => {
    expect(listStyles(join(tmpdir(), "no such folder")).broken).toEqual([]);
    expect(listStyles(null).styles).toHaveLength(2);
  });

  test("that cannot be read are told of", () => {
    const folder = folderWith({});
    mkdirSync(join(folder, "d.csl"));
    expect(listStyles(folder).broken[0]?.sentence).toContain("The file d.csl");
  });

  test.each([
    ["no XML", "words", "line 1: "],
    ["not closed", `<style ${NS}>${info}`, "line 1: it is no well-formed XML (unclosed tag: style)"],
    ["an entity nobody knows", sound.replace("A style", "&bomb;"), "line 1: it is no well-formed XML"],
    ["another language of XML", "<html/>", "its first element is not in the namespace http://purl.org/net/xbiblio/csl"],
    ["a locale", `<locale ${NS}/>`, "it begins with <locale> where <style> was expected"],
    ["another version", sound.replace('version="1.0"', 'version="0.8"'), "it is not written for CSL 1.0"],
    ["no title", sound.replace("A style", ""), "it has no title (info, title)"],
    ["no citation", `<style ${NS}>${info}</style>`, "it has no <citation>"],
    [
      "only another's name",
      `<style ${NS}><info><title>x</title><link rel="independent-parent" href="http://example.org/p"/></info></style>`,
      "it only names another style (http://example.org/p); put that one into the folder instead",
    ],
    ["no layout", `<style ${NS}>${info}<citation/></style>`, "<citation> has no <layout>"],
    ["another class", sound.replace('class="note"', 'class="margin"'), 'its class is neither "note" nor "in-text"'],
    ["an element of its own", sound.replace("<text ", "\n<paint "), "line 2: <paint> is no element of CSL"],
    [
      "a macro that is not there",
      sound.replace('variable="title"', 'macro="gone"'),
      "the macro “gone” is called and not there",
    ],
    [
      "a macro that calls itself",
      sound.replace("<citation>", '<macro name="m">\n<text macro="m"/></macro><citation>'),
      "line 2: the macro “m” calls itself",
    ],
  ])("%s", (_what, text, says) => {
    const text2 = text.replace(/<paint ([^>]*)\/>/, "<paint $1/>");
    const folder = folderWith({ "broken.csl": text2 });
    const [found] = listStyles(folder).broken;
    expect(found?.sentence).toContain("The file broken.csl in the folder of citation styles cannot be used: line ");
    expect(found?.sentence).toContain(says);
    expect(found?.sentence).toContain("Mend it, or take it out of the folder.");
    const opened = openStyle(folder, "A style");
    expect(opened.ok ? null : opened.refusal.error.code).toBe("style_unknown");
  });

  test("in a language that has no words here are refused until its locale is put beside them", () => {
    const style = sound.replace(NS, `${NS} default-locale="fr-FR"`);
    const without = openStyle(folderWith({ "a.csl": style }), "A style");
    expect(without.ok ? null : without.refusal.error.sentence).toContain("there is no file locales-fr-FR.xml");
    const locale = `<locale ${NS} xml:lang="fr-FR"><terms><term name="open-quote">« </term></terms></locale>`;
    expect(openStyle(folderWith({ "a.csl": style, "locales-fr-FR.xml": locale }), "A style").ok).toBe(true);
    const broken = openStyle(folderWith({ "a.csl": style, "locales-fr-FR.xml": "<locale" }), "A style");
    expect(broken.ok ? null : broken.refusal.error.sentence).toContain("The file locales-fr-FR.xml");
  });
});

describe("a source that is no CSL-JSON", () => {
  test.each([
    ["a name in words", { type: "book", title: "T", author: "Ada Marr" }, "“author”; expected was a list of names"],
    ["a date in words", { type: "book", title: "T", issued: "1998" }, "“issued”; expected was a date"],
    ["a list for a title", { type: "book", title: ["T"] }, "“title”; expected was words or a number"],
  ])("%s", (_what, item, says) => {
    const problem = problemWithSource(item);
    expect(problem?.refusal.error.code).toBe("source_unreadable");
    expect(problem?.refusal.error.sentence).toContain(says);
  });

  test("what CSL allows is allowed", () => {
    for (const item of items.values()) expect(problemWithSource(item)).toBeNull();
    expect(
      problemWithSource({ type: "book", custom: { mine: [1] }, issued: { "date-parts": [["1998", 2]] } }),
    ).toBeNull();
  });
});

describeWithCheckData("published styles", (path) => {
  const styleAt = (name: string) => treeOf(path("csl", "styles", `${name}.csl`), "style");
  const localeAt = (tag: string) => {
    const named = ["en-GB", "en-US"].includes(tag) ? tag : "en-US";
    return treeOf(path("csl", "locales", `locales-${named}.xml`), "locale");
  };
  const open = (name: string) => openCslEngine(styleAt(name), localeAt, "en-GB");

  // The Chicago Manual of Style's own quick guide: 17th edition for notes, 18th for author and date. These examples and the
  // one below are written down from memory: the check data hold the styles but no copy of the guides.
  const guide = new Map<string, CslItem>([
    [
      "smith",
      {
        type: "book",
        title: "Swing Time",
        author: [{ family: "Smith", given: "Zadie" }],
        "publisher-place": "New York",
        publisher: "Penguin Press",
        issued: { "date-parts": [[2016]] },
      },
    ],
    [
      "grazer",
      {
        type: "book",
        title: "A Curious Mind: The Secret to a Bigger Life",
        "title-short": "Curious Mind",
        author: [
          { family: "Grazer", given: "Brian" },
          { family: "Fishman", given: "Charles" },
        ],
        "publisher-place": "New York",
        publisher: "Simon & Schuster",
        issued: { "date-parts": [[2015]] },
      },
    ],
    [
      "yu",
      {
        type: "book",
        title: "Interior Chinatown",
        author: [{ family: "Yu", given: "Charles" }],
        publisher: "Pantheon Books",
        issued: { "date-parts": [[2020]] },
      },
    ],
    // MHRA Style Guide, 3rd edition, 11.2.2, without the place, which the 4th leaves out.
    [
      "mcarthur",
      {
        type: "book",
        title: "Worlds of Reference: Lexicography, Learning and Language from the Clay Tablet to the Computer",
        author: [{ family: "McArthur", given: "Tom" }],
        publisher: "Cambridge University Press",
        issued: { "date-parts": [[1986]] },
      },
    ],
  ]);
  const cite = (engine: CslEngine, ...calls: [source: string, where: string][]) => {
    const made = engine.set({
      items: guide,
      uncited: [],
      calls: calls.map(([source, at], index) => ({ source, where: at, note: engine.inNotes ? index + 1 : 0 })),
    });
    return { citations: made.citations.map(plainOf), bibliography: made.bibliography.map(({ text }) => plainOf(text)) };
  };

  test("Chicago, 17th edition, notes", () => {
    const { citations, bibliography } = cite(
      open("chicago-notes-bibliography-17th-edition"),
      ["smith", "pp. 315–16"],
      ["grazer", "p. 12"],
      ["smith", "p. 320"],
      ["grazer", "p. 37"],
    );
    expect(citations).toEqual([
      "Zadie Smith, Swing Time (New York: Penguin Press, 2016), 315–16.",
      "Brian Grazer and Charles Fishman, A Curious Mind: The Secret to a Bigger Life (New York: Simon & Schuster, 2015), 12.",
      "Smith, Swing Time, 320.",
      "Grazer and Fishman, Curious Mind, 37.",
    ]);
    expect(bibliography).toContain("Smith, Zadie. Swing Time. New York: Penguin Press, 2016.");
  }, 60_000);

  test("Chicago, 18th edition, author and date", () => {
    const { citations, bibliography } = cite(open("chicago-author-date"), ["yu", "p. 45"]);
    expect(citations).toEqual(["(Yu 2020, 45)"]);
    expect(bibliography).toEqual(["Yu, Charles. 2020. Interior Chinatown. Pantheon Books."]);
  }, 60_000);

  test("MHRA, 4th edition, notes", () => {
    const { citations } = cite(open("mhra-notes"), ["mcarthur", "p. 59"]);
    expect(citations).toEqual([
      "Tom McArthur, Worlds of Reference: Lexicography, Learning and Language from the Clay Tablet to the Computer (Cambridge University Press, 1986), p. 59.",
    ]);
  }, 60_000);

  test.each([
    "mhra-notes",
    "chicago-notes-bibliography-16th-edition",
    "chicago-author-date-16th-edition",
    "modern-language-association",
  ])(
    "%s gives what citeproc gives one citation after another",
    (name) => {
      sameAsOneByOne(styleAt(name), localeAt("en-GB"), 5);
    },
    60_000,
  );

  test("our own locale has every word that the published one has", () => {
    const terms = (locale: CslNode) =>
      locale.children
        .flatMap((child) => (typeof child !== "string" && child.name === "terms" ? child.children : []))
        .flatMap((term) => (typeof term === "string" ? [] : [`${term.attrs.name} ${term.attrs.form ?? "long"}`]));
    const own = new Set(terms(ownLocale));
    const missing = terms(localeAt("en-GB")).filter((term) => !own.has(term));
    // Words for kinds of source and people that no book on riding cites are left to whoever needs them.
    expect(
      missing.filter((term) =>
        /^(page|folio|line|chapter|section|volume|edition|ibid|editor|translator|no date|accessed|open|close|and|et-al|in|month|ordinal)\b/.test(
          term,
        ),
      ),
    ).toEqual([]);
  });

  test("sources as the tests and the benches have them are CSL-JSON", () => {
    const schema = JSON.parse(readFileSync(path("csl", "csl-data.json"), "utf8"));
    const validate = new Ajv({ strict: false }).compile(schema);
    const sources = (bigBook({ exercises: 1, steps: 1, cruxes: 1 }).rows.sources ?? []).map(({ value }) => value.item);
    const all = [...sources, ...[...items, ...guide].map(([id, item]) => ({ id, ...item }))];
    expect(validate(all)).toBe(true);
    expect(validate([{ id: "x", type: "book", author: "Ada Marr" }])).toBe(false);
  });
});
