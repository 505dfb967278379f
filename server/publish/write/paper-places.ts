/** server/publish/write/paper-places.ts - the places of a paper: what links go to, what calls which note, and in what
 *  order. May import: schema types. A link or call that leads nowhere must never be printed. */
import type { Block, Line, Paper, PlainBlock } from "../../../schema/paper.ts";

export interface CalledNote {
  id: string;
  /** From 1, in the order the notes are first called. */
  number: number;
  lines: Line[];
}

export interface PaperPlaces {
  /** Of blocks, rows, entries and notes. */
  anchors: ReadonlySet<string>;
  /** Those that a link of the paper leads to. */
  targets: ReadonlySet<string>;
  /** In the order they are called. */
  notes: readonly CalledNote[];
  /** What leads nowhere, in words; empty for a sound paper. */
  dangling: readonly string[];
}

/** Throws RangeError where the paper is not one: a place or note twice, a note that is called twice or never, a call within
 *  a note. */
export function placesOf(paper: Paper): PaperPlaces {
  const blocks = plainBlocks(paper.blocks);
  const anchors = new Set<string>();
  for (const anchor of [...blocks.flatMap(anchorsOf), ...paper.notes.map((note) => note.id)]) {
    if (anchors.has(anchor)) throw new RangeError(`Two places of the paper are named ${anchor}.`);
    anchors.add(anchor);
  }
  const lines = blocks.flatMap(linesOf);
  const all = [...lines, ...paper.notes.flatMap((note) => note.lines)];
  const links = all.flatMap(linksIn);
  const dangling = links.filter(({ to }) => !anchors.has(to)).map(({ words, to }) => `${words} (to #${to})`);
  const { notes, lost } = calledNotes(paper, lines);
  return {
    anchors,
    targets: new Set(links.map(({ to }) => to)),
    notes,
    dangling: [...new Set([...dangling, ...lost])],
  };
}

/** Blocks in reading order, what stands at the left before what stands at the right. */
export function plainBlocks(blocks: readonly Block[]): PlainBlock[] {
  return blocks.flatMap((block) => (block.is === "beside" ? [...block.left, ...block.right] : [block]));
}

function anchorsOf(block: PlainBlock): string[] {
  const held =
    block.is === "heading" || block.is === "figure"
      ? [block.anchor]
      : block.is === "table"
        ? block.rows.map((row) => row.anchor)
        : block.is === "entries"
          ? block.items.map((item) => item.anchor)
          : [];
  return held.filter((anchor) => anchor !== null);
}

/** Every line of a block, in reading order. */
export function linesOf(block: PlainBlock): Line[] {
  switch (block.is) {
    case "heading":
    case "paragraph":
      return [block.words];
    case "list":
      return block.items.map((item) => item.words);
    case "facts":
      return block.rows.map((row) => row.words);
    case "table":
      return [block.caption, ...block.rows.flatMap((row) => row.cells.flat())];
    case "calls":
      return block.items.flatMap((item) => [item.call, ...(item.acts ?? []), item.when, item.where]);
    case "figure":
      return [block.caption];
    case "entries":
      return block.items.flatMap((item) => [item.head, ...item.lines]);
    case "writing":
    case "contents":
    case "page break":
      return [];
  }
}

/** Links to places of the paper, each with its words as they are told to who is to mend it. */
function linksIn(line: Line): { words: string; to: string }[] {
  return line.flatMap((span) => {
    if (span.is === "sign" && span.to !== null) return [{ words: span.sign, to: bare(span.to) }];
    if (span.is === "words" && span.to?.startsWith("#")) return [{ words: `“${span.text}”`, to: bare(span.to) }];
    return [];
  });
}

/** An anchor's name from a link to it, with or without the sign before it. */
export function bare(to: string): string {
  return to.startsWith("#") ? to.slice(1) : to;
}

function calledNotes(paper: Paper, lines: readonly Line[]): { notes: CalledNote[]; lost: string[] } {
  const known = new Map(paper.notes.map((note) => [note.id, note]));
  const called = new Map<string, CalledNote>();
  const lost: string[] = [];
  for (const span of lines.flat()) {
    if (span.is !== "note") continue;
    if (called.has(span.note)) throw new RangeError(`The note ${span.note} is called twice.`);
    const note = known.get(span.note);
    if (note === undefined) lost.push(`a call of the note ${span.note}`);
    else called.set(span.note, { id: note.id, number: called.size + 1, lines: note.lines });
  }
  for (const { id, lines: own } of paper.notes) {
    if (!called.has(id)) throw new RangeError(`Nothing in the paper calls the note ${id}.`);
    if (own.flat().some((span) => span.is === "note")) throw new RangeError(`The note ${id} calls a note itself.`);
  }
  return { notes: [...called.values()], lost };
}
