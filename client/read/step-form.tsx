/** client/read/step-form.tsx - the form of a step or an again, in the place of its gloss: what each part does, each value
 *  with its warrant. Every change is stored at once. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { RecordOf } from "../../schema/record.ts";
import { slotLabel } from "../../shared/drill/slot-labels.ts";
import { drillElements, elements } from "../state/passage.ts";
import { ActionList } from "./action-list.tsx";
import { AgainFields } from "./again-fields.tsx";
import { DraftField } from "./draft-field.tsx";
import { MoreOfElement } from "./element-more.tsx";
import { closeForm, giveFocusBack, type Thing } from "./focus.ts";
import { GuardEditor } from "./guard-editor.tsx";
import { capital, SlotEditor, wantedSlot } from "./slot-editor.tsx";
import { addressKey, elementWords, heldAt } from "./slot-place.ts";
import { storeFields } from "./store-fields.ts";
import { wordsFor } from "./support.ts";
import { WarrantChoice } from "./warrant-choice.tsx";

type Ridden = Extract<RecordOf<"elements">, { is: "step" | "again" }>;

export function StepForm({ element }: { element: RecordOf<"elements"> }) {
  if (element.is !== "step" && element.is !== "again") return null;
  return <RiddenForm element={element} />;
}

function RiddenForm({ element }: { element: Ridden }) {
  const form = useFocusedForm({ kind: "elements", id: element.id });
  const { id } = element;
  const number = drillElements.value.get(id)?.number;
  const own = capital(elementWords(id));
  const list = elements.value;
  const at = list.findIndex((other) => other.id === id);
  const before = list
    .slice(0, Math.max(0, at))
    .map((other) => other.id)
    .reverse();
  return (
    <div class="form" ref={form}>
      <header class="form-head">
        <h3>
          <b>{number ?? "–"}</b> <span class="unseen">{element.is}</span>
        </h3>
        <DraftField
          row={{ kind: "elements", id }}
          name="title"
          label={element.is === "step" ? "Title of the step" : "Title"}
          placeholder={element.is === "step" ? "name the step" : "name it"}
          value={element.title}
          store={(title, base) =>
            storeFields("elements", id, { title: title.trim() }, `${own}: called “${title.trim()}”`, base)
          }
        />
        <button type="button" class="quiet" onClick={closeForm}>
          done
        </button>
      </header>
      <WarrantChoice
        label={own}
        support={element.existence}
        marks={wordsFor("elements", id)}
        take={(existence) => void storeFields("elements", id, { existence }, `${own}: ${existence.warrant}`)}
      />
      {element.is === "again" && <AgainFields element={element} own={own} />}
      <ActionList owner={{ ownerKind: "elements", owner: id }} what={own} before={before} />
      <ElementSlots element={element} own={own} />
      <MoreOfElement element={element} own={own} />
      <p class="meta">More words: select them in the text, then press a.</p>
    </div>
  );
}

/** What it waits for, whom it is against, how often; and under which readings it is there. */
function ElementSlots({ element, own }: { element: Ridden; own: string }) {
  const asked = useSignal<readonly string[]>([]);
  const guarding = useSignal(false);
  const slots = element.is === "again" ? ["times", "cue", "threat"] : ["cue", "threat"];
  const addressOf = (slot: string) => ({ kind: "elements", id: element.id, slot }) as const;
  const shown = slots.filter(
    (slot) => slot === "times" || heldAt(addressOf(slot)) !== undefined || asked.value.includes(slot),
  );
  return (
    <section class="part">
      {shown.map((slot) => (
        <SlotEditor
          key={slot}
          address={addressOf(slot)}
          onAway={() => {
            asked.value = asked.value.filter((other) => other !== slot);
          }}
        />
      ))}
      {(guarding.value || element.guard.length > 0) && (
        <GuardEditor
          guard={element.guard}
          store={(guard, why) => void storeFields("elements", element.id, { guard }, `${own}: ${why}`)}
        />
      )}
      <p class="says">
        <span class="meta">say:</span>
        {slots
          .filter((slot) => !shown.includes(slot))
          .map((slot) => (
            <button
              key={slot}
              type="button"
              class="quiet"
              onClick={() => {
                asked.value = [...asked.value, slot];
                wantedSlot.value = addressKey(addressOf(slot));
              }}
            >
              {slotLabel(slot)}
            </button>
          ))}
        {element.guard.length === 0 && !guarding.value && (
          <button type="button" class="quiet" onClick={() => (guarding.value = true)}>
            only under…
          </button>
        )}
      </p>
    </section>
  );
}

/** Gives the form the focus when it opens, and its title button in the gloss when it closes. A finger gets no keyboard
 *  it did not ask for. */
export function useFocusedForm(thing: Thing) {
  const form = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (!window.matchMedia("(pointer: coarse)").matches) {
      form.current?.querySelector<HTMLElement>("input, textarea, select")?.focus({ preventScroll: true });
    }
    return () => giveFocusBack(thing);
  }, [thing.id]);
  return form;
}
