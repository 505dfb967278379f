/** server/publish/papers/problem-with-ask.ts - what is wrong with the way a paper is asked for.
 *  May import: schema types, shared/rank, server/errors. */
import type { PaperAsk, PaperPart } from "../../../schema/paper.ts";
import type { Rows } from "../../../schema/record.ts";
import { compareRanked } from "../../../shared/rank.ts";
import { type Outcome, refused } from "../../errors.ts";

type Refused = Extract<Outcome<never>, { ok: false }>;

/** Null when nothing is. `rows`: those of one exercise, or of the whole work. */
export function problemWithAsk(rows: Rows, { parts, choice }: PaperAsk): Refused | null {
  for (const part of parts) {
    const problem = problemWithPart(rows, part);
    if (problem !== null) return problem;
  }
  for (const { crux, reading } of choice) {
    if (rows.readings?.some(({ value }) => value.id === reading && value.crux === crux)) continue;
    const title = rows.cruxes?.find(({ value }) => value.id === crux)?.value.title;
    const sentence =
      title === undefined
        ? `The exercises of this paper have no crux with the id ${crux}. Load the page again and choose from theirs.`
        : `The crux “${title}” has no reading with the id ${reading}. Choose one of its readings.`;
    return refused("reading_of_other_crux", sentence);
  }
  return null;
}

function problemWithPart(rows: Rows, { exercise, from, to, variant }: PaperPart): Refused | null {
  const row = rows.exercises?.find(({ value }) => value.id === exercise)?.value;
  if (row === undefined) {
    return refused(
      "row_unknown",
      `The work of this paper has no exercise with the id ${exercise}. A paper is of one work: choose its exercises.`,
    );
  }
  const elements = (rows.elements ?? []).flatMap(({ value }) => (value.exercise === exercise ? value : []));
  const ends = [from, to].map((id) => (id === null ? undefined : elements.find((element) => element.id === id)));
  for (const [index, id] of [from, to].entries()) {
    if (id === null || ends[index] !== undefined) continue;
    return refused(
      "row_unknown",
      `“${row.title}” has no step with the id ${id}. Choose where the part begins and ends from its steps.`,
    );
  }
  const [first, last] = ends;
  if (first !== undefined && last !== undefined && compareRanked(first, last) > 0) {
    return refused(
      "selection_backwards",
      `The part of “${row.title}” ends before it begins. Give the first step first.`,
    );
  }
  const version = rows.variants?.find(({ value }) => value.id === variant)?.value;
  const fits = version !== undefined && (version.exercise === null || version.exercise === exercise);
  return variant === null || fits
    ? null
    : refused("row_unknown", `“${row.title}” has no version with the id ${variant}. Choose one it has, or none.`);
}
