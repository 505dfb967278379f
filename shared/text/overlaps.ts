/** shared/text/overlaps.ts - cuts overlapping marks into runs that can be drawn, and gives each mark a lane.
 *  May import: nothing. Keeps rules T24-T26 (shared/text/RULES.md). Offsets: UTF-16 units from 0, half-open. */

/** A mark of several pieces gives one entry per piece, all with its id. */
export type MarkedRange = { readonly id: string; readonly from: number; readonly to: number };

/** A longest run covered by the same ids; `from` = `to` for a gap, which then stands between two runs. */
export type Segment = {
  readonly from: number;
  readonly to: number;
  /** In the order of their lanes, lowest first. */
  readonly ids: readonly string[];
};

export type Overlaps = {
  /** In the order of the text; a gap comes before the run that begins at the same offset. Bare text is left out. */
  readonly segments: readonly Segment[];
  /** From 0: the smallest number free of every mark that overlaps. */
  readonly lanes: ReadonlyMap<string, number>;
};

/** Cuts ranges into runs. The answer does not depend on the order of `ranges`. */
export function segments(ranges: readonly MarkedRange[]): Overlaps {
  const lanes = layLanes(ranges);
  const byLane = (first: string, second: string) =>
    (lanes.get(first) ?? 0) - (lanes.get(second) ?? 0) || compareText(first, second);

  const starts = new Map<number, string[]>();
  const ends = new Map<number, string[]>();
  const gaps = new Map<number, Set<string>>();
  for (const { id, from, to } of ranges) {
    if (from === to) gaps.set(from, (gaps.get(from) ?? new Set()).add(id));
    else {
      starts.set(from, [...(starts.get(from) ?? []), id]);
      ends.set(to, [...(ends.get(to) ?? []), id]);
    }
  }
  const cuts = [...new Set([...starts.keys(), ...ends.keys(), ...gaps.keys()])].sort((a, b) => a - b);

  const open = new Map<string, number>();
  const runs: Segment[] = [];
  for (const [index, at] of cuts.entries()) {
    for (const id of ends.get(at) ?? []) {
      const depth = (open.get(id) ?? 0) - 1;
      if (depth > 0) open.set(id, depth);
      else open.delete(id);
    }
    const here = gaps.get(at);
    if (here !== undefined) runs.push({ from: at, to: at, ids: [...new Set([...here, ...open.keys()])].sort(byLane) });
    for (const id of starts.get(at) ?? []) open.set(id, (open.get(id) ?? 0) + 1);
    const next = cuts[index + 1];
    if (next === undefined || open.size === 0) continue;
    const ids = [...open.keys()].sort(byLane);
    const last = runs.at(-1);
    const joins = last !== undefined && last.from < last.to && last.to === at && sameIds(last.ids, ids);
    if (joins) runs[runs.length - 1] = { from: last.from, to: next, ids };
    else runs.push({ from: at, to: next, ids });
  }
  return { segments: runs, lanes };
}

/** Marks are laid in the order of the text, longer ones first where they begin together. A gap is taken to be as wide as
 *  the sign that shows it, so it shares no lane with a mark that it touches. */
function layLanes(ranges: readonly MarkedRange[]): Map<string, number> {
  const marks = new Map<string, { id: string; pieces: { from: number; to: number }[] }>();
  for (const { id, from, to } of ranges) {
    const mark = marks.get(id) ?? { id, pieces: [] };
    // In half units, so that a gap can have a width of its own.
    mark.pieces.push(from === to ? { from: 2 * from - 1, to: 2 * to + 1 } : { from: 2 * from, to: 2 * to });
    marks.set(id, mark);
  }
  const inOrder = [...marks.values()].sort((first, second) => {
    const [a, b] = [hullOf(first.pieces), hullOf(second.pieces)];
    return a.from - b.from || b.to - a.to || compareText(first.id, second.id);
  });
  const lanes = new Map<string, number>();
  const taken: { from: number; to: number }[][] = [];
  for (const { id, pieces } of inOrder) {
    let lane = taken.findIndex((laid) => !laid.some((other) => pieces.some((piece) => overlap(piece, other))));
    if (lane === -1) lane = taken.push([]) - 1;
    taken[lane]?.push(...pieces);
    lanes.set(id, lane);
  }
  return lanes;
}

function hullOf(pieces: readonly { from: number; to: number }[]): { from: number; to: number } {
  return {
    from: pieces.reduce((least, piece) => Math.min(least, piece.from), Number.POSITIVE_INFINITY),
    to: pieces.reduce((most, piece) => Math.max(most, piece.to), Number.NEGATIVE_INFINITY),
  };
}

function overlap(first: { from: number; to: number }, second: { from: number; to: number }): boolean {
  return first.from < second.to && second.from < first.to;
}

function sameIds(first: readonly string[], second: readonly string[]): boolean {
  return first.length === second.length && first.every((id, index) => id === second[index]);
}

/** By code unit, so that every machine gives the same order. */
function compareText(first: string, second: string): number {
  return first < second ? -1 : first > second ? 1 : 0;
}
