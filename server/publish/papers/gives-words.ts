/** server/publish/papers/gives-words.ts - what would be done under a reading that is not taken, in few words.
 *  May import: schema types, server/publish, siblings. Each act is said once: not again at another step, not where the name of
 *  the reading says it, and not again backwards. */
import type { DrillCrux } from "../../../schema/drill.ts";
import type { SignedCrux } from "../crux-signs.ts";
import { numbersWords } from "./numbers-words.ts";

type Give = DrillCrux["others"][number]["gives"][number];

interface Told {
  text: string;
  isAct: boolean;
  /** Printed numbers of the steps it is given to. */
  at: number[];
}

/** "pass the spear from the right hand to the left hand, and back": without a stop; "" where it gives nothing that its name
 *  does not say. Steps are named where it gives to several, and not the same to each. */
export function givesWords(at: SignedCrux["at"], reading: string): string {
  const given = at.flatMap(({ element, crux }) =>
    crux.others.flatMap((other) =>
      other.reading === reading ? [{ number: element?.number ?? null, title: other.title, gives: other.gives }] : [],
    ),
  );
  const all = given.flatMap(({ gives }) => gives);
  const acts = all.filter(isAct).map(({ text }) => text);
  const whats = new Set(all.filter(({ label }) => label === WHAT).map(({ text }) => text));
  const told = new Map<string, Told>();
  for (const { number, title, gives } of given) {
    for (const give of gives) {
      if (goesWithoutSaying(give, title, acts) || (give.label === WHAT && whats.size > 1)) continue;
      const text = wordsOf(give);
      const known = told.get(text) ?? { text, isAct: isAct(give), at: [] };
      told.set(text, known);
      if (number !== null && !known.at.includes(number)) known.at.push(number);
    }
  }
  return inSteps(withTheWayBack([...told.values()]));
}

const isAct = ({ label }: Give): boolean => label === "action";
const THIS_ELEMENT = "this element";
/** Two things of one reading, without what is done to each, tell nothing. */
const WHAT = "what";
/** Values that are part of an act: not said again where an act tells them. */
const IN_ACTS: ReadonlySet<string> = new Set(["hand", "from", "to"]);

function goesWithoutSaying(give: Give, title: string, acts: readonly string[]): boolean {
  if (isAct(give)) return false;
  if (give.label === THIS_ELEMENT) return acts.length > 0;
  return saysIn(title, give.text) || (IN_ACTS.has(give.label) && acts.some((act) => saysIn(act, give.text)));
}

const saysIn = (whole: string, part: string): boolean => ` ${bare(whole)} `.includes(` ${bare(part)} `);

const bare = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();

/** What of it hangs on another crux has its own note. */
const OPEN = /,?(?: with)? \(not settled\)/gu;

/** What a reading gives, with the slot it gives it to; an act, or the element itself, is said without one. */
function wordsOf({ label, text }: Give): string {
  if (label === THIS_ELEMENT) return "this is part of the exercise";
  return (label === "action" ? text : `${label}: ${text}`).replace(OPEN, "");
}

/** An act that is done and later undone to the other side, as one. */
function withTheWayBack(told: readonly Told[]): Told[] {
  const kept: Told[] = [];
  for (const one of told) {
    const there = one.isAct ? kept.find(({ isAct: is, text }) => is && text === otherWay(one.text)) : undefined;
    if (there === undefined) kept.push({ ...one });
    else {
      there.text = `${there.text}, and back`;
      there.at = [...new Set([...there.at, ...one.at])];
    }
  }
  return kept;
}

const otherWay = (text: string): string =>
  text.replace(/\b(?:left|right)\b/gu, (side) => (side === "left" ? "right" : "left"));

function inSteps(told: readonly Told[]): string {
  const places = new Set(told.map(({ at }) => at.join(" ")));
  let last = "";
  return told
    .map(({ text, at }) => {
      const where = places.size > 1 ? numbersWords(at.map((number) => ({ number, is: "step" }))) : "";
      const named = where !== "" && where !== last ? `(${where}) ` : "";
      last = where;
      return `${named}${text}`;
    })
    .join("; ");
}
