/** client/decide/letter-dialog.tsx - a letter as it will be sent: all open questions of the work to one person. Read it, copy it,
 *  save it. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { type Refused, readText } from "../state/api.ts";
import { rowsAt } from "../state/rows.ts";

export function LetterDialog({ work, to, close }: { work: string; to: string; close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const text = useSignal<string | null>(null);
  const refused = useSignal<Refused | null>(null);
  const copied = useSignal("");
  const base = `/api/works/${work}/letter?to=${encodeURIComponent(to)}`;
  const at = rowsAt.value;
  useEffect(() => dialog.current?.showModal(), []);
  useEffect(() => {
    const stop = new AbortController();
    void readText(`${base}&as=txt`, stop.signal).then((answer) => {
      if (stop.signal.aborted) return;
      text.value = answer.ok ? answer.value : null;
      refused.value = answer.ok ? null : answer.error;
    });
    return () => stop.abort();
  }, [base, at]);
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(text.value ?? "");
      copied.value = "Copied.";
    } catch {
      copied.value = "The browser does not let it be copied. Select the words and copy them, or save the letter.";
    }
  };
  const name = `letter-to-${to.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-")}`;
  return (
    <dialog ref={dialog} class="letter" aria-label={`Letter to ${to}`} onClose={close}>
      <h2>Letter to {to}</h2>
      {refused.value && (
        <p class="notice" role="alert">
          {refused.value.sentence}
        </p>
      )}
      {text.value === null && !refused.value && <p class="meta">Writing it…</p>}
      {text.value !== null && <textarea class="said" readOnly aria-label="The letter" value={text.value} />}
      <div class="row">
        <button type="button" class="chief" disabled={text.value === null} onClick={() => void copy()}>
          Copy
        </button>
        <a class="button" href={`${base}&as=docx`} download={`${name}.docx`}>
          Save as DOCX
        </a>
        <a class="button" href={`${base}&as=txt`} download={`${name}.txt`}>
          Save as text
        </a>
        <button type="button" class="quiet" onClick={() => dialog.current?.close()}>
          close
        </button>
        <span class="meta" role="status">
          {copied.value}
        </span>
      </div>
    </dialog>
  );
}
