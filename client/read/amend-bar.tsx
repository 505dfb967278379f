/** client/read/amend-bar.tsx - storing what was typed on an unlocked text, with the reason.
 *  When another window was first, the typing is laid on top of its words; where both changed the same words, both
 *  are shown and a person decides. Nothing typed is dropped without being asked. */
import { useSignal } from "@preact/signals";
import type { RefObject } from "preact";
import { rebaseSteps } from "prosemirror-collab";
import type { Node as DocNode } from "prosemirror-model";
import { Step, Transform } from "prosemirror-transform";
import { type DocJson, docFromJson, passageSchema } from "../../schema/editor.ts";
import type { RecordOf } from "../../schema/record.ts";
import { projectDoc } from "../../shared/text/projection.ts";
import { wordDiff } from "../../shared/text/words-diff.ts";
import type { Refused } from "../state/api.ts";
import { loadContents, refreshPassage, type ShownText } from "../state/passage.ts";
import { amend } from "../state/write.ts";
import { unlocked } from "./focus.ts";
import type { TextView } from "./text-view.ts";

type PassageText = RecordOf<"passageTexts">;

export function AmendBar({
  shown,
  view,
  typed,
}: {
  shown: ShownText;
  view: RefObject<TextView | null>;
  typed: boolean;
}) {
  const why = useSignal("");
  const refused = useSignal<Refused | null>(null);
  const theirs = useSignal<PassageText | null>(null);
  const busy = useSignal(false);
  const asked = useSignal(false);

  const store = async (text: string, steps: { stepType: string }[]) => {
    busy.value = true;
    const answer = await amend(shown.text.passage, text, steps, why.value.trim());
    busy.value = false;
    if (answer.ok) {
      unlocked.value = null;
      void loadContents();
      return;
    }
    refused.value = answer.error;
    if (answer.error.code === "stale_text" && answer.error.current)
      theirs.value = answer.error.current.value as PassageText;
  };

  const onSubmit = (event: Event) => {
    event.preventDefault();
    const steps = view.current?.steps() ?? [];
    if (steps.length) void store(shown.text.id, steps);
  };

  const leave = () => {
    if (typed && !asked.value) {
      asked.value = true;
      return;
    }
    view.current?.load(shown.text.doc as DocJson);
    unlocked.value = null;
    void refreshPassage();
  };

  const layOnTop = () => {
    const other = theirs.value;
    const mine = view.current?.view.state.doc;
    if (other === null || mine === undefined) return;
    const steps = rebase(docFromJson(shown.text.doc as DocJson), view.current?.steps() ?? [], other);
    if (steps === null) {
      refused.value = {
        code: "same_words",
        sentence:
          "Both windows changed the same words, so they cannot be laid on top of each other. Compare below, then choose.",
      };
    } else void store(other.id, steps);
  };
  const putMine = () => {
    const other = theirs.value;
    const mine = view.current?.view.state.doc;
    if (other === null || mine === undefined) return;
    const base = docFromJson(other.doc as DocJson);
    const whole = new Transform(base).replaceWith(0, base.content.size, mine.content);
    void store(
      other.id,
      whole.steps.map((step) => step.toJSON() as { stepType: string }),
    );
  };

  const mineText = view.current ? projectDoc(view.current.view.state.doc) : "";
  return (
    <form class="amend" onSubmit={onSubmit}>
      <label class="field">
        <span>Why do the words change?</span>
        <input
          required
          value={why.value}
          onInput={(event) => (why.value = event.currentTarget.value)}
          placeholder="the translator's correction of 3 May"
        />
      </label>
      <div class="row">
        <button type="submit" class="chief" disabled={!typed || busy.value}>
          {busy.value ? "Storing…" : "Store the amended text"}
        </button>
        <button type="button" onClick={leave}>
          {asked.value ? "Drop what I typed" : typed ? "Leave it as it was" : "Lock again"}
        </button>
        {asked.value && <span class="label">What you typed is not stored. Press once more to drop it.</span>}
      </div>
      {refused.value && (
        <div class="notice" role="alert">
          {refused.value.sentence}
        </div>
      )}
      {theirs.value && (
        <div class="stale">
          <p class="label">
            What the other window stored, against what you typed (struck out: theirs only; underlined: yours only)
          </p>
          <p class="said compared">
            {wordDiff(theirs.value.text, mineText).map((run, index) =>
              run.kind === "same" ? (
                run.text
              ) : run.kind === "removed" ? (
                <del key={index}>{run.text}</del>
              ) : (
                <ins key={index}>{run.text}</ins>
              ),
            )}
          </p>
          <div class="row">
            <button type="button" class="chief" onClick={layOnTop}>
              Keep both changes
            </button>
            <button type="button" onClick={putMine}>
              Put my whole text in its place
            </button>
          </div>
        </div>
      )}
    </form>
  );
}

/** My steps, carried over theirs; null when both touch the same words.
 *  `theirs` must be the text that directly followed the one both started from. */
function rebase(
  base: DocNode,
  mine: readonly { stepType: string }[],
  theirs: PassageText,
): { stepType: string }[] | null {
  const read = (json: { stepType: string }) => Step.fromJSON(passageSchema, json);
  const typed = new Transform(base);
  const own = mine.map((json) => {
    const step = read(json);
    const inverted = step.invert(typed.doc);
    typed.step(step);
    return { step, inverted, origin: typed };
  });
  try {
    const over = theirs.steps.map((json) => read(json as { stepType: string }));
    const rebased = rebaseSteps(own, over, new Transform(typed.doc));
    return rebased.length === own.length ? rebased.map(({ step }) => step.toJSON() as { stepType: string }) : null;
  } catch {
    return null;
  }
}
