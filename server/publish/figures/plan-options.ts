/** server/publish/figures/plan-options.ts - how a plan is asked for, from an address or a command line: the same words.
 *  May import: zod, server/publish, server/store, server/errors. */
import { z } from "zod";
import { done, type Outcome } from "../../errors.ts";
import { problemsOf, refuseFor } from "../../store/index.ts";
import { type DrillOptions, readDrillOptions } from "../drill-options.ts";

export interface PlanOptions extends DrillOptions {
  /** Printed numbers of the first and the last step that are drawn; null: all. */
  steps: { first: number; last: number } | null;
  /** Millimetres; null: as large as reads well on a page. */
  width: number | null;
  /** Seconds of the ride at which the rider is drawn; null: no rider. */
  at: number | null;
}

const Steps = z
  .string()
  .regex(/^[1-9]\d{0,4}(-[1-9]\d{0,4})?$/, "Expected a step or two with a hyphen between, such as 2-5")
  .transform((range) => range.split("-").map(Number))
  .transform(([first = 1, last = first]) => ({ first, last }))
  .refine(({ first, last }) => first <= last, "Expected the first step before the last");

const Query = z.strictObject({
  steps: Steps.optional(),
  width: z.coerce.number().min(20).max(300).optional(),
  at: z.coerce.number().min(0).max(1e6).optional(),
});

/** Reads `steps=2-5`, `width=` in millimetres and `at=` in seconds besides what a drill is asked for with. */
export function readPlanOptions(query: Readonly<Record<string, unknown>>): Outcome<PlanOptions> {
  const { choice, way, variant, ...own } = query;
  const asked = { ...(choice !== undefined && { choice }), ...(way !== undefined && { way }) };
  const drill = readDrillOptions({ ...asked, ...(variant !== undefined && { variant }) });
  if (!drill.ok) return drill;
  const read = Query.safeParse(own);
  if (!read.success) return refuseFor(problemsOf(read.error, "query", "body_invalid"));
  const { steps = null, width = null, at = null } = read.data;
  return done({ ...drill.value, steps, width, at });
}
