/** shared/ride/puzzle/open-questions.ts - what can be settled: open questions and open cruxes, with their possible answers.
 *  May import: schema types, shared/decide, shared/drill, siblings. Keeps rule P13 (shared/ride/puzzle/RULES.md). */
import type { Question } from "../../../schema/crux.ts";
import type { Candidate, Puzzle, ReadIn } from "../../decide/index.ts";
import type { ExerciseRows } from "../../drill/exercise-rows.ts";
import type { WeighedExercise } from "./weighed.ts";

/** How hard each way of settling something is, from 1; the user sets it. */
export interface Efforts {
  ask: number;
  picture: number;
  foot: number;
  mounted: number;
}

/** How something is to be settled. */
export type Means = keyof Efforts;

/** Something that can be settled, as it is told. */
export interface Open {
  candidate: Candidate;
  kind: "question" | "crux";
  crux: string | null;
  means: Means;
  /** Whom to ask; "" for nobody in particular. */
  to: string;
  /** The question, or the title of the crux. */
  title: string;
}

/** Null for a question that is closed, or none of whose answers leaves readings that are counted. */
export function openQuestion(
  weighed: WeighedExercise,
  puzzle: Puzzle,
  { id, crux, text, to, by, effort, answers, state }: Question,
  efforts: Efforts,
): Open | null {
  if (state.is !== "open") return null;
  const told =
    answers.length > 0
      ? answers.map(({ label, allows }) => ({ label, allows: countedAllows(weighed, allows) }))
      : crux === null
        ? []
        : readingAnswers(weighed, puzzle, crux);
  const names = new Set(told.flatMap(({ allows }) => allows.map((one) => one.crux)));
  if (names.size === 0) return null;
  const means: Means = by === "trial" ? (weighed.ridden.way === "on foot" ? "foot" : "mounted") : "ask";
  // Weighed from 1 to 5 by whoever wrote it down; 3, and one that is not weighed, is as hard as its means.
  const candidate = { id, answers: told, effort: Math.max(1, (efforts[means] * (effort ?? 3)) / 3) };
  return { candidate, kind: "question", crux, means, to: by === "trial" ? "" : to, title: text };
}

export function openCrux(
  weighed: WeighedExercise,
  rows: ExerciseRows,
  puzzle: Puzzle,
  id: string,
  efforts: Efforts,
): Open {
  const means = meansFor(rows, id);
  const candidate = { id, answers: readingAnswers(weighed, puzzle, id), effort: Math.max(1, efforts[means]) };
  return { candidate, kind: "crux", crux: id, means, to: "", title: rows.cruxes.get(id)?.title ?? "" };
}

/** What can be seen is looked at, what the text is silent on or says twice is tried, for the rest somebody is asked. */
function meansFor(rows: ExerciseRows, id: string): Means {
  const evidence = rows.readingsOf(id).flatMap((reading) => reading.evidence);
  const is = rows.cruxes.get(id)?.is;
  if (is === "witnesses differ" || evidence.some((basis) => basis.is === "picture")) return "picture";
  if (evidence.some((basis) => basis.is === "trial")) return "mounted";
  return is === "silent" || is === "contradictory" ? "foot" : "ask";
}

/** Each class of readings that is not ruled out, by the titles of its members. */
function readingAnswers({ classes, cruxes }: WeighedExercise, puzzle: Puzzle, id: string): Candidate["answers"] {
  const crux = puzzle.cruxes.find((one) => one.id === id);
  const titles = new Map(cruxes.find((one) => one.id === id)?.readings.map((one) => [one.id, one.title]));
  return (crux?.readings ?? [])
    .filter((reading) => !crux?.ruledOut.includes(reading))
    .map((reading) => {
      const members = classes.get(id)?.find((one) => one.reading === reading)?.members ?? [reading];
      const label = members.map((member) => titles.get(member) ?? "").join(" or ");
      return { label, allows: [{ crux: id, readings: [reading] }] };
    });
}

/** Conditions on what is counted; several on one crux allow what all of them do. */
function countedAllows({ classes }: WeighedExercise, allows: readonly ReadIn[]): ReadIn[] {
  const kept = new Map<string, string[]>();
  for (const { crux, readings } of allows) {
    const list = classes.get(crux);
    if (list === undefined) continue;
    const allowed = list
      .filter(({ members }) => members.some((one) => readings.includes(one)))
      .map((one) => one.reading);
    kept.set(crux, kept.get(crux)?.filter((one) => allowed.includes(one)) ?? allowed);
  }
  return [...kept].map(([crux, readings]) => ({ crux, readings }));
}
