/** tests/drawing/drawing.test.ts - arrows, beginnings, numbers and words of a plan, and the rider from above. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arrowsOf } from "../../shared/drawing/arrows.ts";
import { heightShapes } from "../../shared/drawing/height-shapes.ts";
import { type Area, type Label, placeLabels } from "../../shared/drawing/labels.ts";
import { drawnPieces, strokesOf } from "../../shared/drawing/path-strokes.ts";
import { riderBox, riderShapes } from "../../shared/drawing/rider-shapes.ts";
import { stepBeginnings } from "../../shared/drawing/step-beginnings.ts";
import { stepNumberWords } from "../../shared/drawing/step-number-words.ts";
import { distance, poseAtTime } from "../../shared/ground/index.ts";
import { handsFigure } from "../../shared/hands/figure.ts";
import { known, oneOf, UNKNOWN } from "../../shared/hands/known.ts";
import { type Level, type ObjectState, startState } from "../../shared/hands/state.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { at, demoRows, LEFT, metres, RideBuilder, times } from "../ride/rides.ts";

function ridden(build: (made: RideBuilder) => void) {
  const made = new RideBuilder({ width: 20, length: 40, trackOffset: 1.8 });
  made.station("the oak", 10, 0, "the elm");
  made.station("the elm", -10, 0, "the oak");
  build(made);
  return rideExercise(made.rows(), made.home, {});
}

const rounds = (count: number) =>
  ridden((made) => {
    for (let index = 0; index < count; index += 1)
      made.figure(`round ${index}`, "circle", { turn: LEFT, size: metres(10), laps: times(1) });
  });
const toAndFro = ridden((made) => {
  made.figure("out", "straight", { from: at("the oak"), toward: at("the elm") });
  made.figure("back", "rein back", { size: metres(6) });
});

describe("numbers of steps", () => {
  test.each<[numbers: number[], words: string]>([
    [[1], "1"],
    [[1, 2], "1, 2"],
    [[1, 2, 3], "1–3"],
    [[1, 3, 4, 5, 7, 8], "1, 3–5, 7, 8"],
    [[9, 12], "9, 12"],
  ])("[W11] %j are “%s”", (numbers, words) => {
    expect(stepNumberWords(numbers)).toBe(words);
  });

  test("[W10] rounds of one circle begin in one place; steps far apart do not", () => {
    expect(stepBeginnings(rounds(4), 0.5).map(({ numbers }) => numbers)).toEqual([[1, 2, 3, 4]]);
    expect(stepBeginnings(toAndFro, 0.5).map(({ numbers }) => numbers)).toEqual([[1], [2]]);
    expect(stepBeginnings(rounds(4), 0.5, { from: 1, to: 3 }).map(({ numbers }) => numbers)).toEqual([[2, 3]]);
  });

  test("[W9] a step begins where it has been joined to the one before", () => {
    const [first] = stepBeginnings(toAndFro, 0.5);
    expect(first?.pose.x).toBeCloseTo(10, 3);
  });
});

describe("arrows", () => {
  test("[W7] point the way it is ridden, against the horse where it goes back", () => {
    const arrows = arrowsOf(toAndFro, { apart: 5, clear: 0.2 });
    expect(arrows.length).toBeGreaterThan(4);
    for (const { seconds, toward, pose } of arrows) {
      const on = poseAtTime(toAndFro.timed, seconds + 0.05);
      const way = (toward * Math.PI) / 18_000;
      expect((on.x - pose.x) * Math.cos(way) + (on.y - pose.y) * Math.sin(way)).toBeGreaterThan(0);
    }
    expect(new Set(arrows.map(({ stage }) => stage))).toEqual(new Set([0, 1]));
  });

  test("[W8] rounds that are ridden alike have the arrows of one, and none lies on another or on a beginning", () => {
    const one = arrowsOf(rounds(1), { apart: 6, clear: 0.8 });
    const ride = rounds(4);
    const places = stepBeginnings(ride, 0.5).map(({ pose }) => pose);
    const four = arrowsOf(ride, { apart: 6, clear: 0.8, places });
    expect(four.length).toBe(one.length);
    for (const [index, { pose }] of four.entries()) {
      for (const place of places) expect(distance(place, pose)).toBeGreaterThanOrEqual(0.8);
      for (const other of four.slice(index + 1)) expect(distance(other.pose, pose)).toBeGreaterThanOrEqual(0.8);
    }
  });
});

describe("strokes", () => {
  test("[W3] runs that are drawn alike are one stroke, a joining line another", () => {
    const { rows, exercises } = demoRows();
    const ride = rideExercise(rows, exercises.circle, {});
    const [first] = ride.stages.keys();
    const lines = strokesOf(drawnPieces(ride, first ?? 0)).map(({ line }) => line);
    expect(lines[0]).toBe("join");
    expect(lines.slice(1)).not.toContain("join");
    expect(strokesOf(drawnPieces(ride, 1))).toHaveLength(1);
  });
});

describe("words on a drawing", () => {
  const sheet: Area = { x: 50, y: 50, width: 100, height: 100 };
  const around = (x: number, y: number): Label => ({
    width: 8,
    height: 4,
    spots: [0, 1, 2, 3, 4].flatMap((ring) =>
      Array.from({ length: 12 }, (_, index) => ({
        x: x + (6 + ring * 4) * Math.cos((index * Math.PI) / 6),
        y: y + (4 + ring * 4) * Math.sin((index * Math.PI) / 6),
      })),
    ),
  });

  test("[W14] stand where they are wished most when nothing is in the way", () => {
    const labels = [around(20, 20), around(80, 80)];
    expect(placeLabels(labels, { sheet, points: [], areas: [] })).toEqual(labels.map(({ spots }) => spots[0]));
  });

  test("[W12] keep off a line and a sign", () => {
    const points = Array.from({ length: 80 }, (_, index) => ({ x: 56, y: 10 + index }));
    const [spot] = placeLabels([around(50, 50)], { sheet, points, areas: [{ x: 42, y: 50, width: 6, height: 30 }] });
    expect(points.some(({ x, y }) => Math.abs(x - (spot?.x ?? 0)) < 4 && Math.abs(y - (spot?.y ?? 0)) < 2)).toBe(false);
  });

  test("[W12] [W13] up to six that belong near each other do not overlap, stay on the sheet, and stand there each time", () => {
    const near = fc.tuple(fc.integer({ min: 15, max: 85 }), fc.integer({ min: 15, max: 85 }));
    fc.assert(
      fc.property(
        near,
        fc.array(fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 })), { maxLength: 6 }),
        ([x, y], offs) => {
          const labels = offs.map(([dx, dy]) => around(x + dx, y + dy));
          const spots = placeLabels(labels, { sheet, points: [], areas: [] });
          expect(placeLabels(labels, { sheet, points: [], areas: [] })).toEqual(spots);
          for (const [index, one] of spots.entries()) {
            expect(Math.abs(one.x - 50)).toBeLessThanOrEqual(46);
            expect(Math.abs(one.y - 50)).toBeLessThanOrEqual(48);
            // A word's box has some air around it: a sliver of it may be shared.
            for (const other of spots.slice(index + 1)) {
              const across = Math.max(0, 8 - Math.abs(one.x - other.x));
              const down = Math.max(0, 4 - Math.abs(one.y - other.y));
              expect((across * down) / 32).toBeLessThan(0.08);
            }
          }
        },
      ),
    );
  });
});

describe("the rider from above", () => {
  test("[W16] a rider nothing is known of has both hands broken and three dots for the spear", () => {
    const spear = { id: "s", name: "spear", is: "shaft" as const, lengthMetres: 2 };
    const shapes = riderShapes(handsFigure(startState([spear], "mounted")), false);
    expect(shapes.filter(({ as, broken }) => as === "hand" && broken)).toHaveLength(2);
    expect(shapes.filter(({ as }) => as === "not known")).toHaveLength(1);
    expect(riderShapes(handsFigure(startState([spear], "on foot")), true).some(({ as }) => as === "horse")).toBe(false);
  });

  test("[W21] how high stands beside him: a mark with its word, two open marks, or three dots", () => {
    const marks = (level: ObjectState["level"]): (string | boolean)[] => {
      const start = startState([{ id: "s", name: "spear", is: "shaft", lengthMetres: 2 }], "mounted");
      const shapes = heightShapes(
        handsFigure({ ...start, objects: start.objects.map((held) => ({ ...held, level })) }),
      );
      return shapes.flatMap((shape): (string | boolean)[] =>
        shape.is === "words" ? [shape.words] : shape.as === "height" ? [shape.broken] : [],
      );
    };
    expect(marks(known("low"))).toEqual([false, "low"]);
    expect(marks(known("ground"))).toEqual([false, "ground"]);
    expect(marks(oneOf<Level>(["middle", "high"]))).toEqual([true, "middle", true, "high"]);
    expect(marks(UNKNOWN)).toEqual(["· · ·"]);
    expect(heightShapes(handsFigure(startState([], "mounted")))).toEqual([]);
  });

  test("[W15] the box holds the whole of the shaft", () => {
    const { rows, exercises } = demoRows();
    for (const id of Object.values(exercises)) {
      for (const { after } of rideExercise(rows, id, {}).stages) {
        const figure = handsFigure(after);
        const box = riderBox(figure);
        for (const end of figure.things.flatMap(({ line }) => (line ? [line.butt, line.point] : []))) {
          expect(end.x * 10).toBeGreaterThan(box.left);
          expect(end.x * 10).toBeLessThan(box.left + box.width);
          expect(-end.y * 10).toBeGreaterThan(box.top);
          expect(-end.y * 10).toBeLessThan(box.top + box.height);
        }
      }
    }
  });
});
