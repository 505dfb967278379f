/** server/commands/readings.ts - which readings of an exercise hold together: the count that the window shows, in words or JSON.
 *  May import: shared/ride, server/publish, siblings. */
import { answerDecide, type DecideAsk, exercisePuzzle, whyNot } from "../../shared/ride/puzzle/index.ts";
import { readDrillOptions } from "../publish/drill-options.ts";
import { rowsForDrill } from "../publish/publish-drill.ts";
import { type Command, DONE, tellRefusal } from "./command.ts";
import { findExercise } from "./find-row.ts";
import { readingsInWords } from "./readings-in-words.ts";

export const readings: Command = {
  name: "readings",
  usage: "EXERCISE [--json] [--as-adopted] [--choice CRUX:READING,…] [--way mounted|“on foot”] [--variant ID]",
  says: "Counts how many ways to read an exercise (by id, title or label) hold together, and says why none does.",
  options: {
    json: { type: "boolean", says: "the whole answer as JSON, as the window gets it" },
    "as-adopted": { type: "boolean", says: "only with the readings that are adopted without a condition" },
    choice: { type: "string", says: "only with these readings, as ids: CRUX:READING,CRUX:READING" },
    way: { type: "string", says: "mounted, or “on foot”" },
    variant: { type: "string", says: "the id of a version of the day" },
  },
  words: [1, 1],
  store: "there",
  run: (call) => {
    const { store, words, options, out } = call;
    const exercise = findExercise(store, words[0] ?? "");
    if (!exercise.ok) return tellRefusal(call, exercise.refusal);
    const { choice, way, variant } = options;
    const asked = readDrillOptions({ ...(choice && { choice }), ...(way && { way }), ...(variant && { variant }) });
    if (!asked.ok) return tellRefusal(call, asked.refusal);
    const rows = rowsForDrill(store, exercise.value.id, asked.value);
    if (!rows.ok) return tellRefusal(call, rows.refusal);
    const weighed = exercisePuzzle(rows.value, [exercise.value.id], {
      variant: asked.value.variant,
      ...(asked.value.way && { way: asked.value.way }),
    });
    const ask: DecideAsk = { picks: asked.value.choice, asAdopted: options["as-adopted"] === true, without: [] };
    const answer = answerDecide(weighed, ask);
    const why = answer.holdingUpper === "0" ? whyNot(weighed, ask, null) : null;
    if (options.json === true) out(JSON.stringify({ exercise: exercise.value.id, ...answer, why }, null, 2));
    else for (const line of readingsInWords(exercise.value.title, weighed, answer, why)) out(line);
    return DONE;
  },
};
