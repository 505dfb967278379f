/** shared/ride/rules/telling-words.ts - of all words behind an act, those by which it breaks a rule: of the value that breaks it
 *  where that has words of its own, else those that say the act is done.
 *  May import: schema types, shared/drill, types of shared/ride. Offsets: UTF-16 units from 0, half-open. */
import type { Citation } from "../../../schema/drill.ts";
import { citationsOfBasis } from "../../drill/citations.ts";
import type { RiddenAct, RideContext } from "../ride-context.ts";

/** By which slots an act breaks a rule, the weightiest first. A rule that is not here is broken by what is done as such. */
const BROKEN_BY: Readonly<Record<string, readonly string[]>> = {
  "strong-hold": ["hand", "from", "to"],
  "pass-grips": ["zone"],
  "rein-hand-zone": ["zone", "on"],
  "asserted-state": ["hand", "from", "to", "zone"],
  "own-point": ["bearing", "level", "hold", "to", "turn"],
  "threat-weapon": ["turn"],
  "parry-across": ["to", "bearing"],
  "lead-bend": ["lead", "turn"],
  "bend-suits-gait": ["size"],
  "circle-size": ["size"],
  "on-ground": ["size", "toward", "about"],
  "begins-there": ["from"],
};

/** The words of an act that tell why it breaks a rule, in every text of them: a stretch for each text, in the order of the
 *  text. `within`: longer words around the act's, whose text joins words that stand side by side. */
export function tellingWords(
  act: RiddenAct,
  rule: string,
  context: RideContext,
  within: readonly Citation[],
): Citation[] {
  const done = wordsOfDoing(act, context);
  const value = (BROKEN_BY[rule] ?? [])
    .map((slot) => act.drill.values.find((one) => one.slot === slot)?.citations ?? [])
    .find((citations) => citations.some(isThere));
  if (value === undefined) return done;
  return joinedWords([...done, ...value], within).filter((one) => value.some((words) => covers(one, words)));
}

/** What says that it is done, without what says when, or how. A movement is told by the words that ask for it here where those
 *  are shorter than the ones that teach it. */
function wordsOfDoing({ id, via, drill }: RiddenAct, { rows }: RideContext): Citation[] {
  if (drill.citations.length === 0) return drill.values.flatMap(({ citations }) => citations);
  const [own = [], asked = []] = [id, via ?? ""].map((action) =>
    citationsOfBasis(rows, rows.find("actions", action)?.existence.basis ?? []).filter(isThere),
  );
  if (own.length === 0) return drill.citations;
  return asked.length > 0 && longest(asked) < longest(own) ? asked : own;
}

const longest = (citations: readonly Citation[]): number => Math.max(...citations.map(({ quote }) => quote.length));

export const isThere = ({ quote, state }: Citation): boolean => quote !== "" && state !== "lost";

/** Letters between two stretches that are read as one: a stop and a space. */
const GAP = 2;

/** Stretches that overlap or stand side by side become one, as far as `within` has the words between them; each stands
 *  where the first of its parts stood. */
export function joinedWords(citations: readonly Citation[], within: readonly Citation[]): Citation[] {
  const list: Citation[] = [];
  for (const one of citations) {
    const joined = list.map((other) => (touch(one, other) ? stretch(one, other, within) : null));
    const at = joined.findIndex((longer) => longer !== null);
    const both = joined[at];
    if (both) list[at] = both;
    else list.push(one);
  }
  return list;
}

function touch(one: Citation, other: Citation): boolean {
  return samePlace(one, other) && one.from <= other.to + GAP && other.from <= one.to + GAP;
}

/** Two stretches that touch, as one; null where the words around them are not known, or a sentence ends between them. */
function stretch(one: Citation, other: Citation, within: readonly Citation[]): Citation | null {
  if (covers(one, other)) return one;
  if (covers(other, one)) return other;
  const [first, second] = one.from <= other.from ? [one, other] : [other, one];
  const { from } = first;
  const { to } = second;
  const around = within.find(
    (words) => isThere(words) && samePlace(words, first) && words.from <= from && to <= words.to,
  );
  if (around === undefined) return null;
  const quote = around.quote.slice(from - around.from, to - around.from);
  if (/[\p{L}\p{N}.;:!?]/u.test(quote.slice(first.to - from, Math.max(0, second.from - from)))) return null;
  const { urn: _ofAPart, ...rest } = first;
  return { ...rest, quote, to };
}

function samePlace(one: Citation, other: Citation): boolean {
  return one.reference === other.reference && one.layer === other.layer && one.state === other.state;
}

function covers(one: Citation, other: Citation): boolean {
  return samePlace(one, other) && one.from <= other.from && other.to <= one.to;
}
