/** server/commands/letter.ts - the open questions to one person as a letter, the same bytes as from the window.
 *  May import: server/publish, siblings. */
import { publishLetter, readLetterAsk } from "../publish/publish-letter.ts";
import { type Command, tellRefusal } from "./command.ts";
import { findWork } from "./find-row.ts";
import { writeOut } from "./write-out.ts";

export const letter: Command = {
  name: "letter",
  usage: "WORK ADDRESSEE [--as txt|docx] [--out FILE]",
  says: "Writes a letter with all open questions of a work (by id or title) to one person.",
  options: {
    as: { type: "string", says: "txt, which is the default, or docx" },
    out: { type: "string", says: "the file to write; without it the letter goes to the terminal" },
  },
  words: [2, 2],
  store: "there",
  run: async (call) => {
    const { store, words, options } = call;
    const work = findWork(store, words[0] ?? "");
    if (!work.ok) return tellRefusal(call, work.refusal);
    const asked = readLetterAsk({ to: words[1] ?? "", ...(options.as !== undefined && { as: options.as }) });
    if (!asked.ok) return tellRefusal(call, asked.refusal);
    const made = await publishLetter(store, work.value.id, asked.value);
    if (!made.ok) return tellRefusal(call, made.refusal);
    return writeOut(call, made.value, `The letter to ${asked.value.to}`);
  },
};
