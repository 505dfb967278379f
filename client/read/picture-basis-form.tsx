/** client/read/picture-basis-form.tsx - evidence from a picture: a part that is marked already, or a new one, drawn with the
 *  pointer or given by four numbers. */
import { useSignal } from "@preact/signals";
import type { Edit } from "../../schema/change.ts";
import type { Picture, Region } from "../../schema/mark.ts";
import type { Basis } from "../../schema/slot.ts";
import { all, ranked } from "../state/rows.ts";
import { create, newId } from "../state/write.ts";
import { focusFirst } from "./focus-first.ts";
import { PictureDrawn, pictureName } from "./picture-drawn.tsx";

type Corner = [x: number, y: number];
const NUMBERS = ["left", "top", "right", "bottom"] as const;

/** `take` is given what the row then rests on, the edits that make a new part, and what it is called. */
export function PictureBasisForm({
  take,
  close,
}: {
  take: (basis: Basis, also: Edit[], label: string) => Promise<boolean>;
  close: () => void;
}) {
  const pictures = ranked("pictures");
  const picture = useSignal(pictures[0] ?? null);
  const chosen = useSignal("");
  const label = useSignal("");
  const corners = useSignal<readonly [Corner, Corner] | null>(null);
  const shown = picture.value;
  if (shown === null) return null;
  const there = all("regions").filter((region) => region.picture === shown.id);
  const drawn: Region[] =
    corners.value === null ? [] : [{ id: "new", picture: shown.id, corners: [...corners.value], label: label.value }];
  const isNew = chosen.value === "";
  const ready = !isNew || (corners.value !== null && isPart(corners.value));
  const add = async () => {
    if (!ready) return;
    const made: Region | null =
      isNew && corners.value !== null
        ? { id: newId(), picture: shown.id, corners: inOrder(corners.value), label: label.value.trim() }
        : null;
    const region = made?.id ?? chosen.value;
    const name = made?.label ?? there.find(({ id }) => id === region)?.label ?? "";
    if (await take({ is: "picture", region }, made ? [create("regions", made)] : [], name)) close();
  };
  return (
    <form
      class="picture-form"
      ref={focusFirst}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return;
        event.stopPropagation();
        close();
      }}
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      {pictures.length > 1 && (
        <label class="field">
          <span>Picture</span>
          <select
            value={shown.id}
            onChange={(event) => {
              picture.value = pictures.find(({ id }) => id === event.currentTarget.value) ?? null;
              chosen.value = "";
              corners.value = null;
            }}
          >
            {pictures.map((one) => (
              <option key={one.id} value={one.id}>
                {pictureName(one)}
              </option>
            ))}
          </select>
        </label>
      )}
      <label class="field">
        <span>Which part of “{shown.title}”</span>
        <select value={chosen.value} onChange={(event) => (chosen.value = event.currentTarget.value)}>
          <option value="">another part, drawn here</option>
          {there.map((region) => (
            <option key={region.id} value={region.id}>
              {region.label || "a part without a name"}
            </option>
          ))}
        </select>
      </label>
      <Drawing
        picture={shown}
        regions={isNew ? drawn : there}
        lit={new Set([isNew ? "new" : chosen.value])}
        draw={(next) => {
          chosen.value = "";
          corners.value = next;
        }}
      />
      {isNew && (
        <>
          <p class="meta">Draw the part on the picture, or give its edges in its own pixels.</p>
          <div class="four">
            {NUMBERS.map((name, index) => (
              <label key={name}>
                <span>{name}</span>
                <input
                  type="number"
                  min={0}
                  max={index % 2 === 0 ? shown.width : shown.height}
                  value={corners.value?.[index < 2 ? 0 : 1][index % 2 === 0 ? 0 : 1] ?? ""}
                  onInput={(event) => {
                    corners.value = withNumber(corners.value, index, event.currentTarget.valueAsNumber, shown);
                  }}
                />
              </label>
            ))}
          </div>
          <label class="field">
            <span>What it shows</span>
            <input value={label.value} required onInput={(event) => (label.value = event.currentTarget.value)} />
          </label>
        </>
      )}
      <div class="row">
        <button type="submit" disabled={!ready}>
          Add
        </button>
        <button type="button" class="quiet" onClick={close}>
          not now
        </button>
      </div>
    </form>
  );
}

function Drawing({
  picture,
  regions,
  lit,
  draw,
}: {
  picture: Picture;
  regions: readonly Region[];
  lit: ReadonlySet<string>;
  draw: (corners: readonly [Corner, Corner]) => void;
}) {
  const from = useSignal<Corner | null>(null);
  const at = (event: PointerEvent): Corner => {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const share = (value: number, start: number, size: number) => Math.min(1, Math.max(0, (value - start) / size));
    return [
      Math.round(share(event.clientX, box.left, box.width) * picture.width),
      Math.round(share(event.clientY, box.top, box.height) * picture.height),
    ];
  };
  return (
    <div
      class="drawing"
      onPointerDown={(event) => {
        event.preventDefault();
        event.currentTarget.setPointerCapture(event.pointerId);
        from.value = at(event);
      }}
      onPointerMove={(event) => {
        if (from.value !== null) draw([from.value, at(event)]);
      }}
      onPointerUp={() => (from.value = null)}
      onPointerCancel={() => (from.value = null)}
    >
      <PictureDrawn picture={picture} regions={regions} lit={lit} />
    </div>
  );
}

/** With one of left, top, right and bottom set; what is not a number counts as the edge of the picture. */
function withNumber(
  before: readonly [Corner, Corner] | null,
  index: number,
  value: number,
  { width, height }: Picture,
): readonly [Corner, Corner] {
  const [[left, top], [right, bottom]] = before ?? [
    [0, 0],
    [width, height],
  ];
  const numbers = [left, top, right, bottom];
  const most = index % 2 === 0 ? width : height;
  numbers[index] = Number.isNaN(value) ? (index < 2 ? 0 : most) : Math.min(most, Math.max(0, Math.round(value)));
  const [a = 0, b = 0, c = 0, d = 0] = numbers;
  return [
    [a, b],
    [c, d],
  ];
}

const isPart = ([[left, top], [right, bottom]]: readonly [Corner, Corner]): boolean => left !== right && top !== bottom;

/** The upper left corner first, however it was drawn. */
function inOrder([[left, top], [right, bottom]]: readonly [Corner, Corner]): Corner[] {
  return [
    [Math.min(left, right), Math.min(top, bottom)],
    [Math.max(left, right), Math.max(top, bottom)],
  ];
}
