/** server/publish/tei/actions.ts - what is done, act by act, as feature structures.
 *  May import: schema types and constants, shared/drill, siblings. Keeps rule X8 (server/publish/tei/RULES.md). */
import { VERBS } from "../../../schema/act.ts";
import type { Action } from "../../../schema/exercise.ts";
import type { Slot } from "../../../schema/slot.ts";
import { actWords } from "../../../shared/drill/act-words.ts";
import { kindOfActSlot, slotsOf } from "../../../shared/drill/slot-labels.ts";
import type { Markup } from "../markup.ts";
import { element, inLines } from "../xml.ts";
import type { Edition } from "./edition.ts";
import { guardFeatures, rests, slotFeatures, supported, words } from "./features.ts";
import { nameOf, tokenOf } from "./pointers.ts";

/** The actions of an owner under one feature; null where it has none. */
export function actionsFeature(edition: Edition, owner: string): Markup | null {
  const actions = edition.rows.actionsOf(owner);
  if (actions.length === 0) return null;
  const structures = actions.map((action) => actionStructure(edition, action));
  return element("f", { name: "actions" }, inLines("vColl", { org: "list" }, structures));
}

function actionStructure(edition: Edition, action: Action): Markup {
  const { id, act, guard, existence, note } = action;
  const slots: Record<string, Slot<unknown> | undefined> = { ...act.slots };
  for (const slot of ["timing", "purpose", "threat"] as const) slots[slot] ??= action[slot];
  const kinds = slotsOf(act.verb).flatMap((slot) => {
    const kind = kindOfActSlot(act.verb, slot);
    return kind === null ? [] : [[slot, kind] as const];
  });
  const attributes = { "xml:id": nameOf("actions", id), type: "action", n: act.verb, ...supported(edition, existence) };
  return element("fs", attributes, [
    element("f", { name: "part" }, element("symbol", { value: tokenOf(VERBS[act.verb].part) })),
    words("does", actWords(act, edition.names)),
    ...slotFeatures(edition, slots, kinds),
    ...guardFeatures(edition, guard),
    rests(edition, "rests", existence.basis),
    words("note", note),
  ]);
}
