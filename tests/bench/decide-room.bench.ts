/** Decide room: lay the demo's exercises out as puzzles and answer, from nothing and after an edit, as the counting thread
 *  does. An edit changes one value of one act; what was ridden before is kept, as there. */
import type { Rows } from "../../schema/record.ts";
import { countByBruteForce } from "../../shared/decide/brute-force.ts";
import {
  answerDecide,
  type DecideAsk,
  exercisePuzzle,
  PuzzleMemory,
  whatNextOf,
  whyNot,
} from "../../shared/ride/puzzle/index.ts";
import { demoRows } from "../ride/rides.ts";
import type { Report } from "./harness.ts";

const ASK: DecideAsk = { picks: [], asAdopted: false, without: [] };
const EFFORTS = { ask: 1, picture: 1, foot: 3, mounted: 6 };

/** The rows with another size for the first figure that says one in an exercise, so that everything after it moves. */
function edited(rows: Rows, exercise: string, centimetres: number): Rows {
  const own = new Set(rows.elements?.filter(({ value }) => value.exercise === exercise).map(({ value }) => value.id));
  const sized = rows.actions?.find(
    ({ value }) => own.has(value.owner) && value.act.verb === "ride" && value.act.slots.size?.is === "said",
  );
  const first = sized ?? rows.actions?.find(({ value }) => own.has(value.owner) && value.act.verb === "ride");
  const actions = rows.actions?.map((row) => {
    if (row !== first || row.value.act.verb !== "ride") return row;
    const value = { is: "exact" as const, of: 12 + centimetres / 100 };
    const size = { is: "said" as const, value, warrant: "supplied" as const, basis: [] };
    const act = { ...row.value.act, slots: { ...row.value.act.slots, size } };
    return { ...row, version: row.version + 1, value: { ...row.value, act } };
  });
  return { ...rows, ...(actions && { actions }) };
}

export default async function decideRoomBench(report: Report): Promise<void> {
  const { rows, exercises } = demoRows();
  const all = Object.values(exercises);
  for (const id of all) {
    const { puzzle } = exercisePuzzle(rows, [id]);
    const plain = countByBruteForce(puzzle);
    const answer = answerDecide(exercisePuzzle(rows, [id]), ASK);
    if (answer.holding !== String(plain.holding)) throw new Error(`The count of ${id} is wrong.`);
  }
  let edits = 0;
  for (const [name, id] of Object.entries(exercises)) {
    const memory = new PuzzleMemory();
    const { holding, all: ways } = answerDecide(exercisePuzzle(rows, [id], { memory }), ASK);
    const note = `${holding} of ${ways} hold`;
    await report.bench(`decide room: lay out and answer “${name}” from nothing`, { runs: 10, warmUp: 4, note }, () =>
      answerDecide(exercisePuzzle(rows, [id]), ASK),
    );
    await report.bench(`decide room: edit to answer, “${name}” (target 100 ms)`, { runs: 15, warmUp: 3 }, () => {
      edits += 1;
      answerDecide(exercisePuzzle(edited(rows, id, edits), [id], { memory }), ASK);
    });
  }
  const memory = new PuzzleMemory();
  const whole = exercisePuzzle(rows, all, { memory });
  const { holding, all: ways } = answerDecide(whole, ASK);
  const note = `${whole.puzzle.cruxes.length} cruxes, ${holding} of ${ways} hold`;
  await report.bench("decide room: lay out and answer the whole demo from nothing", { runs: 8, warmUp: 2, note }, () =>
    answerDecide(exercisePuzzle(rows, all), ASK),
  );
  await report.bench(
    "decide room: edit to answer, the whole demo (target 100 ms)",
    { runs: 20, warmUp: 4, note },
    () => {
      edits += 1;
      const id = all[edits % all.length] ?? "";
      answerDecide(exercisePuzzle(edited(rows, id, edits), all, { memory }), ASK);
    },
  );
  const pick = whole.puzzle.cruxes.map(({ id, readings }) => ({ crux: id, reading: readings[0] ?? "" }));
  await report.bench("decide room: pick a reading, the whole demo", { runs: 20, warmUp: 4, note }, () => {
    edits += 1;
    answerDecide(whole, { ...ASK, picks: pick.slice(edits % pick.length, (edits % pick.length) + 1) });
  });
  const questions = (rows.questions ?? []).map(({ value }) => value);
  await report.bench("decide room: what next, the whole demo", { runs: 8, warmUp: 2, note }, () =>
    whatNextOf(whole, ASK, questions, EFFORTS),
  );
  const dead = answerDecide(whole, ASK).shares.find(({ verdict }) => verdict === "dead");
  if (dead !== undefined)
    await report.bench("decide room: why a reading is dead, the whole demo", { runs: 5, warmUp: 1 }, () =>
      whyNot(whole, ASK, dead),
    );
}
