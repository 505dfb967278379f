/** client/print/print-room.tsx - papers: what is wanted at the left, the paper as it stands now at the right. */
import { useEffect, useRef } from "preact/hooks";
import type { StylesThere } from "../../schema/issue.ts";
import { fileName } from "../../shared/text/file-name.ts";
import { AlarmsOf } from "../decide/alarm.tsx";
import { listedWorks } from "../read/contents-order.ts";
import { ask } from "../state/api.ts";
import { contents, loadContents } from "../state/passage.ts";
import { follow, go } from "../state/route.ts";
import {
  brokenStyles,
  exercise,
  kind,
  loadPrinted,
  paperAsk,
  parts,
  printed,
  styles,
  takesMany,
  unprinted,
} from "./asking.ts";
import { EditionsRoom } from "./editions-room.tsx";
import { IssueForm } from "./issue-form.tsx";
import { paperAddress } from "./paper-address.ts";
import { KindChooser, PaperChoices } from "./paper-choices.tsx";
import { nameOf, PartsChooser } from "./parts-chooser.tsx";
import { Preview } from "./preview.tsx";
import { SaveButtons } from "./save-buttons.tsx";

export function PrintRoom({ of, id }: { of: "papers" | "editions"; id: string | null }) {
  if (of === "editions" && id !== null) return <EditionsRoom work={id} />;
  return <PapersRoom id={of === "papers" ? id : null} />;
}

function PapersRoom({ id }: { id: string | null }) {
  useEffect(() => {
    void loadContents();
    void ask<StylesThere>("/api/styles").then((answer) => {
      if (!answer.ok) return;
      styles.value = answer.value.styles.map(({ name }) => name);
      brokenStyles.value = answer.value.broken.map(({ sentence }) => sentence);
    });
  }, []);
  const exercises = listedWorks.value.flatMap(({ groups }) => groups.filter(({ isExercise }) => isExercise));
  const first = exercises[0]?.key ?? null;
  useEffect(() => {
    exercise.value = id;
    if (id === null && first !== null) go(`/print/${first}`, true);
  }, [id, first]);
  if (id !== null) return <Papers id={id} />;
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

function Papers({ id }: { id: string }) {
  const frame = useRef<HTMLIFrameElement>(null);
  const at = contents.value?.at ?? 0;
  const wanted = parts.value.map((part) => part.exercise).join(" ");
  useEffect(() => {
    for (const one of wanted.split(" ").filter(Boolean)) void loadPrinted(one);
  }, [wanted, at]);
  useEffect(() => {
    // The browser's own print would take the window; what is meant is the paper.
    const printPaper = (event: KeyboardEvent) => {
      if (event.key.toLowerCase() !== "p" || !(event.ctrlKey || event.metaKey) || event.shiftKey) return;
      event.preventDefault();
      frame.current?.contentWindow?.print();
    };
    window.addEventListener("keydown", printPaper);
    return () => window.removeEventListener("keydown", printPaper);
  }, []);

  const listed = listedWorks.value.find(({ groups }) => groups.some(({ key }) => key === id));
  const exercises = listed?.groups.filter(({ isExercise }) => isExercise) ?? [];
  const open = exercises.find(({ key }) => key === id);
  const paper = paperAsk.value;
  const drill = printed.value[id]?.drill;
  const title = takesMany.value ? `${listed?.work.title ?? ""}: ${kind.value}` : open ? nameOf(open) : "";
  const drillQuery = new URLSearchParams({ way: paper?.way ?? "mounted" });
  return (
    <main class="print-room" id="main">
      <p class="only-printed">This is the window, not the paper. Press “Print” in it to print the paper whole.</p>
      <aside class="print-side" aria-label="What to print">
        <label class="field">
          <span>Exercise</span>
          <select value={id} onChange={(event) => go(`/print/${event.currentTarget.value}`)}>
            {listedWorks.value.flatMap(({ work, groups }) =>
              groups
                .filter(({ isExercise }) => isExercise)
                .map((group) => (
                  <option key={group.key} value={group.key}>
                    {nameOf(group)}
                    {listedWorks.value.length > 1 && ` (${work.title})`}
                  </option>
                )),
            )}
          </select>
        </label>
        <AlarmsOf exercise={id} />
        <KindChooser />
        {unprinted.value && (
          <p class="notice" role="alert">
            {unprinted.value.sentence}
          </p>
        )}
        {drill && !takesMany.value && (
          <p class={`notice ${/^The whole /.test(drill.treated.sentence) ? "news" : ""}`}>{drill.treated.sentence}</p>
        )}
        <PartsChooser exercises={exercises} />
        <PaperChoices />
        {paper && (
          <>
            <SaveButtons
              print={() => frame.current?.contentWindow?.print()}
              addressOf={(form) => paperAddress(paper, form, at)}
              name={`${fileName(title)}-${fileName(kind.value)}`}
            />
            {listed && <IssueForm paper={paper} title={title} work={listed.work.id} />}
          </>
        )}
        {listed && (
          <nav class="meta" aria-label="Editions and files for other programs">
            <p>
              <a href={`/print/editions/${listed.work.id}`} onClick={follow}>
                Editions, corrections and reports
              </a>
            </p>
            <p>
              For other programs:{" "}
              <a href={`/api/exercises/${id}/drill.json?${drillQuery}`} download={`${fileName(title)}.drill.json`}>
                Save drill.json
              </a>
              , every step with its parts, warrants, readings and citations, as{" "}
              <a href="/schema/drill.schema.json">drill.schema.json</a> describes it; its{" "}
              <a href={`/api/exercises/${id}/plan.svg`} download={`${fileName(title)}-plan.svg`}>
                plan as SVG
              </a>{" "}
              or{" "}
              <a href={`/api/exercises/${id}/plan.png`} download={`${fileName(title)}-plan.png`}>
                PNG
              </a>
              . Of the whole work:{" "}
              <a
                href={`/api/works/${listed.work.id}/edition.tei.xml`}
                download={`${fileName(listed.work.title)}.tei.xml`}
              >
                TEI
              </a>{" "}
              and{" "}
              <a
                href={`/api/works/${listed.work.id}/annotations.jsonld`}
                download={`${fileName(listed.work.title)}.annotations.jsonld`}
              >
                its marks as annotations
              </a>
              .
            </p>
          </nav>
        )}
      </aside>
      {paper && listed && (
        <Preview paper={paper} at={at} work={listed.work.id} title={`${title}, as it prints`} frame={frame} />
      )}
    </main>
  );
}
