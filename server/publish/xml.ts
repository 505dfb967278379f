/** server/publish/xml.ts - XML put together so that no words can be taken for tags, and come back as they were.
 *  May import: siblings. Line ends and tabs are written as references where a reader would turn them into spaces. */
import { escaped, joined, Markup } from "./markup.ts";
import { xmlCharacters } from "./xml-characters.ts";

export type XmlContent = Markup | string | null | readonly XmlContent[];

/** Attributes in the order given; null and undefined ones are left out. */
export type XmlAttributes = Readonly<Record<string, string | number | null | undefined>>;

/** An element. Strings are words; null is nothing, and an element of nothing is written empty. */
export function element(name: string, attributes: XmlAttributes = {}, content: XmlContent = null): Markup {
  let tag = `<${name}`;
  for (const key in attributes) {
    const value = attributes[key];
    if (value !== null && value !== undefined) tag += ` ${key}="${attributeText(String(value))}"`;
  }
  const inner = textOf(content);
  return new Markup(inner === "" ? `${tag}/>` : `${tag}>${inner}</${name}>`);
}

/** An element whose parts stand on lines of their own: for lists, never where blanks are words. */
export function inLines(name: string, attributes: XmlAttributes, parts: readonly (Markup | null)[]): Markup {
  const kept = parts.filter((part) => part !== null && part.text !== "");
  return element(name, attributes, kept.length === 0 ? null : [LINE, joined(kept, LINE), LINE]);
}

/** Words by themselves. */
export function asWords(words: string): Markup {
  return new Markup(wordsText(words));
}

const LINE = new Markup("\n");

export const XML_DECLARATION = new Markup('<?xml version="1.0" encoding="UTF-8"?>\n');

function textOf(content: XmlContent): string {
  if (content === null) return "";
  if (content instanceof Markup) return content.text;
  if (typeof content === "string") return wordsText(content);
  let text = "";
  for (const part of content) text += textOf(part);
  return text;
}

/** Most words have none of these, and looking is cheaper than replacing. */
const SPECIAL = /[&<>"\r]/;

function wordsText(words: string): string {
  const held = xmlCharacters(words);
  return SPECIAL.test(held) ? escaped(held).replaceAll("\r", "&#13;") : held;
}

function attributeText(words: string): string {
  const text = wordsText(words);
  return /[\n\t]/.test(text) ? text.replaceAll("\n", "&#10;").replaceAll("\t", "&#9;") : text;
}
