/** client/ride/save-plan.ts - the plan at this moment as an SVG file that stands alone: every line carries its own colour
 *  and width in metres of the page, in the ink of paper whatever the window looks like. The server draws the plan of an exercise for
 *  paper; this is the plan as it is seen here, with what only this window knows: other riders as they are set off, a second reading in
 *  soft ink, the other rein, a horse as it was measured, a finding that was gone to. */
import { clockTime } from "../../shared/ride/clock-time.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import { fileName } from "../../shared/text/file-name.ts";
import { stage, stageName } from "./moment.ts";
import { seconds } from "./playing.ts";

const SHAPE_STYLES = [
  "fill",
  "stroke",
  "stroke-width",
  "stroke-dasharray",
  "stroke-linecap",
  "stroke-linejoin",
  "paint-order",
  "opacity",
] as const;
const LETTER_STYLES = ["font-family", "font-size", "font-style", "font-weight"] as const;
/** What is so without being said. */
const UNSAID = new Set(["butt", "miter", "normal", "1"]);
/** Of a sheet of paper; the plan keeps its shape. */
const WIDTH = 160;

/** Downloads the plan as it is shown now. Does nothing while there is no plan. */
export function savePlan(ride: Ridden): void {
  const plan = document.querySelector<HTMLElement>(".plan");
  if (plan === null) return;
  const text = planAsSvg(plan, ride);
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: "image/svg+xml" }));
  link.download = `${fileName(ride.title, "plan")}-${clockTime(seconds.value).replace(":", "m")}s.svg`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}

function planAsSvg(plan: HTMLElement, ride: Ridden): string {
  // A copy in the ink of paper is laid out out of sight, so that its styles can be asked for.
  const copy = plan.cloneNode(true) as HTMLElement;
  copy.classList.add("on-paper");
  plan.parentElement?.append(copy);
  const [ground, riders] = [...copy.querySelectorAll("svg")];
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  if (ground) {
    const [, , width = 1, height = 1] = (ground.getAttribute("viewBox") ?? "").split(" ").map(Number);
    svg.setAttribute("viewBox", ground.getAttribute("viewBox") ?? "");
    svg.setAttribute("width", `${WIDTH}mm`);
    svg.setAttribute("height", `${((WIDTH * height) / width).toFixed(1)}mm`);
    const title = document.createElementNS("http://www.w3.org/2000/svg", "title");
    title.textContent = `${ride.title}, ${clockTime(seconds.value)}${stage.value ? `: ${stageName(stage.value)}` : ""}`;
    svg.append(title);
    for (const sheet of [ground, riders]) {
      if (sheet === undefined) continue;
      inkIn(sheet);
      svg.append(...sheet.children);
    }
  }
  copy.remove();
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(svg)}\n`;
}

/** Writes the style of every shape on the shape, and takes off what only this window understands. */
function inkIn(sheet: SVGSVGElement): void {
  const shapes = [...sheet.querySelectorAll<SVGElement>("*")];
  const inked = shapes.map((shape) => {
    const style = getComputedStyle(shape);
    const names = shape instanceof SVGTextContentElement ? [...SHAPE_STYLES, ...LETTER_STYLES] : SHAPE_STYLES;
    return names.map((name) => [name, style.getPropertyValue(name).replace(/px/g, "")] as const);
  });
  for (const [index, shape] of shapes.entries()) {
    shape.removeAttribute("class");
    shape.removeAttribute("style");
    if (shape instanceof SVGGElement) {
      // Only how far a drawing shows through is kept on what holds it together.
      const opacity = inked[index]?.find(([name]) => name === "opacity")?.[1] ?? "1";
      if (opacity !== "1") shape.setAttribute("opacity", opacity);
      continue;
    }
    for (const [name, value] of inked[index] ?? []) {
      if (name === "stroke-width" || !UNSAID.has(value)) shape.setAttribute(name, value);
    }
  }
}
