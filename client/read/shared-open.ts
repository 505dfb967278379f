/** client/read/shared-open.ts - which of the shared things (objects, holds, grounds …) is open in their dialog. */
import { signal } from "@preact/signals";

export const SHARED_KINDS = ["objects", "holds", "movements", "grounds", "threats", "standings"] as const;
export type SharedKind = (typeof SHARED_KINDS)[number];

/** The kind whose list is open and the row whose form is; null while the dialog is closed. */
export const shared = signal<{ kind: SharedKind; id: string | null } | null>(null);

export function openShared(kind: SharedKind, id: string | null = null): void {
  shared.value = { kind, id };
}
