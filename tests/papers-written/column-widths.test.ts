/** tests/papers-written/column-widths.test.ts - columns of a table give way to one another: what is nearly empty takes little,
 *  and no table stands taller than with the widths that were wished for. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Line } from "../../schema/paper.ts";
import { columnWidths } from "../../server/publish/write/pdf/column-widths.ts";
import { heightOf } from "../../server/publish/write/pdf/estimate.ts";
import { w } from "./paper-kit.ts";

const columns = [
  { name: "Horse", share: 3 },
  { name: "Hands", share: 3 },
  { name: "Where", share: 1.5 },
];
const asked = (rows: Line[][][]) => ({ columns, rows, measure: 160, gap: 3, type: 12, ragged: 2 });
const cell = (words: number): Line[] =>
  words === 0 ? [] : [[w(Array.from({ length: words }, () => "canter").join(" "))]];
const height = (rows: Line[][][], widths: readonly number[]) =>
  rows.reduce((sum, row) => sum + Math.max(...row.map((one, at) => heightOf(one, (widths[at] ?? 0) - 3, 12, 2))), 0);

describe("columns of a table", () => {
  test("an empty one gives way to a full one, and keeps room for its name", () => {
    const [horse = 0, hands = 0] = columnWidths(asked([[cell(40), [], cell(1)]]));
    expect(horse).toBeGreaterThan(80);
    expect(hands).toBeGreaterThan(heightOf([[w("x")]], 100, 12) * 2);
  });

  test("stand as they are wished where nothing is gained", () => {
    expect(columnWidths(asked([[cell(1), cell(1), cell(1)]]))).toEqual([64, 64, 32]);
    expect(columnWidths(asked([]))).toEqual([64, 64, 32]);
  });

  test("fill the measure, are never taller than wished, and come out the same each time", () => {
    const rows = fc.array(fc.tuple(...columns.map(() => fc.nat(30).map(cell))), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(rows, (cells) => {
        const widths = columnWidths(asked(cells));
        expect(widths.reduce((sum, width) => sum + width, 0)).toBeCloseTo(160, 6);
        expect(height(cells, widths)).toBeLessThanOrEqual(height(cells, [64, 64, 32]) + 1e-9);
        expect(columnWidths(asked(cells))).toEqual(widths);
      }),
      { numRuns: 60 },
    );
  });
});
