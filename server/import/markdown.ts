/** server/import/markdown.ts - a Markdown text: headings, numbered paragraphs, emphasis and footnotes, through `marked`.
 *  May import: marked, schema types, siblings. Raw HTML, pictures and addresses are left out and reported (I1).
 *  Throws RefusedError when there are no passages. */
import { Lexer, Marked, type Token, type TokenizerAndRendererExtension, type Tokens } from "marked";
import type { FilePlace, ImportedFile } from "../../schema/imported.ts";
import type { DroppedList } from "./dropped-list.ts";
import { cutFlow, type FlowBlock, type FlowPiece, type FlowRole, refuseTooManyLines } from "./flow.ts";
import { type BareNumber, readChapterHeading, readLeadingNumber, readReferenceLine } from "./reference-line.ts";
import { RefusedError, refuse } from "./refusals.ts";
import { readReferencesIn } from "./xml-entities.ts";

interface Footnote {
  label: string;
  text: string;
  place: FilePlace;
}

/** Takes the texts of footnotes out. What stays is as long as before, so that places hold: blanks stand for the notes. */
const takeFootnotes = (source: string): { rest: string; notes: Footnote[] } => {
  if (!source.includes("[^")) return { rest: source, notes: [] };
  const lines = source.split("\n");
  const notes: Footnote[] = [];
  for (let at = 0; at < lines.length; at += 1) {
    const match = /^\[\^([^\]\s]+)\]:[ \t]*(.*)$/.exec(lines[at] ?? "");
    if (match === null) continue;
    const words = [match[2] ?? ""];
    const first = at;
    let end = at + 1;
    // The note goes on to a blank line, and past it where the next words are set in.
    for (let next = end; next < lines.length; next += 1) {
      const line = lines[next] ?? "";
      if (line.trim() === "") continue;
      if (/^\[\^[^\]\s]+\]:/.test(line) || (next > end && !/^(?: {2,}|\t)/.test(line))) break;
      words.push(line);
      end = next + 1;
    }
    for (let taken = first; taken < end; taken += 1) lines[taken] = " ".repeat((lines[taken] ?? "").length);
    const text = readReferencesIn(words.join(" ").replace(/\s+/g, " ").trim());
    notes.push({ label: match[1] ?? "", text, place: { line: first + 1, column: 1 } });
    at = end - 1;
  }
  return { rest: lines.join("\n"), notes };
};

const FOOTNOTE_MARK: TokenizerAndRendererExtension = {
  name: "footnoteMark",
  level: "inline",
  start: (source) => source.indexOf("[^"),
  tokenizer(source) {
    const match = /^\[\^([^\]\s]+)\]/.exec(source);
    return match === null ? undefined : { type: "footnoteMark", raw: match[0], label: match[1] };
  },
};

/** UTF-16 units of a paragraph; the time for emphasis grows faster than its length. */
const PARAGRAPH_LIMIT = 100_000;

/** Throws RefusedError at a paragraph past the limit. Blank lines, headings and list items begin a new one. */
const refuseLongParagraphs = (source: string, name: string): void => {
  let line = 1;
  let firstLine = 1;
  let start = 0;
  for (let at = 0; at <= source.length; line += 1) {
    const found = source.indexOf("\n", at);
    const end = found < 0 ? source.length : found;
    const head = source.slice(at, Math.min(end, at + 20));
    if (head.trim() === "" && end - at <= 20) {
      start = end + 1;
      firstLine = line + 1;
    } else if (/^\s{0,3}(?:#|[-*+] |\d+[.)] )/.test(head)) {
      start = at;
      firstLine = line;
    }
    if (end - start > PARAGRAPH_LIMIT) {
      throw new RefusedError(refuse.paragraphTooLong(name, PARAGRAPH_LIMIT, { line: firstLine, column: 1 }));
    }
    at = end + 1;
  }
};

/** Offsets to lines and columns; asked in ascending order only. */
class Places {
  readonly #source: string;
  #offset = 0;
  #line = 1;
  #lineStart = 0;

  constructor(source: string) {
    this.#source = source;
  }

  at(offset: number): FilePlace {
    for (
      let next = this.#source.indexOf("\n", this.#offset);
      next >= 0 && next < offset;
      next = this.#source.indexOf("\n", next + 1)
    ) {
      this.#line += 1;
      this.#lineStart = next + 1;
    }
    this.#offset = Math.max(this.#offset, offset);
    return { line: this.#line, column: Math.max(1, offset - this.#lineStart + 1) };
  }
}

class MarkdownReader {
  readonly #parser = new Marked({ extensions: [FOOTNOTE_MARK] });
  readonly #notes = new Map<string, { text: string; place: FilePlace; used: boolean }>();
  readonly #places: Places;
  readonly #bare: BareNumber;
  readonly #dropped: DroppedList;
  readonly #tokens: Token[];
  readonly blocks: FlowBlock[] = [];
  #place: FilePlace = { line: 1, column: 1 };

  constructor(source: string, bare: BareNumber, dropped: DroppedList) {
    this.#places = new Places(source);
    this.#bare = bare;
    this.#dropped = dropped;
    const { rest, notes } = takeFootnotes(source);
    for (const { label, text, place } of notes) {
      if (this.#notes.has(label))
        this.#dropped.add(`footnote [^${label}]`, "Another note has the same label.", place, text);
      else this.#notes.set(label, { text, place, used: false });
    }
    this.#tokens = this.#parser.lexer(rest);
  }

  read(): FlowBlock[] {
    this.#blocksOf(this.#tokens, 0);
    for (const [label, note] of this.#notes) {
      if (!note.used)
        this.#dropped.add(`footnote [^${label}]`, "No mark in the text points to it.", note.place, note.text);
    }
    return this.blocks;
  }

  #lost(what: string, why: string, words = ""): void {
    this.#dropped.add(what, why, this.#place, words);
  }

  #blocksOf(tokens: readonly Token[], start: number): void {
    let offset = start;
    for (const token of tokens) {
      const lead = /^\s*/.exec(token.raw)?.[0].length ?? 0;
      this.#place = this.#places.at(offset + (lead === token.raw.length ? 0 : lead));
      this.#block(token, offset);
      offset += token.raw.length;
    }
  }

  #block(token: Token, offset: number): void {
    switch (token.type) {
      case "space":
        return;
      case "heading":
        this.#heading(token as Tokens.Heading);
        return;
      case "paragraph":
      case "text":
        this.#paragraph(token as Tokens.Paragraph);
        return;
      case "list":
        this.#list(token as Tokens.List, offset);
        return;
      case "blockquote":
        this.#lost("quotation mark >", "The words are kept as paragraphs.");
        for (const inner of (token as Tokens.Blockquote).tokens) this.#block(inner, offset);
        return;
      case "code":
        this.#lost("code block", "The words are kept as a paragraph; their lines are joined.");
        this.#add([{ text: (token as Tokens.Code).text, emphasis: false }], { is: "text" });
        return;
      case "table":
        this.#table(token as Tokens.Table);
        return;
      case "hr":
        this.#lost("rule across the page", "It has no words.");
        return;
      case "html":
        this.#lost("raw HTML", "HTML inside Markdown is not read.", (token as Tokens.HTML).text);
        return;
      case "def":
        this.#lost("address of a link", "Addresses are not kept.", token.raw);
        return;
      default:
        this.#lost(`Markdown “${token.type}”`, "This kind of block is not read.", token.raw);
    }
  }

  #add(pieces: FlowPiece[], role: FlowRole, kind: FlowBlock["kind"] = "paragraph"): void {
    this.blocks.push({ kind, pieces, place: this.#place, role });
  }

  #heading(token: Tokens.Heading): void {
    const pieces = this.#inline(token.tokens, false);
    const title = wordsIn(pieces);
    const references = readReferenceLine(`# ${title}`, this.#bare);
    const chapter = readChapterHeading(title);
    if (references !== null) this.#add([], { is: "reference", references });
    else if (chapter !== null) this.#add(pieces, { is: "chapter", ...chapter }, "heading");
    else this.#add(pieces, { is: "title", title, depth: token.depth }, "heading");
  }

  /** A paragraph may hold lines that are references; they cut it. */
  #paragraph(token: Tokens.Paragraph | Tokens.Text): void {
    const lines = token.raw.split("\n");
    const cited = lines.map((line) => readReferenceLine(line, this.#bare));
    if (cited.every((references) => references === null)) {
      this.#words(token.tokens ?? [token]);
      return;
    }
    const start = this.#place;
    let open: string[] = [];
    let openLine = start.line;
    const close = () => {
      if (open.some((line) => /\S/.test(line))) {
        this.#place = { line: openLine, column: 1 };
        this.#words(new Lexer(this.#parser.defaults).inlineTokens(open.join("\n")));
      }
      open = [];
    };
    for (const [index, line] of lines.entries()) {
      const references = cited[index] ?? null;
      if (references === null) {
        open.push(line);
        continue;
      }
      close();
      this.#place = { line: start.line + index, column: 1 };
      this.#add([], { is: "reference", references });
      openLine = start.line + index + 1;
    }
    close();
  }

  #words(tokens: readonly Token[]): void {
    const pieces = this.#inline(tokens, false);
    const first = pieces[0];
    const number = first !== undefined && "text" in first ? readLeadingNumber(first.text) : null;
    const chapter = pieces.length === 1 ? readChapterHeading(wordsIn(pieces)) : null;
    if (chapter !== null) this.#add(pieces, { is: "chapter", ...chapter });
    else if (number === null || first === undefined || !("text" in first)) this.#add(pieces, { is: "text" });
    else
      this.#add([{ ...first, text: first.text.slice(number.mark.length) }, ...pieces.slice(1)], {
        is: "number",
        ...number,
      });
  }

  #list(list: Tokens.List, start: number): void {
    if (!list.ordered) this.#lost("bullets of a list", "Each item is kept as a paragraph.");
    let offset = start;
    for (const item of list.items) {
      this.#place = this.#places.at(offset);
      const number = list.ordered ? readLeadingNumber(item.raw.trimStart()) : null;
      const before = this.blocks.length;
      for (const token of item.tokens) this.#block(token, offset);
      const first = this.blocks[before];
      if (number !== null && first !== undefined && first.role.is === "text") {
        first.role = { is: "number", number: number.number, mark: number.mark };
      } else if (number !== null) {
        this.blocks.splice(before, 0, {
          kind: "paragraph",
          pieces: [],
          place: this.#place,
          role: { is: "number", ...number },
        });
      }
      offset += item.raw.length;
    }
  }

  #table(table: Tokens.Table): void {
    this.#lost("table", "Each row is kept as a paragraph.");
    for (const row of [table.header, ...table.rows]) {
      this.#add(
        row.flatMap((cell) => [...this.#inline(cell.tokens, false), { text: " ", emphasis: false }]),
        { is: "text" },
      );
    }
  }

  #inline(tokens: readonly Token[], emphasis: boolean): FlowPiece[] {
    return tokens.flatMap((token) => this.#inlineToken(token, emphasis));
  }

  #inlineToken(token: Token, emphasis: boolean): FlowPiece[] {
    switch (token.type) {
      case "strong":
      case "em":
        return this.#inline((token as Tokens.Em).tokens, true);
      case "del":
        this.#lost("struck-out words", "The words are kept; the stroke is not.");
        return this.#inline((token as Tokens.Del).tokens, emphasis);
      case "codespan":
        return [{ text: (token as Tokens.Codespan).text, emphasis }];
      case "br":
        return [{ text: " ", emphasis }];
      case "link": {
        const link = token as Tokens.Link;
        if (link.href !== link.text)
          this.#lost("address of a link", "Its words are kept; addresses are not.", link.href);
        return this.#inline(link.tokens, emphasis);
      }
      case "image":
        this.#lost(
          "picture",
          "Only words are read. Add the picture to the passage by hand.",
          (token as Tokens.Image).text,
        );
        return [];
      case "html":
        this.#lost("HTML tag", "HTML inside Markdown is not read.", token.raw);
        return [];
      case "footnoteMark": {
        const note = this.#notes.get(String(token.label));
        if (note === undefined) return [{ text: token.raw, emphasis }];
        note.used = true;
        return [{ note: note.text, label: String(token.label) }];
      }
      case "escape":
        return [{ text: (token as Tokens.Escape).text, emphasis }];
      default: {
        const inner = (token as Tokens.Text).tokens;
        if (inner !== undefined && inner.length > 0) return this.#inline(inner, emphasis);
        return [{ text: readReferencesIn((token as Tokens.Text).text ?? token.raw), emphasis }];
      }
    }
  }
}

const wordsIn = (pieces: readonly FlowPiece[]): string =>
  pieces
    .map((piece) => ("text" in piece ? piece.text : ""))
    .join("")
    .replace(/\s+/g, " ")
    .trim();

/** Reads a Markdown text. `bare` says what a number without a label means. Throws RefusedError. */
export const readMarkdown = (
  source: string,
  name: string,
  bare: BareNumber,
  dropped: DroppedList,
): Omit<ImportedFile, "encoding" | "dropped"> => {
  refuseTooManyLines(source, name);
  const text = source.replace(/\r\n?/g, "\n");
  refuseLongParagraphs(text, name);
  const blocks = new MarkdownReader(text, bare, dropped).read();
  // The only heading of the highest rank, right at the start, is the title of the text.
  const first = blocks[0];
  const highest = blocks.filter(({ role }) => role.is === "title" && role.depth === 1);
  const isTitled = first?.role.is === "title" && first.role.depth === 1 && highest.length === 1;
  const title = isTitled && first?.role.is === "title" ? first.role.title : "";
  const cut = cutFlow(name, isTitled ? blocks.slice(1) : blocks, bare, dropped);
  if (cut.passages.length === 0) throw new RefusedError(refuse.noPassages(name));
  const fromName = name.replace(/^.*[\\/]/, "").replace(/\.[A-Za-z0-9]{1,8}$/, "");
  return {
    format: "markdown",
    texts: [{ number: 1, title: title || fromName, author: "", translator: "", language: "", urn: "", ...cut }],
  };
};
