/** server/publish/publish-letter.ts - a letter as bytes, for the window and the command line.
 *  May import: zod, schema, server/store, server/errors, siblings. The same rows give the same bytes. */
import { z } from "zod";
import { done, type Outcome, refused } from "../errors.ts";
import { problemsOf, readBundle, refuseFor, type Store } from "../store/index.ts";
import { addresseesOf, letterTo } from "./letter.ts";
import { letterDocx } from "./letter-docx.ts";
import { letterText } from "./letter-text.ts";

const LetterAsk = z.strictObject({ to: z.string().trim().min(1), as: z.enum(["txt", "docx"]).default("txt") });
export type LetterAsk = z.infer<typeof LetterAsk>;

/** Reads `to=NAME` and `as=txt|docx`; anything else is refused. */
export function readLetterAsk(query: unknown): Outcome<LetterAsk> {
  const read = LetterAsk.safeParse(query);
  return read.success ? done(read.data) : refuseFor(problemsOf(read.error, "query", "body_invalid"));
}

/** The open questions of the work to one person, UTF-8 or DOCX. Refused where nothing of theirs is open. */
export async function publishLetter(store: Store, work: string, ask: LetterAsk): Promise<Outcome<Uint8Array>> {
  const bundle = readBundle(store, { work });
  if (!bundle.ok) return bundle;
  const { rows } = bundle.value;
  const letter = letterTo(rows, work, ask.to);
  if (letter === null) {
    const names = addresseesOf(rows).map((name) => `“${name}”`);
    const choose = names.length === 0 ? "No question is open." : `Open questions are addressed to ${names.join(", ")}.`;
    return refused("nobody_asked", `Nothing that is open is asked of “${ask.to}”. ${choose}`);
  }
  return done(ask.as === "docx" ? await letterDocx(letter) : new TextEncoder().encode(letterText(letter)));
}

export const LETTER_TYPES: Readonly<Record<LetterAsk["as"], string>> = {
  txt: "text/plain; charset=utf-8",
  docx: "application/vnd.openxmlformats-officedocument.wordprocessingml.document",
};
