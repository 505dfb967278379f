/** client/state/passage.ts - the open passage: its rows, its texts side by side, and what the exercise comes to.
 *  Everything here is derived from the rows of this window. */
import { computed, signal } from "@preact/signals";
import type { Bundle, Contents } from "../../schema/api.ts";
import type { Anchor, TextAnchor } from "../../schema/mark.ts";
import type { RecordOf } from "../../schema/record.ts";
import { compileExercise } from "../../shared/drill/compile.ts";
import { statesOf } from "../../shared/drill/state-after-each.ts";
import type { HandsFigure } from "../../shared/hands/figure.ts";
import { compareRanked } from "../../shared/rank.ts";
import { ask, type Refused } from "./api.ts";
import { all, one, ranked, replaceRows, rowsNow } from "./rows.ts";

export const passageId = signal<string | null>(null);
export const opening = signal(false);
export const openRefusal = signal<Refused | null>(null);

/** The work whose rows this window has whole; null while it has those of one exercise or passage. */
export const heldWork = signal<string | null>(null);

/** Opens a passage: asks for its rows and shows them when they are there. */
export async function openPassage(id: string): Promise<void> {
  opening.value = true;
  const answer = await ask<Bundle>(`/api/passages/${id}`);
  opening.value = false;
  if (answer.ok) {
    openRefusal.value = null;
    replaceRows(answer.value.rows, answer.value.at);
    passageId.value = id;
    heldWork.value = null;
  } else {
    openRefusal.value = answer.error;
  }
}

/** Fetches the rows this window has anew; what stands in forms is not touched. */
export async function refreshPassage(): Promise<void> {
  const [id, work] = [passageId.value, heldWork.value];
  if (id === null && work === null) return;
  const answer = await ask<Bundle>(work === null ? `/api/passages/${id}` : `/api/works/${work}`);
  const same = passageId.value === id && heldWork.value === work;
  if (answer.ok && same) replaceRows(answer.value.rows, answer.value.at);
}

export const contents = signal<Contents | null>(null);
export const contentsRefusal = signal<Refused | null>(null);
export async function loadContents(): Promise<void> {
  const answer = await ask<Contents>("/api/contents");
  if (answer.ok) contents.value = answer.value;
  contentsRefusal.value = answer.ok ? null : answer.error;
}

export const passage = computed(() => one("passages", passageId.value));
export const exercise = computed(() => one("exercises", passage.value?.exercise));
export const work = computed(() => one("works", passage.value?.work));

export interface ShownText {
  layer: RecordOf<"layers">;
  revision: RecordOf<"revisions">;
  text: RecordOf<"passageTexts">;
}
/** The current text of each layer of the open passage: translations first, then originals, by rank. */
export const texts = computed<ShownText[]>(() => {
  const newest = new Map<string, RecordOf<"passageTexts">>();
  for (const text of all("passageTexts")) {
    if (text.passage !== passageId.value) continue;
    const seen = newest.get(text.revision);
    if (!seen || seen.number < text.number) newest.set(text.revision, text);
  }
  const shown = [...newest.values()].flatMap((text) => {
    const revision = one("revisions", text.revision);
    const layer = one("layers", revision?.layer);
    return revision && layer ? [{ layer, revision, text }] : [];
  });
  return shown.sort(
    (a, b) => Number(a.layer.is === "original") - Number(b.layer.is === "original") || compareRanked(a.layer, b.layer),
  );
});

export interface PlacedMark {
  mark: RecordOf<"marks">;
  anchor: TextAnchor;
}
const isText = (anchor: Anchor): anchor is TextAnchor => anchor.is === "text";

/** Marks by the passage text their anchors lie in. */
export const marksByText = computed(() => {
  const byText = new Map<string, PlacedMark[]>();
  for (const anchor of all("anchors")) {
    if (!isText(anchor)) continue;
    const mark = one("marks", anchor.mark);
    if (mark === null) continue;
    const list = byText.get(anchor.text);
    if (list) list.push({ mark, anchor });
    else byText.set(anchor.text, [{ mark, anchor }]);
  }
  return byText;
});

/** Elements of the open exercise, in order, guards not yet looked at. */
export const elements = computed(() => ranked("elements").filter((element) => element.exercise === exercise.value?.id));

const compiled = computed(() => (exercise.value ? compileExercise(rowsNow.value, exercise.value.id, {}) : null));
/** The exercise under what is adopted now; null when the passage stands in none. */
export const drill = computed(() => compiled.value?.drill ?? null);
/** Its elements by id, for number and words. */
export const drillElements = computed(
  () => new Map(drill.value?.elements.map((element) => [element.id, element]) ?? []),
);

/** The figure of hands and shaft after each element, by element; none while no exercise is open. */
export const statesAfter = computed(
  () =>
    new Map<string, HandsFigure>(
      compiled.value ? statesOf(compiled.value).map(({ element, figure }) => [element, figure]) : [],
    ),
);
