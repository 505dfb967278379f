/** server/commands/drill.ts - the drill of an exercise as drill.json, the same bytes as from the window.
 *  May import: server/publish, siblings. */
import { readDrillOptions } from "../publish/drill-options.ts";
import { drillJson } from "../publish/publish-drill.ts";
import { type Command, tellRefusal } from "./command.ts";
import { findExercise } from "./find-row.ts";
import { writeOut } from "./write-out.ts";

export const drill: Command = {
  name: "drill",
  usage: "EXERCISE [--out FILE] [--choice CRUX:READING,…] [--way mounted|“on foot”] [--variant ID]",
  says: "Gives the drill of an exercise (by id, title or label) as drill.json. See `paper` for what is printed.",
  options: {
    out: { type: "string", says: "the file to write; without it the drill goes to the terminal" },
    choice: { type: "string", says: "readings to take, as ids: CRUX:READING,CRUX:READING" },
    way: { type: "string", says: "mounted, or “on foot”" },
    variant: { type: "string", says: "the id of a version of the day" },
  },
  words: [1, 1],
  store: "there",
  run: (call) => {
    const { store, words, options } = call;
    const exercise = findExercise(store, words[0] ?? "");
    if (!exercise.ok) return tellRefusal(call, exercise.refusal);
    const { choice, way, variant } = options;
    const asked = readDrillOptions({ ...(choice && { choice }), ...(way && { way }), ...(variant && { variant }) });
    if (!asked.ok) return tellRefusal(call, asked.refusal);
    const made = drillJson(store, exercise.value.id, asked.value);
    if (!made.ok) return tellRefusal(call, made.refusal);
    return writeOut(call, made.value, `“${exercise.value.title}”`);
  },
};
