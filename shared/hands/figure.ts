/** shared/hands/figure.ts - a control state as plain data for drawing: the rider from above, and one sentence.
 *  May import: schema types, siblings in shared/hands. Metres in the rider's own frame: the origin is the rider's seat, x to
 *  the right, y ahead. The horse's outline is drawn by whoever draws; places of hands are drawn, not measured. */
import { handsOn, mainObject, reinHands } from "./derived.ts";
import { figureSentence } from "./figure-words.ts";
import { exactly, mayBe, possible } from "./known.ts";
import {
  type Carried,
  type Contact,
  type ControlState,
  HANDS,
  type Hand,
  type Level,
  type ObjectState,
  type Zone,
} from "./state.ts";
import { isInNoHand, isLoose, isPlanted, levelsOf, shownObjects } from "./things-shown.ts";

export interface Point {
  x: number;
  y: number;
}
/** "may": it is possible and not known. */
export type Told = "yes" | "no" | "may";

export interface FigureHand {
  at: Point;
  reins: Told;
  /** On any object that is shown. */
  grips: Told;
  /** Nothing is known of what this hand does. */
  unknown: boolean;
}

/** From the rear end of an object to its point. */
export interface FigureLine {
  butt: Point;
  point: Point;
  object: string;
  planted: Told;
  /** Which hand has it is known, but not where along it: drawn through its usual grip, and broken. */
  looselyHeld: boolean;
}

/** One object that a hand holds, or that lies or stands where it is known to. */
export interface FigureThing {
  object: string;
  name: string;
  /** Null when where it is held or where it points is not known, and for what lies somewhere about the rider. */
  line: FigureLine | null;
  /** It is, or may be, in a hand, and cannot be drawn for want of what is known. */
  open: boolean;
  /** Has a point, and is not planted: how high it is carried is part of the picture. */
  carried: boolean;
  /** How high its point may be, at most two; none: not known. */
  levels: readonly Level[];
}

export interface HandsFigure {
  left: FigureHand;
  right: FigureHand;
  /** Of the main object in a hand; null when where it is held or where it points is not known. */
  shaft: FigureLine | null;
  /** What is held, planted, or borne, the main object first. */
  things: readonly FigureThing[];
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
  const shown = shownObjects(state);
  const left = figureHand(state, shown, "left");
  const right = figureHand(state, shown, "right");
  const hands = { left: left.at, right: right.at };
  return {
    left,
    right,
    shaft: main && shaftLine(main, hands, hourOf(main)),
    things: shown.map((held) => figureThing(held, hands)),
    pointHour: hourOf(main),
    unknown: {
      reins: state.reins.is !== "known",
      shaft: main !== null && handsOn(main).is !== "known",
      point: main !== null && main.bearing.is !== "known",
      level: main !== null && main.level.is !== "known",
      gait: state.gait.is !== "known",
    },
    sentence: figureSentence(state, shown, when),
  };
}

function figureThing(held: ObjectState, hands: Record<Hand, Point>): FigureThing {
  const { id, name, is } = held.object;
  const hour = hourOf(held);
  const noHand = isInNoHand(held);
  const line =
    shaftLine(held, hands, hour) ??
    (noHand && !isPlanted(held) ? restingLine(held, hour) : looseLine(held, hands, hour));
  const pointed = is === "shaft" || is === "blade";
  const levels = levelsOf(held);
  return {
    object: id,
    name,
    line,
    open: line === null && !noHand && !isPlanted(held) && pointed,
    carried: pointed && !isPlanted(held) && !isLoose(held) && (!noHand || levels.length > 0),
    levels,
  };
}

/** The shaft of the figure alone, for those who ask at many moments. */
export function shaftOf(state: ControlState): FigureLine | null {
  const main = mainObject(state);
  const hour = hourOf(main);
  if (main === null || hour === null) return null;
  const shown = shownObjects(state);
  return shaftLine(
    main,
    { left: figureHand(state, shown, "left").at, right: figureHand(state, shown, "right").at },
    hour,
  );
}

function hourOf(main: ObjectState | null): number | null {
  const bearing = main === null ? null : exactly(main.bearing);
  return bearing?.is === "clock" ? bearing.hour : null;
}

/** Where a hand is drawn: the rein hand before the saddle, a hand on the object at the side, an idle one at the thigh. */
function figureHand(state: ControlState, shown: readonly ObjectState[], hand: Hand): FigureHand {
  const having = possible(reinHands(state), [[], ["left"], ["right"]]);
  const reins = state.way === "on foot" ? "no" : told(having, (hands) => hands.includes(hand));
  const each = shown.map(({ grip }) =>
    told(possible<Zone | null>(grip[hand], [null, "balance"]), (zone) => zone !== null),
  );
  const grips: Told = each.includes("yes") ? "yes" : each.includes("may") ? "may" : "no";
  const side = hand === "left" ? -1 : 1;
  const unknown = reins === "may" && (shown.length === 0 || grips === "may") && state.doing[hand].is === "unknown";
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
function shaftLine(held: ObjectState, hands: Record<Hand, Point>, hour: number | null): FigureLine | null {
  const [left, right] = [shareOf(held, "left"), shareOf(held, "right")];
  // With both hands on it the one farther from the point carries the drawing.
  const share = left === null || (right !== null && right < left) ? right : left;
  if (hour === null || share === null) return null;
  return lineThrough(held, hands[share === left ? "left" : "right"], share, hour);
}

/** `share`: how much of its length lies behind the place it goes through. */
function lineThrough(held: ObjectState, at: Point, share: number, hour: number): FigureLine {
  const length = held.object.lengthMetres ?? LENGTH[held.object.is] ?? 1;
  const angle = (hour * Math.PI) / 6;
  return {
    butt: along(at, angle, -length * share),
    point: along(at, angle, length * (1 - share)),
    object: held.object.id,
    planted: told(possible(held.frame, ["carried", "planted"]), (frame) => frame === "planted"),
    looselyHeld: false,
  };
}

/** In a hand for sure, somewhere along it. */
function looseLine(held: ObjectState, hands: Record<Hand, Point>, hour: number | null): FigureLine | null {
  const hand = HANDS.find((one) => !mayBe<Zone | null>(held.grip[one], null));
  if (hour === null || hand === undefined) return null;
  const share = held.object.is === "blade" ? PLACE.hilt : PLACE.balance;
  return { ...lineThrough(held, hands[hand], share, hour), looselyHeld: true };
}

/** What bears it besides hands, and on which side, tells where it lies; held by nothing it is drawn at its balance. */
function restingLine(held: ObjectState, hour: number | null): FigureLine | null {
  const borne = held.contacts.is === "known" ? held.contacts.value : [];
  const support = borne.find(({ side, degree, with: what }) => side && degree !== "near" && what !== "ground");
  if (hour === null || support?.side === undefined) return null;
  return lineThrough(held, restingPlace(support, support.side), PLACE.balance, hour);
}

/** Beside the rider: the seat is the origin, the arm a little ahead of the leg. */
function restingPlace({ with: what }: Contact, side: Hand): Point {
  const ahead = what === "arm" || what === "forearm" || what === "wrist" || what === "shoulder";
  return { x: side === "left" ? -0.26 : 0.26, y: ahead ? 0.1 : -0.05 };
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
