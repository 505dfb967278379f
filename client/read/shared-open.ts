/** client/read/shared-open.ts - which of the shared things (objects, holds, grounds …) is open in their dialog. */
import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { closeForm, opened, sameThing, type Thing } from "./focus.ts";

export const SHARED_KINDS = ["objects", "holds", "movements", "grounds", "threats", "standings"] as const;
export type SharedKind = (typeof SHARED_KINDS)[number];

/** The kind whose list is open and the row whose form is; null while the dialog is closed. */
export const shared = signal<{ kind: SharedKind; id: string | null } | null>(null);

export function openShared(kind: SharedKind, id: string | null = null): void {
  shared.value = { kind, id };
}

/** For a gloss whose form is in the dialog: opens it there when the gloss is opened. */
export function useSharedForm(thing: Thing, kind: SharedKind, id: string): void {
  const wanted = sameThing(opened.value, thing);
  useEffect(() => {
    if (!wanted) return;
    closeForm();
    openShared(kind, id);
  }, [wanted, kind, id]);
}
