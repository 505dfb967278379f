/** client/read/put-in-crux.tsx - asks which crux is to hold a slot: one of the open ones, or a new one. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import { CRUX_KINDS } from "../../schema/crux.ts";
import type { SlotAddress } from "../../schema/slot.ts";
import { all } from "../state/rows.ts";
import { short } from "./row-names.ts";
import { intoCrux, intoNewCrux } from "./slot-in-crux.ts";

export function PutInCrux({ address, label, close }: { address: SlotAddress; label: string; close: () => void }) {
  const title = useSignal(`${label}: which?`);
  const is = useSignal<(typeof CRUX_KINDS)[number]>("ambiguous");
  const box = useRef<HTMLFormElement>(null);
  useLayoutEffect(() => box.current?.querySelector<HTMLElement>("button, input")?.focus(), []);
  const cruxes = all("cruxes");
  const after = (done: Promise<boolean>) => void done.then((stored) => stored && close());
  return (
    <form
      class="inset"
      ref={box}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        close();
      }}
      onSubmit={(event) => {
        event.preventDefault();
        if (title.value.trim() !== "") after(intoNewCrux(address, is.value, title.value.trim()));
      }}
    >
      {cruxes.length > 0 && (
        <>
          <p class="label">It is held by the crux</p>
          <ul class="choices">
            {cruxes.map((crux) => (
              <li key={crux.id}>
                <button type="button" class="quiet" onClick={() => after(intoCrux(address, crux.id))}>
                  † {short(crux.title)}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <p class="label">{cruxes.length > 0 ? "or by a new one" : "It is held by a new crux"}</p>
      <div class="row">
        <select
          aria-label="Kind of crux"
          value={is.value}
          onChange={(event) => {
            is.value = CRUX_KINDS.find((kind) => kind === event.currentTarget.value) ?? "ambiguous";
          }}
        >
          {CRUX_KINDS.map((kind) => (
            <option key={kind}>{kind}</option>
          ))}
        </select>
        <input
          aria-label="What is in doubt"
          required
          value={title.value}
          onInput={(event) => (title.value = event.currentTarget.value)}
        />
        <button type="submit">Open the crux</button>
        <button type="button" class="quiet" onClick={close}>
          not now
        </button>
      </div>
    </form>
  );
}
