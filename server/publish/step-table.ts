/** server/publish/step-table.ts - the table of the steps: number, horse, hands, shaft, and where it says so.
 *  May import: schema types, shared/article, siblings. Advice and untreated parts go across the table, in the order of the exercise. */
import type { Drill, DrillElement, DrillPart } from "../../schema/drill.ts";
import { withoutArticle } from "../../shared/article.ts";
import { actionLine, onlyUnder, valueLine } from "./action-line.ts";
import { citationsOfElement, citedPlaces, restsOfElement } from "./cited.ts";
import type { CruxSigns } from "./crux-signs.ts";
import { html, joined, type Markup } from "./markup.ts";
import { stopped } from "./stopped.ts";

const COLUMNS: readonly DrillPart[] = ["horse", "left hand", "right hand", "shaft"];

export function stepTable(drill: Drill, signs: CruxSigns): Markup {
  if (drill.elements.length === 0) {
    return html`<p class="soft">No step is written down yet. What the text says of this exercise is not treated.</p>`;
  }
  const heads = COLUMNS.map((part) => html`<th scope="col">${columnName(drill, part)}</th>`);
  return html`<table class="steps">
<colgroup><col class="no"><col><col class="hand"><col class="hand"><col class="shaft"><col class="where"></colgroup>
<thead><tr><th scope="col"><span class="unseen">No.</span></th>${heads}<th scope="col">Where it says so</th></tr></thead>
${drill.elements.map((element) => elementRows(element, signs))}
</table>`;
}

/** The column of the weapon bears the name of the object it is about. */
function columnName(drill: Drill, part: DrillPart): string {
  const object = drill.objects.find(({ is }) => is !== "reins");
  const named = part === "shaft" ? withoutArticle(object?.name ?? part) : part;
  return named.charAt(0).toUpperCase() + named.slice(1);
}

function elementRows(element: DrillElement, signs: CruxSigns): Markup {
  const where = whereCell(element);
  if (element.is === "advice" || element.is === "untreated") {
    return html`<tbody class="${element.is}"><tr><td></td><td colspan="4">${sentence(element)}${onlyUnder(element.onlyUnder, signs)}${noteOf(element)}</td><td class="where">${where}</td></tr></tbody>\n`;
  }
  const lines = [headLine(element, signs), riderLine(element, signs)].filter((line) => line !== null);
  const parts = element.is === "step" || element.actions.length > 0;
  const rows: Markup[] = lines.map((line) => html`<td colspan="4" class="across">${line}</td>`);
  if (parts) rows.splice(Math.min(lines.length, 1), 0, html`${COLUMNS.map((part) => partCell(element, part, signs))}`);
  const [first = html`<td colspan="4"></td>`, ...others] = rows;
  const span = rows.length;
  return html`<tbody class="${element.is}"><tr><th scope="row" rowspan="${span}">${element.number}</th>${first}<td class="where" rowspan="${span}">${where}</td></tr>${others.map((cells) => html`<tr>${cells}</tr>`)}</tbody>\n`;
}

/** Title, role, words of an again, cue, threat and condition; null when there is none of these. */
function headLine(element: DrillElement, signs: CruxSigns): Markup | null {
  const values = element.values.flatMap((value) => valueLine(value, signs) ?? []);
  const condition = onlyUnder(element.onlyUnder, signs);
  const pieces = [
    element.role === "" ? null : html`<span class="soft">${element.role}</span>`,
    element.title === "" ? null : html`<span class="title">${element.title}</span>`,
    element.text === "" ? null : html`<span class="w-${element.standing.replaceAll(" ", "-")}">${element.text}</span>`,
    ...values,
  ].filter((piece) => piece !== null);
  if (pieces.length === 0 && condition === null && element.note === "") return null;
  return html`${joined(pieces, " · ")}${condition}${noteOf(element)}`;
}

function riderLine(element: DrillElement, signs: CruxSigns): Markup | null {
  const acts = element.actions.filter((action) => action.part === "rider" && !action.inherited);
  if (acts.length === 0) return null;
  return html`<span class="soft">Rider:</span> ${joined(
    acts.map((action) => actionLine(action, signs)),
    "; ",
  )}`;
}

/** What one part does; what it only inherits is told in soft ink; the place stays empty where nothing
 *  is entered: that asserts nothing of the text. */
function partCell(element: DrillElement, part: DrillPart, signs: CruxSigns): Markup {
  const acts = element.actions.filter((action) => action.part === part);
  const own = acts.filter((action) => !action.inherited);
  const shown = own.length > 0 ? own : acts;
  if (shown.length === 0) return html`<td></td>`;
  const lines = shown.map((action) => html`<div>${actionLine(action, signs)}</div>`);
  return own.length > 0 ? html`<td>${lines}</td>` : html`<td class="inherited">${lines}</td>`;
}

function whereCell(element: DrillElement): Markup {
  const cited = citedPlaces(citationsOfElement(element));
  const rests = restsOfElement(element);
  if (cited === null && rests.length === 0 && element.is !== "untreated") {
    return html`<span class="soft">supplied; the text has no words for it</span>`;
  }
  return html`${cited}${rests.length > 0 && html`<span class="rests">${rests.map(stopped).join(" ")}</span>`}`;
}

function noteOf(element: DrillElement): Markup | null {
  return element.note === "" ? null : html` <span class="soft">${element.note}</span>`;
}

/** Begins with a capital, since it stands alone in its row. */
function sentence(element: DrillElement): Markup {
  const text = element.text.charAt(0).toUpperCase() + element.text.slice(1);
  return html`<span class="${element.is}-words">${text}</span>`;
}
