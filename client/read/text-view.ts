/** client/read/text-view.ts - one passage text in an editor view that is locked while marking.
 *  Locked means: the caret and the selection move, by mouse and by keyboard, and no transaction that changes the
 *  document passes. The view stays editable for the browser, so that words can be selected with the keyboard alone. */
import { collab, receiveTransaction, sendableSteps } from "prosemirror-collab";
import { baseKeymap } from "prosemirror-commands";
import { history, redo, undo } from "prosemirror-history";
import { keymap } from "prosemirror-keymap";
import type { Node as DocNode } from "prosemirror-model";
import { EditorState, Plugin, PluginKey, Selection } from "prosemirror-state";
import { Step } from "prosemirror-transform";
import { DecorationSet, EditorView } from "prosemirror-view";
import { type DocJson, docFromJson, passageSchema } from "../../schema/editor.ts";
import { snapToGraphemes } from "../../shared/text/graphemes.ts";
import { positionToOffset, projectionOf } from "../../shared/text/projection.ts";

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

export type StepJson = { stepType: string };

export interface TextView {
  view: EditorView;
  /** Draws these marks from now on. */
  draw(decorations: (doc: DocNode) => DecorationSet): void;
  /** Puts another document in, dropping what was typed. */
  load(doc: DocJson): void;
  setLocked(locked: boolean): void;
  /** Steps typed since the text was loaded, on top of what was received. */
  steps(): StepJson[];
  /** Lays what was typed on top of steps another window stored; false when not all of it could be kept. */
  receive(steps: readonly StepJson[]): boolean;
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

  const marks = new Plugin<DecorationSet>({
    key: markKey,
    state: {
      init: () => DecorationSet.empty,
      apply: (tr, set) =>
        (tr.getMeta(markKey) as DecorationSet | undefined) ?? (tr.docChanged ? set.map(tr.mapping, tr.doc) : set),
    },
    props: { decorations: (state) => markKey.getState(state) },
    filterTransaction: (tr) => !locked || !tr.docChanged,
  });

  const begin = (doc: DocNode) =>
    EditorState.create({
      doc,
      plugins: [
        marks,
        history(),
        collab(),
        keymap({ "Mod-z": undo, "Mod-y": redo, "Shift-Mod-z": redo }),
        keymap(baseKeymap),
      ],
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
    handleKeyDown: (_editor, event) => {
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
      // Words that are still selected are offered again when the text is come back to.
      focus: () => {
        tellSelection();
        return false;
      },
      click: (_editor, event) => {
        // A note of the text's own editor opens where it stands.
        if (event.target instanceof Element && event.target.matches(".note-atom"))
          event.target.classList.toggle("open");
        const things = thingsAt(event.target);
        if (things.length && view.state.selection.empty) events.picked(things);
        return false;
      },
      mouseover: (_editor, event) => {
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
      view.updateState(next);
      if (tr.docChanged) events.typed(next.doc);
      if (!next.selection.eq(before) || tr.selectionSet) tellSelection();
    },
  });

  function tellSelection(): void {
    const range = currentRange();
    events.selected(range.from < range.to ? range : null);
  }

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
      view.updateState(begin(docFromJson(doc)));
    },
    setLocked(value) {
      // Words that were selected for a mark are not what is to be typed over.
      if (locked && !value) view.dispatch(view.state.tr.setSelection(Selection.near(view.state.selection.$from)));
      locked = value;
      view.setProps({});
    },
    steps: () => sendableSteps(view.state)?.steps.map((step) => step.toJSON() as StepJson) ?? [],
    receive(theirs) {
      const mine = sendableSteps(view.state)?.steps.length ?? 0;
      const steps = theirs.map((step) => Step.fromJSON(passageSchema, step));
      view.dispatch(
        receiveTransaction(
          view.state,
          steps,
          steps.map(() => "another window"),
        ),
      );
      return (sendableSteps(view.state)?.steps.length ?? 0) === mine;
    },
    destroy: () => view.destroy(),
  };
}

function thingsAt(target: EventTarget | null): string[] {
  const run = target instanceof Element ? target.closest("[data-things]") : null;
  return run?.getAttribute("data-things")?.split(" ") ?? [];
}
