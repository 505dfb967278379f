/** server/publish/drill-page.ts - a drill as one page of HTML that needs nothing else: fonts and style are inside it.
 *  May import: schema types, shared/cite, siblings. No clock, no address: the same drill gives the same bytes. */
import type { Drill } from "../../schema/drill.ts";
import { shortenQuote } from "../../shared/cite/citation-line.ts";
import { SILENT } from "./action-line.ts";
import { apparatus } from "./apparatus.ts";
import { citedPlaces, LONGEST_ON_PAGE } from "./cited.ts";
import { type CruxSigns, signCruxes } from "./crux-signs.ts";
import { html, joined, type Markup, type Piece } from "./markup.ts";
import { fontFaces } from "./page-fonts.ts";
import { PAGE_STYLE } from "./page-style.ts";
import { stepTable } from "./step-table.ts";

/** The whole document as a string; it ends in a newline. */
export function drillPageOf(drill: Drill): string {
  const signs = signCruxes(drill);
  const body = html`${head(drill)}
${standing(drill)}
${lineKey()}
${stepTable(drill, signs)}
${apparatus(signs)}
${questions(drill, signs)}
${neverMentioned(drill)}
${notes(drill)}
${unmarked(drill)}
<p class="caution">${drill.caution}</p>`;
  const title = [drill.exercise.label, drill.exercise.title].filter((part) => part !== "").join(". ");
  // Bold words and signs of the key are in the body too, so the body's characters are all there are.
  const fonts = fontFaces(title + body.text);
  const start = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title} · ${drill.work.title}</title>
`;
  return `${start.text}<style>\n${fonts}\n${PAGE_STYLE}\n</style>\n</head>\n<body>\n${body.text}\n</body>\n</html>\n`;
}

function head(drill: Drill): Markup {
  const { work, exercise, layers } = drill;
  const byline = work.author === "" ? null : html`, ${work.author}`;
  const invented = work.invented ? html`<span>an invented book, to try the program on</span>` : null;
  const references = exercise.references.filter((reference) => reference !== "");
  const whole = drill.treated.untreatedParts === 0 && /^The whole /.test(drill.treated.sentence);
  return html`<header>
<p class="book"><span><span class="said">${work.title}</span>${byline}</span>${invented}</p>
<h1>${exercise.label === "" ? null : html`<b>${exercise.label}</b>`}${exercise.title}</h1>
<dl class="facts">
${references.length === 0 ? null : fact("Where", html`<span class="ref">${references.join(" to ")}</span>`)}
${layers.map((layer) => fact(layer.is === "original" ? "Original" : "Translation", layerWords(layer)))}
${fact("Ridden", html`${drill.way}${drill.variant === null ? null : html`, in the version “${drill.variant}”`}`)}
${carried(drill)}
</dl>
<p class="${whole ? "part whole" : "part"}">${drill.treated.sentence}</p>
</header>`;
}

function fact(name: string, words: Piece): Markup {
  return html`<dt>${name}</dt><dd>${words}</dd>\n`;
}

function layerWords({ title, by, revision, urn }: Drill["layers"][number]): Markup {
  const pieces: Piece[] = [html`<span class="said">${title}</span>`];
  if (by !== "") pieces.push(by);
  if (revision !== "") pieces.push(revision);
  if (urn !== "") pieces.push(html`<span class="soft">${urn}</span>`);
  return joined(pieces, ", ");
}

function carried(drill: Drill): Markup | null {
  const names = drill.objects.filter(({ is }) => is !== "reins").map(({ name }) => name);
  return names.length === 0 ? null : fact("Carried", names.join(", "));
}

function standing(drill: Drill): Markup | null {
  const list = drill.standing.filter(({ is }) => is === "instruction");
  if (list.length === 0) return null;
  return html`<section><h2>Throughout</h2><ul>${list.map(standingItem)}</ul></section>`;
}

function standingItem({ title, text, standing: warrant, citations }: Drill["standing"][number]): Markup {
  const line = html`<span class="w-${warrant.replaceAll(" ", "-")}">${title}</span>`;
  const words = text === "" || text === title ? null : html`: ${text}`;
  const cited = citedPlaces(citations);
  return html`<li>${line}${words}${cited && html` <span class="soft">·</span> ${cited}`}</li>`;
}

/** How to read the lines: on every page that uses them. */
function lineKey(): Markup {
  return html`<p class="lines"><span><span class="w-stated">the text states it</span></span><span><span class="w-implied">the text implies it</span></span><span><span class="w-supplied">supplied by the editor</span></span><span><span class="w-not-settled">not settled</span> †</span><span>${SILENT} the text does not say</span><span class="nothing">nothing is done</span><span>empty: nothing entered</span></p>`;
}

function questions(drill: Drill, signs: CruxSigns): Markup | null {
  if (drill.questions.length === 0) return null;
  const items = drill.questions.map(({ text, to, asked, crux, citations }) => {
    const sign = crux === null ? null : signs.signOf(crux);
    const cited = citedPlaces(citations);
    const whom = [to === "" ? "" : `to ${to}`, asked === null ? "" : `asked ${asked}`].filter((part) => part !== "");
    return html`<dt>?</dt><dd>${text}${sign === null ? null : html` <a class="sign" href="#crux-${sign}">†${sign}</a>`}${whom.length === 0 ? null : html` <span class="soft">(${whom.join(", ")})</span>`}${cited && html` ${cited}`}</dd>`;
  });
  return html`<section><h2>Open questions</h2><dl class="questions">${items}</dl></section>`;
}

function neverMentioned(drill: Drill): Markup | null {
  const list = drill.standing.filter(({ is }) => is === "never mentioned");
  if (list.length === 0) return null;
  return html`<section><h2>Looked for and never mentioned</h2><ul>${list.map(standingItem)}</ul></section>`;
}

function notes(drill: Drill): Markup | null {
  if (drill.notes.length === 0) return null;
  const items = drill.notes.map(({ text, citations }) => {
    const cited = citedPlaces(citations);
    return html`<li>${cited && html`${cited} `}${text}</li>`;
  });
  return html`<section><h2>Notes</h2><ul>${items}</ul></section>`;
}

/** Words of the exercise that no mark speaks of, so that nobody takes the sheet for more than it is. */
function unmarked(drill: Drill): Markup | null {
  const { unmarked: list } = drill.treated;
  if (list.length === 0) return null;
  const items = list.map(({ reference, language, quote }) => {
    const words = shortenQuote(quote, LONGEST_ON_PAGE);
    return html`<li><span class="ref">${reference}</span> <bdi class="said" lang="${language}">“${words}”</bdi></li>`;
  });
  return html`<section><h2>Words nothing is said of yet</h2><ul>${items}</ul></section>`;
}
