/** server/import/tei-header.ts - title, author, translator, language, CTS URN and citation scheme from a TEI header.
 *  May import: siblings. What is not found is empty; nothing is guessed. Keeps rule I8. */
import { languageTag } from "./tei-language.ts";
import { type CitationLevel, declaredLevels } from "./tei-levels.ts";
import { childNamed, visit, wordsOf, type XmlElement } from "./xml-reader.ts";

export interface TeiHeader {
  title: string;
  author: string;
  translator: string;
  language: string;
  urn: string;
  levels: CitationLevel[];
}

const NOTES = new Set(["note"]);
const CTS_URN = /^urn:cts:[^:\s]+:[^:\s]+(?=:|$)/;

/** A CTS URN of a text, without a passage and ending in a colon; empty when `written` is none. */
export const ctsUrnOf = (written: string): string => {
  const urn = CTS_URN.exec(written.trim())?.[0];
  return urn === undefined || urn.length > 299 ? "" : `${urn}:`;
};

/** The first CTS URN among the attributes of the text and its wrappers, else empty. */
export const urnOnText = (text: XmlElement): string => {
  let urn = "";
  const see = (element: XmlElement): boolean => {
    if (urn === "") urn = ctsUrnOf(element.attributes.n ?? "") || ctsUrnOf(element.attributes["xml:base"] ?? "");
    return urn === "" && /^(TEI|TEI\.2|text|group|body|div[0-7]?)$/.test(element.name);
  };
  if (see(text)) visit(text, see);
  return urn;
};

const urnInHeader = (header: XmlElement): string => {
  let urn = "";
  visit(header, (element) => {
    if (urn !== "") return false;
    if (element.name === "idno") urn = ctsUrnOf(wordsOf(element));
    else if (element.name === "cRefPattern" || element.name === "refsDecl" || element.name === "citeStructure") {
      for (const value of Object.values(element.attributes)) urn ||= ctsUrnOf(value);
    }
    return true;
  });
  return urn;
};

const all = (parent: XmlElement | undefined, name: string) =>
  (parent?.children ?? []).filter((child): child is XmlElement => typeof child !== "string" && child.name === name);

const isTranslator = (element: XmlElement): boolean => {
  const role = `${element.attributes.role ?? ""} ${wordsOf(childNamed(element, "resp") ?? { ...element, children: [] })}`;
  return /\btransl/i.test(role);
};

/** Reads a header; every field is empty where there is none. */
export const readHeader = (header: XmlElement | undefined): TeiHeader => {
  if (header === undefined) return { title: "", author: "", translator: "", language: "", urn: "", levels: [] };
  const statement = childNamed(childNamed(header, "fileDesc"), "titleStmt");
  const titles = all(statement, "title");
  const title = titles.find((candidate) => candidate.attributes.type === "main") ?? titles[0];
  const people = [...all(statement, "editor"), ...all(statement, "respStmt"), ...all(statement, "author")];
  const translators = people.filter(isTranslator).map((person) => {
    const named = childNamed(person, "name") ?? childNamed(person, "persName") ?? person;
    return wordsOf(named, NOTES);
  });
  // The first language is the text's own; the others are those of quotations and notes.
  const usage = childNamed(childNamed(header, "profileDesc"), "langUsage");
  const first = childNamed(usage, "language")?.attributes;
  return {
    title: title === undefined ? "" : wordsOf(title, NOTES),
    author: all(statement, "author")
      .filter((person) => !isTranslator(person))
      .map((person) => wordsOf(person, NOTES))
      .join("; "),
    translator: translators.filter((name) => name !== "").join("; "),
    language: languageTag(first?.ident ?? first?.["xml:id"] ?? first?.id ?? ""),
    urn: urnInHeader(header),
    levels: declaredLevels(header),
  };
};
