/** client/import/import-room.tsx - bringing a text in: choose or paste it, look at what it would become, then store it. */
import { useEffect } from "preact/hooks";
import type { Refused } from "../state/api.ts";
import { loadContents } from "../state/passage.ts";
import {
  bringIn,
  busy,
  change,
  chooseText,
  chosen,
  preview,
  refused,
  stop,
  text,
  textNumber,
  worksThere,
} from "./import-state.ts";
import { PassageList } from "./passage-list.tsx";
import { SourcePart } from "./source-part.tsx";
import { TargetPart } from "./target-part.tsx";

export function ImportRoom({ work }: { work: string | null }) {
  useEffect(() => {
    void loadContents();
  }, []);
  useEffect(() => {
    if (work !== null) change({ work });
  }, [work]);
  return (
    <main class="room import-room" id="main">
      <header class="room-head">
        <h1>Bring in a text</h1>
        <p class="meta">Nothing is stored until you have seen what it becomes and say so.</p>
      </header>
      <SourcePart />
      {busy.value !== null && (
        <p class="notice news" role="status">
          {busy.value} … <progress aria-label={busy.value} />{" "}
          <button type="button" onClick={stop}>
            Stop
          </button>
        </p>
      )}
      {refused.value && <RefusedNotice refused={refused.value} />}
      {preview.value && <Preview />}
    </main>
  );
}

function RefusedNotice({ refused: { sentence, issues = [] } }: { refused: Refused }) {
  return (
    <div class="notice" role="alert">
      <p>{sentence}</p>
      {issues.length > 1 && (
        <ul>
          {issues.map((issue) => (
            <li key={`${issue.where} ${issue.sentence}`}>
              <span class="ref">{issue.where}</span> {issue.sentence}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

function Preview() {
  const read = preview.value;
  const range = chosen.value;
  if (read === null || text.value === null) return null;
  const count = range?.ok ? range.passages.length : 0;
  return (
    <>
      {read.texts.length > 1 && (
        <fieldset class="texts">
          <legend>
            <h2>The file holds {read.texts.length} texts</h2>
          </legend>
          {read.texts.map((one) => (
            <label key={one.number}>
              <input
                type="radio"
                name="text"
                checked={textNumber.value === one.number}
                onChange={() => chooseText(one)}
              />{" "}
              <span class="said">{one.title || `Text ${one.number}`}</span>{" "}
              <span class="meta">
                {[
                  one.author,
                  one.translator && `tr. ${one.translator}`,
                  one.language,
                  `${one.passages.length} passages`,
                ]
                  .filter(Boolean)
                  .join(", ")}
              </span>
            </label>
          ))}
        </fieldset>
      )}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void bringIn();
        }}
      >
        <TargetPart works={worksThere()} />
        {range && !range.ok && (
          <p class="notice" role="alert">
            {range.refusal.sentence}
          </p>
        )}
        <div class="row bring">
          <button type="submit" class="chief" disabled={count === 0 || busy.value !== null}>
            Bring in {count === 1 ? "1 passage" : `${count} passages`}
          </button>
          <span class="meta">as one change, which can be undone whole</span>
        </div>
      </form>
      <PassageList passages={range?.ok ? range.passages : []} dropped={read.dropped} />
    </>
  );
}
