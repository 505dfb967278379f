/** server/publish/papers/day-words.ts - days and trials as a paper tells them.
 *  May import: schema types. No clock and no locale: a day is written out by a table. */

import type { z } from "zod";
import type { Day } from "../../../schema/id.ts";
import type { Trial } from "../../../schema/teaching.ts";

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** "4 May 2026" of "2026-05-04". */
export function dayWords(day: z.infer<typeof Day>): string {
  const [year = "", month = "", date = ""] = day.split("-");
  return `${Number(date)} ${MONTHS[Number(month) - 1] ?? month} ${year}`;
}

/** "4 May 2026 (mounted, ridden in part)". */
export function trialWords({ on, way, outcome }: Trial): string {
  return `${dayWords(on)} (${way}, ${OUTCOMES[outcome]})`;
}

export const OUTCOMES: { readonly [outcome in Trial["outcome"]]: string } = {
  ridden: "ridden",
  "in part": "ridden in part",
  "not ridden": "not ridden",
};
