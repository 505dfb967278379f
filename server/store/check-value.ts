/** server/store/check-value.ts - one value against the schema of its kind, and made ready to be stored.
 *  May import: siblings in server/store. Keeps rules S2 and S8 (server/store/RULES.md). */
import type { Kind } from "../../schema/record.ts";
import { formOf, type RowValue, tableOf } from "./field-table.ts";
import { type Problem, problemsOf } from "./problem.ts";

/** The value as it will be read back, or what is wrong with it. `at` is its path in what was sent. */
export function checkValue(
  kind: Kind,
  value: Record<string, unknown>,
  at: string,
): { ok: true; value: RowValue } | { ok: false; problems: Problem[] } {
  const parsed = tableOf(kind).schema.safeParse(value);
  if (!parsed.success) return { ok: false, problems: problemsOf(parsed.error, at) };
  const problems: Problem[] = [];
  // SQLite keeps UTF-8, in which half of a character cannot be written: it would come back as another one.
  const plain: unknown = JSON.parse(
    JSON.stringify(parsed.data, (key, item: unknown) => {
      if (typeof item === "string" && !isWellFormed(item)) {
        problems.push({
          code: "value_invalid",
          where: key === "" ? at : `${at}.${key}`,
          sentence: "Expected whole characters; the text holds half of one. Take the whole character or none of it.",
        });
      }
      return item;
    }),
  );
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: plain as RowValue };
}

/** The fields put over the value. null takes away a field that may be missing, or that the form of the row has not. */
export function withFields(kind: Kind, value: RowValue, fields: Record<string, unknown>): Record<string, unknown> {
  const next: Record<string, unknown> = { ...value, ...fields };
  const form = formOf(kind, next);
  for (const [name, field] of Object.entries(fields)) {
    if (field === null && form !== undefined && form.fields.get(name)?.nullable !== true) delete next[name];
  }
  return next;
}

/** Problems for names that are no field of the kind. */
export function unknownFields(kind: Kind, fields: Record<string, unknown>, at: string): Problem[] {
  const known = tableOf(kind).fields.map(({ name }) => name);
  const settable = known.filter((name) => name !== "id");
  return Object.keys(fields)
    .filter((name) => !settable.includes(name))
    .map((name) => ({
      code: "value_invalid",
      where: `${at}.${name}`,
      sentence:
        name === "id"
          ? "The id of a row never changes; leave it out."
          : `Expected one of ${settable.join(", ")}; ${kind} have no field ${name}.`,
    }));
}

function isWellFormed(text: string): boolean {
  // With the u flag a pair is read as one character, so this finds lone halves only.
  return !/\p{Surrogate}/u.test(text);
}
