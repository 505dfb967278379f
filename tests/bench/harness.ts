/** tests/bench/harness.ts - times a piece of work and prints the times so that another machine can compare.
 *  May import: Node's own modules. Milliseconds throughout. Beside the times stands the ratio to a reference job that
 *  every run measures on the same machine: compare ratios between machines, milliseconds only on one. */
import { createHash } from "node:crypto";
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, tmpdir, totalmem } from "node:os";
import { join } from "node:path";
import { performance } from "node:perf_hooks";

/** What was measured. Times in milliseconds; `runs` is how many samples they rest on. */
export type Measurement = { name: string; runs: number; medianMs: number; p95Ms: number; note: string };

/** How often to run. The warm-up runs come first and are not counted. */
export type BenchOptions = { runs: number; warmUp: number; note?: string };

/** One bench file: it gets `bench` and `samples` through this and reports through them. */
export type Report = {
  /** Runs `work` again and again, one after another, and reports the time of each run from call to result. */
  bench(name: string, options: BenchOptions, work: () => unknown): Promise<Measurement>;
  /** Reports times that were taken elsewhere (such as in the browser), in milliseconds. Throws RangeError when empty. */
  samples(name: string, timesMs: readonly number[], note?: string): Measurement;
  /** A new empty folder that is removed when the process ends. */
  folder(): string;
};

/** The nearest-rank quantile: the smallest sample with at least the share `q` (above 0, to 1) of all at or below it.
 *  Throws RangeError for no samples. */
export function quantile(samples: readonly number[], q: number): number {
  if (!(q > 0 && q <= 1)) throw new RangeError(`A quantile lies above 0 and up to 1, not at ${q}.`);
  const sorted = [...samples].sort((a, b) => a - b);
  const value = sorted[Math.ceil(q * sorted.length) - 1];
  if (value === undefined) throw new RangeError("There are no samples to take a quantile of.");
  return value;
}

/** Measurements are added to `measurements` as they come. */
export function reportInto(measurements: Measurement[]): Report {
  const samples = (name: string, timesMs: readonly number[], note = ""): Measurement => {
    const measurement = {
      name,
      runs: timesMs.length,
      medianMs: quantile(timesMs, 0.5),
      p95Ms: quantile(timesMs, 0.95),
      note,
    };
    measurements.push(measurement);
    return measurement;
  };
  return {
    samples,
    async bench(name, options, work) {
      for (let run = 0; run < options.warmUp; run += 1) await work();
      const times: number[] = [];
      for (let run = 0; run < options.runs; run += 1) {
        const start = performance.now();
        await work();
        times.push(performance.now() - start);
      }
      return samples(name, times, options.note);
    },
    folder() {
      const folder = mkdtempSync(join(tmpdir(), "passagework-bench-"));
      process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
      return folder;
    },
  };
}

/** The reference job: a fixed mix of hashing, JSON and sorting, about what a server does. Its median, in milliseconds. */
export function measureReference(): number {
  const rows = Array.from({ length: 20_000 }, (_, index) => ({ id: (index * 7919) % 20_011, words: `row ${index}` }));
  const once = (): number => {
    const start = performance.now();
    const copy = JSON.parse(JSON.stringify(rows)) as typeof rows;
    copy.sort((a, b) => a.id - b.id);
    createHash("sha256").update(JSON.stringify(copy)).digest("hex");
    return performance.now() - start;
  };
  for (let run = 0; run < 3; run += 1) once();
  return quantile(Array.from({ length: 15 }, once), 0.5);
}

/** The machine in one line: processor, cores, memory, Node. */
export function machineLine(): string {
  const cores = cpus();
  const memory = Math.round(totalmem() / 2 ** 30);
  return `${cores[0]?.model.trim() ?? "unknown processor"}, ${cores.length} cores, ${memory} GiB, Node ${process.versions.node}, ${process.platform}`;
}

/** One table of all measurements. `referenceMs` is the time of the reference job on this machine. */
export function benchTable(measurements: readonly Measurement[], referenceMs: number): string {
  const head = ["what", "runs", "median ms", "p95 ms", "median / reference", ""];
  const rows = measurements.map((m) => [
    m.name,
    String(m.runs),
    m.medianMs.toFixed(2),
    m.p95Ms.toFixed(2),
    (m.medianMs / referenceMs).toFixed(2),
    m.note,
  ]);
  const widths = head.map((_, column) => Math.max(...[head, ...rows].map((row) => row[column]?.length ?? 0)));
  const line = (row: string[]): string =>
    row
      .map((cell, column) =>
        column === 0 || column === 5 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
      )
      .join("  ")
      .trimEnd();
  return [
    line(head),
    widths
      .map((width) => "-".repeat(width))
      .join("  ")
      .trimEnd(),
    ...rows.map(line),
  ].join("\n");
}
