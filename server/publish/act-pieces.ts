/** server/publish/act-pieces.ts - the words of one act, parted where the warrant changes, and what is told besides them.
 *  May import: schema types, shared/article, siblings. Every form of paper draws acts from these pieces. */
import type { DrillAction, DrillStanding, DrillValue } from "../../schema/drill.ts";
import { withoutArticle } from "../../shared/article.ts";

/** A stretch of the words of an act that has one warrant. */
export interface ActPiece {
  text: string;
  standing: DrillStanding;
  /** The crux that holds the value said here; null for none. */
  crux: string | null;
}

const NOT_SETTLED = "not settled: ";

/** Words an act says a value by, where they are not the value's own. */
const SAID_BY: { readonly [value: string]: string } = { "part circle": "circle", increased: "increase" };

/** Slots whose value reads as a phrase of its own; others are told with their label. */
const SPEAKS_FOR_ITSELF = ["timing", "purpose", "times", "how", "hand"];

/** The words of the act in order, and the values that are not among its words, in the order of the act. */
export function actPieces(action: DrillAction): { pieces: ActPiece[]; besides: DrillValue[] } {
  const { text } = action;
  const claimed: { from: number; to: number; value: DrillValue }[] = [];
  const left: DrillValue[] = [];
  // Longest first, so that "left" is not found inside "forward left".
  const values = [...action.values].sort((a, b) => plainWords(b).length - plainWords(a).length);
  for (const value of values) {
    const silent = value.standing === "not said" || value.standing === "not applicable" || plainWords(value) === "";
    const spellings = silent ? [] : [plainWords(value), SAID_BY[plainWords(value)] ?? ""].filter((said) => said !== "");
    const place = spellings
      .map((said) => ({ from: freePlace(text, said, claimed), length: said.length }))
      .find(({ from }) => from !== -1);
    if (place === undefined) left.push(value);
    else claimed.push({ from: place.from, to: place.from + place.length, value });
  }
  claimed.sort((a, b) => a.from - b.from);
  const pieces: ActPiece[] = [];
  const add = (piece: ActPiece): void => {
    const last = pieces.at(-1);
    const blank = /^[\s,]*$/.test(piece.text);
    if (last && last.crux === null && piece.crux === null && (blank || last.standing === piece.standing)) {
      last.text += piece.text;
    } else if (piece.text !== "") pieces.push(piece);
  };
  let at = 0;
  for (const { from, to, value } of claimed) {
    add({ text: text.slice(at, from), standing: action.standing, crux: null });
    add({ text: text.slice(from, to), standing: value.standing, crux: value.crux });
    at = to;
  }
  add({ text: text.slice(at), standing: action.standing, crux: null });
  const order = action.values;
  const besides = left
    .sort((a, b) => order.indexOf(a) - order.indexOf(b))
    .filter((value) => value.standing !== "not applicable" && !isToldAlready(value, action));
  return { pieces, besides };
}

/** The value in words without what the line under it says already. */
export function plainWords(value: DrillValue): string {
  return value.text.startsWith(NOT_SETTLED) ? value.text.slice(NOT_SETTLED.length) : value.text;
}

/** What is written before a value that does not speak for itself; "" for one that does. */
export function labelOf(value: DrillValue): string {
  return value.standing !== "not said" && SPEAKS_FOR_ITSELF.includes(value.slot) ? "" : value.label;
}

/** A comma or blank at either end of a piece stays outside its line. */
export function trimmedPiece(text: string): { lead: string; words: string; tail: string } {
  const [, lead = "", words = "", tail = ""] = /^([\s,]*)(.*?)([\s,]*)$/su.exec(text) ?? [];
  return { lead, words, tail };
}

/** Where the words stand as whole words that no other value has claimed; -1 when nowhere. */
function freePlace(text: string, words: string, claimed: readonly { from: number; to: number }[]): number {
  for (let at = text.indexOf(words); at !== -1; at = text.indexOf(words, at + 1)) {
    const end = at + words.length;
    const whole = !/\p{L}/u.test(text[at - 1] ?? "") && !/\p{L}/u.test(text[end] ?? "");
    if (whole && claimed.every(({ from, to }) => end <= from || at >= to)) return at;
  }
  return -1;
}

/** The hand is told by the column; it is said again only where its warrant is another one. */
function isToldAlready(value: DrillValue, action: DrillAction): boolean {
  const byColumn = value.text === `the ${action.part}` && value.standing === action.standing && value.crux === null;
  return byColumn || (action.verb === "other" && onlyPlaces(value, action));
}

/** Who does it, and with what, only chooses the column of an act that is told in words of its own. What is not settled or
 *  not said is told all the same, and so is an object that neither the column nor the words name. */
function onlyPlaces({ slot, text, standing, crux }: DrillValue, { part, text: words }: DrillAction): boolean {
  if (crux !== null || standing === "not said") return false;
  const named = words.toLowerCase().includes(withoutArticle(text).toLowerCase());
  return slot === "who" || (slot === "object" && (part === "shaft" || named));
}
