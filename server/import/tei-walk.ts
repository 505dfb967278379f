/** server/import/tei-walk.ts - goes through the body of one TEI text and hands its words to the passage builder.
 *  May import: schema types, siblings. Keeps rules I1, I6, I7, I9, I10 (server/import/RULES.md). */
import type { FilePlace, ImportedPassage } from "../../schema/imported.ts";
import type { DroppedList } from "./dropped-list.ts";
import { PassageBuilder, type PassageStart, type TextMark } from "./passage-builder.ts";
import {
  BLOCK_KINDS,
  CHOSEN,
  CHOSEN_IN_ATTRIBUTE,
  CONTAINERS,
  COUNTED_UNITS,
  LEFT_OUT,
  MARKS,
  OTHER_IN_ATTRIBUTE,
  WHY_OTHER_READING,
  WHY_TAG_ONLY,
} from "./tei-elements.ts";
import { languageIn, readRun } from "./tei-language.ts";
import { type CitationScheme, isDivision } from "./tei-levels.ts";
import { placeOf, visit, type XmlElement } from "./xml-reader.ts";

/** What stands for a level that the text does not number at a place. */
const UNNUMBERED = "0";
/** Names for words that no reference covers: before the first one, and later. */
const FRONT = "front";
const BETWEEN = "unnumbered";

interface Around {
  marks: readonly TextMark[];
  language: string;
  /** Citation levels that enclosing elements have set. */
  depth: number;
  /** Where things are counted: how many so far in the enclosing division. */
  counts: { divisions: number; units: number };
  /** Inside something that was counted as one paragraph. */
  inUnit: boolean;
  /** The nearest title of an enclosing division that is wider than a passage. */
  title: string;
}

const elementsIn = (element: XmlElement) =>
  element.children.filter((child): child is XmlElement => typeof child !== "string");

export class TeiWalk {
  readonly #scheme: CitationScheme;
  readonly #dropped: DroppedList;
  readonly #betaCode: boolean;
  readonly #builder: PassageBuilder;
  /** Labels of the levels that hold at this place, widest first. */
  #values: string[] = [];
  #title = "";
  /** Words outside every block, where paragraphs are counted, are one paragraph until something else begins. */
  #loose = false;
  /** How many passages no reference covers so far. */
  #outside = 0;
  readonly #divisionsCite: boolean;
  readonly #madeNames = new Map<string, number>();

  constructor(name: string, body: XmlElement, scheme: CitationScheme, betaCode: boolean, dropped: DroppedList) {
    this.#scheme = scheme;
    this.#dropped = dropped;
    this.#betaCode = betaCode;
    let divisionsCite = false;
    visit(body, (element) => {
      divisionsCite ||= isDivision(element) && this.#levelOf(element, 0) !== null;
      return !divisionsCite;
    });
    this.#divisionsCite = divisionsCite;
    this.#builder = new PassageBuilder(name, dropped, (place) => this.#frontStart(place));
  }

  walk(body: XmlElement, language: string): ImportedPassage[] {
    const counts = { divisions: 0, units: 0 };
    const title = this.#takeHeads(body, language);
    this.#children(body, { marks: [], language: languageIn(body, language), depth: 0, counts, inUnit: false, title });
    return this.#builder.finish();
  }

  #frontStart(place: FilePlace): PassageStart {
    const before = this.#builder.passages.length === 0;
    this.#outside += 1;
    const label = before ? FRONT : this.#outside === 1 ? BETWEEN : `${BETWEEN}-${this.#outside}`;
    const where = before ? "before the first reference" : "outside all references";
    this.#dropped.add(
      `words ${where}`,
      `They are kept as a passage cited as “${before ? FRONT : BETWEEN}”, a name made here.`,
      place,
    );
    return { references: [{ kind: "section", from: [label] }], place, expectsWords: false };
  }

  /** Which level an element sets, at or below `depth`, and with what label. */
  #levelOf(element: XmlElement, depth: number): { level: number; label: string } | null {
    for (let level = depth; level < this.#scheme.levels.length; level += 1) {
      const label = this.#scheme.levels[level]?.label(element) ?? null;
      if (label !== null) return { level, label };
    }
    return null;
  }

  #cite(values: string[], place: FilePlace, title: string): void {
    const last = this.#scheme.levels.length - 1;
    this.#values = values;
    this.#title = title;
    this.#loose = false;
    if (values.length === 0) {
      this.#builder.endPassage();
      return;
    }
    const label = values.slice(0, last).join(".");
    this.#builder.startPassage({
      references: [{ kind: "section", from: values }],
      ...(label === "" && title === "" ? {} : { division: { label, title } }),
      place,
      expectsWords: values.length > last,
    });
  }

  /** The labels above `level`, as far as they are set; what is missing is reported and stands as 0. */
  #above(level: number, place: FilePlace): string[] {
    const above = this.#values.slice(0, level);
    while (above.length < level) {
      const name = this.#scheme.levels[above.length]?.name ?? "level";
      this.#dropped.add(`${name} without a number`, `The text gives none here; “${UNNUMBERED}” stands for it.`, place);
      above.push(UNNUMBERED);
    }
    return above;
  }

  #children(element: XmlElement, around: Around): void {
    for (const child of element.children) {
      if (typeof child === "string") this.#text(child, element, around);
      else this.#element(child, element, around);
    }
  }

  #text(run: string, parent: XmlElement, around: Around): void {
    if (this.#scheme.origin === "counted" && !around.inUnit && !this.#loose && /[^ \t\r\n]/.test(run)) {
      this.#countUnit(parent, around);
      this.#loose = true;
    }
    this.#builder.text(readRun(run, around.language, this.#betaCode), around.marks, placeOf(parent));
  }

  #countUnit(element: XmlElement, around: Around): void {
    around.counts.units += 1;
    this.#values = this.#values.slice(0, around.depth);
    const above = this.#above(this.#scheme.levels.length - 1, placeOf(element));
    this.#cite([...above, String(around.counts.units)], placeOf(element), around.title);
  }

  #element(element: XmlElement, parent: XmlElement, outer: Around): void {
    const around: Around = { ...outer, language: languageIn(element, outer.language) };
    const { name } = element;
    const leftOut = LEFT_OUT.get(name);
    if (leftOut !== undefined) {
      this.#dropped.add(`element <${name}>`, leftOut, placeOf(element), this.#words(element, around.language));
      return;
    }
    if (this.#boundary(element)) return;
    if (name === "milestone") this.#milestone(element, around);
    else if (name === "note") this.#note(element, around);
    else if (name === "noteGrp") this.#children(element, around);
    else if (name === "gap") this.#builder.gap(element.attributes.reason ?? "", placeOf(element));
    else if (name === "app") this.#apparatus(element, around);
    else if (name === "choice") this.#choice(element, around);
    else if (name === "subst") for (const child of elementsIn(element)) this.#element(child, element, around);
    else if (isDivision(element)) this.#division(element, parent, around);
    else if (name === "head" && this.#headIsTitle(parent, around)) return;
    else this.#plainElement(element, parent, around);
  }

  /** Elements that are words with or without a mark, blocks, and anything that may be a citation level itself. */
  #plainElement(element: XmlElement, parent: XmlElement, outer: Around): void {
    const { name } = element;
    let around = outer;
    const cited = this.#levelOf(element, around.depth);
    const before = this.#builder.kind;
    const kind = BLOCK_KINDS.get(name) ?? (name === "label" && parent.name === "list" ? "paragraph" : undefined);
    if (kind !== undefined) this.#builder.block(kind);
    if (name === "lg" || name === "list" || name === "table") this.#builder.block("paragraph");
    if (cited !== null) around = this.#enter(element, cited, around, around.title);
    else if (this.#scheme.origin === "counted" && !around.inUnit && COUNTED_UNITS.has(name)) {
      this.#countUnit(element, around);
      around = { ...around, inUnit: true };
    }
    const mark =
      MARKS.get(name) ??
      (name === "foreign" ? ({ type: "foreign", attrs: { lang: around.language } } as const) : undefined);
    if (mark !== undefined)
      around = { ...around, marks: [...around.marks.filter(({ type }) => type !== mark.type), mark] };
    else if (kind === undefined && cited === null && !CONTAINERS.has(name) && !this.#readsAttribute(element)) {
      this.#dropped.add(`tag <${name}>`, WHY_TAG_ONLY, placeOf(element));
    }
    this.#ownReading(element, around);
    if (name === "cell") this.#builder.part();
    if (cited !== null) this.#leave(element, cited.level);
    if (kind !== undefined || name === "lg" || name === "list" || name === "table") this.#builder.block(before);
  }

  #readsAttribute(element: XmlElement): boolean {
    return element.attributes[CHOSEN_IN_ATTRIBUTE.get(element.name) ?? ""] !== undefined;
  }

  /** The words of the element; in TEI P4 the reading of the edition may stand in an attribute instead. */
  #ownReading(element: XmlElement, around: Around): void {
    const chosen = element.attributes[CHOSEN_IN_ATTRIBUTE.get(element.name) ?? ""];
    const other = element.attributes[OTHER_IN_ATTRIBUTE.get(element.name) ?? ""];
    if (other !== undefined)
      this.#dropped.add(`other reading in <${element.name}>`, WHY_OTHER_READING, placeOf(element), other);
    if (chosen === undefined) {
      this.#children(element, around);
      return;
    }
    this.#dropped.add(
      `element <${element.name}>`,
      WHY_OTHER_READING,
      placeOf(element),
      this.#words(element, around.language),
    );
    this.#text(chosen, element, around);
  }

  /** An element that encloses what it cites. */
  #enter(element: XmlElement, cited: { level: number; label: string }, around: Around, title: string): Around {
    const values = [...this.#above(cited.level, placeOf(element)), cited.label];
    this.#cite(values, placeOf(element), title);
    return { ...around, depth: cited.level + 1, title };
  }

  /** Words after the end of a cited element stand at the level around it. */
  #leave(element: XmlElement, level: number): void {
    this.#cite(this.#values.slice(0, level), placeOf(element), this.#title);
  }

  #division(element: XmlElement, parent: XmlElement, outer: Around): void {
    this.#builder.block("paragraph");
    const cited = this.#levelOf(element, outer.depth) ?? this.#madeCitation(element, parent, outer);
    const isPassage = cited !== null && cited.level === this.#scheme.levels.length - 1;
    const heads = isPassage ? "" : this.#takeHeads(element, outer.language);
    const around: Around = { ...outer, counts: { divisions: 0, units: 0 }, title: heads || outer.title };
    if (cited === null) {
      if (this.#scheme.origin === "counted") around.counts = outer.counts;
      this.#title = around.title;
      this.#children(element, around);
    } else {
      this.#children(element, this.#enter(element, cited, around, around.title));
      this.#title = outer.title;
      this.#leave(element, cited.level);
    }
    this.#builder.block("paragraph");
  }

  /** A label for a division that has none: its place in the count, or a name where its neighbours are numbered. */
  #madeCitation(element: XmlElement, parent: XmlElement, around: Around): { level: number; label: string } | null {
    const last = this.#scheme.levels.length - 1;
    if (this.#scheme.origin === "counted") {
      const alone = around.depth === 0 && elementsIn(parent).filter(isDivision).length === 1;
      if (alone || around.depth >= last) return null;
      around.counts.divisions += 1;
      return { level: around.depth, label: String(around.counts.divisions) };
    }
    if (!this.#divisionsCite || around.depth > last) return null;
    let citesInside = false;
    visit(element, (inner) => {
      citesInside ||= this.#levelOf(inner, around.depth) !== null;
      return !citesInside;
    });
    if (citesInside) return null;
    const kind = (element.attributes.subtype ?? element.attributes.type ?? "division").slice(0, 30);
    const count = (this.#madeNames.get(kind) ?? 0) + 1;
    this.#madeNames.set(kind, count);
    const label = count === 1 ? kind : `${kind}-${count}`;
    this.#dropped.add("division without a number", "It is cited by its kind, a name made here.", placeOf(element));
    return { level: around.depth, label };
  }

  /** A head is the title of the division around it, unless that division is itself a passage. */
  #headIsTitle(parent: XmlElement, around: Around): boolean {
    if (parent.name !== "body" && !isDivision(parent)) return false;
    const ownLevel = around.depth - 1;
    return !(ownLevel === this.#scheme.levels.length - 1 && this.#levelOfParent(parent, ownLevel));
  }

  #levelOfParent(parent: XmlElement, level: number): boolean {
    return isDivision(parent) && (this.#levelOf(parent, level) !== null || this.#scheme.origin !== "counted");
  }

  #takeHeads(element: XmlElement, language: string): string {
    return elementsIn(element)
      .filter(({ name }) => name === "head")
      .map((head) => this.#words(head, languageIn(head, languageIn(element, language))))
      .filter((words) => words !== "")
      .join(" ");
  }

  /** Page, column and line beginnings, also as milestones. True when the element was one. */
  #boundary(element: XmlElement): boolean {
    const unit = element.name === "milestone" ? (element.attributes.unit ?? "") : element.name;
    const n = element.attributes.n?.trim() ?? "";
    const edition = (element.attributes.ed ?? "").replace(/^#/, "").trim();
    const { pages } = this.#builder;
    if (/^(pb|page|folio|fol|leaf)$/.test(unit)) this.#builder.milestone(pages.turn(edition, n), n);
    else if (/^(cb|column)$/.test(unit)) {
      pages.column(edition, n);
      this.#builder.milestone("column", n);
    } else if (/^(lb|line)$/.test(unit)) {
      pages.line(edition, n);
      this.#builder.milestone("line", n);
      if (element.attributes.break !== "no") this.#builder.part();
    } else return false;
    if (element.attributes.break === "no") this.#builder.join();
    return true;
  }

  #milestone(element: XmlElement, around: Around): void {
    const { unit = "", n = "" } = element.attributes;
    const cited = this.#levelOf(element, around.depth);
    if (cited !== null)
      this.#cite([...this.#above(cited.level, placeOf(element)), cited.label], placeOf(element), around.title);
    else if (/^para(graph)?$/.test(unit)) this.#builder.block(this.#builder.kind);
    else this.#builder.milestone(unit === "" ? "milestone" : unit, n);
  }

  #note(element: XmlElement, around: Around): void {
    const words = this.#words(element, around.language);
    if (words !== "") this.#builder.note(words, element.attributes.n ?? "", placeOf(element));
  }

  #apparatus(element: XmlElement, around: Around): void {
    const entries = elementsIn(element).flatMap((child) => (child.name === "rdgGrp" ? elementsIn(child) : [child]));
    const kept = entries.find(({ name }) => name === "lem") ?? entries.find(({ name }) => name === "rdg");
    for (const entry of entries) {
      if (entry === kept) this.#children(entry, { ...around, language: languageIn(entry, around.language) });
      else if (entry.name === "note") this.#note(entry, around);
      else {
        const witnesses = entry.attributes.wit ?? entry.attributes.source ?? entry.attributes.resp ?? "";
        const of = witnesses === "" ? "" : ` of ${witnesses.slice(0, 60)}`;
        this.#dropped.add(`reading${of}`, WHY_OTHER_READING, placeOf(entry), this.#words(entry, around.language));
      }
    }
  }

  #choice(element: XmlElement, around: Around): void {
    const options = elementsIn(element);
    const name = CHOSEN.find((candidate) => options.some((option) => option.name === candidate));
    const kept = options.find((option) => option.name === name) ?? options[0];
    for (const option of options) {
      if (option === kept) this.#element(option, element, around);
      else
        this.#dropped.add(
          `element <${option.name}>`,
          WHY_OTHER_READING,
          placeOf(option),
          this.#words(option, around.language),
        );
    }
  }

  /** All words of an element in one line, without its notes; those are reported. */
  #words(element: XmlElement, language: string): string {
    const runs: string[] = [];
    const gather = (inner: XmlElement, around: string): void => {
      for (const child of inner.children) {
        if (typeof child === "string") runs.push(readRun(child, around, this.#betaCode));
        else if (child.name !== "note" || inner.name !== "head") gather(child, languageIn(child, around));
        else
          this.#dropped.add(
            "note in a title",
            "A title cannot hold a note.",
            placeOf(child),
            this.#words(child, around),
          );
      }
    };
    gather(element, language);
    return runs
      .join("")
      .replace(/[ \t\r\n]+/g, " ")
      .replace(/^ | $/g, "");
  }
}
