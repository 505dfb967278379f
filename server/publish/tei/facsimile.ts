/** server/publish/tei/facsimile.ts - the pictures of the work, with the parts of them that something rests on.
 *  May import: schema types, shared, siblings. The images themselves are not in the file: they are named by their hash. */
import type { RecordOf } from "../../../schema/record.ts";
import { compareRanked } from "../../../shared/rank.ts";
import type { Markup } from "../markup.ts";
import { element, inLines } from "../xml.ts";
import type { Edition } from "./edition.ts";
import { nameOf } from "./pointers.ts";

export function facsimile({ rows }: Edition): Markup | null {
  const pictures = rows
    .all("pictures")
    .filter(({ work }) => work === rows.work.id)
    .sort(compareRanked);
  if (pictures.length === 0) return null;
  return inLines(
    "facsimile",
    {},
    pictures.map((picture) => {
      const { id, title, where, attachment, width, height, note } = picture;
      const regions = rows.all("regions").filter((region) => region.picture === id);
      const size = { ulx: 0, uly: 0, lrx: width, lry: height };
      const words = [where, note].filter((part) => part.trim() !== "").join(". ");
      return inLines("surface", { "xml:id": nameOf("pictures", id), ...size }, [
        element("label", {}, title),
        words === "" ? null : element("desc", {}, words),
        element("graphic", {
          url: `urn:sha256:${encodeURIComponent(attachment)}`,
          width: `${width}px`,
          height: `${height}px`,
        }),
        ...regions.map(zone),
      ]);
    }),
  );
}

function zone({ id, corners, label }: RecordOf<"regions">): Markup {
  const attributes: Record<string, string | number> = { "xml:id": nameOf("regions", id) };
  const [first = [0, 0], second = first] = corners;
  if (corners.length < 3) {
    Object.assign(attributes, {
      ulx: Math.min(first[0], second[0]),
      uly: Math.min(first[1], second[1]),
      lrx: Math.max(first[0], second[0]),
      lry: Math.max(first[1], second[1]),
    });
  } else attributes.points = corners.map(([x, y]) => `${x},${y}`).join(" ");
  return element("zone", attributes, label);
}
