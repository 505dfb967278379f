/** client/import/import-state.ts - a text on its way in: what was chosen or pasted, what was read of it, what it becomes.
 *  Kept while the window is open, so that neither a refusal nor a look into another room loses anything. */
import { computed, signal } from "@preact/signals";
import type { Imported, ImportOptions } from "../../schema/api.ts";
import type { ImportedFile, ImportedText } from "../../schema/imported.ts";
import { selectPassages } from "../../shared/cite/select-passages.ts";
import { type Answer, ask, type Refused } from "../state/api.ts";
import { contents, loadContents } from "../state/passage.ts";
import { go } from "../state/route.ts";
import { who } from "../state/session.ts";
import { lastWritten, mergedNote, newId } from "../state/write.ts";

export type Format = "" | "tei" | "plain" | "markdown";

export const file = signal<File | null>(null);
export const pasted = signal("");
export const format = signal<Format>("");
/** What is being done, in words; null when nothing is. */
export const busy = signal<string | null>(null);
export const refused = signal<Refused | null>(null);
export const preview = signal<ImportedFile | null>(null);
export const textNumber = signal(1);

/** What a person sees and may change before anything is stored. */
export interface Target {
  from: string;
  to: string;
  /** Id of a work that is there; "" for a new one. */
  work: string;
  title: string;
  author: string;
  layerIs: "original" | "translation";
  layerTitle: string;
  by: string;
  language: string;
  urn: string;
  exercises: ImportOptions["exercises"];
  /** Null as long as it is that of the text. */
  exerciseTitle: string | null;
}
export const target = signal<Target>({
  from: "",
  to: "",
  work: "",
  title: "",
  author: "",
  layerIs: "translation",
  layerTitle: "",
  by: "",
  language: "",
  urn: "",
  exercises: "by division",
  exerciseTitle: null,
});
export const change = (fields: Partial<Target>) => {
  target.value = { ...target.value, ...fields };
};

export const text = computed<ImportedText | null>(
  () => preview.value?.texts.find(({ number }) => number === textNumber.value) ?? preview.value?.texts[0] ?? null,
);
export const titleOf = (one: ImportedText) => one.title || sourceName();
/** What the one exercise is called: as it was typed, else as the chosen text. */
export const exerciseTitle = computed(() => target.value.exerciseTitle ?? (text.value ? titleOf(text.value) : ""));
/** The passages that would be stored, or why the range cannot be read. */
export const chosen = computed(() =>
  text.value
    ? selectPassages(text.value, target.value.from.trim() || undefined, target.value.to.trim() || undefined)
    : null,
);

export const sourceName = () => file.value?.name ?? "pasted text";
const body = (): Blob | string => file.value ?? pasted.value;
let stopping: AbortController | null = null;
export const stop = () => stopping?.abort();

async function during<T>(words: string, path: string): Promise<Answer<T>> {
  stopping = new AbortController();
  busy.value = words;
  const answer = await ask<T>(path, body(), stopping.signal);
  busy.value = null;
  stopping = null;
  refused.value = answer.ok ? null : answer.error;
  return answer;
}

/** Reads the source for the preview; nothing is stored. */
export async function lookAt(): Promise<void> {
  const query = new URLSearchParams({ name: sourceName() });
  if (format.value) query.set("format", format.value);
  const size = file.value?.size ?? new Blob([pasted.value]).size;
  const answer = await during<ImportedFile>(
    `Reading ${sourceName()} (${sizeWords(size)})`,
    `/api/import/preview?${query}`,
  );
  if (!answer.ok) {
    preview.value = null;
    return;
  }
  preview.value = answer.value;
  chooseText(answer.value.texts[0] ?? null);
}

/** Takes what the text says of itself for a beginning. */
export function chooseText(next: ImportedText | null): void {
  if (next === null) return;
  textNumber.value = next.number;
  const named = titleOf(next);
  change({
    title: named,
    author: next.author,
    layerIs: layerOf(next),
    layerTitle: named,
    by: next.translator,
    language: next.language,
    urn: next.urn,
  });
}

/** What is pasted and names no language is the translation as a rule. */
function layerOf({ translator, language }: ImportedText): Target["layerIs"] {
  const unnamed = file.value === null && language === "";
  return translator || language === "en" || unnamed ? "translation" : "original";
}

/** Stores what is chosen and opens its first passage. */
export async function bringIn(): Promise<void> {
  const { work, title, author, layerIs, layerTitle, by, language, urn, exercises, from, to } = target.value;
  const options: ImportOptions = {
    id: newId(),
    who: who.value,
    name: sourceName(),
    ...(format.value && { format: format.value }),
    text: textNumber.value,
    from: from.trim(),
    to: to.trim(),
    work: work === "" ? { is: "new", title, author } : { is: "there", id: work },
    layer: { is: layerIs, title: layerTitle, by, language, urn },
    exercises,
    title: exerciseTitle.value,
  };
  const query = new URLSearchParams({ options: JSON.stringify(options) });
  const answer = await during<Imported>(`Bringing in “${layerTitle}”`, `/api/import/accept?${query}`);
  if (!answer.ok) return;
  const { passage, unmatched } = answer.value;
  file.value = null;
  pasted.value = "";
  preview.value = null;
  change({ from: "", to: "", exerciseTitle: null });
  await loadContents();
  lastWritten.value = { id: options.id, why: `“${layerTitle}” brought in` };
  mergedNote.value =
    unmatched.length === 0
      ? ""
      : `${unmatched.length} of its passages met none of the work and are new: ${shortList(unmatched)}.`;
  go(`/read/${passage}`);
}

export const worksThere = () => (contents.value?.works ?? []).flatMap(({ rows }) => rows.works?.[0]?.value ?? []);

function shortList(names: readonly string[]): string {
  return names.length > 12 ? `${names.slice(0, 12).join(", ")} and ${names.length - 12} more` : names.join(", ");
}

function sizeWords(bytes: number): string {
  return bytes < 100_000 ? `${Math.ceil(bytes / 1024)} kB` : `${(bytes / (1024 * 1024)).toFixed(1)} MB`;
}
