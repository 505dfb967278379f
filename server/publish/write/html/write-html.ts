/** server/publish/write/html/write-html.ts - a paper as one page of HTML that needs nothing else and runs nothing.
 *  May import: schema types, server/publish, siblings, the room above. The same paper gives the same bytes. */
import type { Paper } from "../../../../schema/paper.ts";
import { html, type Markup } from "../../markup.ts";
import { fontFaces } from "../../page-fonts.ts";
import { pointsOfFamilies } from "../face-files.ts";
import { withLevelsInOrder } from "../heading-levels.ts";
import { middleLook } from "../look-of.ts";
import { type PaperPlaces, plainBlocks } from "../paper-places.ts";
import { missingSentence, Printable } from "../printable.ts";
import { footWords, headWords } from "../running-words.ts";
import { ENDNOTES_TITLE } from "../standing-words.ts";
import { HtmlBlocks } from "./html-blocks.ts";
import { HtmlLines } from "./html-lines.ts";
import { paperStyle } from "./paper-style.ts";

/** In UTF-8. */
export function writeHtml(paper: Paper, places: PaperPlaces): Uint8Array {
  const printable = new Printable(pointsOfFamilies());
  const lines = new HtmlLines(paper, places, printable);
  const inOrder = withLevelsInOrder(paper.blocks);
  const headings = plainBlocks(inOrder).filter((block) => block.is === "heading");
  const blocks = new HtmlBlocks(lines, headings);
  const title = lines.words(paper.title);
  const main = inOrder.map((block) => blocks.block(block));
  const notes = notesOf(places, lines);
  const foot = lines.words(footWords(paper));
  const notice =
    printable.missing.length > 0 && html`<p class="open">${missingSentence(printable.missing, false)}</p>\n`;
  const body = html`<main>
${headings.length === 0 && html`<h1>${title}</h1>\n`}${main}${notes}${notice}</main>
<footer class="foot">${foot}</footer>`;
  const fonts = fontFaces(title + headWords(paper.running.left) + headWords(paper.running.right) + body.text);
  const start = html`<!doctype html>
<html lang="${paper.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="author" content="${lines.words(paper.work.author)}">
<title>${title} · ${lines.words(paper.work.title)}</title>
`;
  const page = `${start.text}<style>\n${fonts}\n${paperStyle(paper, middleLook(paper))}\n</style>\n</head>\n<body>\n${body.text}\n</body>\n</html>\n`;
  return new TextEncoder().encode(page);
}

/** All notes together: a screen has no foot of a page. */
function notesOf({ notes }: PaperPlaces, lines: HtmlLines): Markup | null {
  if (notes.length === 0) return null;
  const items = notes.map(({ id, number, lines: own }) => {
    const anchor = lines.idOf(id);
    const told = own.map((line, index) => {
      const back =
        index === own.length - 1 &&
        html` <a href="#call-${anchor}" aria-label="back to the call of note ${number}">↑</a>`;
      return html`<p${lines.directionOf(line)}>${lines.line(line)}${back}</p>`;
    });
    return html`<li id="${anchor}">${told}</li>`;
  });
  return html`<section class="notes" role="doc-endnotes"><h2>${ENDNOTES_TITLE}</h2><ol>${items}</ol></section>\n`;
}
