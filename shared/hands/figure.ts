/** shared/hands/figure.ts - a control state as plain data for drawing: the rider from above, and one sentence.
 *  May import: schema types, siblings in shared/hands. Metres in the rider's own frame: the origin is the rider's seat, x to
 *  the right, y ahead. The horse's outline is drawn by whoever draws; places of hands are drawn, not measured. */
import { withArticle } from "../article.ts";
import { handsOn, mainObject, otherHand, reinHands } from "./derived.ts";
import { exactly, isKnown, mayBe, possible } from "./known.ts";
import {
  type Bearing,
  type Carried,
  type ControlState,
  HANDS,
  type Hand,
  type ObjectState,
  type Zone,
} from "./state.ts";

export interface Point {
  x: number;
  y: number;
}
/** "may": it is possible and not known. */
export type Told = "yes" | "no" | "may";

export interface FigureHand {
  at: Point;
  reins: Told;
  /** On the main object. */
  grips: Told;
  /** Nothing is known of what this hand does. */
  unknown: boolean;
}

export interface HandsFigure {
  left: FigureHand;
  right: FigureHand;
  /** Of the main object, from its rear end to its point; null when where it is held or where it points is not known. */
  shaft: { butt: Point; point: Point; object: string; planted: Told } | null;
  /** Hour of the clock the point looks to, where it is known. */
  pointHour: number | null;
  /** Which parts are not known: drawn otherwise than what is known to be empty. */
  unknown: { reins: boolean; shaft: boolean; point: boolean; level: boolean; gait: boolean };
  /** For those who cannot see the drawing. */
  sentence: string;
}

/** Default lengths in metres where none is said. */
const LENGTH: Partial<Record<Carried["is"], number>> = { shaft: 2.4, blade: 0.9, shield: 0.6, sheath: 0.9 };
/** Share of the length from the rear end at which a zone lies. */
const PLACE: Record<Zone, number> = {
  butt: 0.05,
  rear: 0.28,
  balance: 0.45,
  fore: 0.62,
  head: 0.92,
  hilt: 0.08,
  blade: 0.5,
  "upper band": 0.1,
  ring: 0.1,
  strap: 0.5,
  end: 0.95,
};

/** `when` opens the sentence: "After step 3". */
export function handsFigure(state: ControlState, when = "Now"): HandsFigure {
  const main = mainObject(state);
  const left = figureHand(state, main, "left");
  const right = figureHand(state, main, "right");
  const pointHour = hourOf(main);
  return {
    left,
    right,
    shaft: main && shaftLine(main, { left: left.at, right: right.at }, pointHour),
    pointHour,
    unknown: {
      reins: state.reins.is !== "known",
      shaft: main !== null && handsOn(main).is !== "known",
      point: main !== null && main.bearing.is !== "known",
      level: main !== null && main.level.is !== "known",
      gait: state.gait.is !== "known",
    },
    sentence: `${when}: ${[reinWords(state), main && objectWords(main), main && pointWords(main)]
      .filter((part) => part !== null)
      .join(", ")}.`,
  };
}

/** The shaft of the figure alone, for those who ask at many moments. */
export function shaftOf(state: ControlState): HandsFigure["shaft"] {
  const main = mainObject(state);
  const hour = hourOf(main);
  if (main === null || hour === null) return null;
  return shaftLine(
    main,
    { left: figureHand(state, main, "left").at, right: figureHand(state, main, "right").at },
    hour,
  );
}

function hourOf(main: ObjectState | null): number | null {
  const bearing = main === null ? null : exactly(main.bearing);
  return bearing?.is === "clock" ? bearing.hour : null;
}

/** Where a hand is drawn: the rein hand before the saddle, a hand on the object at the side, an idle one at the thigh. */
function figureHand(state: ControlState, main: ObjectState | null, hand: Hand): FigureHand {
  const reins = told(possible(reinHands(state), [[], ["left"], ["right"]]), (hands) => hands.includes(hand));
  const grips: Told =
    main === null ? "no" : told(possible<Zone | null>(main.grip[hand], [null, "balance"]), (zone) => zone !== null);
  const side = hand === "left" ? -1 : 1;
  const unknown = reins === "may" && (main === null || grips === "may") && state.doing[hand].is === "unknown";
  return { at: handPlace(state, side, reins, grips), reins, grips, unknown };
}

function handPlace(state: ControlState, side: number, reins: Told, grips: Told): Point {
  if (reins === "yes") {
    const zone = exactly(state.reinZone);
    if (zone === "over the neck to the left") return { x: -0.16, y: 0.5 };
    if (zone === "over the neck to the right") return { x: 0.16, y: 0.5 };
    return { x: side * 0.08, y: 0.38 };
  }
  return grips === "yes" ? { x: side * 0.38, y: 0.15 } : { x: side * 0.3, y: 0.05 };
}

function told<T>(values: readonly T[], test: (value: T) => boolean): Told {
  const found = values.map(test);
  return found.every(Boolean) ? "yes" : found.some(Boolean) ? "may" : "no";
}

/** Drawn in the plane through the hand whose place on the object is known. */
function shaftLine(held: ObjectState, hands: Record<Hand, Point>, hour: number | null): HandsFigure["shaft"] {
  const [left, right] = [shareOf(held, "left"), shareOf(held, "right")];
  // With both hands on it the one farther from the point carries the drawing.
  const share = left === null || (right !== null && right < left) ? right : left;
  if (hour === null || share === null) return null;
  const at = hands[share === left ? "left" : "right"];
  const length = held.object.lengthMetres ?? LENGTH[held.object.is] ?? 1;
  const angle = (hour * Math.PI) / 6;
  return {
    butt: along(at, angle, -length * share),
    point: along(at, angle, length * (1 - share)),
    object: held.object.id,
    planted: told(possible(held.frame, ["carried", "planted"]), (frame) => frame === "planted"),
  };
}

/** Where a hand grips, as a share of the length from the butt; null where that is not known, or it does not. */
function shareOf({ grip }: ObjectState, hand: Hand): number | null {
  const zone = exactly<Zone | null>(grip[hand]);
  return zone === null ? null : PLACE[zone];
}

/** So many metres from a place, at radians clockwise from ahead. */
function along(from: Point, angle: number, distance: number): Point {
  return { x: round(from.x + Math.sin(angle) * distance), y: round(from.y + Math.cos(angle) * distance) };
}

/** To whole millimetres, so that the same state gives the same drawing everywhere. */
function round(metres: number): number {
  return Math.round(metres * 1000) / 1000 + 0;
}

function reinWords(state: ControlState): string {
  const place = exactly(state.reins);
  if (place === null) {
    const places = possible(state.reins, []);
    if (places.length === 0) return "where the reins are is not known";
    return `reins ${places.map(placeWords).join(" or ")}`;
  }
  return place === "away" ? "on foot" : `reins ${placeWords(place)}`;
}

function placeWords(place: string): string {
  if (place === "both hands") return "in both hands";
  return place.endsWith("hand") ? `in the ${place}` : place === "away" ? "away" : `on the ${place}`;
}

function objectWords(held: ObjectState): string {
  const hands = exactly(handsOn(held));
  const name = held.object.name;
  if (hands === null) {
    const [may, another] = HANDS.filter((hand) => !isKnown<Zone | null>(held.grip[hand], null));
    const [surely] = HANDS.filter((hand) => !mayBe<Zone | null>(held.grip[hand], null));
    if (surely !== undefined) return `${name} in the ${surely} and perhaps the ${otherHand(surely)}`;
    return another === undefined
      ? `${name} in the ${may}, or in none`
      : `which hand has ${withArticle(name)} is not known`;
  }
  if (hands.length === 2) return `${name} in both hands`;
  if (hands.length === 0) return exactly(held.frame) === "planted" ? `${name} planted` : `${name} in no hand`;
  return `${name} in the ${hands[0]}`;
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

function pointWords(held: ObjectState): string {
  const bearing = exactly<Bearing>(held.bearing);
  if (bearing === null) return "where the point looks is not known";
  return bearing.is === "clock" ? `point ${direction(bearing.hour)}` : `point ${bearing.is} ${bearing.what}`;
}

/** Twelve hours to eight words: whole quarters have their own, what lies between is told by both. */
function direction(hour: number): string {
  const quarter = Math.floor((hour % 12) / 3) * 2;
  return DIRECTIONS[hour % 3 === 0 ? quarter : quarter + 1] ?? "forward";
}
