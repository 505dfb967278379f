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
  const { looks, pages } = looksOf(paper.kind, paper.size);
  const printable = new Printable(pointsOfFamilies());
  const sizes = looks.map(({ base }) => base);
  return withTypesetter(async (typesetter) => {
    let last = -1;
    const found = await fitted(sizes, pages, async (at): Promise<SetWith> => {
      last = at;
      return { ...(await typesetter.set(dataAt(at))), at };
    });
    // The trial that fits best need not be the last that was made.
    if (found.at !== last) await typesetter.set(dataAt(found.at));
    return typesetter.bytes();
  });

  function dataAt(at: number): unknown {
    const look = looks[at];
    if (look === undefined) throw new RangeError(`A ${paper.kind} has no look of number ${at}.`);
    return paperData(paper, places, printable, look);
  }
}

interface SetWith extends Trial {
  /** Which of the looks. */
  at: number;
}
