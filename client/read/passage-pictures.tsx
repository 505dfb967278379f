/** client/read/passage-pictures.tsx - the pictures beside the passage: small, their parts in words below, and large when asked
 *  for. What is forward in the glosses is outlined firmly here, and the other way round. */
import { useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { choose, chosen, pointed, sameThing } from "./focus.ts";
import { PictureDrawn, pictureName } from "./picture-drawn.tsx";
import { type Pictured, type PicturedPart, pictured } from "./pictured.ts";
import { nameOf } from "./thing-names.ts";

export function PassagePictures() {
  if (pictured.value.length === 0) return null;
  return (
    <section class="passage-pictures" aria-label="Pictures this passage rests on">
      {pictured.value.map((one) => (
        <PictureBeside key={one.picture.id} pictured={one} />
      ))}
    </section>
  );
}

function PictureBeside({ pictured: { picture, parts } }: { pictured: Pictured }) {
  const large = useSignal(false);
  const name = pictureName(picture);
  const drawn = {
    picture,
    regions: parts.map(({ region }) => region),
    lit: litParts(parts),
    pick: (id: string) => chooseFirst(parts, id),
    point: (id: string | null) => {
      pointed.value = parts.find(({ region }) => region.id === id)?.things[0] ?? null;
    },
  };
  return (
    <figure>
      <PictureDrawn {...drawn} />
      <figcaption>
        <p>
          <span class="said">{name}</span>{" "}
          <button type="button" class="quiet" onClick={() => (large.value = true)}>
            enlarge<span class="spoken">: {name}</span>
          </button>
        </p>
        <Parts parts={parts} />
      </figcaption>
      {large.value && (
        <Large name={name} note={picture.note} close={() => (large.value = false)}>
          <PictureDrawn {...drawn} />
          <Parts parts={parts} />
        </Large>
      )}
    </figure>
  );
}

/** Each part in words; pressed, what rests on it comes forward. */
function Parts({ parts }: { parts: readonly PicturedPart[] }) {
  const lit = litParts(parts);
  return (
    <ul>
      {parts.map(({ region, things }) => (
        <li key={region.id} class={lit.has(region.id) ? "lit" : ""}>
          <button type="button" class="quiet" onClick={() => chooseFirst(parts, region.id)}>
            {region.label || "a part of it"}
          </button>{" "}
          <span class="meta">{things.map(nameOf).join("; ")}</span>
        </li>
      ))}
    </ul>
  );
}

function Large({
  name,
  note,
  close,
  children,
}: {
  name: string;
  note: string;
  close: () => void;
  children: ComponentChildren;
}) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog class="large-picture" ref={dialog} aria-label={name} onClose={close}>
      <p class="form-head">
        <span class="said">{name}</span>
        <button type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </p>
      {children}
      {note && <p class="meta">{note}</p>}
    </dialog>
  );
}

function litParts(parts: readonly PicturedPart[]): ReadonlySet<string> {
  const forward = pointed.value ?? chosen.value;
  const lit = parts.filter(({ things }) => things.some((thing) => sameThing(thing, forward)));
  return new Set(lit.map(({ region }) => region.id));
}

function chooseFirst(parts: readonly PicturedPart[], id: string): void {
  const [thing] = parts.find(({ region }) => region.id === id)?.things ?? [];
  if (thing) choose(thing);
}
