/** server/publish/action-line.ts - one act on the page: its words, each value on the line of its own warrant.
 *  May import: schema types, siblings. Keeps the look: solid stated, dashed implied, dotted supplied, double not settled,
 *  three spaced dots where the text does not say, a thin flat rule where nothing is done. */
import type { DrillAction, DrillElement, DrillStanding, DrillValue } from "../../schema/drill.ts";
import { actPieces, labelOf, plainWords, trimmedPiece } from "./act-pieces.ts";
import type { CruxSigns } from "./crux-signs.ts";
import { html, joined, type Markup } from "./markup.ts";

/** The sign for what the text does not say. */
export const SILENT = html`<span class="silent" role="img" aria-label="the text does not say">· · ·</span>`;

export function actionLine(action: DrillAction, signs: CruxSigns): Markup {
  if (action.verb === "do nothing") return html`<span class="nothing">nothing</span>`;
  const { pieces, besides } = actPieces(action);
  const words = pieces.map(({ text, standing, crux }) => lined(text, standing, crux, signs));
  const told = besides.flatMap((value) => valueLine(value, signs) ?? []);
  return html`${words}${told.map((piece) => html`; ${piece}`)}${onlyUnder(action.onlyUnder, signs)}`;
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
  const label = labelOf(value);
  const named = label === "" ? null : html`<span class="soft">${label}</span> `;
  if (value.standing === "not said") return html`${named}${SILENT}${value.crux && cruxSign(value.crux, signs)}`;
  return html`${named}${lined(plainWords(value), value.standing, value.crux, signs)}`;
}

export function cruxSign(crux: string, signs: CruxSigns): Markup | null {
  const sign = signs.signOf(crux);
  return sign === null ? null : html`<a class="sign" href="#crux-${sign}">†${sign}</a>`;
}

function lined(text: string, standing: DrillStanding, crux: string | null, signs: CruxSigns): Markup {
  const { lead, words, tail } = trimmedPiece(text);
  const sign = crux === null ? null : cruxSign(crux, signs);
  if (words === "") return html`${text}${sign}`;
  return html`${lead}<span class="w-${standing.replaceAll(" ", "-")}">${words}</span>${sign}${tail}`;
}
