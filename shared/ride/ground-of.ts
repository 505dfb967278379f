/** shared/ride/ground-of.ts - the ground an exercise is ridden on, from its rows: size, track, stations with places.
 *  May import: schema types, shared/drill, shared/ground, siblings in shared/ride. Keeps rules R3-R4 (shared/ride/RULES.md).
 *  What the text leaves open is supplied and said to be. */
import type { Ground, Station } from "../../schema/riding.ts";
import type { SlotAddress } from "../../schema/slot.ts";
import type { Measure, ValueOf } from "../../schema/values.ts";
import { type Compiling, resolveSlot } from "../drill/resolve-slot.ts";
import {
  type GroundResult,
  type RidingGround,
  rectangularGround,
  roundEndedGround,
  roundGround,
} from "../ground/grounds.ts";
import { schoolGround20x60 } from "../ground/school-grounds.ts";
import { type GroundStation, outlineFromMillimetres } from "../ground/stations.ts";
import { compareRanked } from "../rank.ts";
import { measured, metresWords } from "./measured.ts";

/** Metres from the wall to the track where nothing is said: the least that riding guides give for letters on the wall
 *  (1.8 to 3 m), or a fifth of a ground too small for that. */
export const TRACK_OFFSET = 1.8;

export interface FoundGround {
  ground: RidingGround;
  name: string;
  supplied: boolean;
  notes: string[];
}

export function groundOf(compiling: Compiling, id: string | null): FoundGround {
  const row = id === null ? undefined : compiling.rows.find("grounds", id);
  if (!row) return usualGround("No ground is drawn for this exercise");
  const notes: string[] = [];
  const size = (slot: keyof Ground["slots"]): number | null => {
    const held = resolveSlot(compiling, { kind: "grounds", id: row.id, slot } as SlotAddress, row.slots[slot]);
    if (held.is !== "said") return null;
    const { metres, note } = measured(held.value as Measure);
    if (note !== null) notes.push(`${row.name}: the ${WHAT[slot]} is ${note}.`);
    return metres;
  };
  const made = madeGround(row, { width: size("width"), length: size("length"), track: size("trackOffset") }, notes);
  if (!made.ok) return usualGround(`${row.name} cannot be ridden on: ${made.sentence}`);
  return {
    ground: { ...made.ground, stations: stationsOf(compiling, row, notes) },
    name: row.name,
    supplied: false,
    notes,
  };
}

const WHAT: Record<keyof Ground["slots"], string> = { length: "length", width: "width", trackOffset: "track" };

function usualGround(why: string): FoundGround {
  return {
    ground: schoolGround20x60(TRACK_OFFSET),
    name: "20 m by 60 m, supplied",
    supplied: true,
    notes: [`${why.replace(/\.$/, "")}: a ground of 20 m by 60 m with its usual letters is supplied.`],
  };
}

type Sizes = { width: number | null; length: number | null; track: number | null };

function madeGround(row: Ground, sizes: Sizes, notes: string[]): GroundResult {
  const width = sizes.width ?? (row.is === "round" ? sizes.length : null) ?? supply(row, "width", 20, notes);
  const length = row.is === "round" ? width : (sizes.length ?? supply(row, "length", Math.max(60, width), notes));
  const trackOffset = sizes.track ?? Math.min(TRACK_OFFSET, Math.min(width, length) / 5);
  if (sizes.track === null)
    notes.push(
      `${row.name}: how far inside the wall the track lies is not said; ${metresWords(trackOffset)} is supplied.`,
    );
  if (row.is === "round") return roundGround({ diameter: width, trackOffset });
  return (row.is === "round-ended" ? roundEndedGround : rectangularGround)({ width, length, trackOffset });
}

function supply(row: Ground, what: string, metres: number, notes: string[]): number {
  notes.push(`${row.name}: the ${what} is not said; ${metresWords(metres)} is supplied.`);
  return metres;
}

/** Stations without a place are not among them: a figure that names one says so. */
function stationsOf(compiling: Compiling, row: Ground, notes: string[]): GroundStation[] {
  const { rows } = compiling;
  const stations = rows
    .all("stations")
    .filter((station) => station.ground === row.id)
    .sort(compareRanked);
  return stations.flatMap((station) => {
    const outline = outlineOf(compiling, station);
    if (outline === null) {
      notes.push(`${row.name}: where ${station.name} stands is not said, so nothing can be ridden to it.`);
      return [];
    }
    return [{ id: station.id, name: station.name, outline: outlineFromMillimetres(outline), partner: station.partner }];
  });
}

function outlineOf(compiling: Compiling, station: Station): ValueOf<"outline"> | null {
  const held = resolveSlot(compiling, { kind: "stations", id: station.id, slot: "outline" }, station.outline);
  return held.is === "said" ? (held.value as ValueOf<"outline">) : null;
}
