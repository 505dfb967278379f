/** server/commands/machine-papers.ts - a work for machines, as TEI and as Web Annotations, the same bytes as from the window.
 *  May import: server/publish, siblings. */
import type { Outcome } from "../errors.ts";
import { publishAnnotations } from "../publish/annotations/publish-annotations.ts";
import { publishTei } from "../publish/tei/publish-tei.ts";
import type { Store } from "../store/index.ts";
import { type Command, tellRefusal } from "./command.ts";
import { findWork } from "./find-row.ts";
import { writeOut } from "./write-out.ts";

export const tei = machinePaper(
  "tei",
  "Writes a work (by id or title) as one TEI P5 document: texts, apparatus, steps with their words.",
  "The TEI edition of",
  publishTei,
);

export const annotations = machinePaper(
  "annotations",
  "Writes every mark of a work (by id or title) as W3C Web Annotations in JSON-LD.",
  "The annotations of",
  publishAnnotations,
);

function machinePaper(
  name: string,
  says: string,
  what: string,
  publish: (store: Store, work: string) => Outcome<Uint8Array>,
): Command {
  return {
    name,
    usage: "WORK [--out FILE]",
    says,
    options: { out: { type: "string", says: "the file to write; without it it goes to the terminal" } },
    words: [1, 1],
    store: "there",
    run: (call) => {
      const work = findWork(call.store, call.words[0] ?? "");
      if (!work.ok) return tellRefusal(call, work.refusal);
      const made = publish(call.store, work.value.id);
      if (!made.ok) return tellRefusal(call, made.refusal);
      return writeOut(call, made.value, `${what} “${work.value.title}”`);
    },
  };
}
