/** client/read/crux-desk.tsx - a crux on the desk under the text: its readings side by side, each with its argument, its
 *  evidence and what it gives, and what was decided. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { CRUX_KINDS } from "../../schema/crux.ts";
import type { RecordOf } from "../../schema/record.ts";
import { create } from "../state/write.ts";
import { Choice } from "./choice.tsx";
import { DraftField } from "./draft-field.tsx";
import { choose, closeForm, giveFocusBack } from "./focus.ts";
import { ReadingConditions } from "./guard-editor.tsx";
import { LeaveFree } from "./leave-free.tsx";
import { ReadingColumn } from "./reading-column.tsx";
import { short } from "./row-names.ts";
import { newReading, readingsOf } from "./slot-in-crux.ts";
import { slotsHeldBy } from "./slot-place.ts";
import { storeEdits, storeFields } from "./store-fields.ts";
import { TakeAway } from "./take-away.tsx";
import { WhatFollows } from "./what-follows.tsx";

export function CruxDesk({ crux }: { crux: RecordOf<"cruxes"> }) {
  const { id } = crux;
  const row = { kind: "cruxes", id } as const;
  const own = `Crux “${short(crux.title, 40)}”`;
  const readings = readingsOf(id);
  const slots = slotsHeldBy(id);
  const desk = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    desk.current?.querySelector<HTMLElement>("h2")?.focus({ preventScroll: true });
    desk.current?.scrollIntoView({ block: "nearest" });
    return () => giveFocusBack({ kind: "cruxes", id });
  }, [id]);
  return (
    <section
      class="desk crux-desk"
      ref={desk}
      aria-label={own}
      onKeyDown={(event) => {
        if (event.key === "Escape") closeForm();
      }}
    >
      <header class="form-head">
        <h2 tabIndex={-1}>
          <span class="ref">†</span>
        </h2>
        <DraftField
          row={row}
          name="title"
          label="What is in doubt"
          value={crux.title}
          check={(text) => (text.trim() === "" ? "Expected what is in doubt." : "")}
          store={(title, base) =>
            storeFields("cruxes", id, { title: title.trim() }, `${own}: called “${title.trim()}”`, base)
          }
        />
        <button type="button" class="quiet" onClick={closeForm}>
          put away
        </button>
      </header>
      <div class="row">
        <Choice
          label="Kind of crux"
          value={crux.is}
          options={CRUX_KINDS.map((value) => ({ value, words: value }))}
          take={(is) => void storeFields("cruxes", id, { is }, `${own}: ${is}`)}
        />
        <Choice
          label="Scope"
          value={crux.scope}
          options={[
            { value: "place", words: "at this place" },
            { value: "principle", words: "a principle, wherever it applies" },
          ]}
          take={(scope) => void storeFields("cruxes", id, { scope }, `${own}: ${scope}`)}
        />
        {slots.length > 0 && (
          <span class="meta">
            It holds {slots.length === 1 ? "one value" : `${slots.length} values`}, given by each reading.
          </span>
        )}
      </div>
      <DraftField
        row={row}
        name="note"
        label="Note on the crux"
        placeholder="what the doubt is, in a few words"
        many
        value={crux.note}
        store={(note, base) => storeFields("cruxes", id, { note }, `${own}: a note`, base)}
      />
      <div class="readings">
        {readings.map((reading) => (
          <ReadingColumn key={reading.id} crux={crux} reading={reading} slots={slots} />
        ))}
      </div>
      <AddReading crux={crux} first={readings.length === 0} />
      <WhatFollows crux={crux} readings={readings} />
      <LeaveFree crux={crux} readings={readings} />
      <details class="fold">
        <summary>when it arises, and taking it away</summary>
        <ReadingConditions
          list={crux.arisesWhen}
          lead="arises only under"
          add="it arises only under the reading…"
          without={id}
          store={(list, why) => void storeFields("cruxes", id, { arisesWhen: list }, `${own}: ${why}`)}
        />
        <p class="says">
          <TakeAway kind="cruxes" id={id} what="the crux" why={`${own}: taken away`} after={() => choose(null)} />
        </p>
      </details>
    </section>
  );
}

function AddReading({ crux, first }: { crux: RecordOf<"cruxes">; first: boolean }) {
  const title = useSignal("");
  return (
    <form
      class="row add-reading"
      onSubmit={(event) => {
        event.preventDefault();
        const name = title.value.trim();
        if (name === "") return;
        const why = `Crux “${short(crux.title, 40)}”: the reading “${name}”`;
        void storeEdits([create("readings", newReading(crux.id, name))], why).then((done) => {
          if (done) title.value = "";
        });
      }}
    >
      <input
        aria-label="Title of a reading"
        placeholder={first ? "the first reading, in a few words" : "another reading, in a few words"}
        size={30}
        value={title.value}
        onInput={(event) => (title.value = event.currentTarget.value)}
      />
      <button type="submit">Add a reading</button>
    </form>
  );
}
