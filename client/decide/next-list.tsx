/** client/decide/next-list.tsx - what to settle next, the most gained for the least effort first; and how much effort each way of
 *  settling is, which is remembered in this browser. */
import { useSignal } from "@preact/signals";
import type { Efforts, NextStep } from "../../shared/ride/puzzle/index.ts";
import { one } from "../state/rows.ts";
import { answered, next } from "./answers.ts";
import { efforts, MOST_EFFORT } from "./wish.ts";

const EFFORTS: readonly { name: keyof Efforts; words: string }[] = [
  { name: "ask", words: "ask somebody" },
  { name: "picture", words: "look at a picture" },
  { name: "foot", words: "try on foot" },
  { name: "mounted", words: "try mounted" },
];
/** So many are shown at first. */
const FIRST = 4;

export function NextList() {
  const allShown = useSignal(false);
  const told = next.value;
  const list = told?.is === "done" ? told.value : [];
  const shown = allShown.value ? list : list.slice(0, FIRST);
  return (
    <section class="next-list" aria-label="What to settle next">
      <h2>What to settle next</h2>
      {told === null && <p class="meta">Not counted yet.</p>}
      {told?.is === "failed" && (
        <p class="notice" role="alert">
          {told.sentence}
        </p>
      )}
      {told?.is === "done" && list.length === 0 && (
        <p class="empty">
          {answered.value?.exact && answered.value.holding === "0"
            ? "Nothing can be ridden as it is picked or decided, so there is nothing to settle yet: let a pick go first."
            : "Nothing is left to settle: no answer would tell the ways that hold apart."}
        </p>
      )}
      <ol>
        {shown.map((step) => (
          <OneStep key={`${step.kind} ${step.id}`} step={step} />
        ))}
      </ol>
      {list.length > shown.length && (
        <button type="button" class="quiet" onClick={() => (allShown.value = true)}>
          show all {list.length}
        </button>
      )}
      <details class="fold">
        <summary>how much effort each is to you</summary>
        <div class="efforts">
          {EFFORTS.map(({ name, words }) => (
            <label key={name}>
              <span>{words}</span>{" "}
              <input
                type="number"
                min={1}
                max={MOST_EFFORT}
                step={1}
                value={efforts.value[name]}
                onChange={(event) => {
                  const value = Math.round(Number(event.currentTarget.value));
                  const kept = Math.min(Math.max(1, Number.isFinite(value) ? value : 1), MOST_EFFORT);
                  event.currentTarget.value = String(kept);
                  efforts.value = { ...efforts.value, [name]: kept };
                }}
              />
            </label>
          ))}
        </div>
        <p class="meta">From 1, hardly any. What is gained is divided by it.</p>
      </details>
    </section>
  );
}

function OneStep({ step: { sentence, crux, means, gain, settles } }: { step: NextStep }) {
  return (
    <li>
      <p>{sentence}</p>
      <p class="meta">
        Tells {gain < 0.05 ? "hardly anything" : `${rounded(gain)} bits`}; effort {efforts.value[means]} of{" "}
        {MOST_EFFORT}
        {settles >= 0.05 && `; settles ${rounded(settles)} other cruxes on average`}.{" "}
        {crux && <a href={`#entry-${crux}`}>†&nbsp;{one("cruxes", crux)?.title}</a>}
      </p>
    </li>
  );
}

const rounded = (value: number): string => value.toFixed(1);
