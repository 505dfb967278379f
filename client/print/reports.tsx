/** client/print/reports.tsx - errors that readers found: entered against the edition and the step they hold, and answered. */
import { useSignal } from "@preact/signals";
import type { EditionLine } from "../../schema/issue.ts";
import type { Report } from "../../schema/teaching.ts";
import { today } from "../state/session.ts";
import { newId } from "../state/write.ts";
import { writeEdition } from "./edition-rows.ts";
import { dayWords } from "./edition-words.ts";

export function Reports({ line, work }: { line: EditionLine; work: string }) {
  const { reports, steps } = line;
  return (
    <div class="reports">
      {reports.length > 0 && (
        <ul>
          {reports.map(({ value, version }) => (
            <ReportLine key={value.id} report={value} version={version} work={work} steps={steps} />
          ))}
        </ul>
      )}
      <NewReport line={line} work={work} />
    </div>
  );
}

function ReportLine({
  report,
  version,
  work,
  steps,
}: {
  report: Report;
  version: number;
  work: string;
  steps: EditionLine["steps"];
}) {
  const answer = useSignal<string | null>(null);
  const refused = useSignal("");
  const set = async (fields: Partial<Report>, why: string) => {
    const edit = { do: "set", kind: "reports", id: report.id, base: version, fields } as const;
    const problem = await writeEdition(edit, why, work);
    refused.value = problem?.sentence ?? "";
    if (problem === null) answer.value = null;
  };
  const step = steps.find(({ element }) => element === report.element);
  const place = report.shown === "" ? "" : `step ${report.shown}`;
  return (
    <li>
      <p>
        <span class="query">{report.who || "A reader"}</span>, {dayWords(report.on)}
        {place && (
          <>
            , <span title={step?.words ?? ""}>{place}</span>
          </>
        )}
        : {report.text}
      </p>
      <p class="meta">
        {report.state === "answered"
          ? `Answered: ${report.answer}`
          : report.state === "taken up"
            ? "Taken up."
            : "New."}{" "}
        {report.state === "new" && (
          <button type="button" class="quiet" onClick={() => void set({ state: "taken up" }, "Take a report up")}>
            take it up<span class="spoken">: {report.text}</span>
          </button>
        )}{" "}
        {report.state !== "answered" && answer.value === null && (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              answer.value = "";
            }}
          >
            answer it<span class="spoken">: {report.text}</span>
          </button>
        )}
      </p>
      {answer.value !== null && (
        <form
          class="row"
          onSubmit={(event) => {
            event.preventDefault();
            void set({ state: "answered", answer: answer.value?.trim() ?? "" }, "Answer a report");
          }}
        >
          <label>
            <span class="label">Answer</span>{" "}
            <input
              value={answer.value}
              required
              onInput={(event) => {
                answer.value = event.currentTarget.value;
              }}
            />
          </label>
          <button type="submit" class="chief">
            Answer
          </button>
        </form>
      )}
      {refused.value && (
        <p class="notice" role="alert">
          {refused.value}
        </p>
      )}
    </li>
  );
}

function NewReport({ line: { edition, steps }, work }: { line: EditionLine; work: string }) {
  const open = useSignal(false);
  const who = useSignal("");
  const element = useSignal("");
  const text = useSignal("");
  const refused = useSignal("");
  const report = async (event: Event) => {
    event.preventDefault();
    const value: Report = {
      id: newId(),
      edition: edition.id,
      shown: steps.find((step) => step.element === element.value)?.shown ?? "",
      element: element.value || null,
      who: who.value.trim(),
      on: today(),
      text: text.value.trim(),
      state: "new",
      answer: "",
    };
    const problem = await writeEdition(
      { do: "create", kind: "reports", value },
      `Enter a report on edition ${edition.number}`,
      work,
    );
    refused.value = problem?.sentence ?? "";
    if (problem !== null) return;
    open.value = false;
    text.value = "";
    element.value = "";
  };
  if (!open.value) {
    return (
      <button
        type="button"
        class="quiet"
        onClick={() => {
          open.value = true;
        }}
      >
        enter an error somebody found<span class="spoken"> in edition {edition.number}</span>
      </button>
    );
  }
  return (
    <form class="report" onSubmit={(event) => void report(event)}>
      <label class="field">
        <span>Who found it</span>
        <input value={who.value} onInput={(event) => (who.value = event.currentTarget.value)} />
      </label>
      <label class="field">
        <span>At</span>
        <select value={element.value} onChange={(event) => (element.value = event.currentTarget.value)}>
          <option value="">the paper as a whole</option>
          {steps.map((step) => (
            <option key={step.element} value={step.element}>
              step {step.shown}: {step.words.slice(0, 60)}
            </option>
          ))}
        </select>
      </label>
      <label class="field">
        <span>What is wrong</span>
        <textarea rows={2} required value={text.value} onInput={(event) => (text.value = event.currentTarget.value)} />
      </label>
      {refused.value && (
        <p class="notice" role="alert">
          {refused.value}
        </p>
      )}
      <div class="row">
        <button type="submit" class="chief">
          Enter it
        </button>
        <button
          type="button"
          onClick={() => {
            open.value = false;
          }}
        >
          Leave it
        </button>
      </div>
    </form>
  );
}
