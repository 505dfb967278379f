/** tests/bench/passage.bench.ts - contents, a passage's rows, a write and an export in a work with 5,000 marks.
 *  May import: server, shared. The same work every time. */
import { join } from "node:path";
import { openStore, readBundle, readContents, writeChange } from "../../server/store/index.ts";
import { canonicalJson } from "../../shared/drill/canonical-json.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { bigWork } from "./big-work.ts";
import type { Report } from "./harness.ts";

export default async function passageBench(report: Report): Promise<void> {
  const opened = openStore(join(report.folder(), "bench.sqlite"));
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  const store = opened.value;
  const now = "2026-01-01T00:00:00.000Z";
  const big = bigWork(250, 20);
  const request = {
    id: "0190c000-0000-7000-8000-ffffffffffff",
    who: "bench",
    why: "",
    sitting: null,
    group: null,
    edits: big.edits,
  };
  const start = performance.now();
  const written = writeChange(store, request, { now });
  if (!written.ok) throw new Error(JSON.stringify(written.refusal.error));
  report.samples("store a work with 5,000 marks, one change", [performance.now() - start], `${big.edits.length} rows`);

  const bundle = readBundle(store, { passage: big.passage });
  if (!bundle.ok || (bundle.value.rows.anchors?.length ?? 0) < 100) throw new Error("the bundle is not whole");
  await report.bench("contents of the work", { runs: 15, warmUp: 3 }, () => readContents(store));
  await report.bench("rows of a passage (exercise of 5 passages, 100 steps)", { runs: 30, warmUp: 5 }, () =>
    readBundle(store, { passage: big.passage }),
  );
  await report.bench("compile its drill", { runs: 30, warmUp: 5 }, () =>
    compileDrill(bundle.value.rows, big.exercise, {}),
  );
  await report.bench("export it: rows, drill, bytes", { runs: 30, warmUp: 5 }, () => {
    const rows = readBundle(store, { exercise: big.exercise });
    if (!rows.ok) throw new Error("no rows");
    return canonicalJson(compileDrill(rows.value.rows, big.exercise, {}));
  });
}
