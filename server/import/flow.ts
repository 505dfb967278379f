/** server/import/flow.ts - paragraphs with reference lines, numbers or chapter headings between them become passages.
 *  May import: schema types, shared/cite, siblings. Plain text and Markdown both end here. The scheme is chosen for the
 *  whole text: reference lines, else numbered paragraphs, else chapters, else counted paragraphs (I11, I12). */
import type { FilePlace, ImportedText } from "../../schema/imported.ts";
import type { Reference } from "../../schema/reference.ts";
import type { DroppedList } from "./dropped-list.ts";
import { ascendingChain } from "./number-order.ts";
import { type BlockKind, PassageBuilder, type PassageStart } from "./passage-builder.ts";
import type { BareNumber } from "./reference-line.ts";
import { RefusedError, refuse } from "./refusals.ts";

export type FlowPiece = { text: string; emphasis: boolean } | { note: string; label: string };

export type FlowRole =
  | { is: "text" }
  /** Cites what follows, and has no words of its own. */
  | { is: "reference"; references: Reference[] }
  /** May be a numbered paragraph; `mark` is not among the pieces. */
  | { is: "number"; number: number; mark: string }
  | { is: "chapter"; number: number; title: string }
  /** A heading; `depth` 1 is the highest. */
  | { is: "title"; title: string; depth: number };

export interface FlowBlock {
  kind: BlockKind;
  pieces: FlowPiece[];
  place: FilePlace;
  role: FlowRole;
}

type Scheme = "references" | "numbers" | "chapters" | "headings" | "paragraphs";

const FRONT = "front";

const chapterBlocks = (blocks: readonly FlowBlock[]) =>
  blocks.flatMap((block) => (block.role.is === "chapter" ? [block.role.number] : []));

const numberBlocks = (blocks: readonly FlowBlock[]) =>
  blocks.filter(
    (block): block is FlowBlock & { role: { is: "number"; number: number; mark: string } } =>
      block.role.is === "number",
  );

const chainOf = (blocks: readonly FlowBlock[]): Set<FlowBlock> => {
  const candidates = numberBlocks(blocks);
  const chain = ascendingChain(candidates.map(({ role }) => role.number));
  return new Set(chain.flatMap((index) => candidates[index] ?? []));
};

/** Parts of the text from one chapter heading to the next; the first is what stands before all headings. */
const byChapter = (blocks: readonly FlowBlock[]): FlowBlock[][] => {
  const parts: FlowBlock[][] = [[]];
  for (const block of blocks) {
    if (block.role.is === "chapter") parts.push([block]);
    else parts.at(-1)?.push(block);
  }
  return parts;
};

interface Choice {
  scheme: Scheme;
  levels: string[];
  /** The numbered paragraphs. */
  numbered: ReadonlySet<FlowBlock>;
  /** True when numbers begin anew in each chapter. */
  perChapter: boolean;
}

const SECTION_LEVELS = ["section", "chapter", "book", "part", "volume", "work"];

const referenceLevels = (blocks: readonly FlowBlock[]): string[] => {
  const references = blocks.flatMap(({ role }) => (role.is === "reference" ? role.references : []));
  const depths = references.map((reference) => (reference.kind === "section" ? reference.from.length : 0));
  const depth = Math.max(0, ...new Set(depths));
  if (depth > 0) return SECTION_LEVELS.slice(0, depth).reverse();
  return [references[0]?.kind === "page" ? "page" : "folio"];
};

const choose = (blocks: readonly FlowBlock[]): Choice => {
  const none = { numbered: new Set<FlowBlock>(), perChapter: false };
  if (blocks.some(({ role }) => role.is === "reference")) {
    return { scheme: "references", levels: referenceLevels(blocks), ...none };
  }
  const chapters = chapterBlocks(blocks);
  const whole = chainOf(blocks);
  const parts = byChapter(blocks);
  const apart = new Set(parts.slice(1).flatMap((part) => [...chainOf(part)]));
  const firstText = blocks.find(({ role }) => role.is === "text" || role.is === "number");
  const oneOnly = whole.size === 1 && firstText !== undefined && whole.has(firstText);
  if (chapters.length > 1 && apart.size >= 2 * chapters.length && apart.size * 4 > whole.size * 5) {
    return { scheme: "numbers", levels: ["chapter", "section"], numbered: apart, perChapter: true };
  }
  if ((whole.size >= 2 && whole.size >= 2 * chapters.length) || oneOnly) {
    return { scheme: "numbers", levels: ["paragraph"], numbered: whole, perChapter: false };
  }
  if (chapters.length > 0) return { scheme: "chapters", levels: ["chapter", "paragraph"], ...none };
  if (blocks.some(({ role }) => role.is === "title" && role.depth > 0)) {
    return { scheme: "headings", levels: ["chapter", "paragraph"], ...none };
  }
  return { scheme: "paragraphs", levels: ["paragraph"], ...none };
};

const hasWords = (block: FlowBlock) => block.pieces.some((piece) => "text" in piece && /\S/.test(piece.text));

class Flow {
  readonly #choice: Choice;
  readonly #bare: BareNumber;
  readonly #dropped: DroppedList;
  readonly #builder: PassageBuilder;
  readonly #hasSections: boolean;
  #chapter = "";
  /** Titles of the headings that hold, by depth. */
  #titles: string[] = [];
  #paragraph = 0;
  #headings = 0;
  #lastNumber = 0;
  /** References that wait for the words they cite. */
  #pending: { references: Reference[]; place: FilePlace } | null = null;

  constructor(name: string, choice: Choice, blocks: readonly FlowBlock[], bare: BareNumber, dropped: DroppedList) {
    this.#choice = choice;
    this.#bare = bare;
    this.#dropped = dropped;
    this.#hasSections = blocks.some(
      ({ role }) => role.is === "reference" && role.references.some(({ kind }) => kind === "section"),
    );
    this.#builder = new PassageBuilder(name, dropped, (place) => this.#front(place));
  }

  #front(place: FilePlace): PassageStart {
    this.#dropped.add("words before the first reference", `They are kept as a passage cited as “${FRONT}”.`, place);
    return { references: [{ kind: "section", from: [FRONT] }], place, expectsWords: false };
  }

  read(blocks: readonly FlowBlock[]): ImportedText["passages"] {
    for (const [index, block] of blocks.entries()) this.#block(block, index, blocks);
    if (this.#pending !== null) this.#start(this.#pending.references, this.#pending.place, true);
    return this.#builder.finish();
  }

  #division(upper: string): { label: string; title: string } | undefined {
    const title = this.#titles.filter((part) => part !== undefined && part !== "").join(" · ");
    return upper === "" && title === "" ? undefined : { label: upper, title };
  }

  #start(references: Reference[], place: FilePlace, expectsWords: boolean): void {
    const own = references[0];
    const division = this.#division(own?.kind === "section" ? own.from.slice(0, -1).join(".") : "");
    this.#builder.startPassage({ references, ...(division === undefined ? {} : { division }), place, expectsWords });
  }

  #block(block: FlowBlock, index: number, blocks: readonly FlowBlock[]): void {
    const { role, place } = block;
    if (role.is === "reference") this.#reference(role.references, place);
    else if (role.is === "chapter") this.#chapterHeading(block, role, index, blocks);
    else if (role.is === "title") this.#heading(block, role, index, blocks);
    else if (role.is === "number" && this.#choice.numbered.has(block)) this.#numbered(block, role);
    else this.#words(block, role.is === "number" ? role.mark : "");
  }

  #reference(references: Reference[], place: FilePlace): void {
    const sections = references.some(({ kind }) => kind === "section");
    if (!sections && this.#hasSections) {
      // A leaf or page right behind a section's line is a second reference; later it is a turn of the page.
      if (this.#pending !== null) this.#pending.references.push(...references);
      else for (const reference of references) this.#turn(reference, place);
      return;
    }
    if (this.#pending !== null && !sections) {
      this.#pending.references.push(...references);
      return;
    }
    if (this.#pending !== null) this.#start(this.#pending.references, this.#pending.place, true);
    const ordered = [
      ...references.filter(({ kind }) => kind === "section"),
      ...references.filter(({ kind }) => kind !== "section"),
    ];
    this.#pending = { references: ordered, place };
  }

  #turn(reference: Reference, place: FilePlace): void {
    if (reference.kind === "section") return;
    const n = reference.kind === "folio" ? `${reference.from.leaf}${reference.from.side}` : reference.from.page;
    const edition = reference.kind === "folio" ? reference.witness : reference.of;
    this.#builder.milestone(this.#builder.pages.turn(edition, n), n);
    if (reference.to !== undefined || reference.from.line !== undefined) {
      this.#dropped.add(
        "lines or end of a page reference inside a passage",
        "Only the page that begins there is kept.",
        place,
      );
    }
  }

  #chapterHeading(
    block: FlowBlock,
    role: { number: number; title: string },
    index: number,
    blocks: readonly FlowBlock[],
  ): void {
    if (this.#choice.scheme !== "chapters" && !this.#choice.perChapter) {
      const title = block.pieces.map((piece) => ("text" in piece ? piece.text : "")).join("");
      this.#heading(block, { title, depth: 0 }, index, blocks);
      return;
    }
    this.#titles = [role.title];
    this.#paragraph = 0;
    this.#chapter = String(role.number);
    this.#builder.endPassage();
  }

  /** A heading is the title of what follows when a passage begins right behind it, else words of the passage it is in. */
  #heading(
    block: FlowBlock,
    role: { title: string; depth: number },
    index: number,
    blocks: readonly FlowBlock[],
  ): void {
    let next = index + 1;
    while (blocks[next]?.role.is === "title") next += 1;
    if (!this.#beginsPassage(blocks[next])) {
      this.#words(block, "");
      return;
    }
    const above = this.#titles.slice(0, role.depth);
    while (above.length < role.depth) above.push("");
    const before = blocks[index - 1]?.role;
    const goesOn = before?.is === "title" && before.depth === role.depth;
    this.#titles = [...above, goesOn ? [this.#titles[role.depth], role.title].join(" · ") : role.title];
    if (this.#choice.scheme !== "headings" || next !== index + 1) return;
    this.#headings += 1;
    this.#chapter = String(this.#headings);
    this.#paragraph = 0;
    this.#builder.endPassage();
  }

  /** Whether a passage begins with this block, so that a heading before it can be its title. */
  #beginsPassage(block: FlowBlock | undefined): boolean {
    if (block === undefined) return false;
    if (block.role.is === "reference" || this.#choice.numbered.has(block)) return true;
    const isText = block.role.is === "text" || block.role.is === "number";
    return (
      isText && (this.#choice.scheme === "headings" || (this.#choice.scheme === "chapters" && this.#chapter !== ""))
    );
  }

  #numbered(block: FlowBlock, role: { number: number }): void {
    const { perChapter } = this.#choice;
    const label = String(role.number);
    if (!perChapter && this.#lastNumber > 0 && role.number > this.#lastNumber + 1) {
      const missing =
        role.number - 1 === this.#lastNumber + 1
          ? `${role.number - 1}`
          : `${this.#lastNumber + 1} to ${role.number - 1}`;
      this.#dropped.add(
        "numbers that are missing",
        "No paragraph begins with them; their words may stand in the paragraph before.",
        block.place,
        missing,
      );
    }
    this.#lastNumber = role.number;
    const reference: Reference =
      this.#bare === "page" && !perChapter
        ? { kind: "page", of: "", from: { page: label } }
        : { kind: "section", from: perChapter ? [this.#chapter, label] : [label] };
    this.#start([reference], block.place, true);
    this.#pieces(block, "");
  }

  #words(block: FlowBlock, mark: string): void {
    const { scheme } = this.#choice;
    if (
      block.role.is === "number" &&
      scheme === "numbers" &&
      block.role.number > this.#lastNumber &&
      this.#lastNumber > 0
    ) {
      this.#dropped.add(
        "number at the start of a paragraph",
        "It does not continue the order of the numbers, so it stays among the words.",
        block.place,
      );
    }
    if (this.#pending !== null && (hasWords(block) || mark !== "")) {
      this.#start(this.#pending.references, this.#pending.place, true);
      this.#pending = null;
    }
    const counts =
      scheme === "paragraphs" || ((scheme === "chapters" || scheme === "headings") && this.#chapter !== "");
    if (counts && hasWords(block)) {
      this.#paragraph += 1;
      const label = String(this.#paragraph);
      this.#start(
        [{ kind: "section", from: scheme === "paragraphs" ? [label] : [this.#chapter, label] }],
        block.place,
        true,
      );
    }
    this.#pieces(block, mark);
  }

  #pieces(block: FlowBlock, mark: string): void {
    this.#builder.block(block.kind);
    if (mark !== "") this.#builder.text(mark, [], block.place);
    for (const piece of block.pieces) {
      if ("note" in piece) this.#builder.note(piece.note, piece.label, block.place);
      else this.#builder.text(piece.text, piece.emphasis ? [{ type: "emphasis" }] : [], block.place);
    }
  }
}

const SCHEME_NOTES: Readonly<Partial<Record<Scheme, string>>> = {
  chapters: "Only chapters are numbered; the paragraphs of each were counted from 1.",
  headings: "No numbers and no reference lines were found; headings and the paragraphs under each were counted from 1.",
  paragraphs: "No numbers and no reference lines were found; paragraphs were counted from 1.",
};

/** Lines of a file, at most: five times what a book of 64 MB has. */
const LINE_LIMIT = 3_000_000;

/** Throws RefusedError when a text is all line ends. */
export const refuseTooManyLines = (source: string, name: string): void => {
  let lines = 0;
  for (let at = source.indexOf("\n"); at >= 0; at = source.indexOf("\n", at + 1)) lines += 1;
  if (lines > LINE_LIMIT) throw new RefusedError(refuse.tooManyLines(name, LINE_LIMIT));
};

/** Cuts a text into passages. `name` is the file's, for refusals; `bare` says what a number without a label means. The passages may be none. */
export const cutFlow = (
  name: string,
  blocks: readonly FlowBlock[],
  bare: BareNumber,
  dropped: DroppedList,
): Pick<ImportedText, "levels" | "passages"> => {
  const choice = choose(blocks);
  const note = SCHEME_NOTES[choice.scheme];
  if (note !== undefined) dropped.add("references: counted", note, blocks[0]?.place ?? { line: 1, column: 1 });
  return { levels: choice.levels, passages: new Flow(name, choice, blocks, bare, dropped).read(blocks) };
};
