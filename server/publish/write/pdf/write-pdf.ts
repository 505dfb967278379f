/** server/publish/write/pdf/write-pdf.ts - a paper as PDF: tagged, with its faces inside, the same bytes each time.
 *  May import: schema types, siblings, the room above. */
import type { Paper } from "../../../../schema/paper.ts";
import { pointsOfFamilies } from "../face-files.ts";
import { looksOf } from "../look-of.ts";
import type { PaperPlaces } from "../paper-places.ts";
import { Printable } from "../printable.ts";
import { fitted } from "./fit.ts";
import { paperData } from "./paper-data.ts";
import { setPages } from "./typesetter.ts";

export function writePdf(paper: Paper, places: PaperPlaces): Uint8Array {
  const data = paperData(paper, places, new Printable(pointsOfFamilies()));
  const { looks, pages } = looksOf(paper.kind, paper.size);
  const sizes = looks.map(({ base }) => base);
  return fitted(sizes, pages, (at) => setPages({ ...data, look: looks[at] })).bytes();
}
