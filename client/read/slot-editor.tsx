/** client/read/slot-editor.tsx - one slot of a row in a form: said, not said, not applicable, or held by a crux. */
import { signal, useSignal } from "@preact/signals";
import { type Act, VERBS } from "../../schema/act.ts";
import type { ReadingValue, SlotAddress } from "../../schema/slot.ts";
import { actWords } from "../../shared/drill/act-words.ts";
import { slotLabel } from "../../shared/drill/slot-labels.ts";
import type { Names } from "../../shared/drill/words.ts";
import { all, one } from "../state/rows.ts";
import { choose } from "./focus.ts";
import { focusSlot } from "./focus-slot.ts";
import { PutInCrux } from "./put-in-crux.tsx";
import { namesWith, short } from "./row-names.ts";
import { sameHand } from "./same-hand.ts";
import { outOfCrux } from "./slot-in-crux.ts";
import { SlotLine } from "./slot-line.tsx";
import { addressKey, heldAt, kindAt, ownerOfAction, ownerWords, slotEdit } from "./slot-place.ts";
import { storeEdits } from "./store-fields.ts";
import { wordsFor } from "./support.ts";

/** The slot whose editor is to have the focus as soon as it is there. */
export const wantedSlot = signal<string | null>(null);

export function SlotEditor({ address, label, onAway }: { address: SlotAddress; label?: string; onAway?: () => void }) {
  const asking = useSignal(false);
  const kind = kindAt(address);
  const held = heldAt(address);
  const named = label ?? slotLabel(address.slot);
  if (kind === null) return null;
  if (held?.is === "in crux") return <HeldByCrux address={address} crux={held.crux} label={named} />;
  const { kind: rowKind, id } = address;
  return (
    <>
      <SlotLine
        kind={kind}
        label={named}
        held={held}
        row={{ kind: rowKind, id }}
        name={address.slot}
        marks={wordsFor(rowKind, id)}
        check={(value) => sameHand(address, value)}
        wanted={wantedSlot.value === addressKey(address)}
        store={async (value, said, more) => {
          if (value?.is === "absent") return false;
          if (value === null && held === undefined) {
            onAway?.();
            return true;
          }
          const why = whyOf(address, named, value, said, namesWith(more?.also ?? []));
          const done = await storeEdits([...(more?.also ?? []), slotEdit(address, value, more?.base)], why);
          if (done && wantedSlot.value === addressKey(address)) wantedSlot.value = null;
          if (done && value === null) onAway?.();
          // An act whose hand is now said may have moved to the column of that hand.
          if (done) focusSlot({ kind: rowKind, id }, address.slot);
          return done;
        }}
      >
        <button type="button" class="quiet" onClick={() => (asking.value = !asking.value)} aria-expanded={asking.value}>
          it is in a crux…
        </button>
        {held === undefined && onAway && (
          <button type="button" class="quiet" onClick={onAway}>
            leave it
          </button>
        )}
      </SlotLine>
      {asking.value && (
        <PutInCrux
          address={address}
          label={named}
          close={() => {
            asking.value = false;
            focusSlot({ kind: rowKind, id }, address.slot);
          }}
        />
      )}
    </>
  );
}

/** "Step 1, where it is held: take the spear at the balance"; a new warrant or silence is said as such. */
function whyOf(address: SlotAddress, label: string, value: ReadingValue | null, said: string, known: Names): string {
  const action = address.kind === "actions" ? one("actions", address.id) : null;
  const inAct = action !== null && Object.hasOwn(VERBS[action.act.verb].slots, address.slot);
  const before = heldAt(address);
  if (!inAct || value?.is !== "said" || (before?.is === "said" && sameJson(before.value, value.value))) {
    return `${capital(ownerWords(address.kind, address.id))}: ${label} ${short(said, 80)}`;
  }
  const act = { verb: action.act.verb, slots: { ...action.act.slots, [address.slot]: value } } as Act;
  return `${capital(ownerOfAction(action))}, ${label}: ${short(actWords(act, known), 80)}`;
}

const sameJson = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

export const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);

function HeldByCrux({ address, crux, label }: { address: SlotAddress; crux: string; label: string }) {
  const asking = useSignal(false);
  const title = one("cruxes", crux)?.title ?? "a crux that is no longer there";
  const readings = all("readings").filter((reading) => reading.crux === crux).length;
  return (
    <div class="slot" data-slot={addressKey(address)}>
      <span class="slot-label">{label}</span>
      <div class="slot-body">
        <button type="button" class="quiet w-not-settled" onClick={() => choose({ kind: "cruxes", id: crux }, true)}>
          <span class="ref">†</span> {short(title, 40)}
        </button>
        <span class="slot-end">
          <button
            type="button"
            class="quiet else"
            aria-expanded={asking.value}
            aria-label={`${label}: else`}
            onClick={() => (asking.value = !asking.value)}
          >
            else
          </button>
        </span>
        {asking.value && (
          <p class="says more-of-slot">
            <span class="meta">
              Out of the crux, this value is that of the reading taken now, or not said; what{" "}
              {readings === 1 ? "the reading gives" : `the ${readings} readings give`} it goes.
            </span>
            <button
              type="button"
              class="quiet"
              onClick={() => void outOfCrux(address, crux).then(() => focusSlot(address, address.slot))}
            >
              take it out of the crux
            </button>
          </p>
        )}
      </div>
    </div>
  );
}
