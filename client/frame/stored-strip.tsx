/** client/frame/stored-strip.tsx - what the last write came to: stored (with undo), merged, or refused and why. */
import { useEffect } from "preact/hooks";
import { lastWritten, mergedNote, refusal, undo, writing } from "../state/write.ts";

const UNDONE = "Undone: ";
const isUndone = (why: string) => why.startsWith(UNDONE);

/** "Stored: Step 3, figure: circle." and "Undone: ..."; a sentence that ends in a stop keeps its own. */
function saidOf(why: string): string {
  const said = isUndone(why) ? why : `Stored: ${why || "a change"}`;
  return /[.?!…”]$/.test(said) ? said : `${said}.`;
}

function undoLast(): void {
  const last = lastWritten.value;
  if (last) void undo(last.id, isUndone(last.why) ? last.why.slice(UNDONE.length) : `${UNDONE}${last.why}`);
}

/** Control-Z takes the last change back, unless it belongs to words that are being typed. */
function undoByKey(event: KeyboardEvent): void {
  if (event.key.toLowerCase() !== "z" || !(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey) return;
  const at = event.target instanceof HTMLElement ? event.target : null;
  if (at?.matches("input, textarea, select") || at?.closest(".unlocked") || lastWritten.value === null) return;
  event.preventDefault();
  undoLast();
}

export function StoredStrip() {
  useEffect(() => {
    window.addEventListener("keydown", undoByKey);
    return () => window.removeEventListener("keydown", undoByKey);
  }, []);
  const last = lastWritten.value;
  const refused = refusal.value;
  if (!last && !refused && !mergedNote.value) return null;
  return (
    <footer class="strip" aria-live="polite">
      {refused ? (
        <>
          <span class="ref">Not stored.</span> <span>{refused.sentence}</span>
          {refused.issues?.map((issue) => (
            <span key={issue.where} class="meta">
              {issue.where}: {issue.sentence}
            </span>
          ))}
          <button type="button" class="quiet" onClick={() => (refusal.value = null)}>
            dismiss
          </button>
        </>
      ) : (
        last && (
          <>
            <span class="meta">{writing.value ? "Storing…" : saidOf(last.why)}</span>
            <button type="button" class="quiet" onClick={undoLast} aria-keyshortcuts="Control+Z">
              {isUndone(last.why) ? "do it again" : "undo"}
            </button>
          </>
        )
      )}
      {mergedNote.value && <span class="meta">{mergedNote.value}</span>}
    </footer>
  );
}
