/** tests/ride-puzzle/command-line.test.ts - the count of readings on the command line: in words, and as JSON. */
import { beforeAll, describe, expect, test } from "vitest";
import { runCommandLine } from "../../server/commands/run.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { openStore } from "../../server/store/index.ts";
import { answerDecide, exercisePuzzle } from "../../shared/ride/puzzle/index.ts";
import { temporaryStorePath } from "../kit/temporary-store-path.ts";
import { demoRows } from "../ride/rides.ts";

const NOW = "2026-05-04T10:00:00.000Z";
const { rows, exercises } = demoRows();
let file = "";

beforeAll(() => {
  file = temporaryStorePath();
  const opened = openStore(file);
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  loadDemo(opened.value, NOW);
  opened.value.close();
});

async function run(...args: string[]): Promise<{ code: number; out: string; error: string }> {
  const out: string[] = [];
  const errors: string[] = [];
  const code = await runCommandLine(["readings", ...args], {
    out: (text) => out.push(text),
    bytes: (bytes) => out.push(Buffer.from(bytes).toString("utf8")),
    error: (text) => errors.push(text),
    environment: { PASSAGEWORK_FILE: file },
    now: NOW,
  });
  return { code, out: out.join("\n"), error: errors.join("\n") };
}

describe("readings", () => {
  test("says how many ways hold, and what is forced and dead", async () => {
    const { code, out } = await run("Of the change upon the wall");
    expect(code).toBe(0);
    expect(out).toMatch(/^“Of the change upon the wall”: 2 of 4 ways to read it hold together, /);
    expect(out).toMatch(/\n\tdead\t0 of 2\t0 %\tto the other hand; the reins change too/);
    expect(out).toMatch(/\n\tforced\t2 of 2\t100 %\tto the other side, in the same hand/);
  });

  test("gives as JSON what the window is answered", async () => {
    const { out } = await run("2", "--json");
    const answer = answerDecide(exercisePuzzle(rows, [exercises.change]), { picks: [], asAdopted: false, without: [] });
    expect(JSON.parse(out)).toEqual({ exercise: exercises.change, ...answer, why: null });
  });

  test("says why nothing holds", async () => {
    const crux = rows.cruxes?.find(({ value }) => value.title === "The other hand, or the other side")?.value.id;
    const dead = rows.readings?.find(({ value }) => value.crux === crux && value.title.startsWith("to the other hand"));
    const { out } = await run("2", "--choice", `${crux}:${dead?.value.id}`);
    expect(out).toMatch(/: 0 of 2 ways/);
    expect(out).toMatch(/\nNothing holds as it stands\. These cannot all be: /);
  });

  test.each<[name: string, args: string[], code: number, words: RegExp]>([
    ["no exercise", [], 2, /takes 1 word/],
    ["one that is not there", ["99"], 1, /No exercise is called “99”/],
    [
      "a reading that is not there",
      ["1", "--choice", `${exercises.circle}:${exercises.circle}`],
      1,
      /no crux with the id/,
    ],
  ])("refuses %s", async (_name, args, code, words) => {
    const ended = await run(...args);
    expect(ended.code).toBe(code);
    expect(ended.error).toMatch(words);
  });
});
