/** shared/ride/compare-rides.ts - where one ride of an exercise differs from another, as under two readings of a crux: stretch by
 *  stretch for plan and lanes, and in a sentence or two.
 *  May import: shared/ground, siblings in shared/ride. Keeps rule R36 (shared/ride/RULES.md). Pure. Seconds from the start of each
 *  ride, metres on the ground frame. */
import { type Piece, poseOn } from "../ground/piece.ts";
import type { Lane, LaneSpan, Ridden, RiddenStage } from "./ridden.ts";

export interface RidesCompared {
  /** What differs, in words; that nothing does where nothing does. */
  sentence: string;
  /** Whether both ride the same line, whenever they do. */
  sameLine: boolean;
  /** Stages in which the line is another: indices into the stages of each ride. */
  lines: { first: readonly number[]; second: readonly number[] };
  /** Lanes and stages in which they tell something else, with the seconds of each ride. */
  lanes: readonly LaneDifference[];
}

export interface LaneDifference {
  lane: string;
  /** Null where that ride has not the stage. */
  first: Stretch | null;
  second: Stretch | null;
}
interface Stretch {
  from: number;
  to: number;
}

/** The same place of both rides; null where one has it not. */
interface Pair {
  first: number | null;
  second: number | null;
}

export function compareRides(first: Ridden, second: Ridden): RidesCompared {
  const pairs = pairedStages(first.stages, second.stages);
  const other = pairs.filter((pair) => !sameLineIn(first, second, pair));
  const laneKeys = [...new Set([...first.lanes, ...second.lanes].map(({ key }) => key))];
  const told = pairs.flatMap((pair) => {
    const lanes = laneKeys.flatMap((key) => laneDifference(first, second, key, pair) ?? []);
    return lanes.length === 0 ? [] : [{ pair, lanes }];
  });
  return {
    sentence: sentenceOf(first, second, pairs, told, other),
    sameLine: other.length === 0,
    lines: {
      first: other.flatMap((pair) => pair.first ?? []),
      second: other.flatMap((pair) => pair.second ?? []),
    },
    lanes: told.flatMap(({ lanes }) => lanes.map(({ words: _, ...lane }) => lane)),
  };
}

/** Stages that are the same element done for the same time; of what is left, those with the same printed number. */
function pairedStages(first: readonly RiddenStage[], second: readonly RiddenStage[]): Pair[] {
  const left = new Set(second.keys());
  const take = (isSame: (other: RiddenStage) => boolean): number | null => {
    const found = [...left].find((at) => isSame(second[at] as RiddenStage)) ?? null;
    if (found !== null) left.delete(found);
    return found;
  };
  const byElement = first.map((one) =>
    take(
      (other) =>
        other.element === one.element &&
        other.source === one.source &&
        other.round === one.round &&
        other.mirrored === one.mirrored,
    ),
  );
  const paired = first.map(
    (one, at): Pair => ({
      first: at,
      second:
        byElement[at] ??
        (one.number === null ? null : take(({ number, round }) => number === one.number && round === one.round)),
    }),
  );
  return [...paired, ...[...left].map((at): Pair => ({ first: null, second: at }))].sort(
    (a, b) => startOf(a, first, second) - startOf(b, first, second),
  );
}

function startOf(
  { first: at, second: other }: Pair,
  first: readonly RiddenStage[],
  second: readonly RiddenStage[],
): number {
  return (at === null ? second[other ?? 0]?.from : first[at]?.from) ?? 0;
}

function sameLineIn(first: Ridden, second: Ridden, pair: Pair): boolean {
  const [one, other] = [lineOf(first, pair.first), lineOf(second, pair.second)];
  return one.length === other.length && one.every((piece, at) => samePiece(piece, other[at] as Piece));
}

function lineOf({ stages, timed }: Ridden, at: number | null): Piece[] {
  const pieces = at === null ? undefined : stages[at]?.pieces;
  if (pieces === undefined) return [];
  // Time alone is no line: who stands longer rides nothing else.
  return timed.path.pieces.slice(pieces.from, pieces.to).filter(({ is }) => is !== "halt");
}

/** Nearer than the eye tells: a centimetre, and a tenth of a degree. */
function samePiece(one: Piece, other: Piece): boolean {
  if (one.is !== other.is) return false;
  return [0, 0.5, 1].every((share) => {
    const [a, b] = [poseOn(one, share), poseOn(other, share)];
    const turned = Math.abs(a.heading - b.heading) % 36_000;
    return Math.hypot(a.x - b.x, a.y - b.y) < 0.01 && Math.min(turned, 36_000 - turned) < 10;
  });
}

function laneDifference(
  first: Ridden,
  second: Ridden,
  key: string,
  pair: Pair,
): (LaneDifference & { words: string }) | null {
  const [one, other] = [spansIn(first, key, pair.first), spansIn(second, key, pair.second)];
  if (toldBy(one) === toldBy(other)) return null;
  const lane = first.lanes.find((known) => known.key === key) ?? second.lanes.find((known) => known.key === key);
  return {
    lane: key,
    first: stretchOf(first, pair.first),
    second: stretchOf(second, pair.second),
    words: `${lane?.name ?? key} ${differenceWords(one, other)}`,
  };
}

/** What the second has and the first has not, without what both have before and after it. */
function differenceWords(one: readonly LaneSpan[], other: readonly LaneSpan[]): string {
  const [all, others] = [spokenOf(one), spokenOf(other)];
  const [was, is] = apart(all, others);
  if (was.length === 0 && is.length === 0) return `${standingOf(other)} (in the first ${standingOf(one)})`;
  const [before, after] = [was[0], is[0]];
  if (before !== undefined && after !== undefined && was.length + is.length === 2) return clauseWords(before, after);
  if (was.length > 0 && is.length > 0) return `${quoted(is)} (in the first ${quoted(was)})`;
  const only = was.length > 0 ? was : is;
  if (only.includes(NOT_SAID)) return `${quoted(others)} (in the first ${quoted(all)})`;
  return was.length > 0 ? `without ${quoted(was)}` : `with ${quoted(is)}`;
}

/** Of two that are told in clauses, those the other has not. */
function clauseWords(before: string, after: string): string {
  const [was, is] = [before, after].map((words) => words.split(/(?<=[;,]) /));
  const bare = (clause: string) => clause.replace(/[;,]$/, "");
  const own = (list: readonly string[] = [], beside: readonly string[] = []) =>
    list.filter((clause) => !beside.map(bare).includes(bare(clause)));
  const [ownWas, ownIs] = [own(was, is), own(is, was)].map((clauses) => bare(clauses.join(" ")));
  if (ownWas && ownIs) return `${quoted([ownIs])} (in the first ${quoted([ownWas])})`;
  if (ownIs) return `with ${quoted([ownIs])}`;
  return ownWas ? `without ${quoted([ownWas])}` : `${quoted([after])} (in the first ${quoted([before])})`;
}

const NOT_SAID = "the text does not say";

const quoted = (list: readonly string[]): string =>
  list.map((words) => (words === NOT_SAID ? "not said" : `“${words}”`)).join(", then ");

/** Two lists without their common beginning and end. */
function apart(one: readonly string[], other: readonly string[]): [string[], string[]] {
  const shorter = Math.min(one.length, other.length);
  let [begin, end] = [0, 0];
  while (begin < shorter && one[begin] === other[begin]) begin += 1;
  while (end < shorter - begin && one.at(-1 - end) === other.at(-1 - end)) end += 1;
  return [one.slice(begin, one.length - end), other.slice(begin, other.length - end)];
}

function spansIn({ lanes }: Ridden, key: string, stage: number | null): LaneSpan[] {
  if (stage === null) return [];
  return (
    lanes.find((lane: Lane) => lane.key === key)?.spans.filter((span) => span.stage === stage && span.to > span.from) ??
    []
  );
}

/** What is seen of spans, whenever it is: what only comes later is seen on the line. */
function toldBy(spans: readonly LaneSpan[]): string {
  return spans
    .map(({ words, standing, shows }) => `${words}\t${standing}\t${shows}`)
    .filter((words, at, all) => words !== all[at - 1])
    .join("\n");
}

function spokenOf(spans: readonly LaneSpan[]): string[] {
  return spans.map(({ words }) => words).filter((words, at, all) => words !== all[at - 1]);
}

const standingOf = (spans: readonly LaneSpan[]): string =>
  [...new Set(spans.map(({ standing }) => standing))].join(", ");

function stretchOf({ stages }: Ridden, at: number | null): Stretch | null {
  const stage = at === null ? undefined : stages[at];
  return stage === undefined ? null : { from: stage.from, to: stage.to };
}

/** Of the first step in which they differ so many lanes are told; the other steps are named. */
const TOLD_LANES = 3;

interface Told {
  pair: Pair;
  lanes: readonly { words: string }[];
}

function sentenceOf(
  first: Ridden,
  second: Ridden,
  pairs: readonly Pair[],
  told: readonly Told[],
  other: readonly Pair[],
): string {
  const named = (list: readonly Pair[]) => inList([...new Set(list.map((pair) => stepName(first, second, pair)))]);
  const [most] = told;
  const later = told.slice(1).filter(({ pair }) => named([pair]) !== (most && named([most.pair])));
  return [
    most === undefined && other.length === 0 ? "They differ in nothing that is ridden." : "",
    most === undefined ? "" : tellingWords(most, named([most.pair])),
    later.length === 0 ? "" : `They differ at ${named(later.map(({ pair }) => pair))} too.`,
    lineWords(most !== undefined, other.length, pairs.length, named(other)),
    lastsWords(second.timed.duration - first.timed.duration),
  ]
    .filter((words) => words !== "")
    .join(" ");
}

function tellingWords({ pair, lanes }: Told, step: string): string {
  if (pair.second === null) return `The second leaves out ${step}.`;
  if (pair.first === null) return `The second also has ${step}.`;
  return `In the second, at ${step}: ${lanes
    .slice(0, TOLD_LANES)
    .map(({ words }) => words)
    .join("; ")}.`;
}

function lineWords(differ: boolean, others: number, all: number, named: string): string {
  if (others === 0) return differ ? "The line is the same." : "";
  return others === all ? "The line is another throughout." : `The line is another at ${named}.`;
}

/** Less than half a second is not seen. */
function lastsWords(longer: number): string {
  if (Math.abs(longer) < 0.5) return "";
  return `The second lasts ${Math.round(Math.abs(longer))} s ${longer > 0 ? "longer" : "less"}.`;
}

function stepName(first: Ridden, second: Ridden, { first: at, second: other }: Pair): string {
  const stage = at === null ? second.stages[other ?? 0] : first.stages[at];
  if (stage !== undefined && stage.number !== null) return `step ${stage.number}`;
  return stage?.title ? `“${stage.title}”` : "a part between steps";
}

/** "steps 4, 5 and 7"; where one of them has a title and no number, each by itself. */
function inList(names: readonly string[]): string {
  const steps = names.every((name) => /^step \d+$/.test(name));
  const list = steps && names.length > 1 ? names.map((name) => name.slice("step ".length)) : names;
  const joined = list.length < 2 ? (list[0] ?? "") : `${list.slice(0, -1).join(", ")} and ${list.at(-1)}`;
  return steps && names.length > 1 ? `steps ${joined}` : joined;
}
