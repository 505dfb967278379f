/** client/read/amend-bar.tsx - storing what was typed on an unlocked text, with the reason.
 *  When another window was first, what it changed is shown and the typing is laid on top of it; what cannot be laid on
 *  top stays on the page to be copied. Nothing typed is dropped without being asked. */
import { useSignal } from "@preact/signals";
import type { RefObject } from "preact";
import type { RecordOf, Row } from "../../schema/record.ts";
import { projectDoc } from "../../shared/text/projection.ts";
import { wordDiff } from "../../shared/text/words-diff.ts";
import { ask, type Refused } from "../state/api.ts";
import { loadContents, refreshPassage } from "../state/passage.ts";
import { amend } from "../state/write.ts";
import { unlocked } from "./focus.ts";
import type { StepJson, TextView } from "./text-view.ts";

type PassageText = RecordOf<"passageTexts">;

/** `base` is the text that was unlocked; `newest` the one that is stored now. */
export function AmendBar({
  base,
  newest,
  view,
  typed,
}: {
  base: PassageText;
  newest: PassageText;
  view: RefObject<TextView | null>;
  typed: boolean;
}) {
  const why = useSignal("");
  const refused = useSignal<Refused | null>(null);
  const busy = useSignal(false);
  const asked = useSignal(false);
  /** The text the typing now stands on; moves on as others' changes are laid under it. */
  const on = useSignal(base);
  /** A later text of another window that has not been laid under the typing yet. */
  const later = useSignal<PassageText | null>(null);
  const theirs = later.value ?? (newest.number > on.value.number ? newest : null);
  /** What was typed, where some of it had to give way. */
  const kept = useSignal<string | null>(null);

  const store = async (event: Event) => {
    event.preventDefault();
    const steps = view.current?.steps() ?? [];
    if (steps.length === 0) return;
    busy.value = true;
    const answer = await amend(base.passage, on.value.id, steps, why.value.trim());
    busy.value = false;
    if (answer.ok) {
      unlocked.value = null;
      void loadContents();
      return;
    }
    refused.value = answer.error;
    if (answer.error.code === "stale_text" && answer.error.current)
      later.value = answer.error.current.value as PassageText;
  };

  const layOnTop = async () => {
    const editor = view.current;
    if (editor === null || theirs === null) return;
    const query = `revision=${base.revision}&after=${on.value.number}`;
    const answer = await ask<Row<"passageTexts">[]>(`/api/passages/${base.passage}/texts?${query}`);
    if (!answer.ok) {
      refused.value = answer.error;
      return;
    }
    const mine = projectDoc(editor.view.state.doc);
    const steps = answer.value.flatMap((row) => row.value.steps as StepJson[]);
    if (!editor.receive(steps)) kept.value = mine;
    on.value = answer.value.at(-1)?.value ?? theirs;
    later.value = null;
    refused.value = null;
  };

  const leave = () => {
    if (typed && !asked.value) {
      asked.value = true;
      return;
    }
    view.current?.load(newest.doc);
    unlocked.value = null;
    void refreshPassage();
  };

  return (
    <form class="amend" onSubmit={(event) => void store(event)}>
      <label class="field">
        <span>Why do the words change?</span>
        <input
          required
          value={why.value}
          onInput={(event) => {
            why.value = event.currentTarget.value;
          }}
          placeholder="the translator's correction of 3 May"
        />
      </label>
      <div class="row">
        <button type="submit" class="chief" disabled={!typed || busy.value || theirs !== null}>
          {busy.value ? "Storing…" : "Store the amended text"}
        </button>
        <button type="button" onClick={leave}>
          {asked.value ? "Drop what I typed" : typed ? "Leave it as it was" : "Lock again"}
        </button>
        {asked.value && <span class="label">What you typed is not stored. Press once more to drop it.</span>}
      </div>
      {refused.value && theirs === null && (
        <div class="notice" role="alert">
          {refused.value.sentence}
        </div>
      )}
      {theirs && (
        <div class="notice" role="alert">
          <p>
            Another window amended this passage after you began. This is what it changed; what you typed is still in the
            text above.
          </p>
          <p class="said compared">
            <Compared before={on.value.text} after={theirs.text} />
          </p>
          <button type="button" class="chief" onClick={() => void layOnTop()}>
            Put my typing on top of it
          </button>
        </div>
      )}
      {kept.value !== null && (
        <div class="notice" role="alert">
          <p>
            Both windows changed the same words, so some of your typing gave way. This is the text as you had it; copy
            from it what is missing.
          </p>
          <p class="said">{kept.value}</p>
        </div>
      )}
    </form>
  );
}

/** Two texts as one: words that went are struck out, words that came are underlined. */
function Compared({ before, after }: { before: string; after: string }) {
  return (
    <>
      {wordDiff(before, after).map((run, index) => {
        if (run.kind === "same") return run.text;
        const key = `${index} ${run.kind}`;
        return run.kind === "removed" ? <del key={key}>{run.text}</del> : <ins key={key}>{run.text}</ins>;
      })}
    </>
  );
}
