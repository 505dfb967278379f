/** shared/ride/rules/place.ts - on the ground, figures that fit, beginnings where the text has them, joins that are told.
 *  May import: shared/ground, shared/ride, siblings. Keeps rules V30-V34 (shared/ride/rules/RULES.md). Metres. */
import { inWords } from "../../ground/figures/figure.ts";
import { clearanceOf } from "../../ground/fit.ts";
import { distanceToWall, findStation, type RidingGround } from "../../ground/grounds.ts";
import { leanDegrees } from "../../ground/lean.ts";
import { pathOf } from "../../ground/path.ts";
import { type Piece, poseOn, type Turn } from "../../ground/piece.ts";
import { beside, distance, type Point, type Pose } from "../../ground/plane.ts";
import { USUAL_BODY } from "../../ground/riders.ts";
import { type GroundStation, isAtStation, placeOfStation } from "../../ground/stations.ts";
import { USUAL } from "../../ground/usual.ts";
import { exactly } from "../../hands/known.ts";
import { slotOf } from "../../hands/known-act.ts";
import { cueOf } from "../come-to-cue.ts";
import { stationNamed } from "../event-meant.ts";
import { isBeside } from "../places.ts";
import type { Ridden, RiddenStage } from "../ridden.ts";
import type { RiddenAct, RideContext } from "../ride-context.ts";
import { MOST_LEAN } from "./bends.ts";
import { type Breach, type Judgement, kept, type RideRule } from "./rule.ts";

/** A horse is about 8 ft long (US Cavalry Drill Regulations 1916): within it of a gate in the wall one is going through. */
const HORSE_LENGTH = USUAL_BODY.ahead + USUAL_BODY.behind;
/** The rider's knee is that far from his middle: what the wall must leave free. A guess. */
const ROOM = USUAL_BODY.halfWidth;

/** A breach of a stage as a whole. */
function ofStage(ridden: Ridden, stage: number, about: string, is: string, lift: string): Breach {
  const { from = 0, to = 0 } = ridden.stages[stage] ?? {};
  const place = { verdict: "broken" as const, stage, about, from, to, timed: false, lasts: false };
  return { ...place, action: null, quote: [], is, lift, look: false };
}

/** Whether the wall is nearer than it should be at some place of the piece that is not at a station in the wall. */
function nearestInWay(ground: RidingGround, piece: Piece): { metres: number; at: Point } | null {
  const clearance = clearanceOf(ground, pathOf([piece], USUAL.tolerance));
  if (clearance.metres >= ROOM - 1e-9) return null;
  const gates = ground.stations
    .map((station) => placeOfStation(station, clearance.at))
    .filter((place) => distanceToWall(ground, place) < ROOM);
  const steps = Math.max(1, Math.ceil(piece.length / 0.25));
  let least: { metres: number; at: Point } | null = null;
  for (let step = 0; step <= steps; step += 1) {
    const at = poseOn(piece, step / steps);
    const metres = distanceToWall(ground, at);
    if (metres >= ROOM - 1e-9 || gates.some((gate) => distance(gate, at) <= HORSE_LENGTH)) continue;
    if (least === null || metres < least.metres) least = { metres, at };
  }
  return least;
}

/** Hundredths of a degree between the moments of a turn that are looked at. */
const TURN_STEP = 500;

/** How far head or croup come past the wall where the horse turns on the spot: it swings about the part of it that stays.
 *  Null where the wall leaves it room, or it turns in a gate. */
function sweptPast(ground: RidingGround, turn: Turn): { metres: number; at: Point } | null {
  const { ahead, behind } = USUAL_BODY;
  const pivot = turn.about === "middle" ? 0 : turn.about === "haunches" ? -behind : ahead;
  const stays = beside({ ...turn.at, heading: turn.heading }, pivot);
  if (inGate(ground, turn.at)) return null;
  let least: { metres: number; at: Point } | null = null;
  const steps = Math.ceil(Math.abs(turn.sweep) / TURN_STEP);
  for (let step = 0; step <= steps; step += 1) {
    const { heading } = poseOn(turn, step / steps);
    for (const end of [ahead - pivot, -behind - pivot]) {
      const at = beside({ ...stays, heading }, end);
      const metres = distanceToWall(ground, at);
      if (metres < -1e-6 && (least === null || metres < least.metres)) least = { metres, at };
    }
  }
  return least;
}

/** How far head or croup are past the wall where a straight line ends or the horse stands. On a bend the horse bends along
 *  its line, and along a line the end it goes toward is nearest to the wall where the line ends. A croup in a gate is that
 *  of one who comes in by it. Null where both are inside. */
function bodyPast(ground: RidingGround, piece: Piece): { metres: number; at: Point } | null {
  // Where the track runs along the wall itself, the wall is the line that is ridden.
  if (ground.trackOffset === 0 || (piece.is !== "straight" && piece.is !== "halt")) return null;
  const pose = poseOn(piece, 1);
  const [head, croup] = [beside(pose, USUAL_BODY.ahead), beside(pose, -USUAL_BODY.behind)];
  const ends = piece.is === "halt" ? [head, croup] : [piece.back ? croup : head];
  let least: { metres: number; at: Point } | null = null;
  for (const end of ends) {
    const metres = distanceToWall(ground, end);
    if (metres >= -WORTH_A_WORD || (end === croup && inGate(ground, pose))) continue;
    if (least === null || metres < least.metres) least = { metres, at: end };
  }
  return least;
}

/** Metres past the wall that are worth a word: less than an ear. */
const WORTH_A_WORD = 0.02;

/** Whether a station that lies in the wall is within a horse's length. */
export function inGate(ground: RidingGround, at: Point): boolean {
  return ground.stations
    .map((station) => placeOfStation(station, at))
    .some((place) => distanceToWall(ground, place) < ROOM && distance(place, at) <= HORSE_LENGTH);
}

type Near = { metres: number; piece: number; is: "way" | "swept" | "body" };

/** Whether the act gives its size only about, or as a range: a little less than is ridden is within it. */
function isAbout(act: RiddenAct | null): boolean {
  const size = act === null ? null : slotOf(act.known, "size", "length");
  const length = size === null ? null : exactly(size);
  return length !== null && length.is !== "exact";
}

function nearestIn(
  { ground, timed, way, pieces: what }: Ridden,
  { pieces }: RiddenStage,
  actOf: (action: string) => RiddenAct | null,
): Near | null {
  let least: Near | null = null;
  for (let index = pieces.from; index < pieces.to; index += 1) {
    const piece = timed.path.pieces[index];
    if (piece === undefined) continue;
    const onWay = nearestInWay(ground, piece);
    const swept = piece.is === "turn" && way === "mounted" && onWay === null ? sweptPast(ground, piece) : null;
    const action = what[index]?.action ?? null;
    const exact = action === null || !isAbout(actOf(action));
    const body = way === "mounted" && exact && onWay === null && swept === null ? bodyPast(ground, piece) : null;
    const near = onWay ?? swept ?? body;
    if (near !== null && (least === null || near.metres < least.metres))
      least = { metres: near.metres, piece: index, is: onWay ? "way" : swept ? "swept" : "body" };
  }
  return least;
}

function checkOnGround(ridden: Ridden, context: RideContext): Judgement[] {
  return ridden.stages.flatMap((stage, index): Judgement[] => {
    if (stage.pieces.to <= stage.pieces.from) return [];
    const least = nearestIn(ridden, stage, (id) => context.act(index, id));
    if (least === null) return [kept(index)];
    const action = ridden.pieces[least.piece]?.action ?? null;
    const [from, to] = [ridden.timed.times[least.piece] ?? stage.from, ridden.timed.times[least.piece + 1] ?? stage.to];
    const wayWords =
      least.is === "body"
        ? `the horse’s head or croup comes ${inWords(-least.metres)} m past the wall (a horse of ${inWords(HORSE_LENGTH)} m)`
        : least.is === "swept"
          ? `where the horse turns on the spot its head or croup swings ${inWords(-least.metres)} m past the wall (a horse of ${inWords(HORSE_LENGTH)} m)`
          : least.metres < -1e-6
            ? `the way goes ${inWords(-least.metres)} m past the wall`
            : `the rider’s line comes within ${inWords(Math.max(0, least.metres))} m of the wall, which leaves no room for his knee`;
    const lift =
      least.is === "body"
        ? "Either it stops farther from the wall, or what it goes to lies elsewhere"
        : least.is === "swept"
          ? "Either it turns to the other side or about another part of the horse, or farther from the wall"
          : "Either the figure is smaller or begins elsewhere, or the track is set farther from the wall";
    return [
      {
        ...ofStage(ridden, index, "wall", wayWords, lift),
        from,
        to,
        timed: true,
        action,
        quote: action === null ? [] : [action],
      },
    ];
  });
}

export const onGround: RideRule = {
  code: "on-ground",
  words: "says",
  sentence:
    "The way stays on the ground, with room for the rider’s knee along the wall and for the horse where it stops or turns.",
  basis: "common practice",
  source: `The wall is the ground’s own. The ${ROOM} m for horse and knee are a guess; at a gate in the wall they are not asked, but the horse’s head stays inside there too.`,
  severity: "bars",
  reach: "place",
  check: checkOnGround,
};

function checkFits(ridden: Ridden): Judgement[] {
  return ridden.stages.flatMap((stage, index): Judgement[] => {
    if (stage.is === "untreated") return [];
    if (stage.refused.length === 0) return [kept(index)];
    return stage.refused.map(({ action, sentence }) => ({
      ...ofStage(ridden, index, action ?? "figure", asClause(sentence), ""),
      action,
      quote: action === null ? [] : [action],
    }));
  });
}

/** A refusal is a sentence or two already; inside another sentence it begins small and ends without its stop. */
function asClause(sentence: string): string {
  const clause = sentence.replace(/\.$/, "");
  return /^(It|A|An|The|At|One|Some)\b/.test(clause) ? clause.charAt(0).toLowerCase() + clause.slice(1) : clause;
}

export const figureFits: RideRule = {
  code: "figure-fits",
  words: "says",
  sentence: "Every figure can be ridden as it is said, on this ground, from where the horse is.",
  basis: "common practice",
  source: "Geometry: sizes and stations as they are given.",
  severity: "bars",
  reach: "place",
  check: checkFits,
};

/** The station a stage begins from, by its first figure, else by what it waits for; `action` is the figure. */
function beginning(
  ground: RidingGround,
  { mirrored, source }: RiddenStage,
  acts: readonly RiddenAct[],
  context: RideContext,
): { action: string | null; station: GroundStation } | null {
  const act = acts.find(({ known }) => known.verb === "ride");
  const from = act === undefined ? null : slotOf(act.known, "from", "place");
  const place = from === null ? null : exactly(from);
  const named = place?.is === "station" ? findStation(ground, place.station) : null;
  if (named !== null) return { action: act?.id ?? null, station: named };
  const cue = cueOf(context.element(source) ?? { values: [] });
  const station = cue === null || from !== null ? null : stationNamed(cue, ground, mirrored);
  return station && { action: null, station };
}

function checkBegins(ridden: Ridden, context: RideContext): Judgement[] {
  return ridden.stages.flatMap((stage, index): Judgement[] => {
    const begins = beginning(ridden.ground, stage, context.actsOf(index), context);
    const [pose, joined] = [startOf(ridden, index, 0), startOf(ridden, index, stage.joined)];
    if (begins === null || pose === null || stage.is === "untreated") return [];
    const { station, action } = begins;
    // What waits for a station may begin beside it.
    const isNear = (at: Pose): boolean =>
      action === null && isBeside({ ground: ridden.ground, usual: USUAL }, station, at);
    if ([pose, joined].some((at) => at !== null && (isAtStation(station, at, HORSE_LENGTH) || isNear(at))))
      return [kept(index)];
    const away = inWords(Math.round(distance(pose, placeOfStation(station, pose)) * 10) / 10);
    const breach = ofStage(
      ridden,
      index,
      station.id,
      `the words begin it from ${station.name}, but the horse is ${away} m from there`,
      "Either the step before ends there, or a way between the two is not written down",
    );
    return [{ ...breach, action, quote: action === null ? [] : [action] }];
  });
}

/** Where the stage's way begins, after so many of its pieces; null where it has no more. */
function startOf(ridden: Ridden, index: number, after: number): Pose | null {
  const stage = ridden.stages[index];
  if (stage === undefined || stage.pieces.to <= stage.pieces.from + after) return null;
  const piece = ridden.timed.path.pieces[stage.pieces.from + after];
  return piece === undefined ? null : poseOn(piece, 0);
}

export const beginsThere: RideRule = {
  code: "begins-there",
  words: "says",
  sentence: "A step begins where the text has it begin, or is joined to there.",
  basis: "the text",
  source: "The text’s own station, within a horse’s length.",
  severity: "warns",
  reach: "place",
  check: checkBegins,
};

/** What is supplied below a horse's length needs no word of its own. */
function checkJoins(ridden: Ridden): Judgement[] {
  return ridden.stages.flatMap((stage, index): Judgement[] => {
    if (stage.is === "untreated" || stage.pieces.to <= stage.pieces.from) return [];
    const own = ridden.pieces.slice(stage.pieces.from, stage.pieces.to);
    const joins = own.flatMap(({ joins: is }, at) => (is ? [stage.pieces.from + at] : []));
    const length = joins.reduce((sum, at) => sum + (ridden.timed.path.pieces[at]?.length ?? 0), 0);
    if (length < HORSE_LENGTH) return [kept(index)];
    const [first, last] = [joins[0] ?? 0, joins.at(-1) ?? 0];
    const breach = ofStage(
      ridden,
      index,
      "join",
      `${inWords(Math.round(length * 10) / 10)} m of the way are supplied, to join what the words leave apart`,
      "It is drawn dotted; if the text tells the way somewhere, write it down as a step",
    );
    return [{ ...breach, from: ridden.timed.times[first] ?? stage.from, to: ridden.timed.times[last + 1] ?? stage.to }];
  });
}

/** A way of ours is no fault of the text: that it can hardly be ridden is told, and bars nothing. */
function checkJoinsRidden(ridden: Ridden): Judgement[] {
  if (ridden.way === "on foot") return [];
  return ridden.stages.flatMap((stage, index): Judgement[] => {
    let tightest: { at: number; lean: number; sentence: string } | null = null;
    for (let at = stage.pieces.from; at < stage.pieces.to; at += 1) {
      const [piece, what] = [ridden.timed.path.pieces[at], ridden.pieces[at]];
      if (piece?.is !== "arc" || what?.joins !== true) continue;
      const lean = leanDegrees(what.speed, piece.radius);
      if (lean <= MOST_LEAN || lean <= (tightest?.lean ?? 0)) continue;
      const pace = what.pace === null ? "" : `${what.pace === "full speed" ? "full-speed" : what.pace} `;
      const sentence = `the way to where it begins is our own, not the text’s: at the ${pace}${what.gait}, ${inWords(what.speed)} m/s, its bend of ${inWords(2 * piece.radius)} m across makes horse and rider lean ${Math.round(lean)}°, more than the ${MOST_LEAN}° this program takes for safe, and no wider bend was found`;
      tightest = { at, lean, sentence };
    }
    if (tightest === null) return [kept(index)];
    const lift = "The text would need to say how the horse comes there, or a slower gait until it has";
    const breach = ofStage(ridden, index, "join ridden", tightest.sentence, lift);
    const [from, to] = [ridden.timed.times[tightest.at] ?? stage.from, ridden.timed.times[tightest.at + 1] ?? stage.to];
    return [{ ...breach, verdict: "cannot tell", from, to, timed: true, look: true }];
  });
}

export const joinsRidden: RideRule = {
  code: "joins-ridden",
  words: "none",
  sentence: "A line that is supplied can be ridden at the gait that stands.",
  basis: "common practice",
  source: `A lean of at most ${MOST_LEAN}°, as for bends the text gives. A way that is supplied bars nothing: it can always be another.`,
  severity: "warns",
  reach: "place",
  check: checkJoinsRidden,
};

export const joinsShown: RideRule = {
  code: "joins-shown",
  words: "none",
  sentence: "What the text leaves out between two figures is joined by a line that is shown as supplied.",
  basis: "the text",
  source: "Named from a horse’s length (2.44 m) on.",
  severity: "notes",
  reach: "place",
  check: checkJoins,
};
