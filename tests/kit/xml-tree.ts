/** tests/kit/xml-tree.ts - XML as a tree for tests, with nothing left out: names with their prefixes, every blank.
 *  Throws where the document is not well-formed. */
import { SaxesParser } from "saxes";

export interface XmlNode {
  name: string;
  attributes: Record<string, string>;
  children: (XmlNode | string)[];
}

export function xmlTree(text: string): XmlNode {
  const parser = new SaxesParser({ xmlns: false });
  const open: XmlNode[] = [];
  let root: XmlNode | null = null;
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const node: XmlNode = { name, attributes: attributes as Record<string, string>, children: [] };
    open.at(-1)?.children.push(node);
    root ??= node;
    open.push(node);
  });
  parser.on("text", (run) => open.at(-1)?.children.push(run));
  parser.on("closetag", () => {
    open.pop();
  });
  parser.write(text).close();
  if (root === null) throw new Error("The document has no element.");
  return root;
}

/** All elements, the root first, in the order they begin. */
export function everyNode(root: XmlNode): XmlNode[] {
  return [root, ...root.children.flatMap((child) => (typeof child === "string" ? [] : everyNode(child)))];
}

export function named(root: XmlNode, name: string, attributes: Record<string, string> = {}): XmlNode[] {
  const wanted = Object.entries(attributes);
  return everyNode(root).filter(
    (node) => node.name === name && wanted.every(([key, value]) => node.attributes[key] === value),
  );
}

export function wordsIn(node: XmlNode): string {
  return node.children.map((child) => (typeof child === "string" ? child : wordsIn(child))).join("");
}
