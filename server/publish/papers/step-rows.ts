/** server/publish/papers/step-rows.ts - the elements of an exercise as rows: number, horse, hands, shaft, and where it says so.
 *  May import: schema types, shared/article, siblings. A cell without lines is empty: nothing is entered for that part, and
 *  that asserts nothing of the text. */
import type { Drill, DrillAction, DrillElement, DrillPart } from "../../../schema/drill.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { type ActWords, actLine, onlyUnderSpans, valueSpans } from "./act-spans.ts";
import { placesOfElement } from "./citation-spans.ts";
import type { PaperSigns } from "./paper-signs.ts";
import { joinedLines, lined, type Of, soft, strong, words } from "./spans.ts";

export type StepTable = Extract<PlainBlock, { is: "table" }>;
export type StepRow = StepTable["rows"][number];

/** `caption` may be empty. */
export function stepTable(drill: Drill, rows: StepRow[], caption: Line = []): PlainBlock {
  return {
    is: "table",
    as: "steps",
    caption,
    columns: [
      { name: "", share: 0.5 },
      { name: "Horse", share: 3 },
      { name: "Hands", share: 3 },
      { name: shaftName(drill), share: 2.5 },
      { name: "Where", share: 1.2 },
    ],
    rows,
  };
}

export function stepRows(elements: readonly DrillElement[], signs: PaperSigns, act: ActWords): StepRow[] {
  return elements.map((element) => ({
    anchor: stepAnchor(element.id),
    of: rowsOfElement(element),
    element: element.id,
    shown: element.number === null ? null : String(element.number),
    cells: [
      element.number === null ? [] : [[strong(String(element.number))]],
      ...cellsOf(element, signs, act),
      linesOf(placesOfElement(element)),
    ],
  }));
}

export const stepAnchor = (element: string): string => `step-${element}`;

/** The element with what is done in it, but not what it only inherits: that is cited at the instruction. */
export function rowsOfElement({ id, actions }: DrillElement): Of {
  const own = actions.filter(({ inherited }) => !inherited);
  return [{ kind: "elements", id }, ...own.map((action) => ({ kind: "actions" as const, id: action.id }))];
}

/** The column of the weapon bears the name of the object it is about. */
export function shaftName(drill: Drill): string {
  const name = withoutArticle(drill.objects.find(({ is }) => is !== "reins")?.name ?? "shaft");
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** Horse, hands, shaft. What is told of the whole element stands with the horse, above what the horse does. */
function cellsOf(element: DrillElement, signs: PaperSigns, act: ActWords): Line[][] {
  const acts = (part: DrillPart): Line[] => shownActs(element, part).map((action) => actLine(action, signs, act));
  const inHand = (part: "left hand" | "right hand"): Line[] =>
    acts(part).map((line) => [soft(part === "left hand" ? "left: " : "right: "), ...line]);
  return [
    [...headLines(element, signs), ...acts("horse"), ...acts("rider").map((line) => [soft("rider: "), ...line])],
    [...inHand("left hand"), ...inHand("right hand")],
    acts("shaft"),
  ];
}

/** What one part does of its own; what it only inherits where it does nothing else. */
function shownActs({ actions }: DrillElement, part: DrillPart): DrillAction[] {
  const all = actions.filter((action) => action.part === part);
  const own = all.filter(({ inherited }) => !inherited);
  return own.length > 0 ? own : all;
}

/** Title, role, words, cue, threat and condition, as far as there are any; the note on a line of its own. */
function headLines(element: DrillElement, signs: PaperSigns): Line[] {
  const { title, role, text, note, standing } = element;
  const pieces: Line[] = [
    role === "" ? [] : [soft(role)],
    title === "" ? [] : [strong(title)],
    text === "" ? [] : [lined(text.charAt(0).toUpperCase() + text.slice(1), standing)],
    ...element.values.map((value) => valueSpans(value, signs)),
  ];
  const line = [...joinedLines(pieces, " · "), ...onlyUnderSpans(element.onlyUnder, signs)];
  return [...linesOf(line), ...(note === "" ? [] : [[soft(note)]])];
}

function linesOf(line: Line): Line[] {
  return line.length === 0 ? [] : [line];
}

/** Said in the place of the table where nothing is written down yet. */
export function noSteps(): Line {
  return [words("No step is written down yet. What the text says of this exercise is not treated.")];
}
