/** server/store/read-decisions.ts - what was decided of a crux, and when: every change of a status, or of leaving it free.
 *  May import: schema types, siblings in server/store. Keeps rule S29 (server/store/RULES.md). */
import type { Decision } from "../../schema/api.ts";
import type { Crux, Reading } from "../../schema/crux.ts";
import { changesOfCrux } from "./log.ts";
import type { Store } from "./open-store.ts";

type Told = Pick<Decision, "reading" | "title" | "is" | "on" | "reason" | "condition">;

/** Newest first; of readings that are gone too. A reading that only ever stood has no decision. */
export function readDecisions(store: Store, crux: string): Decision[] {
  return changesOfCrux(store, crux).flatMap(({ kind, before, after, number, change, when, who, why }) => {
    const told =
      kind === "cruxes"
        ? leftFree(before as Crux | null, after as Crux | null)
        : statusOf(before as Reading | null, after as Reading | null);
    return told === null ? [] : [{ ...told, number, change, when, who, why }];
  });
}

function statusOf(before: Reading | null, after: Reading | null): Told | null {
  const now = after ?? before;
  if (now === null) return null;
  const was = before?.status ?? { is: "standing" };
  const of = { reading: now.id, title: now.title };
  if (after === null) return { ...of, is: "taken away", on: null, reason: "", condition: "" };
  if (JSON.stringify(was) === JSON.stringify(after.status)) return null;
  if (after.status.is === "standing") return { ...of, is: "standing", on: null, reason: "", condition: "" };
  const { is, on, reason } = after.status;
  return { ...of, is, on, reason, condition: after.status.is === "adopted" ? after.status.condition : "" };
}

function leftFree(before: Crux | null, after: Crux | null): Told | null {
  const [was, now] = [before?.leftFree ?? null, after?.leftFree ?? null];
  if (after === null || JSON.stringify(was) === JSON.stringify(now)) return null;
  const of = { reading: null, title: after.title };
  return now === null
    ? { ...of, is: "no longer left free", on: null, reason: "", condition: "" }
    : { ...of, is: "left free", on: now.on, reason: now.reason, condition: "" };
}
