/** client/frame/keys-sheet.tsx - how to read the page, and the keys: opened with "?" or from the bar. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { COMMANDS } from "../read/selection-bar.tsx";

const MORE_KEYS: readonly [keys: string, what: string][] = [
  ["Shift with the arrows", "select words in the text"],
  ["Alt Page up, Alt Page down", "the passage before, the passage after"],
  ["Escape", "close the form, the crux, the bar"],
  ["Control Z", "take back what was stored last"],
  ["Control K or /", "find words, steps, questions, or something to do"],
  ["Up, down, Enter", "in Decide: from reading to reading, pick it or let it go"],
  ["Space, left, right", "in Ride: play, a step back, a step on"],
  ["?", "this page"],
];

const LINES: readonly [className: string, sample: string, what: string][] = [
  ["w-stated", "solid", "the words state it"],
  ["w-implied", "dashed", "the words imply it"],
  ["w-supplied", "dotted", "we supply it"],
  ["w-not-settled", "double", "a crux leaves it open"],
];

export function KeysSheet() {
  const open = useSignal(false);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (open.value) dialog.current?.showModal();
    else dialog.current?.close();
  }, [open.value]);
  useEffect(() => {
    const ask = (event: KeyboardEvent) => {
      const at = event.target instanceof HTMLElement ? event.target : null;
      if (event.key !== "?" || at?.matches("input, textarea, select") || at?.closest(".unlocked")) return;
      event.preventDefault();
      open.value = true;
    };
    window.addEventListener("keydown", ask);
    return () => window.removeEventListener("keydown", ask);
  }, []);
  return (
    <>
      <button type="button" class="quiet" onClick={() => (open.value = true)} aria-keyshortcuts="?">
        how to read it
      </button>
      <dialog
        ref={dialog}
        class="keys"
        aria-label="How to read the page, and the keys"
        onClose={() => (open.value = false)}
      >
        <h2>How to read the page</h2>
        <dl>
          {LINES.map(([className, sample, what]) => (
            <div key={sample}>
              <dt>
                <span class={className}>{sample}</span>
              </dt>
              <dd>{what}</dd>
            </div>
          ))}
          <div>
            <dt>
              <span class="not-said">···</span>
            </dt>
            <dd>the text does not say; a thin flat line says that nothing is done</dd>
          </div>
          <div>
            <dt class="ref">1 † ?</dt>
            <dd>a step, a crux, a question; press the sign, or the words, to bring it forward</dd>
          </div>
        </dl>
        <h2>With words selected</h2>
        <dl>
          {COMMANDS.map(({ key, word }) => (
            <div key={key}>
              <dt>
                <kbd>{key}</kbd>
              </dt>
              <dd>{word.replace("…", " something that is marked already")}</dd>
            </div>
          ))}
        </dl>
        <h2>Keys</h2>
        <dl>
          {MORE_KEYS.map(([keys, what]) => (
            <div key={keys}>
              <dt>{keys}</dt>
              <dd>{what}</dd>
            </div>
          ))}
        </dl>
        <button type="button" class="chief" onClick={() => (open.value = false)}>
          Close
        </button>
      </dialog>
    </>
  );
}
