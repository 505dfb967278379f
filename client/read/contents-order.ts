/** client/read/contents-order.ts - the contents as they are listed: works, their exercises, and what stands in none.
 *  May import: schema types, shared, client/state. */
import { computed } from "@preact/signals";
import type { PassageProgress, WorkContents } from "../../schema/api.ts";
import type { Reference } from "../../schema/reference.ts";
import type { Exercise, Passage, Work } from "../../schema/work.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { compareRanked } from "../../shared/rank.ts";
import { foldForSearch } from "../../shared/text/fold.ts";
import { contents } from "../state/passage.ts";

export interface ListedPassage {
  id: string;
  reference: string;
  progress: PassageProgress;
  /** Reference and first words, folded for filtering. */
  folded: string;
}
export interface ListedGroup {
  /** Id of the exercise, or a key of its own for passages that stand in none. */
  key: string;
  label: string;
  title: string;
  isExercise: boolean;
  passages: ListedPassage[];
  /** Mean share of the words that are worked, 0 to 1. */
  worked: number;
  untreated: boolean;
  folded: string;
}
export interface ListedWork {
  work: Work;
  /** "tr. Varne · first print": the texts there are, each with its newest revision. */
  texts: string;
  groups: ListedGroup[];
}

export const listedWorks = computed<ListedWork[]>(() => (contents.value?.works ?? []).flatMap(listWork));

function listWork({ rows, passages }: WorkContents): ListedWork[] {
  const work = rows.works?.[0]?.value;
  if (work === undefined) return [];
  const byId = new Map(rows.passages?.map(({ value }) => [value.id, value]));
  const byExercise = new Map<string, ListedPassage[]>();
  const loose: { passage: Passage; listed: ListedPassage }[] = [];
  for (const progress of passages) {
    const passage = byId.get(progress.passage);
    if (passage === undefined) continue;
    const listed = listPassage(passage, progress);
    if (passage.exercise === null) loose.push({ passage, listed });
    else byExercise.set(passage.exercise, [...(byExercise.get(passage.exercise) ?? []), listed]);
  }
  const exercises = (rows.exercises ?? []).map(({ value }) => value).sort(compareRanked);
  const groups = exercises.map((exercise) => exerciseGroup(exercise, byExercise.get(exercise.id) ?? []));
  const order = new Map(passages.map(({ passage }, index) => [passage, index]));
  return [{ work, texts: textsOf(rows), groups: inBookOrder([...groups, ...looseGroups(work, loose)], order) }];
}

/** Groups by their first passage; exercises that have no passage yet stand at the end. */
function inBookOrder(groups: ListedGroup[], order: ReadonlyMap<string, number>): ListedGroup[] {
  const first = (group: ListedGroup) => order.get(group.passages[0]?.id ?? "") ?? order.size;
  return groups.sort((a, b) => first(a) - first(b));
}

function listPassage(passage: Passage, progress: PassageProgress): ListedPassage {
  const [first] = passage.references;
  const reference = first === undefined ? "" : formatReference(first);
  return { id: passage.id, reference, progress, folded: foldForSearch(`${reference} ${progress.opening}`) };
}

function exerciseGroup({ id, label, title }: Exercise, passages: ListedPassage[]): ListedGroup {
  return {
    key: id,
    label,
    title,
    isExercise: true,
    passages,
    ...share(passages),
    folded: foldForSearch(`${label} ${title}`),
  };
}

/** Passages in no exercise, gathered by the widest level, the leaf or the page, so that a long book can be folded. */
function looseGroups(work: Work, loose: readonly { passage: Passage; listed: ListedPassage }[]): ListedGroup[] {
  const groups: ListedGroup[] = [];
  let last: string | null = null;
  for (const { passage, listed } of loose) {
    const title = divisionOf(passage.references[0], work.levels);
    if (title === last) groups.at(-1)?.passages.push(listed);
    else groups.push({ ...emptyGroup(work.id, groups.length, title), passages: [listed] });
    last = title;
  }
  return groups.map((group) => ({ ...group, ...share(group.passages) }));
}

function emptyGroup(work: string, index: number, title: string): ListedGroup {
  const folded = foldForSearch(title);
  return {
    key: `${work} ${index}`,
    label: "",
    title,
    isExercise: false,
    passages: [],
    worked: 0,
    untreated: false,
    folded,
  };
}

function divisionOf(reference: Reference | undefined, levels: readonly string[]): string {
  switch (reference?.kind) {
    case "section": {
      if (reference.from.length < 2) return "Sections";
      const level = levels[0] ?? "part";
      return `${level.charAt(0).toUpperCase()}${level.slice(1)} ${reference.from[0]}`;
    }
    case "folio":
      return `Leaf ${reference.from.leaf}`;
    case "page":
      return `${reference.of} p. ${reference.from.page}`.trim();
    default:
      return "Without reference";
  }
}

function share(passages: readonly ListedPassage[]): { worked: number; untreated: boolean } {
  if (passages.length === 0) return { worked: 0, untreated: false };
  const sum = passages.reduce((total, { progress }) => total + progress.worked, 0);
  return { worked: sum / passages.length, untreated: passages.every(({ progress }) => progress.untreated) };
}

function textsOf({ layers = [], revisions = [] }: WorkContents["rows"]): string {
  const newest = (layer: string) =>
    revisions
      .map(({ value }) => value)
      .filter((revision) => revision.layer === layer)
      .sort(compareRanked)
      .at(-1)?.label;
  return layers
    .map(({ value }) => value)
    .sort(compareRanked)
    .map(({ id, title }) => [title, newest(id)].filter(Boolean).join(", "))
    .join(" · ");
}
