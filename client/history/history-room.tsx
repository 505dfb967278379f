/** client/history/history-room.tsx - what was changed, newest first, by day; and taking it back. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { HistoryEntry } from "../../schema/api.ts";
import type { FieldConflict } from "../../schema/change.ts";
import { fieldName, fieldWords } from "../frame/field-words.ts";
import { dayWords, listed } from "../print/edition-words.ts";
import { names, short } from "../read/row-names.ts";
import { ask, type Refused } from "../state/api.ts";
import { contents, loadContents } from "../state/passage.ts";
import { follow, go } from "../state/route.ts";
import { refusal, undo } from "../state/write.ts";
import { kindWord, touchedWords } from "./kind-words.ts";

/** As many as the server gives at once. */
const PAGE = 50;

export function HistoryRoom({ work }: { work: string | null }) {
  const entries = useSignal<HistoryEntry[]>([]);
  const refused = useSignal<Refused | null>(null);
  const whole = useSignal(false);
  const loaded = useSignal(false);
  const at = contents.value?.at ?? 0;

  const load = async (before: number | null) => {
    const query = new URLSearchParams();
    if (work !== null) query.set("work", work);
    if (before !== null) query.set("before", String(before));
    const answer = await ask<HistoryEntry[]>(`/api/changes?${query}`);
    if (!answer.ok) {
      refused.value = answer.error;
      return;
    }
    refused.value = null;
    loaded.value = true;
    whole.value = answer.value.length < PAGE;
    entries.value = before === null ? answer.value : [...entries.value, ...answer.value];
  };
  useEffect(() => {
    void loadContents();
  }, []);
  useEffect(() => {
    void load(null);
  }, [work, at]);

  const works = (contents.value?.works ?? []).flatMap(({ rows }) => rows.works?.[0]?.value ?? []);
  return (
    <main class="room" id="main">
      <header class="room-head">
        <h1>History</h1>
        <label class="row">
          <span>of</span>
          <select
            value={work ?? ""}
            onChange={(event) => go(event.currentTarget.value ? `/history/${event.currentTarget.value}` : "/history")}
          >
            <option value="">all works</option>
            {works.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </label>
      </header>
      {refused.value && (
        <p class="notice" role="alert">
          {refused.value.sentence}
        </p>
      )}
      {runsOf(entries.value, ({ when }) => dayOf(when)).map(({ key: day, list }) => (
        <section key={day} class="day">
          <h2>{day}</h2>
          {runsOf(list, ({ sitting }) => sitting?.id ?? "").map(({ key, list: together }) => (
            <div key={`${key} ${together[0]?.id}`} class={key === "" ? "" : "sitting"}>
              {together[0]?.sitting && <h3>{sittingWords(together[0].sitting)}</h3>}
              <ol>
                {together.map((entry) => (
                  <Entry key={entry.id} entry={entry} after={() => load(null)} />
                ))}
              </ol>
            </div>
          ))}
        </section>
      ))}
      {entries.value.length === 0 && !refused.value && (
        <p class="empty">{loaded.value ? "Nothing was changed here yet." : "Looking at the history …"}</p>
      )}
      {!whole.value && entries.value.length > 0 && (
        <button type="button" onClick={() => void load(entries.value.at(-1)?.number ?? null)}>
          Show earlier changes
        </button>
      )}
      <p class="meta">
        Nothing is ever lost: taking a change back is a change too, and can be taken back.{" "}
        <a href="/" onClick={follow}>
          To the text
        </a>
      </p>
    </main>
  );
}

function Entry({ entry, after }: { entry: HistoryEntry; after: () => Promise<void> }) {
  const problem = useSignal<Refused | null>(null);
  const takeBack = async () => {
    const why = entry.undoes === null ? `Taken back: ${entry.why}` : `Done again: ${entry.why}`;
    const done = await undo(entry.id, why);
    problem.value = done ? null : refusal.value;
    if (!done) refusal.value = null;
    else await after();
  };
  return (
    <li class={entry.undone ? "undone" : ""}>
      <div class="row">
        <span class="number">{entry.number}</span>
        <time dateTime={entry.when}>{timeOf(entry.when)}</time>
        <span class="why">{entry.why || "A change"}</span>
        <span class="meta">{entry.who}</span>
        {entry.undone ? (
          <span class="meta">taken back</span>
        ) : (
          <button type="button" class="quiet" onClick={() => void takeBack()}>
            {entry.undoes === null ? (entry.group === null ? "undo" : "undo all of it") : "undo the undo"}
          </button>
        )}
      </div>
      <p class="meta touched">
        {entry.passage && (
          <>
            <a class="ref" href={`/read/${entry.passage.id}`} onClick={follow}>
              {entry.passage.reference || "the passage"}
            </a>
            :{" "}
          </>
        )}
        {touchedWords(entry.touched)}
      </p>
      {problem.value && (
        <div class="notice" role="alert">
          <p>{problem.value.sentence}</p>
          <ul>
            {problem.value.conflicts?.map((conflict) => (
              <li key={`${conflict.kind} ${conflict.id} ${conflict.field}`}>
                A {kindWord(conflict.kind)}
                {conflict.field && `, ${fieldName(conflict.field)}`}: now {inWords(conflict, conflict.theirs)}, by{" "}
                {conflict.who}, {dayOf(conflict.when)}; taking back would make it {inWords(conflict, conflict.yours)}.
              </li>
            ))}
          </ul>
        </div>
      )}
    </li>
  );
}

function inWords({ kind, field }: FieldConflict, value: unknown): string {
  if (value === null || value === undefined) return "gone";
  return `“${short(fieldWords(kind, field, value, names.value), 80)}”`;
}

/** Neighbours that agree, together: those of a day where the user is, or of a sitting. */
function runsOf(entries: readonly HistoryEntry[], keyOf: (entry: HistoryEntry) => string) {
  const runs: { key: string; list: HistoryEntry[] }[] = [];
  for (const entry of entries) {
    const key = keyOf(entry);
    const last = runs.at(-1);
    if (last?.key === key) last.list.push(entry);
    else runs.push({ key, list: [entry] });
  }
  return runs;
}

/** "Sitting of 4 May 2026, with Ada and Bram, at the mill". */
function sittingWords({ on, who, place }: NonNullable<HistoryEntry["sitting"]>): string {
  const company = who.length === 0 ? "" : `with ${listed(who)}`;
  return [`Sitting of ${dayWords(on)}`, company, place].filter(Boolean).join(", ");
}

function dayOf(when: string): string {
  return new Date(when).toLocaleDateString("en-GB", {
    weekday: "long",
    day: "numeric",
    month: "long",
    year: "numeric",
  });
}

function timeOf(when: string): string {
  return new Date(when).toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
}
