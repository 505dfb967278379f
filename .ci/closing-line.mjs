/** .ci/closing-line.mjs - prints the one line that the runner reads, and ends with code 0 only when nothing failed.
 *  Called as: closing-line.mjs <vitest's JSON report> <exit code of the tests> <of the linter> <of the type check> */
import { readFileSync } from "node:fs";

const [reportFile, testsCode, ...checkCodes] = process.argv.slice(2);
const counts = readCounts(reportFile);
// A file that does not load, or a set-up that breaks, fails no single test; it must still show in the count.
if (testsCode !== "0" && counts.failed === 0) counts.failed = 1;
for (const code of checkCodes) {
  if (code === "0") counts.passed += 1;
  else counts.failed += 1;
}
console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
process.exit(counts.failed === 0 ? 0 : 1);

/** The counts of the report; all zero when the tests broke off before writing it. */
function readCounts(file) {
  try {
    const report = JSON.parse(readFileSync(file, "utf8"));
    return {
      passed: report.numPassedTests,
      failed: report.numFailedTests,
      skipped: report.numPendingTests + report.numTodoTests,
    };
  } catch {
    return { passed: 0, failed: 0, skipped: 0 };
  }
}
