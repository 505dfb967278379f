/** server/publish/write/docx/settled-archive.ts - the bytes of a letter without chance and clock: the maker of letters puts
 *  both in, and they are taken out again here.
 *  May import: fflate, siblings. Also puts in what the maker has no word for: table styles and the language of the whole. */
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from "fflate";
import { MORE_STYLES, OVERRULING_BORDERS } from "./table-styles.ts";

export interface ArchiveFacts {
  /** When the edition was issued, as a date; null where there is none, and then no date is written. */
  issued: string | null;
  /** BCP 47. */
  language: string;
}

/** Earliest time an archive can hold, in the clock of whoever makes it; the same everywhere. */
const ARCHIVE_TIME = new Date(1980, 0, 1);

export function settledArchive(bytes: Uint8Array, facts: ArchiveFacts): Uint8Array {
  const parts = unzipSync(bytes);
  const settled: Zippable = {};
  for (const [path, part] of Object.entries(parts)) {
    const words = /\.(xml|rels)$/.test(path);
    const made = words ? strToU8(settledPart(path, strFromU8(part), facts)) : part;
    settled[path] = [made, { mtime: ARCHIVE_TIME, level: words ? 6 : 0 }];
  }
  return zipSync(settled);
}

function settledPart(path: string, text: string, facts: ArchiveFacts): string {
  if (path === "docProps/core.xml") return settledProperties(text, facts);
  const named = withoutChance(text);
  if (path === "word/document.xml") return named.replace(OVERRULING_BORDERS, "$1");
  return path === "word/styles.xml" ? named.replace("</w:styles>", `${MORE_STYLES}</w:styles>`) : named;
}

/** Names of relationships that are drawn by lot get numbers in the order they stand, alike in a part and beside it. */
function withoutChance(text: string): string {
  const names = new Map<string, string>();
  return text.replace(/"rId([a-z0-9_-]{21})"/g, (_, drawn: string) => {
    const name = names.get(drawn) ?? `rIdLink${names.size + 1}`;
    names.set(drawn, name);
    return `"${name}"`;
  });
}

function settledProperties(text: string, { issued, language }: ArchiveFacts): string {
  const time = issued !== null && /^\d{4}-\d{2}-\d{2}/.test(issued) ? `${issued.slice(0, 10)}T00:00:00Z` : null;
  const dated =
    time === null
      ? text.replace(/<dcterms:(created|modified)[^>]*>[^<]*<\/dcterms:\1>/g, "")
      : text.replace(/(<dcterms:(?:created|modified)[^>]*>)[^<]*/g, `$1${time}`);
  const tag = language.replace(/[^A-Za-z0-9-]/g, "");
  return dated.replace("</cp:coreProperties>", `<dc:language>${tag}</dc:language></cp:coreProperties>`);
}
