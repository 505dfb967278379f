/** server/publish/figures/plan-figure.ts - the plan of a ride on paper: the ground with its stations, the line of each
 *  step with arrows, its number where it begins, and the rider at a moment if one is asked for.
 *  May import: shared, siblings. Pure: the same ride gives the same bytes. */
import { type Arrow, arrowsOf } from "../../../shared/drawing/arrows.ts";
import { drawnOnce } from "../../../shared/drawing/drawn-once.ts";
import { type Area, placeLabels, type Spot } from "../../../shared/drawing/labels.ts";
import { drawnPieces, type Stroke, strokesOf } from "../../../shared/drawing/path-strokes.ts";
import { riderShapes } from "../../../shared/drawing/rider-shapes.ts";
import { type Beginning, beginningsTogether, stepBeginnings } from "../../../shared/drawing/step-beginnings.ts";
import { stepNumberWords } from "../../../shared/drawing/step-number-words.ts";
import { type Piece, poseOn } from "../../../shared/ground/piece.ts";
import { placeInWords } from "../../../shared/ground/place-in-words.ts";
import { beside, distance } from "../../../shared/ground/plane.ts";
import { handsFigure } from "../../../shared/hands/figure.ts";
import { poseAt, stageAt, stateAt } from "../../../shared/ride/moments.ts";
import type { Ridden } from "../../../shared/ride/ridden.ts";
import { html, type Markup } from "../markup.ts";
import { groundShapes, stationShapes, stationSigns, wallPoints } from "./ground-shapes.ts";
import { measureShapes } from "./measure.ts";
import { nameLabels, nameShapes } from "./name-labels.ts";
import { type Beside, beginningShapes, besideOf, numberLabels, numberShapes } from "./number-labels.ts";
import { DASHES, INK } from "./paper-ink.ts";
import { type Sheet, sheetFor } from "./plan-sheet.ts";
import { riderMarkup, threatMarkup } from "./rider-markup.ts";
import { shape, svgOf } from "./svg.ts";
import { timesRidden } from "./times-ridden.ts";

export interface PlanFigureOptions {
  /** Stages that are drawn, half-open; all of them when left out. */
  fromStage?: number;
  toStage?: number;
  /** How wide the figure is; as large as reads well on a page when left out. */
  millimetres?: number;
  /** The figure is made narrower where it would be taller than this. */
  tallest?: number;
  /** Draws the rider as at this moment of the ride, in seconds. */
  at?: number;
  /** Which stations are drawn, by their ids; all of them when left out. */
  stations?: ReadonlySet<string>;
}

export interface PaperFigure {
  svg: string;
  /** What it shows, for who cannot see it. */
  alternative: string;
  /** Millimetres. */
  width: number;
}

export interface PlanFigure extends PaperFigure {
  /** Whether a line is ridden several times, and a number says so: "1–6 ×4". */
  hasTimes: boolean;
}

/** Millimetres on the paper: between two arrows, what each keeps clear, half an arrow, and between places that are one. */
const ARROWS_APART = 24;
const ARROWS_CLEAR = 3.2;
const ARROW = 1.05;
const END = 1.5;
const ONE_PLACE = 2.2;
const WIDTH = { stated: 0.5, implied: 0.5, supplied: 0.55, join: 0.55 } as const;
/** How near places on the line are looked at, so that words do not hide it. */
const SAMPLED = 0.8;

/** One rider's line on a plan. */
export interface PlanRide {
  ride: Ridden;
  /** "A", and who that is; both empty where one rides alone. */
  letter: string;
  role: string;
  /** Half-open. */
  stages: { from: number; to: number };
  /** When he begins, in seconds of the common clock. */
  starts: number;
}

/** Throws RangeError for a range of stages that is not one. */
export function planFigure(ridden: Ridden, options: PlanFigureOptions = {}): PlanFigure {
  const stages = { from: options.fromStage ?? 0, to: options.toStage ?? ridden.stages.length };
  if (!(stages.from >= 0 && stages.from <= stages.to && stages.to <= ridden.stages.length))
    throw new RangeError(
      `A plan is drawn of stages 0 to ${ridden.stages.length}, not from ${stages.from} to ${stages.to}.`,
    );
  return planOfRides([{ ride: ridden, letter: "", role: "", stages, starts: 0 }], options);
}

/** Several riders on one ground; at least one. */
export function planOfRides(
  rides: readonly PlanRide[],
  { millimetres, tallest, at, stations }: Omit<PlanFigureOptions, "fromStage" | "toStage">,
): PlanFigure {
  const [first] = rides;
  if (first === undefined) throw new RangeError("A plan is drawn of one ride at least.");
  const whole = first.ride.ground;
  const shown = whole.stations.filter(({ id }) => stations?.has(id) ?? true);
  const ground = { ...whole, stations: shown };
  const drawn = drawnOnce(rides.flatMap(({ ride, stages }) => range(stages).flatMap((one) => drawnPieces(ride, one))));
  const pieces = drawn.map(({ piece }) => piece);
  const sheet = sheetFor(ground, pieces, { width: millimetres, tallest });
  const apart = ONE_PLACE / sheet.scale;
  const begun = rides.map(({ ride, stages }) => stepBeginnings(ride, apart, stages));
  const beginnings = beginningsTogether(begun, apart);
  const times = beginnings.map((one) => timesRidden(rides, one.numbers));
  const arrows = arrowsOfAll(rides, beginnings, sheet);
  const riders = at === undefined ? [] : rides.flatMap((one) => riderAt(one.ride, at - one.starts, sheet) ?? []);
  const measure = measureShapes(sheet, sheet.at({ x: -ground.width / 2, y: 0 }).x);

  const names = nameLabels(ground, sheet);
  const numbers = numberLabels(
    ground,
    [...beginnings.map((one, index) => besideOf(one, times[index] ?? 1)), ...rides.flatMap(letterOf)],
    sheet,
  );
  const spots = placeLabels(
    [...names, ...numbers].map(({ label }) => label),
    {
      sheet: { x: sheet.width / 2, y: sheet.height / 2, width: sheet.width, height: sheet.height },
      points: [...samples(pieces, sheet), ...wallPoints(ground, sheet)],
      areas: [
        ...stationSigns(ground, sheet),
        ...measure.areas,
        ...arrows.map(({ pose }) => ({ ...sheet.at(pose), width: 2 * ARROW, height: 2 * ARROW })),
        ...riders.flatMap(({ areas }) => areas),
      ],
    },
  );
  const alternative = planWords(rides, begun);
  const svg = svgOf({
    width: sheet.width,
    height: sheet.height,
    alternative,
    shapes: [
      ...groundShapes(ground, sheet),
      lineShapes(strokesOf(drawn, meet), sheet),
      arrowShapes(arrows, sheet),
      ...rides.flatMap(({ ride, stages }) => endShape(ride, stages, sheet)),
      ...stationShapes(ground, sheet),
      ...measure.shapes,
      ...nameShapes(names, spots.slice(0, names.length), sheet),
      ...beginningShapes(numbers, spots.slice(names.length)),
      ...riders.map(({ markup }) => markup),
      ...numberShapes(numbers, spots.slice(names.length), sheet),
    ],
  });
  return { svg, alternative, width: Math.round(sheet.width * 10) / 10, hasTimes: times.some((one) => one > 1) };
}

function arrowsOfAll(rides: readonly PlanRide[], beginnings: readonly Beginning[], { scale }: Sheet): Arrow[] {
  const places = beginnings.map(({ pose }) => pose);
  const arrows: Arrow[] = [];
  for (const { ride, stages } of rides) {
    const wishes = { apart: ARROWS_APART / scale, clear: ARROWS_CLEAR / scale, places, stages, others: [...arrows] };
    arrows.push(...arrowsOf(ride, wishes));
  }
  return arrows;
}

/** A rider's letter stands where he sets out. */
function letterOf({ ride, letter, stages }: PlanRide): Beside[] {
  const piece = ride.timed.path.pieces[ride.stages[stages.from]?.pieces.from ?? 0];
  return letter === "" || piece === undefined ? [] : [{ pose: poseOn(piece, 0), words: letter, ink: INK }];
}

const range = ({ from, to }: { from: number; to: number }) => Array.from({ length: to - from }, (_, at) => from + at);

const meet = (first: Piece, second: Piece) => distance(poseOn(first, 1), poseOn(second, 0)) < 0.01;

/** Weaker lines first, so that what is stated lies over them where they cross. */
function lineShapes(strokes: readonly Stroke[], sheet: Sheet): Markup {
  const order = ["join", "supplied", "implied", "stated"] as const;
  const millimetres = (count: number) => (count / sheet.scale).toFixed(4);
  const lines = order.flatMap((line) => {
    const d = strokes.filter((stroke) => stroke.line === line).map((stroke) => stroke.d);
    if (d.length === 0) return [];
    const dashes = DASHES[line];
    return [
      shape("path", {
        d: d.join(" "),
        fill: "none",
        stroke: INK,
        "stroke-width": millimetres(WIDTH[line]),
        "stroke-linejoin": "round",
        "stroke-linecap": line === "implied" ? "butt" : "round",
        "stroke-dasharray":
          dashes === null
            ? null
            : dashes
                .split(" ")
                .map((part) => millimetres(Number(part)))
                .join(" "),
      }),
    ];
  });
  return shape("g", { transform: sheet.transform }, lines);
}

function arrowShapes(arrows: readonly Arrow[], sheet: Sheet): Markup {
  const d = arrows.map(({ pose, toward }) => {
    const { x, y } = sheet.at(pose);
    const along = ((toward / 100) * Math.PI) / 180;
    const [dx, dy] = [Math.cos(along), -Math.sin(along)];
    const end = (side: 1 | -1) => place({ x: x - ARROW * (dx + side * dy), y: y - ARROW * (dy - side * dx) });
    return `M${end(1)} L${place({ x: x + dx * 0.25, y: y + dy * 0.25 })} L${end(-1)}`;
  });
  if (d.length === 0) return html``;
  return shape("path", {
    d: d.join(" "),
    fill: "none",
    stroke: INK,
    "stroke-width": 0.36,
    "stroke-linejoin": "miter",
  });
}

/** A short bar across the line where the last stage that is drawn ends. */
function endShape(ridden: Ridden, { from, to }: { from: number; to: number }, sheet: Sheet): Markup[] {
  const piece = ridden.timed.path.pieces[(ridden.stages[to - 1]?.pieces.to ?? 0) - 1];
  if (piece === undefined || from === to) return [];
  const end = poseOn(piece, 1);
  const half = END / sheet.scale;
  const [left, right] = [sheet.at(beside(end, 0, half)), sheet.at(beside(end, 0, -half))];
  return [shape("path", { d: `M${place(left)} L${place(right)}`, fill: "none", stroke: INK, "stroke-width": 0.36 })];
}

const place = ({ x, y }: Spot) => `${x.toFixed(2)} ${y.toFixed(2)}`;

/** Places along the line, near enough that no word can stand between two of them. */
function samples(pieces: readonly Piece[], sheet: Sheet): Spot[] {
  return pieces.flatMap((piece) => {
    const count = Math.max(1, Math.ceil((piece.length * sheet.scale) / SAMPLED));
    return Array.from({ length: count + 1 }, (_, index) => sheet.at(poseOn(piece, index / count)));
  });
}

function riderAt(ridden: Ridden, seconds: number, sheet: Sheet): { markup: Markup; areas: Area[] } | null {
  const state = stateAt(ridden, seconds);
  if (state === null) return null;
  const pose = poseAt(ridden, seconds);
  const { x, y } = sheet.at(pose);
  const turn = 90 - pose.heading / 100;
  const scale = sheet.scale / 10;
  const now = stageAt(ridden, seconds);
  const threats = ridden.threats.filter(({ stage }) => stage === now).map(({ hour }) => threatMarkup(hour, scale));
  const shapes = [...threats, ...riderMarkup(riderShapes(handsFigure(state), ridden.way === "on foot"), scale)];
  const markup = shape(
    "g",
    { transform: `translate(${x.toFixed(3)} ${y.toFixed(3)}) rotate(${turn.toFixed(2)}) scale(${scale.toFixed(5)})` },
    shapes,
  );
  const size = 2.8 * sheet.scale;
  return { markup, areas: [{ x, y, width: size, height: size }] };
}

/** "Plan of the walled court, 20 by 40 m, with the line of …: step 1 begins at the gate; steps 2 3 begin near the well." */
function planWords(rides: readonly PlanRide[], begun: readonly (readonly Beginning[])[]): string {
  const { ride } = rides[0] as PlanRide;
  const { ground } = ride;
  const size = `${metres(ground.width)} by ${metres(ground.length)} m`;
  const told = rides.map(({ letter, role }, index) => {
    const places = (begun[index] ?? []).map(({ pose, numbers }) => {
      const which = numbers.length === 1 ? `step ${numbers[0]} begins` : `steps ${stepNumberWords(numbers)} begin`;
      return `${which} ${placeInWords(ground, pose)}`;
    });
    const says = places.length === 0 ? "no step is drawn on it" : places.join("; ");
    return letter === "" ? says : `${letter}, ${role}: ${says}`;
  });
  const whole = rides.every(({ stages, ride: of }) => stages.from === 0 && stages.to === of.stages.length);
  const line = `with the line of ${ride.title}${whole ? "" : ", a part"}`;
  return `Plan of ${ride.groundName}, ${size}, ${line}: ${told.join(". ")}. Dotted lines are supplied, dashed ones implied.`;
}

const metres = (value: number) => String(Number(value.toFixed(2)));
