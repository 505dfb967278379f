/** server/publish/write/pdf/write-pdf.ts - a paper as PDF: tagged, with its faces inside, the same bytes each time.
 *  May import: schema types, siblings, the room above. */
import type { Paper } from "../../../../schema/paper.ts";
import { pointsOfFamilies } from "../face-files.ts";
import { looksOf } from "../look-of.ts";
import type { PaperPlaces } from "../paper-places.ts";
import { Printable } from "../printable.ts";
import { fitted, type Trial } from "./fit.ts";
import { paperData } from "./paper-data.ts";
import { type Typesetter, withTypesetter } from "./typesetter.ts";

export function writePdf(paper: Paper, places: PaperPlaces): Promise<Uint8Array> {
  return withTypesetter(async (typesetter) => {
    const { found, last, dataAt } = await setToFit(typesetter, paper, places);
    // The trial that fits best need not be the last that was made.
    if (found.at !== last) await typesetter.set(dataAt(found.at));
    return typesetter.bytes();
  });
}

/** How many sides the paper takes as PDF. `unwanted` is asked when its turn comes: null where nobody waits any more. */
export function countSides(paper: Paper, places: PaperPlaces, unwanted: () => boolean): Promise<number | null> {
  return withTypesetter(async (typesetter) => {
    if (unwanted()) return null;
    const { found } = await setToFit(typesetter, paper, places);
    await typesetter.letGo();
    return found.count;
  });
}

async function setToFit(typesetter: Typesetter, paper: Paper, places: PaperPlaces) {
  const { looks, pages } = looksOf(paper.kind, paper.size);
  const printable = new Printable(pointsOfFamilies());
  const sizes = looks.map(({ base }) => base);
  let last = -1;
  const found = await fitted(sizes, pages, async (at): Promise<SetWith> => {
    last = at;
    return { ...(await typesetter.set(dataAt(at))), at };
  });
  return { found, last, dataAt };

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
