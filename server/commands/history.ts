/** server/commands/history.ts - the history, taking a change back, and the proof that the log gives the rows.
 *  May import: Node's own modules, schema types, uuidv7, server/store, siblings. */
import { isDeepStrictEqual } from "node:util";
import { uuidv7 } from "uuidv7";
import type { HistoryEntry } from "../../schema/api.ts";
import { KINDS } from "../../schema/record.ts";
import { allRows, readHistory, replay as replayLog, undoChange } from "../store/index.ts";
import { type Command, DONE, MISUSED, REFUSED, tellRefusal } from "./command.ts";
import { findWork } from "./find-row.ts";

const SHOWN = 50;

export const history: Command = {
  name: "history",
  usage: "[--work WORK] [--before NUMBER]",
  says: `Lists the last ${SHOWN} changes, newest first: number, when, who, why, what was touched, id.`,
  options: {
    work: { type: "string", says: "only changes that touched this work" },
    before: { type: "string", says: "only changes before this number" },
  },
  words: [0, 0],
  store: "there",
  run: (call) => {
    const { store, out, error, options } = call;
    const work = typeof options.work === "string" ? findWork(store, options.work) : null;
    if (work !== null && !work.ok) return tellRefusal(call, work.refusal);
    const before = options.before === undefined ? null : Number(options.before);
    if (before !== null && !Number.isInteger(before)) {
      error(`Expected the number of a change; got --before ${options.before}.`);
      return MISUSED;
    }
    const query = { ...(work && { work: work.value.id }), ...(before && { before }), limit: SHOWN };
    for (const entry of readHistory(store, query)) out(entryLine(entry));
    return DONE;
  },
};

function entryLine({ number, when, who, why, undone, touched, id }: HistoryEntry): string {
  const counted = touched.map(({ kind, made, changed, removed }) => {
    const signs = [made && `+${made}`, changed && `~${changed}`, removed && `-${removed}`].filter(Boolean);
    return `${kind} ${signs.join(" ")}`;
  });
  return [number, when, who, why.replace(/\s+/g, " "), undone ? "taken back" : "", counted.join(", "), id].join("\t");
}

export const undo: Command = {
  name: "undo",
  usage: "CHANGE [--who NAME] [--why WORDS]",
  says: "Takes a change back (by number or id) by a new change; an import is taken back whole.",
  options: {
    who: { type: "string", says: "who takes it back" },
    why: { type: "string", says: "why" },
  },
  words: [1, 1],
  store: "there",
  run: (call) => {
    const { store, words, options, now, out } = call;
    const asked = words[0] ?? "";
    const number = /^\d+$/.test(asked) ? Number(asked) : null;
    const [newest] = number === null ? [] : readHistory(store, { before: number + 1, limit: 1 });
    const undoes = newest?.number === number && newest ? newest.id : asked;
    const undoing = {
      id: uuidv7(),
      who: typeof options.who === "string" ? options.who : "command line",
      why: typeof options.why === "string" ? options.why : `Taken back: change ${asked}`,
      undoes,
    };
    const written = undoChange(store, undoing, { now });
    if (!written.ok) return tellRefusal(call, written.refusal);
    out(`Taken back by change ${written.value.change}.`);
    return DONE;
  },
};

export const replay: Command = {
  name: "replay",
  usage: "",
  says: "Proves that the log of changes, replayed from empty, gives exactly the rows of the store.",
  options: {},
  words: [0, 0],
  store: "there",
  run: ({ store, out, error }) => {
    const [rows, told] = [allRows(store), replayLog(store)];
    const wrong = KINDS.filter((kind) => !isDeepStrictEqual(rows[kind] ?? [], told[kind] ?? []));
    if (wrong.length > 0) {
      error(`The log does not give the rows of: ${wrong.join(", ")}. Put back the last good copy of the store.`);
      return REFUSED;
    }
    const count = KINDS.reduce((sum, kind) => sum + (rows[kind]?.length ?? 0), 0);
    out(
      `The log of ${readHistory(store, { limit: 1 })[0]?.number ?? 0} changes gives exactly the ${count} rows of the store.`,
    );
    return DONE;
  },
};
