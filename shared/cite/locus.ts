/** shared/cite/locus.ts - folio references in the normal form of TEI's from and to: "1r", "12v", "1r:10".
 *  May import: schema types. Keeps rule C19 (shared/cite/RULES.md). TEI P5 Guidelines, 11.3.5 (att. from, to). */
import type { FolioPoint, FolioReference } from "../../schema/reference.ts";

/** The two attributes; they are equal for a single place. */
export function locusOf(reference: FolioReference): { from: string; to: string } {
  return { from: formatLocus(reference.from), to: formatLocus(reference.to ?? reference.from) };
}

/** Reads the attributes, with the line after a colon or without one ("1r:10", "1r10"). Null when they are not of this
 *  form, or when the side is missing. */
export function folioFromLocus(witness: string, from: string, to: string): FolioReference | null {
  const [start, end] = [parseLocus(from), parseLocus(to)];
  if (start === null || end === null) return null;
  return formatLocus(start) === formatLocus(end)
    ? { kind: "folio", witness, from: start }
    : { kind: "folio", witness, from: start, to: end };
}

function parseLocus(text: string): FolioPoint | null {
  const [, leaf, side, column, line] = /^([1-9]\d{0,8})([rv])([a-d])?(?::?([1-9]\d{0,8}))?$/u.exec(text.trim()) ?? [];
  if (leaf === undefined) return null;
  const point: FolioPoint = { leaf: Number(leaf), side: side === "r" ? "r" : "v" };
  if (column !== undefined) point.column = column as FolioPoint["column"];
  if (line !== undefined) point.line = Number(line);
  return point;
}

function formatLocus({ leaf, side, column, line }: FolioPoint): string {
  return `${leaf}${side}${column ?? ""}${line === undefined ? "" : `:${line}`}`;
}
