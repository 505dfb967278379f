/** shared/ride/rules/where-words.ts - where in the ride something is, as a colleague says it: "Step 5, from the middle of the turn".
 *  May import: schema types, types of shared/ride, siblings. Seconds from the start of the ride. */
import type { ValueOf } from "../../../schema/values.ts";
import { momentOf } from "../../ground/timed-path.ts";
import type { Ridden, RiddenStage } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import type { Breach } from "./rule.ts";

export function whereWords(ridden: Ridden, context: RideContext, breach: Breach): string {
  const stage = ridden.stages[breach.stage];
  if (stage === undefined) return "";
  const moment = breach.timed ? momentWords(ridden, stage, breach) : "";
  return [headWords(stage, context), moment].filter((part) => part !== "").join(", ");
}

/** "Step 5"; "Step 8, where step 2 is done again, mirrored". */
function headWords(stage: RiddenStage, context: RideContext): string {
  const head =
    stage.number === null ? `“${stage.title === "" ? "a step without a name" : stage.title}”` : `Step ${stage.number}`;
  if (stage.source === stage.element) return head;
  const source = context.element(stage.source);
  const what = source?.number ? `step ${source.number}` : source?.title ? `“${source.title}”` : "";
  const round = stage.round > 1 ? ` (time ${stage.round})` : "";
  return what === ""
    ? `${head}${round}`
    : `${head}${round}, where ${what} is done again${stage.mirrored ? ", mirrored" : ""}`;
}

/** The figure, and how far into it. */
function momentWords(ridden: Ridden, stage: RiddenStage, { from, lasts }: Breach): string {
  if (stage.pieces.to <= stage.pieces.from || from >= stage.to) return lasts && from >= stage.to ? "at its end" : "";
  const { index } = momentOf(ridden.timed, Math.min(from + 1e-6, stage.to));
  const what = ridden.pieces[index];
  if (what === undefined || what.figure === null) return "";
  const name = FIGURES[what.figure] ?? `the ${what.figure}`;
  const piece = ridden.timed.path.pieces[index];
  const isPart = (at: number): boolean => ridden.pieces[at]?.action === what.action && !ridden.pieces[at]?.joins;
  const { from: begins, to: ends } = ridden.stages[what.stage]?.pieces ?? { from: index, to: index + 1 };
  let [first, last] = [begins, ends - 1];
  while (first < index && !isPart(first)) first += 1;
  while (last > index && !isPart(last)) last -= 1;
  const [start = 0, end = 0] = [ridden.timed.times[first], ridden.timed.times[last + 1]];
  if (!lasts && what.figure === "along the wall" && piece?.is === "arc") return "at a corner of the wall";
  const share = end > start ? (from - start) / (end - start) : 0;
  if (share < 0.05) return lasts ? `from the beginning of ${name}` : `in ${name}`;
  if (share > 0.4 && share < 0.6) return `from the middle of ${name}`;
  if (share > 0.95) return `at the end of ${name}`;
  return `${share < 0.5 ? "early" : "late"} in ${name}`;
}

const FIGURES: Partial<Record<ValueOf<"figure">, string>> = {
  straight: "the straight line",
  "along the wall": "the way along the wall",
};
