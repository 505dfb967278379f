/** client/read/crux-gloss.tsx - a crux in the margin: its readings in short, and the way to lay them side by side. */
import { Alarm } from "../decide/alarm.tsx";
import { ShareLine } from "../decide/share-line.tsx";
import { exercise } from "../state/passage.ts";
import { follow } from "../state/route.ts";
import { all, one, ranked } from "../state/rows.ts";
import { choose, closeForm, opened } from "./focus.ts";
import { GlossHead } from "./gloss-head.tsx";

export function CruxGloss({ id, open }: { id: string; open: boolean }) {
  const crux = one("cruxes", id);
  if (crux === null) return null;
  const readings = ranked("readings").filter((reading) => reading.crux === id);
  const questions = all("questions").filter((question) => question.crux === id && question.state.is === "open");
  const thing = { kind: "cruxes", id } as const;
  return (
    <>
      <GlossHead thing={thing} sign="†" title={crux.title} by={crux.is} />
      {readings.length === 0 && <p class="meta">No reading is written down yet.</p>}
      {readings.map((reading) => (
        <p
          key={reading.id}
          class={`rd ${reading.status.is === "adopted" || crux.leftFree?.default === reading.id ? "on" : ""} ${reading.status.is === "ruled out" ? "out" : ""}`}
        >
          <b>{reading.title}</b> <span class="by">{reading.holder}</span>
          {reading.status.is === "adopted" && <span class="by"> · adopted</span>}
          {crux.leftFree?.default === reading.id && <span class="by"> · left free; computed with this</span>}
          <ShareLine crux={id} reading={reading.id} />
        </p>
      ))}
      <Alarm crux={id} />
      {questions.map((question) => (
        <p key={question.id} class="q">
          <button type="button" class="quiet" onClick={() => choose({ kind: "questions", id: question.id })}>
            ? {question.text}
          </button>{" "}
          <span class="by">to {question.to}</span>
        </p>
      ))}
      <div class="tools">
        <button
          type="button"
          class="quiet"
          onClick={() => (open ? closeForm() : choose(thing, true))}
          aria-expanded={opened.value?.id === id}
        >
          {open ? "put the readings away" : "lay the readings side by side"}
        </button>
        {exercise.value && (
          <a href={`/decide/${exercise.value.id}`} onClick={follow}>
            see what holds
          </a>
        )}
      </div>
    </>
  );
}
