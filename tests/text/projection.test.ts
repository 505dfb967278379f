/** The offset projection: a table of documents, and the round-trip laws on random ones. Rules T1-T6. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { offsetToPosition, positionToOffset, projectDoc, projectionOf } from "../../shared/text/index.ts";
import { doc, em, milestone, note, p, verse } from "../kit/passage-doc.ts";
import { anyPassageDoc } from "../kit/random-passage.ts";

describe("projectDoc", () => {
  it.each([
    ["[T1] one block", doc(p("spear")), "spear"],
    ["[T2] a break between blocks, none at the end", doc(p("a"), verse("b"), p("c")), "a\nb\nc"],
    ["[T2] empty blocks keep their breaks", doc(p(), p("b"), p()), "\nb\n"],
    ["[T3] atoms have no width", doc(p("a", note("n"), "b", milestone("page", "12"))), "ab"],
    ["[T3] marks have none either", doc(p("a ", em("b"), " c")), "a b c"],
    ["[T4] nothing is normalised", doc(p("e\u0301 \u00e9 \u{1f40e}")), "e\u0301 \u00e9 \u{1f40e}"],
    ["[T1] an empty document", doc(p()), ""],
  ])("%s", (_name, document, text) => {
    expect(projectDoc(document)).toBe(text);
  });
});

describe("offsetToPosition", () => {
  const document = doc(p(note("x"), "ab", note("y")), p(milestone("page", "2"), "c"));
  // Positions: 0 <p> 1 x 2 a 3 b 4 y 5 </p> 6 <p> 7 page 8 c 9 </p> 10
  it.each([
    [0, "before", 1],
    [0, "after", 2],
    [1, "before", 3],
    [1, "after", 3],
    [2, "before", 4],
    [2, "after", 5],
    [3, "before", 7],
    [3, "after", 8],
    [4, "before", 9],
    [4, "after", 9],
  ] as const)("[T5] offset %i clinging %s is position %i", (offset, side, position) => {
    expect(offsetToPosition(document, offset, side)).toBe(position);
  });

  it("[T6] reads a position between blocks by its side", () => {
    expect(positionToOffset(document, 6, "before")).toBe(2);
    expect(positionToOffset(document, 6, "after")).toBe(3);
    expect(positionToOffset(document, 0, "after")).toBe(0);
    expect(positionToOffset(document, document.content.size, "after")).toBe(4);
  });

  it("[T5] names what is wrong with an offset", () => {
    expect(() => offsetToPosition(document, 5, "before")).toThrow(
      "The offset must be a whole number from 0 to 4; got 5.",
    );
    expect(() => positionToOffset(document, -1)).toThrow("The position must be a whole number from 0 to 10; got -1.");
    expect(() => offsetToPosition(document, 0.5, "before")).toThrow(RangeError);
  });
});

describe("laws of the projection", () => {
  it("[T5] every offset comes back from its position, from both sides", () => {
    fc.assert(
      fc.property(anyPassageDoc(), (document) => {
        const projection = projectionOf(document);
        for (let offset = 0; offset <= projection.text.length; offset += 1) {
          for (const side of ["before", "after"] as const) {
            const position = offsetToPosition(projection, offset, side);
            expect(positionToOffset(projection, position, side)).toBe(offset);
            expect(document.resolve(position).parent.isTextblock).toBe(true);
          }
          expect(offsetToPosition(projection, offset, "before")).toBeLessThanOrEqual(
            offsetToPosition(projection, offset, "after"),
          );
        }
      }),
    );
  });

  it("[T6] every position lies between the two positions of its offset", () => {
    fc.assert(
      fc.property(anyPassageDoc(), (document) => {
        for (let position = 0; position <= document.content.size; position += 1) {
          if (!document.resolve(position).parent.isTextblock) continue;
          const offset = positionToOffset(document, position);
          expect(offsetToPosition(document, offset, "before")).toBeLessThanOrEqual(position);
          expect(offsetToPosition(document, offset, "after")).toBeGreaterThanOrEqual(position);
        }
      }),
    );
  });

  it("[T1] the text is what the editor's own reading of the document gives", () => {
    fc.assert(
      fc.property(anyPassageDoc(), (document) => {
        expect(projectDoc(document)).toBe(document.textBetween(0, document.content.size, "\n", ""));
      }),
    );
  });
});
