/** client/read/gloss-column.tsx - the glosses, each in line with its words: laid from the top, pushed down where the one
 *  above is in the way, and the chosen one kept at its words with the others making room. */
import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { passageId } from "../state/passage.ts";
import { chosen, opened, sameThing, type Thing } from "./focus.ts";
import { Gloss } from "./gloss.tsx";
import { StrayTray } from "./stray-tray.tsx";
import { type PlacedThing, placedThings } from "./things.ts";

const GAP = 6;
const keyOf = (thing: Thing) => `${thing.kind}:${thing.id}`;

export function GlossColumn() {
  const column = useRef<HTMLElement>(null);
  const list = placedThings.value;
  // Read so that the column is laid anew when another gloss opens.
  const forward = opened.value ?? chosen.value;

  const lay = () => {
    if (column.current) layGlosses(column.current, list, forward);
  };
  useLayoutEffect(lay);
  useEffect(() => {
    const watch = new ResizeObserver(lay);
    const leaf = document.querySelector(".leaf");
    if (leaf) watch.observe(leaf);
    for (const gloss of column.current?.querySelectorAll(".gloss") ?? []) watch.observe(gloss);
    return () => watch.disconnect();
  });
  useEffect(() => {
    // A crux that is open is looked at on its desk.
    if (forward === null || opened.value?.kind === "cruxes") return;
    const gloss = column.current?.querySelector(`[data-thing="${keyOf(forward)}"]`);
    gloss?.scrollIntoView({ block: "nearest" });
  }, [forward?.id]);

  return (
    <aside class="gloss-column" ref={column} aria-label="Steps, cruxes and questions of this passage">
      <div class="gloss-lead">
        <StrayTray />
        {list.length === 0 && passageId.value && (
          <p class="empty">
            Nothing is marked here yet. Select words in the text, then say what they are: a step, a crux, a question.
          </p>
        )}
      </div>
      {list.map(({ thing }) => (
        <Gloss key={keyOf(thing)} thing={thing} active={sameThing(thing, forward)} />
      ))}
    </aside>
  );
}

/** Sets the top of each gloss. Positions are CSS pixels from the top of the column. */
function layGlosses(column: HTMLElement, list: readonly PlacedThing[], forward: Thing | null): void {
  if (getComputedStyle(column).display === "none" || window.matchMedia("(max-width: 60rem)").matches) {
    column.style.minHeight = "";
    return;
  }
  const origin = column.getBoundingClientRect().top;
  const lead = column.querySelector<HTMLElement>(".gloss-lead");
  const floor = (lead?.offsetHeight ?? 0) + 24;
  let wanted = floor;
  const places = list.flatMap(({ thing, at }) => {
    const gloss = column.querySelector<HTMLElement>(`[data-thing="${keyOf(thing)}"]`);
    if (gloss === null) return [];
    if (at !== null) wanted = topOfWords(thing, at.text, origin) ?? wanted;
    return [{ gloss, wanted, height: gloss.offsetHeight, forward: sameThing(thing, forward) }];
  });
  // The forward gloss stands at its words; those above it move up as far as there is room, those below move down.
  const pivot = places.findIndex((place) => place.forward);
  const tops: number[] = [];
  let below = floor;
  for (const place of places) {
    const top = Math.max(place.wanted, below);
    tops.push(top);
    below = top + place.height + GAP;
  }
  if (pivot > 0) {
    let room = Math.max(floor, places[pivot]?.wanted ?? 0);
    const shift = (tops[pivot] ?? 0) - room;
    if (shift > 0) {
      // Where there is not room enough above, the pivot comes only as far up as those before it allow.
      let needed = floor;
      for (const place of places.slice(0, pivot)) needed += place.height + GAP;
      room = Math.max(room, needed);
      tops[pivot] = room;
      for (let index = pivot - 1; index >= 0; index -= 1) {
        const height = places[index]?.height ?? 0;
        tops[index] = Math.min(tops[index] ?? 0, (tops[index + 1] ?? 0) - height - GAP);
      }
      let next = room + (places[pivot]?.height ?? 0) + GAP;
      for (let index = pivot + 1; index < places.length; index += 1) {
        tops[index] = Math.max(places[index]?.wanted ?? 0, next);
        next = (tops[index] ?? 0) + (places[index]?.height ?? 0) + GAP;
      }
    }
  }
  let end = 0;
  places.forEach(({ gloss, height }, index) => {
    gloss.style.top = `${Math.round(tops[index] ?? 0)}px`;
    end = Math.max(end, (tops[index] ?? 0) + height);
  });
  column.style.minHeight = `${Math.round(end + 40)}px`;
}

function topOfWords(thing: Thing, text: string, origin: number): number | null {
  const pane = document.querySelector(`[data-text="${text}"]`);
  const run = [...(pane?.querySelectorAll("[data-things]") ?? [])].find((candidate) =>
    candidate.getAttribute("data-things")?.split(" ").includes(keyOf(thing)),
  );
  const box = run?.getClientRects()[0];
  return box ? box.top - origin - 4 : null;
}
