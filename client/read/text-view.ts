/** client/read/text-view.ts - one passage text in an editor view that is locked while marking.
 *  Locked means: the caret and the selection move, by mouse and by keyboard, and no transaction that changes the
 *  document passes. The view stays editable for the browser, so that words can be selected with the keyboard alone. */
import { baseKeymap } from "prosemirror-commands";
import { history, redo, undo } from "prosemirror-history";
import { keymap } from "prosemirror-keymap";
import type { Node as DocNode } from "prosemirror-model";
import { EditorState, Plugin, PluginKey } from "prosemirror-state";
import { DecorationSet, EditorView } from "prosemirror-view";
import { type DocJson, docFromJson } from "../../schema/editor.ts";
import { positionToOffset, projectionOf } from "../../shared/text/projection.ts";
import { snapToGraphemes } from "../../shared/text/quote.ts";

const markKey = new PluginKey<DecorationSet>("marks");

export interface TextViewEvents {
  /** Called on every move: offsets of the selected words, or null when nothing is selected. */
  selected(range: { from: number; to: number } | null): void;
  /** A letter pressed on the locked text; true when it did something. */
  letter(key: string, range: { from: number; to: number }): boolean;
  /** Words under marks were clicked: the things there, "kind:id". */
  picked(things: string[]): void;
  pointed(things: string[]): void;
  /** The unlocked document changed. */
  typed(doc: DocNode): void;
}

export interface TextView {
  view: EditorView;
  /** Draws these marks from now on. */
  draw(decorations: (doc: DocNode) => DecorationSet): void;
  /** Puts another document in, dropping what was typed. */
  load(doc: DocJson): void;
  setLocked(locked: boolean): void;
  /** Steps typed since the text was unlocked or loaded. */
  steps(): { stepType: string }[];
  destroy(): void;
}

/** Makes a view in `place`. `label` names it for those who cannot see it. */
export function makeTextView(
  place: HTMLElement,
  json: DocJson,
  label: string,
  language: string,
  events: TextViewEvents,
): TextView {
  let locked = true;
  let steps: { stepType: string }[] = [];

  const marks = new Plugin<DecorationSet>({
    key: markKey,
    state: {
      init: () => DecorationSet.empty,
      apply: (tr, set) =>
        (tr.getMeta(markKey) as DecorationSet | undefined) ?? (tr.docChanged ? set.map(tr.mapping, tr.doc) : set),
    },
    props: { decorations: (state) => markKey.getState(state) },
    filterTransaction: (tr) => !locked || !tr.docChanged || tr.getMeta("load") === true,
  });

  const begin = (doc: DocNode) =>
    EditorState.create({
      doc,
      plugins: [marks, history(), keymap({ "Mod-z": undo, "Mod-y": redo, "Shift-Mod-z": redo }), keymap(baseKeymap)],
    });

  const view = new EditorView(place, {
    state: begin(docFromJson(json)),
    attributes: () => ({
      role: "textbox",
      "aria-multiline": "true",
      "aria-readonly": String(locked),
      "aria-label": label,
      lang: language,
      dir: "auto",
      spellcheck: locked ? "false" : "true",
      // No keyboard slides up on a phone while the text is only read.
      inputmode: locked ? "none" : "text",
    }),
    handleKeyDown: (_view, event) => {
      if (!locked) return false;
      if (event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey) {
        const handled = events.letter(event.key.toLowerCase(), currentRange());
        // On locked text a letter never writes; swallow it so that the browser does not try.
        event.preventDefault();
        return handled || true;
      }
      return event.key === "Enter" || event.key === "Backspace" || event.key === "Delete";
    },
    handlePaste: () => locked,
    handleDrop: () => locked,
    handleDOMEvents: {
      click: (_view, event) => {
        const things = thingsAt(event.target);
        if (things.length && view.state.selection.empty) events.picked(things);
        return false;
      },
      mouseover: (_view, event) => {
        events.pointed(thingsAt(event.target));
        return false;
      },
      mouseleave: () => {
        events.pointed([]);
        return false;
      },
    },
    dispatchTransaction(tr) {
      const before = view.state.selection;
      const next = view.state.apply(tr);
      if (next.doc !== view.state.doc && tr.getMeta("load") !== true) {
        steps = [...steps, ...tr.steps.map((step) => step.toJSON() as { stepType: string })];
      }
      view.updateState(next);
      if (tr.docChanged) events.typed(next.doc);
      if (!next.selection.eq(before) || tr.selectionSet) {
        const range = currentRange();
        events.selected(range.from < range.to ? range : null);
      }
    },
  });

  /** The selection in offsets, without blanks at its ends and never inside one character. */
  function currentRange(): { from: number; to: number } {
    const { from, to } = view.state.selection;
    const projection = projectionOf(view.state.doc);
    let start = positionToOffset(projection, from);
    let end = positionToOffset(projection, to);
    while (start < end && /\s/u.test(projection.text[start] ?? "")) start += 1;
    while (end > start && /\s/u.test(projection.text[end - 1] ?? "")) end -= 1;
    return start === end ? { from: start, to: end } : snapToGraphemes(projection.text, start, end);
  }

  return {
    view,
    draw: (decorations) => view.dispatch(view.state.tr.setMeta(markKey, decorations(view.state.doc))),
    load(doc) {
      steps = [];
      view.updateState(begin(docFromJson(doc)));
    },
    setLocked(value) {
      locked = value;
      steps = [];
      view.setProps({});
    },
    steps: () => steps,
    destroy: () => view.destroy(),
  };
}

function thingsAt(target: EventTarget | null): string[] {
  const run = target instanceof Element ? target.closest("[data-things]") : null;
  return run?.getAttribute("data-things")?.split(" ") ?? [];
}
