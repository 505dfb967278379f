/** server/publish/papers/finish-paper.ts - calls the notes where their signs stand, and sets the citations of sources.
 *  May import: schema types, shared/cite, server/errors, siblings. All of it goes by reading order: a crux has its note where its sign
 *  stands first, and a source is cited in full the first time. */
import type { Line, Paper, Span } from "../../../schema/paper.ts";
import type { CslAsk, CslEngine, CslItem, CslSet } from "../../../shared/cite/csl-engine.ts";
import type { RichText } from "../../../shared/cite/rich-text.ts";
import { done, type Outcome, refused } from "../../errors.ts";
import { mapLines } from "./map-lines.ts";
import type { PaperContext } from "./paper-context.ts";
import { problemWithSource } from "./problem-with-source.ts";
import { emphasis, strong, words } from "./spans.ts";

type Note = Paper["notes"][number];

export interface Unfinished {
  blocks: Paper["blocks"];
  /** The note of each crux, by the crux: called where its sign stands first. One whose sign stands nowhere is left out. */
  cruxNotes: ReadonlyMap<string, Note>;
  /** Whether there is one: its block of entries stands empty among the others until all that is cited is known. */
  bibliography: boolean;
}

/** Anchor of the heading of the bibliography. */
export const BIBLIOGRAPHY = "bibliography";

export interface Finished {
  blocks: Paper["blocks"];
  notes: Note[];
}

/** `engine`: null for a paper that cites no source. */
export function finishPaper(
  context: PaperContext,
  engine: CslEngine | null,
  unfinished: Unfinished,
): Outcome<Finished> {
  const { cited } = context;
  const called = callNotes(context, engine?.inNotes === true, unfinished);
  const items = itemsOf(context);
  const used = new Set(called.calls.map(({ source }) => source));
  // The book that the whole paper cites is in its bibliography; of the others only what is cited.
  const ownEntry = context.book.work.source;
  const uncited = unfinished.bibliography && ownEntry !== null && items.has(ownEntry) ? [ownEntry] : [];
  for (const id of uncited) used.add(id);
  for (const id of used) {
    const item = items.get(id);
    const problem = item === undefined ? null : problemWithSource(item);
    if (problem !== null) return problem;
  }
  const set = setSources(engine, { items, calls: called.calls, uncited });
  if (!set.ok) return set;
  const spans = new Map([...cited.keys()].map((span) => [span, [] as Span[]]));
  for (const [index, { span, alone }] of called.calls.entries()) {
    const text = richSpans(set.value.citations[index] ?? []);
    spans.set(span, alone ? text : [words(" "), ...text]);
  }
  const put = (line: Line): Line =>
    line.some((span) => spans.has(span)) ? line.flatMap((span) => spans.get(span) ?? [span]) : line;
  return done({
    blocks: mapLines(withBibliography(called.blocks, set.value, unfinished), put),
    notes: called.notes.map((note) => ({ ...note, lines: note.lines.map(put) })),
  });
}

interface Called {
  blocks: Paper["blocks"];
  notes: Note[];
  /** Sources in reading order, each with the number of the note it stands in; 0 in the text. `alone`: in a note of its own. */
  calls: { span: Span; source: string; where: string; note: number; alone: boolean }[];
}

function callNotes({ cited }: PaperContext, inNotes: boolean, { blocks, cruxNotes }: Unfinished): Called {
  const notes: Note[] = [];
  const calls: Called["calls"] = [];
  const begun = new Set<string>();
  const call = (note: Note, alone: boolean): Span => {
    notes.push(note);
    for (const span of note.lines.flat()) {
      const source = cited.get(span);
      if (source !== undefined) calls.push({ span, ...source, note: notes.length, alone });
    }
    return { is: "note", note: note.id };
  };
  const change = (line: Line): Line => {
    if (!line.some((span) => span.is === "sign" || cited.has(span))) return line;
    return line.flatMap((span): Span[] => {
      if (span.is === "sign") {
        const note = begun.has(span.crux) ? undefined : cruxNotes.get(span.crux);
        begun.add(span.crux);
        return note === undefined ? [span] : [span, call(note, false)];
      }
      const source = cited.get(span);
      if (source === undefined) return [span];
      if (inNotes) {
        return [call({ id: `cited-${notes.length + 1}`, lines: [[span]], of: sourceOf(source.source) }, true)];
      }
      calls.push({ span, ...source, note: 0, alone: false });
      return [span];
    });
  };
  return { blocks: mapLines(blocks, change), notes, calls };
}

const sourceOf = (id: string): Note["of"] => [{ kind: "sources", id }];

/** Sources of the work by their ids, in the order of these. */
function itemsOf({ book }: PaperContext): Map<string, CslItem> {
  return new Map(book.all("sources").flatMap(({ id, work, item }) => (work === book.work.id ? [[id, item]] : [])));
}

function setSources(engine: CslEngine | null, ask: CslAsk): Outcome<CslSet> {
  if (engine === null || (ask.calls.length === 0 && ask.uncited.length === 0)) {
    return done({ citations: [], bibliography: [] });
  }
  try {
    return done(engine.set(ask));
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    const { calls, items } = ask;
    const alone = [...new Set([...calls.map(({ source }) => source), ...ask.uncited])].find((id) =>
      fails(engine, items, id),
    );
    const item = items.get(alone ?? "");
    const named = typeof item?.title === "string" ? `The source “${item.title}”` : "One of the sources";
    return refused(
      "source_unreadable",
      `${named} cannot be set in this citation style: ${error.message}. Look at its fields, or choose another style.`,
    );
  }
}

function fails(engine: CslEngine, items: ReadonlyMap<string, CslItem>, source: string): boolean {
  try {
    engine.set({ items, calls: [{ source, where: "", note: 1 }], uncited: [] });
    return false;
  } catch {
    return true;
  }
}

function withBibliography(
  blocks: Paper["blocks"],
  { bibliography }: CslSet,
  { bibliography: wanted }: Unfinished,
): Paper["blocks"] {
  if (!wanted) return blocks;
  if (bibliography.length === 0) return blocks.filter((block) => !isOfBibliography(block));
  return blocks.flatMap((block): Paper["blocks"] => {
    if (block.is !== "entries" || block.as !== "bibliography") return [block];
    const items = bibliography.map(({ source, text }) => ({
      anchor: sourceAnchor(source),
      head: [],
      lines: [richSpans(text)],
      of: sourceOf(source),
    }));
    return [{ ...block, items }];
  });
}

/** Its heading or its entries: neither is printed where nothing is cited. */
function isOfBibliography(block: Paper["blocks"][number]): boolean {
  return block.is === "heading" ? block.anchor === BIBLIOGRAPHY : block.is === "entries" && block.as === "bibliography";
}

export const sourceAnchor = (source: string): string => `source-${source}`;

function richSpans(text: RichText): Span[] {
  return text.map((stretch) =>
    stretch.italic ? emphasis(stretch.text) : stretch.bold ? strong(stretch.text) : words(stretch.text),
  );
}
