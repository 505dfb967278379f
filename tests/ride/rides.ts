/** tests/ride/rides.ts - rows of small rides, the demo's rows, and what every ride must hold to. */
import { expect } from "vitest";
import type { ActOf } from "../../schema/act.ts";
import type { RecordOf, Rows } from "../../schema/record.ts";
import type { ValueOf } from "../../schema/values.ts";
import { demoBook } from "../../server/demo/book.ts";
import { poseOn } from "../../shared/ground/piece.ts";
import { samePose } from "../../shared/ground/plane.ts";
import { RIDE_TOLERANCE } from "../../shared/ride/course.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import { idOf, supplied, WorkBuilder } from "../drill/build-rows.ts";

/** Every row of the invented book, and the ids of its exercises. */
export function demoRows(): { rows: Rows; exercises: ReturnType<typeof demoBook>["exercises"] } {
  const book = demoBook();
  const rows: Record<string, unknown[]> = {};
  for (const edit of book.edits) {
    if (edit.do !== "create") throw new TypeError("The demo only creates.");
    const list = rows[edit.kind] ?? [];
    list.push({ kind: edit.kind, version: 1, value: edit.value });
    rows[edit.kind] = list;
  }
  return { rows: rows as Rows, exercises: book.exercises };
}

type RideSlots = ActOf<"ride">["slots"];

/** A work of one exercise, ridden on a ground of its own where one is given. */
export class RideBuilder extends WorkBuilder {
  readonly home: string;

  constructor(ground?: { width: number; length: number; trackOffset?: number; is?: RecordOf<"grounds">["is"] }) {
    super("A work to ride");
    if (ground) {
      const { width, length, trackOffset = 0, is = "rectangular" } = ground;
      this.put("grounds", {
        id: idOf("ground"),
        work: this.work,
        rank: "a0",
        name: "the ground",
        is,
        slots: { width: metres(width), length: metres(length), trackOffset: metres(trackOffset) },
        note: "",
      });
    }
    this.home = this.exercise("a ride", { ground: ground ? idOf("ground") : null });
  }

  /** A point of the ground, in metres from its centre. */
  station(name: string, x: number, y: number, partner: string | null = null): string {
    return this.put("stations", {
      id: idOf(name),
      ground: idOf("ground"),
      rank: "a0",
      name,
      is: "point",
      outline: supplied({ is: "point", at: { x: Math.round(x * 1_000), y: Math.round(y * 1_000) } }),
      partner: partner === null ? null : idOf(partner),
      note: "",
    });
  }

  /** A step with one figure. */
  figure(name: string, figure: ValueOf<"figure">, slots: RideSlots = {}): string {
    const step = this.step(name, this.home);
    this.action(step, "ride", { figure: supplied(figure), ...slots });
    return step;
  }
}

export const metres = (of: number) => supplied({ is: "exact" as const, of });
export const at = (station: string) => supplied({ is: "station" as const, station: idOf(station) });
export const LEFT = supplied({ to: "left" as const, viewpoint: "rider" as const });
export const RIGHT = supplied({ to: "right" as const, viewpoint: "rider" as const });
export const times = (n: number) => supplied({ is: "times" as const, n });
export const timed = (timing: ValueOf<"timing">) => ({ timing: supplied(timing) });

/** Metres of one stage without the lines that join. */
export function ownMetres(ridden: Ridden, stage: number): number {
  return ridden.pieces.reduce(
    (sum, piece, index) =>
      piece.stage === stage && !piece.joins ? sum + (ridden.timed.path.pieces[index]?.length ?? 0) : sum,
    0,
  );
}

/** One path without a gap, stages one after another in time and along it, instants and lanes inside their stages. */
export function expectWhole(ridden: Ridden): void {
  const { pieces } = ridden.timed.path;
  expect(ridden.pieces.length).toBe(pieces.length);
  for (let index = 1; index < pieces.length; index += 1) {
    const [before, here] = [pieces[index - 1], pieces[index]];
    if (before && here)
      expect(samePose(poseOn(before, 1), poseOn(here, 0), RIDE_TOLERANCE), `piece ${index}`).toBe(true);
  }
  let [piece, seconds] = [0, 0];
  for (const [index, stage] of ridden.stages.entries()) {
    expect([stage.pieces.from, stage.from], stage.title).toEqual([piece, seconds]);
    [piece, seconds] = [stage.pieces.to, stage.to];
    const moments = stage.instants.map((instant) => instant.seconds);
    expect([...moments].sort((a, b) => a - b)).toEqual(moments);
    for (const moment of moments) {
      expect(moment).toBeGreaterThanOrEqual(stage.from);
      expect(moment).toBeLessThanOrEqual(stage.to);
    }
    expect(stage.before).toEqual(ridden.stages[index - 1]?.after ?? stage.before);
    expect(stage.after).toEqual(
      stage.is === "untreated" ? stage.after : (stage.instants.at(-1)?.after ?? stage.before),
    );
    for (let at_ = stage.pieces.from; at_ < stage.pieces.to; at_ += 1) expect(ridden.pieces[at_]?.stage).toBe(index);
  }
  for (const lane of ridden.lanes) {
    for (const span of lane.spans) {
      const stage = ridden.stages[span.stage];
      expect(span.from, `${lane.name}: ${span.words}`).toBeGreaterThanOrEqual(stage?.from ?? 0);
      expect(span.to).toBeLessThanOrEqual(stage?.to ?? 0);
      expect(span.to).toBeGreaterThanOrEqual(span.from);
    }
  }
}

/** The spans of a lane, said briefly. */
export function laneWords(ridden: Ridden, key: string): string[] {
  return ridden.lanes.find((lane) => lane.key === key)?.spans.map(({ words, shows }) => `${shows}: ${words}`) ?? [];
}
