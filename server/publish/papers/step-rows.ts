/** server/publish/papers/step-rows.ts - the elements of an exercise as rows of a table: number, horse, hands, shaft, and where
 *  it says so.
 *  May import: schema types, shared/article, siblings. A cell without lines is empty: nothing is entered for that part, and that
 *  asserts nothing of the text. */
import type { Drill, DrillAction, DrillElement, DrillPart } from "../../../schema/drill.ts";
import type { Line, PlainBlock, Span } from "../../../schema/paper.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { citationsOfElement } from "../cited.ts";
import { capital } from "../stopped.ts";
import { actLine, onlyUnderNumbers, onlyUnderSpans, valueSpans } from "./act-spans.ts";
import { actsToTell } from "./acts-to-tell.ts";
import { basisLine } from "./basis-lines.ts";
import { handOnce } from "./hand-once.ts";
import { fewWordsFor, onFootOf } from "./on-foot.ts";
import { namesRole, otherPerson } from "./other-person.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import type { PaperSigns } from "./paper-signs.ts";
import { quotesLine } from "./quote-lines.ts";
import { emphasis, joinedLines, lined, type Of, soft, strong, words } from "./spans.ts";
import { supportsOf } from "./supports-of.ts";

type StepTable = Extract<PlainBlock, { is: "table" }>;
type StepRow = StepTable["rows"][number];

/** For a sheet that is ridden from: one row an element, few words, and its place in the book. */
export function fewStepsTable(context: PaperContext, part: BuiltPart): PlainBlock {
  const { drill, whole } = part;
  if (drill.elements.length === 0) return noSteps();
  const { signs, places } = context;
  const told = actsToTell(whole.elements);
  const onFoot = onFootOf(part);
  const shaft = shaftName(drill);
  // A small sheet has no room for three columns of words.
  const together = context.ask.size === "A5" || handsAreFew(drill, told);
  return {
    is: "table",
    as: "steps",
    caption: [],
    columns: [
      { name: "", share: 0.45 },
      { name: onFoot === null ? "Horse" : "You", share: together ? 3.2 : 3 },
      ...(together
        ? [{ name: `Hands and ${shaft.charAt(0).toLowerCase()}${shaft.slice(1)}`, share: 4.2 }]
        : [
            { name: "Hands", share: 2.4 },
            { name: shaft, share: 2.6 },
          ]),
      { name: "Where", share: 1.15 },
    ],
    rows: drill.elements.map((element) => {
      const other = otherPerson(element, drill);
      // In the order they are done in: of two hands one may have to wait for the other.
      const acts = (...parts: DrillPart[]): Line[] =>
        handOnce(told.get(element.id) ?? []).flatMap((action) => {
          if (!parts.includes(action.part)) return [];
          const line = fewWordsFor(action, element, signs, onFoot);
          const whose = other !== null && action.part !== "horse" ? `${other}: ` : (NAMED[action.part] ?? "");
          return whose === "" ? [line] : named(whose, [line]);
        });
      const where = [...places.line(citationsOfElement(element)), ...signsLeft(element, signs)];
      const head = headLines(element, signs, true);
      // What is asked of several steps, and what is done again or not written out, goes across, its place behind it.
      if (element.is !== "step" && element.actions.length === 0) {
        const lines = element.is === "advice" ? head.map(asReminder) : head;
        return { ...rowOf(element), cells: headCells(element, withWhere(lines, where)) };
      }
      return {
        ...rowOf(element),
        cells: [
          ...headCells(element, [...head, ...acts("horse"), ...acts("rider")]),
          ...(together ? [acts("left hand", "right hand", "shaft")] : [acts("left hand", "right hand"), acts("shaft")]),
          linesOf(where),
        ],
      };
    }),
  };
}

/** Whether the hands have so little to do of their own that a column of theirs would stand empty often: they act in less
 *  than two of three steps. What they do is then told with what the weapon does, which names its hand as well. */
function handsAreFew({ elements }: Drill, told: ReadonlyMap<string, readonly DrillAction[]>): boolean {
  const steps = elements.filter(({ is, actions }) => is === "step" || actions.length > 0);
  const withHands = steps.filter(({ id }) => told.get(id)?.some(({ part }) => part.endsWith(" hand")));
  return withHands.length * 3 < steps.length * 2;
}

/** Parts that have no column of their own on a sheet. */
const NAMED: { readonly [part in DrillPart]?: string } = {
  "left hand": "left: ",
  "right hand": "right: ",
  rider: "rider: ",
};

/** For the book: a column for each hand, all words, and below them where it stands and what else it rests on. */
export function fullStepsTable(context: PaperContext, part: BuiltPart): PlainBlock {
  const { drill } = part;
  if (drill.elements.length === 0) return noSteps();
  return {
    is: "table",
    as: "steps",
    caption: [],
    columns: [
      { name: "", share: 0.4 },
      { name: "Horse", share: 3 },
      { name: "Left hand", share: 1.9 },
      { name: "Right hand", share: 1.9 },
      { name: shaftName(drill), share: 2.6 },
    ],
    rows: drill.elements.flatMap((element) => [toldRow(context, element), whereRow(context, part, element)]),
  };
}

function toldRow({ signs }: PaperContext, element: DrillElement): StepRow {
  const acts = (part: DrillPart): Line[] => actLines(element, part, signs);
  const head = [...headLines(element, signs, false), ...named("rider: ", acts("rider"))];
  const row = rowOf(element);
  // What is asked of several steps, and what is not written out, goes across the columns.
  if (element.is === "advice" || element.is === "untreated") return { ...row, cells: headCells(element, head) };
  return {
    ...row,
    cells: [...headCells(element, [...head, ...acts("horse")]), acts("left hand"), acts("right hand"), acts("shaft")],
  };
}

/** The words it rests on, and whatever else, each with what is believed because of it. */
function whereRow(context: PaperContext, { rows }: BuiltPart, element: DrillElement): StepRow {
  const cited = citationsOfElement(element);
  const supports = supportsOf(rows, element).flatMap(({ basis, why, supports: believed }): Line[] => {
    const line = basis === null ? [words(why)] : basisLine(context, basis);
    if (line === null) return [];
    return [believed.length === 0 ? line : [emphasis(believed.join("; ")), words(" – "), ...line]];
  });
  const nothing = cited.length === 0 && supports.length === 0 && element.is !== "untreated";
  return {
    ...rowOf(element),
    anchor: null,
    shown: null,
    cells: [
      [],
      [
        ...linesOf([...quotesLine(context.places, cited), ...signsLeft(element, context.signs)]),
        ...supports,
        ...(nothing ? [[soft("supplied; the text has no words for it")]] : []),
      ],
    ],
  };
}

function rowOf(element: DrillElement): Omit<StepRow, "cells"> {
  return {
    anchor: stepAnchor(element.id),
    of: rowsOfElement(element),
    element: element.id,
    shown: element.number === null ? null : String(element.number),
  };
}

export const stepAnchor = (element: string): string => `step-${element}`;

/** The element with what is done in it, but not what it only inherits: that is cited at the instruction. */
/** The element, its own actions, and the cruxes that bear on it: what it says may change with any of them. */
export function rowsOfElement({ id, actions, cruxes }: DrillElement): Of {
  const own = actions.filter(({ inherited }) => !inherited);
  return [
    { kind: "elements", id },
    ...own.map((action) => ({ kind: "actions" as const, id: action.id })),
    ...cruxes.map(({ crux }) => ({ kind: "cruxes" as const, id: crux })),
  ];
}

/** The column of the weapon bears the name of the object it is about. */
export function shaftName(drill: Drill): string {
  return capital(withoutArticle(drill.objects.find(({ is }) => is !== "reins")?.name ?? "shaft"));
}

function headCells({ number }: DrillElement, lines: Line[]): Line[][] {
  return [number === null ? [] : [[strong(String(number))]], lines];
}

/** For the book: what an element only inherits is told in soft ink where the part does nothing else. */
function actLines(element: DrillElement, part: DrillPart, signs: PaperSigns): Line[] {
  const all = element.actions.filter((action) => action.part === part);
  const own = all.filter(({ inherited }) => !inherited);
  if (own.length > 0) return own.map((action) => actLine(action, signs));
  return all.map((action) => softened(actLine(action, signs)));
}

function named(name: string, lines: Line[]): Line[] {
  return lines.map((line) => [soft(name), ...line]);
}

function softened(line: Line): Line {
  return line.map((span) => (span.is === "words" ? { ...span, as: "soft" } : span));
}

/** Title, role, words, cue, threat and condition, as far as there are any; the note on a line of its own. */
function headLines(element: DrillElement, signs: PaperSigns, few: boolean): Line[] {
  const { title, role, text, note, standing } = element;
  const pieces: Line[] = [
    role === "" || (few && namesRole(title, role)) ? [] : [soft(role)],
    title === "" ? [] : [strong(title)],
    text === ""
      ? []
      : [
          lined(
            few && element.is === "advice" ? text.charAt(0).toLowerCase() + text.slice(1) : capital(text),
            standing,
          ),
        ],
    ...element.values.map((value) => valueSpans(value, signs)),
  ];
  const condition = few ? onlyUnderNumbers(element.onlyUnder, signs) : onlyUnderSpans(element.onlyUnder, signs);
  const line = [...joinedLines(pieces, " · "), ...condition];
  return [...linesOf(line), ...(note === "" ? [] : [[soft(note)]])];
}

/** Signs of cruxes that bear on the element without holding anything that is printed of it: what they leave out, what they
 *  let stand, words nobody has tied to a value yet. */
function signsLeft(element: DrillElement, signs: PaperSigns): Span[] {
  const held = new Set([
    ...element.values.map(({ crux }) => crux),
    ...element.onlyUnder.map(({ crux }) => crux),
    ...element.actions.flatMap((action) => [
      ...action.values.filter(({ standing }) => standing !== "not applicable").map(({ crux }) => crux),
      ...action.onlyUnder.map(({ crux }) => crux),
    ]),
  ]);
  return element.cruxes.flatMap(({ crux }) => (held.has(crux) ? [] : signs.span(crux)));
}

/** Set apart from what is done: "Bear in mind: keep the circle round". */
const asReminder = (line: Line, index: number): Line =>
  index === 0
    ? [soft("Bear in mind: "), ...line.map((span) => ("as" in span ? { ...span, as: "emphasis" as const } : span))]
    : line;

/** The place at the end of the first line. */
function withWhere([first = [], ...others]: Line[], where: Line): Line[] {
  return [where.length === 0 ? first : [...first, words("  "), ...where], ...others];
}

function linesOf(line: Line): Line[] {
  return line.length === 0 ? [] : [line];
}

/** Said in the place of the table where nothing is written down yet. */
export function noSteps(): PlainBlock {
  const says = "No step is written down yet. What the text says of this exercise is not treated.";
  return { is: "paragraph", as: "open", words: [words(says)], of: [] };
}
