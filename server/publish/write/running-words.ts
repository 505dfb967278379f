/** server/publish/write/running-words.ts - what stands at the head and the foot of each page.
 *  May import: schema types. */
import type { Paper } from "../../../schema/paper.ts";

const LONGEST_HEAD = 70;

/** One line at the head of a page; a long title is cut at a word. */
export function headWords(words: string): string {
  const plain = words.replace(/\s+/gu, " ").trim();
  if (plain.length <= LONGEST_HEAD) return plain;
  const cut = plain
    .slice(0, LONGEST_HEAD)

    .replace(/[\ud800-\udbff]$/, "");
  return `${cut.replace(/\s+\S*$/u, "") || cut} …`;
}

/** Which edition this is, or that it is none; and that the book is an invented one. */
export function footWords({ kind, edition, work }: Paper): string {
  const issue =
    edition !== null
      ? `Edition ${edition.number} of ${edition.issued} · check ${edition.check}`
      : kind === "correction slip"
        ? ""
        : "Not issued: a draft";
  return [issue, work.invented ? "an invented book, to try the program on" : ""].filter(Boolean).join(" · ");
}
