/** tests/bench/find.bench.ts - searching a work with 5,000 marks: the first time, when the indexes are made, then warm,
 *  and after a change. May import: server, shared. The same work every time. */
import { join } from "node:path";
import { type Finder, finderOf } from "../../server/find/finder.ts";
import { openStore, readCurrentTexts, writeChange } from "../../server/store/index.ts";
import { bigWork } from "./big-work.ts";
import type { Report } from "./harness.ts";

const changeId = (number: number) => `0190c000-0000-7000-9000-${String(number).padStart(12, "0")}`;

export default async function findBench(report: Report): Promise<void> {
  const opened = openStore(join(report.folder(), "bench.sqlite"));
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  const store = opened.value;
  const now = "2026-01-01T00:00:00.000Z";
  const big = bigWork(250, 20);
  let changes = 0;
  const write = (edits: typeof big.edits): void => {
    changes += 1;
    const head = { id: changeId(changes), who: "bench", why: "", sitting: null, group: null };
    const written = writeChange(store, { ...head, edits }, { now });
    if (!written.ok) throw new Error(JSON.stringify(written.refusal.error));
  };
  write(big.edits);

  const ask = (asked: Finder, q: string, atLeast: number): void => {
    const { groups } = asked.find({ q, limit: 6 });
    const total = groups.reduce((sum, group) => sum + group.total, 0);
    if (total < atLeast) throw new Error(`“${q}” was found ${total} times, not ${atLeast}`);
  };
  await report.bench("find, indexes made anew (250 passages, 5,000 steps)", { runs: 7, warmUp: 1 }, () =>
    ask(finderOf(store), "spear", 200),
  );
  const finder = finderOf(store);
  const [text] = readCurrentTexts(store);
  const phrase = `"${text?.text.split(" ").slice(10, 13).join(" ")}"`;
  for (const [q, atLeast] of [
    ["across", 200],
    ["spear right", 200],
    [phrase, 1],
    ["s", 5000],
    ["step 7", 250],
  ] as const) {
    ask(finder, q, atLeast);
    await report.bench(`find ${q}`, { runs: 30, warmUp: 5 }, () => ask(finder, q, atLeast));
  }

  const element = big.edits.find((edit) => edit.do === "create" && edit.kind === "elements");
  if (element?.do !== "create") throw new Error("the work has no step");
  let version = 0;
  const times: number[] = [];
  for (let run = 0; run < 10; run += 1) {
    version += 1;
    write([
      { do: "set", kind: "elements", id: String(element.value.id), base: version, fields: { note: `seen ${version}` } },
    ]);
    const start = performance.now();
    ask(finder, `seen ${version}`, 1);
    times.push(performance.now() - start);
  }
  report.samples("find after a step was changed", times, "the steps are indexed anew");
}
