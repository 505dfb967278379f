/** server/publish/papers/ride-sheet.ts - one exercise to be read at arm's length, outdoors, with the reins in one hand.
 *  May import: schema types, siblings. Few words a step; a sign wherever a reading is open or was chosen, with one line on it. */
import type { Line, Paper, PaperAsk, PlainBlock } from "../../../schema/paper.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { cautionBlock, framed, lineKey, occasionOf, titleOf } from "./paper-frame.ts";
import type { BuiltPart } from "./paper-part.ts";
import { type PaperSigns, signPaper } from "./paper-signs.ts";
import { readingsInOneLine } from "./readings-in-one-line.ts";
import { heading, joinedLines, paragraph, soft, words } from "./spans.ts";
import { noSteps, stepRows, stepTable } from "./step-rows.ts";
import { throughoutBlocks } from "./throughout.ts";

const FEW = { few: true };

export function rideSheet(ask: PaperAsk, parts: readonly BuiltPart[]): Paper {
  const signs = signPaper(parts.map(({ drill }) => drill));
  const title = parts.map(({ drill }) => titleOf(drill.exercise)).join(" · ");
  return framed(ask, parts, {
    title,
    running: title,
    blocks: [
      ...occasionOf(ask),
      ...parts.flatMap((part) => partBlocks(part, signs)),
      ...readingsInOneLine(signs),
      lineKey(),
      cautionBlock(),
    ],
    notes: [],
  });
}

function partBlocks(part: BuiltPart, signs: PaperSigns): PlainBlock[] {
  const { drill } = part;
  const { exercise, elements, treated } = drill;
  return [
    heading(1, [words(titleOf(exercise))], { of: [{ kind: "exercises", id: exercise.id }] }),
    paragraph("small", headLine(part)),
    ...throughoutBlocks(drill, FEW),
    elements.length === 0 ? paragraph("open", noSteps()) : stepTable(drill, stepRows(elements, signs, FEW)),
    paragraph(treated.sentence.startsWith("The whole ") ? "small" : "open", [words(treated.sentence)]),
  ];
}

/** Where in the book, how it is ridden, what is carried, how much of it stands here. */
function headLine({ drill, cut }: BuiltPart): Line {
  const { exercise, way, variant, objects } = drill;
  const places = exercise.references.filter((place) => place !== "");
  const carried = objects.filter(({ is }) => is !== "reins").map(({ name }) => withoutArticle(name));
  const pieces: Line[] = [
    places.length === 0 ? [] : [{ ...words(places.join(" to "), "reference") }],
    [words(variant === null ? way : `${way}, in the version “${variant}”`)],
    carried.length === 0 ? [] : [words(`with ${carried.join(", ")}`)],
    cut === null ? [] : [words(`${cut} only`)],
  ];
  return joinedLines(pieces, " · ").map((span) => (span.is === "words" && span.as === null ? soft(span.text) : span));
}
