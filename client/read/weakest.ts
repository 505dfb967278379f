/** client/read/weakest.ts - on which line the words of an act stand as a whole. */
import type { DrillAction } from "../../schema/drill.ts";

/** What no reading has settled leaves the whole act unsettled. */
const WEAKER = ["not settled", "supplied", "implied", "stated"] as const;

/** The words of an act are told together, so they stand on the line of what is least warranted in them. */
export function weakestOf({ standing, values }: DrillAction): DrillAction["standing"] {
  const told = [standing, ...values.map((value) => value.standing)];
  return WEAKER.find((warrant) => told.includes(warrant)) ?? standing;
}
