/** client/frame/field-words.ts - a field of a row in words, for showing what two writers made of it. */
import type { Act } from "../../schema/act.ts";
import type { Kind } from "../../schema/record.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import { kindOfSlot, slotLabel } from "../../shared/drill/slot-labels.ts";
import { type Names, valueWords } from "../../shared/drill/words.ts";

/** "title", "what is done", "why it is there". */
export function fieldName(field: string): string {
  return FIELD_NAMES[field] ?? (field === "" ? "the whole of it" : slotLabel(field));
}

const FIELD_NAMES: Record<string, string> = {
  act: "what is done",
  allows: "leaves",
  answers: "possible answers",
  arisesWhen: "when it arises",
  demand: "what is asked",
  estimate: "how many steps",
  evidence: "evidence",
  excludes: "cannot stand with",
  existence: "that it is there",
  guard: "only under",
  leftFree: "left free",
  order: "that it comes here",
  rank: "its place",
  requires: "needs",
  slots: "what is said of it",
  state: "whether it is answered",
  status: "what was decided",
  target: "what it is tied to",
  values: "what it gives",
};

/** The value of a field; ids are named, never shown. */
export function fieldWords(kind: Kind, field: string, value: unknown, names: Names): string {
  if (field === "rank") return value === null ? "none" : "a place in the order";
  return anyWords(kind, field, value, names) || "nothing";
}

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
/** Kinds that values and conditions name, in the order they are looked through. */
const NAMED: readonly Kind[] = [
  "readings",
  "cruxes",
  "objects",
  "holds",
  "movements",
  "stations",
  "threats",
  "elements",
  "actions",
  "exercises",
  "grounds",
  "variants",
  "senses",
  "sittings",
];

function anyWords(kind: Kind, field: string, value: unknown, names: Names): string {
  if (value === null || value === undefined || value === "") return "";
  if (typeof value === "string") return ID.test(value) ? idWords(value, names) : value;
  if (typeof value !== "object") return String(value);
  if (Array.isArray(value)) {
    return value
      .map((item) => anyWords(kind, field, item, names))
      .filter(Boolean)
      .join("; ");
  }
  const held = value as Record<string, unknown>;
  if ("verb" in held && "slots" in held) return actWords(held as unknown as Act, names);
  if (held.is === "said") return saidWords(kind, field, held, names);
  if (held.is === "not said") return "the text does not say";
  if (held.is === "not applicable") return "does not apply";
  if (held.is === "in crux") return `held by the crux “${idWords(String(held.crux), names)}”`;
  if ("warrant" in held) return `${String(held.warrant)}${basisWords(held.basis, names)}`;
  return Object.entries(held)
    .map(([name, inner]) => {
      const words = anyWords(kind, name, inner, names);
      if (words === "" || name === "rank" || name === "id" || name === "work") return "";
      return name === "is" || name === "text" ? words : `${fieldName(name)}: ${words}`;
    })
    .filter(Boolean)
    .join(", ");
}

function saidWords(kind: Kind, field: string, held: Record<string, unknown>, names: Names): string {
  const valueKind = SLOTTED.includes(kind) ? kindOfSlot(kind as "elements", field) : null;
  const known = valueKind ?? ({ timing: "timing", purpose: "purpose", threat: "threat" } as const)[field as "timing"];
  const words = known ? valueWords(known, held.value as never, names) : anyWords(kind, field, held.value, names);
  return `${words} (${String(held.warrant)})`;
}
const SLOTTED: readonly Kind[] = ["elements", "holds", "stations", "threats", "objects", "grounds"];

function basisWords(basis: unknown, names: Names): string {
  const list = Array.isArray(basis) ? (basis as Record<string, unknown>[]) : [];
  const words = list.map((entry) =>
    entry.is === "words"
      ? "marked words"
      : anyWords("notes", String(entry.is), { ...entry, is: "" }, names) || String(entry.is),
  );
  return words.length > 0 ? `, resting on ${words.join("; ")}` : "";
}

function idWords(id: string, names: Names): string {
  for (const kind of NAMED) {
    const name = names(kind, id);
    if (name !== null) return name;
  }
  return "something this window does not have";
}
