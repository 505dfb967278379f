/** client/print/save-buttons.tsx - the paper as files. Setting a long one takes a moment: it says so and can be stopped. */
import { useSignal } from "@preact/signals";
import { useRef } from "preact/hooks";
import { PAPER_FORMS, type PaperForm } from "../../schema/issue.ts";
import type { Refused } from "../state/api.ts";
import { saveFile } from "./paper-address.ts";

const FORM_WORDS: Readonly<Record<PaperForm, string>> = { pdf: "Save PDF", docx: "Save DOCX", html: "Save the page" };

/** `addressOf` gives the address of a form, `name` the file's name without its ending; `print` prints what is shown. */
export function SaveButtons({
  addressOf,
  name,
  print,
}: {
  addressOf: (form: PaperForm) => string;
  name: string;
  print: () => void;
}) {
  const setting = useSignal<PaperForm | null>(null);
  const refused = useSignal<Refused | null>(null);
  const stop = useRef<AbortController | null>(null);

  const save = async (form: PaperForm) => {
    stop.current?.abort();
    const stopping = new AbortController();
    stop.current = stopping;
    setting.value = form;
    refused.value = null;
    const problem = await saveFile(addressOf(form), `${name}.${form}`, stopping.signal);
    if (stop.current !== stopping) return;
    setting.value = null;
    if (problem?.code !== "stopped") refused.value = problem;
  };
  return (
    <>
      <div class="row">
        <button type="button" aria-keyshortcuts="Control+P" onClick={print}>
          Print
        </button>
        {PAPER_FORMS.map((form) => (
          <button type="button" key={form} class={form === "pdf" ? "chief" : ""} onClick={() => void save(form)}>
            {FORM_WORDS[form]}
          </button>
        ))}
      </div>
      <p class="meta" role="status">
        {setting.value && (
          <>
            Setting the {setting.value.toUpperCase()} …{" "}
            <button
              type="button"
              class="quiet"
              onClick={() => {
                stop.current?.abort();
                setting.value = null;
              }}
            >
              stop
            </button>
          </>
        )}
      </p>
      {refused.value && (
        <p class="notice" role="alert">
          {refused.value.sentence}
        </p>
      )}
    </>
  );
}
