/** server/import/xml-reader.ts - XML to a light tree with places: names without prefix, text runs joined.
 *  May import: saxes, schema types, siblings. Document types and entities outside the file are never fetched; an
 *  entity that cannot be resolved leaves nothing behind but its report (I1, I4). Depth and size are bounded (I5). */
import { SaxesParser } from "saxes";
import type { FilePlace } from "../../schema/imported.ts";
import type { DroppedList } from "./dropped-list.ts";
import { RefusedError, refuse } from "./refusals.ts";
import { XmlEntities } from "./xml-entities.ts";

export interface XmlElement {
  /** Local name, the prefix taken off. */
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  /** Elements, and runs of text as they stood (line ends are U+000A). Two strings never follow each other. */
  readonly children: (XmlElement | string)[];
  /** Of the `<`. Lines and columns count from 1. */
  readonly line: number;
  readonly column: number;
}

export const ELEMENT_LIMIT = 1_500_000;
export const DEPTH_LIMIT = 200;
const CHUNK_LENGTH = 1 << 16;
const NO_ATTRIBUTES: Readonly<Record<string, string>> = Object.freeze({});

export const placeOf = (element: XmlElement): FilePlace => ({ line: element.line, column: element.column });

const localName = (name: string) => {
  const colon = name.indexOf(":");
  return colon < 0 ? name : name.slice(colon + 1);
};

const saidAgainst = (message: string) => message.replace(/^\d+:\d+: /, "").replace(/\.$/, "");

/** Reads a whole document. Throws RefusedError for broken XML, entity bombs and documents past the limits. */
export const readXml = (text: string, name: string, dropped: DroppedList): XmlElement => {
  const parser = new SaxesParser({ xmlns: false });
  const entities = new XmlEntities();
  const open: XmlElement[] = [];
  let root: XmlElement | null = null;
  let elements = 0;
  // Where the last construct ended, which is where the next one begins.
  let line = 1;
  let column = 1;
  const moveOn = () => {
    line = parser.line;
    column = parser.column + 1;
  };

  const resolve = (entity: string): string => {
    const place = { line: parser.line, column: Math.max(1, parser.column - entity.length - 1) };
    const answer = entities.resolve(entity);
    if (answer.kind === "text") return answer.text;
    if (answer.kind === "bomb") throw new RefusedError(refuse.entityBomb(name, entity, answer.why, place));
    const why = {
      unknown: "The file does not say what it stands for, and definitions outside the file are never fetched.",
      external: "It stands for something outside the file, which is never fetched.",
      markup: "It stands for elements, not for words; only entities that stand for words are read.",
    }[answer.kind];
    dropped.add(`entity &${entity};`, why, place);
    return "";
  };
  // saxes asks this record for every name that is not a character reference.
  parser.ENTITIES = new Proxy<Record<string, string>>({}, { get: (_target, entity) => resolve(String(entity)) });

  parser.on("error", (error) => {
    const place = { line: parser.line, column: Math.max(1, parser.column) };
    throw new RefusedError(refuse.brokenXml(name, saidAgainst(error.message), place));
  });
  parser.on("doctype", (doctype) => {
    entities.declare(doctype);
    const system = /\b(?:SYSTEM|PUBLIC\s+(?:"[^"]*"|'[^']*'))\s+["']([^"']+)["']/.exec(doctype)?.[1];
    if (system !== undefined) {
      dropped.add(`document type ${system}`, "It lies outside the file, and nothing outside the file is fetched.", {
        line,
        column,
      });
    }
    moveOn();
  });
  const addText = (run: string) => {
    const parent = open.at(-1);
    if (parent === undefined || run === "") return;
    const last = parent.children.length - 1;
    const before = parent.children[last];
    if (typeof before === "string") parent.children[last] = before + run;
    else parent.children.push(run);
  };
  parser.on("text", (run) => {
    addText(run);
    // The `<` is already read.
    line = parser.line;
    column = Math.max(1, parser.column);
  });
  parser.on("cdata", (run) => {
    addText(run);
    moveOn();
  });
  parser.on("comment", (words) => {
    dropped.add("comment", "A comment of the file is not part of the text.", { line, column }, words);
    moveOn();
  });
  parser.on("processinginstruction", (instruction) => {
    dropped.add(`instruction <?${instruction.target}?>`, "It is meant for another program.", { line, column });
    moveOn();
  });
  parser.on("xmldecl", moveOn);
  parser.on("opentag", (tag) => {
    elements += 1;
    if (elements > ELEMENT_LIMIT) throw new RefusedError(refuse.tooManyElements(name, ELEMENT_LIMIT, { line, column }));
    if (open.length >= DEPTH_LIMIT) throw new RefusedError(refuse.nestedTooDeep(name, DEPTH_LIMIT, { line, column }));
    let bare = true;
    for (const _key in tag.attributes) {
      bare = false;
      break;
    }
    const element: XmlElement = {
      name: localName(tag.name),
      attributes: bare ? NO_ATTRIBUTES : tag.attributes,
      children: [],
      line,
      column,
    };
    open.at(-1)?.children.push(element);
    root ??= element;
    open.push(element);
    moveOn();
  });
  parser.on("closetag", () => {
    open.pop();
    moveOn();
  });

  for (let start = 0; start < text.length; start += CHUNK_LENGTH) {
    parser.write(text.slice(start, start + CHUNK_LENGTH));
  }
  parser.close();
  if (root === null) throw new RefusedError(refuse.brokenXml(name, "there is no element", { line: 1, column: 1 }));
  return root;
};

/** The first child of that name, or undefined. */
export const childNamed = (element: XmlElement | undefined, ...names: string[]): XmlElement | undefined =>
  element?.children.find((child): child is XmlElement => typeof child !== "string" && names.includes(child.name));

/** Calls `see` for every element inside, in document order; what lies in an element is passed over when it says false. */
export const visit = (element: XmlElement, see: (inner: XmlElement) => boolean): void => {
  for (const child of element.children) {
    if (typeof child !== "string" && see(child)) visit(child, see);
  }
};

/** All words inside, blanks collapsed and trimmed; `skip` names elements whose words are left out. */
export const wordsOf = (element: XmlElement, skip: ReadonlySet<string> = new Set()): string => {
  const runs: string[] = [];
  const gather = (inner: XmlElement) => {
    for (const child of inner.children) {
      if (typeof child === "string") runs.push(child);
      else if (!skip.has(child.name)) gather(child);
    }
  };
  gather(element);
  return runs
    .join("")
    .replace(/[ \t\r\n]+/g, " ")
    .replace(/^ | $/g, "");
};
