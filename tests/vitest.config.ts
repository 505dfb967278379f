/** tests/vitest.config.ts - how the tests run. Tests sit in rooms (tests/text, tests/browser ...); two workers, because
 *  a small machine has two cores and the browser tests want one each. Set PASSAGEWORK_REPORT to a path to get vitest's
 *  JSON report there as well; .ci/run reads its counts. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("..", import.meta.url));
const report = process.env.PASSAGEWORK_REPORT;

/** JSX is compiled for Preact here as it is in the client's own build. */
const oxc = { jsx: { runtime: "automatic" as const, importSource: "preact" } };

export default defineConfig({
  root,
  oxc,
  // The bundler's cache would otherwise be put at the top level when node_modules is read-only.
  cacheDir: `${root}node_modules/.vitest`,
  test: {
    reporters: report ? ["default", "json"] : ["default"],
    ...(report ? { outputFile: { json: report } } : {}),
    pool: "forks",
    maxWorkers: 2,
    // A file that is named but matches nothing is a mistake in the command, not a pass.
    passWithNoTests: false,
    projects: [
      {
        extends: true,
        test: {
          name: "core",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: ["tests/browser/**", "tests/bench/**"],
          // Some tests ride or set the whole book: seconds on a quiet machine, many times that on a busy one. Only what hangs
          // is to be cut off.
          testTimeout: 90_000,
          hookTimeout: 90_000,
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.{ts,tsx}"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // What is written in a window shows at once and is stored when its turn comes: on a busy machine, seconds later.
          expect: { poll: { timeout: 20_000 } },
          // One browser at a time: two at once on two cores make timings in tests meaningless.
          fileParallelism: false,
        },
      },
    ],
  },
});
