/** tests/ride/rides.ts - the demo's rows, and what every ride must hold to. */
import { expect } from "vitest";
import type { Rows } from "../../schema/record.ts";
import { demoBook } from "../../server/demo/book.ts";
import { poseOn } from "../../shared/ground/piece.ts";
import { samePose } from "../../shared/ground/plane.ts";
import { RIDE_TOLERANCE } from "../../shared/ride/course.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";

export * from "./build-ride.ts";

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
