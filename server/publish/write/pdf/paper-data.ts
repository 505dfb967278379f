/** server/publish/write/pdf/paper-data.ts - a paper as the data its pages are set from.
 *  May import: schema types, siblings, the room above. Every word in it has been made printable; the template takes it as
 *  JSON, so that no word can be taken for markup. */
import type { Block, Line, Paper, PlainBlock, Span } from "../../../../schema/paper.ts";
import { besideWidth, figureRatio } from "../figure-size.ts";
import { withLevelsInOrder } from "../heading-levels.ts";
import { languageTag, runsRightToLeft } from "../language-tag.ts";
import { leadsIn } from "../leading-blocks.ts";
import { linkTarget } from "../link-target.ts";
import type { Look } from "../look-of.ts";
import { bare, type PaperPlaces, plainBlocks } from "../paper-places.ts";
import { missingSentence, type Printable } from "../printable.ts";
import { footWords, headWords } from "../running-words.ts";
import { ENDNOTES_TITLE } from "../standing-words.ts";
import { bound, unbrokenParts } from "../unbroken.ts";
import { heightOfBlocks } from "./estimate.ts";
import { TableData } from "./table-data.ts";

type Data = Record<string, unknown>;
interface LineData {
  spans: Data[];
  rtl: boolean;
}

export function paperData(paper: Paper, places: PaperPlaces, printable: Printable, look: Look): Data {
  const data = new DataOf(paper, places, printable, look);
  const blocks = data.blocks(withLevelsInOrder(paper.blocks));
  const notes = places.notes.map(({ id, number, lines }) => ({
    id,
    number: String(number),
    lines: lines.map((line) => data.line(line)),
  }));
  const running = {
    left: data.words(headWords(paper.running.left)),
    right: data.words(headWords(paper.running.right)),
  };
  const foot = data.words(footWords(paper));
  const { missing } = printable;
  if (missing.length > 0) blocks.push(data.notice(missingSentence(missing, true)));
  return {
    look,
    title: data.words(paper.title),
    author: data.words(paper.work.author),
    description: data.words(paper.work.title),
    language: typstLanguage(paper.language) ?? { lang: "en" },
    running,
    foot,
    notesAt: paper.notesAt,
    notesTitle: ENDNOTES_TITLE,
    notes,
    blocks,
  };
}

function typstLanguage(tag: string | null): { lang: string; region?: string } | null {
  const read = languageTag(tag);
  if (read === null) return null;
  return read.region === null ? { lang: read.language } : { lang: read.language, region: read.region };
}

class DataOf {
  readonly #paper: Paper;
  readonly #numbers: ReadonlyMap<string, number>;
  readonly #printable: Printable;
  readonly #look: Look;
  readonly #tables: TableData;
  readonly #targets: ReadonlySet<string>;
  #headings: { level: number; words: LineData }[] = [];

  constructor(paper: Paper, places: PaperPlaces, printable: Printable, look: Look) {
    this.#paper = paper;
    this.#printable = printable;
    this.#look = look;
    this.#targets = places.targets;
    this.#tables = new TableData(look, {
      placeOf: (anchor) => this.#placeOf(anchor),
      noteAtFoot: (id) => (paper.notesAt === "end" ? null : this.#indexOf(id)),
      linesOfNote: (index) => places.notes[index]?.lines ?? [],
    });
    this.#numbers = new Map(places.notes.map(({ id, number }) => [id, number]));
  }

  words(text: string): string {
    return this.#printable.forFaces(text);
  }

  /** Blocks in their order; what leads another in stays with it. */
  blocks(blocks: readonly Block[]): Data[] {
    const headings = plainBlocks(blocks).filter((block) => block.is === "heading");
    this.#headings = headings.map(({ level, words }) => ({ level, words: this.line(words) }));
    return blocks.map((block, index) => ({ ...this.block(block), sticky: leadsIn(block, blocks[index - 1]) }));
  }

  notice(sentence: string): Data {
    const block: Block = { is: "paragraph", as: "open", words: [programWords(sentence)], of: [] };
    return { ...this.block(block), sticky: false };
  }

  /** `linked`: notes are called by links and set elsewhere. */
  line(line: Line, linked = this.#paper.notesAt === "end"): LineData {
    const text = line.map((span) => (span.is === "words" ? span.text : "")).join("");
    return { spans: line.map((span, at) => this.#span(span, linked, line[at + 1])), rtl: runsRightToLeft(text) };
  }

  /** What a stretch has not is left out: the type setter keeps whatever it is told. */
  #span(span: Span, linked: boolean, next: Span | undefined): Data {
    if (span.is === "words") {
      const { is, text, as, language, standing, to } = span;
      const own = language === this.#paper.language ? null : typstLanguage(language);
      const printed = as === "said" ? this.words(text) : bound(this.words(text));
      const parts = as === "reference" ? unbrokenParts(printed) : null;
      const target = pdfTarget(to);
      return {
        is,
        text: printed,
        ...(parts !== null && { parts }),
        ...(runsRightToLeft(text) && { rtl: true }),
        ...(as !== null && { as }),
        ...(own !== null && { language: own }),
        ...(standing !== null && { standing }),
        ...(target !== null && { to: target }),
      };
    }
    if (span.is === "sign") {
      // The call of its note leads there too; every link inside the paper costs a millisecond.
      const leads = span.to !== null && !(next?.is === "note" && next.note === bare(span.to));
      return { is: "sign", sign: this.words(span.sign), to: leads ? pdfTarget(span.to) : null };
    }
    if (span.is === "note") {
      const index = this.#indexOf(span.note);
      return { is: "note", note: span.note, index, number: String(index + 1), linked };
    }
    return span;
  }

  /** A place that nothing leads to costs time and gives nothing. */
  #placeOf(anchor: string | null): string | null {
    return anchor !== null && this.#targets.has(anchor) ? anchor : null;
  }

  #indexOf(note: string): number {
    const number = this.#numbers.get(note);
    if (number === undefined) throw new RangeError(`The paper has no note ${note}.`);
    return number - 1;
  }

  block(block: Block): Data {
    switch (block.is) {
      case "heading":
        return { is: block.is, level: block.level, anchor: this.#placeOf(block.anchor), words: this.line(block.words) };
      case "paragraph":
        return { is: block.is, as: block.as, words: this.line(block.words) };
      case "list":
        return {
          is: block.is,
          ordered: block.ordered,
          items: block.items.map((one) => ({ words: this.line(one.words) })),
        };
      case "facts": {
        const rows = block.rows.map(({ name, words }) => ({ name: this.words(name), words: this.line(words) }));
        return { is: block.is, rows };
      }
      case "table":
        return this.#table(block);
      case "calls": {
        const items = block.items.map(({ shown, call, acts = [], when, where }) => ({
          shown: shown === null ? null : this.words(shown),
          call: this.line(call),
          acts: acts.map((line) => this.line(line)),
          when: this.line(when),
          where: this.line(where),
        }));
        return { is: block.is, items };
      }
      case "figure":
        return this.#figure(block);
      case "entries": {
        const items = block.items.map(({ anchor, head, lines }) => ({
          anchor: this.#placeOf(anchor),
          head: this.line(head),
          lines: lines.map((line) => this.line(line)),
        }));
        return { is: block.is, as: block.as, whole: this.#isShort([block], 0.5, 2), items };
      }
      case "contents":
        return { is: block.is, depth: block.depth, lines: this.#headings.filter(({ level }) => level <= block.depth) };
      case "beside":
        return {
          is: block.is,
          ...this.#columns(block),
          left: block.left.map((one) => this.block(one)),
          right: block.right.map((one) => this.block(one)),
        };
      default:
        return block;
    }
  }

  #table(block: Extract<Block, { is: "table" }>): Data {
    return {
      is: block.is,
      as: block.as,
      caption: this.line(block.caption),
      columns: block.columns.map(({ name }) => this.words(name)),
      ...this.#tables.table(block, (line) => this.line(line, true)),
    };
  }

  /** How wide the columns are, and whether they stand on one page: a figure is not parted from what it stands beside. */
  #columns({ columns = "margin", left, right }: Extract<Block, { is: "beside" }>): Data {
    const { page, figure } = this.#look;
    const measure = page.width - page.left - page.right;
    const width = columns === "figures" ? besideWidth(right, measure, figure) : null;
    const [first, second] =
      width !== null
        ? [(measure - width) / measure - 0.05, width / measure]
        : columns === "alike"
          ? [0.47, 0.47]
          : [0.58, 0.36];
    const whole = this.#isShort(left, first, 1) && (width !== null || this.#isShort(right, second, 1));
    return { rightWidth: width, alike: columns === "alike", whole };
  }

  /** Whether blocks in `columns` columns, each of a share of the measure, take less than half a page. */
  #isShort(blocks: readonly PlainBlock[], share: number, columns: number): boolean {
    const { page, base } = this.#look;
    const width = (page.width - page.left - page.right) * share;
    return heightOfBlocks(blocks, width, base) / columns < (page.height - page.top - page.bottom) / 2;
  }

  #figure({ is, anchor, svg, width, caption, alternative }: Extract<Block, { is: "figure" }>): Data {
    return {
      is,
      anchor: this.#placeOf(anchor),
      svg,
      width,
      ratio: figureRatio(svg),
      caption: this.line(caption),
      alternative: this.words(alternative),
    };
  }
}

function programWords(text: string): Span {
  return { is: "words", text, as: null, language: null, standing: null, to: null };
}

/** A room of the window is nowhere to go to from a printed page. */
function pdfTarget(to: string | null): { inside: boolean; place: string } | null {
  const target = linkTarget(to);
  if (target === null || target.to === "window") return null;
  return target.to === "place" ? { inside: true, place: target.name } : { inside: false, place: target.address };
}
