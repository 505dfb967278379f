/** server/publish/papers/supports-of.ts - what an element rests on besides words, each once, with all that is believed
 *  because of it.
 *  May import: schema types, shared/drill, siblings. Goes back to the rows, since a drill tells these in words only. */
import type { DrillAction, DrillElement, DrillValue } from "../../../schema/drill.ts";
import type { Action, Element } from "../../../schema/exercise.ts";
import type { Basis, Slot } from "../../../schema/slot.ts";
import { inKeyOrder } from "../../../shared/drill/canonical-json.ts";
import type { ExerciseRows } from "../../../shared/drill/exercise-rows.ts";

export interface Support {
  /** Null for an action that was changed for the day: `why` then says it. */
  basis: Basis | null;
  why: string;
  /** "level: high", or an act in words, each once; empty for a part not treated, which asserts nothing. */
  supports: string[];
}

const ITSELF = {
  step: "that it is done",
  again: "that it is done",
  advice: "that it is asked",
  untreated: null,
} as const;

const CHANGED = "changed for the day: ";

/** Words are left out, and so is what is only inherited: that is told at the instruction. What an act rests on supports its
 *  values too, and they are not told again. */
export function supportsOf(rows: ExerciseRows, element: DrillElement): Support[] {
  const found = new Map<string, Support & { seen: Set<string> }>();
  const add = (basis: Basis | null, why: string, supports: string | null): void => {
    const key = basis === null ? why : JSON.stringify(inKeyOrder(basis));
    const known = found.get(key) ?? { basis, why, supports: [], seen: new Set<string>() };
    if (supports !== null && !known.seen.has(supports)) known.supports.push(supports);
    known.seen.add(supports ?? "");
    found.set(key, known);
  };
  const addAll = (bases: readonly Basis[], supports: string | null, already: readonly Basis[] = []): void => {
    const known = new Set(already.map((basis) => JSON.stringify(inKeyOrder(basis))));
    for (const basis of bases) {
      if (basis.is !== "words" && !known.has(JSON.stringify(inKeyOrder(basis)))) add(basis, "", supports);
    }
  };
  const row = rows.find("elements", element.id);
  addAll([...(row?.existence.basis ?? []), ...(row?.order?.basis ?? [])], ITSELF[element.is]);
  for (const value of element.values) addAll(basisOfValue(rows, value, row), told(value));
  for (const action of element.actions) {
    if (action.inherited) continue;
    const of = rows.find("actions", action.id);
    const [first = ""] = action.rests;
    if (first.startsWith(CHANGED)) add(null, first, action.text);
    else addAction(action, of);
  }
  function addAction(action: DrillAction, of: Action | undefined): void {
    addAll(of?.existence.basis ?? [], action.text);
    for (const value of action.values) addAll(basisOfValue(rows, value, of), told(value), of?.existence.basis);
  }
  return [...found.values()].map(({ basis, why, supports }) => ({ basis, why, supports }));
}

function told({ label, text }: DrillValue): string {
  return `${label}: ${text}`;
}

/** What the value rests on as it is taken: on all readings where they agree, and nothing while it is not settled, since each
 *  reading then has its own. */
function basisOfValue(rows: ExerciseRows, value: DrillValue, owner: Element | Action | undefined): readonly Basis[] {
  const { reading, crux, slot, standing } = value;
  if (crux !== null && standing === "not settled") return [];
  const readings = reading !== null ? [reading] : crux !== null ? rows.readingsOf(crux).map(({ id }) => id) : null;
  if (readings !== null) {
    const name = slot.slice(slot.lastIndexOf(".") + 1);
    return readings.flatMap((id) => {
      const given = rows.find("readings", id)?.values.filter(({ at }) => at.slot === name) ?? [];
      const own = given.find(({ at }) => at.id === owner?.id) ?? given[0];
      return own?.value.is === "said" ? own.value.basis : [];
    });
  }
  if (owner === undefined) return [];
  const fields: unknown = { ...owner, ...("act" in owner ? owner.act.slots : {}) };
  const slots = fields as Record<string, Slot<unknown> | undefined>;
  const held = slots[slot];
  return held?.is === "said" ? held.basis : [];
}
