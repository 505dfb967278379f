/** server/demo/leaf.ts - references of the demo in short: a folio of a witness, a page of the printed translation.
 *  May import: schema types. */
import type { FolioReference, PageReference } from "../../schema/reference.ts";

/** Lines of one side of a leaf: folio("A", "3r", 1, 9) is A f. 3r, ll. 1–9. Throws RangeError for a side like "3". */
export function folio(witness: string, side: string, firstLine: number, lastLine: number): FolioReference {
  const [, leaf = "", face] = /^(\d+)([rv])$/.exec(side) ?? [];
  if (face !== "r" && face !== "v") throw new RangeError(`A side of a leaf is written "3r" or "3v"; got "${side}".`);
  const point = (line: number) => ({ leaf: Number(leaf), side: face, line }) as const;
  return { kind: "folio", witness, from: point(firstLine), to: point(lastLine) };
}

export function page(number: number): PageReference {
  return { kind: "page", of: "tr.", from: { page: String(number) } };
}
