/** client/decide/questions-list.tsx - the questions of what lies open: whom they are asked of, how long ago, what became of them;
 *  and a letter to each who is asked. */
import { useSignal } from "@preact/signals";
import type { RecordOf } from "../../schema/record.ts";
import { QuestionState } from "../read/question-state.tsx";
import { all, one } from "../state/rows.ts";
import { today } from "../state/session.ts";
import { laid, openExercises } from "./answers.ts";
import { openInRead, passageOf } from "./goto.ts";
import { LetterDialog } from "./letter-dialog.tsx";

type Question = RecordOf<"questions">;

export function QuestionsList() {
  const to = useSignal("");
  const alsoClosed = useSignal(false);
  const letter = useSignal<string | null>(null);
  const here = questionsHere();
  const addressees = [...new Set(here.map((question) => question.to))].sort();
  const wanted = addressees.includes(to.value) ? to.value : "";
  const shown = here
    .filter(
      (question) => (wanted === "" || question.to === wanted) && (alsoClosed.value || question.state.is === "open"),
    )
    .sort((a, b) => rank(a) - rank(b) || (a.asked ?? "~").localeCompare(b.asked ?? "~"));
  const closed = here.filter(({ state }) => state.is !== "open").length;
  const work = here[0]?.work;
  return (
    <section class="questions-list" aria-label="Questions">
      <h2>Questions</h2>
      {here.length === 0 && (
        <p class="empty">
          Nobody is asked anything here. In Read, select the words and put a question to somebody who can answer it.
        </p>
      )}
      {here.length > 0 && (
        <div class="row">
          <label>
            <span class="label">to</span>{" "}
            <select value={wanted} onChange={(event) => (to.value = event.currentTarget.value)}>
              <option value="">anybody</option>
              {addressees.map((name) => (
                <option key={name} value={name}>
                  {name || "nobody yet"}
                </option>
              ))}
            </select>
          </label>
          {closed > 0 && (
            <label>
              <input
                type="checkbox"
                checked={alsoClosed.value}
                onChange={(event) => (alsoClosed.value = event.currentTarget.checked)}
              />{" "}
              <span class="label">
                also the {closed} that {closed === 1 ? "is" : "are"} closed
              </span>
            </label>
          )}
        </div>
      )}
      {here.length > 0 && shown.length === 0 && <p class="empty">Nothing is open{wanted ? ` with ${wanted}` : ""}.</p>}
      <ol>
        {shown.map((question) => (
          <OneQuestion key={question.id} question={question} />
        ))}
      </ol>
      {work && <Letters here={here} write={(name) => (letter.value = name)} />}
      {work && letter.value !== null && (
        <LetterDialog work={work} to={letter.value} close={() => (letter.value = null)} />
      )}
    </section>
  );
}

/** Of the exercises that lie open, of a crux that is counted, and of the whole work. */
function questionsHere(): Question[] {
  const open = new Set(openExercises.value);
  const counted = new Set(laid.value?.cruxes.map(({ id }) => id));
  return all("questions").filter(
    ({ exercise, crux }) =>
      (exercise === null && crux === null) ||
      (exercise !== null && open.has(exercise)) ||
      (crux !== null && counted.has(crux)),
  );
}

const rank = ({ state }: Question): number => (state.is === "open" ? 0 : 1);

function OneQuestion({ question }: { question: Question }) {
  const { id, text, to, crux, exercise } = question;
  const passage = passageOf({ kind: "questions", id });
  const age = ageWords(question);
  const several = openExercises.value.length > 1;
  return (
    <li class={question.state.is === "open" ? "" : "closed"}>
      <p>
        <b class="ref" aria-hidden="true">
          ?
        </b>{" "}
        {text}
      </p>
      <p class="meta">
        {question.by === "trial" ? "a trial: " : "to "}
        {to || "nobody yet"}
        {age && `, ${age}`}
        {several && exercise && `, ${one("exercises", exercise)?.title ?? ""}`}
        {crux && (
          <>
            , on <a href={`#entry-${crux}`}>†&nbsp;{one("cruxes", crux)?.title}</a>
          </>
        )}
        {passage && (
          <>
            {" · "}
            <button type="button" class="quiet" onClick={() => void openInRead({ kind: "questions", id }, passage)}>
              in Read
            </button>
          </>
        )}
      </p>
      <QuestionState question={question} />
    </li>
  );
}

const DAY_MS = 86_400_000;

/** "asked today", "asked 12 days ago"; "" where no day is given. */
function ageWords({ asked }: Question): string {
  if (asked === null) return "";
  const days = Math.round((Date.parse(today()) - Date.parse(asked)) / DAY_MS);
  if (days < 0) return `to be asked on ${asked}`;
  if (days === 0) return "asked today";
  return days === 1 ? "asked yesterday" : `asked ${days} days ago`;
}

function Letters({ here, write }: { here: readonly Question[]; write: (to: string) => void }) {
  const addressees = [
    ...new Set(here.filter(({ state, to }) => state.is === "open" && to !== "").map((question) => question.to)),
  ].sort();
  if (addressees.length === 0) return null;
  return (
    <p class="letters">
      <span class="label">Write a letter to</span>{" "}
      {addressees.map((name) => (
        <button key={name} type="button" onClick={() => write(name)}>
          {name}
        </button>
      ))}
    </p>
  );
}
