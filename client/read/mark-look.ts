/** client/read/mark-look.ts - how each thing is drawn on its words: which line, which wash, what stands at its head.
 *  The line is the warrant (solid stated, dashed implied, dotted supplied); the colour only helps. */
import type { Warrant } from "../../schema/slot.ts";
import { drillElements, type PlacedMark } from "../state/passage.ts";
import { one } from "../state/rows.ts";

export type Line = "solid" | "dashed" | "dotted" | "double" | "none";
export interface MarkLook {
  line: Line;
  colour: "ink" | "rubric" | "firm";
  wash: "none" | "full" | "low";
  className: string;
  head: { className: string; text: string; label: string } | null;
}

const LINES: Record<Warrant, Line> = { stated: "solid", implied: "dashed", supplied: "dotted" };
const plain = { colour: "ink", wash: "none", head: null } as const;

export function lookOf({ mark }: PlacedMark): MarkLook {
  switch (mark.of) {
    case "elements": {
      const element = one("elements", mark.target);
      const number = drillElements.value.get(mark.target)?.number ?? null;
      if (element?.is === "advice") return { ...plain, line: "none", className: "advice" };
      if (element?.is === "untreated") return { ...plain, line: "none", className: "untreated" };
      return {
        ...plain,
        line: LINES[element?.existence.warrant ?? "stated"],
        className: "step",
        head: number === null ? null : { className: "number", text: String(number), label: `step ${number}` },
      };
    }
    case "actions":
      return {
        ...plain,
        line: LINES[one("actions", mark.target)?.existence.warrant ?? "stated"],
        className: "action",
        colour: "firm",
      };
    case "cruxes":
      return {
        line: "double",
        colour: "rubric",
        wash: "full",
        className: "crux",
        head: { className: "dagger", text: "†", label: `crux: ${one("cruxes", mark.target)?.title ?? ""}` },
      };
    case "questions":
      return {
        ...plain,
        line: "none",
        className: "question",
        wash: "low",
        head: { className: "query", text: "?", label: `question: ${one("questions", mark.target)?.text ?? ""}` },
      };
    case "terms":
    case "senses":
      return { ...plain, line: "none", wash: "low", className: "term" };
    case "readings":
      return { ...plain, line: "dotted", colour: "rubric", className: "evidence" };
    case "standings": {
      const warrant = one("standings", mark.target)?.existence.warrant ?? "stated";
      return { ...plain, line: LINES[warrant], colour: "firm", className: "standing" };
    }
    default:
      return { ...plain, line: "none", wash: "low", className: "named" };
  }
}

const LANE = 4;
/** Room below the words, in CSS pixels, for lines in `lanes` lanes. */
export const roomFor = (lanes: number) => 3 + LANE * lanes;

/** The style that draws the lines of a run of words: one line a lane, washes beneath.
 *  `looks` lie in lanes from 0 at the words downward; `room` is that of the whole text, so that lanes line up. */
export function lineStyle(looks: { look: MarkLook; lane: number; forward: boolean }[], room: number): string {
  const layers: string[] = [];
  const sizes: string[] = [];
  const places: string[] = [];
  const add = (image: string, size: string, place: string) => {
    layers.push(image);
    sizes.push(size);
    places.push(place);
  };
  for (const { look, lane, forward } of looks) {
    const ink = `var(--${forward ? "rubric" : look.colour})`;
    const up = (below: number) => `0 calc(100% - ${Math.max(0, room - 2 - LANE * lane - below)}px)`;
    const thick = forward ? 2.5 : 1.5;
    if (look.line === "solid") add(`linear-gradient(${ink},${ink})`, `100% ${thick}px`, up(thick));
    if (look.line === "dashed") add(`linear-gradient(90deg,${ink} 60%,transparent 0)`, `9px ${thick}px`, up(thick));
    if (look.line === "dotted")
      add(`linear-gradient(90deg,${ink} 45%,transparent 0)`, `4.5px ${thick + 0.5}px`, up(thick));
    if (look.line === "double") {
      add(`linear-gradient(${ink},${ink})`, `100% ${forward ? 1.5 : 1}px`, up(1));
      add(`linear-gradient(${ink},${ink})`, `100% ${forward ? 1.5 : 1}px`, up(3.5));
    }
    if (look.line === "none" && forward) add(`linear-gradient(${ink},${ink})`, "100% 1px", up(1));
  }
  for (const { look } of looks) {
    if (look.wash === "low") add("linear-gradient(var(--wash),var(--wash))", "100% 42%", `0 calc(100% - ${room}px)`);
    if (look.wash === "full") add("linear-gradient(var(--wash),var(--wash))", "100% 100%", "0 0");
  }
  return [
    `padding-bottom:${room}px`,
    `background-image:${layers.join(",")}`,
    `background-size:${sizes.join(",")}`,
    `background-position:${places.join(",")}`,
  ].join(";");
}
