/** server/publish/styles/read-csl.ts - a CSL file, style or locale, as a tree, with what is wrong in it and on which line.
 *  May import: saxes, shared/cite. Elements, required parts and calls of macros are looked at, after the CSL 1.0.2
 *  specification; what an attribute holds is left to the engine. */
import { SaxesParser } from "saxes";
import type { CslNode } from "../../../shared/cite/csl-engine.ts";

export interface ReadCsl {
  root: CslNode;
  /** The line an element begins on, from 1. */
  lineOf: (node: CslNode) => number;
}

/** A line from 1 and what is wrong there, as the end of a sentence. */
export interface CslProblem {
  line: number;
  says: string;
}

export type CslReading = { ok: true; read: ReadCsl } | { ok: false; problem: CslProblem };

const NAMESPACE = "http://purl.org/net/xbiblio/csl";

/** Reads the tree. Not ok where the file is no well-formed XML or not of CSL; `root`: what it should be. */
export function readCsl(xml: string, root: "style" | "locale"): CslReading {
  const lines = new Map<CslNode, number>();
  const above: CslNode[] = [];
  const found: { top: CslNode | null; problem: CslProblem | null } = { top: null, problem: null };
  const parser = new SaxesParser({ xmlns: true, position: true });
  const fail = (line: number, says: string): void => {
    found.problem ??= { line, says };
  };
  // The message of the parser begins with its own place.
  parser.on("error", ({ message }) =>
    fail(parser.line, `it is no well-formed XML (${message.replace(/^\d+:\d+: /, "")})`),
  );
  let begun = 1;
  parser.on("opentagstart", () => {
    begun = parser.line;
  });
  parser.on("opentag", (tag) => {
    if (tag.uri !== NAMESPACE && above.length === 0) {
      fail(begun, `its first element is not in the namespace ${NAMESPACE}`);
    }
    const attrs = Object.fromEntries(Object.values(tag.attributes).map(({ name, value }) => [name, value]));
    const node: CslNode = { name: tag.local, attrs, children: [] };
    lines.set(node, begun);
    const parent = above.at(-1);
    if (parent) parent.children.push(node);
    else found.top ??= node;
    above.push(node);
  });
  parser.on("closetag", () => {
    const node = above.pop();
    // The engine asks for the words of these even where there are none.
    if (node && node.children.length === 0 && HOLD_WORDS.has(node.name)) node.children.push("");
  });
  const addWords = (words: string): void => {
    const parent = above.at(-1);
    if (parent && (HOLD_WORDS.has(parent.name) || words.trim() !== "")) parent.children.push(words);
  };
  parser.on("text", addWords);
  parser.on("cdata", addWords);
  parser.write(xml.replace(/^\uFEFF/, "")).close();
  const { top, problem } = found;
  if (problem !== null) return { ok: false, problem };
  if (top === null || top.name !== root) {
    const came = top === null ? "nothing" : `<${top.name}>`;
    return { ok: false, problem: { line: 1, says: `it begins with ${came} where <${root}> was expected` } };
  }
  return { ok: true, read: { root: withoutMixed(top), lineOf: (node) => lines.get(node) ?? 1 } };
}

const HOLD_WORDS: ReadonlySet<string> = new Set(["term", "single", "multiple"]);

/** Of a term with a form for one and one for several, only these are kept: between them stands white space. */
function withoutMixed(node: CslNode): CslNode {
  const elements = node.children.filter((child) => typeof child !== "string");
  if (elements.length > 0) node.children = elements;
  for (const element of elements) withoutMixed(element);
  return node;
}

/** What a style needs to be used; null when nothing is wrong. */
export function problemWithStyle({ root, lineOf }: ReadCsl): CslProblem | null {
  const at = (node: CslNode, says: string): CslProblem => ({ line: lineOf(node), says });
  if (!/^1\./.test(root.attrs.version ?? "")) return at(root, "it is not written for CSL 1.0 (attribute version)");
  const info = childOf(root, "info");
  if (info === null || wordsOf(childOf(info, "title")) === "") return at(root, "it has no title (info, title)");
  const citation = childOf(root, "citation");
  if (citation === null) {
    const parent = elementsOf(info).find(({ attrs }) => attrs.rel === "independent-parent");
    const named = parent?.attrs.href;
    return named === undefined
      ? at(root, "it has no <citation>")
      : at(info, `it only names another style (${named}); put that one into the folder instead`);
  }
  if (root.attrs.class !== "note" && root.attrs.class !== "in-text") {
    return at(root, 'its class is neither "note" nor "in-text"');
  }
  if (childOf(citation, "layout") === null) return at(citation, "<citation> has no <layout>");
  const bibliography = childOf(root, "bibliography");
  if (bibliography !== null && childOf(bibliography, "layout") === null) {
    return at(bibliography, "<bibliography> has no <layout>");
  }
  return problemWithElements(root, at) ?? problemWithMacros(root, at);
}

type At = (node: CslNode, says: string) => CslProblem;

/** The title of a style, or "". */
export function styleTitle({ root }: ReadCsl): string {
  const info = childOf(root, "info");
  return wordsOf(info && childOf(info, "title"));
}

const ELEMENTS: ReadonlySet<string> = new Set(
  (
    "style info locale style-options date date-part terms term single multiple macro citation bibliography sort key layout " +
    "text number names name name-part et-al label substitute institution group choose if else-if else"
  ).split(" "),
);

function problemWithElements(node: CslNode, at: At): CslProblem | null {
  if (!ELEMENTS.has(node.name)) return at(node, `<${node.name}> is no element of CSL`);
  if (node.name === "info") return null;
  for (const child of elementsOf(node)) {
    const problem = problemWithElements(child, at);
    if (problem !== null) return problem;
  }
  return null;
}

/** Every macro that is called is there, and none calls itself. */
function problemWithMacros(root: CslNode, at: At): CslProblem | null {
  const macros = new Map(
    elementsOf(root).flatMap((node) => (node.name === "macro" ? [[node.attrs.name, node]] : [])) as [string, CslNode][],
  );
  const sound = new Set<string>();
  const look = (node: CslNode, through: readonly string[]): CslProblem | null => {
    const called = node.attrs.macro;
    if (called !== undefined && !sound.has(called)) {
      const macro = macros.get(called);
      if (macro === undefined) return at(node, `the macro “${called}” is called and not there`);
      if (through.includes(called)) return at(node, `the macro “${called}” calls itself`);
      const problem = look(macro, [...through, called]);
      if (problem !== null) return problem;
      sound.add(called);
    }
    for (const child of elementsOf(node)) {
      const problem = look(child, through);
      if (problem !== null) return problem;
    }
    return null;
  };
  for (const part of elementsOf(root)) {
    const problem = look(part, part.name === "macro" ? [part.attrs.name ?? ""] : []);
    if (problem !== null) return problem;
  }
  return null;
}

export function elementsOf(node: CslNode): CslNode[] {
  return node.children.filter((child) => typeof child !== "string");
}

function childOf(node: CslNode, name: string): CslNode | null {
  return elementsOf(node).find((child) => child.name === name) ?? null;
}

function wordsOf(node: CslNode | null): string {
  return (node?.children ?? [])
    .filter((child) => typeof child === "string")
    .join("")
    .trim();
}
