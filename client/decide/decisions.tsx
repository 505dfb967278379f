/** client/decide/decisions.tsx - what was decided of a crux, newest first, as the log has it. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Decision } from "../../schema/api.ts";
import { ask, type Refused } from "../state/api.ts";
import { rowsAt } from "../state/rows.ts";

export function Decisions({ crux }: { crux: string }) {
  const list = useSignal<Decision[] | null>(null);
  const refused = useSignal<Refused | null>(null);
  const at = rowsAt.value;
  useEffect(() => {
    const stop = new AbortController();
    void ask<Decision[]>(`/api/cruxes/${crux}/decisions`, undefined, stop.signal).then((answer) => {
      if (stop.signal.aborted) return;
      list.value = answer.ok ? answer.value : list.value;
      refused.value = answer.ok ? null : answer.error;
    });
    return () => stop.abort();
  }, [crux, at]);
  return (
    <div class="inset decisions">
      {refused.value && (
        <p class="notice" role="alert">
          {refused.value.sentence}
        </p>
      )}
      {list.value?.length === 0 && <p class="meta">Nothing was decided here yet.</p>}
      <ol>
        {list.value?.map((decision) => (
          <li key={`${decision.change} ${decision.reading ?? ""}`}>
            <time class="meta" dateTime={decision.when}>
              {decision.on ?? decision.when.slice(0, 10)}
            </time>{" "}
            <span>
              {decision.reading !== null && `“${decision.title}” `}
              <b>{decision.is === "standing" ? "stands again" : decision.is}</b>
              {decision.condition && ` ${decision.condition}`}
              {decision.reason && `: ${decision.reason}`}
            </span>{" "}
            <span class="meta">
              {decision.who}, change {decision.number}
            </span>
          </li>
        ))}
      </ol>
    </div>
  );
}
