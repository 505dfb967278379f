/** tests/kit/browser.ts - opens a Chromium for the browser tests, found as `npm test` finds it.
 *  A missing browser fails these tests, with a sentence; only PASSAGEWORK_NO_BROWSER=1 leaves them out. */
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { describe } from "vitest";
import { browserIsUnwanted, findBrowser } from "../../server/setup/find-browser.mjs";

/** A `describe` for browser tests: skipped only when the user asked for the tests without a browser. */
export const describeInBrowser = describe.skipIf(browserIsUnwanted());

/** Starts a browser that keeps to itself: no updates, no traffic in the background. The caller closes it.
 *  Throws Error with what to do when there is none. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = await findBrowser();
  if (executablePath === null) {
    throw new Error(
      "No Chromium was found for the browser tests. Run `npm test`, which installs one, or set PASSAGEWORK_BROWSER to its path.",
    );
  }
  // Chromium refuses its sandbox to root; for everybody else it stays on.
  const sandbox = process.getuid?.() === 0 ? ["--no-sandbox"] : [];
  return chromium.launch({
    executablePath,
    args: [
      ...sandbox,
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

/** Opens a page of its own (own cookies and storage), hands it to `use`, closes it, and gives back what `use` gave.
 *  Throws Error when the page had an uncaught error of its own, even where `use` went well. */
export async function withPage<T>(
  browser: Browser,
  use: (page: Page) => Promise<T>,
  options: BrowserContextOptions = {},
): Promise<T> {
  const context = await browser.newContext({
    viewport: { width: 1280, height: 800 },
    reducedMotion: "reduce",
    ...options,
  });
  const errors: Error[] = [];
  context.on("weberror", (event) => errors.push(event.error()));
  try {
    const result = await use(await context.newPage());
    if (errors.length > 0) {
      throw new Error(
        `The page had ${errors.length} uncaught error(s): ${errors.map((error) => error.stack).join("\n")}`,
      );
    }
    return result;
  } finally {
    await context.close();
  }
}
