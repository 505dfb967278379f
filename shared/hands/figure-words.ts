/** shared/hands/figure-words.ts - the sentence beside the figure: where the reins are, who has what, where its point looks
 *  and how high. May import: siblings in shared/hands. Said as a rider says it; what is not known is said to be so. */
import { withArticle } from "../article.ts";
import { bearingOnSide, handsOn, otherHand } from "./derived.ts";
import { exactly, isKnown, mayBe, possible } from "./known.ts";
import {
  type Bearing,
  type Contact,
  type ControlState,
  HANDS,
  type Hand,
  IN_HAND,
  type Level,
  type ObjectState,
  type ReinPlace,
  type Zone,
} from "./state.ts";
import { bearersOf, isInNoHand, isLoose, isPlanted, levelsOf } from "./things-shown.ts";

/** `shown`: the objects to tell of, in their order. `when` opens the sentence. */
export function figureSentence(state: ControlState, shown: readonly ObjectState[], when: string): string {
  const reins = reinWords(state);
  // "Reins in the left hand, spear in the right": where no hand was named before, the word is said.
  const noun = reins.includes(" hand") ? "" : " hand";
  const things = shown.map((held) =>
    [objectWords(held, noun), pointWords(held)].filter((part) => part !== null).join(", "),
  );
  return `${when}: ${[reins, ...things].join(things.length > 1 ? "; " : ", ")}.`;
}

/** On foot there are none, whatever words written for a horse say of them. */
function reinWords({ reins, way }: ControlState): string {
  if (way === "on foot") return "on foot";
  const places = possible(reins, []);
  if (places.length === 0) return "where the reins are is not known";
  const laid = places.filter((place) => !IN_HAND.includes(place));
  const words = [inHandWords(places), ...laid.map((place) => (place === "away" ? "away" : `on the ${place}`))];
  return `reins ${words.filter((part) => part !== null).join(" or ")}`;
}

/** The hands that may have the reins; null where none has. */
function inHandWords(places: readonly ReinPlace[]): string | null {
  const both = places.includes("both hands");
  const [one, another] = HANDS.filter((hand) => places.includes(`${hand} hand`));
  if (one === undefined) return both ? "in both hands" : null;
  if (another !== undefined) return both ? "in one hand or both" : "in the left or the right hand";
  return both ? `in the ${one} hand or both` : `in the ${one} hand`;
}

/** `noun`: what follows "the left": " hand", or nothing where the hand was named before. */
function objectWords(held: ObjectState, noun: string): string {
  const hands = exactly(handsOn(held));
  const name = held.object.name;
  if (hands === null) {
    if (isPlanted(held)) return `${name} planted`;
    const [may, another] = HANDS.filter((hand) => !isKnown<Zone | null>(held.grip[hand], null));
    const [surely] = HANDS.filter((hand) => !mayBe<Zone | null>(held.grip[hand], null));
    if (surely !== undefined) return `${name} in the ${surely} and perhaps the ${otherHand(surely)}${noun}`;
    return another === undefined
      ? `${name} in the ${may}${noun}, or in no hand`
      : `which hand has ${withArticle(name)} is not known`;
  }
  if (hands.length === 2) return `${name} in both hands`;
  if (hands.length === 0) return `${name} ${placeOf(held)}`;
  return `${name} in the ${hands[0]}${noun}`;
}

/** Where a thing is that no hand has. */
function placeOf(held: ObjectState): string {
  if (isPlanted(held)) return "planted";
  const [bearer] = bearersOf(held);
  return bearer === undefined ? "in no hand" : contactWords(bearer);
}

/** "Under the right thigh", "against the left shoulder", "beside the boot". */
function contactWords({ with: what, side, words, degree }: Contact): string {
  if (what === "other") return words ?? "in no hand";
  if (what === "sheath") return "in its sheath";
  const how = degree === "near" ? "beside" : degree === "touches" ? "against" : (BORNE[what] ?? "on");
  return `${how} the ${side === undefined ? "" : `${side} `}${what}`;
}

/** How a part of the body bears what no hand has, where it does not simply lie on it. */
const BORNE: Partial<Record<Contact["with"], string>> = {
  thigh: "under",
  arm: "under",
  boot: "in",
  stirrup: "in",
  hip: "against",
  wrist: "hanging from",
  wall: "against",
};

/** Null for what has no point, or whose point nobody asks after: planted, or put away without a word of it. */
function pointWords(held: ObjectState): string | null {
  const { is } = held.object;
  if ((is !== "shaft" && is !== "blade") || isPlanted(held) || isLoose(held)) return null;
  const [where, height] = [lookWords(held), heightWords(levelsOf(held))];
  if (where !== null)
    return height === null ? `point ${where}, how high is not known` : `point ${where}${height.after}`;
  if (height !== null) return `point ${height.alone}, where it looks is not known`;
  return isInNoHand(held) ? null : "where the point looks and how high is not known";
}

/** Where the point looks; null where that is not known, or too loosely to say in a word or two. */
function lookWords({ bearing }: ObjectState): string | null {
  const all = possible<Bearing>(bearing, []);
  const words = [...new Set(all.map((one) => (one.is === "clock" ? direction(one.hour) : `${one.is} ${one.what}`)))];
  if (words.length > 0 && words.length <= 2) return words.join(" or ");
  const side = HANDS.find((hand) => isOnSide(all, hand));
  return side === undefined ? null : `to the ${side}`;
}

function isOnSide(all: readonly Bearing[], hand: Hand): boolean {
  return all.length > 0 && all.every((one) => mayBe(bearingOnSide(hand), one));
}

const HEIGHTS: Record<Level, string> = {
  ground: "on the ground",
  low: "low",
  middle: "at middle height",
  high: "high",
};

/** How high, after where the point looks and by itself; null where it is not known. */
function heightWords(levels: readonly Level[]): { after: string; alone: string } | null {
  const [level, other] = levels;
  if (level === undefined) return null;
  const alone = levels.map((one) => HEIGHTS[one]).join(" or ");
  if (other !== undefined) return { alone, after: `, ${alone}` };
  const joint = level === "low" || level === "high" ? " and" : level === "ground" ? "," : "";
  return { alone, after: `${joint} ${alone}` };
}

const DIRECTIONS = [
  "forward",
  "forward right",
  "right",
  "back right",
  "back",
  "back left",
  "left",
  "forward left",
] as const;

/** Twelve hours to eight words: whole quarters have their own, what lies between is told by both. */
function direction(hour: number): string {
  const quarter = Math.floor((hour % 12) / 3) * 2;
  return DIRECTIONS[hour % 3 === 0 ? quarter : quarter + 1] ?? "forward";
}
