/** server/publish/papers/problem-with-source.ts - whether a source has the form of a CSL-JSON item, before a style sets it.
 *  May import: zod, shared/cite, server/errors. After csl-data.json, the item schema of CSL 1.0.2: names, dates and plain
 *  fields; fields of other kinds (`custom`) are left alone, since no style prints them. */
import { z } from "zod";
import type { CslItem } from "../../../shared/cite/csl-engine.ts";
import { type Outcome, refused } from "../../errors.ts";

const NAMES = new Set(
  (
    "author chair collection-editor compiler composer container-author contributor curator director editor editorial-director " +
    "executive-producer guest host illustrator interviewer narrator organizer original-author performer producer recipient " +
    "reviewed-author script-writer series-creator translator"
  ).split(" "),
);
const DATES = new Set("accessed available-date event-date issued original-date submitted".split(" "));
/** Objects and lists that are part of no citation. */
const OTHER = new Set(["custom", "categories"]);

const flag = z.union([z.string(), z.number(), z.boolean()]);
const Name = z.strictObject({
  family: z.string().optional(),
  given: z.string().optional(),
  "dropping-particle": z.string().optional(),
  "non-dropping-particle": z.string().optional(),
  suffix: z.string().optional(),
  "comma-suffix": flag.optional(),
  "static-ordering": flag.optional(),
  literal: z.string().optional(),
  "parse-names": flag.optional(),
});
const number = z.union([z.string(), z.number()]);
const WrittenDate = z.strictObject({
  "date-parts": z.array(z.array(number).min(1).max(3)).min(1).max(2).optional(),
  season: number.optional(),
  circa: flag.optional(),
  literal: z.string().optional(),
  raw: z.string().optional(),
  edtf: z.string().optional(),
});

/** Null when nothing is wrong. */
export function problemWithSource(item: CslItem): Extract<Outcome<never>, { ok: false }> | null {
  for (const [field, value] of Object.entries(item)) {
    if (OTHER.has(field)) continue;
    const fits = NAMES.has(field)
      ? z.array(Name).safeParse(value).success
      : DATES.has(field)
        ? WrittenDate.safeParse(value).success
        : typeof value === "string" || typeof value === "number";
    if (fits) continue;
    const named = typeof item.title === "string" && item.title !== "" ? `“${item.title}”` : "without a title";
    const expected = NAMES.has(field)
      ? "a list of names (family and given, or literal)"
      : DATES.has(field)
        ? "a date (date-parts, raw or literal)"
        : "words or a number";
    return refused(
      "source_unreadable",
      `The source ${named} has ${JSON.stringify(value)?.slice(0, 60) ?? "nothing"} as its “${field}”; expected was ${expected}. Open the source and put the field right.`,
    );
  }
  return null;
}
