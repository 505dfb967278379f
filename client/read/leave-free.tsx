/** client/read/leave-free.tsx - leaving a crux to the rider on purpose, with a reading that is used only for computing. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { RecordOf } from "../../schema/record.ts";
import { one } from "../state/rows.ts";
import { sitting, today } from "../state/session.ts";
import { focusFirst } from "./focus-first.ts";
import { short } from "./row-names.ts";
import { storeFields } from "./store-fields.ts";

export function LeaveFree({ crux, readings }: { crux: RecordOf<"cruxes">; readings: readonly RecordOf<"readings">[] }) {
  const asking = useSignal(false);
  const place = useRef<HTMLParagraphElement>(null);
  const leaving = useRef(false);
  // What was pressed goes with its form: the focus stays at what is said here then.
  useLayoutEffect(() => {
    if (!leaving.current || place.current === null) return;
    leaving.current = false;
    place.current.focus({ preventScroll: true });
  });
  const close = () => {
    leaving.current = true;
    asking.value = false;
  };
  const { id, leftFree } = crux;
  const own = `Crux “${short(crux.title, 40)}”`;
  if (leftFree) {
    return (
      <p ref={place} tabIndex={-1}>
        <b class="ref">left free</b>{" "}
        <span class="meta">
          {leftFree.on}: {leftFree.reason}. Computed with “{one("readings", leftFree.default)?.title}”.
        </span>{" "}
        <button
          type="button"
          class="quiet"
          onClick={() => {
            leaving.current = true;
            void storeFields("cruxes", id, { leftFree: null }, `${own}: no longer left free`);
          }}
        >
          take it up again
        </button>
      </p>
    );
  }
  if (readings.length < 2) return null;
  if (!asking.value) {
    return (
      <p ref={place} tabIndex={-1}>
        <button type="button" class="quiet" onClick={() => (asking.value = true)}>
          leave it free on purpose…
        </button>
      </p>
    );
  }
  return (
    <form
      class="inset"
      ref={focusFirst}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        close();
      }}
      onSubmit={(event) => {
        event.preventDefault();
        const data = new FormData(event.currentTarget);
        const reason = String(data.get("reason") ?? "").trim();
        const chosen = String(data.get("default") ?? "");
        if (reason === "" || chosen === "") return;
        const free = { on: today(), sitting: sitting.value, reason, default: chosen };
        leaving.current = true;
        void storeFields("cruxes", id, { leftFree: free }, `${own} left free: ${short(reason, 60)}`).then((done) => {
          if (done) asking.value = false;
        });
      }}
    >
      <label class="field">
        <span>It is left to the rider because</span>
        <input name="reason" required />
      </label>
      <label class="field">
        <span>and computed with</span>
        <select name="default">
          {readings.map((reading) => (
            <option key={reading.id} value={reading.id}>
              {reading.title}
            </option>
          ))}
        </select>
      </label>
      <div class="row">
        <button type="submit">Leave it free</button>
        <button type="button" class="quiet" onClick={close}>
          not now
        </button>
      </div>
    </form>
  );
}
