/** server/setup/test.mjs - `npm test`: installs what is missing, a browser too, builds the client, runs the tests.
 *  `npm test -- tests/text` runs one room; whatever stands after `--` goes to the test runner.
 *  Plain JavaScript, because it runs before anything is installed. */
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureClient } from "./client-build.mjs";
import { ensureDependencies } from "./dependencies.mjs";
import { browserIsUnwanted, ensureBrowser } from "./find-browser.mjs";
import { requireNode } from "./node-version.mjs";
import { runs } from "./run-command.mjs";

requireNode();
const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const args = process.argv.slice(2);
ensureDependencies(root);
const window = needsWindow(args);
if (window) ensureClient(root);
const browser = window && !browserIsUnwanted() ? await ensureBrowser(root) : null;

const vitest = join(root, "node_modules", "vitest", "vitest.mjs");
const config = join(root, "tests", "vitest.config.ts");
const passed = runs(process.execPath, [vitest, "run", "--config", config, ...args], {
  cwd: root,
  env: browser === null ? {} : { PASSAGEWORK_BROWSER: browser },
});
process.exit(passed ? 0 : 1);

/** True unless the arguments name only rooms that have nothing to do with the built client in a browser. */
function needsWindow(testArguments) {
  const rooms = testArguments.filter((argument) => !argument.startsWith("-"));
  return rooms.length === 0 || rooms.some((room) => room.includes("browser") || "tests/browser".startsWith(room));
}
