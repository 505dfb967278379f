/** tests/import/shown.ts - an imported text in a few short lines, so that a case is a line of a table.
 *  A passage is "references | division: title | blocks"; blocks are parted by " / ", `# ` is a heading, `~ ` verse.
 *  *emphasis*, <supplied>, ?unclear?, {lang: foreign}, [note label: words], [unit n], [gap reason]. */
import type { ImportedFile, ImportedPassage } from "../../schema/imported.ts";
import { ImportedFile as ImportedFileSchema } from "../../schema/imported.ts";
import { type ImportFormat, readImport } from "../../server/import/read-import.ts";
import { formatReferences } from "../../shared/cite/format-reference.ts";

interface Piece {
  type: string;
  text?: string;
  attrs?: Record<string, string>;
  marks?: { type: string; attrs?: Record<string, string> }[];
  content?: Piece[];
}

const inMark = (text: string, mark: { type: string; attrs?: Record<string, string> }): string => {
  if (mark.type === "emphasis") return `*${text}*`;
  if (mark.type === "supplied") return `<${text}>`;
  if (mark.type === "unclear") return `?${text}?`;
  return `{${mark.attrs?.lang}: ${text}}`;
};

const showPiece = (piece: Piece): string => {
  if (piece.type === "text") return (piece.marks ?? []).reduce(inMark, piece.text ?? "");
  if (piece.type === "note") return `[note ${piece.attrs?.label}: ${piece.attrs?.text}]`;
  if (piece.type === "gap") return `[gap ${piece.attrs?.reason}]`;
  return `[${piece.attrs?.unit} ${piece.attrs?.n}]`;
};

const showBlock = (block: Piece): string => {
  const sign = block.type === "heading" ? "# " : block.type === "verse" ? "~ " : "";
  return sign + (block.content ?? []).map(showPiece).join("");
};

export const showPassage = (passage: ImportedPassage): string => {
  const blocks = (passage.doc as unknown as Piece).content ?? [];
  const { division } = passage;
  const where = division === undefined ? "" : `${division.label}: ${division.title}`;
  return [formatReferences(passage.references), where, blocks.map(showBlock).join(" / ")].join(" | ");
};

/** Reads a string and checks that what comes is what the schema says. Throws when it is refused. */
export const imported = (source: string | Uint8Array, format: ImportFormat, name = "trial"): ImportedFile => {
  const bytes = typeof source === "string" ? new TextEncoder().encode(source) : source;
  const result = readImport(bytes, { name, format });
  if (!result.ok) throw new Error(`refused: ${result.refusal.sentence}`);
  return ImportedFileSchema.parse(result.file);
};

export const shown = (source: string, format: ImportFormat): string[] =>
  imported(source, format).texts.flatMap((text) => text.passages.map(showPassage));

/** What was dropped: "line:column what (count) sample". */
export const losses = (file: ImportedFile): string[] =>
  file.dropped.map(({ what, place, count, sample }) =>
    `${place.line}:${place.column} ${what} (${count}) ${sample}`.trim(),
  );

export const refusalOf = (source: string | Uint8Array, format?: ImportFormat, name = "trial") => {
  const bytes = typeof source === "string" ? new TextEncoder().encode(source) : source;
  const result = readImport(bytes, format === undefined ? { name } : { name, format });
  if (result.ok) throw new Error("was not refused");
  return result.refusal;
};

/** A small TEI P5 document around `body`. */
export const tei = (body: string, refsDecl = "", header = ""): string =>
  `<TEI xmlns="http://www.tei-c.org/ns/1.0"><teiHeader><fileDesc><titleStmt><title>The Long Reins</title></titleStmt></fileDesc>` +
  `<encodingDesc>${refsDecl}</encodingDesc>${header}</teiHeader><text><body>${body}</body></text></TEI>`;

/** A small TEI P4 document around `body`, cited by chapter and section. */
export const teiP4 = (body: string): string =>
  `<TEI.2><teiHeader><fileDesc><titleStmt><title>The Long Reins</title></titleStmt></fileDesc><encodingDesc><refsDecl>` +
  `<state unit="chapter"/><state unit="section"/></refsDecl></encodingDesc></teiHeader><text><body>${body}</body></text></TEI.2>`;
