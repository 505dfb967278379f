/** server/publish/papers/as-ridden.ts - near the head of a paper: that what is on it cannot be ridden as it is read here, and
 *  what being done on foot changes; below the steps of the book part, with all that bears on it.
 *  May import: schema types, shared/ride, server/publish, siblings. Nothing is said where nothing is in the way. */
import type { Line, PaperAsk, PlainBlock } from "../../../schema/paper.ts";
import type { Finding } from "../../../shared/ride/ridden.ts";
import { stopped } from "../stopped.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { numberedReading } from "./paper-signs.ts";
import { listed } from "./part-head.ts";
import { heading, type Of, paragraph, words } from "./spans.ts";

/** Papers that are taken to the ground. */
export const RIDDEN_FROM: ReadonlySet<PaperAsk["kind"]> = new Set(["ride sheet", "class handout", "caller's sheet"]);

/** More are counted, not told: a sheet has to stay a sheet. On one that is ridden from the first tells that it is barred. */
const TOLD = 3;
const TOLD_TO_RIDERS = 1;

/** Both, in the order they are read in. */
export function asRiddenBlocks(context: PaperContext, built: BuiltPart): PlainBlock[] {
  const marksActs = RIDDEN_FROM.has(context.ask.kind);
  return [...onFootBlocks(built, marksActs), ...cannotBeRidden(context, built)];
}

/** Only for an exercise in which a horse does something. `marksActs`: the paper says it at each act that has no meaning on foot. */
export function onFootBlocks({ whole }: BuiltPart, marksActs = false): PlainBlock[] {
  const forHorse = whole.elements.some(({ actions }) => actions.some(({ part }) => part === "horse"));
  if (whole.way !== "on foot" || !forHorse) return [];
  const says = marksActs
    ? "Done on foot: you go yourself where the text has the horse go. What only somebody mounted can do is marked so where it stands."
    : "Done on foot: where the text says what the horse does, the rider goes himself; gaits, leads and reins are the text’s.";
  return [paragraph("open", [words(says)])];
}

/** Everything that is in the way, each with its passage and with what would lift it, for a paper that is studied. Nothing where
 *  nothing is. */
export function inTheWayBlocks(built: BuiltPart, level: number): PlainBlock[] {
  const bySentence = new Map<string, Finding[]>();
  for (const finding of barringIn(built)) {
    bySentence.set(finding.sentence, [...(bySentence.get(finding.sentence) ?? []), finding]);
  }
  if (bySentence.size === 0) return [];
  const items = [...bySentence].map(([sentence, findings]) => ({
    words: [words(stopped(sentence))],
    of: elementsOf(findings),
  }));
  return [heading(level, [words("What stands in the way")]), { is: "list", ordered: false, items }];
}

/** What the rules bar of the elements on the paper, in the words of its way. */
function barringIn({ drill, whole, rides }: BuiltPart): Finding[] {
  const shown = new Set(drill.elements.map(({ id }) => id));
  const onFoot = whole.way === "on foot";
  return rides()
    .barring()
    .filter(({ element, sentence }) => shown.has(element) && !(onFoot && aboutReins(sentence)))
    .map((finding) => (onFoot ? { ...finding, sentence: asOnFoot(finding.sentence) } : finding));
}

/** One paragraph for what is in the way however the open places are read, and one for what comes only from a reading that was
 *  drawn without being settled. */
function cannotBeRidden(context: PaperContext, built: BuiltPart): PlainBlock[] {
  const { whole, rides } = built;
  const { supplied } = rides();
  const onFoot = whole.way === "on foot";
  const barring = barringIn(built);
  const unsettled = ({ reading }: Finding): boolean =>
    reading !== null && supplied.get(reading.crux) === reading.reading;
  const open = barring.filter(unsettled);
  const isRiddenFrom = RIDDEN_FROM.has(context.ask.kind);
  const named = ({ crux, reading, readingTitle }: NonNullable<Finding["reading"]>): string =>
    (isRiddenFrom ? numberedReading(context.signs, crux, reading) : null) ?? `“${readingTitle}”`;
  const titles = new Set(open.flatMap(({ reading }) => (reading === null ? [] : [named(reading)])));
  const are = titles.size === 1 ? "is" : "are";
  const cannot = `it cannot be ${onFoot ? "done" : "ridden"} under these rules: `;
  const always = told(
    `As it is read here ${cannot}`,
    barring.filter((one) => !unsettled(one)),
    isRiddenFrom,
  );
  const drawnWith = `Drawn with ${listed([...titles])}, which ${are} not settled, `;
  return always.length > 0 && isRiddenFrom
    ? [...always, ...counted(drawnWith, open)]
    : [...always, ...told(`${drawnWith}${cannot}`, open, isRiddenFrom)];
}

/** On foot nobody has reins, so none can be in the wrong hand. */
const aboutReins = (sentence: string): boolean => /\breins?\b/u.test(sentence.split(/\. (?=\p{Lu})/u)[0] ?? "");

/** "You turn right while the point …, so you turn into your own point." */
function asOnFoot(sentence: string): string {
  return sentence
    .replace(/\bthe horse turns (left|right)/gu, "you turn $1")
    .replace("so it turns into its own point", "so you turn into your own point");
}

/** For a sheet that has told one thing already that is in the way. */
function counted(lead: string, findings: readonly Finding[]): PlainBlock[] {
  const count = new Set(findings.map(({ sentence }) => sentence)).size;
  if (count === 0) return [];
  const more = count === 1 ? "one more thing is" : `${count} more things are`;
  return [paragraph("open", [words(`${lead}${more} in the way.`)], elementsOf(findings))];
}

const elementsOf = (findings: readonly Finding[]): Of =>
  [...new Set(findings.map(({ element }) => element))].map((id) => ({ kind: "elements", id }));

/** Only what is in the way, a sentence each: on a sheet that is read from the saddle once, the passage and the other readings stand on the
 *  papers that are studied; on these below the steps. */
function told(lead: string, findings: readonly Finding[], few: boolean): PlainBlock[] {
  const sentences = [...new Set(findings.map(({ sentence }) => stopped(sentence.split(/\. (?=\p{Lu})/u)[0] ?? "")))];
  if (sentences.length === 0) return [];
  const most = few ? TOLD_TO_RIDERS : TOLD;
  const more = sentences.length - most;
  const line: Line = [
    words(lead + sentences.slice(0, most).join(" ")),
    ...(more > 0 ? [words(` And ${more} more.`)] : []),
  ];
  return [paragraph("open", line, elementsOf(findings))];
}
