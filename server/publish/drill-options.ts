/** server/publish/drill-options.ts - how a drill is asked for, from an address or a command line: the same words.
 *  May import: zod, schema, server/store, server/errors. */
import { z } from "zod";
import { Way } from "../../schema/guard.ts";
import { Id } from "../../schema/id.ts";
import { done, type Outcome } from "../errors.ts";
import { problemsOf, refuseFor } from "../store/index.ts";

export interface DrillOptions {
  /** Readings to take; other cruxes as adopted, else as left free, else not settled. */
  choice: { crux: string; reading: string }[];
  /** null: as the variant has it, else mounted. */
  way: Way | null;
  /** Id of a variant; null for the text's own version. */
  variant: string | null;
}

export const AS_ADOPTED: DrillOptions = { choice: [], way: null, variant: null };

const Pair = z
  .string()
  .regex(/^[^:]+:[^:]+$/, "Expected crux:reading, two ids with a colon between")
  .transform((pair) => pair.split(":"))
  .pipe(z.tuple([Id, Id]));

const Query = z.strictObject({
  choice: z
    .string()
    .transform((list) => list.split(",").filter((pair) => pair !== ""))
    .pipe(z.array(Pair))
    .optional(),
  way: Way.optional(),
  variant: z.union([z.literal(""), Id]).optional(),
});

/** Reads `choice=crux:reading,…`, `way=mounted|on foot` and `variant=ID`; anything else is refused. */
export function readDrillOptions(query: unknown): Outcome<DrillOptions> {
  const read = Query.safeParse(query);
  if (!read.success) return refuseFor(problemsOf(read.error, "query", "body_invalid"));
  const { choice = [], way, variant } = read.data;
  return done({
    choice: choice.map(([crux, reading]) => ({ crux, reading })),
    way: way ?? null,
    variant: variant ? variant : null,
  });
}
