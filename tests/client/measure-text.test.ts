/** tests/client/measure-text.test.ts - measures, counts and outlines as they are typed and as they are shown again. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type MeasureKind,
  measureText,
  outlineText,
  readCount,
  readMeasure,
  readOutline,
} from "../../client/read/measure-text.ts";
import type { Measure } from "../../schema/values.ts";

const exact = (of: number): Measure => ({ is: "exact", of });

describe("what is typed is read in metres, degrees and kilograms", () => {
  const cases: [MeasureKind, string, Measure][] = [
    ["length", "10 m", exact(10)],
    ["length", "10", exact(10)],
    ["length", "about 10 m", { is: "about", of: 10, spread: 0 }],
    ["length", "c. 10", { is: "about", of: 10, spread: 0 }],
    ["length", "8 to 10 m", { is: "range", from: 8, to: 10 }],
    ["length", "10-8 m", { is: "range", from: 8, to: 10 }],
    ["length", "12.8 ± 1.6 m", { is: "about", of: 12.8, spread: 1.6 }],
    // One international foot is 0.3048 m, one inch 0.0254 m, one hand four inches (international yard and pound, 1959).
    ["length", "33 ft", exact(10.0584)],
    ["length", "6 inches", exact(0.1524)],
    ["length", "15 hands", exact(1.524)],
    ["length", "1,5 m", exact(1.5)],
    ["angle", "-45°", exact(-45)],
    ["angle", "45", exact(45)],
    ["mass", "2 lb", exact(0.907185)],
  ];
  it.each(cases)("%s %s", (kind, typed, measure) => {
    expect(readMeasure(kind, typed)).toEqual(measure);
  });

  it.each(["", "long", "10 cubits", "10 m 5", "to 10"])("“%s” is answered with what was expected", (typed) => {
    expect(readMeasure("length", typed)).toMatch(/^Expected a number and its unit, as “about 10 m”/);
  });

  it("what is shown is read as the same again", () => {
    const number = fc.integer({ min: -100_000, max: 100_000 }).map((thousandths) => thousandths / 1000);
    const measure: fc.Arbitrary<Measure> = fc.oneof(
      number.map(exact),
      fc.tuple(number, number).map(([a, b]): Measure => ({ is: "range", from: Math.min(a, b), to: Math.max(a, b) })),
      fc.tuple(number, number.map(Math.abs)).map(([of, spread]): Measure => ({ is: "about", of, spread })),
    );
    fc.assert(
      fc.property(fc.constantFrom<MeasureKind>("length", "angle", "mass"), measure, (kind, value) => {
        expect(readMeasure(kind, measureText(kind, value))).toEqual(value);
      }),
    );
  });
});

describe("how often", () => {
  it.each([
    ["twice", { is: "times", n: 2 }],
    ["3", { is: "times", n: 3 }],
    ["1.5 times", { is: "times", n: 1.5 }],
    ["until he is at the gate", { is: "until", event: "he is at the gate" }],
  ])("%s", (typed, count) => {
    expect(readCount(typed)).toEqual(count);
  });

  it.each(["", "0", "often", "until"])("“%s” is answered with what was expected", (typed) => {
    expect(readCount(typed)).toMatch(/^Expected how often/);
  });
});

describe("places on the ground, in whole millimetres", () => {
  it("one is a point, two are a line, three an area", () => {
    expect(readOutline("0 20")).toEqual({ is: "point", at: { x: 0, y: 20_000 } });
    expect(readOutline("0 20; 5.5 20")).toEqual({ is: "line", from: { x: 0, y: 20_000 }, to: { x: 5500, y: 20_000 } });
    expect(readOutline("0 0; 1 0; 0 1")).toMatchObject({ is: "area", corners: [{}, {}, {}] });
    expect(readOutline("by the well")).toMatch(/^Expected places as “x y” in metres/);
  });

  it("what is shown is read as the same again", () => {
    const point = fc.record({
      x: fc.integer({ min: -99_999, max: 99_999 }),
      y: fc.integer({ min: -99_999, max: 99_999 }),
    });
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 6 }), (corners) => {
        expect(readOutline(outlineText({ is: "area", corners }))).toEqual({ is: "area", corners });
      }),
    );
  });
});
