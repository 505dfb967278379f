/** client/read/action-block.tsx - one action in a form: its words, its slots, and the words that offer what else could be
 *  said of it. */
import { useSignal } from "@preact/signals";
import type { RecordOf } from "../../schema/record.ts";
import type { Slot, SlotAddress } from "../../schema/slot.ts";
import { neededSlots, slotLabel } from "../../shared/drill/slot-labels.ts";
import { rankBetween } from "../../shared/rank.ts";
import { drillElements } from "../state/passage.ts";
import { BasisList } from "./basis-list.tsx";
import { DraftField } from "./draft-field.tsx";
import { selected } from "./focus.ts";
import { GuardEditor } from "./guard-editor.tsx";
import { quoteOf } from "./marking.ts";
import { short } from "./row-names.ts";
import { SlotEditor, wantedSlot } from "./slot-editor.tsx";
import { restedOn } from "./slot-line.tsx";
import { addressKey, heldAt, ownerWords, slotNamesOf, wordsOfAction } from "./slot-place.ts";
import { fieldsEdit, storeEdits, storeFields } from "./store-fields.ts";
import { selectedBasis, wordsFor } from "./support.ts";
import { TakeAway } from "./take-away.tsx";
import { actionsOf } from "./verbs.ts";
import { WarrantChoice } from "./warrant-choice.tsx";
import { weakestOf } from "./weakest.ts";

/** How many words are offered before “more” is pressed: about a line. */
const SHOWN_AT_ONCE = 4;

export function ActionBlock({ action }: { action: RecordOf<"actions"> }) {
  const asked = useSignal<readonly string[]>([]);
  const guarding = useSignal(false);
  const more = useSignal(false);
  const { id, act } = action;
  const words = wordsOfAction(action);
  const row = { kind: "actions", id } as const;
  const marks = wordsFor("actions", id);
  const addressOf = (slot: string): SlotAddress => ({ kind: "actions", id, slot });
  // Who does something else is told by the heading it stands under, so it is not asked again.
  const told = (slot: string) => act.verb === "other" && slot === "who" && saidIn(slot) !== undefined;

  const saidIn = (slot: string) => {
    const held = (act.slots as Record<string, Slot<unknown> | undefined>)[slot];
    return held?.is === "said" ? held.value : undefined;
  };
  const all = slotNamesOf(action).filter((slot) => !told(slot));
  const needed = neededSlots(act.verb, saidIn);
  const shown = all.filter(
    (slot) =>
      heldAt(addressOf(slot)) !== undefined ||
      needed.includes(slot) ||
      asked.value.includes(slot) ||
      wantedSlot.value === addressKey(addressOf(slot)),
  );
  const offered = all.filter((slot) => !shown.includes(slot));
  const own = ownerWords("actions", id);
  const printed = drillElements.value.get(action.owner)?.actions.find((other) => other.id === id);
  const standing = printed ? weakestOf(printed) : action.existence.warrant;
  const ask = (slot: string) => {
    asked.value = [...asked.value, slot];
    wantedSlot.value = addressKey(addressOf(slot));
  };
  return (
    <section class="act" aria-label={words}>
      <p class="act-words">
        <span class={`value w-${standing.replaceAll(" ", "-")}`}>{words}</span>
        <WarrantChoice
          brief
          label={words}
          support={action.existence}
          marks={marks}
          take={(existence) => void storeFields("actions", id, { existence }, `${own}: ${existence.warrant}`)}
        />
      </p>
      {shown.map((slot) => (
        <SlotEditor
          key={slot}
          address={addressOf(slot)}
          onAway={() => {
            asked.value = asked.value.filter((other) => other !== slot);
            if (wantedSlot.value === addressKey(addressOf(slot))) wantedSlot.value = null;
          }}
        />
      ))}
      {(guarding.value || action.guard.length > 0) && (
        <GuardEditor
          guard={action.guard}
          store={(guard, why) => void storeFields("actions", id, { guard }, `${own}: ${why}`)}
        />
      )}
      <p class="says">
        <span class="meta">say:</span>
        {(more.value ? offered : offered.slice(0, SHOWN_AT_ONCE)).map((slot) => (
          <button key={slot} type="button" class="quiet" onClick={() => ask(slot)}>
            {slotLabel(slot)}
          </button>
        ))}
        {more.value && action.guard.length === 0 && !guarding.value && (
          <button type="button" class="quiet" onClick={() => (guarding.value = true)}>
            only under…
          </button>
        )}
        <button type="button" class="quiet" aria-expanded={more.value} onClick={() => (more.value = !more.value)}>
          {more.value ? "less" : "more"}
        </button>
      </p>
      {more.value && <MoreOfAction action={action} own={own} row={row} />}
    </section>
  );
}

function MoreOfAction({
  action,
  own,
  row,
}: {
  action: RecordOf<"actions">;
  own: string;
  row: { kind: "actions"; id: string };
}) {
  const { id } = action;
  const list = actionsOf(action.owner);
  const at = list.findIndex((other) => other.id === id);
  const move = (by: -1 | 1) => {
    const [first, second] = by === -1 ? [list[at - 2], list[at - 1]] : [list[at + 1], list[at + 2]];
    const rank = rankBetween(first?.rank ?? null, second?.rank ?? null);
    void storeFields("actions", id, { rank }, `${own}: moved ${by === -1 ? "up" : "down"}`);
  };
  const picked = selected.value;
  return (
    <div class="inset">
      {picked && (
        <button
          type="button"
          class="quiet"
          onClick={() => {
            const found = selectedBasis("actions", id);
            if (found === null) return;
            const existence = { warrant: "stated" as const, basis: [...action.existence.basis, found.basis] };
            const edits = [...found.edits, fieldsEdit("actions", id, { existence })];
            void storeEdits(edits, `${own}: said by “${short(found.quote, 40)}”`);
          }}
        >
          its words are “{short(quoteOf(picked), 30)}”
        </button>
      )}
      <p class="label">That it is done rests on</p>
      <BasisList
        bases={action.existence.basis}
        row={row}
        label={`That ${short(wordsOfAction(action), 40)}`}
        store={(basis, also, why) =>
          storeFields("actions", id, { existence: restedOn(action.existence, basis) }, why, undefined, also)
        }
      />
      <DraftField
        row={row}
        name="note"
        label="Note on the action"
        placeholder="a note"
        value={action.note}
        many
        store={(note, base) => storeFields("actions", id, { note }, `${own}: a note`, base)}
      />
      <div class="row">
        <button type="button" class="quiet" disabled={at <= 0} onClick={() => move(-1)}>
          earlier
        </button>
        <button type="button" class="quiet" disabled={at === list.length - 1} onClick={() => move(1)}>
          later
        </button>
        <TakeAway kind="actions" id={id} what="the action" why={`${own}: taken away`} atOnce />
      </div>
    </div>
  );
}
