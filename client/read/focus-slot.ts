/** client/read/focus-slot.ts - the focus back on the row of a slot, when what had it went with what was pressed. */
import type { Kind } from "../../schema/record.ts";

/** Names the row of a slot on the page, as its `data-slot`. */
export function slotKey(row: { kind: Kind; id: string }, name: string): string {
  return `${row.kind} ${row.id} ${name}`;
}

/** After what is under way was drawn; does nothing where the focus has a place, or the row is not there. */
export function focusSlot(row: { kind: Kind; id: string }, name: string): void {
  requestAnimationFrame(() => {
    if (document.activeElement !== null && document.activeElement !== document.body) return;
    document
      .querySelector(`[data-slot="${slotKey(row, name)}"]`)
      ?.querySelector<HTMLElement>("select, input, textarea, button")
      ?.focus({ preventScroll: true });
  });
}
