/** server/find/entries.ts - all that can be found of each group, made from the rows of the store.
 *  May import: schema types, shared/cite, shared/rank, server/store, siblings. */
import type { FindGroup } from "../../schema/find.ts";
import type { Kind, RecordOf } from "../../schema/record.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { compareCodeUnits, compareRanked } from "../../shared/rank.ts";
import { readCurrentTexts, readRows, type Store } from "../store/index.ts";
import { questionEntry, readingParts } from "./doubt-parts.ts";
import { type Entry, part } from "./entry.ts";
import { sharedEntries } from "./shared-entries.ts";
import { stepEntries } from "./step-entries.ts";

interface GroupSource {
  /** Kinds of row the entries are made of: when one of these changes, they are made anew. */
  madeOf: readonly Kind[];
  /** In the order they are listed where nothing else decides. */
  entries(store: Store): Entry[];
}

export const GROUP_SOURCES: Record<FindGroup, GroupSource> = {
  passages: { madeOf: ["works", "layers", "revisions", "passages", "passageTexts"], entries: passageEntries },
  exercises: { madeOf: ["works", "exercises"], entries: exerciseEntries },
  steps: {
    madeOf: ["exercises", "elements", "actions", "objects", "holds", "movements", "stations", "threats", "standings"],
    entries: stepEntries,
  },
  cruxes: { madeOf: ["cruxes", "readings"], entries: cruxEntries },
  questions: { madeOf: ["questions"], entries: (store) => valuesOf(store, "questions").map(questionEntry) },
  terms: { madeOf: ["terms", "senses"], entries: termEntries },
  notes: { madeOf: ["notes"], entries: noteEntries },
  "shared things": {
    madeOf: ["objects", "holds", "movements", "grounds", "stations", "threats", "standings", "exercises"],
    entries: sharedEntries,
  },
};

function valuesOf<K extends Kind>(store: Store, kind: K): RecordOf<K>[] {
  return readRows(store, kind).map(({ value }) => value);
}

function byId<T extends { id: string }>(list: readonly T[]): Map<string, T> {
  return new Map(list.map((one) => [one.id, one]));
}

/** Every text of every passage, in the order of the books; translations before originals. */
function passageEntries(store: Store): Entry[] {
  const works = byId(valuesOf(store, "works"));
  const layers = byId(valuesOf(store, "layers"));
  const passages = byId(valuesOf(store, "passages"));
  const placed = readCurrentTexts(store).flatMap((text) => {
    const passage = passages.get(text.passage);
    const layer = layers.get(text.layer);
    const work = works.get(passage?.work ?? "");
    return passage && layer && work ? [{ text, passage, layer, work }] : [];
  });
  placed.sort(
    (a, b) =>
      compareRanked(a.work, b.work) ||
      compareRanked(a.passage, b.passage) ||
      Number(a.layer.is === "original") - Number(b.layer.is === "original") ||
      compareRanked(a.layer, b.layer),
  );
  return placed.map(({ text, passage, layer, work }) => {
    const [first = "", ...others] = passage.references.map((reference) => formatReference(reference));
    return {
      kind: "passages",
      id: passage.id,
      work: work.id,
      exercise: passage.exercise,
      title: first,
      parts: [
        { label: layer.title, text: text.text, language: layer.language },
        ...part("cited as well by", others.join("; ")),
      ],
      place: { is: "text", passage: passage.id, text: text.id },
    };
  });
}

function exerciseEntries(store: Store): Entry[] {
  const works = byId(valuesOf(store, "works"));
  const ranked = valuesOf(store, "exercises").flatMap((exercise) => {
    const work = works.get(exercise.work);
    return work ? [{ exercise, work }] : [];
  });
  ranked.sort((a, b) => compareRanked(a.work, b.work) || compareRanked(a.exercise, b.exercise));
  return ranked.map(({ exercise }) => ({
    kind: "exercises",
    id: exercise.id,
    work: exercise.work,
    exercise: exercise.id,
    title: [exercise.label, exercise.title].filter(Boolean).join(" "),
    parts: part("note", exercise.note),
    place: { is: "beginning" },
  }));
}

function cruxEntries(store: Store): Entry[] {
  const readings = valuesOf(store, "readings").sort(compareRanked);
  return valuesOf(store, "cruxes")
    .sort((a, b) => compareCodeUnits(a.title, b.title))
    .map((crux) => {
      const own = readings.filter((reading) => reading.crux === crux.id);
      const shown = { kind: "cruxes", id: crux.id } as const;
      return {
        kind: "cruxes",
        id: crux.id,
        work: crux.work,
        exercise: crux.exercise,
        title: crux.title,
        parts: [
          ...part("note", crux.note),
          ...part("why it is left free", crux.leftFree?.reason ?? ""),
          ...own.flatMap(readingParts),
        ],
        place: {
          is: "tied",
          ties: [{ of: shown, shown }, ...own.map(({ id }) => ({ of: { kind: "readings", id } as const, shown }))],
          after: null,
        },
      };
    });
}

function termEntries(store: Store): Entry[] {
  const senses = valuesOf(store, "senses").sort(compareRanked);
  return valuesOf(store, "terms")
    .sort((a, b) => compareCodeUnits(a.word, b.word))
    .map((term) => {
      const own = senses.filter((sense) => sense.term === term.id);
      const things = [
        { kind: "terms", id: term.id } as const,
        ...own.map(({ id }) => ({ kind: "senses", id }) as const),
      ];
      return {
        kind: "terms",
        id: term.id,
        work: term.work,
        exercise: null,
        title: term.word,
        parts: [
          ...part("note", term.note),
          ...own.flatMap(({ title, gloss }) => part("a sense of it", [title, gloss].filter(Boolean).join(": "))),
        ],
        place: { is: "tied", ties: things.map((thing) => ({ of: thing, shown: thing })), after: null },
      };
    });
}

function noteEntries(store: Store): Entry[] {
  return valuesOf(store, "notes").map(({ id, work, text }) => {
    const shown = { kind: "notes", id } as const;
    return {
      kind: "notes",
      id,
      work,
      exercise: null,
      title: "",
      parts: part("", text),
      place: { is: "tied", ties: [{ of: shown, shown }], after: null },
    };
  });
}
