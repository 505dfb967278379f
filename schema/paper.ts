/** schema/paper.ts - a paper before it is set: what it says, block by block, for every form it can take.
 *  May import: zod, siblings. Built once from the rows and written by PDF, DOCX and HTML alike; an edition keeps it as
 *  canonical JSON. It holds no clock and no look: what a block *is* is said here, how that is drawn is each writer's. */
import { z } from "zod";
import { DrillStanding } from "./drill.ts";
import { Way } from "./guard.ts";
import { Id, Name, Words } from "./id.ts";
import { type Kind, RECORDS } from "./record.ts";
import { Choice } from "./teaching.ts";

export const PAPER_FORMAT = "passagework-paper";
export const PAPER_FORMAT_VERSION = 1;

export const PaperKind = z.enum([
  "ride sheet",
  "class handout",
  "caller's sheet",
  "working sheet",
  "appendix",
  "correction slip",
]);
export type PaperKind = z.infer<typeof PaperKind>;

export const PaperSize = z.enum(["A4", "Letter", "A5"]);
export type PaperSize = z.infer<typeof PaperSize>;

/** The rows an item is made from, so that a later difference can be told with its reason. */
const of = z.array(z.strictObject({ kind: z.enum(Object.keys(RECORDS) as [Kind, ...Kind[]]), id: Id }));
/** A name within the paper that links go to; null where none do. */
const anchor = z.string().nullable();

/** A stretch of a line. */
export const Span = z.discriminatedUnion("is", [
  z.strictObject({
    is: z.literal("words"),
    text: z.string(),
    /** The text's own words, a reference, a name that is emphasised, what is said aside; null: the program's words. */
    as: z.enum(["said", "reference", "strong", "emphasis", "soft"]).nullable(),
    /** BCP 47, where it is not the paper's own. */
    language: z.string().nullable(),
    /** Drawn as its line: solid, dashed, dotted, double; null: no line. */
    standing: DrillStanding.nullable(),
    /** "#" with an anchor of this paper or the id of a note ("#crux-a"), or an address; null: no link. */
    to: z.string().nullable(),
  }),
  /** The text does not say: an open gap with three spaced dots. */
  z.strictObject({ is: z.literal("silent") }),
  /** Nothing is done: a thin flat rule. */
  z.strictObject({ is: z.literal("nothing") }),
  /** †a: a reading is open or was chosen here. `sign` with its dagger; `to` as above. */
  z.strictObject({ is: z.literal("sign"), sign: z.string(), crux: Id, to: anchor }),
  /** A foot- or endnote, by its id; each note is called once, and they are counted in the order they are called. */
  z.strictObject({ is: z.literal("note"), note: z.string() }),
]);
export type Span = z.infer<typeof Span>;
/** One line of words; a writer breaks it where it must. */
export const Line = z.array(Span);
export type Line = z.infer<typeof Line>;

const Heading = z.strictObject({
  is: z.literal("heading"),
  level: z.int().min(1).max(4),
  anchor,
  words: Line,
  of,
});

const Paragraph = z.strictObject({
  is: z.literal("paragraph"),
  /** A key tells how brackets and lines are read; open: what is not settled or not treated. */
  as: z.enum(["body", "lead", "small", "quote", "caution", "open", "key"]),
  words: Line,
  of,
});

const List = z.strictObject({
  is: z.literal("list"),
  ordered: z.boolean(),
  items: z.array(z.strictObject({ words: Line, of })),
});

/** Names with what they are, as at the head of an exercise. */
const Facts = z.strictObject({
  is: z.literal("facts"),
  rows: z.array(z.strictObject({ name: z.string(), words: Line })),
});

/** `steps` have the number in the first column, then a column a part; rows tell which element they are and the number they
 *  show. A row of the same element as the one before it, which shows no number, is set below that one and kept with it. */
const Table = z.strictObject({
  is: z.literal("table"),
  as: z.enum(["steps", "plain"]),
  caption: Line,
  columns: z.array(z.strictObject({ name: z.string(), share: z.number().positive() })),
  rows: z.array(
    z.strictObject({
      anchor,
      of,
      element: Id.nullable(),
      shown: z.string().nullable(),
      /** A cell is its lines, one under another; one cell a column, and where there are fewer the last goes across the rest. */
      cells: z.array(z.array(Line)),
    }),
  ),
});

/** What is called out, and when: big type, read from the saddle or the middle of the ground. A call that is only a name has
 *  under it what is done, a line each in smaller type; so has a reminder, whose call is empty. */
const Calls = z.strictObject({
  is: z.literal("calls"),
  items: z.array(
    z.strictObject({
      of,
      element: Id.nullable(),
      shown: z.string().nullable(),
      call: Line,
      acts: z.array(Line).optional(),
      when: Line,
      where: Line,
    }),
  ),
});

const Figure = z.strictObject({
  is: z.literal("figure"),
  anchor,
  /** A drawing of its own: no script, no address, colours on every shape. */
  svg: z.string(),
  /** Millimetres on the paper; a writer shrinks it to the measure where it must. */
  width: z.number().positive(),
  caption: Line,
  /** What it shows, for who cannot see it. */
  alternative: z.string().min(1),
  of,
});

/** A head word with lines under it: apparatus, glossary, index, bibliography, sigla, questions. */
const Entries = z.strictObject({
  is: z.literal("entries"),
  as: z.enum(["apparatus", "glossary", "index", "bibliography", "sigla", "questions"]),
  items: z.array(z.strictObject({ anchor, head: Line, lines: z.array(Line), of })),
});

/** Ruled lines to write on. */
const Writing = z.strictObject({ is: z.literal("writing"), lines: z.int().min(1).max(60) });
/** The headings with their pages. */
const Contents = z.strictObject({ is: z.literal("contents"), depth: z.int().min(1).max(4) });
const PageBreak = z.strictObject({ is: z.literal("page break") });

export const PlainBlock = z.discriminatedUnion("is", [
  Heading,
  Paragraph,
  List,
  Facts,
  Table,
  Calls,
  Figure,
  Entries,
  Writing,
  Contents,
  PageBreak,
]);
export type PlainBlock = z.infer<typeof PlainBlock>;

/** Text at the left with a wide margin at the right; or with a right column as wide as its figures, which stands beside the
 *  text and costs no height of its own; or two columns alike. Where there is no room for two, the right follows the left. */
export const Beside = z.strictObject({
  is: z.literal("beside"),
  /** "margin" when left out. */
  columns: z.enum(["margin", "figures", "alike"]).optional(),
  left: z.array(PlainBlock),
  right: z.array(PlainBlock),
});
export const Block = z.discriminatedUnion("is", [...PlainBlock.options, Beside]);
export type Block = z.infer<typeof Block>;

export const Paper = z.strictObject({
  format: z.literal(PAPER_FORMAT),
  formatVersion: z.literal(PAPER_FORMAT_VERSION),
  kind: PaperKind,
  size: PaperSize,
  /** BCP 47 of the program's words. */
  language: z.string(),
  title: z.string().min(1),
  /** Book and author, for running heads and properties. */
  work: z.strictObject({ id: Id, title: z.string(), author: z.string(), invented: z.boolean() }),
  /** At the head of every page but the first, left and right. */
  running: z.strictObject({ left: z.string(), right: z.string() }),
  /** Null for a paper that is not issued: it says so at its foot. */
  edition: z.strictObject({ number: z.int().min(1), issued: z.string(), check: z.string() }).nullable(),
  /** Where notes stand. */
  notesAt: z.enum(["foot", "end"]),
  blocks: z.array(Block),
  notes: z.array(z.strictObject({ id: z.string(), lines: z.array(Line), of })),
});
export type Paper = z.infer<typeof Paper>;

/** One exercise on a paper: the whole, or a range of its elements; in a version of the day, or the text's own. */
export const PaperPart = z.strictObject({
  exercise: Id,
  from: Id.nullable(),
  to: Id.nullable(),
  variant: Id.nullable(),
});
export type PaperPart = z.infer<typeof PaperPart>;

/** What a paper is asked for with. */
export const PaperAsk = z.strictObject({
  kind: PaperKind.exclude(["correction slip"]),
  parts: z.array(PaperPart).min(1).max(60),
  size: PaperSize,
  way: Way,
  /** Other cruxes as adopted, else as left free, else not settled. */
  choice: Choice,
  notesAt: z.enum(["foot", "end"]),
  /** Name of a citation style that is there (CSL). */
  style: Name,
  /** Words for this occasion, under the title; may be empty. */
  occasion: Words,
});
export type PaperAsk = z.infer<typeof PaperAsk>;
