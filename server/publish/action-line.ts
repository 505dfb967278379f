/** server/publish/action-line.ts - one act on the page: its words, each value on the line of its own warrant.
 *  May import: schema types, shared/article, siblings. Keeps the look: solid stated, dashed implied, dotted supplied, double not settled,
 *  three spaced dots where the text does not say, a thin flat rule where nothing is done. */
import type { DrillAction, DrillElement, DrillValue } from "../../schema/drill.ts";
import { withoutArticle } from "../../shared/article.ts";
import type { CruxSigns } from "./crux-signs.ts";
import { html, joined, type Markup } from "./markup.ts";

type Standing = DrillValue["standing"];

/** The sign for what the text does not say. */
export const SILENT = html`<span class="silent" role="img" aria-label="the text does not say">· · ·</span>`;

const NOT_SETTLED = "not settled: ";

/** Words an act says a value by, where they are not the value's own. */
const SAID_BY: { readonly [value: string]: string } = { "part circle": "circle", increased: "increase" };

/** Slots whose value reads as a phrase of its own; others are told with their label. */
const SPEAKS_FOR_ITSELF = ["timing", "purpose", "times", "how", "hand"];

export function actionLine(action: DrillAction, signs: CruxSigns): Markup {
  if (action.verb === "do nothing") return html`<span class="nothing">nothing</span>`;
  const { pieces, left } = laidOut(action);
  const words = pieces.map(({ text, standing, crux }) => lined(text, standing, crux, signs));
  const besides = left.flatMap((value) => besideWords(value, action, signs) ?? []);
  return html`${words}${besides.map((piece) => html`; ${piece}`)}${onlyUnder(action.onlyUnder, signs)}`;
}

/** "only under “both hands”", where readings are not chosen yet. */
export function onlyUnder(conditions: DrillElement["onlyUnder"], signs: CruxSigns): Markup | null {
  if (conditions.length === 0) return null;
  const told = conditions.map(({ crux, readings }) => {
    const titles = readings.map((reading) => html`“${signs.readingTitle(reading) ?? "a reading no longer there"}”`);
    return html`${joined(titles, " or ")}${cruxSign(crux, signs)}`;
  });
  return html` <span class="soft">only under ${joined(told, " and ")}</span>`;
}

/** A value that is no part of the words of an act: a cue, a threat, how often. */
export function valueLine(value: DrillValue, signs: CruxSigns): Markup | null {
  if (value.standing === "not applicable") return null;
  const label = SPEAKS_FOR_ITSELF.includes(value.slot) ? null : html`<span class="soft">${value.label}</span> `;
  if (value.standing === "not said") {
    return html`<span class="soft">${value.label}</span> ${SILENT}${value.crux && cruxSign(value.crux, signs)}`;
  }
  return html`${label}${lined(plain(value), value.standing, value.crux, signs)}`;
}

export function cruxSign(crux: string, signs: CruxSigns): Markup | null {
  const sign = signs.signOf(crux);
  return sign === null ? null : html`<a class="sign" href="#crux-${sign}">†${sign}</a>`;
}

interface WordPiece {
  text: string;
  standing: Standing;
  crux: string | null;
}

/** The words of the act parted where the warrant changes, and the values that are not among its words. */
function laidOut(action: DrillAction): { pieces: WordPiece[]; left: DrillValue[] } {
  const { text } = action;
  const claimed: { from: number; to: number; value: DrillValue }[] = [];
  const left: DrillValue[] = [];
  // Longest first, so that "left" is not found inside "forward left".
  const values = [...action.values].sort((a, b) => plain(b).length - plain(a).length);
  for (const value of values) {
    const silent = value.standing === "not said" || value.standing === "not applicable" || plain(value) === "";
    const spellings = silent ? [] : [plain(value), SAID_BY[plain(value)] ?? ""].filter((words) => words !== "");
    const place = spellings
      .map((words) => ({ from: freePlace(text, words, claimed), length: words.length }))
      .find(({ from }) => from !== -1);
    if (place === undefined) left.push(value);
    else claimed.push({ from: place.from, to: place.from + place.length, value });
  }
  claimed.sort((a, b) => a.from - b.from);
  const pieces: WordPiece[] = [];
  const add = (piece: WordPiece): void => {
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
  return { pieces, left: left.sort((a, b) => order.indexOf(a) - order.indexOf(b)) };
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

/** The value in words without what the line under it says already. */
function plain(value: DrillValue): string {
  return value.text.startsWith(NOT_SETTLED) ? value.text.slice(NOT_SETTLED.length) : value.text;
}

function besideWords(value: DrillValue, action: DrillAction, signs: CruxSigns): Markup | null {
  // The hand is told by the column; it is said again only where its warrant is another one.
  const byColumn = value.text === `the ${action.part}` && value.standing === action.standing && value.crux === null;
  return byColumn || (action.verb === "other" && onlyPlaces(value, action)) ? null : valueLine(value, signs);
}

/** Who does it, and with what, only chooses the column of an act that is told in words of its own. What is not settled or
 *  not said is told all the same, and so is an object that neither the column nor the words name. */
function onlyPlaces({ slot, text, standing, crux }: DrillValue, { part, text: words }: DrillAction): boolean {
  if (crux !== null || standing === "not said") return false;
  const named = words.toLowerCase().includes(withoutArticle(text).toLowerCase());
  return slot === "who" || (slot === "object" && (part === "shaft" || named));
}

/** A comma or blank at either end stays outside the line. */
function lined(text: string, standing: Standing, crux: string | null, signs: CruxSigns): Markup {
  const [, lead = "", words = "", tail = ""] = /^([\s,]*)(.*?)([\s,]*)$/su.exec(text) ?? [];
  const sign = crux === null ? null : cruxSign(crux, signs);
  if (words === "") return html`${text}${sign}`;
  return html`${lead}<span class="w-${standing.replaceAll(" ", "-")}">${words}</span>${sign}${tail}`;
}
