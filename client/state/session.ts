/** client/state/session.ts - who works at this window, and in which sitting; kept in this browser only. */
import { effect, signal } from "@preact/signals";

const KEY = "passagework.session";

interface Kept {
  who: string;
  sitting: string | null;
}

function kept(): Kept {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? "{}") as Partial<Kept>;
    return { who: found.who || "the editor", sitting: found.sitting ?? null };
  } catch {
    return { who: "the editor", sitting: null };
  }
}

const begin = kept();
/** The name every change is signed with. */
export const who = signal(begin.who);
/** The sitting that changes are kept under, or null. */
export const sitting = signal(begin.sitting);

effect(() => localStorage.setItem(KEY, JSON.stringify({ who: who.value, sitting: sitting.value } satisfies Kept)));

/** Today where the user is, as the rows keep days: 2026-05-04. */
export function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
