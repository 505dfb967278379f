/** shared/cite/rich-text.ts - what citeproc sets, as stretches of words with a look; nothing in it can be taken for a tag.
 *  May import: nothing. Keeps rule C24 (shared/cite/RULES.md). */

/** A stretch of words in one look. */
export interface RichStretch {
  text: string;
  italic: boolean;
  bold: boolean;
}
export type RichText = readonly RichStretch[];

/** Reads the HTML of citeproc, in which all characters of the words are written as entities where they could be tags.
 *  White space at either end is taken off, and a block begins after a space. */
export function richText(html: string): RichText {
  const out: RichStretch[] = [];
  const open: { tag: string; italic: boolean; bold: boolean }[] = [];
  const add = (text: string): void => {
    const { italic = false, bold = false } = open.at(-1) ?? {};
    const last = out.at(-1);
    if (text === "") return;
    if (last && last.italic === italic && last.bold === bold) last.text += text;
    else out.push({ text, italic, bold });
  };
  for (const [, tag, words = ""] of html.matchAll(/<([^>]*)>|([^<]+)/gu)) {
    if (tag === undefined) add(unescaped(words).replace(/[\t\n\r ]+/g, " "));
    else if (tag.startsWith("/")) open.pop();
    else {
      const { italic = false, bold = false } = open.at(-1) ?? {};
      if (tag.startsWith("div")) add(" ");
      open.push({ tag, italic: italicAfter(tag, italic), bold: boldAfter(tag, bold) });
    }
  }
  return trimmed(out);
}

/** The words alone. */
export function plainOf(text: RichText): string {
  return text.map((stretch) => stretch.text).join("");
}

function italicAfter(tag: string, before: boolean): boolean {
  if (tag === "i" || tag === "em") return true;
  return tag.includes("font-style:normal") ? false : before;
}

function boldAfter(tag: string, before: boolean): boolean {
  if (tag === "b") return true;
  return tag.includes("font-weight:normal") ? false : before;
}

function trimmed(stretches: RichStretch[]): RichStretch[] {
  const [first] = stretches;
  if (first) first.text = first.text.trimStart();
  const last = stretches.at(-1);
  if (last) last.text = last.text.trimEnd();
  return stretches
    .map((stretch, index) => ({ ...stretch, text: index === 0 ? stretch.text : stretch.text.replace(/ {2,}/g, " ") }))
    .filter(({ text }) => text !== "");
}

/** Words as citeproc carries them through: it takes "$" with what follows for a place of its own patterns. */
export function carried(words: string): string {
  return words.replaceAll("$", DOLLAR);
}

/** A character that stands in no text. */
const DOLLAR = "\uFDD0";

/** Only what citeproc writes: numeric entities of the characters of markup, and what `carried` has put in. */
function unescaped(words: string): string {
  return words.replaceAll("&#60;", "<").replaceAll("&#62;", ">").replaceAll("&#38;", "&").replaceAll(DOLLAR, "$");
}
