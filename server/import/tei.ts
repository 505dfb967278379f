/** server/import/tei.ts - a TEI P5 or P4 document becomes its texts: one <text>, several in a <group>, or a corpus.
 *  May import: schema types, shared/cite, siblings. Throws RefusedError when the document is not TEI or has no text. */
import type { ImportedFile, ImportedText } from "../../schema/imported.ts";
import { decoded } from "../../shared/cite/cited-range.ts";
import type { DroppedList } from "./dropped-list.ts";
import { RefusedError, refuse } from "./refusals.ts";
import { exactPassages, type PassageList, passageListOf } from "./tei-exact.ts";
import { readHeader, type TeiHeader, urnOnText } from "./tei-header.ts";
import { greekIsBetaCode, languageIn, languageTag, readRun } from "./tei-language.ts";
import { citationScheme } from "./tei-levels.ts";
import { TeiWalk } from "./tei-walk.ts";
import { childNamed, placeOf, readXml, wordsOf, type XmlElement } from "./xml-reader.ts";

const DOCUMENTS = /^(TEI|TEI\.2)$/;
const CORPORA = /^(teiCorpus|teiCorpus\.2)$/;
const ASIDE = new Set(["standOff", "facsimile", "sourceDoc", "fsdDecl", "xenoData"]);

interface FoundText {
  text: XmlElement;
  header: TeiHeader;
  /** The language that holds around the text. */
  language: string;
  inGroup: boolean;
  beta: boolean;
}

const textsIn = (text: XmlElement, from: Omit<FoundText, "text" | "inGroup">, inGroup = false): FoundText[] => {
  const group = childNamed(text, "group");
  if (group === undefined) return [{ ...from, text, inGroup }];
  const language = languageIn(text, from.language);
  return group.children.flatMap((child) => {
    if (typeof child === "string") return [];
    if (child.name === "text") return textsIn(child, { ...from, language }, true);
    // A group inside a group is read as if its texts stood here.
    return child.name === "group" ? textsIn({ ...child, children: [child] }, { ...from, language }, true) : [];
  });
};

/** All texts of a document or corpus; an inner header fills in from the one of the corpus. */
const documentTexts = (
  root: XmlElement,
  outer: TeiHeader | null,
  list: PassageList | null,
  dropped: DroppedList,
): FoundText[] => {
  const element = childNamed(root, "teiHeader");
  const own = readHeader(element);
  if (element !== undefined) {
    dropped.add(
      "element <teiHeader>",
      "Title, people, language, URN and citation scheme were taken from it; the rest is not kept.",
      placeOf(element),
    );
  }
  const header: TeiHeader =
    outer === null
      ? own
      : {
          ...own,
          author: own.author || outer.author,
          translator: own.translator || outer.translator,
          language: own.language || outer.language,
          levels: own.levels.length > 0 ? own.levels : outer.levels,
        };
  const language = languageIn(root, header.language);
  return root.children.flatMap((child) => {
    if (typeof child === "string") return [];
    if (DOCUMENTS.test(child.name) || CORPORA.test(child.name)) return documentTexts(child, header, list, dropped);
    if (ASIDE.has(child.name)) {
      dropped.add(
        `element <${child.name}>`,
        "It stands beside the text and is no part of its words.",
        placeOf(child),
        wordsOf(child),
      );
    }
    if (child.name !== "text") return [];
    const beta = list === null && greekIsBetaCode(child, language);
    if (beta)
      dropped.add(
        "Greek in Beta Code",
        "The Greek is written in ASCII letters; it was changed into Greek letters.",
        placeOf(child),
      );
    return textsIn(child, { header, language, beta });
  });
};

const SCHEME_NOTES = {
  found: "The header declares no scheme that the text follows; the numbers found in the text are used.",
  counted: "Nothing in the text is numbered, so divisions and paragraphs were counted.",
} as const;

const readText = (
  found: FoundText,
  number: number,
  name: string,
  list: PassageList | null,
  dropped: DroppedList,
): ImportedText | null => {
  const { text, header, inGroup, beta } = found;
  const language = languageIn(text, found.language);
  for (const aside of ["front", "back"]) {
    const part = childNamed(text, aside);
    if (part === undefined || wordsOf(part) === "") continue;
    dropped.add(
      `element <${aside}>`,
      "Only the body is cited as the text; bring this part in as a text of its own if it is needed.",
      placeOf(part),
      wordsOf(part),
    );
  }
  const body = childNamed(text, "body");
  if (body === undefined) {
    dropped.add("text without a body", "There are no words to read in it.", placeOf(text), wordsOf(text));
    return null;
  }
  const exact = list === null ? null : exactPassages(body, list, dropped);
  const scheme = exact === null ? citationScheme(header.levels, body) : null;
  if (scheme !== null && scheme.origin !== "declared")
    dropped.add(`references: ${scheme.origin}`, SCHEME_NOTES[scheme.origin], placeOf(body));
  const passages =
    exact ?? (scheme === null ? [] : new TeiWalk(name, body, scheme, beta, dropped).walk(body, language));
  if (passages.length === 0) {
    dropped.add("text without words", "There are no words to read in its body.", placeOf(text));
    return null;
  }
  const head = childNamed(text, "head");
  const headWords = head === undefined ? "" : readRun(wordsOf(head), languageIn(head, language), beta);
  const edition = body.children.find(
    (child): child is XmlElement =>
      typeof child !== "string" && /^(edition|translation)$/.test(child.attributes.type ?? ""),
  );
  const spoken = edition === undefined ? languageIn(body, language) : languageIn(edition, languageIn(body, language));
  return {
    number,
    title: headWords || (inGroup ? (text.attributes.n ?? "") : "") || header.title,
    author: header.author,
    translator: header.translator,
    language: languageTag(spoken),
    urn: urnOnText(text) || (inGroup ? "" : header.urn),
    levels: (scheme ?? header).levels.map((level) => decoded(level.name)),
    passages,
  };
};

/** Reads a TEI document. Throws RefusedError. */
export const readTei = (
  source: string,
  name: string,
  dropped: DroppedList,
): Omit<ImportedFile, "encoding" | "dropped"> => {
  const root = readXml(source, name, dropped);
  if (!DOCUMENTS.test(root.name) && !CORPORA.test(root.name))
    throw new RefusedError(refuse.notTei(name, root.name, placeOf(root)));
  const list = passageListOf(root);
  const texts: ImportedText[] = [];
  for (const found of documentTexts(root, null, list, dropped)) {
    const text = readText(found, texts.length + 1, name, list, dropped);
    if (text !== null) texts.push(text);
  }
  if (texts.length === 0) throw new RefusedError(refuse.teiWithoutText(name, placeOf(root)));
  return { format: root.name.endsWith(".2") ? "tei-p4" : "tei-p5", texts };
};
