/** client/read/found-place.ts - going to what was found: its passage is opened, then the thing is brought forward, or the
 *  words are lit for a while. */
import { effect, signal } from "@preact/signals";
import type { Node as DocNode } from "prosemirror-model";
import { Decoration, type DecorationSet } from "prosemirror-view";
import type { Found, FoundLead } from "../../schema/find.ts";
import { offsetToPosition, projectionOf } from "../../shared/text/projection.ts";
import { passageId } from "../state/passage.ts";
import { go, route } from "../state/route.ts";
import { one } from "../state/rows.ts";
import { choose, unlocked } from "./focus.ts";
import { openShared, SHARED_KINDS, type SharedKind } from "./shared-open.ts";

/** Words that are lit, in offsets of one passage text; null when none are. */
export const lit = signal<FoundLead["words"]>(null);
/** Long enough to find them on the page and begin to read. */
const LIT_MS = 6000;
/** How long the page is given to draw what is gone to. */
const DRAWN_WITHIN_MS = 3000;

/** What is brought forward as soon as its passage is open, and the passage that was open before. */
const awaited = signal<{ found: Found; before: string | null } | null>(null);
let darken: ReturnType<typeof setTimeout> | undefined;

/** Goes there. A sentence says why not, where it cannot be done; null when it can. */
export function goToFound(found: Found): string | null {
  const { passage } = found.leads;
  if (passage === null) return "Its work has no passage yet. Bring in a text of it first.";
  if (unlocked.value !== null && passage !== passageId.value) {
    return "A text is being amended here. Store what you typed, or lock the text again; then go on.";
  }
  lit.value = null;
  awaited.value = { found, before: passageId.value };
  go(`/read/${passage}`);
  return null;
}

effect(() => {
  const waiting = awaited.value;
  const here = passageId.value;
  if (waiting === null || route.value.room !== "read") return;
  const { found, before } = waiting;
  if (here === found.leads.passage) {
    awaited.value = null;
    arrive(found);
  } else if (here !== before) {
    // Somewhere else was gone to meanwhile.
    awaited.value = null;
  }
});

function arrive({ kind, id, leads }: Found): void {
  const { thing, words } = leads;
  if (words !== null) {
    choose(null);
    light(words);
    whenDrawn(".text-pane .found-words", (place) => {
      place.scrollIntoView({ block: "center" });
      document.getElementById("leaf")?.focus({ preventScroll: true });
    });
  } else if (thing !== null) {
    choose(thing);
    whenDrawn(`[data-thing="${thing.kind}:${thing.id}"] .gloss-title`, (title) => {
      title.focus();
      title.scrollIntoView({ block: "nearest" });
    });
  } else if (kind === "stations") {
    openShared("grounds", one("stations", id)?.ground ?? null);
  } else if (isShared(kind)) {
    openShared(kind, id);
  } else {
    whenDrawn("#leaf", (leaf) => leaf.focus());
  }
}

function isShared(kind: string): kind is SharedKind {
  return (SHARED_KINDS as readonly string[]).includes(kind);
}

function light(words: NonNullable<FoundLead["words"]>): void {
  lit.value = words;
  clearTimeout(darken);
  darken = setTimeout(() => (lit.value = null), LIT_MS);
}

/** Calls `use` with the element once it is on the page; never when it does not come in time. */
function whenDrawn(selector: string, use: (element: HTMLElement) => void): void {
  const until = performance.now() + DRAWN_WITHIN_MS;
  const look = () => {
    const element = document.querySelector<HTMLElement>(selector);
    if (element !== null) use(element);
    else if (performance.now() < until) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

/** The decorations with the lit words among them, where they lie in this text. */
export function withLit(set: DecorationSet, doc: DocNode, words: FoundLead["words"]): DecorationSet {
  if (words === null) return set;
  const projection = projectionOf(doc);
  if (words.to > projection.text.length) return set;
  const from = offsetToPosition(projection, words.from, "after");
  return set.add(doc, [
    Decoration.inline(from, offsetToPosition(projection, words.to, "before"), {
      nodeName: "mark",
      class: "found-words",
    }),
  ]);
}
