/** tests/bench/import.bench.ts - reading a text of 50 MB and one of ordinary size, and storing a book.
 *  May import: server/import. The text is invented and the same every time. */
import { readImport } from "../../server/import/read-import.ts";
import type { Report } from "./harness.ts";

const LINE =
  "Let him set out from the gate at an easy canter, the well upon his left, the spear low beside the right boot.";

function plainText(megabytes: number): Uint8Array {
  const paragraphs: string[] = [];
  for (let number = 1, size = 0; size < megabytes * 1_000_000; number += 1) {
    const paragraph = `${number}. ${LINE} ${LINE} ${LINE}`;
    paragraphs.push(paragraph);
    size += paragraph.length + 2;
  }
  return new TextEncoder().encode(paragraphs.join("\n\n"));
}

function tei(megabytes: number): Uint8Array {
  const sections: string[] = [];
  for (let number = 1, size = 0; size < megabytes * 1_000_000; number += 1) {
    const section = `<div type="textpart" subtype="section" n="${number}"><p>${LINE} <note>so in both</note>${LINE}</p></div>`;
    sections.push(section);
    size += section.length;
  }
  return new TextEncoder().encode(
    `<TEI xmlns="http://www.tei-c.org/ns/1.0"><teiHeader><fileDesc><titleStmt><title>Invented</title></titleStmt><publicationStmt><p/></publicationStmt><sourceDesc><p/></sourceDesc></fileDesc></teiHeader><text><body>${sections.join("")}</body></text></TEI>`,
  );
}

export default async function importBench(report: Report): Promise<void> {
  for (const [name, bytes, runs] of [
    ["read 1 MB of numbered paragraphs", plainText(1), 10],
    ["read 50 MB of numbered paragraphs", plainText(50), 3],
    ["read 1 MB of TEI", tei(1), 10],
    ["read 50 MB of TEI", tei(50), 3],
  ] as const) {
    const file = name.endsWith("TEI") ? "bench.xml" : "bench.txt";
    const read = readImport(bytes, { name: file });
    if (!read.ok || (read.file.texts[0]?.passages.length ?? 0) < 1000) throw new Error(`${name}: not read as expected`);
    await report.bench(name, { runs, warmUp: 1, note: `${read.file.texts[0]?.passages.length} passages` }, () =>
      readImport(bytes, { name: file }),
    );
  }
}
