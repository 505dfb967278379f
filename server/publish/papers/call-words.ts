/** server/publish/papers/call-words.ts - one step as it is called out: a few words to ride by, when, and where.
 *  May import: schema types, siblings. What the text does not say is not called as if it did, and an open reading keeps its sign. */
import type { DrillAction, DrillElement, DrillValue } from "../../../schema/drill.ts";
import type { Line } from "../../../schema/paper.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { actPieces, plainWords } from "../act-pieces.ts";
import { capital } from "../stopped.ts";
import { onlyUnderNumbers, valueSpans } from "./act-spans.ts";
import { inFewWords, saidAgain } from "./few-words.ts";
import type { PaperSigns } from "./paper-signs.ts";
import { joinedLines, lined, SILENT, soft, words } from "./spans.ts";

/** What a call keeps of an act; sizes, places and whatever is told beside it are left out. */
const CALLED: ReadonlySet<string> = new Set(
  "figure turn amount manner laps gait pace object to on hold bearing level spin times movement until words end into".split(
    " ",
  ),
);
/** Acts in which nothing changes: there is nothing to call. */
const QUIET: ReadonlySet<string> = new Set(["keep", "do nothing"]);
/** Places of the ground, by how they are said. */
const PLACES: { readonly [slot: string]: string } = {
  about: "about",
  from: "from",
  toward: "toward",
  at: "at",
  across: "across",
};

export function callOf(element: DrillElement, signs: PaperSigns): Line {
  return [...(element.role === "" ? [] : [soft(`${element.role}: `)]), ...calledWords(element, signs)];
}

function calledWords(element: DrillElement, signs: PaperSigns): Line {
  if (element.is !== "step") return [...sentence(element), ...onlyUnderNumbers(element.onlyUnder, signs)];
  const called = calledActs(element);
  const lines = called.map((action) => actCall(action, signs));
  const title: Line = element.title === "" ? [] : [words(element.title)];
  const call = joinedLines(lines, "; ");
  // What nobody has settled cannot be called as an order: the step is called by its name.
  const unsettled = called.every(({ onlyUnder }) => onlyUnder.length > 0);
  return capitalised([
    ...(unsettled && title.length > 0 ? title : call),
    ...onlyUnderNumbers(element.onlyUnder, signs),
  ]);
}

/** What it waits for; else the step it follows. */
export function whenOf(element: DrillElement, before: DrillElement | null, signs: PaperSigns): Line {
  const cues = element.values
    .filter(({ slot }) => slot === "cue" || slot === "times")
    .map(
      (value): Line =>
        value.slot === "cue" ? [soft("when: "), ...withoutLabel(value, signs)] : valueSpans(value, signs),
    );
  const timed = calledActs(element).flatMap((action) => {
    const timing = inFewWords(action, element).values.find(({ slot }) => slot === "timing");
    if (timing === undefined || timing.standing === "not said" || timing.standing === "not applicable") return [];
    const act = actCall(action, signs).filter((span) => span.is === "words");
    return [[...act, words(": "), ...valueSpans(timing, signs)]];
  });
  const told = joinedLines([...cues, ...timed], "; ");
  if (told.length > 0 || element.number === null) return told;
  return [soft(before === null ? "to begin" : `after ${before.number}`)];
}

/** The acts that are done only under readings nobody has chosen, where the call is the name of the step instead. */
export function unsettledOf(element: DrillElement, signs: PaperSigns): Line {
  const called = calledActs(element);
  if (element.is !== "step" || element.title === "" || called.some(({ onlyUnder }) => onlyUnder.length === 0))
    return [];
  return joinedLines(
    called.map((action) => actCall(action, signs)),
    "; ",
  );
}

/** Where the horse goes, in the names of the ground. */
export function whereOf(element: DrillElement, signs: PaperSigns): Line {
  const lines = element.actions
    .filter(({ part, inherited }) => part === "horse" && !inherited)
    .flatMap(({ values }) => values)
    .flatMap((value) => {
      const as = PLACES[value.slot];
      if (as === undefined || value.standing === "not applicable") return [];
      return [[soft(`${as} `), ...withoutLabel(value, signs)]];
    });
  return joinedLines(lines, ", ");
}

function calledActs({ actions }: DrillElement): DrillAction[] {
  return actions.filter(({ inherited, verb }) => !inherited && !QUIET.has(verb));
}

/** The act in its shortest words: "circle left, once†a". Silent where the text does not say what the act needs. */
function actCall(action: DrillAction, signs: PaperSigns): Line {
  // Only what the horse does is shortened; of a hand, the weapon or the rider a word less may be another order.
  const isHorse = action.part === "horse";
  const short = saidAgain(action, (value) => {
    const ofGround = action.part === "horse" && value.slot in PLACES;
    const open = value.crux !== null && value.slot !== "timing" && !ofGround;
    if (!open && (!CALLED.has(value.slot) || ofGround)) return null;
    return value.slot === "object" ? withoutArticle(plainWords(value)) : value.text.replace(CLOCK, "");
  });
  const { pieces, besides } = actPieces(isHorse ? short : action);
  const told = besides.filter(
    ({ slot, standing, crux }) =>
      isHorse || (slot !== "timing" && (CALLED.has(slot) || crux !== null || standing === "not said")),
  );
  return [
    ...handOf(action),
    ...pieces.flatMap(({ text, standing, crux }) => [
      standing === "not settled" ? lined(text, standing) : words(text),
      ...(crux === null ? [] : signs.span(crux)),
    ]),
    ...told.flatMap((value) => [
      words(", "),
      ...(value.standing === "not said" ? valueSpans(value, signs) : withoutLabel(value, signs)),
    ]),
    ...onlyUnderNumbers(action.onlyUnder, signs),
  ];
}

/** "left: " before an act of one hand. */
const handOf = ({ part }: DrillAction): Line =>
  part === "left hand" || part === "right hand" ? [soft(`${part.split(" ")[0]}: `)] : [];

/** "forward left (10 o’clock)" is called as "forward left". */
const CLOCK = / \(\d+ o’clock\)/g;

function withoutLabel(value: DrillValue, signs: PaperSigns): Line {
  const sign = value.crux === null ? [] : signs.span(value.crux);
  if (value.standing === "not said") return [SILENT, ...sign];
  const text = plainWords(value);
  return [value.standing === "not settled" ? lined(text, value.standing) : words(text), ...sign];
}

/** For what is no step: its title and words. */
function sentence({ title, text }: DrillElement): Line {
  const pieces: Line[] = [title === "" ? [] : [words(title)], text === "" ? [] : [words(text)]];
  return capitalised(joinedLines(pieces, ": "));
}

function capitalised(line: Line): Line {
  const [first, ...others] = line;
  if (first?.is !== "words") return line;
  return [{ ...first, text: capital(first.text) }, ...others];
}
