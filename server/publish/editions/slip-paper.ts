/** server/publish/editions/slip-paper.ts - the correction slip: for what was printed read what holds now, and why.
 *  May import: schema types, shared/drill, shared/text, siblings. One page for whoever holds the older edition; it cites the numbers that
 *  edition showed. */
import {
  type Block,
  type Line,
  PAPER_FORMAT,
  PAPER_FORMAT_VERSION,
  type Paper,
  type Span,
} from "../../../schema/paper.ts";
import type { Slip } from "../../../schema/teaching.ts";
import { CAUTION } from "../../../shared/drill/caution.ts";
import { correctionOf } from "../../../shared/text/correction.ts";
import { dayWords } from "../papers/day-words.ts";

type Words = Extract<Span, { is: "words" }>;

export interface SlipOf {
  older: { number: number; title: string; issued: string; kind: string; check: string };
  /** Null where it is held against the work as it is now. */
  newer: { number: number; issued: string; check: string } | null;
  work: Paper["work"];
  size: Paper["size"];
  on: string;
  entries: Slip["entries"];
  renumbered: string;
}

/** A reason that several corrections share stands with the first of them. */
export function slipPaper({ older, newer, work, size, on, entries, renumbered }: SlipOf): Paper {
  const title = `Corrections to “${older.title}”`;
  const by =
    newer === null
      ? `the work as it stands on ${dayWords(on)}`
      : `edition ${newer.number} of ${dayWords(newer.issued)}, check code ${newer.check}`;
  const kind = `${/^[aeiou]/u.test(older.kind) ? "an" : "a"} ${older.kind}`;
  const blocks: Block[] = [
    { is: "heading", level: 1, anchor: null, words: [words(title)], of: [] },
    {
      is: "paragraph",
      as: "lead",
      words: [
        words(
          `${work.title}. For whoever holds edition ${older.number} of ${dayWords(older.issued)}, ${kind} with the check code ${older.check}. Corrected by ${by}.`,
        ),
      ],
      of: [],
    },
    {
      is: "table",
      as: "plain",
      caption: [],
      columns: [
        { name: "Where", share: 1 },
        { name: "Correction", share: 3 },
      ],
      rows: entries.map(({ element, shown, was, now, why }, index) => ({
        anchor: null,
        of: element === null ? [] : [{ kind: "elements", id: element }],
        element,
        shown: null,
        cells: [
          [[words(shown, "strong")]],
          [correctionLine(was, now), ...(why === "" || why === entries[index - 1]?.why ? [] : [[words(why, "soft")]])],
        ],
      })),
    },
  ];
  if (renumbered !== "") {
    blocks.push({ is: "paragraph", as: "body", words: [words(`Numbers: ${renumbered}`)], of: [] });
  }
  blocks.push({ is: "paragraph", as: "caution", words: [words(CAUTION)], of: [] });
  return {
    format: PAPER_FORMAT,
    formatVersion: PAPER_FORMAT_VERSION,
    kind: "correction slip",
    size,
    language: "en-GB",
    title,
    work,
    running: { left: work.title, right: `Corrections to edition ${older.number}` },
    edition: null,
    notesAt: "foot",
    blocks,
    notes: [],
  };
}

function correctionLine(was: string, now: string): Line {
  if (now.startsWith("now comes ")) return [said(was), words(` ${now}.`)];
  const correction = correctionOf(was, now);
  switch (correction.do) {
    case "add":
      return correction.after === ""
        ? [words("Add "), said(correction.now)]
        : [words("After "), said(correction.after), words(" add "), said(correction.now)];
    case "strike out":
      return [words("Strike out "), said(correction.was)];
    case "read":
      return [words("For "), said(correction.was), words(" read "), said(correction.now)];
  }
}

const words = (text: string, as: Words["as"] = null): Words => ({
  is: "words",
  text,
  as,
  language: null,
  standing: null,
  to: null,
});

/** What a paper says stands between quotation marks; marks within it become single ones. */
const said = (text: string): Words => words(`“${text.replace(/“/gu, "‘").replace(/”/gu, "’")}”`, "emphasis");
