/** server/commands/lists.ts - what the store holds, in lists: works, exercises, passages.
 *  May import: schema types, shared, server/store, siblings. One row a line, fields parted by tabs, the id last. */
import { formatReferences } from "../../shared/cite/format-reference.ts";
import { compareRanked } from "../../shared/rank.ts";
import { readContents, readRows } from "../store/index.ts";
import { type Call, type Command, DONE, tellRefusal } from "./command.ts";
import { findWork } from "./find-row.ts";

export const works: Command = {
  name: "works",
  usage: "",
  says: "Lists the works: title, author, how many exercises and passages, id.",
  options: {},
  words: [0, 0],
  store: "there",
  run: ({ store, out }) => {
    for (const { rows, passages } of readContents(store).works) {
      const work = rows.works?.[0]?.value;
      if (work === undefined) continue;
      const counted = [`${rows.exercises?.length ?? 0} exercises`, `${passages.length} passages`];
      line(out, [work.title, work.author, ...counted, work.id]);
    }
    return DONE;
  },
};

export const exercises: Command = {
  name: "exercises",
  usage: "[WORK]",
  says: "Lists the exercises, of one work or of all: label, title, work, id.",
  options: {},
  words: [0, 1],
  store: "there",
  run: (call) => {
    const { store, out, words } = call;
    const [asked] = words;
    const work = asked === undefined ? null : findWork(store, asked);
    if (work !== null && !work.ok) return tellRefusal(call, work.refusal);
    const titles = new Map(readRows(store, "works").map(({ value }) => [value.id, value.title]));
    const listed = readRows(store, "exercises").map(({ value }) => value);
    for (const { label, title, work: of, id } of listed.sort(compareRanked)) {
      if (work === null || work.value.id === of) line(out, [label, title, titles.get(of) ?? "", id]);
    }
    return DONE;
  },
};

export const passages: Command = {
  name: "passages",
  usage: "WORK",
  says: "Lists the passages of a work: references, how far worked, first words, id.",
  options: {},
  words: [1, 1],
  store: "there",
  run: (call: Call) => {
    const { store, out, words } = call;
    const work = findWork(store, words[0] ?? "");
    if (!work.ok) return tellRefusal(call, work.refusal);
    const contents = readContents(store).works.find(({ rows }) => rows.works?.[0]?.value.id === work.value.id);
    const references = new Map(contents?.rows.passages?.map(({ value }) => [value.id, value.references]));
    for (const { passage, opening, worked, untreated } of contents?.passages ?? []) {
      const far = untreated ? "untreated" : `${Math.round(worked * 100)} %`;
      line(out, [formatReferences(references.get(passage) ?? []), far, opening.replace(/\s+/g, " "), passage]);
    }
    return DONE;
  },
};

function line(out: Call["out"], fields: readonly string[]): void {
  out(fields.map((field) => field.replace(/[\t\n]/g, " ")).join("\t"));
}
