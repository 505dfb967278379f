/** server/commands/drill.ts - the drill of an exercise as drill.json or as the page, the same bytes as from the window.
 *  May import: server/publish, siblings. */
import { readDrillOptions } from "../publish/drill-options.ts";
import { drillJson, drillPage } from "../publish/publish-drill.ts";
import { type Command, MISUSED, tellRefusal } from "./command.ts";
import { findExercise } from "./find-row.ts";
import { writeOut } from "./write-out.ts";

export const drill: Command = {
  name: "drill",
  usage: "EXERCISE [--json | --page] [--out FILE] [--choice CRUX:READING,…] [--way mounted|“on foot”] [--variant ID]",
  says: "Gives the drill of an exercise (by id, title or label) as drill.json, or as the page to print.",
  options: {
    json: { type: "boolean", says: "drill.json, the exchange format; this is the default" },
    page: { type: "boolean", says: "the page to print, one HTML file" },
    out: { type: "string", says: "the file to write; without it the drill goes to the terminal" },
    choice: { type: "string", says: "readings to take, as ids: CRUX:READING,CRUX:READING" },
    way: { type: "string", says: "mounted, or “on foot”" },
    variant: { type: "string", says: "the id of a version of the day" },
  },
  words: [1, 1],
  store: "there",
  run: (call) => {
    const { store, words, options, error } = call;
    if (options.json === true && options.page === true) {
      error("Give --json or --page, not both.");
      return MISUSED;
    }
    const exercise = findExercise(store, words[0] ?? "");
    if (!exercise.ok) return tellRefusal(call, exercise.refusal);
    const { choice, way, variant } = options;
    const asked = readDrillOptions({ ...(choice && { choice }), ...(way && { way }), ...(variant && { variant }) });
    if (!asked.ok) return tellRefusal(call, asked.refusal);
    const make = options.page === true ? drillPage : drillJson;
    const made = make(store, exercise.value.id, asked.value);
    if (!made.ok) return tellRefusal(call, made.refusal);
    return writeOut(call, made.value, `“${exercise.value.title}”`);
  },
};
