/** CTS URNs and citation lines. Rules C10-C18. The published URNs are the examples of the specification: "The Canonical
 *  Text Services URN specification", version 2.0.rc.1, C. Blackwell and N. Smith, February 2014. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CtsUrn,
  citationLine,
  ctsEqual,
  formatCtsUrn,
  parseCtsUrn,
  passageUrn,
  shortenQuote,
} from "../../shared/cite/index.ts";

const ILIAD = "urn:cts:greekLit:tlg0012.tlg001.hmt01:";

function read(text: string): CtsUrn {
  const result = parseCtsUrn(text);
  if (!result.ok) throw new Error(result.sentence);
  return result.urn;
}

const words = (text: string, occurrence = 1) => ({ from: { text, occurrence }, to: null });

it("[C10] takes a version named with a hyphen, as the published Greek and Latin collections name theirs", () => {
  // The form of the Perseus texts (source: the "urn" fields of their JSON, tlg0032.tlg013.perseus-eng2).
  const urn = read("urn:cts:greekLit:tlg0032.tlg013.perseus-eng2:7.13-7.17");
  expect(urn.work).toEqual(["tlg0032", "tlg013", "perseus-eng2"]);
  expect(urn.passage?.to?.levels).toEqual(["7", "17"]);
});

describe("the specification's examples", () => {
  it.each([
    ["urn:cts:greekLit:tlg0012:", ["tlg0012"], null],
    ["urn:cts:greekLit:tlg0012.tlg001:", ["tlg0012", "tlg001"], null],
    [ILIAD, ["tlg0012", "tlg001", "hmt01"], null],
    [`${ILIAD}10.1`, 3, { from: { levels: ["10", "1"], words: null }, to: null }],
    [`${ILIAD}10`, 3, { from: { levels: ["10"], words: null }, to: null }],
    [
      `${ILIAD}10.1-10.10`,
      3,
      { from: { levels: ["10", "1"], words: null }, to: { levels: ["10", "10"], words: null } },
    ],
    [`${ILIAD}10.4@Atreus`, 3, { from: { levels: ["10", "4"], words: words("Atreus") }, to: null }],
    [`${ILIAD}10.1@the[2]`, 3, { from: { levels: ["10", "1"], words: words("the", 2) }, to: null }],
    [
      `${ILIAD}10.4@Atreus-10.10`,
      3,
      { from: { levels: ["10", "4"], words: words("Atreus") }, to: { levels: ["10", "10"], words: null } },
    ],
    [
      `${ILIAD}10.4@Atreus-10.10@trembling.`,
      3,
      {
        from: { levels: ["10", "4"], words: words("Atreus") },
        to: { levels: ["10", "10"], words: words("trembling.") },
      },
    ],
  ])("[C10][C13] %s", (text, work, passage) => {
    const urn = read(text);
    expect(urn.namespace).toBe("greekLit");
    if (typeof work === "number") expect(urn.work.length).toBe(work);
    else expect(urn.work).toEqual(work);
    expect(urn.passage).toEqual(passage);
    expect(formatCtsUrn(urn)).toBe(text);
  });

  it("[C14] the first occurrence needs no number", () => {
    expect(ctsEqual(`${ILIAD}10.4@Atreus[1]`, `${ILIAD}10.4@Atreus`)).toBe(true);
    expect(ctsEqual(`${ILIAD}10.4@Atreus[2]`, `${ILIAD}10.4@Atreus`)).toBe(false);
    expect(ctsEqual("no", "no")).toBe(false);
  });

  it("[C13] a range of words in one node", () => {
    expect(read(`${ILIAD}10.4@Atreus-trembling`).passage).toEqual({
      from: {
        levels: ["10", "4"],
        words: { from: { text: "Atreus", occurrence: 1 }, to: { text: "trembling", occurrence: 1 } },
      },
      to: null,
    });
  });

  it("[C10] takes the scheme in capitals, as the generic syntax does", () => {
    expect(ctsEqual(`URN:CTS:greekLit:tlg0012:`, "urn:cts:greekLit:tlg0012:")).toBe(true);
  });
});

describe("refusals", () => {
  it.each([
    ["http://example.org", "cts_not_a_cts_urn", `A CTS URN begins with "urn:cts:"; got "http://example.org".`],
    ["urn:cts:greekLit", "cts_parts_missing", "names a namespace and a work: urn:cts:NAMESPACE:WORK:PASSAGE"],
    ["urn:cts::a.b:", "cts_parts_missing", "names a namespace and a work"],
    [
      "urn:cts:greekLit:tlg0012",
      "cts_parts_missing",
      `even when no passage follows: write "urn:cts:greekLit:tlg0012:".`,
    ],
    ["urn:cts:n:g.w:1:2", "cts_parts_too_many", "four colons before its passage and none after"],
    ["urn:cts:n:g.w.v.e.x:1", "cts_work_malformed", "one to four parts with a stop between"],
    ["urn:cts:n:g.w.:1", "cts_work_malformed", "GROUP.WORK.VERSION.EXEMPLAR"],
    ["urn:cts:n:g:1", "cts_passage_without_work", `"g" names a group only`],
    ["urn:cts:n:g.w:1.", "cts_passage_malformed", "a stop between levels and none at the end"],
    ["urn:cts:n:g.w:1-", "cts_passage_malformed", "such as 10.4 or a range such as 10.1-10.10"],
    ["urn:cts:n:g.w:1-2-3", "cts_passage_malformed", "such as 10.4"],
    ["urn:cts:n:g.w:1@the", "cts_words_need_version", `name the edition or translation after "g.w"`],
    ["urn:cts:n:g.w:1-2@the", "cts_words_need_version", "belong to one version"],
    ["urn:cts:n:g.w.v:1@", "cts_words_malformed", "as in 10.1@the[2]"],
    ["urn:cts:n:g.w.v:1@the[0]", "cts_words_malformed", "the number of their occurrence from 1"],
    ["urn:cts:n:g.w.v:1@the[x]", "cts_words_malformed", "as in 10.1@the[2]"],
    ["urn:cts:n:g.w.v:1@a%20b", "cts_character_not_allowed", `The passage of a CTS URN may not hold "%".`],
    ["urn:cts:n:g.w.v:1@a\tb", "cts_character_not_allowed", "the control character U+0009"],
    ["urn:cts:n-x:g.w:1", "cts_character_not_allowed", `"-" has a meaning of its own`],
  ])("[C10][C11][C12] %j is %s", (text, code, sentence) => {
    const result = parseCtsUrn(text);
    expect(result).toMatchObject({ ok: false, code });
    expect(!result.ok && result.sentence).toContain(sentence);
  });
});

describe("laws", () => {
  const name = fc.string({ unit: fc.constantFrom(..."abc019é"), minLength: 1, maxLength: 4 });
  const string = fc.record({
    text: fc.string({ unit: fc.constantFrom(..."ab 1.,ع"), minLength: 1, maxLength: 6 }),
    occurrence: fc.integer({ min: 1, max: 12 }),
  });
  const spoken = fc.record({ from: string, to: fc.option(string) });
  const node = fc.record({ levels: fc.array(name, { minLength: 1, maxLength: 3 }), words: fc.option(spoken) });
  const digits = fc.array(fc.integer({ min: 1, max: 99 }).map(String), { minLength: 1, maxLength: 3 });

  it("[C13] what is written is read back", () => {
    const passage = fc.oneof(
      fc.record({ from: node, to: fc.constant(null) }),
      // After words, a second node is known by its digits and its levels.
      fc
        .record({
          from: fc.record({ levels: digits, words: fc.option(string.map((from) => ({ from, to: null }))) }),
          to: fc.record({ levels: digits, words: fc.option(spoken) }),
        })
        .filter(({ from, to }) => from.levels.length === to.levels.length),
    );
    const urn = fc.record({
      namespace: name,
      work: fc.array(name, { minLength: 3, maxLength: 4 }),
      passage: fc.option(passage),
    });
    fc.assert(
      fc.property(urn, (one) => {
        expect(read(formatCtsUrn(one))).toEqual(one);
      }),
      { numRuns: 2000 },
    );
  });

  it("[C10] never throws, and what is read can be written", () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(..."ab1.:@-[]2 %"), maxLength: 20 }), (tail) => {
        const result = parseCtsUrn(`urn:cts:n:g.w.v:${tail}`);
        if (result.ok) expect(parseCtsUrn(formatCtsUrn(result.urn))).toEqual(result);
        else expect(result.sentence).toMatch(/[.]$/u);
      }),
      { numRuns: 2000 },
    );
  });
});

describe("passageUrn", () => {
  const EDITION = "urn:cts:demo:book.spear.eng1:";
  const section = { kind: "section" as const, from: ["7", "13"] };
  const text = "Let him ride a ring, and after the ring another ring.";

  it.each([
    ["a section", section, undefined, `${EDITION}7.13`],
    ["a range, both ends in full", { ...section, to: ["7", "17"] }, undefined, `${EDITION}7.13-7.17`],
    ["words", section, { quote: "ring", text }, `${EDITION}7.13@ring`],
    [
      "words at their place",
      section,
      { quote: "ring", text, from: text.indexOf("ring", 20) },
      `${EDITION}7.13@ring[2]`,
    ],
    ["several words", section, { quote: "another ring", text }, `${EDITION}7.13@another ring`],
  ])("[C15] %s", (_name, reference, quoted, urn) => {
    expect(passageUrn(EDITION, reference, quoted)).toEqual({ ok: true, urn });
  });

  it.each([
    [
      "cts_words_need_version",
      "urn:cts:demo:book.spear:",
      section,
      { quote: "ring", text },
      "name the edition or translation",
    ],
    ["cts_words_not_found", EDITION, section, { quote: "volte", text }, `does not hold the words "volte"`],
    ["cts_words_not_found", EDITION, section, { quote: "ring", text, from: 3 }, "at that place"],
    ["cts_words_malformed", EDITION, { ...section, to: ["7", "14"] }, { quote: "ring", text }, "in one section only"],
    ["cts_words_malformed", EDITION, section, { quote: "a [ring]", text: "a [ring]" }, "After"],
    ["cts_character_not_allowed", EDITION, section, { quote: "ring & turn", text: "ring & turn" }, `may not hold "&"`],
    ["cts_character_not_allowed", EDITION, section, { quote: "a\nb", text: "a\nb" }, "U+000A"],
    ["cts_passage_malformed", EDITION, section, { quote: "side-rein", text: "the side-rein" }, "read as another"],
    [
      "cts_reference_has_no_sections",
      EDITION,
      { kind: "folio" as const, witness: "A", from: { leaf: 7, side: "r" as const } },
      undefined,
      "not by folio or page",
    ],
    ["cts_not_a_cts_urn", "book", section, undefined, "begins with"],
  ])("[C16] %s", (code, urn, reference, quoted, words_) => {
    const result = passageUrn(urn, reference, quoted);
    expect(result).toMatchObject({ ok: false, code });
    expect(!result.ok && result.sentence).toContain(words_);
  });

  it("[C15] the numbered words are the quoted ones", () => {
    const anyText = fc.string({ unit: fc.constantFrom("a", "b", " "), minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(anyText, fc.nat(19), fc.integer({ min: 1, max: 4 }), (whole, start, length) => {
        const from = start % whole.length;
        const quote = whole.slice(from, from + length);
        const result = passageUrn(EDITION, section, { quote, text: whole, from });
        const found = result.ok ? read(result.urn).passage?.from.words?.from : undefined;
        let at = -1;
        for (let count = 0; count < (found?.occurrence ?? 0); count += 1) at = whole.indexOf(quote, at + 1);
        expect([found?.text, at]).toEqual([quote, from]);
      }),
    );
  });
});

describe("citationLine", () => {
  const references = [
    { kind: "section" as const, from: ["7", "13"] },
    { kind: "folio" as const, witness: "A", from: { leaf: 7, side: "r" as const, line: 10 } },
    { kind: "page" as const, of: "tr.", from: { page: "21" } },
  ];
  it.each([
    [
      "all parts",
      { work: "On the Spear", references, quote: "let the\nrider turn", urn: "urn:cts:a:b.c:7.13" },
      "On the Spear 7.13 (A f. 7r, l. 10; tr. p. 21): “let the rider turn” [urn:cts:a:b.c:7.13]",
    ],
    ["a place only", { work: "", references: references.slice(0, 1), quote: "", urn: "" }, "7.13"],
    ["words only", { work: "", references: [], quote: "turn", urn: "" }, "“turn”"],
    ["nothing", { work: "", references: [], quote: " ", urn: "" }, ""],
  ])("[C17] %s", (_name, citation, line) => {
    expect(citationLine(citation)).toBe(line);
  });

  it("[C18] a long quotation keeps its beginning and its end", () => {
    const long = Array.from({ length: 60 }, (_, index) => `word${index}`).join(" ");
    const short = shortenQuote(long);
    expect(short).toMatch(/^word0 word1 .* … .*word59$/u);
    expect(short.length).toBeLessThanOrEqual(90);
    expect(shortenQuote("short words stay")).toBe("short words stay");
  });
});
