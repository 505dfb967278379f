/** shared/drill/words.ts - every kind of value in short English.
 *  May import: schema types and constants, siblings in shared/drill. One phrase a kind, exhaustive by type: a new kind
 *  of value does not compile until it can be said. */
import type { Kind } from "../../schema/record.ts";
import type { ValueKind, ValueOf } from "../../schema/values.ts";
import { angleWords, lengthWords, massWords } from "./measure-words.ts";

/** What a row is called; null when it is not known here. */
export type Names = (kind: Kind, id: string) => string | null;

/** "left", "at the balance", "about 10 m (33 ft)", "three times". */
export function valueWords<K extends ValueKind>(kind: K, value: ValueOf<K>, names: Names): string {
  return PHRASES[kind](value, names);
}

const same = (value: string): string => value;
/** A row that is gone is said to be gone, never an id. */
const named = (kind: Kind) => (id: string, names: Names) => names(kind, id) ?? "(no longer there)";

const PHRASES: { [K in ValueKind]: (value: ValueOf<K>, names: Names) => string } = {
  hand: (hand) => (hand === "both" ? "both hands" : handNoun(hand)),
  side: ({ to, viewpoint }) => sided(to, viewpoint),
  object: named("objects"),
  hold: named("holds"),
  movement: named("movements"),
  zone: (zone) => ZONES[zone],
  palm: (palm) => `palm ${palm}`,
  bearing: bearingWords,
  level: (level) => LEVELS[level],
  facing: (facing) => FACINGS[facing],
  contact: contactWords,
  frame: same,
  reinZone: (zone) => (zone === "any" ? "anywhere" : zone),
  reinsOn: (place) => `on the ${place}`,
  gait: same,
  pace: same,
  lead: (lead) => `${lead} lead`,
  figure: (figure) => (figure === "straight" ? "straight on" : figure),
  amount: same,
  manner: (manner) => MANNERS[manner] ?? `as a ${manner}`,
  turn: ({ to, viewpoint }) => sided(to, viewpoint),
  spin: (spin) => (spin.plane === "level" ? `${spin.sense}, level${seenBy(spin.viewpoint)}` : spin.sense),
  length: lengthWords,
  angle: angleWords,
  mass: massWords,
  count: (count) => (count.is === "until" ? `until ${count.event}` : times(count.n)),
  place: (place, names) => (place.is === "words" ? place.words : named("stations")(place.station, names)),
  outline: (outline) => `a ${outline.is}`,
  mount: same,
  bend: (bend) => `${bend} the bend`,
  purpose: (purpose) => `to ${purpose}`,
  threat: named("threats"),
  timing: timingWords,
  part: same,
  words: same,
};

/** "the left hand", "the hand on the shaft". */
function handNoun(hand: Exclude<ValueOf<"hand">, "both">): string {
  switch (hand) {
    case "the other":
      return "the other hand";
    case "rein hand":
    case "shaft hand":
      return `the ${hand}`;
    default:
      return `the ${hand} hand`;
  }
}

function sided(to: string, viewpoint: ValueOf<"turn">["viewpoint"]): string {
  return `${to}${seenBy(viewpoint)}`;
}

/** Left and right are the rider's unless said; whose they are in the text is in the value itself. */
function seenBy(viewpoint: ValueOf<"turn">["viewpoint"]): string {
  switch (viewpoint) {
    case "rider":
    case "text does not say":
      return "";
    case "from above":
      return " (seen from above)";
    case "onlookers":
      return " (as the onlookers see it)";
  }
}

const ZONES: Record<ValueOf<"zone">, string> = {
  butt: "at the butt",
  rear: "behind the balance",
  balance: "at the balance",
  fore: "before the balance",
  head: "at the head",
  hilt: "by the hilt",
  blade: "by the blade",
  "upper band": "at the upper band",
  ring: "by the ring",
  strap: "by the strap",
  end: "at the end",
};

const LEVELS: Record<ValueOf<"level">, string> = {
  low: "low",
  middle: "middle height",
  high: "high",
  ground: "to the ground",
};

const FACINGS: Record<ValueOf<"facing">, string> = {
  left: "to the left",
  right: "to the right",
  front: "to the front",
  rear: "to the rear",
  up: "up",
  down: "down",
};

const MANNERS: Partial<Record<ValueOf<"manner">, string>> = {
  "on the haunches": "on the haunches",
  "on the forehand": "on the forehand",
  "roll back over the hocks": "rolling back over the hocks",
  "halt and turn": "halting first",
};

/** Clock hours 1 to 12 from the rider, said as a rider says them; the hour is kept where the words alone are loose. */
export function clockWords(hour: number): string {
  const words = CLOCK[hour % 12] ?? "";
  return hour % 3 === 0 ? words : `${words} (${hour} o’clock)`;
}

/** Where an hour looks, without the hour: "forward left". Index 0 is twelve o'clock. */
export const CLOCK = [
  "forward",
  "forward right",
  "forward right",
  "right",
  "back right",
  "back right",
  "back",
  "back left",
  "back left",
  "left",
  "forward left",
  "forward left",
] as const;

function bearingWords(bearing: ValueOf<"bearing">, names: Names): string {
  if (bearing.is === "clock") return clockWords(bearing.hour);
  const station = bearing.station === undefined ? null : names("stations", bearing.station);
  return `${bearing.is} ${station ?? bearing.what}`;
}

function contactWords({ with: support, side, words, degree }: ValueOf<"contact">): string {
  const how = { near: "near", touches: "touching", bears: "resting on" }[degree];
  if (support === "other") return words === undefined ? `${how} something` : `${how} ${words}`;
  const place = `${how} the ${side === undefined ? "" : `${side} `}${support}`;
  return words === undefined ? place : `${place}, ${words}`;
}

function timingWords(timing: ValueOf<"timing">, names: Names): string {
  const action = (id: string) => names("actions", id) ?? "another action";
  switch (timing.is) {
    case "before":
      return "before the step";
    case "at":
      return timing.over === 0
        ? "at the start"
        : timing.over === timing.of
          ? "at the end"
          : timing.over * 2 === timing.of
            ? "half-way"
            : `at ${partOfWay(timing.over, timing.of)}`;
    case "after":
      return "after the step";
    case "during":
      return `from ${partOfWay(...timing.from)} to ${partOfWay(...timing.to)}`;
    case "throughout":
      return "throughout";
    case "when":
      return `when ${timing.event}`;
    case "until":
      return `until ${timing.event}`;
    case "with":
      return `together with: ${action(timing.action)}`;
    case "after action":
      return `after: ${action(timing.action)}`;
  }
}

/** "a third of the way", "half-way", "the start". */
function partOfWay(over: number, of: number): string {
  if (over === 0) return "the start";
  if (over === of) return "the end";
  if (over * 2 === of) return "half-way";
  const [count, part] = [COUNTS[over - 1], PARTS[of]];
  if (part === undefined || count === undefined) return `${over}/${of} of the way`;
  return `${over === 1 ? "a" : count} ${part}${over === 1 ? "" : "s"} of the way`;
}

const COUNTS = ["a", "two", "three", "four"] as const;
const PARTS: { readonly [of: number]: string } = { 3: "third", 4: "quarter", 5: "fifth" };

function times(count: number): string {
  return { 1: "once", 2: "twice", 3: "three times", 4: "four times" }[count] ?? `${count} times`;
}
