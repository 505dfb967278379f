/** shared/ride/event-meant.ts - what an event that stands only in words is: coming to a station, a figure's end, a halt.
 *  May import: schema types, shared/ground, shared/hands, siblings in shared/ride. Keeps rule R32 (shared/ride/RULES.md).
 *  Only what the words clearly name is taken; where they name two things, neither is. */
import type { ValueOf } from "../../schema/values.ts";
import type { RidingGround } from "../ground/grounds.ts";
import type { GroundStation } from "../ground/stations.ts";
import { exactly } from "../hands/known.ts";
import { slotOf } from "../hands/known-act.ts";
import { measuresIn, type Thing } from "./lengths-in-words.ts";
import type { RiddenAct } from "./ride-context.ts";

export type EventMeant =
  /** The horse comes to it, or past it, for the so manyth time; and so many metres on, or before (negative). */
  { is: "station"; station: GroundStation; time: number; on: number } | FigureMeant | { is: "halt" };

/** Where a figure ends or begins; `time`: where the action that rides it is done several times, which of them, from 1. */
export interface FigureMeant {
  is: "figure";
  action: string;
  time: number;
  ends: boolean;
}

/** Null where the words name nothing of the kind. `mirrored`: ridden on the other rein, so that a station is its partner,
 *  as it is for everything that is ridden there. */
export function eventMeant(
  words: string,
  ground: RidingGround,
  acts: readonly RiddenAct[],
  mirrored: boolean,
  things: readonly Thing[] = [],
): EventMeant | null {
  const station = stationNamed(words, ground, mirrored);
  const on = metresOn(words, things);
  if (station !== null) return on === null ? null : { is: "station", station, time: timeNamed(words), on };
  const figure = figureMeant(words, acts);
  if (figure !== null) return figure;
  return HALTS.test(words) ? { is: "halt" } : null;
}

/** The one station that is named; null for none and for two. A name that only stands within a longer one is not named. */
export function stationNamed(words: string, ground: RidingGround, mirrored: boolean): GroundStation | null {
  const named = ground.stations.filter(({ name }) => isNamed(words, name));
  const whole = named.filter(({ name }) => !named.some((other) => other.name !== name && isNamed(other.name, name)));
  const [first, second] = whole;
  if (first === undefined || second !== undefined) return null;
  const partner = mirrored ? ground.stations.find(({ id }) => id === first.partner) : undefined;
  return partner ?? first;
}

/** Metres past a place ("three lengths past the trough"), negative before it; 0 where nothing is measured, null where it
 *  cannot be told which way, or how far. */
export function metresOn(words: string, things: readonly Thing[] = []): number | null {
  const [metres, another] = measuresIn(words, things);
  if (metres === undefined) return 0;
  const [past, before] = [PAST.test(words), BEFORE.test(words)];
  if (metres === null || another !== undefined || past === before) return null;
  return past ? metres : -metres;
}

/** Whether a name stands in the words as a word of its own. One letter alone counts only after a word of place: "at A",
 *  never "a groom" or "I". */
export function isNamed(words: string, name: string): boolean {
  const bare = name.trim().replace(/^the\s+/i, "");
  if (bare === "") return false;
  const escaped = bare.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
  const alone = `(?<![\\p{L}\\p{N}])${escaped}(?![\\p{L}\\p{N}])`;
  if ([...bare].length > 1) return new RegExp(alone, "iu").test(words);
  return new RegExp(`(?:${PLACE_WORDS})\\s+${alone}`, "u").test(words);
}

const PLACE_WORDS = "at|to|by|past|pass|passes|passing|reach|reaches|beside|near|opposite|letter|toward|towards|until";
export const ENDS =
  /\b(end|ends|ended|over|done|complete|completed|finished|closed|is made|has been (made|ridden)|has turned)\b/i;
export const BEGINS = /\b(begin|begins|begun|beginning|start|starts|started|sets out)\b/i;
const HALTS = /\b(halt|halts|halted|stands still|comes to a stand)\b/i;

const PAST = /\b(past|beyond|after|passed)\b/i;
const BEFORE = /\b(before|short of)\b/i;

/** "The first turn"; not "the first time", nor "the first half of the circle". */
const WHICH = /\b(first|second|third|fourth|fifth)\b(?! (?:time|half|quarter|third)\b)/i;
const TIMES = ["first", "second", "third", "fourth", "fifth"];

/** "The gate, the second time": 2. Where no time is said, the first. */
function timeNamed(words: string): number {
  const [, ordinal = "first"] = /\b(first|second|third|fourth|fifth) time\b/i.exec(words) ?? [];
  return TIMES.indexOf(ordinal.toLowerCase()) + 1;
}

/** What a figure is called besides its own name. */
const CALLED: Partial<Record<ValueOf<"figure">, RegExp>> = {
  circle: /\b(circle|round|lap)\b/i,
  "part circle": /\b(circle|arc|bend)\b/i,
  volte: /\b(volte|circle|round)\b/i,
  "half volte": /\b(half volte|volte)\b/i,
  "half volte reversed": /\b(half volte|volte)\b/i,
  straight: /\b(line|straight)\b/i,
  "along the wall": /\b(wall|lap)\b/i,
  "change across": /\b(change|line)\b/i,
  "figure of eight": /\b(figure of eight|eight)\b/i,
  turn: /\b(turn|turned|turning)\b/i,
  "spiral in": /\bspiral\b/i,
  "spiral out": /\bspiral\b/i,
};
const ANY_FIGURE = /\b(figure|way|movement)\b/i;

/** The figure among these acts, in the order of the ride, whose end or beginning is named: "the turn", "the second
 *  circle". Null where none is, or several could be; of one that is done several times the first is. */
export function figureMeant(words: string, acts: readonly Pick<RiddenAct, "id" | "known">[]): FigureMeant | null {
  const ends = ENDS.test(words);
  if (!ends && !BEGINS.test(words)) return null;
  const rides = acts.filter(({ known }) => known.verb === "ride");
  const called = rides.filter(({ known }) => {
    const held = slotOf(known, "figure", "figure");
    const figure = held === null ? null : exactly(held);
    return figure !== null && (CALLED[figure]?.test(words) ?? isNamed(words, figure));
  });
  const meant = called.length > 0 ? called : ANY_FIGURE.test(words) ? rides : [];
  const [, ordinal] = WHICH.exec(words) ?? [];
  const at = ordinal === undefined ? 0 : TIMES.indexOf(ordinal.toLowerCase());
  const one = meant[at];
  if (one === undefined || (ordinal === undefined && meant.some(({ id }) => id !== one.id))) return null;
  const time = meant.slice(0, at + 1).filter(({ id }) => id === one.id).length;
  return { is: "figure", action: one.id, time, ends };
}
