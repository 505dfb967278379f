/** server/publish/editions/paper-items.ts - a paper as a list of items that can be found again in another edition of it.
 *  May import: schema types, server/publish/write. Signs and the marks of notes are left out: they count afresh in each edition. */
import type { Block, Line, Paper } from "../../../schema/paper.ts";
import { plainBlocks } from "../write/paper-places.ts";

export type Of = Extract<Block, { is: "heading" }>["of"];

/** A place within an item and the words that stand there: the column, and which line of it. */
export interface PaperLine {
  place: string;
  words: string;
}

export interface PaperItem {
  /** The same in every edition: what it is made from, not where it stands. */
  key: string;
  /** As a reader of that edition would point at it: "Step 5", or the heading it stands under. */
  where: string;
  /** Title of the exercise it belongs to, on a paper of several; "" on any other, and for what they share. */
  exercise: string;
  element: string | null;
  /** The number it shows; null for what has none. */
  shown: string | null;
  of: Of;
  lines: PaperLine[];
}

/** In the order of the paper. Items without rows behind them are known by their words. */
export function itemsOf({ blocks, notes, title }: Paper): PaperItem[] {
  const several = plainBlocks(blocks).filter(isOfExercise).length > 1;
  const gathering = new Gathering(title, several);
  for (const block of blocks) gathering.take(block);
  gathering.leaveExercise();
  for (const { lines, of } of notes) gathering.add("note", "Note", of, linesOf("", lines));
  return gathering.items;
}

type Heading = Extract<Block, { is: "heading" }>;

const isOfExercise = (block: Block): boolean =>
  block.is === "heading" && block.of.some(({ kind }) => kind === "exercises");

/** The words of a line as they are read out. */
export function plainWords(line: Line): string {
  const words = line.map((span) => {
    if (span.is === "words") return span.text;
    if (span.is === "silent") return "(the text does not say)";
    return span.is === "nothing" ? "nothing" : "";
  });
  return words.join("").replace(/\s+/gu, " ").trim();
}

class Gathering {
  readonly items: PaperItem[] = [];
  readonly #seen = new Map<string, number>();
  readonly #several: boolean;
  #heading: string;
  #exercise: Heading | null = null;

  constructor(title: string, several: boolean) {
    this.#heading = title;
    this.#several = several;
  }

  /** What comes after belongs to none. */
  leaveExercise(): void {
    this.#exercise = null;
  }

  take(block: Block): void {
    switch (block.is) {
      case "heading":
        this.#heading = plainWords(block.words) || this.#heading;
        if (isOfExercise(block)) this.#exercise = block;
        else if (block.level <= (this.#exercise?.level ?? 0)) this.leaveExercise();
        this.add("heading", "Heading", block.of, linesOf("", [block.words]));
        break;
      case "paragraph":
        // The standing caution and the key are the program's own and no part of what was corrected.
        if (block.as !== "caution" && block.as !== "key") {
          this.add(block.as, this.#heading, block.of, linesOf("", [block.words]));
        }
        break;
      case "list":
        for (const { words, of } of block.items) this.add("list", this.#heading, of, linesOf("", [words]));
        break;
      case "facts":
        for (const { name, words } of block.rows) {
          this.#put(`fact ${this.#heading} ${name}`, this.#heading, [], linesOf(name, [words]), null, null);
        }
        break;
      case "table":
        for (const row of block.rows) {
          const lines = row.cells.flatMap((cell, index) => linesOf(block.columns[index]?.name ?? "", cell));
          this.#step(`row ${block.as}`, row, lines);
        }
        break;
      case "calls":
        for (const call of block.items) {
          this.#step("call", call, [
            ...linesOf("call", [call.call, ...(call.acts ?? [])]),
            ...linesOf("when", [call.when]),
            ...linesOf("where", [call.where]),
          ]);
        }
        break;
      case "figure":
        this.add("figure", plainWords(block.caption) || this.#heading, block.of, [
          { place: "figure", words: block.alternative },
        ]);
        break;
      case "entries":
        for (const { head, lines, of } of block.items) {
          this.add(block.as, plainWords(head) || this.#heading, of, linesOf("", lines));
        }
        break;
      case "beside":
        for (const inner of [...block.left, ...block.right]) this.take(inner);
        break;
      case "writing":
      case "contents":
      case "page break":
        break;
    }
  }

  add(is: string, where: string, of: Of, lines: PaperLine[]): void {
    const key = of.length === 0 ? lines.map(({ words }) => words).join(" ") : rowsKey(of);
    this.#put(`${is} ${key}`, where, of, lines, null, null);
  }

  #step(is: string, row: { element: string | null; shown: string | null; of: Of }, lines: PaperLine[]): void {
    if (row.element === null) {
      this.add(is, this.#heading, row.of, lines);
      return;
    }
    const where = row.shown === null ? this.#heading : `Step ${row.shown}`;
    this.#put(`${is} ${row.element}`, where, row.of, lines, row.element, row.shown);
  }

  #put(key: string, where: string, of: Of, lines: PaperLine[], element: string | null, shown: string | null): void {
    const said = lines.filter(({ words }) => words !== "");
    if (said.length === 0) return;
    const times = (this.#seen.get(key) ?? 0) + 1;
    this.#seen.set(key, times);
    const exercise = this.#several && this.#exercise !== null ? plainWords(this.#exercise.words) : "";
    this.items.push({ key: times === 1 ? key : `${key} ${times}`, where, exercise, element, shown, of, lines: said });
  }
}

const rowsKey = (of: Of): string =>
  of
    .map(({ kind, id }) => `${kind} ${id}`)
    .sort()
    .join(" ");

function linesOf(place: string, lines: readonly Line[]): PaperLine[] {
  return lines.map((line) => ({ place, words: plainWords(line) }));
}
