/** tests/bench/run.ts - `npm run bench`: runs every bench in the list and prints one table with the machine named.
 *  `npm run bench -- import export` runs those whose name holds one of the words. A bench file exports
 *  `default async (report: Report) => { ... }`; it checks its answer before it times it, and seeds what it draws. */
import { benchTable, type Measurement, machineLine, measureReference, type Report, reportInto } from "./harness.ts";

type Bench = { default: (report: Report) => Promise<void> };

/** Name, and how to load it. Loaded one at a time, so that a bench pays only for itself. */
const benches: [name: string, load: () => Promise<Bench>][] = [
  ["book-part", () => import("./book-part.bench.ts")],
  ["decide", () => import("./decide.bench.ts")],
  ["decide-room", () => import("./decide-room.bench.ts")],
  ["find", () => import("./find.bench.ts")],
  ["ground", () => import("./ground.bench.ts")],
  ["import", () => import("./import.bench.ts")],
  ["papers", () => import("./papers.bench.ts")],
  ["passage", () => import("./passage.bench.ts")],
  ["play", () => import("./play.bench.ts")],
  ["typing", () => import("./typing.bench.ts")],
  ["machine-papers", () => import("./machine-papers.bench.ts")],
  ["ride", () => import("./ride.bench.ts")],
  ["write-papers", () => import("./write-papers.bench.ts")],
];

const words = process.argv.slice(2);
const chosen = benches.filter(([name]) => words.length === 0 || words.some((word) => name.includes(word)));
const measurements: Measurement[] = [];
const report = reportInto(measurements);
for (const [name, load] of chosen) {
  console.log(`${name} ...`);
  await (await load()).default(report);
}

const referenceMs = measureReference();
console.log(`\n${machineLine()}\nreference job: ${referenceMs.toFixed(2)} ms\n`);
console.log(measurements.length === 0 ? "No bench has run." : benchTable(measurements, referenceMs));
