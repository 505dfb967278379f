/** server/publish/write/write-paper.ts - a paper in the form it is handed out in.
 *  May import: schema types, siblings and their rooms. Pure but for the faces, which are read from the packages: the same
 *  paper gives the same bytes, whatever the hour, the place and the language of the machine. */
import type { Paper } from "../../../schema/paper.ts";
import { done, type Outcome, refused } from "../../errors.ts";
import { writeDocx } from "./docx/write-docx.ts";
import { writeHtml } from "./html/write-html.ts";
import { type PaperPlaces, placesOf } from "./paper-places.ts";
import { countSides, writePdf } from "./pdf/write-pdf.ts";

export type PaperForm = "pdf" | "docx" | "html";

/** Refused when a citation or note of the paper leads nowhere: all of them are listed. Throws RangeError for what is no
 *  paper (see `placesOf`). */
export async function writePaper(paper: Paper, as: PaperForm): Promise<Outcome<Uint8Array>> {
  const sound = soundPlaces(paper);
  if (!sound.ok) return sound;
  const places = sound.value;
  if (as === "docx") return done(await writeDocx(paper, places));
  return done(as === "pdf" ? await writePdf(paper, places) : writeHtml(paper, places));
}

/** How many sides the paper takes as PDF; null where, by then, it is unwanted. Refused as above. */
export async function sidesOfPaper(paper: Paper, unwanted: () => boolean): Promise<Outcome<number | null>> {
  const places = soundPlaces(paper);
  return places.ok ? done(await countSides(paper, places.value, unwanted)) : places;
}

function soundPlaces(paper: Paper): Outcome<PaperPlaces> {
  const places = placesOf(paper);
  if (places.dangling.length === 0) return done(places);
  const list = places.dangling.slice(0, 20).join("; ");
  return refused(
    "citation_dangling",
    `Every citation must lead somewhere; in “${paper.title}” ${places.dangling.length} do not: ${list}. Mend or remove them, then print again.`,
  );
}
