/** tests/bench/typing.bench.ts - from a key pressed on the unlocked text to the next painted frame, in Chromium, in a work
 *  with 5,000 marks; once in an ordinary passage (20 marks) and once in a crowded one (200).
 *  May import: server, playwright-core through tests/kit. Needs the built client (`npm start` or `npm test` builds it). */
import { join } from "node:path";
import type { Page } from "playwright-core";
import { buildApp } from "../../server/app.ts";
import { deskFor } from "../../server/desk.ts";
import { listen } from "../../server/listen.ts";
import { openStore, writeChange } from "../../server/store/index.ts";
import { openBrowser, withPage } from "../kit/browser.ts";
import { bigWork } from "./big-work.ts";
import type { Report } from "./harness.ts";

const KEYS = 300;

export default async function typingBench(report: Report): Promise<void> {
  const browser = await openBrowser();
  try {
    for (const [name, passages, marksEach, words] of [
      ["typing in a passage with 20 marks, 5,000 in the work", 250, 20, 80],
      ["typing in a passage of 800 words with 200 marks, 5,000 in the work", 25, 200, 800],
    ] as const) {
      const opened = openStore(join(report.folder(), `${marksEach}.sqlite`));
      if (!opened.ok) throw new Error(opened.refusal.error.sentence);
      const big = bigWork(passages, marksEach, words);
      const request = {
        id: "0190c000-0000-7000-8000-ffffffffffff",
        who: "bench",
        why: "",
        sitting: null,
        group: null,
        edits: big.edits,
      };
      if (!writeChange(opened.value, request, { now: "2026-01-01T00:00:00.000Z" }).ok) throw new Error("not stored");
      const { server, address } = await listen(buildApp(deskFor(opened.value)), 0, 1);
      await withPage(browser, async (page) => {
        await page.goto(`${address.replace(/\/$/, "")}/read/${big.passage}`);
        await page.locator(".head.number").first().waitFor();
        report.samples(name, await typingTimes(page), "key to painted frame");
      });
      server.closeAllConnections();
      server.close();
      opened.value.close();
    }
  } finally {
    await browser.close();
  }
}

async function typingTimes(page: Page): Promise<number[]> {
  await page.getByRole("button", { name: "amend" }).first().click();
  await page.locator(".text-pane.unlocked .ProseMirror").focus();
  await page.evaluate(() => {
    const times: number[] = [];
    (window as unknown as { times: number[] }).times = times;
    document.addEventListener(
      "keydown",
      () => {
        const start = performance.now();
        // The message is handled after the frame the animation callback belongs to was painted.
        requestAnimationFrame(() => {
          const channel = new MessageChannel();
          channel.port1.onmessage = () => times.push(performance.now() - start);
          channel.port2.postMessage(null);
        });
      },
      true,
    );
  });
  for (let key = 0; key < KEYS; key += 1) {
    await page.keyboard.press("abcdefg hij klm nop"[key % 19] as string);
    await page.waitForTimeout(15);
  }
  await page.waitForFunction((keys) => (window as unknown as { times: number[] }).times.length >= keys, KEYS);
  const times = await page.evaluate(() => (window as unknown as { times: number[] }).times);
  return times.slice(20);
}
