/** server/publish/papers/build-paper.ts - a paper as it is asked for, built from the rows before any form of it is written.
 *  May import: schema types, server/store, server/errors, siblings. Pure over the rows: no clock, no order but ranks, no
 *  locale. The same rows and the same asking give the same paper. */
import type { Paper, PaperAsk } from "../../../schema/paper.ts";
import type { Rows } from "../../../schema/record.ts";
import { done, type Outcome } from "../../errors.ts";
import { type BundleOf, getAttachment, readBundle, readRow, type Store } from "../../store/index.ts";
import { openStyle, stylesFolderOf } from "../styles/citation-styles.ts";
import { UntilNextChange } from "../until-next-change.ts";
import { appendix } from "./appendix.ts";
import { callersSheet } from "./callers-sheet.ts";
import { classHandout } from "./class-handout.ts";
import { cruxNotes } from "./crux-note.ts";
import { problemWithCitations } from "./dangling.ts";
import { finishPaper } from "./finish-paper.ts";
import { type LaidRows, layRows } from "./laid-rows.ts";
import { type PaperContext, paperContext } from "./paper-context.ts";
import { framed, type PaperBody } from "./paper-frame.ts";
import type { Pictures } from "./picture-blocks.ts";
import { problemWithAsk } from "./problem-with-ask.ts";
import { rideSheet } from "./ride-sheet.ts";
import { workingSheet } from "./working-sheet.ts";

/** The paper without an edition: freezing it gives it one. Refused when something that is asked for is not there, when a
 *  citation leads nowhere, or when a source or its style cannot be set. */
export function buildPaper(store: Store, ask: PaperAsk): Outcome<Paper> {
  const rows = rowsFor(store, ask);
  if (!rows.ok) return rows;
  return paperOfLaid(rows.value, ask, {
    stylesFolder: stylesFolderOf(store),
    attachment: (hash) => getAttachment(store, hash),
  });
}

/** What a paper needs besides rows. */
export interface PaperFiles extends Pictures {
  /** Where a user's own citation styles lie; null for nowhere. */
  stylesFolder: string | null;
}

/** The same from rows that are at hand: those of one exercise, or of the whole work. */
export function paperOf(rows: Rows, ask: PaperAsk, files: PaperFiles): Outcome<Paper> {
  return paperOfLaid(layRows(rows), ask, files);
}

function paperOfLaid(laid: LaidRows, ask: PaperAsk, files: PaperFiles): Outcome<Paper> {
  const problem = problemWithAsk(laid.rows, ask);
  if (problem !== null) return problem;
  const context = paperContext(laid, ask);
  const dangling = problemWithCitations(context);
  if (dangling !== null) return dangling;
  const { body, inBook } = bodyOf(context, files);
  const unfinished = {
    blocks: body.blocks,
    cruxNotes: inBook ? cruxNotes(context) : new Map(),
    bibliography: inBook,
  };
  // A style is opened only where a source is cited: no other paper fails for want of one.
  const engine = inBook || context.cited.size > 0 ? openStyle(files.stylesFolder, ask.style) : null;
  if (engine !== null && !engine.ok) return engine;
  const finished = finishPaper(context, engine?.value ?? null, unfinished);
  return finished.ok ? done(framed(context, body, finished.value)) : finished;
}

/** `inBook`: with its apparatus in notes, and a bibliography. */
function bodyOf(context: PaperContext, pictures: Pictures): { body: PaperBody; inBook: boolean } {
  switch (context.ask.kind) {
    case "appendix":
      return { body: appendix(context), inBook: true };
    case "class handout":
      return { body: classHandout(context, pictures), inBook: false };
    case "caller's sheet":
      return { body: callersSheet(context), inBook: false };
    case "working sheet":
      return { body: workingSheet(context), inBook: false };
    case "ride sheet":
      return { body: rideSheet(context, pictures), inBook: false };
  }
}

/** Papers that tell nothing of what exercises share: stations, on a plan too, holds, words that are followed. */
const OF_ONE_EXERCISE: ReadonlySet<PaperAsk["kind"]> = new Set(["working sheet"]);

/** Of a work, and of the exercises whose working sheets were asked for last. */
const laidRows = new UntilNextChange<Outcome<LaidRows>>(3);

/** The bundle of one exercise where that is enough, else the whole work: only then do marks on shared things come with it. */
function rowsFor(store: Store, { parts, kind }: PaperAsk): Outcome<LaidRows> {
  const exercise = parts[0]?.exercise ?? "";
  const alone = OF_ONE_EXERCISE.has(kind) && parts.every((part) => part.exercise === exercise);
  const work = alone ? undefined : readRow(store, "exercises", exercise)?.value.work;
  const of: BundleOf = work === undefined ? { exercise } : { work };
  return laidRows.get(store, JSON.stringify(of), () => {
    const bundle = readBundle(store, of);
    return bundle.ok ? done(layRows(bundle.value.rows)) : bundle;
  });
}
