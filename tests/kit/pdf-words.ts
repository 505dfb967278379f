/** tests/kit/pdf-words.ts - the words of a PDF as a reader program finds them, without white space: lines break where the
 *  page ends, and a test should not care. */
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";

export async function pdfWords(bytes: Uint8Array): Promise<string> {
  const loading = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const document = await loading.promise;
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    pages.push(items.map((item) => ("str" in item ? item.str : "")).join(""));
  }
  await loading.destroy();
  return pages.join("").replace(/\s+/gu, "");
}
