/** server/import/accept.ts - brings a text in: reads the bytes again, takes the range, writes one change.
 *  May import: schema types, shared/cite, uuidv7, server/store, siblings. Refused as a whole or stored as a whole, the file
 *  itself included. */
import { uuidv7 } from "uuidv7";
import type { Imported, ImportOptions, Written } from "../../schema/api.ts";
import type { ImportedFile, ImportedPassage, ImportedText } from "../../schema/imported.ts";
import { parseCtsUrn } from "../../shared/cite/cts-urn.ts";
import { selectPassages } from "../../shared/cite/select-passages.ts";
import { done, type Outcome, refused } from "../errors.ts";
import { inTransaction, putAttachment, readRow, readRows, type Store, writeChange } from "../store/index.ts";
import { codedRefusal } from "./coded-refusal.ts";
import { importEdits, type WorkNow } from "./import-edits.ts";
import { readImport } from "./read-import.ts";

export interface AcceptOptions {
  /** ISO 8601, UTC. */
  now: string;
  /** Makes the ids of the rows; UUIDv7 when not given. */
  newId?: () => string;
}

export interface Accepted {
  imported: Imported;
  written: Written;
}

/** Brings the text in. The change has the id of the options, and is a group of its own. */
export function acceptImport(
  store: Store,
  bytes: Uint8Array,
  options: ImportOptions,
  { now, newId = uuidv7 }: AcceptOptions,
): Outcome<Accepted> {
  const read = readImport(bytes, { name: options.name, ...(options.format && { format: options.format }) });
  if (!read.ok) return codedRefusal(read.refusal);
  const taken = takeText(read.file, options);
  if (!taken.ok) return taken;
  const urn = problemWithUrn(options.layer.urn);
  if (urn !== null) return urn;
  return inTransaction(store, () => {
    const work = workNow(store, options);
    if (!work.ok) return work;
    const attachment = putAttachment(store, { mediaType: MEDIA_TYPES[read.file.format], name: options.name, bytes });
    const made = importEdits({ ...taken.value, options, now: work.value, attachment, day: now.slice(0, 10), newId });
    const why = `“${options.layer.title}” brought in from ${options.name}`;
    const change = { id: options.id, who: options.who, why, sitting: null, group: options.id, edits: made.edits };
    const written = writeChange(store, change, { now });
    if (!written.ok) return written;
    const added = work.value.work === null ? [] : made.passages.filter(({ matched }) => !matched);
    const imported = {
      change: written.value.change,
      work: made.work,
      layer: made.layer,
      passage: made.passages[0]?.id ?? "",
      passages: made.passages.length,
      unmatched: added.map(({ reference }) => reference),
    };
    return done({ imported, written: written.value });
  });
}

const MEDIA_TYPES: Record<ImportedFile["format"], string> = {
  "tei-p5": "application/tei+xml",
  "tei-p4": "application/tei+xml",
  plain: "text/plain",
  markdown: "text/markdown",
};

function takeText(
  file: ImportedFile,
  options: ImportOptions,
): Outcome<{ text: ImportedText; passages: ImportedPassage[] }> {
  const text = file.texts.find(({ number }) => number === options.text);
  if (text === undefined) {
    const there = file.texts.map(({ number, title }) => `${number} (${title})`).join(", ");
    return refused(
      "text_unknown",
      `“${options.name}” has no text ${options.text}. It has ${there}; choose one of these.`,
    );
  }
  const [from, to] = [options.from.trim(), options.to.trim()].map((end) => (end === "" ? undefined : end));
  const selected = selectPassages(text, from, to);
  return selected.ok ? done({ text, passages: selected.passages }) : codedRefusal(selected.refusal);
}

/** A URN of a layer ends before the passage, in a colon. */
function problemWithUrn(urn: string): Extract<Outcome<never>, { ok: false }> | null {
  if (urn === "") return null;
  const read = parseCtsUrn(urn);
  const why = !read.ok ? read.sentence : urn.endsWith(":") ? null : "It must name the whole text and end in a colon.";
  if (why === null) return null;
  const sentence = `Nothing was stored. The CTS URN “${urn}” cannot be kept for this text: ${why} Mend it, or leave it empty.`;
  return refused("value_invalid", sentence, { issues: [{ where: "options.layer.urn", sentence: why }] });
}

/** The work the text goes into, or the refusal: no such work, or a layer of that title in it. */
function workNow(store: Store, { work, layer }: ImportOptions): Outcome<WorkNow> {
  const works = readRows(store, "works").map(({ value }) => value);
  if (work.is === "new") return done({ work: null, works, layers: [], exercises: [], passages: [] });
  const row = readRow(store, "works", work.id);
  if (row === null) {
    const sentence = `There is no work with the id ${work.id}. Load the page again and choose the work anew; nothing was stored.`;
    return refused("row_unknown", sentence);
  }
  const ofWork = ({ value }: { value: { work: string } }) => value.work === work.id;
  const layers = readRows(store, "layers").filter(ofWork);
  if (layers.some(({ value }) => value.title === layer.title)) {
    const sentence = `“${row.value.title}” already has a text called “${layer.title}”. Marks are not carried from one revision to the next yet: give the new text another title. Nothing was stored.`;
    return refused("layer_there", sentence);
  }
  return done({
    work: row.value,
    works,
    layers: layers.map(({ value }) => value),
    exercises: readRows(store, "exercises")
      .filter(ofWork)
      .map(({ value }) => value),
    passages: readRows(store, "passages").filter(ofWork),
  });
}
