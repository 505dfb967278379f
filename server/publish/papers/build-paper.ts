/** server/publish/papers/build-paper.ts - a paper as it is asked for, built from the rows before any form of it is written.
 *  May import: schema types, server/store, server/errors, siblings. Pure over the rows: no clock, no order but ranks, no
 *  locale. The same rows and the same asking give the same paper. */
import type { Paper, PaperAsk } from "../../../schema/paper.ts";
import type { Rows } from "../../../schema/record.ts";
import { done, type Outcome } from "../../errors.ts";
import { readBundle, type Store } from "../../store/index.ts";
import { buildPart } from "./paper-part.ts";
import { problemWithAsk } from "./problem-with-ask.ts";
import { rideSheet } from "./ride-sheet.ts";

/** The paper without an edition: freezing it gives it one. Refused when something that is asked for is not there. */
export function buildPaper(store: Store, ask: PaperAsk): Outcome<Paper> {
  const rows = rowsFor(store, ask);
  if (!rows.ok) return rows;
  const problem = problemWithAsk(rows.value, ask);
  if (problem !== null) return problem;
  const parts = ask.parts.map((part) => buildPart(rows.value, part, ask));
  return done(rideSheet(ask, parts));
}

/** The bundle of one exercise where that is enough, else the whole work. */
function rowsFor(store: Store, { parts }: PaperAsk): Outcome<Rows> {
  const exercise = parts[0]?.exercise ?? "";
  const bundle = readBundle(store, { exercise });
  if (!bundle.ok) return bundle;
  const alone = parts.every((part) => part.exercise === exercise);
  if (alone) return done(bundle.value.rows);
  const work = bundle.value.rows.exercises?.find(({ value }) => value.id === exercise)?.value.work ?? "";
  const whole = readBundle(store, { work });
  return whole.ok ? done(whole.value.rows) : whole;
}
