/** server/publish/write/pdf/paper-data.ts - a paper as the data its pages are set from.
 *  May import: schema types, siblings, the room above. Every word in it has been made printable; the template takes it as
 *  JSON, so that no word can be taken for markup. */
import type { Block, Line, Paper, Span } from "../../../../schema/paper.ts";
import { figureRatio } from "../figure-size.ts";
import { withLevelsInOrder } from "../heading-levels.ts";
import { languageTag, runsRightToLeft } from "../language-tag.ts";
import { linkTarget } from "../link-target.ts";
import { bare, type PaperPlaces } from "../paper-places.ts";
import { missingSentence, type Printable } from "../printable.ts";
import { type RowGroup, rowGroups } from "../row-groups.ts";
import { footWords, headWords } from "../running-words.ts";
import { ENDNOTES_TITLE } from "../standing-words.ts";

type Data = Record<string, unknown>;
interface LineData {
  spans: Data[];
  rtl: boolean;
}

/** Past this many characters a step may part at the foot of a page. */
const TALL = 1400;

/** A part of a reference longer than this many characters may be broken. */
const LONGEST_PART = 18;

/** All of it but the look, which may be tried in several sizes. */
export function paperData(paper: Paper, places: PaperPlaces, printable: Printable): Data {
  const data = new DataOf(paper, places, printable);
  const blocks = withLevelsInOrder(paper.blocks).map((block) => data.block(block));
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
  #groups = 0;

  constructor(paper: Paper, places: PaperPlaces, printable: Printable) {
    this.#paper = paper;
    this.#printable = printable;
    this.#numbers = new Map(places.notes.map(({ id, number }) => [id, number]));
  }

  words(text: string): string {
    return this.#printable.forFaces(text);
  }

  notice(sentence: string): Data {
    return this.block({ is: "paragraph", as: "open", words: [programWords(sentence)], of: [] });
  }

  line(line: Line): LineData {
    const text = line.map((span) => (span.is === "words" ? span.text : "")).join("");
    return { spans: line.map((span) => this.#span(span)), rtl: runsRightToLeft(text) };
  }

  #span(span: Span): Data {
    if (span.is === "words") {
      const { is, text, as, language, standing, to } = span;
      const own = language === this.#paper.language ? null : typstLanguage(language);
      const printed = this.words(text);
      const parts = as === "reference" ? unbrokenParts(printed) : null;
      return { is, text: printed, parts, rtl: runsRightToLeft(text), as, language: own, standing, to: pdfTarget(to) };
    }
    if (span.is === "sign") {
      const to = span.to === null ? null : { inside: true, place: bare(span.to) };
      return { is: "sign", sign: this.words(span.sign), to };
    }
    if (span.is === "note") {
      const number = this.#numbers.get(span.note);
      if (number === undefined) throw new RangeError(`The paper has no note ${span.note}.`);
      return { is: "note", note: span.note, index: number - 1, number: String(number) };
    }
    return span;
  }

  block(block: Block): Data {
    switch (block.is) {
      case "heading":
        return { is: block.is, level: block.level, anchor: block.anchor, words: this.line(block.words) };
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
        const items = block.items.map(({ shown, call, when, where }) => ({
          shown: shown === null ? null : this.words(shown),
          call: this.line(call),
          when: this.line(when),
          where: this.line(where),
        }));
        return { is: block.is, items };
      }
      case "figure":
        return this.#figure(block);
      case "entries": {
        const items = block.items.map(({ anchor, head, lines }) => ({
          anchor,
          head: this.line(head),
          lines: lines.map((line) => this.line(line)),
        }));
        return { is: block.is, as: block.as, items };
      }
      case "beside":
        return {
          is: block.is,
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
      shares: block.columns.map(({ share }) => share),
      groups: rowGroups(block).map((group) => this.#group(group)),
    };
  }

  #group({ number, rows, length }: RowGroup): Data {
    this.#groups += 1;
    return {
      name: `rows:${this.#groups}`,
      number: number.map((line) => this.line(line)),
      tall: length > TALL,
      rows: rows.map(({ anchor, minor, cells }) => ({
        anchor,
        minor,
        cells: cells.map((lines) => lines.map((line) => this.line(line))),
      })),
    };
  }

  #figure({ is, anchor, svg, width, caption, alternative }: Extract<Block, { is: "figure" }>): Data {
    return {
      is,
      anchor,
      svg,
      width,
      ratio: figureRatio(svg),
      caption: this.line(caption),
      alternative: this.words(alternative),
    };
  }
}

/** Parts of a reference that are not broken within: "f. 3r," and "ll. 10–18". Null where a part is long. */
function unbrokenParts(reference: string): string[] | null {
  if (reference !== reference.trim()) return null;
  const parts = reference.split(/(?<=[,;]) /u);
  return parts.every((part) => part.length <= LONGEST_PART) ? parts : null;
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
