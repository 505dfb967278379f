/** tests/bench/one-pdf.ts - makes one PDF and tells, as JSON, how long it took and the most memory the process held. Run by
 *  itself: `one-pdf.ts paper FILE` from a paper, `one-pdf.ts rows FILE` from the rows of its book. */
import { readFileSync } from "node:fs";
import type { Paper } from "../../schema/paper.ts";
import type { Rows } from "../../schema/record.ts";
import { done } from "../../server/errors.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { writePaper } from "../../server/publish/write/write-paper.ts";
import { printed } from "../papers/paper-lines.ts";
import { askFor, NO_FILES } from "../papers/small-book.ts";

const [, , from, place = ""] = process.argv;
const held: unknown = JSON.parse(readFileSync(place, "utf8"));
const start = performance.now();
const paper = from === "rows" ? fromRows(held as { rows: Rows; exercises: string[] }) : done(held as Paper);
const made = await writePaper(printed(paper), "pdf");
if (!made.ok) throw new Error(made.refusal.error.sentence);
const milliseconds = performance.now() - start;
// maxRSS is in kilobytes.
console.log(JSON.stringify({ megabytes: process.resourceUsage().maxRSS / 1024, milliseconds }));

function fromRows({ rows, exercises }: { rows: Rows; exercises: string[] }) {
  return paperOf(rows, askFor("appendix", exercises, {}), NO_FILES);
}
