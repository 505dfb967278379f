/** server/publish/write/pdf/write-pdf.ts - a paper as PDF: tagged, with its faces inside, the same bytes each time.
 *  May import: schema types, siblings, the room above. */
import type { Paper } from "../../../../schema/paper.ts";
import { pointsOfFamilies } from "../face-files.ts";
import type { PaperPlaces } from "../paper-places.ts";
import { Printable } from "../printable.ts";
import { type Look, looksOf } from "./look-of.ts";
import { paperData } from "./paper-data.ts";
import { type SetPages, setPages } from "./typesetter.ts";

export function writePdf(paper: Paper, places: PaperPlaces): Uint8Array {
  const data = paperData(paper, places, new Printable(pointsOfFamilies()));
  const { looks, pages } = looksOf(paper.kind, paper.size);
  const set = (look: Look): SetPages => setPages({ ...data, look });
  return fitted(looks, pages, set).bytes();
}

/** The largest look that fits the pages wished for; else the next wish; else the smallest look, however long. */
function fitted(looks: readonly Look[], wishes: readonly number[], set: (look: Look) => SetPages): SetPages {
  const [largest] = looks;
  if (largest === undefined) throw new RangeError("A kind of paper has at least one look.");
  const made = new Map<Look, SetPages>();
  const setOnce = (look: Look): SetPages => {
    const pages = made.get(look) ?? set(look);
    made.set(look, pages);
    return pages;
  };
  for (const wish of wishes) {
    // Smaller type never takes more pages: the first that fits is found by halving.
    let from = 0;
    let to = looks.length;
    while (from < to) {
      const middle = from === 0 && to === looks.length ? 0 : (from + to) >> 1;
      if (setOnce(looks[middle] ?? largest).count <= wish) to = middle;
      else from = middle + 1;
    }
    const look = looks[from];
    if (look !== undefined) return setOnce(look);
  }
  return setOnce((wishes.length > 0 ? looks.at(-1) : undefined) ?? largest);
}
