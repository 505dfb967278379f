/** client/read/question-gloss.tsx - a question: what is asked of whom, what may be answered and what each answer leaves,
 *  and what was answered. */
import { useSignal } from "@preact/signals";
import type { RecordOf } from "../../schema/record.ts";
import { all, one } from "../state/rows.ts";
import { Choice } from "./choice.tsx";
import { DraftField, LabelledField } from "./draft-field.tsx";
import { choose, closeForm } from "./focus.ts";
import { GlossHead } from "./gloss-head.tsx";
import { ReadingConditions } from "./guard-editor.tsx";
import { QuestionState, whyOf } from "./question-state.tsx";
import { short } from "./row-names.ts";
import { useFocusedForm } from "./step-form.tsx";
import { storeFields } from "./store-fields.ts";
import { TakeAway } from "./take-away.tsx";

type Question = RecordOf<"questions">;

export function QuestionGloss({ id, open }: { id: string; open: boolean }) {
  const question = one("questions", id);
  if (question === null) return null;
  const thing = { kind: "questions", id } as const;
  const { state } = question;
  const crux = one("cruxes", question.crux);
  return (
    <>
      <GlossHead thing={thing} sign="?" title={question.text} by={state.is} />
      {!open && (
        <p class="meta">
          to {question.to || "nobody yet"}
          {question.asked && `, ${question.asked}`}
          {crux && (
            <>
              , on{" "}
              <button type="button" class="quiet" onClick={() => choose({ kind: "cruxes", id: crux.id })}>
                † {short(crux.title, 40)}
              </button>
            </>
          )}
        </p>
      )}
      {!open && state.is === "answered" && (
        <p>
          {state.answer} <span class="meta">{state.on}</span>
        </p>
      )}
      {open && <QuestionForm question={question} />}
    </>
  );
}

function QuestionForm({ question }: { question: Question }) {
  const { id } = question;
  const row = { kind: "questions", id } as const;
  const own = whyOf(question);
  const form = useFocusedForm({ kind: "questions", id });
  const addressees = [...new Set(["the translator", ...all("questions").map((other) => other.to)])].filter(Boolean);
  return (
    <div class="form" ref={form}>
      <LabelledField
        row={row}
        name="text"
        label="What is asked"
        many
        value={question.text}
        check={(text) => (text.trim() === "" ? "Expected the question." : "")}
        store={(text, base) =>
          storeFields("questions", id, { text: text.trim() }, `Question: ${short(text.trim())}`, base)
        }
      />
      <LabelledField
        row={row}
        name="to"
        label="Of whom"
        list="question-addressees"
        value={question.to}
        store={(to, base) => storeFields("questions", id, { to: to.trim() }, `${own}: to ${to.trim()}`, base)}
      />
      <datalist id="question-addressees">
        {addressees.map((to) => (
          <option key={to} value={to} />
        ))}
      </datalist>
      <div class="row">
        <Choice
          label="On which crux"
          value={question.crux ?? "none"}
          options={[
            { value: "none", words: "on no crux" },
            ...all("cruxes").map((crux) => ({ value: crux.id, words: `on † ${short(crux.title, 40)}` })),
          ]}
          take={(crux) =>
            void storeFields("questions", id, { crux: crux === "none" ? null : crux }, `${own}: its crux`)
          }
        />
        <Choice
          label="Settled by"
          value={question.by}
          options={[
            { value: "person", words: "somebody can say" },
            { value: "trial", words: "a trial can show" },
          ]}
          take={(by) => void storeFields("questions", id, { by }, `${own}: settled by a ${by}`)}
        />
        <Choice
          label="Effort"
          value={question.effort === null ? "none" : `${question.effort}`}
          options={[
            { value: "none", words: "effort not weighed" },
            ...["no effort", "a little effort", "some effort", "much effort", "great effort"].map((words, index) => ({
              value: `${index + 1}`,
              words,
            })),
          ]}
          take={(effort) =>
            void storeFields(
              "questions",
              id,
              { effort: effort === "none" ? null : Number(effort) },
              `${own}: its effort`,
            )
          }
        />
      </div>
      <PossibleAnswers question={question} />
      <QuestionState question={question} />
      <div class="says form-end">
        <TakeAway kind="questions" id={id} what="the question" why={`${own}: taken away`} after={() => choose(null)} />
        <button type="button" class="quiet" onClick={closeForm}>
          done
        </button>
      </div>
    </div>
  );
}

function PossibleAnswers({ question }: { question: Question }) {
  const { id, answers } = question;
  const label = useSignal("");
  const own = whyOf(question);
  const put = (next: Question["answers"], why: string, base?: number) =>
    storeFields("questions", id, { answers: next }, `${own}: ${why}`, base);
  return (
    <section class="part">
      <h4>What may be answered</h4>
      {answers.map((answer, index) => {
        const change = (changed: Question["answers"][number], why: string, base?: number) =>
          put(answers.with(index, changed), why, base);
        return (
          <div key={index} class="answer">
            <DraftField
              row={{ kind: "questions", id }}
              name={`answer ${index}`}
              label={`Possible answer ${index + 1}`}
              value={answer.label}
              check={(text) => (text.trim() === "" ? "Expected an answer." : "")}
              store={(text, base) =>
                change({ ...answer, label: text.trim() }, `may be answered “${short(text.trim(), 40)}”`, base)
              }
            />
            <button
              type="button"
              class="quiet"
              aria-label={`take the answer away: “${answer.label}”`}
              onClick={() =>
                void put(answers.toSpliced(index, 1), `the answer “${short(answer.label, 40)}” taken away`)
              }
            >
              take the answer away
            </button>
            <ReadingConditions
              list={answer.allows}
              lead="leaves"
              add="leaves the reading…"
              store={(allows, why) => void change({ ...answer, allows }, `“${short(answer.label, 30)}” ${why}`)}
            />
          </div>
        );
      })}
      <form
        class="row"
        onSubmit={(event) => {
          event.preventDefault();
          const text = label.value.trim();
          if (text === "") return;
          void put([...answers, { label: text, allows: [] }], `may be answered “${short(text, 40)}”`).then((done) => {
            if (done) label.value = "";
          });
        }}
      >
        <input
          aria-label="Another possible answer"
          placeholder="a possible answer"
          size={20}
          value={label.value}
          onInput={(event) => (label.value = event.currentTarget.value)}
        />
        <button type="submit">Add</button>
      </form>
    </section>
  );
}
