/** server/publish/step-table.ts - the table of the steps: number, horse, hands, shaft, and below them where it
 *  says so.
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
<colgroup><col class="no"><col><col class="hand"><col class="hand"><col class="shaft"></colgroup>
<thead><tr><th scope="col"><span class="unseen">No.</span></th>${heads}</tr></thead>
${drill.elements.map((element) => elementRows(element, signs))}
</table>`;
}

/** The column of the weapon bears the name of the object it is about. */
function columnName(drill: Drill, part: DrillPart): string {
  const object = drill.objects.find(({ is }) => is !== "reins");
  const named = part === "shaft" ? withoutArticle(object?.name ?? part) : part;
  return named.charAt(0).toUpperCase() + named.slice(1);
}

/** Past this many characters a step may part at the foot of a page; a shorter one goes to the next page whole. */
const TALL = 1800;

/** The number stands in the first row alone: a cell over all of them would keep a tall step from parting. */
function elementRows(element: DrillElement, signs: CruxSigns): Markup {
  const rows = [...toldRows(element, signs), html`<td colspan="4" class="where">${whereCell(element)}</td>`];
  const [first, ...others] = rows;
  const length = rows.reduce((sum, { text }) => sum + text.replace(/<[^>]*>/g, "").length, 0);
  const shape = length > TALL ? `${element.is} tall` : element.is;
  return html`<tbody class="${shape}"><tr><th scope="rowgroup">${element.number}</th>${first ?? null}</tr>${others.map((cells) => html`<tr><td class="no"></td>${cells}</tr>`)}</tbody>\n`;
}

/** The rows of an element above the words it rests on. */
function toldRows(element: DrillElement, signs: CruxSigns): Markup[] {
  if (element.is === "advice" || element.is === "untreated") {
    return [html`<td colspan="4">${sentence(element)}${onlyUnder(element.onlyUnder, signs)}${noteOf(element)}</td>`];
  }
  const lines = [headLine(element, signs), riderLine(element, signs)].filter((line) => line !== null);
  const rows: Markup[] = lines.map((line) => html`<td colspan="4" class="across">${line}</td>`);
  const parts = element.is === "step" || element.actions.length > 0;
  if (parts) rows.splice(Math.min(lines.length, 1), 0, html`${COLUMNS.map((part) => partCell(element, part, signs))}`);
  return rows;
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

/** The words it rests on, and whatever else, each with what is believed because of it. */
function whereCell(element: DrillElement): Markup {
  const cited = citedPlaces(citationsOfElement(element));
  const rests = restsOfElement(element);
  if (cited === null && rests.length === 0 && element.is !== "untreated") {
    return html`<span class="soft">supplied; the text has no words for it</span>`;
  }
  const items = rests.map(
    ({ rests: words, supports }) =>
      html`<li>${supports.length > 0 && html`<span class="supports">${supports.join("; ")}</span> – `}${stopped(words)}</li>`,
  );
  return html`${cited}${items.length > 0 && html`<ul class="rests">${items}</ul>`}`;
}

function noteOf(element: DrillElement): Markup | null {
  return element.note === "" ? null : html` <span class="soft">${element.note}</span>`;
}

/** Begins with a capital, since it stands alone in its row. */
function sentence(element: DrillElement): Markup {
  const text = element.text.charAt(0).toUpperCase() + element.text.slice(1);
  return html`<span class="${element.is}-words">${text}</span>`;
}
