/** tests/drawing/drawn-once.test.ts - what is ridden again is drawn once, and nothing that is ridden goes missing. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawnOnce } from "../../shared/drawing/drawn-once.ts";
import type { DrawnPiece, StrokeLine } from "../../shared/drawing/path-strokes.ts";
import { arcFrom, type Piece, poseAt, poseOn, straight } from "../../shared/ground/index.ts";
import { distance, type Point } from "../../shared/ground/plane.ts";
import { anyPath } from "../ground/any-ground.ts";

const STRENGTH: Record<StrokeLine, number> = { stated: 3, implied: 2, supplied: 1, join: 0 };
const of = (piece: Piece, line: StrokeLine = "stated"): DrawnPiece => ({ piece, line, stage: 0 });
const metresOf = (drawn: readonly DrawnPiece[]) => drawn.reduce((sum, { piece }) => sum + piece.length, 0);

const lap = (degrees: number) => arcFrom(poseAt(5, 0, 9_000), 5, degrees * 100);
/** The quarter of the same circle that ends where the lap begins. */
const quarterBefore = arcFrom(poseAt(0, -5, 0), 5, 9_000);
const run = (from: number, to: number) => straight({ x: from, y: 0 }, { x: to, y: 0 });

describe("[W4] each stretch is drawn by its strongest line", () => {
  test.each<[what: string, drawn: DrawnPiece[], metres: number[]]>([
    ["one line", [of(run(0, 10))], [10]],
    ["the same line again", [of(run(0, 10)), of(run(0, 10))], [10]],
    ["back over it", [of(run(0, 10)), of(run(10, 0))], [10]],
    ["on beyond it", [of(run(0, 10)), of(run(4, 14))], [10, 4]],
    ["a longer line over a shorter", [of(run(4, 6)), of(run(0, 10))], [2, 4, 4]],
    ["a stated line over an implied one that came first", [of(run(0, 10), "implied"), of(run(0, 4))], [6, 4]],
    ["a supplied line under a stated one", [of(run(2, 8)), of(run(0, 10), "join")], [6, 2, 2]],
    ["a line that only crosses", [of(run(-5, 5)), of(straight({ x: 0, y: -5 }, { x: 0, y: 5 }))], [10, 10]],
    ["a line beside it", [of(run(0, 10)), of(straight({ x: 0, y: 1 }, { x: 10, y: 1 }))], [10, 10]],
    ["a lap twice", [of(lap(360)), of(lap(360))], [10 * Math.PI]],
    ["two laps in one", [of(lap(720))], [10 * Math.PI]],
    ["a quarter of a lap that was ridden", [of(lap(360)), of(quarterBefore)], [10 * Math.PI]],
    ["a lap over a quarter of it", [of(quarterBefore), of(lap(360))], [2.5 * Math.PI, 7.5 * Math.PI]],
    ["a lap on the other rein", [of(lap(360)), of(arcFrom(poseAt(5, 0, 27_000), 5, -36_000))], [10 * Math.PI]],
    ["a circle within", [of(lap(360)), of(arcFrom(poseAt(5, 0, 9_000), 4, 36_000))], [10 * Math.PI, 8 * Math.PI]],
  ])("%s", (_what, drawn, metres) => {
    const lengths = drawnOnce(drawn).map(({ piece }) => piece.length);
    expect(lengths.length).toBe(metres.length);
    for (const [index, length] of lengths.entries()) expect(length).toBeCloseTo(metres[index] ?? 0, 6);
  });
});

const anyDrawn = fc
  .tuple(
    anyPath,
    fc.array(fc.constantFrom<StrokeLine>("stated", "implied", "supplied", "join"), { minLength: 8, maxLength: 8 }),
  )
  .map(([path, lines]) =>
    path.pieces
      .filter(({ length }) => length > 0)
      .map((piece, index): DrawnPiece => ({ piece, line: lines[index] ?? "stated", stage: index })),
  );

const places = ({ piece }: DrawnPiece, count: number): Point[] =>
  Array.from({ length: count + 1 }, (_, index) => poseOn(piece, index / count));

/** Metres from a place to the nearest of many along a piece. */
function offFrom(at: Point, drawn: DrawnPiece): number {
  const count = Math.ceil(drawn.piece.length / 0.2);
  return Math.min(...places(drawn, Math.max(1, count)).map((other) => distance(at, other)));
}

/** [W5] Lines count as one when they lie less than this apart, in metres. */
const APART = 0.06;

describe("laws", () => {
  test("[W6] every place that is ridden is drawn, by a line at least as strong", () => {
    fc.assert(
      fc.property(anyDrawn, (drawn) => {
        const kept = drawnOnce(drawn);
        for (const one of drawn) {
          const strong = kept.filter(({ line: drawnBy }) => STRENGTH[drawnBy] >= STRENGTH[one.line]);
          for (const at of places(one, 12))
            expect(Math.min(...strong.map((other) => offFrom(at, other)))).toBeLessThan(0.35);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("[W4] drawing what is drawn once again changes nothing, and a second ride adds nothing", () => {
    fc.assert(
      fc.property(anyDrawn, (drawn) => {
        const once = drawnOnce(drawn);
        const metres = metresOf(once);
        // Ends are found along the first of two lines that count as one: that may be off by what they lie apart.
        expect(Math.abs(metresOf(drawnOnce(once)) - metres)).toBeLessThan(APART * drawn.length + 0.001);
        expect(Math.abs(metresOf(drawnOnce([...drawn, ...drawn])) - metres)).toBeLessThan(0.1 * drawn.length + 0.001);
        expect(metres).toBeLessThanOrEqual(metresOf(drawn) + 1e-6);
      }),
      { numRuns: 200 },
    );
  });
});
