/** server/publish/papers/call-phrase.ts - an act in the words in which it is called out: "circle left about the well, once".
 *  May import: schema types and constants, shared/drill, server/publish. Sizes, and whatever is told beside what is done, are
 *  left out; so is a hand that nobody need name. */
import { VERB_NAMES, type Verb } from "../../../schema/act.ts";
import type { DrillAction, DrillValue } from "../../../schema/drill.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { phraseAct, type Say } from "../../../shared/drill/act-words.ts";
import { plainWords } from "../act-pieces.ts";

export interface CallWords {
  /** The act with only the values that are called. */
  action: DrillAction;
  /** Values left out that are silent or not settled: they are told in small type. */
  open: DrillValue[];
  /** Something without which it cannot be called is not settled: the whole act is told in small type. */
  unsettled: boolean;
}

/** What is known when an act is called. */
export interface Calling {
  /** Whether the hand has to be named: it is another one than before. */
  namesHand: boolean;
  /** Whether what the horse goes about was told with the figure before. */
  again: boolean;
  /** Under a call that is only a name there is room for what tells where. */
  inList: boolean;
}

export function callWords(action: DrillAction, calling: Calling): CallWords {
  const verb = VERB_NAMES.find((name) => name === action.verb);
  const isOpen = ({ standing }: DrillValue): boolean => standing === "not settled" || standing === "not said";
  const unsettled =
    action.onlyUnder.length > 0 ||
    action.values.some(
      ({ slot, standing }) => standing === "not settled" && (ESSENTIAL.has(slot) || (slot === "hand" && takes(action))),
    );
  if (verb === undefined) return { action, open: [], unsettled };
  // In small type an act is told with what is open of it.
  const isTold = (value: DrillValue): boolean =>
    value.standing !== "not applicable" && (unsettled ? value.standing !== "not said" : !isOpen(value));
  const settled = action.values.filter(isTold);
  const said = new Set<string>();
  const say: Say = (slot) => {
    const value = settled.find((one) => one.slot === slot);
    if (value === undefined) return null;
    said.add(slot);
    const text = plainWords(value).replace(CLOCK, "");
    return slot === "object" ? withoutArticle(text) : text;
  };
  const text = (CALLS[verb] ?? shortened)(say, calling, verb);
  const values = settled.flatMap((value) =>
    said.has(value.slot)
      ? [
          {
            ...value,
            text: value.slot === "object" ? withoutArticle(plainWords(value)) : value.text.replace(CLOCK, ""),
          },
        ]
      : [],
  );
  const open = action.values.filter((value) => isOpen(value) && !said.has(value.slot) && !UNCALLED.has(value.slot));
  return { action: { ...action, text, values }, open, unsettled };
}

/** Slots without which there is nothing to call. */
const ESSENTIAL: ReadonlySet<string> = new Set(
  "figure turn amount gait pace object hold to on movement words timing spin".split(" "),
);
/** Told on other papers: nobody can call what the text does not say of a lead. */
const UNCALLED: ReadonlySet<string> = new Set(["lead", "purpose", "threat"]);
const takes = ({ verb }: DrillAction): boolean => verb === "take" || verb === "release" || verb === "pick up";

/** "forward left (10 o’clock)" is called as "forward left". */
const CLOCK = / \(\d+ o’clock\)/g;
/** A manner in more words than these is for reading, not for calling. */
const FEW = 6;

type Phrase = (say: Say, calling: Calling, verb: Verb) => string;

const CALLS: { readonly [verb in Verb]?: Phrase } = {
  ride: (say, calling) => listed(figure(say, calling), say("laps")),
  "go at": (say, _calling, verb) => {
    const [gait, pace] = [say("gait"), say("pace")];
    return pace === "increased" && gait !== null ? `increase the ${gait}` : phraseAct(verb, say);
  },
  hold: (say, { namesHand }) => listed(`${object(say)} ${say("hold") ?? ""}`.trim(), byHand(say, namesHand)),
  carry: (say, { namesHand }) =>
    listed(
      joined(object(say), lead("point ", say("bearing")), say("bearing") === null ? say("level") : null),
      say("bearing") === null ? null : say("level"),
      say("bearing") === null && say("level") === null ? (say("contact") ?? few(say("how"))) : null,
      byHand(say, namesHand),
    ),
  raise: (say, { namesHand }) => listed(joined("raise the", object(say), say("level")), byHand(say, namesHand)),
  lower: (say, { namesHand }) =>
    listed(joined("lower the", object(say)), lead("point ", say("bearing")), say("level"), byHand(say, namesHand)),
  thrust: (say, { namesHand }) =>
    listed("thrust", lead("point ", say("bearing")), say("level"), few(say("how")), byHand(say, namesHand)),
  pass: (say) => joined("pass the", object(say), lead("to ", say("to"))),
  "change reins": (say) => joined("reins", lead("to ", say("to"))),
  "pick up": (say) => joined("pick up the", object(say), lead("at ", say("at")), lead("with ", say("hand"))),
  take: (say) => joined("take the", object(say), lead("from ", say("from")), lead("with ", say("hand"))),
  plant: (say) => joined("plant the", object(say), lead("at ", say("at"))),
  perform: (say, { namesHand }) => listed(joined(say("movement"), say("times")), byHand(say, namesHand)),
};

/** Every other verb by its own phrase, without what is told beside it. */
const shortened: Phrase = (say, { namesHand }, verb) =>
  phraseAct(verb, (slot) => {
    if (LEFT_OUT.has(slot)) return null;
    if (slot === "hand" && !namesHand) return null;
    return slot === "how" ? few(say(slot)) : say(slot);
  });
const LEFT_OUT: ReadonlySet<string> = new Set(["zone", "palm", "size", "angle", "height", "distance"]);

/** "circle left about the well", "along the wall, left rein, to the trough", "halt a spear's length before the stair". */
function figure(say: Say, { again, inList }: Calling): string {
  const name = say("figure") ?? "ride";
  const manner = (): string | null => (inList ? say("how") : few(say("how")));
  // A line of a certain length goes toward a place and need not come to it.
  const to = say("size") === null || name.includes("circle") ? "to " : "toward ";
  const where = joined(again ? null : lead("about ", say("about")), lead(to, say("toward")));
  // Where no place is named, the manner tells where: "into the corner".
  const from = where === "" ? lead("from ", say("from")) : null;
  const how = where === "" && from === null ? manner() : null;
  const at = joined(where, from, how);
  if (name === "halt") return joined("halt", manner() ?? lead("at ", say("toward") ?? say("from")));
  if (name === "straight on") return joined(at === "" ? "straight on" : "straight", at);
  if (name === "along the wall") return listed(joined(say("amount"), name), lead("", say("turn"), " rein"), at);
  const what =
    name === "turn" ? joined(say("amount"), name, say("turn"), say("manner")) : joined(arc(name, say), say("turn"));
  return joined(what, again ? "again" : null, at);
}

function arc(name: string, say: Say): string {
  const amount = say("amount");
  return amount === null ? name : `${amount} ${name === "part circle" ? "circle" : name}`;
}

const object = (say: Say): string => say("object") ?? "it";
const byHand = (say: Say, namesHand: boolean): string | null => (namesHand ? lead("with ", say("hand")) : null);

function few(words: string | null): string | null {
  return words === null || words.split(/\s+/u).length > FEW ? null : words;
}

function lead(before: string, words: string | null, after = ""): string | null {
  return words === null ? null : `${before}${words}${after}`;
}

const joined = (...pieces: (string | null)[]): string =>
  pieces.filter((piece) => piece !== null && piece !== "").join(" ");
const listed = (...pieces: (string | null)[]): string =>
  pieces.filter((piece) => piece !== null && piece !== "").join(", ");
