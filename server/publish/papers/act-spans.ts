/** server/publish/papers/act-spans.ts - acts and values of a step as stretches of a line, each on the line of its warrant.
 *  May import: schema types, server/publish, siblings. What is not said is open, what is not done is flat, and a value that
 *  hangs on a crux bears its sign. */
import type { DrillAction, DrillElement, DrillValue } from "../../../schema/drill.ts";
import type { Line, Span } from "../../../schema/paper.ts";
import { actPieces, labelOf, plainWords, trimmedPiece } from "../act-pieces.ts";
import { inFewWords } from "./few-words.ts";
import type { PaperSigns } from "./paper-signs.ts";
import { joinedLines, lined, NOTHING, SILENT, soft, words } from "./spans.ts";

export function actLine(action: DrillAction, signs: PaperSigns): Line {
  if (action.verb === "do nothing") return [NOTHING];
  return [...toldSpans(action, signs, () => true), ...onlyUnderSpans(action.onlyUnder, signs)];
}

/** Only what one needs in order to do it: purposes and the like are left to other papers. What is silent or not settled is
 *  told on every paper. */
export function fewWordsLine(action: DrillAction, element: DrillElement, signs: PaperSigns): Line {
  if (action.verb === "do nothing") return [NOTHING];
  const few = inFewWords(action, element);
  return [...toldSpans(few, signs, isNeeded), ...onlyUnderNumbers(action.onlyUnder, signs)];
}

function toldSpans(action: DrillAction, signs: PaperSigns, isTold: (value: DrillValue) => boolean): Line {
  const { pieces, besides } = actPieces(action);
  const told = besides.filter(isTold).map((value) => valueSpans(value, signs));
  return [
    ...pieces.flatMap(({ text, standing, crux }) => pieceSpans(text, standing, crux, signs)),
    ...told.flatMap((line) => [words("; "), ...line]),
  ];
}

/** A value that is no part of the words of an act: a cue, a threat, how often. Empty for one that does not apply. */
export function valueSpans(value: DrillValue, signs: PaperSigns): Line {
  if (value.standing === "not applicable") return [];
  const label = labelOf(value);
  const named: Line = label === "" ? [] : [soft(label), words(" ")];
  if (value.standing === "not said") {
    return [...named, SILENT, ...(value.crux === null ? [] : signs.span(value.crux))];
  }
  return [...named, ...pieceSpans(plainWords(value), value.standing, value.crux, signs)];
}

/** " only under “both hands”†a", where readings are not chosen yet. */
export function onlyUnderSpans(conditions: DrillElement["onlyUnder"], signs: PaperSigns): Line {
  if (conditions.length === 0) return [];
  const told = conditions.map(({ crux, readings }): Line => {
    const titles = readings.map((reading): Line => [soft(`“${signs.readingTitle(reading)}”`)]);
    return [...joinedLines(titles, " or "), ...signs.span(crux)];
  });
  return [soft(" only under "), ...joinedLines(told, " and ")];
}

/** " only †a 1", where a paper numbers the readings in the line on the sign. */
export function onlyUnderNumbers(conditions: DrillElement["onlyUnder"], signs: PaperSigns): Line {
  if (conditions.length === 0) return [];
  const told = conditions.map(({ crux, readings }): Line => {
    const numbers = readings.flatMap((reading) => signs.readingNumber(reading) ?? []);
    return [...signs.span(crux), soft(` ${numbers.join(" or ")}`)];
  });
  return [soft(" only "), ...joinedLines(told, " and ")];
}

function isNeeded({ slot, standing, crux }: DrillValue): boolean {
  return crux !== null || standing === "not said" || standing === "not settled" || NEEDED.has(slot);
}

/** Slots without which an act cannot be done as it is meant, besides those its own words say. */
const NEEDED: ReadonlySet<string> = new Set(["timing", "times", "lead", "from", "to", "at", "toward"]);

function pieceSpans(text: string, standing: DrillValue["standing"], crux: string | null, signs: PaperSigns): Span[] {
  const { lead, words: core, tail } = trimmedPiece(text);
  const sign = crux === null ? [] : signs.span(crux);
  if (core === "") return [...(text === "" ? [] : [words(text)]), ...sign];
  return [...(lead === "" ? [] : [words(lead)]), lined(core, standing), ...sign, ...(tail === "" ? [] : [words(tail)])];
}
