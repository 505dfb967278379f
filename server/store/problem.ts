/** server/store/problem.ts - what is wrong with a change, gathered before it is refused as a whole.
 *  May import: zod, server/errors, siblings in server/store. Keeps rule S9: every problem is told, not the first alone. */
import type { z } from "zod";
import { type ErrorCode, type Outcome, refused } from "../errors.ts";

export interface Problem {
  code: ErrorCode;
  /** Path in what was sent ("edits[2].value.guard[0].crux"), or the row for one that was not sent. */
  where: string;
  /** What was expected, what came, what to do; without the place. */
  sentence: string;
}

/** The refusal for problems, of which there is at least one: the code is the first one's. */
export function refuseFor(problems: readonly Problem[]): Extract<Outcome<never>, { ok: false }> {
  const [first] = problems;
  if (first === undefined) throw new RangeError("A refusal needs a problem.");
  const more = problems.length - 1;
  const others =
    more === 0 ? "" : ` There ${more === 1 ? "is 1 more problem" : `are ${more} more problems`}, listed below.`;
  return refused(first.code, `Nothing was stored. At ${first.where}: ${first.sentence}${others}`, {
    issues: problems.map(({ where, sentence }) => ({ where, sentence })),
  });
}

/** The issues of a failed parse as problems; `at` is the path of what was parsed. */
export function problemsOf(error: z.ZodError, at: string, code: ErrorCode = "value_invalid"): Problem[] {
  return error.issues.map((issue) => ({
    code,
    where: at + pathText(issue.path, at === ""),
    sentence: `${issue.message.replace(/\.$/, "")}.`,
  }));
}

/** ["guard", 0, "crux"] as ".guard[0].crux"; without the first point when it starts a path. */
export function pathText(path: readonly PropertyKey[], starts = false): string {
  const text = path.map((part) => (typeof part === "number" ? `[${part}]` : `.${String(part)}`)).join("");
  return starts ? text.replace(/^\./, "") : text;
}
