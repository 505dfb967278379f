/** Papers built: the print model of every kind, from rows at hand and from the store, and an appendix of 25 exercises, 300 steps
 *  and 150 crux notes; half of it, to see that time grows with the steps. */
import type { PaperAsk } from "../../schema/paper.ts";
import { buildPaper, paperOf } from "../../server/publish/papers/build-paper.ts";
import { openStore, writeChange } from "../../server/store/index.ts";
import { idOf } from "../drill/build-rows.ts";
import { printed } from "../papers/paper-lines.ts";
import { askFor, NO_FILES } from "../papers/small-book.ts";
import { type BigBook, bigBook, editsOf } from "./big-book.ts";
import type { Report } from "./harness.ts";

const SHEETS: PaperAsk["kind"][] = ["ride sheet", "class handout", "caller's sheet", "working sheet"];

function check(book: BigBook, ask: PaperAsk): void {
  const { notes, blocks } = printed(paperOf(book.rows, ask, NO_FILES));
  const rows = blocks.flatMap((block) => (block.is === "table" ? block.rows : []));
  const cruxes = notes.filter(({ id }) => id.startsWith("crux-")).length;
  // Each step has a row of its own and one for its words.
  if (rows.length !== 2 * book.steps || cruxes !== book.cruxes) throw new Error("The appendix is not whole.");
}

export default async (report: Report): Promise<void> => {
  const half = bigBook({ exercises: 13, steps: 12, cruxes: 6 });
  const whole = bigBook({ exercises: 25, steps: 12, cruxes: 6 });
  for (const style of ["notes and bibliography", "author and year"]) {
    for (const book of [half, whole]) {
      const ask = askFor("appendix", book.exercises, { style });
      check(book, ask);
      await report.bench(`appendix of ${book.steps} steps, ${style}`, { runs: 10, warmUp: 5 }, () =>
        paperOf(book.rows, ask, NO_FILES),
      );
    }
  }

  const store = openStore(":memory:");
  if (!store.ok) throw new Error(store.refusal.error.sentence);
  const change = { id: idOf("a change"), who: "a bench", why: "to print from", sitting: null, group: null };
  const written = writeChange(store.value, { ...change, edits: editsOf(whole.rows) }, { now: "2026-01-01T00:00:00Z" });
  if (!written.ok) throw new Error(written.refusal.error.sentence);
  const one = whole.exercises.slice(12, 13);
  for (const kind of SHEETS) {
    printed(buildPaper(store.value, askFor(kind, one)));
    await report.bench(`${kind} of one exercise, from the store`, { runs: 10, warmUp: 3 }, () =>
      buildPaper(store.value, askFor(kind, one)),
    );
  }
};
