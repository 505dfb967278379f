/** Searching a whole store: against a plain search over the folded texts, over the demo, and after changes. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FIND_GROUPS, type FindAnswer, type FindGroup, type Found } from "../../schema/find.ts";
import { readImport } from "../../server/import/read-import.ts";
import { readCurrentTexts, readRow } from "../../server/store/index.ts";
import { foldForSearch } from "../../shared/text/fold.ts";
import { describeWithCheckData } from "../kit/check-data.ts";
import { create, remove, set } from "../store/store-builders.ts";
import { demoLibrary, type Library, libraryId, libraryOf, WORK } from "./library.ts";

const MOST = 200;
const ofGroup = (answer: FindAnswer, group: FindGroup): Found[] =>
  answer.groups.find((one) => one.group === group)?.found ?? [];
const passagesWith = ({ finder }: Pick<Library, "finder">, q: string) =>
  ofGroup(finder.find({ q, limit: MOST }), "passages").map(({ id }) => id);

/** The oracle: no index, no finder, only the folded texts and a search for the beginning of a word. */
function plainSearch(texts: readonly string[]): (word: string) => number[] {
  const plain = texts.map((text) => ` ${foldForSearch(text).replace(/[^\p{L}\p{N}]/gu, " ")}`);
  return (word) => {
    const wanted = foldForSearch(word);
    const inside = /\p{Script=Arabic}/u.test(wanted);
    return plain.flatMap((text, index) => (text.includes(inside ? wanted : ` ${wanted}`) ? [index] : []));
  };
}

const TEXTS = [
  "Let him set out from the gate at an easy canter, the well upon his left.",
  "When he has gone once about, he brings the spear across before him and gives it to the other.",
  "Exeat a porta leni cursu, puteo ad laevam, hasta dēmissa iuxta ocream dextram.",
  "ἱππικὴ τέχνη· περὶ τοῦ ἵππου καὶ τῆς ἱππασίας",
  "باب في العمل بالرُّمْحِ على الفرس، والرمح باليد اليُمنى",
  "Bāb fī l-ʿamal bi-r-rumḥ ʿalā al-faras, qūwah wa-šiddah",
  "bāb fī al-ʻamal bi-al-rumḥ: quwwa wa-shidda",
  "The point always away from the wall; again, the SPEAR.\nA second line turns.",
  "",
];

describe("finding passages", () => {
  const library = libraryOf(TEXTS);

  it.each([
    ["spear", [1, 7]],
    ["SPÉAR", [1, 7]],
    ["turn", [7]],
    ["demissa", [2]],
    ["ιππ", [3]],
    ["ἵππος", []],
    ["رمح", [4]],
    ["rumh", [5, 6]],
    ["quwa", [5, 6]],
    ["šidda", [5, 6]],
    ["ear", []],
    ['"the other"', [1]],
    ['"other the"', []],
    ['"spear a second"', [7]],
    ["spear other", [1]],
    ["900004", [3]],
    ["", []],
    ["*", []],
    ["spear^4 ~", []],
  ])("%s", (query, expected) => {
    expect(passagesWith(library, query).sort()).toEqual(expected.map((index) => library.passages[index]));
  });

  it("finds for one word what a plain search over the folded texts finds", () => {
    const words = [...new Set(TEXTS.flatMap((text) => text.split(/[^\p{L}\p{M}\p{N}ʿʻ]+/u)))].filter(
      (word) => foldForSearch(word) !== "",
    );
    const plainly = plainSearch(TEXTS);
    const beginning = fc.constantFrom(...words).chain((word) => {
      const folded = foldForSearch(word);
      return fc.integer({ min: 1, max: folded.length }).map((length) => folded.slice(0, length));
    });
    const random = fc.string({ unit: fc.constantFrom(..."aehlprst"), minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(fc.oneof(fc.constantFrom(...words), beginning, random), (word) => {
        // Words that another folding joins or parts are no single words.
        fc.pre(/^[\p{L}\p{N}]+$/u.test(foldForSearch(word)));
        const expected = plainly(word).map((index) => library.passages[index]);
        expect(passagesWith(library, word).sort()).toEqual(expected);
      }),
      { numRuns: 400 },
    );
  });

  it("takes any text for a query, and what it quotes holds what was asked", () => {
    const query = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.string({ unit: fc.constantFrom(...'abert *+-~^:"“”()\\/.'), maxLength: 20 }),
      fc.constantFrom("__proto__", "constructor", "toString spear", "_index"),
    );
    fc.assert(
      fc.property(query, (q) => {
        for (const { found, total } of library.finder.find({ q, limit: 5 }).groups) {
          expect(found).toHaveLength(Math.min(total, 5));
        }
      }),
    );
  });

  it("quotes the very words, and says where they stand in the text", () => {
    for (const [query, expected] of [
      ["rumh", ["rumḥ"]],
      ["turn", ["turns"]],
      ["quwa", ["qūwah"]],
      ['"to the other"', ["to the other"]],
      ["رمح", ["بالرُّمْحِ", "والرمح"]],
    ] as const) {
      const [first] = ofGroup(library.finder.find({ q: query, limit: 5 }), "passages");
      expect(first?.words?.hits.map(({ from, to }) => first.words?.quote.slice(from, to))).toEqual(expected);
      const place = first?.leads.words ?? { text: "", from: 0, to: 0 };
      const text = readRow(library.store, "passageTexts", place.text)?.value.text;
      expect(text?.slice(place.from, place.to)).toBe(expected[0]);
    }
  });

  it("lists the very word before words that only begin with it, each in the order of the book", () => {
    const { finder, passages } = libraryOf(["turns", "a turn", "turned", "turn"]);
    expect(passagesWith({ finder }, "turn")).toEqual([1, 3, 0, 2].map((index) => passages[index]));
  });

  it("counts what it does not list", () => {
    const { finder } = libraryOf(Array.from({ length: 30 }, () => "the wall"));
    const [group] = finder.find({ q: "wall", limit: 4 }).groups;
    expect([group?.total, group?.found.length]).toEqual([30, 4]);
  });

  it("answers an empty store", () => {
    expect(libraryOf([]).finder.find({ q: "wall", limit: 5 }).groups).toEqual([]);
  });
});

describe("after a change", () => {
  it("finds what was written, and no longer what was overwritten or removed", () => {
    const library = libraryOf(["the gate", "the elm"]);
    const [gate = "", elm = ""] = library.passages;
    expect(passagesWith(library, "gate")).toEqual([gate]);
    library.amend(gate, library.texts[0] ?? "", "stair", 5, 9);
    expect(passagesWith(library, "gate")).toEqual([]);
    expect(passagesWith(library, "stair")).toEqual([gate]);
    expect(passagesWith(library, "elm")).toEqual([elm]);

    const note = libraryId(700_000);
    library.write(create("notes", { id: note, work: WORK, text: "beside the elm" }));
    const notes = () => ofGroup(library.finder.find({ q: "beside", limit: 5 }), "notes").map(({ id }) => id);
    expect(notes()).toEqual([note]);
    library.write(set("notes", note, 1, { text: "under it" }));
    expect(notes()).toEqual([]);
    library.write(set("notes", note, 2, { text: "beside it" }));
    expect(notes()).toEqual([note]);
    library.write(remove("notes", note, 3));
    expect(notes()).toEqual([]);
  });
});

describe("over the demo", () => {
  const { store, finder } = demoLibrary();
  const everything = ["the", "he", "spear", "hand", "turn", "a", "well", "left"].flatMap((q) =>
    finder.find({ q, limit: MOST }).groups.flatMap(({ group, found }) => found.map((one) => ({ group, ...one }))),
  );

  it("finds something of every group that has words there", () => {
    const groups = new Set(everything.map(({ group }) => group));
    expect(FIND_GROUPS.filter((group) => !groups.has(group))).toEqual([]);
  });

  it("leads to a passage that is there, and hits lie within what is quoted", () => {
    const texts = new Map(readCurrentTexts(store).map((text) => [text.id, text]));
    for (const { leads, words, title, titleHits, kind, id } of everything) {
      expect(readRow(store, "passages", leads.passage ?? "")).not.toBeNull();
      expect(readRow(store, kind, id)).not.toBeNull();
      if (leads.thing) expect(readRow(store, leads.thing.kind as "notes", leads.thing.id)).not.toBeNull();
      if (leads.words) expect(texts.get(leads.words.text)?.passage).toBe(leads.passage);
      for (const { from, to } of titleHits) expect(title.slice(from, to).trim()).not.toBe("");
      for (const { from, to } of words?.hits ?? []) expect(words?.quote.slice(from, to).trim()).not.toBe("");
      expect(titleHits.length + (words?.hits.length ?? 0)).toBeGreaterThan(0);
    }
  });

  it.each([
    ["steps", "elements"],
    ["cruxes", "cruxes"],
    ["questions", "questions"],
    ["notes", "notes"],
  ] as const)("%s bring themselves forward where they have words", (group, kind) => {
    const tied = everything.filter((one) => one.group === group && one.reference !== "");
    expect(tied.length).toBeGreaterThan(0);
    for (const { leads, id } of tied) {
      if (leads.thing?.kind === kind) expect(leads.thing.id).toBe(id);
      else expect([group, leads.thing?.kind]).toEqual(["questions", "cruxes"]);
    }
  });
});

describeWithCheckData("over Xenophon, On the Art of Horsemanship, in Greek (Perseus, CC BY-SA 3.0 US)", (path) => {
  it("finds for one word in eight of its beginning what a plain search finds", () => {
    const read = readImport(readFileSync(path("texts", "xenophon", "xen.opuscula_gk.xml")), { name: "xen.xml" });
    if (!read.ok) throw new Error(read.refusal.sentence);
    const text = read.file.texts.find(({ title }) => title === "Περὶ Ἱππικῆς");
    const words = (text?.passages ?? []).slice(0, 160).map((passage) => passage.text);
    const plainly = plainSearch(words);
    const library = libraryOf(words, "grc");
    const asked = new Set(
      words.slice(0, 25).flatMap((passage) => foldForSearch(passage).match(/[\p{L}\p{N}]+/gu) ?? []),
    );
    expect(asked.size).toBeGreaterThan(100);
    for (const word of asked) {
      expect(passagesWith(library, word).sort(), word).toEqual(plainly(word).map((index) => library.passages[index]));
    }
  });
});
