/** server/publish/papers/call-words.ts - the steps as they are called out: what is called in one breath, what is told under it,
 *  when, and in small type what is open.
 *  May import: schema types, siblings. What the text does not say is not called as if it did; what hangs on a reading nobody has
 *  chosen is never an order. */
import type { DrillAction, DrillElement, DrillValue } from "../../../schema/drill.ts";
import type { Line } from "../../../schema/paper.ts";
import { actPieces, plainWords } from "../act-pieces.ts";
import { capital } from "../stopped.ts";
import { onlyUnderNumbers, valueSpans } from "./act-spans.ts";
import { actsToTell } from "./acts-to-tell.ts";
import { type CallWords, callWords } from "./call-phrase.ts";
import { whenOf } from "./call-when.ts";
import { HandsCalled } from "./hands-called.ts";
import { fallsAway, onFootOf } from "./on-foot.ts";
import { namesRole, otherPerson } from "./other-person.ts";
import type { BuiltPart } from "./paper-part.ts";
import type { PaperSigns } from "./paper-signs.ts";
import { joinedLines, lined, soft, words } from "./spans.ts";

export interface CalledStep {
  element: DrillElement;
  /** In big type; empty for what is no step. */
  call: Line;
  /** Under it, a line each. */
  acts: Line[];
  when: Line;
  /** What is not settled or not said, whose it is under which reading. */
  open: Line;
}

/** As many words as can be called in a breath; articles are not counted. */
export const BREATH = 12;

/** The steps on the paper, in order. `stations`: names of the places of the ground. */
export function calledSteps(part: BuiltPart, signs: PaperSigns, stations: ReadonlySet<string>): CalledStep[] {
  const { drill, whole } = part;
  const shown = new Set(drill.elements.map(({ id }) => id));
  const told = actsToTell(whole.elements);
  const hands = new HandsCalled(whole.elements);
  const onFoot = onFootOf(part);
  const done: DrillElement[] = [];
  let figure = "";
  return whole.elements.flatMap((element) => {
    const other = otherPerson(element, drill);
    const acts = gaitFirst(told.get(element.id) ?? []).flatMap((action): TimedCall[] => {
      const key = figureKey(action);
      const again = key !== "" && key === figure && element.is === "step";
      if (action.part === "horse" && action.verb === "ride") figure = key;
      if (changesNothing(action)) return [];
      const namesHand = other === null && hands.names(action);
      const called = callWords(action, { namesHand, again, inList: false });
      const inList = callWords(action, { namesHand, again: false, inList: true });
      const isHorse = action.part === "horse";
      const timing = timingOf(action);
      const falls = onFoot === null ? null : fallsAway(action, onFoot);
      const mountedOnly = falls === "gait" || falls === "all";
      return [
        { ...called, inList, isHorse, mountedOnly, timing: isHorse && timing.lead === "throughout:" ? NOW : timing },
      ];
    });
    if (element.is === "again" || element.is === "untreated") figure = "";
    const before = done.findLast(({ role }) => role === "" || element.role === "" || role === element.role) ?? null;
    if (element.number !== null) done.push(element);
    if (!shown.has(element.id)) return [];
    const above = done.at(-1)?.number ?? null;
    const laid = element.is === "step" ? stepCall(element, acts, signs, other) : wordsCall(element, signs, above);
    const when = element.number === null ? [] : whenOf(element, before, signs, stations);
    return [{ element, ...laid, when: joinedLines([when, ...laid.when], "; ") }];
  });
}

interface TimedCall extends CallWords {
  /** The same where there is more room. */
  inList: CallWords;
  timing: { before: boolean; lead: string; link: string };
  isHorse: boolean;
  /** It has no meaning on foot, where it is not called. */
  mountedOnly?: boolean;
  /** Two acts in one. */
  merged?: boolean;
}

interface Laid {
  call: Line;
  acts: Line[];
  when: Line[];
  open: Line;
}

function stepCall(element: DrillElement, acts: readonly TimedCall[], signs: PaperSigns, other: string | null): Laid {
  const { title, values, onlyUnder, role } = element;
  const settled = acts.filter(({ unsettled, mountedOnly }) => !unsettled && mountedOnly !== true);
  const mine = other === null ? settled : settled.filter(({ isHorse }) => isHorse);
  const now = merged(mine.filter(({ timing }) => timing.lead === ""));
  // What has to be done before the horse goes is called before it.
  const ordered = [
    ...now.filter(({ timing }) => timing.before),
    ...now.filter(({ timing, isHorse }) => !timing.before && isHorse),
    ...now.filter(({ timing, isHorse }) => !timing.before && !isHorse),
  ];
  const inOneBreath = joinedLines(goings(ordered, signs), "; ");
  const open = joinedLines(
    [
      ...values.filter(({ slot }) => slot === "threat").map((value) => valueSpans(value, signs)),
      ...openLines(acts, signs),
      ...othersLines(
        acts.filter(({ unsettled, mountedOnly }) => !unsettled && mountedOnly === true),
        "mounted only",
        signs,
      ),
      ...othersLines(other === null ? [] : settled.filter(({ isHorse }) => !isHorse), other, signs),
    ],
    " · ",
  );
  const when = [
    ...(onlyUnder.length === 0 ? [] : [onlyUnderNumbers(onlyUnder, signs)]),
    ...mine.flatMap((act) =>
      act.timing.lead === "" ? [] : [[soft(`${act.timing.lead} `), ...calledLine(act, signs)]],
    ),
  ];
  const isOpen =
    onlyUnder.length > 0 ||
    other !== null ||
    acts.some(({ unsettled, open: left }) => unsettled || left.some(({ standing }) => standing === "not settled"));
  const called = countedWords(inOneBreath) <= BREATH && inOneBreath.length > 0;
  const whose: Line = role === "" ? [] : [soft(`${capital(role)}: `)];
  const byName = title !== "" && (isOpen || !called);
  if (!byName && called) return { call: [...whose, ...begun(inOneBreath, role)], acts: [], when, open };
  const lines = goings(
    ordered.map((act) => (act.merged ? act : { ...act, ...act.inList })),
    signs,
  ).map((line) => begun(line, ""));
  const list = other === null ? lines : lines.map((line) => [soft("The rider: "), ...line]);
  if (title !== "") {
    // "The second stays by the bench" says whose it is.
    const says = namesRole(title, role);
    return { call: says ? [words(title)] : [...whose, ...begun([words(title)], role)], acts: list, when, open };
  }
  const [first = [], ...others] = list;
  return { call: [...whose, ...first], acts: others, when, open };
}

/** What is begun with, and what only says that things stay as they are, is not called. */
const changesNothing = ({ verb, values, onlyUnder }: DrillAction): boolean =>
  verb === "do nothing" ||
  (verb === "keep" && onlyUnder.length === 0 && values.every(({ slot, crux }) => slot !== "how" && crux === null));

/** The gait before the line it is ridden on, where there is one gait. */
function gaitFirst(actions: readonly DrillAction[]): readonly DrillAction[] {
  const [gait, another] = actions.filter(({ verb }) => verb === "go at");
  if (gait === undefined || another !== undefined) return actions;
  const at = actions.findIndex(({ verb }) => verb === "ride");
  if (at === -1 || at > actions.indexOf(gait)) return actions;
  const others = actions.filter((action) => action !== gait);
  return [...others.slice(0, at), gait, ...others.slice(at)];
}

/** What is no step: done again by its name, the rest without one; advice is a reminder and not an order. */
function wordsCall(
  { is, title, text: all, values, role, onlyUnder }: DrillElement,
  signs: PaperSigns,
  above: number | null,
): Laid {
  // Under the step it is about, advice need not name it.
  const text = is === "advice" ? all.replace(` (at step ${above})`, "") : all;
  const times = values.filter(({ slot }) => slot === "times").map((value) => valueSpans(value, signs));
  const only = onlyUnder.length === 0 ? [] : [onlyUnderNumbers(onlyUnder, signs)];
  const whose: Line = role === "" ? [] : [soft(`${capital(role)}: `)];
  if (is === "again") {
    const [call, ...acts] = [title, text].filter((one) => one !== "");
    return {
      call: [...whose, words(capital(call ?? ""))],
      acts: acts.map((one) => [words(capital(one))]),
      when: [...times, ...only],
      open: [],
    };
  }
  const lead = is === "advice" ? "Bear in mind: " : "";
  const line: Line = [
    ...whose,
    soft(`${lead}${lead === "" ? capital(text) : text.charAt(0).toLowerCase() + text.slice(1)}`),
  ];
  return { call: [], acts: [line], when: only, open: [] };
}

/** Raised or lowered into a hold is one thing to call: "raise the spear: upright". */
function merged(acts: readonly TimedCall[]): TimedCall[] {
  return acts.flatMap((act, index) => {
    const { verb } = act.action;
    const next = acts.slice(index + 1).find((one) => one.action.verb === "hold" && sameObject(one, act));
    if ((verb === "raise" || verb === "lower") && next !== undefined && act.open.length === 0) return [];
    const from = acts
      .slice(0, index)
      .findLast((prior) => ["raise", "lower"].includes(prior.action.verb) && sameObject(prior, act));
    if (verb !== "hold" || from === undefined || from.open.length > 0) return [act];
    const object = act.action.values.find(({ slot }) => slot === "object")?.text ?? "it";
    const hold = act.action.text.startsWith(`${object} `) ? act.action.text.slice(object.length + 1) : act.action.text;
    const [hand = ""] = /, with [^,]+$/u.exec(from.action.text) ?? [];
    const into = hold.endsWith(hand) ? hold : `${hold}${hand}`;
    const action = { ...act.action, text: `${from.action.verb} the ${object}: ${into}` };
    return [{ ...act, timing: from.timing, action, merged: true }];
  });
}

function sameObject(first: TimedCall, second: TimedCall): boolean {
  const of = ({ action }: TimedCall) => action.values.find(({ slot }) => slot === "object")?.value;
  return of(first) === of(second);
}

/** A line an act, and one for a gait with the line it is ridden on: "walk, straight to the stair", "halt". */
function goings(acts: readonly TimedCall[], signs: PaperSigns): Line[] {
  const lines: Line[] = [];
  for (const [index, act] of acts.entries()) {
    const isRidden = acts[index - 1]?.action.verb === "go at" && act.isHorse;
    const line = calledLine(act, signs);
    if (isRidden) lines.at(-1)?.push(words(", "), ...line);
    else lines.push(line);
  }
  return lines;
}

function calledLine({ action, timing, open }: Omit<TimedCall, "inList">, signs: PaperSigns): Line {
  const { pieces } = actPieces(action);
  // A figure whose side the text does not say is not called as if it did.
  const side = open.filter(({ slot, standing }) => slot === "turn" && standing === "not said");
  return [
    ...(timing.link === "" ? [] : [words(timing.link)]),
    ...pieces.flatMap(({ text, crux, standing }) => [
      standing === "not settled" ? lined(text, standing) : words(text),
      ...(crux === null ? [] : signs.span(crux)),
    ]),
    ...side.flatMap((value) => [words(", "), ...valueSpans(value, signs)]),
  ];
}

/** Acts nobody has settled, by the readings they hang on; then what is open of acts that are called. */
function openLines(acts: readonly TimedCall[], signs: PaperSigns): Line[] {
  const byReading = new Map<string, { condition: Line; lines: Line[] }>();
  for (const act of acts.filter(({ unsettled }) => unsettled)) {
    const { onlyUnder } = act.action;
    const key = JSON.stringify(onlyUnder);
    const group = byReading.get(key) ?? { condition: conditionOf(onlyUnder, signs), lines: [] };
    group.lines.push(openLine(act, signs));
    byReading.set(key, group);
  }
  const groups = [...byReading.values()].map(
    ({ condition, lines }): Line => [...condition, ...joinedLines(lines, "; ")],
  );
  const left = acts
    .filter(({ unsettled }) => !unsettled)
    .flatMap(({ action, open }) => {
      const values = open.filter(({ slot, standing }) => slot !== "turn" || standing !== "not said");
      if (values.length === 0) return [];
      return [
        [
          words(`${action.text}: `),
          ...joinedLines(
            values.map((value) => openValue(value, signs)),
            ", ",
          ),
        ],
      ];
    });
  return [...groups, ...left];
}

/** "a groom: plant the spear at the trough; let go of the spear". */
function othersLines(acts: readonly TimedCall[], other: string | null, signs: PaperSigns): Line[] {
  if (acts.length === 0) return [];
  return [
    [
      soft(`${other}: `),
      ...joinedLines(
        acts.map((act) => calledLine(act, signs)),
        "; ",
      ),
    ],
  ];
}

/** "†a 1 or 3: " */
function conditionOf(conditions: DrillElement["onlyUnder"], signs: PaperSigns): Line {
  const told = conditions.map(({ crux, readings }): Line => {
    const numbers = readings.flatMap((reading) => signs.readingNumber(reading) ?? []);
    return [...signs.span(crux), soft(` ${numbers.join(" or ")}`)];
  });
  return told.length === 0 ? [] : [...joinedLines(told, " and "), soft(": ")];
}

function openLine({ action, open, timing, mountedOnly }: TimedCall, signs: PaperSigns): Line {
  const at = timing.lead === "" ? (timing.before ? "first " : "") : `${timing.lead} `;
  const when = mountedOnly === true ? `mounted only: ${at}` : at;
  return [
    ...(when === "" ? [] : [soft(when)]),
    ...calledLine({ action, open: [], timing: { ...timing, link: "" }, unsettled: false, isHorse: false }, signs),
    ...open.flatMap((value) => [words(", "), ...openValue(value, signs)]),
  ];
}

/** "point forward or forward left†d": as it would be called. */
function openValue(value: DrillValue, signs: PaperSigns): Line {
  const lead = value.slot === "bearing" ? "point " : value.slot === "hand" ? "with " : null;
  if (lead === null || value.standing === "not said") return valueSpans(value, signs);
  const sign = value.crux === null ? [] : signs.span(value.crux);
  return [words(lead), lined(plainWords(value), value.standing), ...sign];
}

const NOW: TimedCall["timing"] = { before: false, lead: "", link: "" };

/** Before the step it is called first; at a part of the way, after it or throughout, it belongs to the when. */
function timingOf({ values }: DrillAction): TimedCall["timing"] {
  const timing = values.find(({ slot }) => slot === "timing");
  if (timing === undefined || ["not said", "not settled", "not applicable"].includes(timing.standing)) return NOW;
  const value = timing.value as { is?: string; over?: number; of?: number } | null;
  switch (value?.is) {
    case "before":
      return { ...NOW, before: true };
    case "at":
      return value.over === 0 ? NOW : { ...NOW, lead: `${timing.text}:` };
    case "after":
      return { ...NOW, lead: "at the end:" };
    case "with":
      return { ...NOW, link: "with it, " };
    case "after action":
      return { ...NOW, link: "then " };
    default:
      return { ...NOW, lead: `${timing.text}:` };
  }
}

/** The side and the middle of a figure that is ridden on and on: told once. */
function figureKey({ verb, values }: DrillAction): string {
  if (verb !== "ride") return "";
  const about = values.find(({ slot }) => slot === "about");
  if (about === undefined) return "";
  return ["figure", "turn", "about"].map((slot) => values.find((value) => value.slot === slot)?.text ?? "").join("\n");
}

/** How many words are called, without the articles. */
export function countedWords(line: Line): number {
  const text = line.map((span) => (span.is === "words" ? span.text : "")).join("");
  return text.split(/\s+/u).filter((word) => /[\p{L}\p{N}]/u.test(word) && !/^(the|an?)$/iu.test(word)).length;
}

function begun(line: Line, role: string): Line {
  const [first, ...others] = line;
  if (first?.is !== "words") return line;
  const text = role === "" ? capital(first.text) : first.text.charAt(0).toLowerCase() + first.text.slice(1);
  return [{ ...first, text }, ...others];
}
