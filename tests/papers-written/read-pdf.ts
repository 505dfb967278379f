/** tests/papers-written/read-pdf.ts - a PDF read back as a reader would have it: words, links, outline, tags, faces. */
import { getDocument, OPS, type PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";

export interface ReadPdf {
  /** The words of each page, as they stand in it. */
  pages: string[];
  title: string | null;
  author: string | null;
  language: string | null;
  /** Dates of making and changing; absent for a paper without a clock. */
  dates: unknown[];
  marked: boolean;
  outline: { title: string; page: number }[];
  links: { from: number; page: number | null; address: string | null }[];
  /** Words for who cannot see a figure. */
  alternatives: string[];
  /** Roles of the tagged structure, each with how often it stands. */
  roles: Record<string, number>;
  faces: { name: string; embedded: boolean }[];
  scripts: boolean;
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0, isEvalSupported: false });
  const pdf = await task.promise;
  const { info } = await pdf.getMetadata();
  const facts = info as Record<string, unknown>;
  const read: ReadPdf = {
    pages: [],
    title: (facts.Title as string) ?? null,
    author: (facts.Author as string) ?? null,
    language: (facts.Language as string) ?? null,
    dates: [facts.CreationDate, facts.ModDate].filter((date) => date !== undefined),
    marked: (await pdf.getMarkInfo())?.Marked === true,
    outline: [],
    links: [],
    alternatives: [],
    roles: {},
    faces: [],
    scripts: (await pdf.hasJSActions()) || (await pdf.getJSActions()) !== null,
  };
  await readOutline(pdf, (await pdf.getOutline()) ?? [], read);
  for (let number = 1; number <= pdf.numPages; number += 1) await readPage(pdf, number, read);
  await task.destroy();
  return read;
}

type OutlineItems = Awaited<ReturnType<PDFDocumentProxy["getOutline"]>>;

async function readOutline(pdf: PDFDocumentProxy, items: OutlineItems, read: ReadPdf): Promise<void> {
  for (const item of items) {
    read.outline.push({ title: item.title, page: (await pageOf(pdf, item.dest)) ?? 0 });
    await readOutline(pdf, item.items, read);
  }
}

/** From 1; null for a destination that is not there. */
async function pageOf(pdf: PDFDocumentProxy, dest: unknown): Promise<number | null> {
  const explicit = typeof dest === "string" ? await pdf.getDestination(dest) : dest;
  if (!Array.isArray(explicit)) return null;
  return (await pdf.getPageIndex(explicit[0])) + 1;
}

interface Tag {
  role?: string;
  alt?: string;
  children?: Tag[];
}

async function readPage(pdf: PDFDocumentProxy, number: number, read: ReadPdf): Promise<void> {
  const page = await pdf.getPage(number);
  const content = await page.getTextContent();
  read.pages.push(content.items.map((item) => ("str" in item ? item.str + (item.hasEOL ? "\n" : "") : "")).join(""));
  for (const { subtype, url, unsafeUrl, dest } of await page.getAnnotations()) {
    if (subtype !== "Link") continue;
    const address = url ?? unsafeUrl ?? null;
    read.links.push({ from: number, page: address === null ? await pageOf(pdf, dest) : null, address });
  }
  const walk = (tag: Tag): void => {
    if (tag.role !== undefined) read.roles[tag.role] = (read.roles[tag.role] ?? 0) + 1;
    if (tag.alt !== undefined) read.alternatives.push(tag.alt);
    for (const child of tag.children ?? []) walk(child);
  };
  walk(((await page.getStructTree()) ?? {}) as Tag);
  const operators = await page.getOperatorList();
  for (const [index, operator] of operators.fnArray.entries()) {
    if (operator !== OPS.setFont) continue;
    const face = page.commonObjs.get(operators.argsArray[index][0]) as { name: string; missingFile: boolean };
    const name = face.name.replace(/^[A-Z]{6}\+/, "");
    if (!read.faces.some((known) => known.name === name)) read.faces.push({ name, embedded: !face.missingFile });
  }
}

/** Words without spaces, breaks and signs that are not drawn: what two settings of the same words have alike. */
export function squashed(words: string): string {
  return words.normalize("NFC").replace(/[\s\p{Default_Ignorable_Code_Point}]/gu, "");
}
