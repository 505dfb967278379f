/** server/publish/papers/plan-supplies.ts - what the plan of an exercise takes for granted, step by step.
 *  May import: schema types, shared/ride, server/publish, siblings. A sentence that several steps share is said once, with all of
 *  them; what is said of the same steps stands in one line. */
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { Ridden } from "../../../shared/ride/ridden.ts";
import { capital, stopped } from "../stopped.ts";
import { numbersWords } from "./numbers-words.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { listed } from "./part-head.ts";
import { heading, paragraph, strong, words } from "./spans.ts";

/** Sentences that begin so tell of the text; any other is a rule of drawing, which stands with the first exercise it bears on. */
const OF_THE_TEXT = "The text does not say ";

/** Nothing where nothing was supplied. What is not settled is told under the plan itself. */
export function suppliedBlocks(context: PaperContext, built: BuiltPart, level: number): PlainBlock[] {
  const ridesIn = (part: BuiltPart): Ridden[] => part.rides().plan.map(({ ride }) => ride);
  const before = context.parts.slice(0, context.parts.indexOf(built));
  const told = new Set(before.flatMap(ridesIn).flatMap(({ supplied }) => supplied));
  const shown = new Set(built.drill.elements.map(({ id }) => id));
  const ofWhole = new Set<string>();
  const stepsOf = new Map<string, Set<number>>();
  for (const { stages, supplied } of ridesIn(built)) {
    const noted = new Set(stages.flatMap(({ number, notes }) => (number === null ? [] : notes)));
    for (const sentence of supplied) {
      if (!noted.has(sentence) && !sentence.startsWith("†") && !told.has(sentence)) ofWhole.add(sentence);
    }
    for (const { element, number, notes } of stages) {
      if (number === null || !shown.has(element)) continue;
      for (const sentence of notes) {
        if (told.has(sentence) && !sentence.startsWith(OF_THE_TEXT)) continue;
        const said = withoutAct(sentence);
        stepsOf.set(said, (stepsOf.get(said) ?? new Set()).add(number));
      }
    }
  }
  const items = [...[...ofWhole].map((sentence): Line => [words(stopped(sentence))]), ...stepLines(stepsOf)];
  if (items.length === 0) return [];
  return [
    heading(level, [words("What the plan supplies")]),
    paragraph("small", [words("A plan has to take something where the text does not say, or says it only roughly:")]),
    { is: "list", ordered: false, items: items.map((line) => ({ words: line, of: [] })) },
  ];
}

/** "Steps 3, 7: how large its half circle is; 6 m across is supplied.": one line for the same steps, by their first. */
function stepLines(stepsOf: ReadonlyMap<string, ReadonlySet<number>>): Line[] {
  const groups = new Map<string, { steps: number[]; sentences: string[] }>();
  for (const [sentence, found] of stepsOf) {
    const steps = [...found].sort((a, b) => a - b);
    const group = groups.get(steps.join(" ")) ?? { steps, sentences: [] };
    groups.set(steps.join(" "), group);
    group.sentences.push(sentence);
  }
  return [...groups.values()]
    .sort((a, b) => (a.steps[0] ?? 0) - (b.steps[0] ?? 0))
    .map(({ steps, sentences }) => {
      const where = numbersWords(steps.map((number) => ({ number, is: "step" })));
      const said = withSizes(sentences)
        .map((sentence) => stopped(sentence.startsWith(OF_THE_TEXT) ? sentence.slice(OF_THE_TEXT.length) : sentence))
        .join(" ");
      return [strong(capital(where)), words(`: ${said.charAt(0).toLowerCase()}${said.slice(1)}`)];
    });
}

const SIZE = /\d+(?:\.\d+)?/gu;

/** Sentences alike but for their sizes, as one with the sizes of all: two riders come "by a line of 11.01 and 16.22 m". */
function withSizes(sentences: readonly string[]): string[] {
  const alike = new Map<string, string[]>();
  for (const sentence of sentences) {
    const key = sentence.replace(SIZE, "#");
    alike.set(key, [...(alike.get(key) ?? []), sentence]);
  }
  return [...alike.values()].map((group) => {
    const sizes = group.map((sentence) => sentence.match(SIZE) ?? []);
    let at = -1;
    return (group[0] ?? "").replace(SIZE, () => {
      at += 1;
      return listed([...new Set(sizes.map((own) => own[at] ?? ""))]);
    });
  });
}

/** The ride tells of which act it speaks, in the act's own words; here the step tells it. */
function withoutAct(sentence: string): string {
  const told = /^\p{Lu}[^“”]*?: (?=“|(?:about )?\d)/u.exec(sentence)?.[0] ?? "";
  return sentence.slice(told.length);
}
