/** shared/ride/figure-ask.ts - what an act of riding asks of the ground: figure, side, size, stations by name.
 *  May import: schema types, shared/ground, shared/hands, siblings in shared/ride. Keeps rules R13-R16 (shared/ride/RULES.md).
 *  A slot whose value is not known is as good as not said, and the figure then supplies it. */
import type { ValueKind, ValueOf } from "../../schema/values.ts";
import type { RidingGround } from "../ground/grounds.ts";
import { type FigureAsk, reinOf } from "../ground/index.ts";
import type { Pose, Side } from "../ground/plane.ts";
import { directionOf, otherSide } from "../ground/plane.ts";
import type { GroundStation } from "../ground/stations.ts";
import { exactly } from "../hands/known.ts";
import { slotOf } from "../hands/known-act.ts";
import type { ControlState } from "../hands/state.ts";
import { metresOn, stationNamed } from "./event-meant.ts";
import { timingOf } from "./horse-order.ts";
import { type Thing, thingsOf } from "./lengths-in-words.ts";
import { measured, metresWords } from "./measured.ts";
import type { RiddenAct } from "./ride-context.ts";

/** An act of riding, read. `side`, `size` and places are null where they are not said or have no place. */
export interface RideAct {
  act: RiddenAct;
  figure: ValueOf<"figure">;
  side: Side | null;
  /** Metres. */
  size: number | null;
  laps: number | null;
  amount: ValueOf<"amount"> | null;
  manner: ValueOf<"manner"> | null;
  about: GroundStation | null;
  from: GroundStation | null;
  toward: GroundStation | null;
  /** Metres past the place it goes to, or before it (negative), where its words measure that; else null. */
  on: number | null;
  /** Something is said of it only in words. */
  how: string | null;
  notes: string[];
}

/** Null where no figure is known: there is nothing to ride. */
export function readRide(act: RiddenAct, ground: RidingGround, pose: Pose, state: ControlState): RideAct | null {
  const notes: string[] = [];
  const value = <K extends ValueKind>(slot: string, kind: K): ValueOf<K> | null => {
    const held = slotOf(act.known, slot, kind);
    return held === null ? null : exactly(held);
  };
  const figure = value("figure", "figure");
  if (figure === null) return null;
  const length = value("size", "length");
  const size = length === null ? null : measured(length);
  if (size?.note) notes.push(`${start(act.words)}: ${size.note}.`);
  const laps = value("laps", "count");
  const turn = value("turn", "turn");
  const place = (slot: string): GroundStation | null => {
    const said = value(slot, "place");
    return said === null ? null : stationOf(said, ground, act, notes);
  };
  const toward = place("toward");
  const until = laps?.is === "until" ? laps.event : eventOf(act);
  const how = value("how", "words");
  const sized = size !== null || (laps !== null && laps.is !== "until");
  const end =
    (until === null ? null : endNamed(until, figure, ground, act, thingsOf(state))) ??
    (how === null || sized ? null : endNamed(how, figure, ground, act, thingsOf(state)));
  // Words that only tell a place the figure comes by measure nothing and do not say that it ends there.
  const ends = end !== null && (end.words === until || end.on !== 0 || UNTIL.test(end.words)) ? end : null;
  const goal = toward === null ? (ends?.station ?? null) : null;
  if (ends !== null && goal !== null)
    notes.push(
      `${start(act.words)}: “${UNTIL.test(ends.words) ? "" : ends.words === until ? "until " : ""}${ends.words}” is ridden until it is ${ends.on === 0 ? `at ${goal.name}` : onWords(ends.on, goal)}.`,
    );
  const untold = laps?.is === "until" && goal === null ? `until ${laps.event}` : null;
  if (untold !== null) notes.push(`How often is said only in words (“${untold}”).`);
  return {
    act,
    figure,
    side: turn === null ? null : sideMeant(turn, pose, state, notes),
    size: size?.metres ?? null,
    laps: laps?.is === "times" ? laps.n : null,
    amount: value("amount", "amount"),
    manner: value("manner", "manner"),
    about: place("about"),
    from: place("from"),
    toward: toward ?? goal,
    on: ends !== null && ends.on !== 0 && ends.station.id === (toward ?? goal)?.id ? ends.on : null,
    how: how ?? untold,
    notes,
  };
}

/** Figures that go on until one says that they end. */
const TO_A_STATION: ReadonlySet<ValueOf<"figure">> = new Set([
  "straight",
  "charge",
  "along the wall",
  "circle",
  "part circle",
  "volte",
]);

/** Figures that can end at a measured way past a place, or before it. */
const MEASURED: ReadonlySet<ValueOf<"figure">> = new Set(["straight", "charge", "along the wall"]);
const UNTIL = /\b(until|till|as far as|up to)\b/i;

interface EndNamed {
  words: string;
  station: GroundStation;
  on: number;
}

/** Where words have a figure end: at the one station they name, or so far past it or before it. */
function endNamed(
  words: string,
  figure: ValueOf<"figure">,
  ground: RidingGround,
  act: RiddenAct,
  things: readonly Thing[],
): EndNamed | null {
  const on = TO_A_STATION.has(figure) ? metresOn(words, things) : null;
  if (on === null || (on !== 0 && !MEASURED.has(figure))) return null;
  const station = stationNamed(words, ground, act.mirrored);
  return station && { words, station, on };
}

/** "7.32 m past the trough". */
export function onWords(on: number, station: GroundStation): string {
  return `${metresWords(Math.abs(on))} ${on > 0 ? "past" : "before"} ${station.name}`;
}

/** A line that is followed by a halt ends where the halt's words have it: "a spear's length before the stair". */
export function endingForHalt(ride: RideAct, halt: RideAct | null, state: ControlState, ground: RidingGround): RideAct {
  if (halt?.figure !== "halt" || halt.how === null || ride.on !== null || !MEASURED.has(ride.figure)) return ride;
  const end = endNamed(halt.how, ride.figure, ground, halt.act, thingsOf(state));
  if (end === null || end.on === 0 || end.station.id !== ride.toward?.id) return ride;
  const note = `${start(halt.act.words)}: “${halt.how}” is ridden as ${onWords(end.on, end.station)}.`;
  return { ...ride, on: end.on, notes: [...ride.notes, note] };
}

function eventOf(act: RiddenAct): string | null {
  const timing = timingOf(act);
  return timing?.is === "until" ? timing.event : null;
}

function start(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** By its id, or by a name the words hold; null with a note where the ground has no such place. */
function stationOf(
  place: ValueOf<"place">,
  ground: RidingGround,
  act: RiddenAct,
  notes: string[],
): GroundStation | null {
  const found =
    place.is === "station"
      ? ground.stations.find(({ id }) => id === place.station)
      : ground.stations.find(({ name }) => sameWords(name, place.words));
  if (found) return found;
  const what = place.is === "words" ? `“${place.words}” has` : "One of its places has";
  notes.push(`${start(act.words)}: ${what} no place on this ground, so it is left out.`);
  return null;
}

function sameWords(name: string, words: string): boolean {
  const plain = (text: string): string => text.toLowerCase().replace(/^the /, "").trim();
  return plain(name) === plain(words);
}

/** Left and right are the rider's; as onlookers see it they are the side of the ground: they sit at the head and look
 *  toward the foot, so their left is toward +x. */
function sideMeant(turn: ValueOf<"turn">, pose: Pose, state: ControlState, notes: string[]): Side {
  const { to, viewpoint } = turn;
  if (to === "inside" || to === "outside") {
    const known = exactly(state.rein);
    const inside = known ?? reinOf(pose);
    if (known === null)
      notes.push(`Which side is the ${to} is not known; the middle of the ground is taken as the inside.`);
    return to === "inside" ? inside : otherSide(inside);
  }
  const side: Side = to === "left" || to === "near" ? "left" : "right";
  if (viewpoint !== "onlookers") return side;
  const towardX = side === "left" ? 1 : -1;
  const across = directionOf(pose.heading).y * towardX;
  const seen: Side = across > 1e-9 ? "right" : across < -1e-9 ? "left" : side;
  notes.push(`“${side}” is taken as the onlookers at the head see it: the rider turns ${seen}.`);
  return seen;
}

/** How far it goes where that is said only in words: about three lengths of a horse. A guess. */
export const SHORT_WAY = 8;

/** The ask for shared/ground. Stations go by name, so that its sentences can be read. */
export function askOf(ride: RideAct, ground: RidingGround): FigureAsk {
  const { figure, side, size, laps, amount, manner } = ride;
  const named = (station: GroundStation | null): string | null => (station === null ? null : nameIn(ground, station));
  const toward = named(ride.toward);
  switch (figure) {
    case "straight":
    case "charge":
      return { figure, toward, length: size, on: ride.on };
    case "along the wall":
      return { figure, side, length: size, laps, toward, on: ride.on };
    case "change across":
      return { figure, from: named(ride.from), toward };
    case "circle":
    case "volte":
    case "part circle":
      return { figure, side, diameter: size, about: named(ride.about), laps, amount };
    case "half volte":
    case "half volte reversed":
      return { figure, side, diameter: size };
    case "figure of eight":
    case "oblong":
      return { figure, side, diameter: size, laps };
    case "serpentine":
      return { figure, side, diameter: size, loops: laps };
    case "spiral in":
    case "spiral out":
      return { figure, side, outer: size, laps };
    case "turn":
      return { figure, side, amount, manner, diameter: size };
    case "rein back":
      return { figure, length: size };
    case "halt":
      return { figure };
  }
}

/** Its name, or its id where another station of the ground has the same name. */
export function nameIn(ground: RidingGround, station: GroundStation): string {
  return ground.stations.some(({ id, name }) => id !== station.id && name === station.name) ? station.id : station.name;
}

/** What is said only in words about how far along the wall: a short way instead of a whole lap. */
export function withShortWay(ride: RideAct): RideAct {
  const open = ride.size === null && ride.laps === null && ride.toward === null;
  if (ride.figure !== "along the wall" || ride.how === null || !open) return ride;
  const note = `How far along the wall is said only in words (“${ride.how}”); ${metresWords(SHORT_WAY)} is supplied.`;
  return { ...ride, size: SHORT_WAY, notes: [...ride.notes, note] };
}
