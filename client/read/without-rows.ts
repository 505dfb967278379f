/** client/read/without-rows.ts - what has to change in a row when others it names are taken away.
 *  Ids are unique over all kinds, so that a name is found wherever it stands. */
import { type Kind, REFERENCES, TIES } from "../../schema/record.ts";

const GONE = Symbol("gone");

/** The fields of the row that change, as they are without the rows of `gone`; null when the row cannot be without them
 *  (it repeats one of them, or depends on it alone). Empty when the row names none of them. */
export function fieldsWithout(
  kind: Kind,
  row: Record<string, unknown>,
  gone: ReadonlySet<string>,
): Record<string, unknown> | null {
  const fields: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(row)) {
    if (name === "id") continue;
    const next = without(value, gone);
    if (next === GONE) {
      if (!mayBeMissing(kind, name)) return null;
      fields[name] = null;
    } else if (JSON.stringify(next) !== JSON.stringify(value)) {
      // A thing that is there only under what goes must not be there always.
      if (name === "guard" && Array.isArray(next) && next.length < (value as unknown[]).length) return null;
      fields[name] = next;
    }
  }
  return fields;
}

function mayBeMissing(kind: Kind, field: string): boolean {
  const reference = REFERENCES[kind]?.[field];
  return (
    field === "leftFree" ||
    (reference !== undefined && !reference.whole && field !== "fromPassage" && field !== "toPassage")
  );
}

function without(value: unknown, gone: ReadonlySet<string>): unknown {
  if (typeof value === "string") return gone.has(value) ? GONE : value;
  if (Array.isArray(value)) return value.map((item) => without(item, gone)).filter((item) => item !== GONE);
  if (typeof value !== "object" || value === null) return value;
  const held = value as Record<string, unknown>;
  const entries = Object.entries(held).map(([name, inner]) => [name, without(inner, gone)] as const);
  const lost = entries.some(([, inner]) => inner === GONE);
  // Slots: what names a row that goes is not said any more.
  if (held.is === "said" || held.is === "in crux") {
    if (lost) return { is: "not said" };
    return weakened(held, Object.fromEntries(entries));
  }
  if (lost) return GONE;
  const next = Object.fromEntries(entries);
  if (held.is === "reading" && (next.readings as unknown[]).length === 0) return GONE;
  return "warrant" in held ? weakened(held, next) : next;
}

/** What is stated by words that go is only supplied from then on. */
function weakened(before: Record<string, unknown>, after: Record<string, unknown>): Record<string, unknown> {
  const basis = (after.basis ?? []) as { is: string }[];
  const states = basis.some(({ is }) => is === "words" || is === "picture");
  return before.warrant === "stated" && !states ? { ...after, warrant: "supplied" } : after;
}

/** Whether a row of this kind goes with the rows of `gone`: it is part of one of them, or tied to it. */
export function goesAlong(kind: Kind, row: Record<string, unknown>, gone: ReadonlySet<string>): boolean {
  const tie = TIES[kind];
  if (tie && gone.has(String(row[tie.id]))) return true;
  return Object.entries(REFERENCES[kind] ?? {}).some(([field, { whole }]) => whole && gone.has(String(row[field])));
}
