/** server/import/tei-exact.ts - texts that say exactly how their passages are cited and keep every blank, as this program
 *  writes them (server/publish/tei). May import: schema types, shared, siblings. Keeps rule I14 (server/import/RULES.md).
 *  Whatever is not of that form gives null, and the text is read as any other. */
import { docFromJson } from "../../schema/editor.ts";
import type { ImportedPassage } from "../../schema/imported.ts";
import type { Reference } from "../../schema/reference.ts";
import { decoded, referenceOfRange } from "../../shared/cite/cited-range.ts";
import { projectDoc } from "../../shared/text/projection.ts";
import type { DroppedList } from "./dropped-list.ts";
import type { BlockKind, TextMark } from "./passage-builder.ts";
import { WHY_TAG_ONLY } from "./tei-elements.ts";
import { childNamed, placeOf, wordsOf, type XmlElement } from "./xml-reader.ts";

/** References of each passage, by the xml:id of its entry. */
export type PassageList = ReadonlyMap<string, readonly Reference[]>;

/** The list of passages that stands beside the texts; null where there is none, or an entry cannot be read. */
export function passageListOf(root: XmlElement): PassageList | null {
  const lists = elementsIn(childNamed(root, "standOff"), "listBibl").filter(
    ({ attributes }) => attributes.type === "passages",
  );
  const entries = new Map<string, Reference[]>();
  for (const entry of lists.flatMap((list) => elementsIn(list, "bibl"))) {
    const ranges = elementsIn(entry, "citedRange").map(({ attributes: { unit = "", n = "", from = "", to = from } }) =>
      referenceOfRange({ unit, name: n, from, to }),
    );
    const references = ranges.filter((reference) => reference !== null);
    const id = entry.attributes["xml:id"];
    if (id === undefined || references.length === 0 || references.length < ranges.length) return null;
    entries.set(id, references);
  }
  return entries.size === 0 ? null : entries;
}

function elementsIn(parent: XmlElement | undefined, name: string): XmlElement[] {
  return (parent?.children ?? []).filter(
    (child): child is XmlElement => typeof child !== "string" && child.name === name,
  );
}

/** All passages of a body; null where something in it is not of the exact form. */
export function exactPassages(body: XmlElement, list: PassageList, dropped: DroppedList): ImportedPassage[] | null {
  const passages: ImportedPassage[] = [];
  for (const child of body.children) {
    if (typeof child === "string") {
      if (child.trim() !== "") return null;
      continue;
    }
    const isExercise = child.name === "div" && child.attributes.type === "exercise";
    const found = isExercise ? exercisePassages(child, list) : onePassage(child, list, undefined);
    if (found === null) return null;
    passages.push(...found);
  }
  const [first] = passages;
  if (first !== undefined) dropped.add("tag <anchor>", WHY_TAG_ONLY, first.place);
  return first === undefined ? null : passages;
}

function exercisePassages(division: XmlElement, list: PassageList): ImportedPassage[] | null {
  const head = childNamed(division, "head");
  const about = { label: division.attributes.n ?? "", title: head === undefined ? "" : wordsOf(head) };
  const passages: ImportedPassage[] = [];
  for (const child of division.children) {
    if (child === head || (typeof child === "string" && child.trim() === "")) continue;
    const found = typeof child === "string" ? null : onePassage(child, list, about);
    if (found === null) return null;
    passages.push(...found);
  }
  return passages;
}

type Division = ImportedPassage["division"];

function onePassage(element: XmlElement, list: PassageList, division: Division): ImportedPassage[] | null {
  const { type, corresp = "", "xml:space": space } = element.attributes;
  const references = list.get(corresp.replace(/^#/, ""));
  if (element.name !== "div" || type !== "passage" || space !== "preserve" || references === undefined) return null;
  const blocks: Block[] = [];
  for (const child of element.children) {
    if (typeof child === "string") {
      if (child.trim() !== "") return null;
      continue;
    }
    if (BEGINNINGS.has(child.name) && child.attributes.type === "reference") continue;
    const block = blockOf(child);
    if (block === null) return null;
    blocks.push(block);
  }
  if (blocks.length === 0) return null;
  const doc = { type: "doc", content: blocks };
  const text = projectDoc(docFromJson(doc));
  return [{ references: [...references], ...(division && { division }), doc, text, place: placeOf(element) }];
}

interface Inline {
  type: string;
  text?: string;
  attrs?: Record<string, string>;
  marks?: TextMark[];
}
interface Block {
  type: BlockKind;
  content?: Inline[];
}

function blockOf(element: XmlElement): Block | null {
  const type = blockKind(element);
  const content: Inline[] = [];
  if (type === null || !addInline(content, element, [])) return null;
  return content.length === 0 ? { type } : { type, content };
}

function blockKind({ name, attributes }: XmlElement): BlockKind | null {
  if (name === "head" || (name === "ab" && attributes.type === "heading")) return "heading";
  return name === "p" ? "paragraph" : name === "l" ? "verse" : null;
}

/** False where something stands inside that the exact form has not. */
function addInline(content: Inline[], parent: XmlElement, marks: readonly TextMark[]): boolean {
  return parent.children.every((child) => {
    if (typeof child === "string") {
      addText(content, child, marks);
      return true;
    }
    if (child.name === "anchor") return true;
    const mark = markOf(child);
    if (mark !== null) return addInline(content, child, [...marks, mark]);
    const atom = atomOf(child);
    if (atom !== null) content.push(marks.length === 0 ? atom : { ...atom, marks: [...marks] });
    return atom !== null;
  });
}

/** Runs that an anchor parted are one again. */
function addText(content: Inline[], text: string, marks: readonly TextMark[]): void {
  const last = content.at(-1);
  if (last?.text !== undefined && JSON.stringify(last.marks ?? []) === JSON.stringify(marks)) last.text += text;
  else content.push(marks.length === 0 ? { type: "text", text } : { type: "text", text, marks: [...marks] });
}

function markOf({ name, attributes }: XmlElement): TextMark | null {
  if (name === "foreign") return { type: "foreign", attrs: { lang: attributes["xml:lang"] ?? "" } };
  if (name === "emph") return { type: "emphasis" };
  return name === "supplied" || name === "unclear" ? { type: name } : null;
}

const BEGINNINGS = new Set(["milestone", "pb", "cb", "lb"]);
const UNITS: Readonly<Record<string, string>> = { pb: "page", cb: "column", lb: "line" };

function atomOf(element: XmlElement): Inline | null {
  const { name, attributes } = element;
  const { n = "", unit = "", type = "", reason } = attributes;
  if (name === "note") return { type: "note", attrs: { text: rawWords(element), label: n } };
  if (name === "gap") return { type: "gap", attrs: { reason: reason ?? rawWords(element) } };
  if (!BEGINNINGS.has(name)) return null;
  const of = name === "pb" && type === "folio" ? "folio" : (UNITS[name] ?? decoded(unit));
  return { type: "milestone", attrs: { unit: of, n } };
}

function rawWords({ children }: XmlElement): string {
  return children.map((child) => (typeof child === "string" ? child : rawWords(child))).join("");
}
