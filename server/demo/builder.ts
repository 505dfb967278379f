/** server/demo/builder.ts - writes a book with its apparatus: passages, marks, slots, cruxes, questions, terms, holds.
 *  May import: schema types, shared/text, siblings. Words are named by quoting them (phrase.ts), values by how they are
 *  warranted (draft.ts); the builder makes the rows. Exercises are written through exercise-builder.ts.
 *  A slip in the demo (a phrase that is not there, an unknown reading) throws at once and names the place. */
import type { Edit } from "../../schema/change.ts";
import type { CRUX_KINDS, Question, ReadingStatus } from "../../schema/crux.ts";
import type { Guard, ReadingCondition } from "../../schema/guard.ts";
import type { Mark, Markable } from "../../schema/mark.ts";
import type { Kind } from "../../schema/record.ts";
import type { Reference } from "../../schema/reference.ts";
import type { GROUND_SLOTS, HOLD_SLOTS, OBJECT_SLOTS, THREAT_SLOTS } from "../../schema/riding.ts";
import type { Basis, ReadingValue, Slot, SlotAddress, Support } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import { projectDoc } from "../../shared/text/projection.ts";
import type { CruxHandle, Draft, DraftsOf, ReadingDraft, SaidDraft } from "./draft.ts";
import { passageDoc } from "./passage-doc.ts";
import { findPhrase, type Phrase, phraseAnchor, type Quoted, type QuotedText } from "./phrase.ts";
import { type NewRow, RowList } from "./row-list.ts";

/** The two texts a passage of the demo has, and the revision each of them belongs to. */
export interface Revisions {
  translation: string;
  original: string;
}

/** A passage whose words can be quoted. */
export interface PassageHandle {
  id: string;
  /** Words of the translation, in one or several pieces. */
  tr(...quoted: Quoted[]): Phrase[];
  /** Words of the original. */
  la(...quoted: Quoted[]): Phrase[];
  /** The same in both: one piece of each. */
  both(translation: Quoted, original: Quoted): Phrase[];
}

export interface ReadingDraftRow {
  title: string;
  argument: string;
  holder: string;
  status?: ReadingStatus;
  /** Words that speak for it, and words that speak against it. */
  speaksFor?: Phrase[];
  speaksAgainst?: Phrase[];
  evidence?: Basis[];
  requires?: ReadingCondition[];
  excludes?: ReadingCondition[];
}

export interface CruxDraftRow {
  exercise: string | null;
  is: (typeof CRUX_KINDS)[number];
  /** A principle has places for and against it; without, it is about one place. */
  scope?: "place" | "principle";
  title: string;
  arisesWhen?: ReadingCondition[];
  note?: string;
  words: Phrase[];
  /** By a short key that slots and guards use. */
  readings: Readonly<Record<string, ReadingDraftRow>>;
  leftFree?: { on: string; sitting: string | null; reason: string; default: string };
}

export interface QuestionDraftRow {
  exercise: string | null;
  crux: CruxHandle | null;
  text: string;
  to: string;
  by: Question["by"];
  asked: string;
  effort: number;
  answers: readonly { label: string; allows: ReadingCondition[] }[];
  state?: Question["state"];
}

export class BookBuilder {
  readonly rows = new RowList();
  readonly work: string;
  /** Values of readings, filled as the slots that hold their cruxes are written. */
  readonly #readingValues = new Map<string, { at: SlotAddress; value: ReadingValue }[]>();

  constructor(work: NewRow<"works">) {
    this.work = this.rows.add("works", work);
  }

  edits(): Edit[] {
    return this.rows.edits();
  }

  /** A passage with its translation and its original, typed as passage-doc.ts reads it. */
  passage(
    revisions: Revisions,
    exercise: string | null,
    references: [Reference, ...Reference[]],
    typed: { translation: string; original: string },
  ): PassageHandle {
    const id = this.rows.add("passages", { work: this.work, exercise, references });
    const translation = this.#passageText(id, revisions.translation, "the translation", typed.translation);
    const original = this.#passageText(id, revisions.original, "the original", typed.original);
    const quote = (text: QuotedText, quoted: readonly Quoted[]) => quoted.map((words) => findPhrase(text, words));
    return {
      id,
      tr: (...quoted) => quote(translation, quoted),
      la: (...quoted) => quote(original, quoted),
      both: (english, latin) => [...quote(translation, [english]), ...quote(original, [latin])],
    };
  }

  #passageText(passage: string, revision: string, name: string, typed: string): QuotedText {
    const doc = passageDoc(typed);
    const words = projectDoc(doc);
    const text = this.rows.add("passageTexts", {
      passage,
      revision,
      number: 1,
      doc: doc.toJSON(),
      text: words,
      steps: [],
    });
    return { passage, text, words, name: `${name} of "${words.slice(0, 30)}..."` };
  }

  /** Ties a row to words and gives the mark. Throws RangeError when there are no words. */
  mark(of: Markable, target: string, words: readonly Phrase[], as: Mark["as"] = "words"): string {
    if (words.length === 0) throw new RangeError(`A mark of ${of} needs words to lie on.`);
    const mark = this.rows.add("marks", { work: this.work, of, target, as });
    for (const phrase of words) this.rows.add("anchors", { mark, ...phraseAnchor(phrase) });
    return mark;
  }

  /** Words tied to a row, as what a warrant rests on; nothing for no words. */
  basisOf(of: Markable, target: string, words: readonly Phrase[]): Basis[] {
    return words.length === 0 ? [] : [{ is: "words", mark: this.mark(of, target, words) }];
  }

  /** A draft as the slot at `address`. Words of its own become a mark of `of`; a stated value without any rests on
   *  `around`, the words of the row it lies in. */
  slot(draft: Draft<unknown>, address: SlotAddress, of: Markable, around: Basis[]): Slot<unknown> {
    if (draft.is === "said") return this.#said(draft, of, address.id, around);
    if (draft.is !== "in crux") return draft;
    for (const [key, value] of Object.entries(draft.values)) {
      this.#giveReading(draft.crux, key, address, this.#readingValue(value, of, address.id, around));
    }
    return { is: "in crux", crux: draft.crux.id };
  }

  slots(
    drafts: Readonly<Record<string, Draft<unknown> | undefined>>,
    at: Omit<SlotAddress, "slot">,
    of: Markable,
    around: Basis[],
  ) {
    const said = Object.entries(drafts).flatMap(([name, draft]) =>
      draft === undefined ? [] : [[name, this.slot(draft, { ...at, slot: name }, of, around)] as const],
    );
    return Object.fromEntries(said);
  }

  /** Why a row is there: its own words state it, unless `because` says otherwise. */
  existence(because: Pick<SaidDraft<true>, "warrant" | "words" | "basis"> | null, around: Basis[]): Support {
    if (because === null) return { warrant: "stated", basis: around };
    // What a picture states, it states alone: the words only tell where it belongs.
    if (because.warrant === "stated") return { warrant: "stated", basis: because.basis };
    return { warrant: because.warrant, basis: [...around, ...because.basis] };
  }

  #said(draft: SaidDraft<unknown>, of: Markable, target: string, around: Basis[]) {
    const own = this.basisOf(of, target, draft.words);
    const bare = own.length === 0 && draft.basis.length === 0;
    const inherited = draft.warrant === "stated" && bare ? around : [];
    const { is, value, warrant } = draft;
    return { is, value, warrant, basis: [...own, ...inherited, ...draft.basis] };
  }

  #readingValue(draft: ReadingDraft<unknown>, of: Markable, target: string, around: Basis[]): ReadingValue {
    return draft.is === "said" ? this.#said(draft, of, target, around) : draft;
  }

  #giveReading(crux: CruxHandle, key: string, at: SlotAddress, value: ReadingValue): void {
    const [reading = ""] = crux.reads(key).readings;
    this.#readingValues.get(reading)?.push({ at, value });
  }

  /** A place that admits more than one understanding, with its readings by key. */
  crux({ words, readings, note = "", scope = "place", arisesWhen = [], leftFree, ...crux }: CruxDraftRow): CruxHandle {
    const id = this.rows.newId();
    const ids = new Map(Object.keys(readings).map((key) => [key, this.rows.newId()]));
    const idOfReading = (key: string): string => {
      const reading = ids.get(key);
      if (reading !== undefined) return reading;
      throw new RangeError(
        `The crux "${crux.title}" has the readings ${[...ids.keys()].join(", ")}; "${key}" is none.`,
      );
    };
    this.rows.add(
      "cruxes",
      {
        work: this.work,
        ...crux,
        scope,
        note,
        arisesWhen,
        leftFree: leftFree === undefined ? null : { ...leftFree, default: idOfReading(leftFree.default) },
        exceptions: [],
      },
      id,
    );
    this.mark("cruxes", id, words);
    for (const [key, reading] of Object.entries(readings)) this.#reading(id, idOfReading(key), reading);
    const reads = (...keys: string[]) => ({ is: "reading" as const, crux: id, readings: keys.map(idOfReading) });
    return { id, readings: ids, reads };
  }

  #reading(crux: string, id: string, reading: ReadingDraftRow): void {
    const { title, argument, holder, status = { is: "standing" }, evidence = [] } = reading;
    const { speaksFor = [], speaksAgainst = [], requires = [], excludes = [] } = reading;
    const words: Basis[] = [];
    if (speaksFor.length > 0) words.push({ is: "words", mark: this.mark("readings", id, speaksFor, "for") });
    if (speaksAgainst.length > 0)
      words.push({ is: "words", mark: this.mark("readings", id, speaksAgainst, "against") });
    const values: { at: SlotAddress; value: ReadingValue }[] = [];
    this.#readingValues.set(id, values);
    this.rows.add(
      "readings",
      {
        crux,
        title,
        argument,
        holder,
        evidence: [...words, ...evidence],
        requires,
        excludes,
        values,
        status,
        confidence: null,
      },
      id,
    );
  }

  question({ crux, state = { is: "open" }, ...question }: QuestionDraftRow, words: Phrase[]): string {
    const row = { work: this.work, ...question, crux: crux?.id ?? null, answers: [...question.answers], state };
    const id = this.rows.add("questions", row);
    this.mark("questions", id, words);
    return id;
  }

  /** A term with its senses by key; `places` of a sense are tagged later, where they occur. */
  term<Key extends string>(
    term: Omit<NewRow<"terms">, "work">,
    senses: Readonly<Record<Key, { title: string; gloss: string }>>,
  ): Record<Key, string> {
    const id = this.rows.add("terms", { work: this.work, ...term });
    const made = Object.entries<{ title: string; gloss: string }>(senses).map(([key, sense]) => [
      key,
      this.rows.add("senses", { term: id, ...sense }),
    ]);
    return Object.fromEntries(made);
  }

  note(text: string, words: Phrase[]): string {
    const id = this.rows.add("notes", { work: this.work, text });
    this.mark("notes", id, words);
    return id;
  }

  /** A hold; its words state it. */
  hold(hold: Omit<NewRow<"holds">, "work" | "slots">, slots: DraftsOf<typeof HOLD_SLOTS>, words: Phrase[]): string {
    const id = this.rows.newId();
    const around = this.basisOf("holds", id, words);
    const filled = this.slots(slots, { kind: "holds", id }, "holds", around);
    return this.rows.add("holds", { work: this.work, ...hold, slots: filled }, id);
  }

  object(is: NewRow<"objects">["is"], name: string, note: string, slots: DraftsOf<typeof OBJECT_SLOTS>): string {
    const id = this.rows.newId();
    const filled = this.slots(slots, { kind: "objects", id }, "notes", []);
    return this.rows.add("objects", { work: this.work, is, name, slots: filled, note }, id);
  }

  /** An opponent; its words state it. */
  threat(name: string, note: string, slots: DraftsOf<typeof THREAT_SLOTS>, words: Phrase[]): string {
    const id = this.rows.newId();
    const around = this.basisOf("threats", id, words);
    const filled = this.slots(slots, { kind: "threats", id }, "threats", around);
    return this.rows.add("threats", { work: this.work, name, slots: filled, note }, id);
  }

  /** A riding ground; grounds have no words of their own, so their measures are implied or supplied. */
  ground(ground: Omit<NewRow<"grounds">, "work" | "slots">, slots: DraftsOf<typeof GROUND_SLOTS>): string {
    const id = this.rows.newId();
    const filled = this.slots(slots, { kind: "grounds", id }, "stations", []);
    return this.rows.add("grounds", { work: this.work, ...ground, slots: filled }, id);
  }

  /** A point of a ground, with the words that place it. `id` when its partner had to name it first. */
  station(
    { at, ...station }: Omit<NewRow<"stations">, "is" | "outline"> & { at: SaidDraft<ValueOf<"outline">> },
    words: Phrase[],
    id = this.rows.newId(),
  ): string {
    const around = this.basisOf("stations", id, words);
    const outline = this.slot(at, { kind: "stations", id, slot: "outline" }, "stations", around);
    const row = { ...station, is: "point" as const, outline: outline as Slot<ValueOf<"outline">> };
    return this.rows.add("stations", row, id);
  }

  /** What holds throughout, or is never mentioned. Gives the id and the words it rests on. */
  standing(
    standing: Omit<NewRow<"standings">, "work" | "guard" | "existence"> & { guard?: Guard },
    words: Phrase[],
    because: SaidDraft<true> | null = null,
  ): { id: string; around: Basis[] } {
    const id = this.rows.newId();
    const around = this.basisOf("standings", id, words);
    const existence = this.existence(because, around);
    this.rows.add("standings", { work: this.work, guard: [], ...standing, existence }, id);
    return { id, around };
  }

  movement(movement: Omit<NewRow<"movements">, "work">, words: Phrase[]): { id: string; around: Basis[] } {
    const id = this.rows.newId();
    const around = this.basisOf("movements", id, words);
    this.rows.add("movements", { work: this.work, ...movement }, id);
    return { id, around };
  }

  /** Any other row of the work. */
  add<K extends Kind>(kind: K, row: Omit<NewRow<K>, "work">): string {
    return this.rows.add(kind, { work: this.work, ...row } as unknown as NewRow<K>);
  }
}

/** Ruled out on a day, for a reason, in a sitting. */
export function ruledOut(on: string, sitting: string | null, reason: string): ReadingStatus {
  return { is: "ruled out", on, sitting, reason };
}

/** Adopted on a day, for a reason, in a sitting. */
export function adopted(on: string, sitting: string, reason: string): ReadingStatus {
  return { is: "adopted", on, sitting, reason, condition: "" };
}
