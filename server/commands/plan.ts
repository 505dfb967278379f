/** server/commands/plan.ts - the plan of an exercise as a drawing or a picture, the same bytes as from the window.
 *  May import: server/publish, siblings. */
import { readPlanOptions } from "../publish/figures/plan-options.ts";
import { PLAN_FORMS, publishPlan } from "../publish/figures/publish-plan.ts";
import { type Command, MISUSED, tellRefusal } from "./command.ts";
import { findExercise } from "./find-row.ts";
import { writeOut } from "./write-out.ts";

export const plan: Command = {
  name: "plan",
  usage: "EXERCISE [--as svg|png] [--steps 2-5] [--width MILLIMETRES] [--at SECONDS] [--out FILE] …",
  says: "Draws the ground with the line of an exercise (by id, title or label), to scale.",
  options: {
    as: { type: "string", says: "svg, which is the default, or png" },
    steps: { type: "string", says: "the steps to draw: one number, or first and last with a hyphen" },
    width: { type: "string", says: "how wide it is, in millimetres" },
    at: { type: "string", says: "draws the rider as at this second of the ride" },
    out: { type: "string", says: "the file to write; without it the plan goes to the terminal" },
    choice: { type: "string", says: "readings to take, as ids: CRUX:READING,CRUX:READING" },
    way: { type: "string", says: "mounted, or “on foot”" },
    variant: { type: "string", says: "the id of a version of the day" },
  },
  words: [1, 1],
  store: "there",
  run: (call) => {
    const { store, words, options, error } = call;
    const { as = "svg", out: _, file: __, ...query } = options;
    const form = PLAN_FORMS.find((known) => known === as);
    if (form === undefined) {
      error(`A plan is written as ${PLAN_FORMS.join(" or ")}, not as “${as}”.`);
      return MISUSED;
    }
    const exercise = findExercise(store, words[0] ?? "");
    if (!exercise.ok) return tellRefusal(call, exercise.refusal);
    const asked = readPlanOptions(query);
    if (!asked.ok) return tellRefusal(call, asked.refusal);
    const made = publishPlan(store, exercise.value.id, asked.value, form);
    if (!made.ok) return tellRefusal(call, made.refusal);
    return writeOut(call, made.value, `The plan of “${exercise.value.title}”`);
  },
};
