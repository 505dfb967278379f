/** client/decide/goto.ts - from here to where a thing stands: its words in Read, its element in Ride. */
import type { Citation } from "../../schema/drill.ts";
import { compareRanked } from "../../shared/rank.ts";
import type { Pick } from "../../shared/ride/puzzle/index.ts";
import { choose, type Thing } from "../read/focus.ts";
import { placesOf } from "../ride/lit-words.ts";
import { wishFor } from "../ride/wish.ts";
import { heldWork, openPassage, passageId } from "../state/passage.ts";
import { go } from "../state/route.ts";
import { all, one } from "../state/rows.ts";

/** The first passage a thing is marked in, in the order of the book; null where it has no words in this window. */
export function passageOf({ kind, id }: Thing): string | null {
  const marks = new Set(
    all("marks")
      .filter((mark) => mark.of === kind && mark.target === id && mark.as === "words")
      .map((mark) => mark.id),
  );
  const passages = all("anchors").flatMap((anchor) =>
    anchor.is === "text" && marks.has(anchor.mark) ? (one("passages", anchor.passage) ?? []) : [],
  );
  return passages.sort(compareRanked)[0]?.id ?? null;
}

export const passageOfCitations = (citations: readonly Citation[]): string | null =>
  placesOf(citations)[0]?.passage ?? null;

/** Opens the passage in Read with the thing forward; with `form`, its form or desk too. */
export async function openInRead(thing: Thing, passage: string, form = false): Promise<void> {
  // The rows come first: Read puts away what was chosen when it opens another passage itself.
  if (passage !== passageId.value || heldWork.value !== null) await openPassage(passage);
  choose(thing, form);
  go(`/read/${passage}`);
}

/** Opens Ride at an element, under these readings. */
export function openInRide(exercise: string, readings: readonly Pick[], element: string | null): void {
  wishFor({ readings, element });
  go(`/ride/${exercise}`);
}
