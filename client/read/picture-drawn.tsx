/** client/read/picture-drawn.tsx - a picture of the work with parts of it outlined. What the outlines stand for is said in
 *  words beside it; they are drawn for the eye alone. */
import type { Picture, Region } from "../../schema/mark.ts";

export const pictureName = ({ title, where }: Picture): string => [title, where].filter(Boolean).join(", ");

/** `lit`: ids of the regions that are brought forward. */
export function PictureDrawn({
  picture,
  regions,
  lit,
  pick,
  point,
}: {
  picture: Picture;
  regions: readonly Region[];
  lit: ReadonlySet<string>;
  pick?: (region: string) => void;
  /** Null: the pointer has left. */
  point?: (region: string | null) => void;
}) {
  const { width, height, attachment, note } = picture;
  const alternative = [`Picture: ${pictureName(picture)}`, note].filter(Boolean).join(". ");
  return (
    <span class="picture-drawn">
      <img src={`/api/attachments/${attachment}`} width={width} height={height} alt={alternative} draggable={false} />
      <svg viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {regions.map(({ id, corners }) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: a larger target for the pointer; the same is a button in words below.
          <path
            key={id}
            class={lit.has(id) ? "region lit" : "region"}
            d={outlineOf(corners)}
            onClick={() => pick?.(id)}
            onMouseEnter={() => point?.(id)}
            onMouseLeave={() => point?.(null)}
          />
        ))}
      </svg>
    </span>
  );
}

/** Pixels of the picture; two corners are those of a rectangle. */
export function outlineOf(corners: Region["corners"]): string {
  const [first, second] = corners;
  if (first === undefined || second === undefined) return "";
  const [[left, top], [right, bottom]] = [first, second];
  if (corners.length === 2) return `M${left} ${top}H${right}V${bottom}H${left}Z`;
  return `M${corners.map(([x, y]) => `${x} ${y}`).join("L")}Z`;
}
