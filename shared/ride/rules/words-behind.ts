/** shared/ride/rules/words-behind.ts - the words of the text behind a breach, and how they are quoted in a sentence.
 *  May import: schema types, types of shared/ride, siblings. Words are quoted as they stand; in a mirrored stage too. */
import type { Citation } from "../../../schema/drill.ts";
import type { Ridden } from "../ridden.ts";
import type { RiddenAct, RideContext } from "../ride-context.ts";
import type { Breach, RideRule } from "./rule.ts";
import { isThere, joinedWords, tellingWords } from "./telling-words.ts";

export interface WordsBehind {
  citations: Citation[];
  /** A sentence that begins with a capital and has its stop. */
  sentence: string;
}

/** Longest quotation inside a finding, in UTF-16 units; a longer one is cut at a word. */
const LONGEST = 110;

/** The words of the text behind a breach, those that tell most first. */
export function wordsBehind(ridden: Ridden, context: RideContext, rule: RideRule, breach: Breach): WordsBehind {
  if (rule.words === "none") return { citations: [], sentence: "" };
  const found = distinct(breach.quote).flatMap((id) => foundAct(ridden, context, breach.stage, id) ?? []);
  const acts = telling(found, breach.about);
  const whole = wordsOfStage(ridden, context, breach.stage);
  const within = [...acts.flatMap(({ step }) => step), ...whole];
  const told = acts
    .map(({ act, step }) => tellingWords(act, rule.code, context, step))
    .filter((words) => words.length > 0);
  if (acts.length === 0) told.push(wordsOfThreat(ridden, context, breach) ?? [...whole]);
  const quoted = joinedWords(told.flatMap((words) => best(words, context) ?? []).slice(0, 2), within);
  const citations = told.flat().length > 0 ? [...quoted, ...told.flat()] : [...whole];
  return {
    citations: distinctCitations(citations),
    sentence:
      quoted.length > 0
        ? saying(quoted, rule.words)
        : unsaid(
            acts.map(({ act }) => act),
            whole,
          ),
  };
}

interface FoundAct {
  act: RiddenAct;
  /** The words of the step it is done in. */
  step: readonly Citation[];
}

/** The act with this id in this stage or the nearest before it. */
function foundAct(ridden: Ridden, context: RideContext, stage: number, id: string): FoundAct | null {
  for (let at = stage; at >= 0; at -= 1) {
    const act = context.act(at, id);
    if (act !== null) return { act, step: wordsOfStage(ridden, context, at) };
  }
  return null;
}

function wordsOfStage({ stages }: Ridden, context: RideContext, stage: number): readonly Citation[] {
  const source = stages[stage]?.source;
  return source === undefined ? [] : (context.element(source)?.citations ?? []);
}

/** The words of the step that bring in the one a breach is about; null where it is about nobody, or no words bring him in. */
function wordsOfThreat({ stages }: Ridden, context: RideContext, { stage, about }: Breach): Citation[] | null {
  if (context.rows.find("threats", about) === undefined) return null;
  const element = context.element(stages[stage]?.source ?? "");
  const words = element?.values.find(({ slot }) => slot === "threat")?.citations ?? [];
  return words.length > 0 ? words : null;
}

/** The acts that have to do with the hand or thing a breach is about, and how the horse goes; where none has, all of them. */
function telling(found: readonly FoundAct[], about: string): FoundAct[] {
  const concerned = found.filter(({ act }) => concerns(act, about));
  if (concerned.length === 0) return [...found];
  return [...concerned, ...found.filter(({ act }) => act.known.verb === "ride" && !concerns(act, about))];
}

function concerns({ known }: RiddenAct, about: string): boolean {
  if (about === "reins" && REIN_VERBS.has(known.verb)) return true;
  return Object.values(known.slots).some(
    (held) => held?.is === "known" && typeof held.value === "string" && about.startsWith(aboutOf(held.value)),
  );
}

const REIN_VERBS: ReadonlySet<string> = new Set(["change reins", "lay reins", "place rein hand"]);

const aboutOf = (value: string): string => (value === "left" || value === "right" ? `${value} hand` : value);

/** The first words of a translation that are still there, else of any text. */
function best(citations: readonly Citation[], { compiled }: RideContext): Citation | null {
  const translations = new Set(
    compiled.drill.layers.filter(({ is }) => is === "translation").map(({ title }) => title),
  );
  const there = citations.filter(isThere);
  return there.find(({ layer }) => translations.has(layer)) ?? there[0] ?? null;
}

function saying(quoted: readonly Citation[], says: RideRule["words"]): string {
  const [first, second] = quoted;
  if (first === undefined) return "";
  const head = `The passage${placeOf(first)} ${second === undefined ? says : "says"} “${shortened(first.quote)}”`;
  if (second === undefined) return `${head}.`;
  const there = second.reference === first.reference ? "" : `${placeOf(second)}`;
  return `${head} and${there} “${shortened(second.quote)}”.`;
}

const placeOf = ({ reference }: Citation): string => (reference === "" ? "" : ` (${reference})`);

function shortened(quote: string): string {
  const line = quote.replace(/\s+/g, " ").trim();
  if (line.length <= LONGEST) return line;
  const cut = line.slice(0, LONGEST);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(" "), 1))} …`;
}

/** What there is to say where no words can be quoted. */
function unsaid(acts: readonly RiddenAct[], whole: readonly Citation[]): string {
  const supplied = acts.length > 0 && acts.every(({ drill }) => drill.standing === "supplied");
  if (supplied) return "No words say so: it is supplied.";
  if (acts.some(({ drill }) => drill.inherited)) return "The step does not say so; it holds throughout.";
  return whole.length === 0 ? "No words are tied to it." : "";
}

function distinct(ids: readonly string[]): string[] {
  return [...new Set(ids)];
}

function distinctCitations(citations: readonly Citation[]): Citation[] {
  return [...new Map(citations.map((one) => [JSON.stringify(one), one])).values()];
}
