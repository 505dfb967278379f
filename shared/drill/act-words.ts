/** shared/drill/act-words.ts - an act in short English: "circle left, about the well, once", "the spear at the balance".
 *  May import: schema types and constants, siblings in shared/drill. One phrase a verb, exhaustive by type. */
import { type Act, VERBS, type Verb } from "../../schema/act.ts";
import type { Slot } from "../../schema/slot.ts";
import { withArticle } from "../article.ts";
import { kindOfActSlot } from "./slot-labels.ts";
import { type Names, valueWords } from "./words.ts";

/** What a slot of the act is in words; null where there is nothing to say of it. */
export type Say = (slot: string) => string | null;

/** The act by its own slots alone. What a crux holds is said to be not settled; pass null to leave it out. */
export function actWords(act: Act, names: Names, inCrux: string | null = "(not settled)"): string {
  const slots = act.slots as Record<string, Slot<unknown> | undefined>;
  return phraseAct(act.verb, (slot) => {
    const held = slots[slot];
    if (held?.is === "in crux") return inCrux;
    const kind = kindOfActSlot(act.verb, slot);
    return held?.is === "said" && kind !== null ? valueWords(kind, held.value as never, names) : null;
  });
}

/** The act in words, its slots said by `say`. */
export function phraseAct(verb: Verb, say: Say): string {
  const text = PHRASES[verb](say);
  const how = "how" in VERBS[verb].slots && verb !== "gesture" && verb !== "sit" ? say("how") : null;
  return listed(text, how);
}

const PHRASES: Record<Verb, (say: Say) => string> = {
  ride: (say) =>
    listed(
      figure(say),
      after("of ", say("size")),
      say("figure") === "turn" ? null : say("manner"),
      after("about ", say("about")),
      after("from ", say("from")),
      after("toward ", say("toward")),
      say("laps"),
    ),
  "go at": (say) => listed(gait(say), say("lead")),
  take: (say) =>
    listed(`take ${object(say)}${before(" ", say("zone"))}`, by(say), say("palm"), after("from ", say("from"))),
  release: (say) => listed(`let go of ${object(say)}`, by(say)),
  keep: (say) => listed(`keep ${object(say)}${before(" ", say("zone"))}`, by(say)),
  pass: (say) =>
    listed(
      `pass ${object(say)}${before(" from ", say("from"))}${before(" to ", say("to"))}`,
      say("zone"),
      after("across ", say("across")),
    ),
  slide: (say) => listed(`slide along ${object(say)}${before(" until it is ", say("zone"))}`, by(say)),
  "change reins": (say) => `change the reins${before(" to ", say("to"))}`,
  "place rein hand": (say) => listed(`place the reins${before(" ", say("zone"))}`, by(say)),
  "lay reins": (say) => `lay the reins${before(" ", say("on"))}`,
  rest: (say) => listed(say("on") ?? "rest", say("hand"), after("palm ", say("palm"))),
  gesture: (say) => listed(`gesture${before(" toward ", say("toward"))}`, by(say), say("how")),
  hold: (say) => listed(`${object(say)}${before(": ", say("hold"))}`, by(say)),
  carry: (say) =>
    listed(
      `${object(say)}${before(": point ", say("bearing"))}`,
      say("level"),
      say("angle"),
      after("edge ", say("edge")),
      say("contact"),
      say("height"),
      by(say),
    ),
  spin: (say) => listed(`turn ${object(say)} about${before(", ", say("spin"))}`, say("times")),
  "cross the neck": (say) => `bring ${object(say)} over the horse’s neck${before(" to the ", say("to"))}`,
  raise: (say) => listed(`raise ${object(say)}`, ...placed(say)),
  lower: (say) => listed(`lower ${object(say)}`, ...placed(say)),
  plant: (say) => listed(`plant ${object(say)}`, say("end"), after("at ", say("at"))),
  "pick up": (say) => listed(`pick up ${object(say)}`, after("at ", say("at")), by(say)),
  draw: (say) => listed(`draw ${object(say)}`, after("from ", noun(say("from"))), say("distance"), by(say)),
  sheathe: (say) => listed(`sheathe ${object(say)}`, after("in ", noun(say("into"))), by(say)),
  hook: (say) => listed(`hook ${object(say)}${before(" to ", say("to"))}`, by(say)),
  unhook: (say) => listed(`unhook ${object(say)}${before(" from ", say("from"))}`, by(say)),
  thrust: (say) => listed(`thrust with ${object(say)}`, after("point ", say("bearing")), say("level"), by(say)),
  parry: (say) =>
    listed(`parry with ${object(say)}`, after("to the ", say("to")), after("point ", say("bearing")), by(say)),
  "throw off": (say) => listed(`throw off with ${object(say)}`, after("point ", say("bearing"))),
  show: (say) => `show ${object(say)}${before(" to ", say("toward"))}`,
  perform: (say) => listed(say("movement") ?? "a movement", say("object"), by(say), say("times")),
  sit: (say) => `sit${before(" ", say("how"))}`,
  look: (say) => `look${before(" toward ", say("toward"))}`,
  wait: (say) => `wait${before(" until ", say("until"))}`,
  "do nothing": (say) => listed("does nothing", say("hand")),
  other: (say) => say("words") ?? "something",
};

/** "circle left", "half turn right on the haunches", "along the wall, on the left rein", "a quarter of a circle right". */
function figure(say: Say): string {
  const name = say("figure") ?? "ride";
  const [amount, turn] = [say("amount"), say("turn")];
  if (name === "along the wall") return `${before("", amount, " ")}${listed(name, rein(turn))}`;
  const arc = name === "part circle" && amount !== null ? ARCS[amount] : undefined;
  if (arc !== undefined) return `${arc}${before(" ", turn)}`;
  return `${before("", amount, " ")}${name}${before(" ", turn)}${name === "turn" ? before(" ", say("manner")) : ""}`;
}

const ARCS: { readonly [amount: string]: string } = {
  quarter: "a quarter of a circle",
  half: "half a circle",
  "three quarters": "three quarters of a circle",
  full: "a full circle",
};

/** Along the wall the side turned to at the corners is the rein that is ridden. */
function rein(turn: string | null): string | null {
  return turn !== null && /^(left|right)( or (left|right))?$/.test(turn) ? `on the ${turn} rein` : turn;
}

/** "collected canter"; "increase the pace" where the gait stays. */
function gait(say: Say): string {
  const [name, pace] = [say("gait"), say("pace")];
  if (name !== null) return `${before("", pace, " ")}${name}`;
  return pace === "increased"
    ? "increase the pace"
    : pace === null
      ? "go on"
      : `${pace} pace`.replace(/speed pace$/, "speed");
}

function placed(say: Say): (string | null)[] {
  return [after("point ", say("bearing")), say("level"), say("height"), by(say)];
}

/** "the spear"; "it" where the text names nothing. */
function object(say: Say): string {
  return noun(say("object")) ?? "it";
}

/** With its article, where the name has none. */
function noun(name: string | null): string | null {
  return name === null ? null : withArticle(name);
}

function by(say: Say): string | null {
  const hand = say("hand");
  return hand === null ? null : `with ${hand}`;
}

function before(lead: string, text: string | null, tail = ""): string {
  return text === null ? "" : `${lead}${text}${tail}`;
}

function after(lead: string, text: string | null): string | null {
  return text === null ? null : `${lead}${text}`;
}

function listed(...pieces: (string | null)[]): string {
  return pieces.filter((piece) => piece !== null && piece !== "").join(", ");
}
