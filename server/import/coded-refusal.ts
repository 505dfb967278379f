/** server/import/coded-refusal.ts - a refusal of the import room as the rest of the server gives refusals.
 *  May import: schema types, server/errors. */
import type { ImportRefusal } from "../../schema/imported.ts";
import { ERRORS, type ErrorCode, type Outcome, refused } from "../errors.ts";

/** Throws Error when the code is missing from the table of refusals. */
export function codedRefusal({ code, sentence, place }: ImportRefusal): Extract<Outcome<never>, { ok: false }> {
  if (!(code in ERRORS)) throw new Error(`The refusal ${code} is not in the table of server/errors.ts.`);
  if (place === undefined) return refused(code as ErrorCode, sentence);
  const where = `line ${place.line}, column ${place.column}`;
  return refused(code as ErrorCode, sentence, { issues: [{ where, sentence: "Here." }] });
}
