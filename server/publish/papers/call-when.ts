/** server/publish/papers/call-when.ts - when a step is called: the event or the station it waits for, or what the one before
 *  it comes to. May import: schema types, shared/drill, siblings. */
import type { DrillAction, DrillElement, DrillValue } from "../../../schema/drill.ts";
import type { Line } from "../../../schema/paper.ts";
import { plainWords } from "../act-pieces.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import type { PaperSigns } from "./paper-signs.ts";
import { lined, SILENT, soft, words } from "./spans.ts";

/** `before`: the step the same rider has done last; null at the beginning. `stations`: names of the ground. */
export function whenOf(
  element: DrillElement,
  before: DrillElement | null,
  signs: PaperSigns,
  stations: ReadonlySet<string>,
): Line {
  const cue = element.values.find(({ slot }) => slot === "cue");
  if (cue !== undefined && cue.standing !== "not applicable") return cueLine(cue, signs, stations);
  const from = firstFrom(element);
  if (before === null) return [soft("to begin"), ...(from === null ? [] : [soft(", from "), words(from)])];
  const end = endOf(before);
  if (end !== null) return [soft(end.lead), ...(end.at === "" ? [] : [words(end.at)])];
  if (from !== null) return [soft("from "), words(from)];
  return [soft(`after ${before.number}`)];
}

/** Names of the places of its ground. */
export function stationsOf({ book }: PaperContext, { rows }: BuiltPart): ReadonlySet<string> {
  const { ground } = rows.exercise;
  return new Set(book.all("stations").flatMap((station) => (station.ground === ground ? [station.name] : [])));
}

/** "at the gate" for a station, "when the first comes by" for whatever happens. */
function cueLine(cue: DrillValue, signs: PaperSigns, stations: ReadonlySet<string>): Line {
  const sign = cue.crux === null ? [] : signs.span(cue.crux);
  if (cue.standing === "not said") return [soft("when "), SILENT, ...sign];
  const text = plainWords(cue);
  const atStation = [...stations].some((name) => text === name || text.startsWith(`${name},`));
  return [
    soft(atStation ? "at " : "when "),
    cue.standing === "not settled" ? lined(text, cue.standing) : words(text),
    ...sign,
  ];
}

/** Where, or with what, the horse's last act of a step ends; null where that is not said or not settled. */
function endOf({ actions, is, onlyUnder }: DrillElement): { lead: string; at: string } | null {
  if (is !== "step" || onlyUnder.length > 0) return null;
  const rides = actions.filter(({ verb, inherited }) => verb === "ride" && !inherited);
  const last = rides.at(-1);
  if (last === undefined || last.onlyUnder.length > 0) return null;
  const figure = told(last, "figure");
  if (figure === "halt") {
    const at = rides.length > 1 ? told(rides.at(-2), "toward") : null;
    return at === null ? null : { lead: "halted at ", at };
  }
  const toward = told(last, "toward");
  // A line of a certain length goes toward a place and need not come to it.
  if (toward !== null && told(last, "size") !== null && figure !== "part circle") return null;
  if (toward !== null) return { lead: "at ", at: toward };
  return figure === null ? null : (CLOSING[figure] ?? null);
}

const CLOSING: { readonly [figure: string]: { lead: string; at: string } } = {
  circle: { lead: "when the circle is closed", at: "" },
  volte: { lead: "when the volte is closed", at: "" },
  "figure of eight": { lead: "when the figure of eight is closed", at: "" },
  serpentine: { lead: "at the end of the serpentine", at: "" },
  turn: { lead: "out of the turn", at: "" },
};

function firstFrom({ actions }: DrillElement): string | null {
  const ride = actions.find(
    ({ verb, inherited, onlyUnder }) => verb === "ride" && !inherited && onlyUnder.length === 0,
  );
  return told(ride, "from");
}

function told(action: DrillAction | undefined, slot: string): string | null {
  const value = action?.values.find((one) => one.slot === slot);
  const open = value === undefined || ["not said", "not settled", "not applicable"].includes(value.standing);
  return open ? null : value.text;
}
