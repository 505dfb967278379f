/** client/read/focus.ts - what the reader is at: the words selected, the thing that is forward, the form that is open. */
import { signal } from "@preact/signals";
import type { Markable } from "../../schema/mark.ts";

/** Something that marks tie to words, and that has a gloss. */
export interface Thing {
  kind: Markable;
  id: string;
}
export const sameThing = (a: Thing | null, b: Thing | null) => a?.kind === b?.kind && a?.id === b?.id;

/** Selected words of one passage text: UTF-16 units of the projection, half-open, blanks at the ends left out.
 *  `from` = `to` is a place between words. */
export interface Words {
  text: string;
  from: number;
  to: number;
  /** Where the selection ends on the page, in CSS pixels from its top left. */
  x: number;
  y: number;
}
export const selected = signal<Words | null>(null);
/** The thing under the pointer or focus, and the one that was chosen; the latter stays. */
export const pointed = signal<Thing | null>(null);
export const chosen = signal<Thing | null>(null);
/** The thing whose form is open. */
export const opened = signal<Thing | null>(null);
/** The passage text that is unlocked for amending, or null. */
export const unlocked = signal<string | null>(null);

/** Brings a thing forward; with `open`, its form too. */
export function choose(thing: Thing | null, open = false): void {
  chosen.value = thing;
  if (open || (opened.value && !sameThing(opened.value, thing))) opened.value = open ? thing : null;
}

/** Closes the form that is open; its thing stays forward. */
export function closeForm(): void {
  opened.value = null;
}

/** Gives the focus back to the gloss of a form that was put away; not when something else was chosen meanwhile, which
 *  then stays forward, nor when the focus has gone elsewhere. */
export function giveFocusBack(thing: Thing): void {
  requestAnimationFrame(() => {
    const left = chosen.value !== null && !sameThing(chosen.value, thing);
    if (left || document.activeElement !== document.body) return;
    document
      .querySelector<HTMLElement>(`[data-thing="${thing.kind}:${thing.id}"] .gloss-title`)
      ?.focus({ preventScroll: true });
  });
}
