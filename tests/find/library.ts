/** tests/find/library.ts - small stores to search in: one work whose passages have the given words, and the demo. */
import type { Edit } from "../../schema/change.ts";
import { passageSchema } from "../../schema/editor.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { type Finder, finderOf } from "../../server/find/finder.ts";
import { amendPassage, type Store, writeChange } from "../../server/store/index.ts";
import { ranksBetween } from "../../shared/rank.ts";
import { accepted, create, emptyStore, NOW, request } from "../store/store-builders.ts";

export const libraryId = (number: number) => `0190f000-0000-7000-8000-${String(number).padStart(12, "0")}`;

/** Ids that every library has. */
export const WORK = libraryId(1);
export const LAYER = libraryId(2);
export const REVISION = libraryId(3);

export interface Library {
  store: Store;
  finder: Finder;
  /** Passage ids in the order of the words given. */
  passages: string[];
  /** Ids of their texts. */
  texts: string[];
  /** Writes more rows, as a change of its own. */
  write(...edits: Edit[]): void;
  /** Types `words` in the place of editor positions `from` to `to` of a passage text. */
  amend(passage: string, text: string, words: string, from: number, to: number): void;
}

/** Passages are numbered 900001, 900002 ... so that no number in their words meets a reference. */
export function libraryOf(words: readonly string[], language = ""): Library {
  const store = emptyStore();
  const ranks = ranksBetween(null, null, words.length);
  const passages = words.map((_, index) => libraryId(1000 + index));
  const texts = words.map((_, index) => libraryId(500_000 + index));
  let changes = 900_000;
  const write = (...edits: Edit[]): void => {
    changes += 1;
    accepted(writeChange(store, { ...request(0, edits), id: libraryId(changes) }, { now: NOW }));
  };
  write(
    create("works", {
      id: WORK,
      rank: "a0",
      title: "Qqqq",
      author: "",
      levels: ["section"],
      note: "",
      source: null,
      invented: true,
    }),
    create("layers", {
      id: LAYER,
      work: WORK,
      rank: "a0",
      is: "original",
      title: "Qqqq",
      by: "",
      language,
      witness: null,
      urn: "",
    }),
    create("revisions", {
      id: REVISION,
      layer: LAYER,
      rank: "a0",
      label: "1",
      received: null,
      from: "",
      attachment: null,
      note: "",
    }),
    ...words.flatMap((text, index) => [
      create("passages", {
        id: passages[index],
        work: WORK,
        exercise: null,
        rank: ranks[index],
        references: [{ kind: "section", from: [String(900_001 + index)] }],
      }),
      create("passageTexts", textRow(texts[index] ?? "", passages[index] ?? "", text)),
    ]),
  );
  const amend = (passage: string, text: string, typed: string, from: number, to: number): void => {
    changes += 1;
    const steps = [{ stepType: "replace", from, to, slice: { content: [{ type: "text", text: typed }] } }];
    const amendment = { id: libraryId(changes), who: "Ada", why: "revised", sitting: null, text, steps };
    accepted(amendPassage(store, passage, amendment, { now: NOW }));
  };
  return { store, finder: finderOf(store), passages, texts, write, amend };
}

function textRow(id: string, passage: string, text: string): Record<string, unknown> {
  const blocks = text
    .split("\n")
    .map((line) => passageSchema.node("paragraph", null, line === "" ? [] : [passageSchema.text(line)]));
  return {
    id,
    passage,
    revision: REVISION,
    number: 1,
    doc: passageSchema.node("doc", null, blocks).toJSON(),
    text,
    steps: [],
  };
}

export function demoLibrary(): { store: Store; finder: Finder } {
  const store = emptyStore();
  loadDemo(store, NOW);
  return { store, finder: finderOf(store) };
}
