/** client/print/print-room.tsx - the drill on paper: the page as it will print, with the readings one wants, and as files. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Drill, DrillCrux } from "../../schema/drill.ts";
import { listedWorks } from "../read/contents-order.ts";
import { ask, type Refused } from "../state/api.ts";
import { contents, loadContents } from "../state/passage.ts";
import { follow, go } from "../state/route.ts";

/** Readings chosen here, by crux; not stored, only for this sheet. */
type Choice = Readonly<Record<string, string>>;

export function PrintRoom({ exercise }: { exercise: string | null }) {
  useEffect(() => {
    void loadContents();
  }, []);
  const exercises = listedWorks.value.flatMap(({ work, groups }) =>
    groups.filter(({ isExercise }) => isExercise).map((group) => ({ work, group })),
  );
  const first = exercises[0]?.group.key ?? null;
  useEffect(() => {
    if (exercise === null && first !== null) go(`/print/${first}`, true);
  }, [exercise, first]);
  if (exercise === null) {
    return (
      <main class="room" id="main">
        <h1>Print</h1>
        {contents.value && exercises.length === 0 && (
          <p class="empty">
            There is no exercise to print yet. Open a passage in{" "}
            <a href="/" onClick={follow}>
              Read
            </a>{" "}
            and start one there.
          </p>
        )}
      </main>
    );
  }
  return (
    <main class="print-room" id="main">
      <Sheet key={exercise} exercise={exercise}>
        <label class="field">
          <span>Exercise</span>
          <select value={exercise} onChange={(event) => go(`/print/${event.currentTarget.value}`)}>
            {exercises.map(({ work, group }) => (
              <option key={group.key} value={group.key}>
                {group.label && `${group.label}. `}
                {group.title} ({work.title})
              </option>
            ))}
          </select>
        </label>
      </Sheet>
    </main>
  );
}

function Sheet({ exercise, children }: { exercise: string; children: preact.ComponentChildren }) {
  const way = useSignal<"mounted" | "on foot">("mounted");
  const choice = useSignal<Choice>({});
  const adopted = useSignal<Drill | null>(null);
  const shown = useSignal<Drill | null>(null);
  const refused = useSignal<Refused | null>(null);
  const frame = useRef<HTMLIFrameElement>(null);
  const at = contents.value?.at ?? 0;
  const base = `/api/exercises/${exercise}`;
  const query = queryOf(way.value, choice.value);

  useEffect(() => {
    void ask<Drill>(`${base}/drill.json`).then((answer) => {
      if (answer.ok) adopted.value = answer.value;
    });
  }, [base, at]);
  useEffect(() => {
    const stop = new AbortController();
    void ask<Drill>(`${base}/drill.json?${query}`, undefined, stop.signal).then((answer) => {
      if (stop.signal.aborted) return;
      shown.value = answer.ok ? answer.value : null;
      refused.value = answer.ok ? null : answer.error;
    });
    return () => stop.abort();
  }, [base, query, at]);

  useEffect(() => {
    // The browser's own print would take the window; what is meant is the sheet.
    const printSheet = (event: KeyboardEvent) => {
      if (event.key.toLowerCase() !== "p" || !(event.ctrlKey || event.metaKey) || event.shiftKey) return;
      event.preventDefault();
      frame.current?.contentWindow?.print();
    };
    window.addEventListener("keydown", printSheet);
    return () => window.removeEventListener("keydown", printSheet);
  }, []);

  const drill = shown.value;
  const name = fileName(drill?.exercise.title ?? "drill");
  return (
    <>
      <p class="only-printed">This is the window, not the sheet. Press “Print” in it to print the sheet whole.</p>
      <aside class="print-side" aria-label="What to print">
        {children}
        {refused.value && (
          <p class="notice" role="alert">
            {refused.value.sentence}
          </p>
        )}
        {drill && (
          <p class={`notice ${/^The whole /.test(drill.treated.sentence) ? "news" : ""}`}>{drill.treated.sentence}</p>
        )}
        <fieldset class="ways">
          <legend class="label">Ridden</legend>
          {(["mounted", "on foot"] as const).map((option) => (
            <label key={option}>
              <input
                type="radio"
                name="way"
                checked={way.value === option}
                onChange={() => {
                  way.value = option;
                }}
              />{" "}
              {option}
            </label>
          ))}
        </fieldset>
        <Readings drill={adopted.value} choice={choice} />
        <div class="row">
          <button
            type="button"
            class="chief"
            disabled={drill === null}
            aria-keyshortcuts="Control+P"
            onClick={() => frame.current?.contentWindow?.print()}
          >
            Print
          </button>
          <a class="button" href={`${base}/drill.html?${query}`} download={`${name}.html`}>
            Save the page
          </a>
          <a class="button" href={`${base}/drill.json?${query}`} download={`${name}.drill.json`}>
            Save drill.json
          </a>
        </div>
        <p class="meta">
          drill.json is for other programs: every step with its parts, warrants, readings and citations. Its form is
          described in <a href="/schema/drill.schema.json">drill.schema.json</a>.
        </p>
      </aside>
      {drill && (
        <iframe
          key={`${query} ${at}`}
          ref={frame}
          class="paper"
          title={`The page of ${drill.exercise.title}, as it prints`}
          src={`${base}/drill.html?${query}`}
        />
      )}
    </>
  );
}

/** One choice a crux; what was decided is offered first and is chosen to begin with. */
function Readings({ drill, choice }: { drill: Drill | null; choice: { value: Choice } }) {
  if (drill === null) return null;
  const cruxes = new Map<string, DrillCrux>();
  for (const crux of [...drill.elements.flatMap((element) => element.cruxes), ...drill.cruxes]) {
    if (!cruxes.has(crux.crux)) cruxes.set(crux.crux, crux);
  }
  if (cruxes.size === 0) return null;
  return (
    <fieldset class="readings">
      <legend class="label">Readings, for this sheet only</legend>
      {[...cruxes.values()].map((crux) => (
        <label key={crux.crux} class="field">
          <span>{crux.title}</span>
          <select
            value={choice.value[crux.crux] ?? ""}
            onChange={(event) => {
              const { [crux.crux]: _before, ...rest } = choice.value;
              const { value } = event.currentTarget;
              choice.value = value === "" ? rest : { ...rest, [crux.crux]: value };
            }}
          >
            <option value="">
              {crux.taken ? `${crux.taken.title} (${crux.taken.because})` : "not settled: show all"}
            </option>
            {crux.others.map((other) => (
              <option key={other.reading} value={other.reading}>
                {other.title}
                {other.status === "ruled out" && " (ruled out)"}
              </option>
            ))}
          </select>
        </label>
      ))}
    </fieldset>
  );
}

function queryOf(way: string, choice: Choice): string {
  const query = new URLSearchParams({ way });
  const pairs = Object.entries(choice).map(([crux, reading]) => `${crux}:${reading}`);
  if (pairs.length > 0) query.set("choice", pairs.join(","));
  return query.toString();
}

/** "Of the circle about the well" as "of-the-circle-about-the-well". */
function fileName(title: string): string {
  const plain = title.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  return plain.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") || "drill";
}
