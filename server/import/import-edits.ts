/** server/import/import-edits.ts - the rows of a text that is brought in: work, layer, revision, exercises, passages, words.
 *  May import: schema types, shared, siblings. Pure: ids and the day come in. */
import type { ImportOptions } from "../../schema/api.ts";
import type { Edit } from "../../schema/change.ts";
import type { ImportedPassage, ImportedText } from "../../schema/imported.ts";
import type { Kind, RecordOf, Row } from "../../schema/record.ts";
import type { Reference } from "../../schema/reference.ts";
import type { Passage, Work } from "../../schema/work.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { compareRanked, rankBetween } from "../../shared/rank.ts";
import { matchPassages, type Placed } from "./match-passages.ts";

/** What the work has already; all empty for a new one. */
export interface WorkNow {
  /** null: the work is made by this import. */
  work: Work | null;
  works: readonly Work[];
  layers: readonly RecordOf<"layers">[];
  exercises: readonly RecordOf<"exercises">[];
  passages: readonly Row<"passages">[];
}

export interface ImportMade {
  edits: Edit[];
  work: string;
  layer: string;
  /** In the order of the text. */
  passages: { id: string; matched: boolean; reference: string }[];
}

interface Made {
  text: ImportedText;
  passages: readonly ImportedPassage[];
  options: ImportOptions;
  now: WorkNow;
  attachment: string;
  /** 2026-05-04. */
  day: string;
  newId: () => string;
}

const MOST_REFERENCES = 40;

export function importEdits({ text, passages, options, now, attachment, day, newId }: Made): ImportMade {
  const edits: Edit[] = [];
  const add = <K extends Kind>(kind: K, value: RecordOf<K>): string => {
    edits.push({ do: "create", kind, value: value as Extract<Edit, { do: "create" }>["value"] });
    return value.id;
  };
  const work = now.work?.id ?? add("works", newWork(text, options, now, newId()));
  const layer = add("layers", {
    id: newId(),
    work,
    rank: rankBetween(lastRank(now.layers), null),
    ...options.layer,
    witness: null,
  });
  const revision = add("revisions", {
    id: newId(),
    layer,
    rank: rankBetween(null, null),
    label: "as it came in",
    received: day,
    from: options.name,
    attachment,
    note: selectionNote(options),
  });

  const rows = now.passages.map(({ value }) => value).sort(compareRanked);
  const placed = matchPassages(passages, rows);
  const exerciseOf = exercisesFor(placed, { text, options, now, work, add, newId });
  const made = placed.map((place, index) => {
    const { imported, matched, rank } = place;
    const exercise = exerciseOf(index);
    if (matched !== null) edits.push(...settingOf(now, matched, imported, exercise));
    const id =
      matched?.id ??
      add("passages", { id: newId(), work, exercise, rank, references: imported.references.slice(0, MOST_REFERENCES) });
    const { doc, text: words } = imported;
    add("passageTexts", { id: newId(), passage: id, revision, number: 1, doc, text: words, steps: [] });
    const [first] = imported.references;
    return { id, matched: matched !== null, reference: first === undefined ? "" : formatReference(first) };
  });
  return { edits, work, layer, passages: made };
}

function newWork(text: ImportedText, { work }: ImportOptions, { works }: WorkNow, id: string): Work {
  if (work.is !== "new") throw new RangeError(`The work ${work.id} is there and must be given.`);
  return {
    id,
    rank: rankBetween(lastRank(works), null),
    title: work.title,
    author: work.author,
    levels: text.levels.slice(0, 6).map((level) => level.slice(0, 60)),
    note: "",
    source: null,
    invented: false,
  };
}

/** References the text brings that the passage has not yet, and the exercise where it stood in none. */
function settingOf(now: WorkNow, matched: Passage, { references }: ImportedPassage, exercise: string | null): Edit[] {
  const known = new Set(matched.references.map((reference) => wholeKey(reference)));
  const added = references.filter((reference) => !known.has(wholeKey(reference)));
  const all = [...matched.references, ...added].slice(0, MOST_REFERENCES);
  const fields = {
    ...(all.length > matched.references.length && { references: all }),
    ...(matched.exercise === null && exercise !== null && { exercise }),
  };
  const row = now.passages.find(({ value }) => value.id === matched.id);
  if (row === undefined || Object.keys(fields).length === 0) return [];
  return [{ do: "set", kind: "passages", id: matched.id, base: row.version, fields }];
}

function wholeKey(reference: Reference): string {
  return `${reference.kind} ${formatReference(reference)}`;
}

interface Exercising {
  text: ImportedText;
  options: ImportOptions;
  now: WorkNow;
  work: string;
  add: (kind: "exercises", value: RecordOf<"exercises">) => string;
  newId: () => string;
}

/** The exercise of each passage, by its index. A division that partly stands in an exercise already goes on in it. */
function exercisesFor(placed: readonly Placed[], making: Exercising): (index: number) => string | null {
  const { options, now, text, work, add, newId } = making;
  let rank = lastRank(now.exercises);
  const make = (label: string, title: string): string => {
    rank = rankBetween(rank, null);
    return add("exercises", { id: newId(), work, rank, label, title, note: "", ground: null });
  };
  const stray = placed.filter(({ matched }) => matched === null || matched.exercise === null);
  if (options.exercises === "none" || stray.length === 0) return () => null;
  if (options.exercises === "one") {
    const id = make("", options.title.trim() || text.title || options.name);
    return () => id;
  }
  const byDivision = new Map<string, string>();
  for (const { imported, matched } of placed) {
    const key = divisionKey(imported);
    if (key !== null && matched?.exercise && !byDivision.has(key)) byDivision.set(key, matched.exercise);
  }
  for (const { imported } of stray) {
    const key = divisionKey(imported);
    if (key === null || byDivision.has(key)) continue;
    const { label = "", title = "" } = imported.division ?? {};
    byDivision.set(key, make(label.length > 40 ? "" : label, divisionTitle(label, title, text)));
  }
  return (index) => byDivision.get(divisionKey(placed[index]?.imported) ?? "") ?? null;
}

function divisionKey(passage: ImportedPassage | undefined): string | null {
  return passage?.division ? JSON.stringify([passage.division.label, passage.division.title]) : null;
}

/** "Of the volte"; "Chapter 7" where the division has no title of its own. */
function divisionTitle(label: string, title: string, { levels }: ImportedText): string {
  const words = title.trim().replace(/\s+/g, " ").slice(0, 500);
  if (words !== "") return words;
  const level = levels[0] ?? "part";
  return `${level.charAt(0).toUpperCase()}${level.slice(1)} ${label}`.trim();
}

function selectionNote({ from, to }: ImportOptions): string {
  if (from.trim() === "" && to.trim() === "") return "";
  return `Taken from the file: ${[from.trim() || "the beginning", to.trim()].filter((part) => part !== "").join(" to ")}.`;
}

function lastRank(rows: readonly { rank: string; id: string }[]): string | null {
  return [...rows].sort(compareRanked).at(-1)?.rank ?? null;
}
