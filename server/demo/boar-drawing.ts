/** server/demo/boar-drawing.ts - the one drawing in the invented book, and the parts of it that something rests on.
 *  May import: Node's own modules, siblings. Drawn for this book; it is kept beside this file as it is. */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { BookBuilder } from "./builder.ts";

const FILE = join(dirname(fileURLToPath(import.meta.url)), "boar-drawing.png");

/** A file that rows of the demo name by the hash of its bytes; it has to be kept before they are written. */
export interface DemoFile {
  mediaType: string;
  name: string;
  bytes: Uint8Array;
}

export function boarDrawing(book: BookBuilder, witness: string) {
  const file: DemoFile = { mediaType: "image/png", name: "boar-drawing.png", bytes: readFileSync(FILE) };
  const picture = book.rows.add("pictures", {
    work: book.work,
    title: "The boar passed",
    witness,
    where: "A f. 8v, foot",
    attachment: createHash("sha256").update(file.bytes).digest("hex"),
    width: 960,
    height: 600,
    note:
      "In the ink of the text. The only drawing in A; C has none. The boar seems the less surprised of the two, and the " +
      "rider looks ahead.",
  });
  const part = (label: string, from: [number, number], to: [number, number]) =>
    book.rows.add("regions", { picture, corners: [from, to], label });
  return {
    file,
    spear: part("the spear behind the rider, its point low", [290, 255], [612, 450]),
    face: part("the rider's face, turned to the stair", [555, 165], [665, 248]),
    straw: part("straw on the point, and none of the spear in the boar", [268, 375], [365, 465]),
  };
}
