/** tests/house/setup.test.ts - the parts of the set-up that can be tried without a fresh machine. */
import { execFileSync, spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { repoRoot } from "../../server/paths.ts";
import { findBrowser } from "../../server/setup/find-browser.mjs";
import { nodeVersionComplaint } from "../../server/setup/node-version.mjs";
import { benchTable, quantile } from "../bench/harness.ts";
import { temporaryFolder } from "../kit/temporary-store-path.ts";

describe("the version of Node", () => {
  test.each([
    ["18.20.4", false],
    ["20.18.3", false],
    ["20.19.0", true],
    ["21.7.3", false],
    ["22.11.0", false],
    ["22.12.0", true],
    ["23.1.0", false],
    ["24.0.0", true],
    ["26.1.0", true],
  ])("%s", (version, fits) => {
    const complaint = nodeVersionComplaint(version);
    if (fits) expect(complaint).toBeNull();
    else expect(complaint).toMatch(`this is Node ${version}. Install a current Node and run the command again.`);
  });
});

test("a setting that names no browser is refused with what to do", async () => {
  const before = process.env.PASSAGEWORK_BROWSER;
  process.env.PASSAGEWORK_BROWSER = "/nowhere/chromium";
  try {
    await expect(findBrowser()).rejects.toThrow(/names \/nowhere\/chromium.*Set it to the path of a Chromium/);
  } finally {
    if (before === undefined) delete process.env.PASSAGEWORK_BROWSER;
    else process.env.PASSAGEWORK_BROWSER = before;
  }
});

describe("the compiler keeps I/O out of schema/ and shared/", () => {
  test.each(["schema", "shared"])("%s", (folder) => {
    const place = temporaryFolder();
    const lines = [
      "document.title;",
      "process.cwd();",
      "setTimeout(() => {}, 1);",
      "console.log(1);",
      'import "node:fs";',
    ];
    writeFileSync(join(place, "probe.ts"), lines.join("\n"));
    const config = { extends: join(repoRoot, folder, "tsconfig.json"), include: [join(place, "probe.ts")] };
    writeFileSync(join(place, "tsconfig.json"), JSON.stringify(config));
    const compiler = join(repoRoot, "node_modules", "typescript", "bin", "tsc");
    const { stdout, status } = spawnSync(process.execPath, [compiler, "-p", place], { encoding: "utf8" });
    expect(status).not.toBe(0);
    const refused = [...stdout.matchAll(/probe\.ts\((\d+),/g)].map((match) => Number(match[1]));
    expect(refused).toEqual([1, 2, 3, 4, 5]);
  });
});

describe("the closing line of the check run", () => {
  const report = (counts: object): string => {
    const file = join(temporaryFolder(), "report.json");
    writeFileSync(
      file,
      JSON.stringify({ numPassedTests: 5, numFailedTests: 0, numPendingTests: 1, numTodoTests: 1, ...counts }),
    );
    return file;
  };
  const closing = (...args: string[]): [string, number | null] => {
    const ended = spawnSync(process.execPath, [join(repoRoot, ".ci", "closing-line.mjs"), ...args], {
      encoding: "utf8",
    });
    return [ended.stdout.trim(), ended.status];
  };
  test.each<[name: string, args: () => string[], line: string, code: number]>([
    ["all well", () => [report({}), "0", "0", "0"], "7 passed, 0 failed, 2 skipped", 0],
    ["a test failed", () => [report({ numFailedTests: 2 }), "1", "0", "0"], "7 passed, 2 failed, 2 skipped", 1],
    ["a file did not load", () => [report({}), "1", "0", "0"], "7 passed, 1 failed, 2 skipped", 1],
    ["the linter complained", () => [report({}), "0", "1", "0"], "6 passed, 1 failed, 2 skipped", 1],
    ["no report", () => ["/nowhere.json", "1", "1", "2"], "0 passed, 3 failed, 0 skipped", 1],
  ])("%s", (_name, args, line, code) => {
    expect(closing(...args())).toEqual([line, code]);
  });
});

describe("the bench's arithmetic", () => {
  test("quantiles are by nearest rank", () => {
    const hundred = Array.from({ length: 100 }, (_, index) => 100 - index);
    expect([quantile(hundred, 0.5), quantile(hundred, 0.95), quantile(hundred, 1)]).toEqual([50, 95, 100]);
    expect(quantile([7], 0.95)).toBe(7);
    expect(() => quantile([], 0.5)).toThrow(RangeError);
  });

  test("the table shows the ratio to the reference job", () => {
    const table = benchTable([{ name: "import", runs: 3, medianMs: 30, p95Ms: 40, note: "" }], 20);
    expect(table.split("\n").at(-1)).toMatch(/^import +3 +30\.00 +40\.00 +1\.50$/);
  });

  test("the command runs", () => {
    const out = execFileSync(process.execPath, ["--import", "tsx", "tests/bench/run.ts", "no such bench"], {
      cwd: repoRoot,
      encoding: "utf8",
    });
    expect(out).toMatch(/cores.*Node/);
  });
});
