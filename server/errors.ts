/** server/errors.ts - every refusal by its code: its HTTP status, when it is given, and what to do about it.
 *  May import: schema types. server/errors.md is printed from this table by `errorsAsMarkdown`; a test holds them equal.
 *  A code that was shipped is never used in another sense, and one that is retired is listed at the end. */
import type { Refusal } from "../schema/api.ts";

interface ErrorEntry {
  /** HTTP status of the answer. */
  status: number;
  /** When the refusal is given, as the end of a sentence that begins "Given when". */
  when: string;
  /** What the person, or the program that asked, does next. */
  solve: string;
}

export const ERRORS = {
  // What was asked
  body_not_json: {
    status: 400,
    when: "the body of a request is not JSON",
    solve: "Send JSON in UTF-8, with the content type application/json.",
  },
  body_invalid: {
    status: 422,
    when: "the body or the query of a request has not the form that was expected",
    solve: "Put right what each issue names; unknown fields are issues too.",
  },
  body_incomplete: {
    status: 400,
    when: "the body of a request ends before it is whole",
    solve: "Send it again; nothing of it was stored.",
  },
  media_type_wrong: {
    status: 415,
    when: "the body of a request has another content type than is read at the address",
    solve: "Send application/json, or for an import the bytes as application/octet-stream.",
  },
  host_foreign: {
    status: 403,
    when: "a request names another host than this machine",
    solve: "Open the address the program printed when it started.",
  },
  origin_foreign: {
    status: 403,
    when: "a request comes from a page of another address",
    solve: "Work in the window the program opened; other pages may not read or write here.",
  },
  body_too_large: { status: 413, when: "a body is larger than is read", solve: "Send it in parts." },
  address_unknown: { status: 404, when: "nothing answers at the address", solve: "Check the address and the method." },
  row_unknown: {
    status: 404,
    when: "no row of that kind has the id",
    solve: "Load the page again: the row may have been removed. The history has it.",
  },
  change_unknown: { status: 404, when: "no change has the id", solve: "Load the history again and choose from it." },
  nobody_asked: {
    status: 404,
    when: "a letter is wanted to somebody of whom nothing that is open is asked",
    solve: "Write to one of those who are named, or put a question to them first.",
  },
  attachment_missing: {
    status: 404,
    when: "a file is asked for whose content hash is not in the store",
    solve: "Load the page again and follow its link.",
  },
  attachment_unknown: {
    status: 422,
    when: "no attachment has the content hash",
    solve: "Bring the file in first, then name it by the hash that came back.",
  },
  // A text to be brought in
  file_empty: { status: 422, when: "a file holds no words", solve: "Check that the right file was chosen and saved." },
  file_too_large: { status: 413, when: "a file is larger than is read at once", solve: "Bring it in by parts." },
  file_binary: { status: 415, when: "a file is no text", solve: "Save it as plain text, Markdown or TEI." },
  wrong_encoding: {
    status: 415,
    when: "bytes of a file are not in the encoding it names",
    solve: "Save it as UTF-8, or name its true encoding.",
  },
  unknown_encoding: { status: 415, when: "a file names an encoding that is not read", solve: "Save it as UTF-8." },
  broken_xml: { status: 422, when: "a file is not well-formed XML", solve: "Mend the place that is named." },
  entity_bomb: {
    status: 422,
    when: "an entity grows without bound or names itself",
    solve: "Write its words out, or take the declaration away.",
  },
  too_many_elements: { status: 413, when: "a file has too many elements", solve: "Bring it in by parts." },
  nested_too_deep: {
    status: 422,
    when: "elements of a file lie too deep inside each other",
    solve: "Look for a missing end tag.",
  },
  xml_not_tei: {
    status: 422,
    when: "an XML file is not TEI",
    solve: "Export it as TEI, or bring it in as plain text.",
  },
  tei_without_text: { status: 422, when: "a TEI file has no words", solve: "Check that the export is complete." },
  no_passages: { status: 422, when: "no passage is found in a file", solve: "Put reference lines into it." },
  text_unknown: { status: 422, when: "a file has no text of that number", solve: "Choose one of those it has." },
  selection_unreadable: {
    status: 422,
    when: "the range to bring in cannot be read as a reference",
    solve: "Write it as the text is cited: 7.13.",
  },
  selection_not_found: { status: 422, when: "nothing stands at the range", solve: "Choose from what the text has." },
  selection_backwards: { status: 422, when: "a range ends before it begins", solve: "Give the first place first." },
  layer_there: {
    status: 409,
    when: "the work already has a layer of that title",
    solve: "Give the layer another title. Carrying marks over to a revision comes later.",
  },
  // What was to be written
  value_invalid: {
    status: 422,
    when: "a value is not what its kind of row holds",
    solve: "Put right what each issue names.",
  },
  reference_unknown: {
    status: 422,
    when: "a row names another that is not there",
    solve: "Make the other row in the same change, or name one that is there.",
  },
  reading_of_other_crux: {
    status: 422,
    when: "a condition or choice names a crux and a reading of another crux",
    solve: "Name readings of the crux.",
  },
  still_needed: {
    status: 409,
    when: "a row is to be removed that others still name",
    solve: "Change or remove those in the same change; they are listed.",
  },
  row_named_twice: {
    status: 422,
    when: "two edits of one change name the same row",
    solve: "Join the two edits into one.",
  },
  id_taken: {
    status: 409,
    when: "a new row has the id of one that is there",
    solve: "Make a new id for the new row.",
  },
  id_removed: {
    status: 409,
    when: "a new row has the id of one that was removed",
    solve: "Undo the removal, or make a new id.",
  },
  change_id_taken: {
    status: 409,
    when: "another change was already stored under the id",
    solve: "Make a new id for each change; only the very same change may be sent again.",
  },
  slot_unknown: {
    status: 422,
    when: "a reading names a slot its row does not have",
    solve: "Name a slot of the row; those of an action depend on its verb.",
  },
  slot_not_in_crux: {
    status: 422,
    when: "a reading gives a value to a slot its crux does not hold",
    solve: "Put the slot into the crux in the same change, or take the value out of the reading.",
  },
  slot_value_wrong: {
    status: 422,
    when: "a reading gives a slot a value of another kind",
    solve: "Give a value of the kind the slot holds.",
  },
  crux_circle: {
    status: 422,
    when: "cruxes would arise only when each other are read in some way",
    solve: "Take one of the conditions out.",
  },
  two_adopted: {
    status: 409,
    when: "two readings of a crux would be adopted without a condition",
    solve: "Give one of them a condition, or set one to standing or ruled out.",
  },
  anchor_outside: {
    status: 422,
    when: "an anchor does not lie in the text it names",
    solve: "Mark the words again in the text as it is now.",
  },
  anchor_quote_differs: {
    status: 422,
    when: "an anchor says its words are the same and they are not",
    solve: "Mark the words again, or say that they were reworded.",
  },
  text_invalid: {
    status: 422,
    when: "a passage text does not agree with its document, or is numbered out of turn",
    solve: "Send the document and the text its words give, numbered 1; later ones come of amending.",
  },
  text_fixed: {
    status: 409,
    when: "a passage text is to be changed or removed that later ones, or anchors, rest on",
    solve: "Amend the passage: that keeps the earlier words and carries the marks.",
  },
  // What came between
  conflict: {
    status: 409,
    when: "another writer changed the same fields meanwhile",
    solve: "Compare both values, choose, and send the choice with the newer version.",
  },
  version_unknown: {
    status: 409,
    when: "an edit names a version that the row has not reached",
    solve: "Load the row again; this can come of a store that was put back from a copy.",
  },
  stale_text: {
    status: 409,
    when: "a passage was amended from a text that is no longer the current one",
    solve: "Apply the change to the text that came back, and send it again.",
  },
  steps_invalid: {
    status: 422,
    when: "the editor's steps cannot be applied to the text",
    solve: "Load the passage again and amend it once more.",
  },
  already_undone: { status: 409, when: "a change was already taken back", solve: "Undo the undo to have it again." },
  // Papers and their editions
  paper_overtaken: {
    status: 409,
    when: "something was written while a paper was being set",
    solve: "Look at the paper again, then issue it.",
  },
  edition_unreadable: {
    status: 422,
    when: "an edition was issued in a form that is no longer read",
    solve: "Its papers are kept and can be printed again; compare later editions.",
  },
  nothing_to_correct: {
    status: 409,
    when: "a correction slip is asked for between editions that say the same",
    solve: "No slip is needed; choose other editions.",
  },
  // A paper to be printed
  citation_dangling: {
    status: 422,
    when: "a citation, link or note of a paper leads nowhere: to words, a picture, a trial or a source no longer there",
    solve:
      "Go through the list: tie each mark to words again, name another basis, or take the citation away; then print.",
  },
  style_unknown: {
    status: 422,
    when: "no citation style has the name",
    solve: "Choose one of those that are listed, or put its CSL file into the folder of styles.",
  },
  style_broken: {
    status: 422,
    when: "a CSL file, style or locale, cannot be used",
    solve: "Mend the line that is named, or take the file out of the folder of styles.",
  },
  source_unreadable: {
    status: 422,
    when: "a source has not the form of CSL-JSON, or its style cannot set it",
    solve: "Open the source that is named and put the field right.",
  },
  // The store itself
  store_unreadable: {
    status: 500,
    when: "the store file cannot be opened or made",
    solve: "Check that the folder is there and that you may write in it.",
  },
  store_foreign: {
    status: 500,
    when: "the file is not a store of this program",
    solve: "Name another file; this one was left as it is.",
  },
  store_newer: {
    status: 500,
    when: "the store was written by a newer version of the program",
    solve: "Update the program.",
  },
  store_damaged: {
    status: 500,
    when: "the store does not pass its own checks",
    solve: "Put back the last good copy of the file.",
  },
  migration_gap: {
    status: 500,
    when: "the program's migrations are not numbered 1, 2, 3 without gaps",
    solve: "Install the program again.",
  },
  migration_edited: {
    status: 500,
    when: "a migration the store has been through is not what it was then",
    solve: "Put the migration back as it was shipped, and write what is new as the next number.",
  },
  store_busy: {
    status: 503,
    when: "another program holds the store for too long",
    solve: "Try again in a moment.",
  },
  unexpected: {
    status: 500,
    when: "the program itself made a mistake",
    solve: "Try again; what the terminal shows tells the developers more.",
  },
  store_full: { status: 507, when: "there is no room left on the disk", solve: "Make room, then try again." },
} as const satisfies Record<string, ErrorEntry>;

export type ErrorCode = keyof typeof ERRORS;

/** A refusal whose code is in the table. */
export interface CodedRefusal extends Refusal {
  error: Refusal["error"] & { code: ErrorCode };
}

/** What comes of something that may be refused. */
export type Outcome<T> = { ok: true; value: T } | { ok: false; refusal: CodedRefusal };

/** Makes a refusal. `sentence` says what was expected, what came, where, and what to do. */
export function refused(
  code: ErrorCode,
  sentence: string,
  more: Omit<Refusal["error"], "code" | "sentence"> = {},
): { ok: false; refusal: CodedRefusal } {
  return { ok: false, refusal: { error: { code, sentence, ...more } } };
}

export function done<T>(value: T): { ok: true; value: T } {
  return { ok: true, value };
}

/** HTTP status of a refusal. */
export function statusOf(refusal: CodedRefusal): number {
  return ERRORS[refusal.error.code].status;
}

/** The table as the page that documents it. */
export function errorsAsMarkdown(): string {
  const rows = Object.entries(ERRORS).map(
    ([code, entry]) => `| \`${code}\` | ${entry.status} | ${entry.when} | ${entry.solve} |`,
  );
  return [
    "# Refusals",
    "",
    "Printed from server/errors.ts; change it there. Every answer that is not 2xx carries one of these codes and a",
    "sentence of its own that names the place.",
    "",
    "| code | status | given when | what to do |",
    "|---|---|---|---|",
    ...rows,
    "",
  ].join("\n");
}
