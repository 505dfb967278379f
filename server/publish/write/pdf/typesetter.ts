/** server/publish/write/pdf/typesetter.ts - sets data into pages. The type setter and its faces are made once and kept.
 *  May import: Node's own modules, the type setter, siblings, the room above. */
import { join } from "node:path";
import { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";
import { faces } from "../face-files.ts";
import type { Trial } from "./fit.ts";

const FOLDER = join(import.meta.dirname, "template");
const MAIN = join(FOLDER, "paper.typ");
const DATA = join(FOLDER, "paper.json");

/** What was set before is kept for this many papers, so that one that changed little is set again quickly. */
const KEPT = 4;

let kept: NodeCompiler | null = null;

/** Only the faces of the packages are known to it, and only the folder of the template can be read by it. */
function typesetter(): NodeCompiler {
  kept ??= NodeCompiler.create({ workspace: FOLDER, fontArgs: [{ fontBlobs: faces().map(({ bytes }) => bytes) }] });
  return kept;
}

export interface SetPages extends Trial {
  /** The bytes of a tagged PDF, checked against PDF/UA-1 as far as the type setter checks. */
  bytes(): Uint8Array;
}

/** Throws Error when the template has a mistake or the paper cannot be made accessible: these are ours to mend. */
export function setPages(data: unknown): SetPages {
  const compiler = typesetter();
  compiler.mapShadow(DATA, Buffer.from(JSON.stringify(data)));
  const compiled = compiler.compile({ mainFilePath: MAIN });
  const pages = compiled.result;
  if (pages === null) {
    const problem = compiled.takeDiagnostics();
    throw new Error(`The pages could not be set: ${JSON.stringify(problem?.shortDiagnostics ?? [])}`);
  }
  return {
    count: pages.numOfPages,
    filled: filledOf(compiler.query(pages, { selector: "<end-of-paper>", field: "value" })),
    bytes() {
      const bytes = compiler.pdf(pages, { pdfStandard: "ua-1", pdfTags: true });
      compiler.evictCache(KEPT);
      return bytes;
    },
  };
}

/** The template tells where its last word stands, in pages. */
function filledOf(found: unknown): number {
  const [filled] = Array.isArray(found) ? found : [];
  if (typeof filled !== "number") throw new Error("The template does not say where the paper ends.");
  return filled;
}
