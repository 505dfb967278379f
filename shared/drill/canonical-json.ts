/** shared/drill/canonical-json.ts - one spelling of a value as JSON, so that the same content gives the same bytes.
 *  May import: nothing. */

/** Two-space indent, keys in the order they were built, one newline at the end. */
export function canonicalJson(value: unknown): string {
  return `${JSON.stringify(value, null, 2)}\n`;
}

/** A JSON value whose keys are in code-unit order all the way down: for values that were typed or stored in any order.
 *  Undefined fields are left out. */
export function inKeyOrder<T>(value: T): T {
  if (Array.isArray(value)) return value.map(inKeyOrder) as T;
  if (typeof value !== "object" || value === null) return value;
  const fields = Object.entries(value).filter(([, held]) => held !== undefined);
  fields.sort(([first], [second]) => (first < second ? -1 : 1));
  return Object.fromEntries(fields.map(([key, held]) => [key, inKeyOrder(held)])) as T;
}
