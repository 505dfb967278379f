/** Writes the hash of every kind of paper of two books to the terminal; run by same-everywhere.test.ts under several
 *  environments. */
import { createHash } from "node:crypto";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { canonicalJson } from "../../shared/drill/canonical-json.ts";
import { bigBook } from "../bench/big-book.ts";
import { printed } from "./paper-lines.ts";
import { askFor, NO_FILES, smallBook } from "./small-book.ts";

const small = smallBook();
const big = bigBook({ exercises: 2, steps: 3, cruxes: 2 });
const books = [
  { rows: small.rows, exercises: Object.values(small.exercises) },
  { rows: big.rows, exercises: big.exercises },
];
const hash = createHash("sha256");
for (const kind of ["ride sheet", "class handout", "caller's sheet", "working sheet", "appendix"] as const) {
  for (const style of ["notes and bibliography", "author and year"]) {
    for (const { rows, exercises } of books) {
      hash.update(canonicalJson(printed(paperOf(rows, askFor(kind, exercises, { style }), NO_FILES))));
    }
  }
}
console.log(hash.digest("hex"));
