/** server/store/field-table.ts - the fields of every kind of row, read off its schema, with table and column names.
 *  May import: zod, schema/record. Keeps rule S1 (server/store/RULES.md). Computed once; nothing here changes later. */
import { z } from "zod";
import { KINDS, type Kind, RECORDS } from "../../schema/record.ts";

/** How a column holds a field: as it is, 0 or 1 for false and true, or JSON text for anything nested. */
export type Storage = "text" | "integer" | "real" | "boolean" | "json";

export interface Field {
  name: string;
  column: string;
  storage: Storage;
}

/** One form a row of a kind may take; kinds that are not discriminated unions have one. */
export interface Form {
  /** Value of `is`, or null for a kind of one form. */
  is: string | null;
  /** Whether a field may be null in this form, and whether it may be missing; fields it has not are not listed. */
  fields: ReadonlyMap<string, { nullable: boolean; optional: boolean }>;
}

export interface KindTable {
  kind: Kind;
  table: string;
  schema: z.ZodType<RowValue, unknown>;
  /** All fields of all forms, `id` first. */
  fields: readonly Field[];
  forms: readonly Form[];
}

/** A row's value where its kind is known only at run time. Every one has an `id`. */
export type RowValue = { id: string; [field: string]: unknown };

const TABLES = Object.fromEntries(KINDS.map((kind) => [kind, describe(kind)])) as Record<Kind, KindTable>;

export function tableOf(kind: Kind): KindTable {
  return TABLES[kind];
}

/** The form a value takes, by its `is`; undefined when it is none of the kind's. */
export function formOf(kind: Kind, value: Record<string, unknown>): Form | undefined {
  const { forms } = TABLES[kind];
  return forms.find((form) => form.is === null || form.is === value.is);
}

export function snakeCase(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}

function describe(kind: Kind): KindTable {
  const schema = RECORDS[kind] as unknown as z.ZodType<RowValue, unknown>;
  const union = schema instanceof z.ZodDiscriminatedUnion ? schema : null;
  const objects = (union === null ? [schema] : union.options) as z.ZodObject[];
  const fields = new Map<string, Field>();
  const forms = objects.map((object): Form => {
    const known = new Map<string, { nullable: boolean; optional: boolean }>();
    for (const [name, type] of Object.entries(object.shape) as [string, z.ZodType][]) {
      const { inner, nullable, optional } = unwrap(type);
      const storage = storageOf(inner);
      const earlier = fields.get(name);
      if (earlier !== undefined && earlier.storage !== storage) {
        throw new TypeError(`${kind}.${name} is held as ${earlier.storage} in one form and as ${storage} in another.`);
      }
      fields.set(name, { name, column: snakeCase(name), storage });
      known.set(name, { nullable, optional });
    }
    const is: unknown = union === null ? null : [...(object.shape.is as z.ZodLiteral<string>).values][0];
    return { is: typeof is === "string" ? is : null, fields: known };
  });
  return { kind, table: snakeCase(kind), schema, fields: [...fields.values()], forms };
}

function unwrap(type: z.ZodType): { inner: z.ZodType; nullable: boolean; optional: boolean } {
  let inner = type;
  let nullable = false;
  let optional = false;
  for (;;) {
    if (inner instanceof z.ZodNullable) nullable = true;
    else if (inner instanceof z.ZodOptional) optional = true;
    else return { inner, nullable, optional };
    inner = inner.unwrap() as z.ZodType;
  }
}

function storageOf(type: z.ZodType): Storage {
  const { def } = type._zod;
  if (def.type === "boolean") return "boolean";
  if (def.type === "string" || def.type === "enum" || def.type === "literal") return "text";
  if (type instanceof z.ZodNumber) return type.format?.includes("int") ? "integer" : "real";
  return "json";
}
