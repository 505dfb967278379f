/** tests/real/source-texts.ts - passages of published texts, read at run time through the project's own import.
 *  Nothing of these texts is copied into the project; models find their words by a first and a last word or two. */
import { readFileSync } from "node:fs";
import { basename } from "node:path";
import type { ImportedText } from "../../schema/imported.ts";
import type { Markable } from "../../schema/mark.ts";
import type { Said } from "../../schema/slot.ts";
import { readImport } from "../../server/import/read-import.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { said, type WorkBuilder } from "../drill/build-rows.ts";

/** The text of a file that `pick` chooses. Throws Error when the file cannot be read or none is chosen. */
export function textOf(path: string, pick: (text: ImportedText) => boolean): ImportedText {
  const read = readImport(readFileSync(path), { name: basename(path) });
  if (!read.ok) throw new Error(read.refusal.sentence);
  const text = read.file.texts.find(pick);
  if (!text) throw new Error(`${basename(path)} does not hold the text that is looked for.`);
  return text;
}

/** The words of a text by reference: "7.13", "782". */
export function wordsByReference(text: ImportedText): Map<string, string> {
  return new Map(
    text.passages.flatMap(({ references: [reference], text: words }) =>
      reference ? [[formatReference(reference), words] as const] : [],
    ),
  );
}

/** Says things on the authority of words in one text. `target` is the element, hold or crux the words are marked for. */
export class Speaker {
  constructor(
    readonly book: WorkBuilder,
    readonly of: Markable,
    readonly target: string,
    readonly text: string,
  ) {}

  /** What rests on the words from `first` to `last`. */
  words(first: string, last: string = first) {
    const mark = this.book.mark(this.of, this.target, this.text, first, last);
    const basis = [{ is: "words" as const, mark }];
    return {
      says: <T>(value: T): Said<T> => said(value, "stated", basis),
      implies: <T>(value: T, premise: string): Said<T> =>
        said(value, "implied", [...basis, { is: "premise", text: premise }]),
      existence: { warrant: "stated" as const, basis },
    };
  }
}
