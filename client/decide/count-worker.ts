/** client/decide/count-worker.ts - the counting thread: it has the rows, lays an exercise out once for each change of them,
 *  and answers one thing after another. Everything about riding and counting is in shared/. */
import "../state/no-eval.ts";
import type { Stage } from "../../shared/decide/puzzle.ts";
import {
  answerDecide,
  exercisePuzzle,
  nearestToFirst,
  type WeighedExercise,
  whatNextOf,
  whyNot,
} from "../../shared/ride/puzzle/index.ts";
import { PuzzleMemory } from "../../shared/ride/puzzle/puzzle-memory.ts";
import type { CountAsk, CountValues, FromCounter, ToCounter, Weighing } from "./count-message.ts";
import { NOTHING_HELD, rowsOf, withSent } from "./rows-sent.ts";

/** Told no more often than this, in milliseconds. */
const TELL_EVERY = 100;

let held = NOTHING_HELD;
/** Exercises laid out under the rows as they are, by what was asked for. */
let weighed = new Map<string, WeighedExercise>();
/** What was ridden for earlier rows. */
const memory = new PuzzleMemory();
let running = 0;
let told = 0;

const tell = (message: FromCounter): void => postMessage(message);

addEventListener("message", ({ data }: MessageEvent<ToCounter>) => {
  const { job, rows, weighing, asked } = data;
  if (rows !== null) {
    held = withSent(held, rows);
    weighed = new Map();
  }
  running = job;
  told = performance.now();
  try {
    tell({ job, is: "done", value: answerTo(weigh(weighing), asked) });
  } catch (problem) {
    const reason = problem instanceof Error ? problem.message : String(problem);
    tell({
      job,
      is: "failed",
      sentence: `The count broke off: ${reason} Change what is picked, or load the page again.`,
    });
  }
});

function weigh(weighing: Weighing): WeighedExercise {
  const key = JSON.stringify(weighing);
  const known = weighed.get(key);
  if (known !== undefined) return known;
  const made = exercisePuzzle(rowsOf(held), weighing.exercises, { way: weighing.way, memory });
  const { puzzle } = made;
  const watched = { ...made, puzzle: { ...puzzle, stages: puzzle.stages.map(watchedStage) } };
  weighed.set(key, watched);
  return watched;
}

/** Tells how far the walk has come whenever it looks at a stage. */
function watchedStage(stage: Stage, index: number, all: readonly Stage[]): Stage {
  return {
    ...stage,
    run: (...given) => {
      const now = performance.now();
      if (now - told > TELL_EVERY) {
        told = now;
        tell({ job: running, is: "progress", stage: index + 1, of: all.length });
      }
      return stage.run(...given);
    },
  };
}

function answerTo(of: WeighedExercise, asked: CountAsk): CountValues[keyof CountValues] {
  switch (asked.do) {
    case "answer":
      tell({ job: running, is: "laid out", laid: { cruxes: of.cruxes, stages: of.stages } });
      return answerDecide(of, asked.ask);
    case "beside":
      return asked.ask.picks.flatMap(({ crux }) => {
        const picks = asked.ask.picks.filter((other) => other.crux !== crux);
        return answerDecide(of, { ...asked.ask, picks }).shares.filter((share) => share.crux === crux);
      });
    case "why":
      return whyNot(of, asked.ask, asked.target);
    case "nearest":
      return nearestToFirst(of, asked.ask);
    case "next":
      return whatNextOf(of, asked.ask, asked.questions, asked.efforts);
  }
}
