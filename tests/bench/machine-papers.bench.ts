/** Papers for machines: TEI and annotations of 25 exercises, 300 steps and 150 cruxes, from the rows and from the store; half
 *  of it, to see that time grows with the steps; and a plan of a long ride as drawing and as dots. */
import type { Rows } from "../../schema/record.ts";
import { annotationCollection } from "../../server/publish/annotations/collection.ts";
import { planFigure } from "../../server/publish/figures/plan-figure.ts";
import { pngOf } from "../../server/publish/figures/png.ts";
import { teiEdition } from "../../server/publish/tei/edition.ts";
import { publishTei } from "../../server/publish/tei/publish-tei.ts";
import { openStore, writeChange } from "../../server/store/index.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { LEFT, metres, RideBuilder } from "../ride/build-ride.ts";
import { bigBook, editsOf } from "./big-book.ts";
import type { Report } from "./harness.ts";

const ID = "0190c000-0000-7000-8000-00000000abcd";

function book(exercises: number) {
  const { rows, work, steps, cruxes } = bigBook({ exercises, steps: 12, cruxes: 6 });
  const edits = editsOf(rows);
  const whole: Record<string, unknown[]> = {};
  for (const edit of edits) {
    if (edit.do !== "create") throw new TypeError("The book only creates.");
    const list = whole[edit.kind] ?? [];
    whole[edit.kind] = list;
    list.push({ kind: edit.kind, version: 1, value: edit.value });
  }
  return { rows: whole as Rows, edits, work, size: `${steps} steps, ${cruxes} cruxes` };
}

export default async function machinePapersBench(report: Report): Promise<void> {
  const [half, whole] = [book(13), book(25)];
  const runs = { runs: 9, warmUp: 3 };
  for (const { rows, work, size } of [half, whole]) {
    const bytes = Buffer.byteLength(teiEdition(rows, work));
    const note = `${Math.round(bytes / 1024)} KB`;
    const limit = size === whole.size ? " (target 500 ms)" : "";
    await report.bench(`machine papers: TEI, ${size}${limit}`, { ...runs, note }, () => teiEdition(rows, work));
    await report.bench(`machine papers: annotations, ${size}`, runs, () => annotationCollection(rows, work));
  }
  const opened = openStore(":memory:");
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  const change = { id: ID, who: "bench", why: "", sitting: null, group: null, edits: whole.edits };
  const written = writeChange(opened.value, change, { now: "2026-05-04T10:00:00.000Z" });
  if (!written.ok) throw new Error(written.refusal.error.sentence);
  const publish = () => publishTei(opened.value, whole.work);
  const edition = publish();
  if (!edition.ok || Buffer.from(edition.value).toString() !== teiEdition(whole.rows, whole.work))
    throw new Error("The store gives another edition than the rows.");
  await report.bench("machine papers: TEI from the store", runs, publish);
  opened.value.close();

  const made = new RideBuilder({ width: 20, length: 40, trackOffset: 1.8 });
  for (let step = 0; step < 60; step += 1) {
    made.figure(`${step}`, (["circle", "volte", "along the wall"] as const)[step % 3] ?? "circle", {
      turn: LEFT,
      size: metres(6 + (step % 5)),
    });
  }
  const ridden = rideExercise(made.rows(), made.home, {});
  const { svg, width } = planFigure(ridden);
  await report.bench("machine papers: plan of 60 steps", runs, () => planFigure(ridden));
  await report.bench("machine papers: the same as PNG", runs, () => pngOf(svg, width));
}
