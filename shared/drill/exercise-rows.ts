/** shared/drill/exercise-rows.ts - the rows of a bundle laid out for looking up, and for compiling one exercise.
 *  May import: schema types, shared/rank. Every list is in an order of its own, never in the order rows came in. */
import type { Crux, Reading } from "../../schema/crux.ts";
import type { Citation } from "../../schema/drill.ts";
import type { Action, Element, Standing } from "../../schema/exercise.ts";
import type { Anchor, Mark, Markable, TextAnchor } from "../../schema/mark.ts";
import type { Kind, RecordOf, Rows } from "../../schema/record.ts";
import type { Exercise, Layer, Passage, PassageText, Revision, Work } from "../../schema/work.ts";
import { compareCodeUnits, compareRanked } from "../rank.ts";

/** A text as it is read now, with the layer and revision it belongs to. */
export interface CurrentText {
  text: PassageText;
  layer: Layer;
  revision: Revision;
}

/** Words of the text with the place they sort by. */
export interface PlacedCitation {
  citation: Citation;
  /** Rank and id of the passage, rank and id of the layer; then the offset decides. */
  place: readonly string[];
  /** The same for the same words. */
  key: string;
}

/** What the rows of a work are looked up by, whichever exercise they are looked at for. */
export interface WorkRows {
  work: Work;
  layers: Layer[];
  newestRevision: (layer: string) => Revision | null;
  /** The row of this kind and id; undefined when it is not among the rows. */
  find: <K extends Kind>(kind: K, id: string) => RecordOf<K> | undefined;
  all: <K extends Kind>(kind: K) => RecordOf<K>[];
  actionsOf: (owner: string) => Action[];
  cruxes: ReadonlyMap<string, Crux>;
  readingsOf: (crux: string) => Reading[];
  /** Marks on a thing that are its words (evidence for and against is left out). */
  marksOf: (of: Markable, target: string) => Mark[];
  anchorsOf: (mark: string) => Anchor[];
  /** Anchors in the words of a passage, in any text of it, that are not lost. */
  anchorsIn: (passage: string) => TextAnchor[];
  /** The words of marks that were asked for already (citations.ts): one mark is cited by many things, in every ride anew. */
  placed: Map<string, readonly PlacedCitation[]>;
  /** The text with this id where it is the one that is read now, else null. */
  currentText: (id: string) => CurrentText | null;
}

export interface ExerciseRows extends WorkRows {
  exercise: Exercise;
  /** Passages of the exercise. */
  passages: Passage[];
  elements: Element[];
  /** Instructions of the work first, then those of the exercise. */
  standings: Standing[];
}

/** `ofWork`: the rows of its work laid out already, where several exercises of one are wanted. Throws RangeError when the
 *  exercise or its work is not among the rows. */
export function exerciseRows(rows: Rows, exerciseId: string, ofWork?: WorkRows): ExerciseRows {
  const exercise = rows.exercises?.find(({ value }) => value.id === exerciseId)?.value;
  if (!exercise) throw new RangeError(`The exercise ${exerciseId} is not among the rows that were given.`);
  const laid = ofWork?.work.id === exercise.work ? ofWork : workRows(rows, exercise.work);
  const { work, all } = laid;
  const standings = all("standings").filter(
    (row) => row.work === work.id && (row.exercise === null || row.exercise === exercise.id),
  );
  return {
    ...laid,
    exercise,
    passages: all("passages")
      .filter((row) => row.exercise === exercise.id)
      .sort(compareRanked),
    elements: all("elements")
      .filter((row) => row.exercise === exercise.id)
      .sort(compareRanked),
    standings: [
      ...standings.filter((row) => row.exercise === null).sort(compareRanked),
      ...standings.filter((row) => row.exercise !== null).sort(compareRanked),
    ],
  };
}

/** Throws RangeError when the work is not among the rows. */
export function workRows(rows: Rows, workId: string): WorkRows {
  const tables = new Map<Kind, Map<string, RecordOf<Kind>>>();
  const table = <K extends Kind>(kind: K): Map<string, RecordOf<K>> => {
    const known = tables.get(kind);
    if (known) return known as Map<string, RecordOf<K>>;
    const list = (rows[kind] ?? []) as { value: RecordOf<K> }[];
    const made = new Map(list.map((row) => [row.value.id, row.value]));
    tables.set(kind, made as Map<string, RecordOf<Kind>>);
    return made;
  };
  const sorted = new Map<Kind, RecordOf<Kind>[]>();
  // Sorted once and given as a copy each time, since callers sort it their own way.
  const all = <K extends Kind>(kind: K): RecordOf<K>[] => {
    const known = sorted.get(kind) ?? [...table(kind).values()].sort((a, b) => compareCodeUnits(a.id, b.id));
    sorted.set(kind, known as RecordOf<Kind>[]);
    return [...(known as RecordOf<K>[])];
  };
  const ranked = <T extends { rank: string; id: string }>(list: T[]): T[] => list.sort(compareRanked);

  const work = table("works").get(workId);
  if (!work) throw new RangeError(`The work ${workId} is not among the rows that were given.`);
  const layers = ranked(all("layers").filter((row) => row.work === work.id));
  const newest = new Map<string, Revision>();
  for (const revision of ranked(all("revisions"))) newest.set(revision.layer, revision);

  return {
    work,
    layers,
    newestRevision: (layer) => newest.get(layer) ?? null,
    find: (kind, id) => table(kind).get(id),
    all,
    actionsOf: grouped(ranked(all("actions")), (row) => row.owner),
    cruxes: table("cruxes"),
    readingsOf: grouped(ranked(all("readings")), (row) => row.crux),
    marksOf: (() => {
      const marks = grouped(
        all("marks").filter((row) => row.as === "words"),
        (row) => `${row.of} ${row.target}`,
      );
      return (of: Markable, target: string) => marks(`${of} ${target}`);
    })(),
    anchorsOf: grouped(ranked(all("anchors")), (row) => row.mark),
    anchorsIn: grouped(
      all("anchors").filter((row) => row.is === "text" && row.fate !== "lost") as TextAnchor[],
      (row) => row.passage,
    ),
    placed: new Map(),
    currentText: currentTexts(all("passageTexts"), table("revisions"), table("layers"), newest),
  };
}

function grouped<T>(list: T[], key: (item: T) => string): (key: string) => T[] {
  const groups = new Map<string, T[]>();
  for (const item of list) {
    const group = groups.get(key(item));
    if (group) group.push(item);
    else groups.set(key(item), [item]);
  }
  return (wanted) => groups.get(wanted) ?? [];
}

/** Of the texts of one passage in one layer, the highest number of the newest revision is read. */
function currentTexts(
  texts: PassageText[],
  revisions: ReadonlyMap<string, Revision>,
  layers: ReadonlyMap<string, Layer>,
  newest: ReadonlyMap<string, Revision>,
): (id: string) => CurrentText | null {
  const current = new Map<string, CurrentText>();
  for (const text of texts) {
    const revision = revisions.get(text.revision);
    const layer = revision && layers.get(revision.layer);
    if (!revision || !layer || newest.get(layer.id)?.id !== revision.id) continue;
    const place = `${text.passage} ${layer.id}`;
    const known = current.get(place);
    if (!known || known.text.number < text.number) current.set(place, { text, layer, revision });
  }
  const byId = new Map([...current.values()].map((entry) => [entry.text.id, entry]));
  return (id) => byId.get(id) ?? null;
}
