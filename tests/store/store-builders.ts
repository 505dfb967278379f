/** tests/store/store-builders.ts - requests in one line each, and stores to send them to. */
import type { ChangeRequest, Edit } from "../../schema/change.ts";
import type { Kind } from "../../schema/record.ts";
import type { Outcome } from "../../server/errors.ts";
import { openStore, putAttachment, type Store, writeChange } from "../../server/store/index.ts";
import { bookRows, idOf } from "./full-book.ts";

export const NOW = "2026-05-04T09:30:00.000Z";

/** Head of a change by its number; `by` is who writes. */
export function request(number: number, edits: Edit[], by = "Ada"): ChangeRequest {
  return { id: idOf(number), who: by, why: "", sitting: null, group: null, edits };
}

export function create(kind: Kind, value: Record<string, unknown>): Edit {
  return { do: "create", kind, value } as Edit;
}

export function set(kind: Kind, id: string, base: number, fields: Record<string, unknown>): Edit {
  return { do: "set", kind, id, base, fields } as Edit;
}

export function remove(kind: Kind, id: string, base = 1): Edit {
  return { do: "remove", kind, id, base };
}

/** A store with the whole book in it, written as one change (number 1 of the log). */
export function bookStore(path = ":memory:"): Store {
  const store = emptyStore(path);
  const bytes = new TextEncoder().encode("not really an image");
  const image = putAttachment(store, { mediaType: "image/png", name: "rider.png", bytes });
  accepted(writeChange(store, request(1, bookEdits(image)), { now: NOW }));
  return store;
}

export function bookEdits(image: string): Edit[] {
  return bookRows(image).map(([kind, value]) => create(kind, value));
}

export function emptyStore(path = ":memory:"): Store {
  return accepted(openStore(path));
}

/** What came of something that must not be refused. */
export function accepted<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal, null, 1));
  return outcome.value;
}
