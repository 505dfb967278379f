/** client/frame/stored-strip.tsx - what the last write came to: stored (with undo), merged, or refused and why. */
import { lastWritten, mergedNote, refusal, undo, writing } from "../state/write.ts";

export function StoredStrip() {
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
            <span class="meta">{writing.value ? "Storing…" : `Stored: ${last.why || "a change"}.`}</span>
            <button type="button" class="quiet" onClick={() => void undo(last.id, `Undone: ${last.why}`)}>
              undo
            </button>
          </>
        )
      )}
      {mergedNote.value && <span class="meta">{mergedNote.value}</span>}
    </footer>
  );
}
