/** client/ride/lane-words-width.ts - how wide words are in a lane, in CSS pixels, in the face and size of the lanes. */
import { signal } from "@preact/signals";

/** Counts up when faces have come in: words are then measured anew. */
const faces = signal(0);
// A face is fetched when it is first used, which may be long after the page says that its faces are ready.
document.fonts.addEventListener("loadingdone", () => {
  widths.clear();
  faces.value += 1;
});
const widths = new Map<string, number>();
let pen: CanvasRenderingContext2D | null = null;

export function laneWordsWidth(words: string): number {
  void faces.value;
  const known = widths.get(words);
  if (known !== undefined) return known;
  const lanes = document.querySelector(".lanes .lane-line");
  if (lanes === null) return 7 * words.length;
  pen ??= document.createElement("canvas").getContext("2d");
  if (pen === null) return 7 * words.length;
  const { fontSize, fontFamily } = getComputedStyle(lanes);
  pen.font = `${fontSize} ${fontFamily}`;
  const { width } = pen.measureText(words);
  widths.set(words, width);
  return width;
}
