/** tests/kit/arbitrary-from.ts - makes fast-check values of a zod schema, so that every kind of row is tried as it is
 *  declared and not as somebody remembered it. Lists are short and words few: shape matters here, not bulk. */
import fc from "fast-check";
import { z } from "zod";

/** Any value the schema accepts; what comes out has been parsed by it. Throws TypeError for a schema it cannot read. */
export function arbitraryFrom<T>(schema: z.ZodType<T>): fc.Arbitrary<T> {
  return raw(schema)
    .filter((value) => schema.safeParse(value).success)
    .map((value) => schema.parse(value));
}

/** Words with what usually breaks: diacritics, other scripts, quotes, pairs, a NUL, line breaks, spaces at the ends. */
const words = fc
  .array(fc.constantFrom("ā", "e\u0301", "n", " ", "'", '"', "؟", "𝄞", "\u0000", "\n", "NULL", "0", "%", "\\"), {
    maxLength: 6,
  })
  .map((parts) => parts.join(""));

function raw(schema: z.ZodType): fc.Arbitrary<unknown> {
  if (schema instanceof z.ZodOptional) return fc.option(raw(schema.unwrap() as z.ZodType), { nil: undefined });
  if (schema instanceof z.ZodNullable) return fc.option(raw(schema.unwrap() as z.ZodType), { nil: null });
  if (schema instanceof z.ZodUnion) return fc.oneof(...schema.options.map((option) => raw(option as z.ZodType)));
  if (schema instanceof z.ZodLiteral) return fc.constantFrom(...schema.values);
  if (schema instanceof z.ZodEnum) return fc.constantFrom(...schema.options);
  if (schema instanceof z.ZodBoolean) return fc.boolean();
  if (schema instanceof z.ZodNumber) return numbers(schema);
  if (schema instanceof z.ZodTuple) return fc.tuple(...schema.def.items.map((item) => raw(item as z.ZodType)));
  if (schema instanceof z.ZodArray) return lists(schema);
  if (schema instanceof z.ZodObject) return objects(schema);
  return strings(schema);
}

function strings(schema: z.ZodType): fc.Arbitrary<unknown> {
  const format = (schema as z.ZodType & { format?: string | null }).format ?? null;
  if (format === "uuid") return fc.uuid();
  if (format === "date") return fc.constantFrom("2026-05-04", "1999-12-31", "2024-02-29");
  if (!(schema instanceof z.ZodString)) throw new TypeError(`No arbitrary for a schema of type ${schema.def.type}.`);
  const tries = [words, fc.constantFrom("a0", "Zz", "x1V"), fc.constantFrom("1", "1.00", "0.5", "0.125")];
  // The first kind of word that the schema takes at times; a pattern decides for the later ones.
  const fits = tries.find((arbitrary) =>
    fc.sample(arbitrary, { numRuns: 30, seed: 7 }).some((word) => schema.safeParse(word).success),
  );
  return (fits ?? words).filter((word) => schema.safeParse(word).success);
}

function numbers(schema: z.ZodNumber): fc.Arbitrary<number> {
  const min = Math.max(schema.minValue ?? -1000, -1000);
  const max = Math.min(schema.maxValue ?? 1000, 1000);
  if (schema.format?.includes("int")) return fc.integer({ min: Math.ceil(min), max: Math.floor(max) });
  // JSON has no minus nought.
  return fc.double({ min, max, noNaN: true }).map((number) => (Object.is(number, -0) ? 0 : number));
}

function lists(schema: z.ZodArray): fc.Arbitrary<unknown[]> {
  const minLength = [0, 1, 2, 3].find((length) => !tooSmall(schema, length)) ?? 0;
  return fc.array(raw(schema.element as z.ZodType), { minLength, maxLength: Math.max(2, minLength) });
}

function tooSmall(schema: z.ZodArray, length: number): boolean {
  const parsed = schema.safeParse(Array.from({ length }, () => undefined));
  return !parsed.success && parsed.error.issues.some(({ code }) => code === "too_small");
}

function objects(schema: z.ZodObject): fc.Arbitrary<Record<string, unknown>> {
  const shape = Object.entries(schema.shape) as [string, z.ZodType][];
  const arbitrary = fc.record(Object.fromEntries(shape.map(([name, type]) => [name, raw(type)])));
  return arbitrary
    .map((value) => Object.fromEntries(Object.entries(value).filter(([, field]) => field !== undefined)))
    .filter((value) => schema.safeParse(value).success);
}
