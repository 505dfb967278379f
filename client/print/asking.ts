/** client/print/asking.ts - the paper that is asked for: its kind, exercises and choices, remembered in this browser a kind.
 *  May import: types of schema, shared, client/read, client/state. */
import { computed, effect, signal } from "@preact/signals";
import type { Bundle } from "../../schema/api.ts";
import type { Drill, DrillCrux } from "../../schema/drill.ts";
import type { PaperAsk, PaperKind, PaperPart, PaperSize } from "../../schema/paper.ts";
import type { Kind, RecordOf, Rows } from "../../schema/record.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { compareRanked } from "../../shared/rank.ts";
import { listedWorks } from "../read/contents-order.ts";
import { ask, type Refused } from "../state/api.ts";

export type IssuedKind = Exclude<PaperKind, "correction slip">;

/** Every paper with what it is for, in the order they are offered. */
export const KIND_WORDS: readonly { kind: IssuedKind; says: string; many: boolean }[] = [
  { kind: "ride sheet", says: "One exercise to read at arm’s length, with its plan.", many: false },
  {
    kind: "class handout",
    says: "Exercises for a class: chosen, cut, with holds, faults and what is left out.",
    many: true,
  },
  { kind: "caller's sheet", says: "What to call out and when, in big type.", many: false },
  {
    kind: "working sheet",
    says: "The text with a wide margin, its cruxes and questions, and room to write.",
    many: false,
  },
  {
    kind: "appendix",
    says: "The book part: every step with its citation, the apparatus, glossary, index.",
    many: true,
  },
];

/** The parts of one exercise that a paper can be asked for with. */
export interface PrintedExercise {
  drill: Drill;
  variants: RecordOf<"variants">[];
  rows: Rows;
}

interface Choices {
  size: PaperSize;
  way: PaperAsk["way"];
  notesAt: PaperAsk["notesAt"];
  style: string;
  occasion: string;
  /** Of papers that hold several exercises. */
  parts: PaperPart[];
  /** Cut and version of the one exercise of other papers, by its id. */
  cuts: Readonly<Record<string, Omit<PaperPart, "exercise">>>;
}

const FRESH: Choices = {
  size: "A4",
  way: "mounted",
  notesAt: "foot",
  style: "",
  occasion: "",
  parts: [],
  cuts: {},
};
const WHOLE = { from: null, to: null, variant: null };

const KEY = "passagework.papers";
/** Readings by crux, the same on every kind of paper. */
type Readings = Readonly<Record<string, string>>;
type Kept = { kind?: IssuedKind; readings?: Readings; choices?: { [K in IssuedKind]?: Partial<Choices> } };

function kept(): Kept {
  try {
    return JSON.parse(localStorage.getItem(KEY) ?? "{}") as Kept;
  } catch {
    return {};
  }
}

const begin = kept();
export const kind = signal<IssuedKind>(
  KIND_WORDS.some((one) => one.kind === begin.kind) ? (begin.kind ?? "ride sheet") : "ride sheet",
);
const byKind = signal<NonNullable<Kept["choices"]>>(begin.choices ?? {});
export const readings = signal<Readings>(begin.readings ?? {});
effect(() =>
  localStorage.setItem(
    KEY,
    JSON.stringify({ kind: kind.value, readings: readings.value, choices: byKind.value } satisfies Kept),
  ),
);

/** The exercise of the address. */
export const exercise = signal<string | null>(null);
/** What can be chosen of each exercise, once it is known. */
export const printed = signal<Readonly<Record<string, PrintedExercise>>>({});
export const unprinted = signal<Refused | null>(null);
/** Names of citation styles, the program's own first. */
export const styles = signal<string[]>([]);
/** What is wrong with style files that cannot be used. */
export const brokenStyles = signal<string[]>([]);

export const choices = computed<Choices>(() => ({ ...FRESH, ...byKind.value[kind.value] }));
export function choose(changed: Partial<Choices>): void {
  byKind.value = { ...byKind.value, [kind.value]: { ...byKind.value[kind.value], ...changed } };
}

/** Ids of the exercises of the work that is open, in its order. */
export const exercisesOfWork = computed<string[]>(() => {
  const work = listedWorks.value.find(({ groups }) => groups.some(({ key }) => key === exercise.value));
  return (work?.groups ?? []).flatMap(({ key, isExercise }) => (isExercise ? key : []));
});

export const takesMany = computed(() => KIND_WORDS.find((one) => one.kind === kind.value)?.many === true);

/** The exercises on the paper, in its order: never none while an exercise is open. The book part has all of the work
 *  until some are chosen; what was chosen in another work is let go. */
export const parts = computed<PaperPart[]>(() => {
  const id = exercise.value;
  if (id === null) return [];
  const ofWork = exercisesOfWork.value;
  const chosen = choices.value.parts.filter((part) => ofWork.includes(part.exercise));
  if (takesMany.value && chosen.length > 0) return chosen;
  if (kind.value === "appendix" && ofWork.length > 0) return ofWork.map((one) => ({ exercise: one, ...WHOLE }));
  return [{ exercise: id, ...WHOLE, ...choices.value.cuts[id] }];
});

export function setPart(part: PaperPart): void {
  const { exercise: id, ...cut } = part;
  if (takesMany.value) {
    const there = parts.value.some((one) => one.exercise === id);
    choose({ parts: there ? parts.value.map((one) => (one.exercise === id ? part : one)) : [...parts.value, part] });
  } else choose({ cuts: { ...choices.value.cuts, [id]: cut } });
}
export function addPart(id: string): void {
  setPart({ exercise: id, ...WHOLE });
}
export function takePart(id: string): void {
  choose({ parts: parts.value.filter((part) => part.exercise !== id) });
}
/** Puts a part at an index among all of them; past the ends it stands first or last. */
export function movePart(id: string, to: number): void {
  const moved = parts.value.find((part) => part.exercise === id);
  if (moved === undefined) return;
  const list = parts.value.filter((part) => part !== moved);
  list.splice(Math.max(0, to), 0, moved);
  choose({ parts: list });
}

/** What is sent to the server; null while no exercise is open. */
export const paperAsk = computed<PaperAsk | null>(() => {
  if (parts.value.length === 0) return null;
  const { size, way, notesAt, style, occasion } = choices.value;
  const known = new Set(cruxesOf(parts.value).map(({ crux }) => crux));
  return {
    kind: kind.value,
    parts: parts.value,
    size,
    way,
    choice: Object.entries(readings.value).flatMap(([crux, reading]) => (known.has(crux) ? { crux, reading } : [])),
    notesAt,
    style: style || (styles.value[0] ?? "notes and bibliography"),
    occasion,
  };
});

/** Each crux of the exercises once, as it stands without any choice made here. */
export function cruxesOf(list: readonly PaperPart[]): DrillCrux[] {
  const cruxes = new Map<string, DrillCrux>();
  for (const { exercise: id } of list) {
    const drill = printed.value[id]?.drill;
    if (drill === undefined) continue;
    for (const crux of [...drill.elements.flatMap((element) => element.cruxes), ...drill.cruxes]) {
      if (!cruxes.has(crux.crux)) cruxes.set(crux.crux, crux);
    }
  }
  return [...cruxes.values()];
}

/** The passage where a thing on the paper has or had its words, lost ones too; null where it is not known here. */
export function placedRow(of: Kind, id: string): string | null {
  for (const { rows } of Object.values(printed.value)) {
    const marks = new Set(rows.marks?.flatMap(({ value }) => (value.of === of && value.target === id ? value.id : [])));
    for (const { value: anchor } of rows.anchors ?? []) {
      if (anchor.is === "text" && marks.has(anchor.mark)) return anchor.passage;
    }
  }
  const reading = of === "readings" ? readingIn(id) : undefined;
  return reading === undefined ? null : placedRow("cruxes", reading.crux);
}

/** Of the exercises on the paper. */
function readingIn(id: string): RecordOf<"readings"> | undefined {
  const all = Object.values(printed.value).flatMap(({ rows }) => rows.readings ?? []);
  return all.find(({ value }) => value.id === id)?.value;
}

/** Fetches what can be chosen of an exercise. One that is gone is dropped from what was remembered. */
export async function loadPrinted(id: string): Promise<void> {
  const answer = await ask<Bundle>(`/api/exercises/${id}`);
  if (!answer.ok) {
    if (answer.error.code === "row_unknown" && id !== exercise.value) takePart(id);
    else unprinted.value = answer.error;
    return;
  }
  const { rows } = answer.value;
  const variants = (rows.variants ?? []).map(({ value }) => value).sort(compareRanked);
  unprinted.value = null;
  printed.value = { ...printed.value, [id]: { drill: compileDrill(rows, id), variants, rows } };
}
