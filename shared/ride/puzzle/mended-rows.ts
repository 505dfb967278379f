/** shared/ride/puzzle/mended-rows.ts - what is wrong in the rows of cruxes, named, and the rows without it.
 *  May import: schema types, shared/drill, shared/rank, siblings. Keeps rule P8 (shared/ride/puzzle/RULES.md). The store keeps
 *  most of it out; what got in all the same must not stop the count. */
import type { Crux, Reading } from "../../../schema/crux.ts";
import type { ReadingCondition } from "../../../schema/guard.ts";
import type { Kind, RecordOf, Row, Rows } from "../../../schema/record.ts";
import type { Slot, SlotAddress } from "../../../schema/slot.ts";
import { slotLabel } from "../../drill/slot-labels.ts";
import { compareRanked } from "../../rank.ts";
import { isOverOne, sumOfConfidences } from "./crux-confidences.ts";
import type { Problem } from "./weighed.ts";

export interface MendedRows {
  rows: Rows;
  problems: Problem[];
}

/** Rows are given back as they are where nothing had to be taken out. Slots that are gone are looked for only in cruxes of
 *  these exercises, since the rows of others need not be there. */
export function mendedRows(rows: Rows, exercises: readonly string[]): MendedRows {
  const problems: Problem[] = [];
  const say = (kind: Kind, id: string, code: Problem["code"], sentence: string): void => {
    problems.push({ kind, id, code, sentence });
  };
  const cruxes = (rows.cruxes ?? []).map(({ value }) => value).sort((a, b) => (a.id < b.id ? -1 : 1));
  const readings = new Map<string, Reading[]>();
  for (const { value } of rows.readings ?? []) readings.set(value.crux, [...(readings.get(value.crux) ?? []), value]);
  for (const list of readings.values()) list.sort(compareRanked);
  const ours = cruxes.filter(({ exercise }) => exercise === null || exercises.includes(exercise));

  for (const crux of ours) checkReadings(crux, readings.get(crux.id) ?? [], say);
  const here = cruxes.filter(({ exercise }) => exercise !== null && exercises.includes(exercise));
  checkSlots(rows, here, readings, say);
  checkOwners(cruxes, readings, say);
  const mended = cruxes.map((crux) => mendedCrux(crux, cruxes, readings, say));
  const changed = mended.some((crux, index) => crux !== cruxes[index]);
  if (!changed) return { rows, problems };
  const byId = new Map(mended.map((crux) => [crux.id, crux]));
  const list = (rows.cruxes ?? []).map(
    (row): Row<"cruxes"> => ({ ...row, value: byId.get(row.value.id) ?? row.value }),
  );
  return { rows: { ...rows, cruxes: list }, problems };
}

type Say = (kind: Kind, id: string, code: Problem["code"], sentence: string) => void;

function checkReadings(crux: Crux, readings: readonly Reading[], say: Say): void {
  const name = `“${crux.title}”`;
  const [first, second] = readings;
  if (first === undefined) {
    say(
      "cruxes",
      crux.id,
      "crux_without_readings",
      `The crux ${name} has no reading yet, so it is left out of the count. Write down at least two.`,
    );
    return;
  }
  if (second === undefined)
    say(
      "cruxes",
      crux.id,
      "crux_with_one_reading",
      `The crux ${name} has only one reading, “${first.title}”, so there is nothing to choose. Add what else the words could mean, or take the crux out.`,
    );
  if (readings.every(({ status }) => status.is === "ruled out"))
    say(
      "cruxes",
      crux.id,
      "all_readings_ruled_out",
      `Every reading of ${name} is ruled out, so nothing can hold where it arises. Let one of them stand again.`,
    );
  const open = readings.filter(({ status }) => status.is !== "ruled out");
  const unsure = open.find(({ confidence }) => confidence === null);
  if (unsure !== undefined && open.some(({ confidence }) => confidence !== null))
    say(
      "cruxes",
      crux.id,
      "confidence_missing",
      `Some readings of ${name} have a confidence and “${unsure.title}” has none, so the crux is not weighed. Give each of them one, or none to any.`,
    );
  const total = sumOfConfidences(readings);
  if (isOverOne(total))
    say(
      "cruxes",
      crux.id,
      "confidence_over_one",
      `The confidences given to the readings of ${name} come to more than 1 together. Lower them until they come to 1 at most.`,
    );
}

/** Values that a reading gives to something that is gone, or that another hand has settled since. */
function checkSlots(rows: Rows, cruxes: readonly Crux[], readings: ReadonlyMap<string, Reading[]>, say: Say): void {
  for (const crux of cruxes) {
    for (const reading of readings.get(crux.id) ?? []) {
      for (const { at } of reading.values) {
        const where = `The reading “${reading.title}” of “${crux.title}” says something of ${slotWords(at)}`;
        const row = findRow(rows, at);
        const sentence =
          row === null
            ? `${where} that is no longer there. Take that value out of the reading.`
            : slotIn(row, at.slot)?.is !== "in crux"
              ? `${where}, but there the crux is no longer asked. Tie the place to the crux again, or take the value out.`
              : null;
        if (sentence !== null) say("readings", reading.id, "slot_gone", sentence);
      }
    }
  }
}

/** One slot, one crux: of two that give it a value only the one named in the slot is heard. */
function checkOwners(cruxes: readonly Crux[], readings: ReadonlyMap<string, Reading[]>, say: Say): void {
  const owners = new Map<string, { crux: Crux; at: SlotAddress }>();
  for (const crux of cruxes) {
    const told = new Set<string>();
    for (const { at } of (readings.get(crux.id) ?? []).flatMap(({ values }) => values)) {
      const key = `${at.kind} ${at.id} ${at.slot}`;
      const owner = owners.get(key);
      if (owner === undefined) owners.set(key, { crux, at });
      else if (owner.crux !== crux && !told.has(key)) {
        told.add(key);
        say(
          "cruxes",
          crux.id,
          "slot_owned_twice",
          `The cruxes “${owner.crux.title}” and “${crux.title}” both speak of ${slotWords(at)}. A place has one crux: take it out of one of them.`,
        );
      }
    }
  }
}

/** The crux with conditions that can be asked: none in a circle, none on what is gone. */
function mendedCrux(crux: Crux, cruxes: readonly Crux[], readings: ReadonlyMap<string, Reading[]>, say: Say): Crux {
  const known = new Map(cruxes.map((one) => [one.id, one]));
  const kept = crux.arisesWhen.filter((condition) => {
    const of = known.get(condition.crux);
    if (of === undefined) {
      say(
        "cruxes",
        crux.id,
        "condition_unknown",
        `The crux “${crux.title}” arises under another crux that is no longer there. The condition is left out; take it out of the crux.`,
      );
      return false;
    }
    if (leadsTo(condition, crux.id, known)) {
      say(
        "cruxes",
        crux.id,
        "condition_circle",
        `The crux “${crux.title}” arises under “${of.title}”, and that leads back to “${crux.title}”. The condition is left out of the count; take it out of the crux.`,
      );
      return false;
    }
    const there = (readings.get(of.id) ?? []).some(({ id }) => condition.readings.includes(id));
    if (!there)
      say(
        "cruxes",
        crux.id,
        "condition_unknown",
        `The crux “${crux.title}” arises under a reading of “${of.title}” that is no longer there, so it never arises. Name another reading.`,
      );
    return true;
  });
  return kept.length === crux.arisesWhen.length ? crux : { ...crux, arisesWhen: kept };
}

function leadsTo(start: ReadingCondition, wanted: string, known: ReadonlyMap<string, Crux>): boolean {
  const seen = new Set<string>();
  const todo = [start.crux];
  for (let id = todo.pop(); id !== undefined; id = todo.pop()) {
    if (id === wanted) return true;
    if (seen.has(id)) continue;
    seen.add(id);
    todo.push(...(known.get(id)?.arisesWhen ?? []).map(({ crux }) => crux));
  }
  return false;
}

function findRow(rows: Rows, { kind, id }: SlotAddress): RecordOf<Kind> | null {
  return (rows[kind] ?? []).find(({ value }) => value.id === id)?.value ?? null;
}

/** The slot itself; of an action, first those of its act. */
function slotIn(row: RecordOf<Kind>, slot: string): Slot<unknown> | undefined {
  const { act, slots } = row as {
    act?: { slots: Record<string, Slot<unknown>> };
    slots?: Record<string, Slot<unknown>>;
  };
  return act?.slots[slot] ?? slots?.[slot] ?? (row as unknown as Record<string, Slot<unknown> | undefined>)[slot];
}

const KIND_WORDS: Record<SlotAddress["kind"], string> = {
  actions: "an act",
  elements: "a step",
  holds: "a hold",
  stations: "a station",
  threats: "an opponent",
  objects: "something carried",
  grounds: "a ground",
};

/** "an act (“turn”)". */
function slotWords({ kind, slot }: SlotAddress): string {
  return `${KIND_WORDS[kind]} (“${slotLabel(slot)}”)`;
}
