/** client/print/paper-address.ts - where the server gives a paper, and saving it from there.
 *  May import: types of schema, client/state. */
import type { PaperForm } from "../../schema/issue.ts";
import type { PaperAsk } from "../../schema/paper.ts";
import type { Refused } from "../state/api.ts";

/** `at`, the number of the newest change, lets the browser keep what it fetched until something is written. */
export function paperAddress(paper: PaperAsk, form: PaperForm, at: number): string {
  return `/api/paper.${form}?${new URLSearchParams({ ask: JSON.stringify(paper), at: String(at) })}`;
}

/** Where its sides are counted. */
export function sidesAddress(paper: PaperAsk, at: number): string {
  return `/api/paper.sides?${new URLSearchParams({ ask: JSON.stringify(paper), at: String(at) })}`;
}

/** Fetches a file and hands it to the browser to save; the refusal where there is one, null when it is saved. */
export async function saveFile(address: string, name: string, signal: AbortSignal): Promise<Refused | null> {
  const answer = await fetch(address, { signal }).catch((error: unknown) => (signal.aborted ? null : error));
  if (signal.aborted || answer === null) return { code: "stopped", sentence: "Stopped. Nothing was saved." };
  if (!(answer instanceof Response)) {
    return { code: "server_away", sentence: "The server does not answer. See whether it still runs, then try again." };
  }
  if (!answer.ok) return ((await answer.json()) as { error: Refused }).error;
  const url = URL.createObjectURL(await answer.blob());
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 1000);
  return null;
}
