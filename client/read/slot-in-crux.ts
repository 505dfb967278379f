/** client/read/slot-in-crux.ts - giving a slot to a crux, and taking it back. Inside a crux a slot has no value of its own:
 *  what stood there becomes what a reading gives. */

import type { Edit } from "../../schema/change.ts";
import type { CRUX_KINDS } from "../../schema/crux.ts";
import type { RecordOf } from "../../schema/record.ts";
import type { ReadingValue, Slot, SlotAddress } from "../../schema/slot.ts";
import { valueWords } from "../../shared/drill/words.ts";
import { rankBetween } from "../../shared/rank.ts";
import { exercise, texts, work } from "../state/passage.ts";
import { all, one, ranked } from "../state/rows.ts";
import { create, newId } from "../state/write.ts";
import { choose, selected } from "./focus.ts";
import { markEdits } from "./marking.ts";
import { names, short } from "./row-names.ts";
import { heldAt, kindAt, placeWords, sameAddress, slotEdit } from "./slot-place.ts";
import { fieldsEdit, storeEdits } from "./store-fields.ts";
import { wordsFor } from "./support.ts";

export const readingsOf = (crux: string) => ranked("readings").filter((reading) => reading.crux === crux);

/** What a reading would be called that gives this value. */
function titleFor(address: SlotAddress, held: Slot<unknown> | undefined): string {
  const kind = kindAt(address);
  if (held?.is === "said" && kind !== null) return short(valueWords(kind, held.value as never, names.value), 80);
  return held?.is === "not applicable" ? "it does not apply" : "the text does not say";
}

export function newReading(
  crux: string,
  title: string,
  values: RecordOf<"readings">["values"] = [],
): RecordOf<"readings"> {
  return {
    id: newId(),
    crux,
    rank: rankBetween(readingsOf(crux).at(-1)?.rank ?? null, null),
    title,
    argument: "",
    holder: "",
    evidence: [],
    requires: [],
    excludes: [],
    values,
    status: { is: "standing" },
    confidence: null,
  };
}

/** Into a crux that is there: what stood in the slot goes to its first reading that gives nothing there yet. */
export async function intoCrux(address: SlotAddress, crux: string): Promise<boolean> {
  const held = heldAt(address);
  const edits: Edit[] = [slotEdit(address, { is: "in crux", crux })];
  if (held !== undefined && held.is !== "in crux") {
    const given = { at: address, value: held as ReadingValue };
    const first = readingsOf(crux).find(({ values }) => !values.some(({ at }) => sameAddress(at, address)));
    if (first) edits.push(fieldsEdit("readings", first.id, { values: [...first.values, given] }));
    else edits.push(create("readings", newReading(crux, titleFor(address, held), [given])));
  }
  const title = one("cruxes", crux)?.title ?? "";
  return storeEdits(edits, `Into the crux “${short(title, 40)}”: ${placeWords(address)}`);
}

/** Into a new crux on the selected words, else on those of the row: what stood in the slot is its first reading. */
export async function intoNewCrux(
  address: SlotAddress,
  is: (typeof CRUX_KINDS)[number],
  title: string,
): Promise<boolean> {
  const owner = work.value;
  if (owner === null) return false;
  const held = heldAt(address);
  const crux: RecordOf<"cruxes"> = {
    id: newId(),
    work: owner.id,
    exercise: exercise.value?.id ?? null,
    is,
    scope: "place",
    title,
    note: "",
    arisesWhen: [],
    leftFree: null,
    exceptions: [],
  };
  const edits: Edit[] = [
    create("cruxes", crux),
    ...wordsEdits(address, crux.id),
    slotEdit(address, { is: "in crux", crux: crux.id }),
  ];
  if (held !== undefined && held.is !== "in crux") {
    edits.push(
      create("readings", newReading(crux.id, titleFor(address, held), [{ at: address, value: held as ReadingValue }])),
    );
  }
  const done = await storeEdits(edits, `Crux: “${short(title, 60)}”, on ${placeWords(address)}`);
  if (done) choose({ kind: "cruxes", id: crux.id }, true);
  return done;
}

function wordsEdits(address: SlotAddress, crux: string): Edit[] {
  if (selected.value) return markEdits(selected.value, "cruxes", crux).edits;
  const current = new Set(texts.value.map(({ text }) => text.id));
  const marks = new Set(wordsFor(address.kind, address.id));
  const anchors = ranked("anchors").filter(
    (anchor) => marks.has(anchor.mark) && anchor.is === "text" && current.has(anchor.text),
  );
  const [first] = anchors;
  if (first === undefined || work.value === null) return [];
  const mark = { id: newId(), work: work.value.id, of: "cruxes", target: crux, as: "words" } as const;
  return [
    create("marks", mark),
    ...anchors
      .filter((anchor) => anchor.mark === first.mark)
      .map((anchor) => create("anchors", { ...anchor, id: newId(), mark: mark.id })),
  ];
}

/** Back out of a crux: the value of the reading that is taken now stays, the others' go. */
export async function outOfCrux(address: SlotAddress, crux: string): Promise<boolean> {
  const readings = all("readings").filter((reading) => reading.crux === crux);
  const taken =
    readings.find((reading) => reading.status.is === "adopted") ?? readings.find(({ id }) => id === leftFreeOf(crux));
  const given = taken?.values.find(({ at }) => sameAddress(at, address))?.value;
  const edits = [slotEdit(address, given === undefined || given.is === "absent" ? null : given)];
  for (const reading of readings) {
    const values = reading.values.filter(({ at }) => !sameAddress(at, address));
    if (values.length < reading.values.length) edits.push(fieldsEdit("readings", reading.id, { values }));
  }
  return storeEdits(edits, `Out of the crux “${short(one("cruxes", crux)?.title ?? "", 40)}”: ${placeWords(address)}`);
}

const leftFreeOf = (crux: string) => one("cruxes", crux)?.leftFree?.default ?? null;
