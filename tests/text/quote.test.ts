/** Quotes, graphemes and code points. Rules T9-T12. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { findQuote, fromCodePoints, quoteAt, snapToGraphemes, toCodePoints } from "../../shared/text/index.ts";

const anyText = fc.string({ unit: "grapheme", maxLength: 60 });

describe("quoteAt", () => {
  it("[T10] keeps the exact words with up to 32 units on each side", () => {
    const text = `${"a".repeat(40)} spear ${"b".repeat(40)}`;
    expect(quoteAt(text, 41, 46)).toEqual({
      quote: "spear",
      prefix: `${"a".repeat(31)} `,
      suffix: ` ${"b".repeat(31)}`,
    });
  });

  it.each([
    ["an accent of its own", `e\u0301${"a".repeat(31)}|x|`, "a".repeat(31)],
    ["a horse's head of two units", `\u{1f40e}${"a".repeat(31)}|x|`, "a".repeat(31)],
    ["a horse's head that fits", `\u{1f40e}${"a".repeat(30)}|x|`, `\u{1f40e}${"a".repeat(30)}`],
  ])("[T9] does not split %s", (_name, marked, prefix) => {
    const [before = "", words = ""] = marked.split("|");
    expect(quoteAt(before + words, before.length, before.length + words.length).prefix).toBe(prefix);
  });

  it("[T10] refuses a range outside the text", () => {
    expect(() => quoteAt("ab", 1, 3)).toThrow("got 1 to 3");
  });
});

describe("findQuote", () => {
  const text = "turn left, then turn right, then turn left";
  it.each([
    ["[T11] the place whose neighbours agree", { quote: "turn", prefix: "then ", suffix: " right" }, undefined, 16],
    ["[T11] by what follows only", { quote: "turn", prefix: "", suffix: " right" }, undefined, 16],
    ["[T11] the nearest of equals", { quote: "turn", prefix: "", suffix: " left" }, 30, 33],
    ["[T11] the first without nearness", { quote: "turn", prefix: "", suffix: " left" }, undefined, 0],
  ])("%s", (_name, wanted, near, from) => {
    expect(findQuote(text, wanted, near)).toMatchObject({ from, to: from + 4 });
  });

  it("[T11] says when another place agrees as well, and when there is none", () => {
    expect(findQuote(text, { quote: "turn", prefix: "", suffix: " left" })?.tied).toBe(true);
    expect(findQuote(text, { quote: "turn", prefix: "", suffix: " right" })?.tied).toBe(false);
    expect(findQuote(text, { quote: "halt", prefix: "", suffix: "" })).toBeNull();
  });

  it("[T11] finds a gap where its neighbours meet", () => {
    expect(findQuote(text, { quote: "", prefix: "then turn ", suffix: "right" })).toMatchObject({ from: 21, to: 21 });
    expect(findQuote(text, { quote: "", prefix: "then turn", suffix: "right" })).toBeNull();
  });

  it("[T9] takes a whole character before a half one", () => {
    expect(findQuote("e\u0301 e", { quote: "e", prefix: "", suffix: "" })?.from).toBe(3);
  });

  it("[T11] every quote is found where it was taken", () => {
    fc.assert(
      fc.property(anyText, fc.nat(60), fc.nat(20), (words, start, length) => {
        const at = Math.min(start, words.length);
        const { from, to } = snapToGraphemes(words, at, Math.min(words.length, at + length));
        expect(findQuote(words, quoteAt(words, from, to), from)).toMatchObject({ from, to });
      }),
    );
  });
});

describe("snapToGraphemes", () => {
  it.each([
    ["plain letters", "abc", 1, 2, [1, 2]],
    ["a combining mark left out", "ae\u0301b", 1, 2, [1, 3]],
    ["beginning at a mark", "ae\u0301b", 2, 4, [1, 4]],
    ["inside a pair", "a\u{1f40e}b", 2, 3, [1, 3]],
    ["a gap inside a pair", "a\u{1f40e}b", 2, 2, [1, 1]],
    ["a family of several", "\u{1f468}\u200d\u{1f467}", 2, 3, [0, 5]],
    ["ends outside the text", "abc", -2, 9, [0, 3]],
    ["a line end of two units", "a\r\nb", 2, 2, [1, 1]],
  ])("[T9] %s", (_name, text, from, to, [start, end]) => {
    expect(snapToGraphemes(text, from, to)).toEqual({ from: start, to: end });
  });

  it("[T9] agrees with the segmenter on the whole text, wherever it is asked", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const edges = new Set([text.length]);
        for (const { index } of new Intl.Segmenter("en", { granularity: "grapheme" }).segment(text)) edges.add(index);
        for (let at = 0; at <= text.length; at += 1) {
          const below = Math.max(...[...edges].filter((edge) => edge <= at));
          const above = Math.min(...[...edges].filter((edge) => edge >= at));
          expect(snapToGraphemes(text, at, at)).toEqual({ from: below, to: below });
          expect(snapToGraphemes(text, 0, at)).toEqual({ from: 0, to: above });
        }
      }),
    );
  });
});

describe("code points", () => {
  it("[T12] count as the W3C selectors do", () => {
    expect(toCodePoints("a\u{1f40e}b", 3)).toBe(2);
    expect(fromCodePoints("a\u{1f40e}b", 2)).toBe(3);
    expect(fromCodePoints("ab", 3)).toBeNull();
    expect(fromCodePoints("ab", 0.5)).toBeNull();
    expect(() => toCodePoints("a\u{1f40e}b", 2)).toThrow("Offset 2 is inside one character");
  });

  it("[T12] come back", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 12 }), (text) => {
        const points = [...text];
        for (let count = 0; count <= points.length; count += 1) {
          const offset = points.slice(0, count).join("").length;
          expect(fromCodePoints(text, count)).toBe(offset);
          expect(toCodePoints(text, offset)).toBe(count);
        }
      }),
    );
  });
});
