/** server/setup/find-browser.mjs - finds a Chromium for the tests, and installs one where none is found.
 *  May import: Node's own modules, siblings; playwright-core only by a late import, once packages are there.
 *  Two settings: PASSAGEWORK_BROWSER names the executable to use; PASSAGEWORK_NO_BROWSER=1 leaves browser tests out. */
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";
import { aptInstall, isRootOnDebian } from "./dependencies.mjs";
import { runs } from "./run-command.mjs";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome"];
const PLACES = [
  "/usr/bin/chromium",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
];

/** True when the user asked for the tests without a browser. */
export function browserIsUnwanted() {
  return process.env.PASSAGEWORK_NO_BROWSER === "1";
}

/** The path of a Chromium that can be started; null when there is none.
 *  Throws Error when PASSAGEWORK_BROWSER names a file that cannot be run: a wrong setting is not silently passed over. */
export async function findBrowser() {
  const named = process.env.PASSAGEWORK_BROWSER;
  if (named) {
    if (canRun(named)) return named;
    throw new Error(
      `PASSAGEWORK_BROWSER names ${named}, which is not a program that can be run. Set it to the path of a Chromium, or leave it out.`,
    );
  }
  const folders = (process.env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  const inPath = NAMES.flatMap((name) => folders.map((folder) => join(folder, name)));
  const found = [...inPath, ...PLACES].find(canRun);
  if (found !== undefined) return found;
  const { chromium } = await import("playwright-core");
  const downloaded = chromium.executablePath();
  return canRun(downloaded) ? downloaded : null;
}

/** As `findBrowser`, but installs one when none is found: by apt for root on Debian, otherwise by the test driver's own
 *  download. null when neither works, after saying why and what to do. */
export async function ensureBrowser(root) {
  const found = await findBrowser();
  if (found !== null) return found;
  if (isRootOnDebian()) {
    console.log("Installing Chromium for the browser tests.");
    const complaint = aptInstall(["chromium"]);
    if (complaint !== null) console.error(`${complaint.slice(-2000)}\n\napt could not install Chromium.`);
  }
  const installed = await findBrowser();
  if (installed !== null) return installed;
  console.log("Downloading Chromium for the browser tests.");
  const driver = join(root, "node_modules", "playwright-core", "cli.js");
  // Root may also install the system libraries that the downloaded browser needs.
  const libraries = process.platform === "linux" && process.getuid?.() === 0 ? ["--with-deps"] : [];
  runs(process.execPath, [driver, "install", ...libraries, "chromium"], { cwd: root });
  const downloaded = await findBrowser();
  if (downloaded === null) {
    console.error(
      "\nNo browser was found and none could be installed, so the browser tests will fail. Install Chromium and run the\n" +
        "command again, or name one with PASSAGEWORK_BROWSER=/path/to/chromium. PASSAGEWORK_NO_BROWSER=1 leaves those tests out.",
    );
  }
  return downloaded;
}

function canRun(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
