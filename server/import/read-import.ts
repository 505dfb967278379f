/** server/import/read-import.ts - the way in: the bytes of a file or a paste become texts in passages, or a refusal.
 *  May import: schema, siblings. Pure: no disk, no network, no clock. Keeps rules I1-I12 (server/import/RULES.md). */
import { IMPORT_LIMIT_BYTES, type ImportedFile, type ImportRefusal } from "../../schema/imported.ts";
import { decode } from "./decode.ts";
import { DroppedList } from "./dropped-list.ts";
import { readMarkdown } from "./markdown.ts";
import { readPlain } from "./plain.ts";
import { RefusedError, refuse } from "./refusals.ts";
import { readTei } from "./tei.ts";

export type ImportFormat = "tei" | "plain" | "markdown";

export interface ImportOptions {
  /** The file's name as the person knows it; for sentences, titles and, where `format` is not given, the format. */
  name: string;
  format?: ImportFormat;
  /** What a bare number means where the text does not say: a section (the default) or a page. */
  referenceKind?: "section" | "page";
}

export type ImportResult = { ok: true; file: ImportedFile } | { ok: false; refusal: ImportRefusal };

const formatByName = (name: string): ImportFormat | null => {
  if (/\.(xml|tei)$/i.test(name)) return "tei";
  if (/\.(md|markdown)$/i.test(name)) return "markdown";
  return /\.(txt|text)$/i.test(name) ? "plain" : null;
};

/** Names tell little about a paste: XML begins with a tag, an instruction or a document type. */
const formatByContent = (text: string): ImportFormat =>
  /^\s*<(\?xml|!DOCTYPE|TEI|teiCorpus|[a-z]+:TEI)\b/.test(text) ? "tei" : "plain";

/** Reads a whole file. `name` and `format` decide how; bytes are never changed. Never throws for what the bytes hold. */
export const readImport = (bytes: Uint8Array, options: ImportOptions): ImportResult => {
  const { name } = options;
  const dropped = new DroppedList();
  try {
    if (bytes.length > IMPORT_LIMIT_BYTES) return { ok: false, refusal: refuse.tooLarge(name, bytes.length) };
    const wanted = options.format ?? formatByName(name);
    const { text, encoding } = decode(bytes, name, wanted === null ? null : wanted === "tei", dropped);
    if (!/\S/.test(text)) return { ok: false, refusal: refuse.empty(name) };
    const format = wanted ?? formatByContent(text);
    const kind = options.referenceKind ?? "section";
    const read =
      format === "tei"
        ? readTei(text, name, dropped)
        : format === "plain"
          ? readPlain(text, name, kind, dropped)
          : readMarkdown(text, name, kind, dropped);
    return { ok: true, file: { ...read, encoding, dropped: dropped.toArray() } };
  } catch (error) {
    if (error instanceof RefusedError) return { ok: false, refusal: error.refusal };
    throw error;
  }
};
