/** server/publish/still-docx.ts - a DOCX that holds no clock: the same document gives the same bytes.
 *  May import: docx, fflate. */
import { type Document, Packer } from "docx";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** The earliest moment a zip archive can name. It is written as local time, so that every time zone gives the same. */
const EARLIEST = new Date(1980, 0, 1);
const CORE = "docProps/core.xml";

/** When it was made and changed is left out of its properties: both are optional. Parts come by name. */
export async function stillDocx(document: Document): Promise<Uint8Array> {
  const parts = unzipSync(await Packer.toBuffer(document));
  const core = parts[CORE];
  if (core === undefined) throw new Error(`A DOCX has its properties in ${CORE}; the packer wrote none.`);
  parts[CORE] = strToU8(strFromU8(core).replace(/<dcterms:(created|modified)[^>]*>[^<]*<\/dcterms:\1>/g, ""));
  const byName = Object.entries(parts).sort(([a], [b]) => (a < b ? -1 : 1));
  return zipSync(Object.fromEntries(byName), { level: 6, mtime: EARLIEST });
}
