/** What is wanted, and words in context. Rules T29-T32. Spellings: ALA-LC and DIN 31635. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foldForSearch } from "../../shared/text/fold.ts";
import { WordFinder, wantedWords } from "../../shared/text/wanted-words.ts";
import { wordsInContext } from "../../shared/text/words-in-context.ts";

const holdsAll = (text: string, query: string) => {
  const finder = new WordFinder(wantedWords(query));
  const folded = foldForSearch(text);
  return finder.wanted.length > 0 && finder.wanted.every((_, number) => finder.holds(folded, number));
};

describe("wantedWords", () => {
  it.each([
    ["turn wall", ["turn…", "wall…"]],
    ["Turn, TURN turn", ["turn…"]],
    ['"the left hand"', ["the left hand"]],
    ["“the left hand” wall", ["the left hand", "wall…"]],
    ['wall "the le', ["wall…", "the le…"]],
    ["7.13", ["7…", "13…"]],
    ["+turn -wall ^2 title:x~1 *", ["turn…", "wall…", "2…", "title…", "x…", "1…"]],
    ["Wizārat at-Tarbiya", ["wizarat…", "al…", "tarbiya…"]],
    ["", []],
    ['"" * -- ?', []],
  ])("[T29] %j wants %j", (query, expected) => {
    expect(wantedWords(query).map(({ words, goesOn }) => words.join(" ") + (goesOn ? "…" : ""))).toEqual(expected);
  });

  it.each([
    ["finds a word that goes on", "he turns away", "turn", true],
    ["stems nothing", "he is turning", "turns", false],
    ["not inside a word", "he will return", "turn", false],
    ["both words, in any order", "the wall, then he turns", "turn wall", true],
    ["not one of two", "the wall", "turn wall", false],
    ["without accents", "Exeat ā portā", "porta", true],
    ["another romanization", "kitāb al-riyāḍah", "riyāḍa", true],
    ["ḫ and kh", "aš-šayḫ", "shaykh", true],
    ["the article, however it is joined", "fī r-ramal", "ramal", true],
    ["Greek without accents", "περὶ ἱππικῆς", "ιππικης", true],
    ["a Greek beginning", "περὶ ἱππικῆς", "ιππ", true],
    ["Arabic with vowel signs", "الرُّمْحُ", "الرمح", true],
    ["[T30] after particles", "والرُّمْح", "رمح", true],
    ["a sign that means something elsewhere", "half * whole", "*", false],
    ["digits of another script", "سنة ٧٨٢", "782", true],
  ])("[T30] %s", (_name, text, query, expected) => {
    expect(holdsAll(text, query)).toBe(expected);
  });

  it.each([
    ["in order", "with the left hand only", '"left hand"', true],
    ["not the other way", "with the left hand only", '"hand left"', false],
    ["whole words", "with the left hands", '"left hand"', false],
    ["signs between", "to the left, hand it over", '"left hand"', true],
    ["over a line break", "to the left\nhand", '"left hand"', true],
    ["not closed yet", "with the left hands", '"left han', true],
    ["nothing between", "left upper hand", '"left hand"', false],
  ])("[T31] %s", (_name, text, query, expected) => {
    expect(holdsAll(text, query)).toBe(expected);
  });

  it("[T29] takes any text for a query", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), fc.string({ unit: "grapheme" }), (query, text) => {
        new WordFinder(wantedWords(query)).hits(foldForSearch(text));
      }),
    );
  });
});

describe("wordsInContext", () => {
  const SIZE = { before: 12, after: 20 };
  const quoted = (text: string, from: number, to: number) => {
    const context = wordsInContext(text, [{ from, to }], SIZE);
    return `${context.cutBefore ? "…" : ""}${context.quote}${context.cutAfter ? "…" : ""}`;
  };

  it.each([
    ["one two three", 4, 7, "one two three"],
    ["alpha beta gamma delta epsilon zeta eta theta iota", 17, 22, "…beta gamma delta epsilon zeta…"],
    ["nopausenopausenopausenopausenopause", 14, 21, "…pausenopausenopausenopausenopaus…"],
    ["", 0, 0, ""],
  ])("[T32] %j at %i to %i gives %j", (text, from, to, expected) => {
    expect(quoted(text, from, to)).toBe(expected);
  });

  it("[T32] quotes the very words, whole characters only", () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: "grapheme", minLength: 1, maxLength: 30 }), { minLength: 1, maxLength: 12 }),
        fc.nat(11),
        (words, at) => {
          const text = words.join(" ");
          const which = at % words.length;
          const from = words.slice(0, which).join(" ").length + (which === 0 ? 0 : 1);
          const to = from + (words[which] ?? "").length;
          const { quote, at: start, hits } = wordsInContext(text, [{ from, to }], SIZE);
          expect(text.slice(start, start + quote.length)).toBe(quote);
          expect(hits.map((hit) => quote.slice(hit.from, hit.to))).toEqual([words[which]]);
        },
      ),
    );
  });
});
