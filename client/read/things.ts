/** client/read/things.ts - which things have words in the open passage, in the order of their words. */
import { computed } from "@preact/signals";
import { elements, marksByText, texts } from "../state/passage.ts";
import type { Thing } from "./focus.ts";

export interface PlacedThing {
  thing: Thing;
  /** The passage text and offset of its first words here; null for an element that has no words of its own and
   *  stands with the element before it. */
  at: { text: string; from: number } | null;
}

const keyOf = (thing: Thing) => `${thing.kind}:${thing.id}`;
/** Things that have no gloss of their own: they are shown with what they belong to. */
const WITHIN: ReadonlySet<string> = new Set(["actions", "readings"]);

/** Glosses of the open passage. Words of the first text (the leading one) decide the order where both have some. */
export const placedThings = computed<PlacedThing[]>(() => {
  const first = new Map<string, PlacedThing & { at: { text: string; from: number }; pane: number }>();
  texts.value.forEach(({ text }, pane) => {
    for (const { mark, anchor } of marksByText.value.get(text.id) ?? []) {
      if (WITHIN.has(mark.of) || anchor.fate === "lost") continue;
      const thing: Thing = { kind: mark.of, id: mark.target };
      const seen = first.get(keyOf(thing));
      if (!seen || (seen.pane === pane && anchor.from < seen.at.from)) {
        first.set(keyOf(thing), { thing, at: { text: text.id, from: anchor.from }, pane });
      }
    }
  });
  const placed: PlacedThing[] = [...first.values()];
  // A supplied element stands after the element before it, when that has words here.
  let before: string | null = null;
  const following = new Map<string, PlacedThing[]>();
  for (const element of elements.value) {
    const thing: Thing = { kind: "elements", id: element.id };
    if (first.has(keyOf(thing))) before = keyOf(thing);
    else if (before && !hasWordsElsewhere(element.id))
      following.set(before, [...(following.get(before) ?? []), { thing, at: null }]);
    else before = hasWordsElsewhere(element.id) ? null : before;
  }
  const paneOf = (text: string) => texts.value.findIndex((shown) => shown.text.id === text);
  placed.sort((a, b) => {
    if (!a.at || !b.at) return 0;
    return a.at.from - b.at.from || paneOf(a.at.text) - paneOf(b.at.text) || (keyOf(a.thing) < keyOf(b.thing) ? -1 : 1);
  });
  return placed.flatMap((one) => [one, ...(following.get(keyOf(one.thing)) ?? [])]);
});

function hasWordsElsewhere(element: string): boolean {
  const here = new Set(texts.value.map(({ text }) => text.id));
  for (const [text, list] of marksByText.value) {
    if (!here.has(text) && list.some(({ mark }) => mark.of === "elements" && mark.target === element)) return true;
  }
  return false;
}

/** Marks of the open passage whose words were lost or reworded by an amendment and wait for a person. */
export const strayAnchors = computed(() =>
  texts.value.flatMap(({ text }) =>
    (marksByText.value.get(text.id) ?? []).filter(({ anchor }) => anchor.fate === "lost" || anchor.fate === "reworded"),
  ),
);
