/** server/publish/tei/passage-markup.ts - the words of one passage as TEI, with an anchor at every offset a mark needs.
 *  May import: schema, shared, siblings. Keeps rules X4-X7 (server/publish/tei/RULES.md): every blank stands for itself, and
 *  server/import/tei-exact.ts reads it back as the document it was. */
import type { Node as DocNode, Mark as TextMark } from "prosemirror-model";
import { docFromJson } from "../../../schema/editor.ts";
import { encodedWord } from "../../../shared/cite/cited-range.ts";
import { projectionOf } from "../../../shared/text/projection.ts";
import type { Markup } from "../markup.ts";
import { asWords, element, type XmlAttributes } from "../xml.ts";
import { anchorName, type PassageNow } from "./places.ts";
import { languageAttribute } from "./pointers.ts";

/** Its blocks, one after another. `offsets` rise. */
export function passageMarkup({ text, name }: PassageNow, offsets: readonly number[]): Markup[] {
  const { blocks } = projectionOf(docFromJson(text.doc));
  let next = 0;
  let onlyHeads = true;
  return blocks.map(({ node, offset, length }) => {
    onlyHeads &&= node.type.name === "heading";
    const [tag, attributes] = blockTag(node.type.name, onlyHeads);
    const until = blocks.at(-1)?.node === node ? Number.POSITIVE_INFINITY : offset + length;
    const here: number[] = [];
    for (let at = offsets[next]; at !== undefined && at <= until; at = offsets[next]) {
      here.push(at - offset);
      next += 1;
    }
    return element(
      tag,
      attributes,
      blockContent(node, here, (at) => anchorName(name, at + offset)),
    );
  });
}

/** A heading is a head where TEI lets one stand, before all else. */
function blockTag(type: string, mayBeHead: boolean): [tag: string, attributes: XmlAttributes] {
  if (type === "verse") return ["l", {}];
  if (type === "heading") return mayBeHead ? ["head", {}] : ["ab", { type: "heading" }];
  return ["p", {}];
}

function blockContent(block: DocNode, offsets: readonly number[], anchor: (at: number) => string): Markup[] {
  const parts: Markup[] = [];
  let at = 0;
  let next = 0;
  const anchorsUpTo = (limit: number) => {
    for (let offset = offsets[next]; offset !== undefined && offset <= limit; offset = offsets[next]) {
      parts.push(element("anchor", { "xml:id": anchor(offset) }));
      next += 1;
    }
  };
  block.forEach((child, _position, index) => {
    anchorsUpTo(at);
    const words = child.text;
    if (words === undefined) {
      parts.push(marked(atom(child, block, index), child.marks));
      return;
    }
    let from = 0;
    for (let offset = offsets[next]; offset !== undefined && offset < at + words.length; offset = offsets[next]) {
      const cut = wholeCharacter(words, offset - at);
      if (cut > from) parts.push(marked(asWords(words.slice(from, cut)), child.marks));
      from = Math.max(from, cut);
      parts.push(element("anchor", { "xml:id": anchor(offset) }));
      next += 1;
    }
    parts.push(marked(asWords(words.slice(from)), child.marks));
    at += words.length;
  });
  anchorsUpTo(Number.POSITIVE_INFINITY);
  return parts;
}

/** Between the halves of one character nothing can stand. */
function wholeCharacter(words: string, at: number): number {
  const [before, after] = [words.charCodeAt(at - 1), words.charCodeAt(at)];
  return before >= 0xd800 && before < 0xdc00 && after >= 0xdc00 && after < 0xe000 ? at - 1 : at;
}

function marked(content: Markup, marks: readonly TextMark[]): Markup {
  let inner = content;
  for (const mark of [...marks].reverse()) {
    const language = mark.type.name === "foreign" ? String(mark.attrs.lang) : null;
    const lang = language === null ? null : languageAttribute(language);
    inner = element(MARK_TAGS[mark.type.name] ?? "hi", { "xml:lang": lang }, inner);
  }
  return inner;
}

const MARK_TAGS: Readonly<Record<string, string>> = {
  emphasis: "emph",
  foreign: "foreign",
  supplied: "supplied",
  unclear: "unclear",
};

/** Beginnings of pages, columns and lines have elements of their own. */
const BEGINNINGS: Readonly<Record<string, string>> = { page: "pb", folio: "pb", column: "cb", line: "lb" };

function atom(node: DocNode, block: DocNode, index: number): Markup {
  const { text = "", label = "", unit = "", n = "", reason = "" } = node.attrs as Record<string, string>;
  switch (node.type.name) {
    case "note":
      return element("note", { n: label === "" ? null : label }, text);
    case "gap":
      return gap(reason);
    default: {
      const tag = BEGINNINGS[unit] ?? "milestone";
      const named = tag === "milestone" ? { unit: encodedWord(unit) || "milestone" } : {};
      const leaf = unit === "folio" ? { type: "folio" } : {};
      const inWord = /\S$/u.test(wordsBefore(block, index)) && /^\S/u.test(wordsAfter(block, index));
      return element(tag, { ...named, n: n === "" ? null : n, ...leaf, break: tag === "lb" && inWord ? "no" : null });
    }
  }
}

const wordsBefore = (block: DocNode, index: number) => (index > 0 ? (block.child(index - 1).text ?? "") : "");
const wordsAfter = (block: DocNode, index: number) =>
  index + 1 < block.childCount ? (block.child(index + 1).text ?? "") : "";

/** The attribute takes words parted by single blanks; any other reason is told in a description. */
function gap(reason: string): Markup {
  if (reason === "") return element("gap");
  if (/^[^\p{C}\p{Z}]+( [^\p{C}\p{Z}]+)*$/u.test(reason)) return element("gap", { reason });
  return element("gap", {}, element("desc", {}, reason));
}
