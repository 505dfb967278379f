/** client/print/edition-rows.ts - the editions of a work with their reports, and writing to them.
 *  May import: types of schema, client/state. These rows are in no bundle, so their versions are sent from the list. */
import { signal } from "@preact/signals";
import type { Written } from "../../schema/api.ts";
import type { ChangeRequest, Edit } from "../../schema/change.ts";
import type { EditionLine } from "../../schema/issue.ts";
import { ask, type Refused } from "../state/api.ts";
import { loadContents } from "../state/passage.ts";
import { sitting, who } from "../state/session.ts";
import { newId } from "../state/write.ts";

/** Newest first; null until they are there. */
export const editions = signal<EditionLine[] | null>(null);
export const editionsRefused = signal<Refused | null>(null);

export async function loadEditions(work: string): Promise<void> {
  const answer = await ask<EditionLine[]>(`/api/works/${work}/editions`);
  if (answer.ok) editions.value = answer.value;
  editionsRefused.value = answer.ok ? null : answer.error;
}

/** Writes one edit; the refusal where there is one. The list is fetched anew. */
export async function writeEdition(edit: Edit, why: string, work: string): Promise<Refused | null> {
  const request: ChangeRequest = {
    id: newId(),
    who: who.value,
    why,
    sitting: sitting.value,
    group: null,
    edits: [edit],
  };
  const answer = await ask<Written>("/api/changes", request);
  await loadEditions(work);
  await loadContents();
  return answer.ok ? null : answer.error;
}

/** Who was given this edition and none that came later in its place. */
export function stillHolding(line: EditionLine, all: readonly EditionLine[]): string[] {
  const later = all.filter((other) => other.edition.number > line.edition.number && isSamePaper(other, line));
  const newer = new Set(later.flatMap(({ edition }) => edition.recipients.map(({ who: name }) => name)));
  const names = line.edition.recipients.map(({ who: name }) => name).filter((name) => !newer.has(name));
  return [...new Set(names)];
}

/** Whether one comes in the place of the other: the same kind of paper of the same exercises. */
export function isSamePaper(one: EditionLine, other: EditionLine): boolean {
  const exercises = (line: EditionLine): string => [...new Set(line.edition.exercises)].sort().join(" ");
  return one.ask.kind === other.ask.kind && exercises(one) === exercises(other);
}
