/** server/publish/write/pdf/write-pdf.ts - a paper as PDF: tagged, with its faces inside, the same bytes each time.
 *  May import: schema types, siblings, the room above. */
import type { Paper } from "../../../../schema/paper.ts";
import { pointsOfFamilies } from "../face-files.ts";
import { looksOf } from "../look-of.ts";
import type { PaperPlaces } from "../paper-places.ts";
import { Printable } from "../printable.ts";
import { fitted, type Trial } from "./fit.ts";
import { paperData } from "./paper-data.ts";
import { withTypesetter } from "./typesetter.ts";

export async function writePdf(paper: Paper, places: PaperPlaces): Promise<Uint8Array> {
  const data = paperData(paper, places, new Printable(pointsOfFamilies()));
  const { looks, pages } = looksOf(paper.kind, paper.size);
  const sizes = looks.map(({ base }) => base);
  return withTypesetter(async (typesetter) => {
    const set = async (at: number): Promise<SetWith> => ({
      ...(await typesetter.set({ ...data, look: looks[at] })),
      at,
    });
    let last = -1;
    const found = await fitted(sizes, pages, (at) => {
      last = at;
      return set(at);
    });
    // The trial that fits best need not be the last that was made.
    if (found.at !== last) await set(found.at);
    return typesetter.bytes();
  });
}

interface SetWith extends Trial {
  /** Which of the looks. */
  at: number;
}
