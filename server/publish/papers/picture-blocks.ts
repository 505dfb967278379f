/** server/publish/papers/picture-blocks.ts - the parts of pictures that the steps on a paper rest on, cut out of the pictures.
 *  May import: schema types, types of server/store, siblings. The picture goes into the figure itself, so that a paper needs no other file. */
import type { DrillElement } from "../../../schema/drill.ts";
import type { Region } from "../../../schema/mark.ts";
import type { Block, PlainBlock } from "../../../schema/paper.ts";
import type { Basis } from "../../../schema/slot.ts";
import type { Attachment } from "../../store/index.ts";
import { html } from "../markup.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { heading, paragraph, soft, words } from "./spans.ts";
import { supportsOf } from "./supports-of.ts";

/** Larger pictures are named and not printed, in bytes. */
const LARGEST = 6_000_000;
/** Width on the paper, in millimetres; on a sheet that shows a picture beside its words, and on a small one. */
const WIDTH = 72;
const SMALL = 42;
const SMALL_ON_A5 = 27;
/** Kinds of picture that every form of paper can show. */
const SHOWN: ReadonlySet<string> = new Set(["image/png", "image/jpeg"]);

export interface Pictures {
  /** The file with this content hash; null where it is not there. */
  attachment: (hash: string) => Attachment | null;
}

/** Two in a row. Nothing where no step rests on a picture. */
export function pictureBlocks(context: PaperContext, pictures: Pictures, level: number): Block[] {
  const regions = regionsUsed(context, () => true);
  if (regions.length === 0) return [];
  const blocks = regions.map((region) => regionBlock(context, pictures, region, WIDTH));
  const rows = Array.from({ length: Math.ceil(blocks.length / 2) }, (_, row): Block => {
    return {
      is: "beside",
      columns: "alike",
      left: blocks.slice(row * 2, row * 2 + 1),
      right: blocks.slice(row * 2 + 1, row * 2 + 2),
    };
  });
  return [heading(level, [words("The pictures")]), ...rows];
}

/** Small, and only those without which a step has nothing to go by: nothing of it rests on words. */
export function neededPictures(context: PaperContext, pictures: Pictures): PlainBlock[] {
  const regions = regionsUsed(context, (rows, { id }) => {
    const bases = rows.find("elements", id)?.existence.basis ?? [];
    return bases.some(({ is }) => is === "picture") && !bases.some(({ is }) => is === "words");
  });
  const across = context.ask.size === "A5" ? SMALL_ON_A5 : SMALL;
  return regions.map((region) => regionBlock(context, pictures, region, across));
}

function regionBlock({ book }: PaperContext, { attachment }: Pictures, region: Region, across: number): PlainBlock {
  const picture = book.find("pictures", region.picture);
  const of = [{ kind: "regions" as const, id: region.id }];
  if (picture === undefined) return paragraph("open", [soft("A picture that is no longer there.")], of);
  const name = [picture.title, picture.where].filter((part) => part !== "").join(", ");
  const caption = [words(region.label === "" ? `${name}.` : `${region.label} (${name}).`)];
  const file = attachment(picture.attachment);
  if (file === null || file.size > LARGEST || !SHOWN.has(file.mediaType)) {
    return paragraph("open", [...caption, soft(" The picture itself cannot be printed here.")], of);
  }
  const xs = region.corners.map(([x]) => x);
  const ys = region.corners.map(([, y]) => y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - top];
  if (width === 0 || height === 0)
    return paragraph("open", [...caption, soft(" The part that is marked is empty.")], of);
  const data = `data:${file.mediaType};base64,${Buffer.from(file.bytes).toString("base64")}`;
  const millimetres = { width: across, height: Math.round((across * height * 10) / width) / 10 };
  const svg = html`<svg xmlns="http://www.w3.org/2000/svg" width="${millimetres.width}mm" height="${millimetres.height}mm" viewBox="${left} ${top} ${width} ${height}"><image href="${data}" x="0" y="0" width="${picture.width}" height="${picture.height}"/></svg>`;
  const alternative = [`Picture: ${name}`, region.label, picture.note].filter((part) => part !== "").join(". ");
  return { is: "figure", anchor: null, svg: svg.text, width: across, caption, alternative, of };
}

/** In the order of the steps, each once. */
function regionsUsed(
  { parts, book }: PaperContext,
  isWanted: (rows: BuiltPart["rows"], element: DrillElement) => boolean,
): Region[] {
  const bases = parts.flatMap(({ rows, drill }) =>
    drill.elements.flatMap((element) =>
      isWanted(rows, element) ? supportsOf(rows, element).map(({ basis }) => basis) : [],
    ),
  );
  const ids = new Set(bases.flatMap((basis: Basis | null) => (basis?.is === "picture" ? [basis.region] : [])));
  return [...ids].flatMap((id) => book.find("regions", id) ?? []);
}
