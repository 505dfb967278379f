/** server/publish/papers/questions-and-trials.ts - what is still asked about an exercise, and what happened when it was tried.
 *  May import: schema types, shared/drill, siblings. */
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { Trial } from "../../../schema/teaching.ts";
import { compareCodeUnits } from "../../../shared/rank.ts";
import { stopped } from "../stopped.ts";
import { dayWords, OUTCOMES } from "./day-words.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { quotesLine } from "./quote-lines.ts";
import { heading, joinedLines, paragraph, soft, strong, words } from "./spans.ts";

/** Open questions in the order of their words. Nothing when there is none. */
export function questionBlocks(context: PaperContext, { drill }: BuiltPart, level: number): PlainBlock[] {
  if (drill.questions.length === 0) return [];
  const items = drill.questions.map(({ id, text, to, asked, crux, citations }) => ({
    anchor: questionAnchor(id),
    head: [strong("?")],
    lines: [
      [words(text), ...(crux === null ? [] : context.signs.span(crux))],
      ...[
        [
          soft(
            [to === "" ? "" : `To ${to}`, asked === null ? "" : `asked ${dayWords(asked)}`]
              .filter((part) => part !== "")
              .join(", "),
          ),
        ],
        quotesLine(context.places, citations),
      ].filter((line) => line.some((span) => span.is !== "words" || span.text !== "")),
    ],
    of: [{ kind: "questions" as const, id }],
  }));
  return [heading(level, [words("Open questions")]), { is: "entries", as: "questions", items }];
}

export const questionAnchor = (id: string): string => `question-${id}`;

/** By day. Nothing when there is none. */
export function trialBlocks(context: PaperContext, part: BuiltPart, level: number): PlainBlock[] {
  const trials = context.book
    .all("trials")
    .filter(({ exercise }) => exercise === part.part.exercise)
    .sort((a, b) => compareCodeUnits(a.on, b.on) || compareCodeUnits(a.id, b.id));
  if (trials.length === 0) return [];
  const items = trials.map((trial) => ({
    words: trialLine(context, part, trial),
    of: [{ kind: "trials" as const, id: trial.id }],
  }));
  return [
    heading(level, [words("Trials")]),
    paragraph("small", [words("What happened when it was tried. A trial is evidence; it settles nothing by itself.")]),
    { is: "list", ordered: false, items },
  ];
}

function trialLine({ book, signs }: PaperContext, { drill }: BuiltPart, trial: Trial): Line {
  const numbers = new Map(drill.elements.map(({ id, number }) => [id, number]));
  const read = trial.choice.map(({ crux, reading }): Line => {
    const title = book.find("readings", reading)?.title ?? "a reading no longer there";
    return [words(`“${title}”`), ...signs.span(crux)];
  });
  const found = trial.findings.map(({ element, text }) => {
    const number = element === null ? null : (numbers.get(element) ?? null);
    return number === null ? stopped(text) : `Step ${number}: ${stopped(text)}`;
  });
  const kit = trial.kit === null ? undefined : book.find("kits", trial.kit)?.name;
  const head = [trial.who, trial.way, kit ?? "", OUTCOMES[trial.outcome]].filter((part) => part !== "").join(", ");
  return [
    strong(dayWords(trial.on)),
    words(`: ${head}.`),
    ...(read.length === 0 ? [] : [words(" Read as "), ...joinedLines(read, ", "), words(".")]),
    ...(found.length === 0 ? [] : [words(` ${found.join(" ")}`)]),
    ...(trial.note === "" ? [] : [soft(` ${stopped(trial.note)}`)]),
  ];
}
