/** client/read/text-pane.tsx - one layer's text of the open passage: shown, marked, and unlocked to be amended. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { marksByText, type ShownText } from "../state/passage.ts";
import { AmendBar } from "./amend-bar.tsx";
import { choose, chosen, pointed, selected, type Thing, unlocked, type Words } from "./focus.ts";
import { lit, withLit } from "./found-place.ts";
import { decorate } from "./mark-decorations.ts";
import { runLetter } from "./selection-bar.tsx";
import { makeTextView, type TextView } from "./text-view.ts";

const thingFrom = (key: string): Thing => {
  const [kind, id] = key.split(":") as [Thing["kind"], string];
  return { kind, id };
};

export function TextPane({ shown, leading }: { shown: ShownText; leading: boolean }) {
  const place = useRef<HTMLDivElement>(null);
  const view = useRef<TextView | null>(null);
  const typed = useSignal(false);
  const { text, layer } = shown;
  // The text in the view. While it is unlocked it stays, whatever other windows store, until the typing is stored or dropped.
  const held = useRef(text);
  const open = unlocked.value === held.current.id;

  useEffect(() => {
    if (place.current === null) return;
    const wordsAt = (range: { from: number; to: number }): Words => {
      const editor = made.view;
      const end = editor.coordsAtPos(editor.state.selection.to, -1);
      const frame = place.current?.closest(".leaf")?.getBoundingClientRect();
      return {
        text: held.current.id,
        ...range,
        x: Math.max(8, end.left - (frame?.left ?? 0) - 220),
        y: end.bottom - (frame?.top ?? 0) + 8,
      };
    };
    const made = makeTextView(place.current, text.doc, `${layer.title}, text of the passage`, layer.language, {
      selected: (range) => {
        if (unlocked.value === held.current.id) return;
        selected.value = range && wordsAt(range);
      },
      letter: (key, range) => runLetter(key, wordsAt(range)),
      picked: (keys) => {
        // Clicking the same words again brings the next mark under them forward.
        const at = keys.indexOf(chosen.value ? `${chosen.value.kind}:${chosen.value.id}` : "");
        const next = keys[(at + 1) % keys.length];
        if (next) choose(thingFrom(next));
      },
      pointed: (keys) => {
        const key = keys.at(-1);
        pointed.value = key ? thingFrom(key) : null;
      },
      typed: () => {
        typed.value = true;
      },
    });
    view.current = made;
    held.current = text;
    return () => {
      made.destroy();
      view.current = null;
    };
    // One view for one layer of a passage; texts that come later are loaded into it below.
  }, [text.passage, layer.id]);

  useEffect(() => {
    if (held.current.id !== text.id && unlocked.value !== held.current.id) {
      view.current?.load(text.doc);
      held.current = text;
    }
  }, [text.id, open]);

  useEffect(() => {
    view.current?.setLocked(!open);
    typed.value = false;
    if (open) view.current?.view.focus();
  }, [open]);

  const marks = marksByText.value.get(text.id) ?? [];
  const forward = pointed.value ?? chosen.value;
  const found = lit.value?.text === text.id ? lit.value : null;
  useEffect(() => {
    if (held.current.id === text.id && !open)
      view.current?.draw((doc) => withLit(decorate(doc, marks, forward), doc, found));
  });

  return (
    <div class={`text-pane ${layer.is} ${open ? "unlocked" : ""}`} data-text={text.id}>
      <p class="by">
        {layer.title}
        {layer.by && `, ${layer.by}`} · {shown.revision.label}{" "}
        {!open && (
          <button
            type="button"
            class="quiet"
            onClick={() => {
              selected.value = null;
              unlocked.value = text.id;
            }}
          >
            amend
          </button>
        )}
      </p>
      <div ref={place} class={leading ? "leading" : "beside"} />
      {open && <AmendBar base={held.current} newest={text} view={view} typed={typed.value} />}
    </div>
  );
}
