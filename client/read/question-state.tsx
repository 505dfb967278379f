/** client/read/question-state.tsx - whether a question is open, what was answered, and how one answers or withdraws it. */
import { useSignal } from "@preact/signals";
import type { RecordOf } from "../../schema/record.ts";
import { sitting, today } from "../state/session.ts";
import { focusFirst } from "./focus-first.ts";
import { conditionWords } from "./guard-editor.tsx";
import { short } from "./row-names.ts";
import { storeFields } from "./store-fields.ts";

type Question = RecordOf<"questions">;

/** How a question is named in the history. */
export const whyOf = (question: Question): string => `Question “${short(question.text, 50)}”`;

export function QuestionState({ question }: { question: Question }) {
  const ending = useSignal<"answered" | "withdrawn" | null>(null);
  const { id, state, answers } = question;
  const own = whyOf(question);
  const store = (next: Question["state"], why: string) =>
    storeFields("questions", id, { state: next }, `${own}: ${why}`).then((done) => {
      if (done) ending.value = null;
    });
  if (state.is !== "open") {
    const said = answers.find((answer) => state.is === "answered" && answer.label === state.answer);
    return (
      <p>
        <b class="ref">{state.is}</b> <span class="meta">{state.on}: </span>
        {state.is === "answered" ? state.answer : state.reason}
        {said && said.allows.length > 0 && (
          <span class="meta"> It leaves {said.allows.map(conditionWords).join(", ")}; decide that at the crux.</span>
        )}{" "}
        <button type="button" class="quiet" onClick={() => void store({ is: "open" }, "open again")}>
          open it again
        </button>
      </p>
    );
  }
  if (ending.value === null) {
    return (
      <p class="says">
        <button type="button" class="quiet" onClick={() => (ending.value = "answered")}>
          it is answered…
        </button>
        <button type="button" class="quiet" onClick={() => (ending.value = "withdrawn")}>
          withdraw it…
        </button>
      </p>
    );
  }
  const is = ending.value;
  return (
    <form
      class="inset"
      ref={focusFirst}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        ending.value = null;
      }}
      onSubmit={(event) => {
        event.preventDefault();
        const data = new FormData(event.currentTarget);
        const words = String(data.get("words") ?? "").trim();
        const on = String(data.get("on") ?? "") || today();
        if (is === "withdrawn") void store({ is, on, reason: words }, "withdrawn");
        else if (words !== "")
          void store({ is, on, sitting: sitting.value, answer: words }, `answered: ${short(words)}`);
      }}
    >
      <label class="field">
        <span>{is === "answered" ? "The answer" : "Why it is withdrawn"}</span>
        <input name="words" required={is === "answered"} list={`answers-known-${id}`} />
      </label>
      <datalist id={`answers-known-${id}`}>
        {answers.map((answer) => (
          <option key={answer.label} value={answer.label} />
        ))}
      </datalist>
      <label class="field">
        <span>on</span>
        <input name="on" type="date" required value={today()} />
      </label>
      <div class="row">
        <button type="submit">{is === "answered" ? "Keep the answer" : "Withdraw it"}</button>
        <button type="button" class="quiet" onClick={() => (ending.value = null)}>
          not now
        </button>
      </div>
    </form>
  );
}
