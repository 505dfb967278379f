/** server/import/refusals.ts - every way a file can be refused: the code, and a sentence that says what was expected,
 *  what came, where, and what to do. May import: schema types. Keeps rule I2 (server/import/RULES.md). */
import { type FilePlace, IMPORT_LIMIT_BYTES, type ImportRefusal } from "../../schema/imported.ts";

const megabytes = (bytes: number) => `${Math.ceil(bytes / (1024 * 1024))} MB`;

const refusal = (code: string, sentence: string, place?: FilePlace): ImportRefusal =>
  place === undefined ? { code, sentence } : { code, sentence, place };

const at = (place: FilePlace) => `line ${place.line}, column ${place.column}`;

export const refuse = {
  empty: (name: string) =>
    refusal("file_empty", `“${name}” holds no words. Expected a text; check that the right file was chosen and saved.`),
  tooLarge: (name: string, bytes: number) =>
    refusal(
      "file_too_large",
      `“${name}” has ${megabytes(bytes)}; at most ${megabytes(IMPORT_LIMIT_BYTES)} are read at once. Bring it in by parts, a book at a time.`,
    ),
  binary: (name: string, looksLike: string) =>
    refusal(
      "file_binary",
      `“${name}” is ${looksLike}, not a text. Save it as plain text, Markdown or TEI first, then bring in that file.`,
    ),
  wrongEncoding: (name: string, encoding: string, place: FilePlace) =>
    refusal(
      "wrong_encoding",
      `“${name}” should be ${encoding}, but the bytes at ${at(place)} are not. Save the file as UTF-8, or name its true encoding in the first line (<?xml version="1.0" encoding="..."?>).`,
      place,
    ),
  unknownEncoding: (name: string, encoding: string) =>
    refusal(
      "unknown_encoding",
      `“${name}” says that it is written in “${encoding}”, which cannot be read here. Save the file as UTF-8 and say so in its first line.`,
      { line: 1, column: 1 },
    ),
  brokenXml: (name: string, problem: string, place: FilePlace) =>
    refusal(
      "broken_xml",
      `“${name}” is not well-formed XML: ${problem} at ${at(place)}. Mend that place and bring the file in again.`,
      place,
    ),
  entityBomb: (name: string, entity: string, why: string, place: FilePlace) =>
    refusal(
      "entity_bomb",
      `“${name}” declares the entity “&${entity};”, which ${why} (used at ${at(place)}). Nothing was read. Write its words out in the text, or take the declaration away.`,
      place,
    ),
  tooManyElements: (name: string, limit: number, place: FilePlace) =>
    refusal(
      "too_many_elements",
      `“${name}” has more than ${limit} elements (reached at ${at(place)}). Bring it in by parts, a book at a time.`,
      place,
    ),
  tooManyLines: (name: string, limit: number) =>
    refusal(
      "too_many_lines",
      `“${name}” has more than ${limit} lines. A text of that many short lines cannot be read at once: bring it in by parts, a book at a time.`,
    ),
  tooManyPassages: (name: string, limit: number, place: FilePlace) =>
    refusal(
      "too_many_passages",
      `“${name}” has more than ${limit} passages (reached at ${at(place)}). Bring it in by parts, a book at a time.`,
      place,
    ),
  paragraphTooLong: (name: string, limit: number, place: FilePlace) =>
    refusal(
      "paragraph_too_long",
      `“${name}” has a Markdown paragraph of more than ${limit} letters from ${at(place)}. Part it with blank lines, or bring the file in as plain text.`,
      place,
    ),
  nestedTooDeep: (name: string, limit: number, place: FilePlace) =>
    refusal(
      "nested_too_deep",
      `“${name}” has elements inside each other more than ${limit} deep at ${at(place)}. A text has no need of that; check the file for a missing end tag.`,
      place,
    ),
  notTei: (name: string, root: string, place: FilePlace) =>
    refusal(
      "xml_not_tei",
      `“${name}” is XML, but its outermost element is <${root}>; expected <TEI>, <TEI.2> or <teiCorpus>. Export it as TEI, or bring it in as plain text.`,
      place,
    ),
  teiWithoutText: (name: string, place: FilePlace) =>
    refusal(
      "tei_without_text",
      `“${name}” is TEI, but has no <text> with words in its <body>. Expected a text to read; check that the export is complete.`,
      place,
    ),
  noPassages: (name: string) =>
    refusal(
      "no_passages",
      `No passage was found in “${name}”: it has no words outside the parts that are never read (headers, notices, empty references). Expected reference lines such as 7.13, numbered paragraphs, or at least paragraphs.`,
    ),
} as const;

/** Carries a refusal out of a parser's callbacks; caught in read-import.ts and nowhere else. */
export class RefusedError extends Error {
  readonly refusal: ImportRefusal;
  constructor(refused: ImportRefusal) {
    super(refused.sentence);
    this.name = "RefusedError";
    this.refusal = refused;
  }
}
