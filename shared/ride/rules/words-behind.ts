/** shared/ride/rules/words-behind.ts - the words of the text behind a breach, and how they are quoted in a sentence.
 *  May import: schema types, types of shared/ride, siblings. Words are quoted as they stand; in a mirrored stage too. */
import type { Citation } from "../../../schema/drill.ts";
import type { Ridden } from "../ridden.ts";
import type { RiddenAct, RideContext } from "../ride-context.ts";
import type { Breach, RideRule } from "./rule.ts";

export interface WordsBehind {
  citations: Citation[];
  /** A sentence that begins with a capital and has its stop. */
  sentence: string;
}

/** Longest quotation inside a finding, in UTF-16 units; a longer one is cut at a word. */
const LONGEST = 110;

export function wordsBehind(ridden: Ridden, context: RideContext, rule: RideRule, breach: Breach): WordsBehind {
  if (rule.words === "none") return { citations: [], sentence: "" };
  const acts = distinct(breach.quote).flatMap((id) => actOf(context, breach.stage, id) ?? []);
  const each = acts.map((act) => ({ act, citations: citationsOf(act) }));
  const stage = ridden.stages[breach.stage];
  const whole = stage === undefined ? [] : (context.element(stage.source)?.citations ?? []);
  const told = each.flatMap((one) => one.citations);
  const citations = distinctCitations(told.length > 0 ? told : whole);
  const quoted =
    told.length > 0
      ? each.flatMap(({ citations: own }) => best(own, context) ?? []).slice(0, 2)
      : acts.length > 0
        ? []
        : [best(whole, context)].filter((one) => one !== null);
  return {
    citations,
    sentence: quoted.length > 0 ? saying(distinctCitations(quoted), rule.words) : unsaid(acts, whole),
  };
}

/** The act with this id in this stage or the nearest before it. */
function actOf(context: RideContext, stage: number, id: string): RiddenAct | null {
  for (let at = stage; at >= 0; at -= 1) {
    const act = context.act(at, id);
    if (act !== null) return act;
  }
  return null;
}

function citationsOf({ drill }: RiddenAct): Citation[] {
  return drill.citations.length > 0 ? drill.citations : drill.values.flatMap(({ citations }) => citations);
}

/** The first words of a translation that are still there, else of any text. */
function best(citations: readonly Citation[], { compiled }: RideContext): Citation | null {
  const translations = new Set(
    compiled.drill.layers.filter(({ is }) => is === "translation").map(({ title }) => title),
  );
  const there = citations.filter(({ quote, state }) => quote !== "" && state !== "lost");
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
