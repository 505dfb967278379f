/** Folding for search: published spellings of the same word fold together. Rules T21 and T22.
 *  Spellings: ALA-LC romanization table for Arabic; the other side by the letters of DIN 31635. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foldForSearch, foldWithOffsets, unfoldRange } from "../../shared/text/index.ts";

describe("foldForSearch", () => {
  it.each([
    ["waḍʻ", "waḍʿ", "wad"],
    ["ṣūrah", "ṣūra", "sura"],
    ["kitāb", "kitāb", "kitab"],
    ["shaykh", "šayḫ", "shaykh"],
    ["Muṣṭafá", "Muṣṭafā", "mustafa"],
    ["Wizārat al-Tarbiyah", "Wizārat at-Tarbiya", "wizarat al-tarbiya"],
    ["masʼalah", "masʾala", "masala"],
    ["qūwah", "quwwa", "quwa"],
    ["Abū al-Layth al-Samarqandī", "Abū l-Layṯ as-Samarqandī", "abu al-layth al-samarqandi"],
    ["Riḥlat Ibn Jubayr", "Riḥlat Ibn Ǧubayr", "rihlat ibn jubayr"],
    ["al-shams", "aš-šams", "al-shams"],
    ["dhahab", "ḏahab", "dhahab"],
    ["ghazal", "ġazal", "ghazal"],
    ["nabīyah", "nabiyya", "nabiya"],
  ])("[T21] %s and %s", (alaLc, din, folded) => {
    expect(foldForSearch(alaLc)).toBe(folded);
    expect(foldForSearch(din)).toBe(folded);
  });

  it.each([
    ["قُوَّة", "قوة"],
    ["مسألة", "مساله"],
    ["كتـــاب", "كتاب"],
    ["مصطفى", "مصطفي"],
    ["ٱلرمح", "الرمح"],
    ["٧٨٢", "782"],
  ])("[T21] Arabic script: %s as %s", (one, other) => {
    expect(foldForSearch(one)).toBe(foldForSearch(other));
  });

  it.each([
    ["case and accents", "ÉCU", "ecu"],
    ["composed and decomposed", "\u00e9", "e"],
    ["decomposed", "e\u0301", "e"],
    ["Greek accents and final sigma", "ἱππικῆς", "ιππικησ"],
    ["ligatures", "ﬁeld Æon", "field aeon"],
    ["white space of any kind, none at the ends", " the\n lance\u00a0 ", "the lance"],
    ["apostrophes", "the horse’s", "the horses"],
    ["dashes", "a–b", "a-b"],
    ["soft hyphens", "can\u00adter", "canter"],
  ])("[T21] %s", (_name, text, folded) => {
    expect(foldForSearch(text)).toBe(folded);
  });

  const anyWords = fc.string({
    unit: fc.oneof(
      fc.constantFrom(..."ahtTsšṯǧġʻʼʿ'l-wyuiū \n\u0301ةـ"),
      fc.string({ unit: "grapheme", minLength: 1, maxLength: 1 }),
    ),
    maxLength: 30,
  });

  it("[T21] folding twice changes nothing", () => {
    fc.assert(
      fc.property(anyWords, (text) => {
        const once = foldForSearch(text);
        expect(foldForSearch(once)).toBe(once);
      }),
    );
  });

  it("[T22] every folded unit has a place in the original, in order", () => {
    fc.assert(
      fc.property(anyWords, (text) => {
        const folded = foldWithOffsets(text);
        expect([folded.starts.length, folded.ends.length]).toEqual([folded.text.length, folded.text.length]);
        folded.starts.forEach((start, index) => {
          expect(start).toBeLessThan(folded.ends[index]!);
          expect(folded.ends[index]).toBeLessThanOrEqual(text.length);
          if (index > 0) expect(start).toBeGreaterThanOrEqual(folded.starts[index - 1]!);
        });
      }),
    );
  });
});

describe("unfoldRange", () => {
  it.each([
    ["Riḥlat Ibn Ǧubayr", "jubayr", "Ǧubayr"],
    ["he says šayḫ twice", "shaykh", "šayḫ"],
    ["Wizārat at-Tarbiya", "al-tarbiya", "at-Tarbiya"],
    ["the\n  lance", "the lance", "the\n  lance"],
    ["cafe\u0301s", "cafe", "cafe\u0301"],
  ])("[T22] in %j finds %j as %j", (text, query, found) => {
    const folded = foldWithOffsets(text);
    const at = folded.text.indexOf(query);
    const { from, to } = unfoldRange(folded, at, at + query.length);
    expect(text.slice(from, to)).toBe(found);
  });

  it("[T22] refuses a place that is not there", () => {
    expect(() => unfoldRange(foldWithOffsets("ab"), 1, 3)).toThrow("A folded text of 2 units has no place 1 to 3.");
  });
});
