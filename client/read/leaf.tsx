/** client/read/leaf.tsx - the passage: its reference, its texts side by side, and the desk below for what is worked at. */
import { signal } from "@preact/signals";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { contents, exercise, opening, openRefusal, passage, texts, work } from "../state/passage.ts";
import { go } from "../state/route.ts";
import { one } from "../state/rows.ts";
import { CruxDesk } from "./crux-desk.tsx";
import { opened, unlocked } from "./focus.ts";
import { PassagePictures } from "./passage-pictures.tsx";
import { PlaceForm } from "./place-form.tsx";
import { SelectionBar } from "./selection-bar.tsx";
import { SharedThings } from "./shared-things.tsx";
import { TextPane } from "./text-pane.tsx";

/** The passages before and after the open one, in the order of the book. */
export function neighbours(): { before: string | null; after: string | null } {
  const here = passage.value;
  const list = contents.value?.works.find((other) => other.rows.works?.[0]?.value.id === here?.work)?.passages ?? [];
  const at = list.findIndex((entry) => entry.passage === here?.id);
  return { before: list[at - 1]?.passage ?? null, after: at === -1 ? null : (list[at + 1]?.passage ?? null) };
}

/** Whether the form that says where the passage stands is open. */
const placeOpen = signal(false);

export function Leaf() {
  const here = passage.value;
  if (here === null) {
    return (
      <article class="leaf" id="leaf">
        {openRefusal.value ? (
          <p class="notice" role="alert">
            {openRefusal.value.sentence}
          </p>
        ) : (
          <p class="empty">{opening.value ? "Opening the passage…" : "Choose a passage at the left."}</p>
        )}
      </article>
    );
  }
  const [first, ...others] = here.references;
  const { before, after } = neighbours();
  const shown = texts.value;
  const crux = opened.value?.kind === "cruxes" ? one("cruxes", opened.value.id) : null;
  const leave = (to: string | null) => {
    if (to && unlocked.value === null) go(`/read/${to}`);
  };
  return (
    <article class="leaf" id="leaf" tabIndex={-1} style={{ position: "relative" }}>
      <header>
        {first && <h1 class="ref">{formatReference(first)}</h1>}
        {others.map((reference, index) => (
          <span key={index} class="meta">
            {formatReference(reference)}
          </span>
        ))}
        <button
          type="button"
          class="quiet said"
          aria-expanded={placeOpen.value}
          onClick={() => (placeOpen.value = !placeOpen.value)}
        >
          {exercise.value
            ? [exercise.value.label, exercise.value.title].filter(Boolean).join(". ")
            : "in no exercise yet"}
        </button>
        {work.value?.invented && <span class="meta">an invented book, to try the program on</span>}
        <span class="turn">
          <SharedThings />
          <button
            type="button"
            class="quiet"
            disabled={before === null}
            onClick={() => leave(before)}
            aria-keyshortcuts="Alt+PageUp"
          >
            before
          </button>
          <button
            type="button"
            class="quiet"
            disabled={after === null}
            onClick={() => leave(after)}
            aria-keyshortcuts="Alt+PageDown"
          >
            after
          </button>
        </span>
      </header>
      <div class={`pair ${shown.length < 2 ? "alone" : ""}`}>
        {shown.map((other, index) => (
          <TextPane key={`${here.id} ${other.layer.id}`} shown={other} leading={index === 0} />
        ))}
        {shown.length === 0 && <p class="empty">This passage has no words in any text yet.</p>}
      </div>
      <PassagePictures />
      <SelectionBar />
      {placeOpen.value && <PlaceForm close={() => (placeOpen.value = false)} />}
      {crux && <CruxDesk crux={crux} />}
    </article>
  );
}
