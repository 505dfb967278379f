/** client/print/issue-form.tsx - freezes the paper that is shown: number, day, and whom it goes to. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { type Issued, type IssueRequest, PAPER_FORMS, type PaperForm } from "../../schema/issue.ts";
import type { PaperAsk } from "../../schema/paper.ts";
import { focusFirst } from "../read/focus-first.ts";
import { ask, type Refused } from "../state/api.ts";
import { loadContents } from "../state/passage.ts";
import { follow } from "../state/route.ts";
import { sitting, today, who } from "../state/session.ts";
import { newId } from "../state/write.ts";

/** `work` is that of the exercises; `title` is offered as the title of the edition. */
export function IssueForm({ paper, title, work }: { paper: PaperAsk; title: string; work: string }) {
  const open = useSignal(false);
  const issuing = useSignal(false);
  const refused = useSignal<Refused | null>(null);
  const issued = useSignal<Issued | null>(null);
  const name = useSignal(title);
  const day = useSignal(today());
  const forms = useSignal<readonly PaperForm[]>(["pdf"]);
  const recipients = useSignal("");
  const section = useRef<HTMLElement>(null);
  // What was asked for is brought into view: the form with the focus in it, then what became of it.
  useEffect(() => {
    if (!open.value && issued.value === null) return;
    section.current?.scrollIntoView({ block: "nearest" });
    if (open.value) focusFirst(section.current);
  }, [open.value, issued.value]);
  useEffect(() => {
    name.value = title;
    issued.value = null;
    refused.value = null;
  }, [title]);

  const issue = async (event: Event) => {
    event.preventDefault();
    issuing.value = true;
    const request: IssueRequest = {
      id: newId(),
      edition: newId(),
      who: who.value,
      sitting: sitting.value,
      ask: paper,
      title: name.value.trim(),
      issued: day.value,
      forms: [...forms.value],
      recipients: namesIn(recipients.value).map((to) => ({ who: to, on: day.value })),
    };
    const answer = await ask<Issued>("/api/editions", request);
    issuing.value = false;
    refused.value = answer.ok ? null : answer.error;
    if (!answer.ok) return;
    issued.value = answer.value;
    open.value = false;
    recipients.value = "";
    await loadContents();
  };

  return (
    <section class="issue" aria-label="Issue an edition" ref={section}>
      {issued.value && (
        <p class="notice news" role="status">
          Edition {issued.value.number} is issued, check code {issued.value.check}. Its bytes are kept; see{" "}
          <a href={`/print/editions/${work}`} onClick={follow}>
            all editions
          </a>
          .
        </p>
      )}
      {!open.value && (
        <button
          type="button"
          onClick={() => {
            day.value = today();
            open.value = true;
          }}
        >
          Issue as an edition …
        </button>
      )}
      {open.value && (
        <form onSubmit={(event) => void issue(event)}>
          <p class="meta">
            An edition gets a number and is never changed again. When a reading changes later, you see who holds it and
            can send them a correction slip.
          </p>
          <label class="field">
            <span>Title</span>
            <input
              value={name.value}
              required
              maxLength={500}
              onInput={(event) => (name.value = event.currentTarget.value)}
            />
          </label>
          <label class="field">
            <span>Day</span>
            <input
              type="date"
              value={day.value}
              required
              onInput={(event) => (day.value = event.currentTarget.value)}
            />
          </label>
          <label class="field">
            <span>Goes to</span>
            <textarea
              rows={3}
              value={recipients.value}
              placeholder="one a line: a person, a class, an occasion"
              onInput={(event) => (recipients.value = event.currentTarget.value)}
            />
          </label>
          <fieldset class="ways">
            <legend class="label">Kept as</legend>
            {PAPER_FORMS.map((form) => (
              <label key={form}>
                <input
                  type="checkbox"
                  checked={forms.value.includes(form)}
                  onChange={() => {
                    const without = forms.value.filter((one) => one !== form);
                    forms.value = without.length < forms.value.length ? without : [...without, form];
                  }}
                />{" "}
                {form === "html" ? "page" : form.toUpperCase()}
              </label>
            ))}
          </fieldset>
          {refused.value && (
            <p class="notice" role="alert">
              {refused.value.sentence}
            </p>
          )}
          <div class="row">
            <button type="submit" class="chief" disabled={issuing.value || forms.value.length === 0}>
              {issuing.value ? "Setting the paper …" : "Issue"}
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
      )}
    </section>
  );
}

export function namesIn(lines: string): string[] {
  const names = lines
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");
  return [...new Set(names)];
}
