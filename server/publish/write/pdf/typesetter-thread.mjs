/** server/publish/write/pdf/typesetter-thread.mjs - the type setter in a thread of its own, so that the program answers
 *  while a book is set. May import: Node's own modules, the type setter. Plain JavaScript, because a thread starts without
 *  what reads TypeScript. Asked one thing at a time by typesetter.ts: to set data into pages, for the bytes of what it
 *  has set last, or to let that go. Only the faces it is given and the folder of the template are known to it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { parentPort, workerData } from "node:worker_threads";
import { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";

/** What was set of sheets is kept for this many papers, so that one that changed little is set again quickly. Of a longer
 *  paper nothing is kept: it is hundreds of megabytes. */
const KEPT = 4;
const LONGEST_KEPT = 8;

const { folder, faces } = workerData;
const main = join(folder, "paper.typ");
const data = join(folder, "paper.json");
const compiler = NodeCompiler.create({
  workspace: folder,
  fontArgs: [{ fontBlobs: faces.map((path) => readFileSync(path)) }],
});

// The pages lie outside of what the collector weighs; it has to be called, or they would pile up.
setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc");

/** The pages set last. */
let pages = null;

const answers = {
  set(words) {
    pages = null;
    compiler.mapShadow(data, Buffer.from(words));
    const compiled = compiler.compile({ mainFilePath: main });
    pages = compiled.result;
    if (pages === null) throw new Error(JSON.stringify(compiled.takeDiagnostics()?.shortDiagnostics ?? []));
    const [filled] = compiler.query(pages, { selector: "<end-of-paper>", field: "value" });
    return { count: pages.numOfPages, filled };
  },
  bytes() {
    const bytes = compiler.pdf(pages, { pdfStandard: "ua-1", pdfTags: true });
    answers.letGo();
    return new Uint8Array(bytes);
  },
  letGo() {
    const long = pages.numOfPages > LONGEST_KEPT;
    pages = null;
    compiler.evictCache(long ? 0 : KEPT);
    if (long) collect();
    return null;
  },
};

parentPort.on("message", ({ ask, words }) => {
  try {
    parentPort.postMessage({ answer: answers[ask](words) });
  } catch (error) {
    parentPort.postMessage({ problem: error instanceof Error ? error.message : String(error) });
  }
});
