/** client/read/reading-status.tsx - what a person decided of a reading: it stands, is adopted, or is ruled out; a decision
 *  has a day, a sitting and a reason. Of a crux only one reading is adopted without a condition. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { RecordOf } from "../../schema/record.ts";
import { sitting, today } from "../state/session.ts";
import { short } from "./row-names.ts";
import { readingsOf } from "./slot-in-crux.ts";
import { fieldsEdit, storeEdits } from "./store-fields.ts";

type Reading = RecordOf<"readings">;
type Decision = "adopted" | "ruled out";

export function ReadingStatus({ crux, reading }: { crux: RecordOf<"cruxes">; reading: Reading }) {
  const deciding = useSignal<Decision | null>(null);
  const line = useRef<HTMLDivElement>(null);
  const leaving = useRef(false);
  const { status } = reading;
  const own = `“${short(reading.title, 40)}”`;
  // What was pressed is gone once it is decided: the focus goes to what was decided.
  useLayoutEffect(() => {
    if (!leaving.current || line.current === null) return;
    leaving.current = false;
    line.current.focus({ preventScroll: true });
  });
  const close = () => {
    leaving.current = true;
    deciding.value = null;
  };
  if (deciding.value) {
    return <Decide crux={crux} reading={reading} as={deciding.value} close={close} />;
  }
  return (
    <div class="status" ref={line} tabIndex={-1}>
      {status.is === "standing" ? (
        <span class="meta">stands</span>
      ) : (
        <span>
          <b class="ref">{status.is}</b>{" "}
          <span class="meta">
            {status.on}
            {status.is === "adopted" && status.condition && `, ${status.condition}`}: {status.reason}
          </span>
        </span>
      )}
      <span class="says">
        {status.is !== "adopted" && (
          <button type="button" class="quiet" aria-label={`adopt: ${own}`} onClick={() => (deciding.value = "adopted")}>
            adopt
          </button>
        )}
        {status.is !== "ruled out" && (
          <button
            type="button"
            class="quiet"
            aria-label={`rule out: ${own}`}
            onClick={() => (deciding.value = "ruled out")}
          >
            rule out
          </button>
        )}
        {status.is !== "standing" && (
          <button
            type="button"
            class="quiet"
            aria-label={`let it stand again: ${own}`}
            onClick={() => {
              leaving.current = true;
              void storeEdits(
                [fieldsEdit("readings", reading.id, { status: { is: "standing" } })],
                `${own} stands again`,
              );
            }}
          >
            let it stand again
          </button>
        )}
      </span>
    </div>
  );
}

function Decide({
  crux,
  reading,
  as,
  close,
}: {
  crux: RecordOf<"cruxes">;
  reading: Reading;
  as: Decision;
  close: () => void;
}) {
  const reason = useSignal("");
  const condition = useSignal("");
  const on = useSignal(today());
  const form = useRef<HTMLFormElement>(null);
  useLayoutEffect(() => form.current?.querySelector("input")?.focus(), []);
  const rivals =
    as === "adopted" && condition.value.trim() === ""
      ? readingsOf(crux.id).filter(
          (other) => other.id !== reading.id && other.status.is === "adopted" && other.status.condition.trim() === "",
        )
      : [];
  const own = `“${short(reading.title, 40)}”`;
  const others = rivals.map((other) => `“${short(other.title, 40)}”`).join(" and ");
  const decide = async () => {
    const decided = { on: on.value, sitting: sitting.value, reason: reason.value.trim() };
    if (decided.reason === "" || decided.on === "") return;
    const status: Reading["status"] =
      as === "adopted" ? { is: as, ...decided, condition: condition.value.trim() } : { is: as, ...decided };
    const edits = [
      fieldsEdit("readings", reading.id, { status }),
      ...rivals.map((other) => fieldsEdit("readings", other.id, { status: { is: "standing" } })),
    ];
    const instead = rivals.length > 0 ? ` instead of ${others}` : "";
    if (await storeEdits(edits, `${own} ${as}${instead}: ${short(decided.reason, 60)}`)) close();
  };
  return (
    <form
      class="inset"
      ref={form}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        close();
      }}
      onSubmit={(event) => {
        event.preventDefault();
        void decide();
      }}
    >
      <label class="field">
        <span>{as === "adopted" ? "It is adopted because" : "It is ruled out because"}</span>
        <input required value={reason.value} onInput={(event) => (reason.value = event.currentTarget.value)} />
      </label>
      {as === "adopted" && (
        <label class="field">
          <span>only for a condition, if need be</span>
          <input
            placeholder="against a rider on foot"
            value={condition.value}
            onInput={(event) => (condition.value = event.currentTarget.value)}
          />
        </label>
      )}
      <label class="field">
        <span>on</span>
        <input type="date" required value={on.value} onInput={(event) => (on.value = event.currentTarget.value)} />
      </label>
      {rivals.length > 0 && (
        <p class="meta">
          {others} {rivals.length === 1 ? "is" : "are"} adopted now. Adopting {own} lets{" "}
          {rivals.length === 1 ? "it" : "them"} stand again beside it.
        </p>
      )}
      <div class="row">
        <button type="submit" class="chief">
          {as === "ruled out" ? "Rule it out" : rivals.length > 0 ? `Adopt it instead of ${others}` : "Adopt it"}
        </button>
        <button type="button" class="quiet" onClick={close}>
          not now
        </button>
      </div>
    </form>
  );
}
