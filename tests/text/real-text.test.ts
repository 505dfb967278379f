/** The rules on real texts, where they are at hand: Xenophon's On the Art of Horsemanship, and the loci of the TEI
 *  consortium's own test file. Rules T5, T11, T13, T22, C2, C19. */
import { readFileSync } from "node:fs";
import { Transform } from "prosemirror-transform";
import { expect, it } from "vitest";
import { folioFromLocus, formatReference, locusOf, parseReference } from "../../shared/cite/index.ts";
import {
  anchorRange,
  carryAll,
  findQuote,
  foldForSearch,
  foldWithOffsets,
  offsetToPosition,
  positionToOffset,
  projectionOf,
  quoteAt,
  unfoldRange,
} from "../../shared/text/index.ts";
import { describeWithCheckData } from "../kit/check-data.ts";
import { doc, p } from "../kit/passage-doc.ts";

describeWithCheckData("a whole translation as one passage", (path) => {
  const paragraphs = readFileSync(path("texts", "xenophon", "gutenberg-1176", "1176.txt"), "latin1")
    .split(/\r?\n\r?\n/u)
    .map((block) => block.replace(/\s+/gu, " ").trim())
    .filter((block) => block !== "");
  const document = doc(...paragraphs.map((block) => p(block)));
  const projection = projectionOf(document);
  const { text } = projection;
  /** Every word is a mark of its own. */
  const words = [...text.matchAll(/[^\s]+/gu)].map(({ 0: word, index }) => anchorRange(index, index + word.length));

  it("[T5] every tenth offset comes back", () => {
    expect(text).toBe(paragraphs.join("\n"));
    for (let offset = 0; offset <= text.length; offset += 10) {
      expect(positionToOffset(projection, offsetToPosition(projection, offset, "after"), "after")).toBe(offset);
    }
  });

  it("[T11] every fiftieth word is found again by its neighbours alone", () => {
    for (let index = 0; index < words.length; index += 50) {
      const { from, to } = words[index]!;
      expect(findQuote(text, quoteAt(text, from, to))).toMatchObject({ from, to });
    }
  });

  it("[T13] an amendment through the whole text loses exactly the words it takes out", () => {
    const transform = new Transform(document);
    const gone = words.filter((_, index) => index % 100 === 7);
    for (const { from, to } of [...gone].reverse()) {
      transform.delete(offsetToPosition(projection, from, "after"), offsetToPosition(projection, to, "before"));
    }
    const after = projectionOf(transform.doc).text;
    const results = carryAll(document, transform.doc, transform.mapping.maps, words);
    results.forEach((result, index) => {
      const { from, to } = words[index]!;
      expect(result.ok).toBe(index % 100 !== 7);
      if (result.ok) expect(after.slice(result.range.from, result.range.to)).toBe(text.slice(from, to));
    });
  });

  it("[T22] what search finds is what stands there", () => {
    const folded = foldWithOffsets(text);
    const query = foldForSearch("the SPEAR");
    let found = 0;
    for (let at = folded.text.indexOf(query); at !== -1; at = folded.text.indexOf(query, at + 1)) {
      const { from, to } = unfoldRange(folded, at, at + query.length);
      expect(text.slice(from, to).replace(/\s+/gu, " ").toLowerCase()).toBe("the spear");
      found += 1;
    }
    expect(found).toBe(text.match(/\bthe\s+spear/giu)?.length ?? 0);
    expect(found).toBeGreaterThan(0);
  });
});

describeWithCheckData("the loci of the TEI consortium's test file", (path) => {
  const file = readFileSync(path("tei", "P5-Test", "testall.xml"), "utf8");
  const loci = [...file.matchAll(/<locus from="([^"]+)" to="([^"]+)"\s*>([^<]+)<\/locus>/gu)];

  it("[C2][C19] the normal form and the printed form say the same", () => {
    expect(loci.length).toBeGreaterThan(20);
    let compared = 0;
    for (const [, from = "", to = "", printed = ""] of loci) {
      const reference = folioFromLocus("", from, to);
      expect(reference, `${from} to ${to}`).not.toBeNull();
      if (reference === null) continue;
      expect(locusOf(reference).from.replace(":", "")).toBe(from.replace(":", ""));
      expect(parseReference(formatReference(reference))).toEqual({ ok: true, reference });
      const read = parseReference(printed.startsWith("f") ? printed : `f. ${printed.trim()}`);
      if (read.ok && JSON.stringify(read.reference) === JSON.stringify(reference)) compared += 1;
    }
    expect(compared).toBeGreaterThan(20);
  });
});
