/** tests/bench/play.bench.ts - the Ride room while it plays: the time from frame to frame over ten seconds in Chromium, and
 *  the work the page does for each, for one rider and for eight with a second reading beside.
 *  May import: server, playwright-core through tests/kit. Needs the built client (`npm start` or `npm test` builds it). */
import { join } from "node:path";
import type { Page } from "playwright-core";
import { buildApp } from "../../server/app.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { deskFor } from "../../server/desk.ts";
import { listen } from "../../server/listen.ts";
import { openStore } from "../../server/store/index.ts";
import { openBrowser, withPage } from "../kit/browser.ts";
import type { Report } from "./harness.ts";

const SECONDS = 10;
/** Milliseconds: the longest a frame may take. */
const LONGEST_FRAME = 32;

export default async function playBench(report: Report): Promise<void> {
  const opened = openStore(join(report.folder(), "play.sqlite"));
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  loadDemo(opened.value, "2026-01-01T00:00:00.000Z");
  const { server, address } = await listen(buildApp(deskFor(opened.value)), 0, 1);
  const browser = await openBrowser();
  try {
    const moving = { reducedMotion: "no-preference", viewport: { width: 1400, height: 900 } } as const;
    for (const [name, others, follow] of [
      ["frame to frame while playing, one rider", 0, false],
      ["frame to frame while playing, following the horse", 0, true],
      ["frame to frame while playing, eight riders and a second reading", 7, false],
    ] as const) {
      await withPage(
        browser,
        async (page) => {
          await page.addInitScript(TIMED);
          await page.goto(`${address.replace(/\/$/, "")}/ride`);
          await page.getByRole("button", { name: "play", exact: true }).waitFor();
          for (let rider = 0; rider < others; rider += 1)
            await page.getByRole("button", { name: "Add a rider" }).click();
          if (others > 0) await page.getByLabel("Beside it, in soft ink").selectOption({ index: 1 });
          if (follow) await page.getByLabel("follow the horse").check();
          const frames = await framesWhilePlaying(page);
          const longest = Math.max(...frames);
          report.samples(name, frames, `longest ${longest.toFixed(1)} ms; at most ${LONGEST_FRAME} ms is asked`);
          const work = (await page.evaluate("window.workOfFrames")) as number[];
          const most = Math.max(...work);
          report.samples("  of these, in the page's own callbacks", work, `most ${most.toFixed(1)} ms`);
        },
        moving,
      );
    }
  } finally {
    await browser.close();
    server.closeAllConnections();
    server.close();
    opened.value.close();
  }
}

/** Notes how long each callback of a frame takes: on a busy machine a late frame need not be the page's own doing. */
const TIMED = `{
  window.workOfFrames = [];
  const ask = window.requestAnimationFrame.bind(window);
  window.requestAnimationFrame = (callback) => ask((now) => {
    const begun = performance.now();
    callback(now);
    window.workOfFrames.push(performance.now() - begun);
  });
}`;

/** Runs in the page. As text, since what the loader of these files adds to functions is not there. */
const GAPS = `(milliseconds) => new Promise((resolve) => {
  const gaps = [];
  const begun = performance.now();
  let last = null;
  requestAnimationFrame(function frame(now) {
    if (last !== null) gaps.push(now - last);
    last = now;
    if (now - begun < milliseconds) requestAnimationFrame(frame);
    else resolve(gaps);
  });
})`;

/** Milliseconds from each frame to the next. Throws Error when the ride did not go on meanwhile. */
async function framesWhilePlaying(page: Page): Promise<number[]> {
  const at = () => page.locator(".transport .time").textContent();
  const before = await at();
  await page.getByRole("button", { name: "play", exact: true }).click();
  await page.waitForTimeout(500);
  await page.evaluate("window.workOfFrames.length = 0");
  const frames = (await page.evaluate(`(${GAPS})(${SECONDS * 1000})`)) as number[];
  if ((await at()) === before) throw new Error("the ride did not go on");
  return frames;
}
