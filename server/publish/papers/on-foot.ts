/** server/publish/papers/on-foot.ts - a row of a sheet for somebody on foot: what of the text has no meaning without a horse.
 *  May import: schema types, shared/drill, siblings. The words stay those of the text; what falls away is said at the act itself. */
import type { DrillAction, DrillElement } from "../../../schema/drill.ts";
import type { Line } from "../../../schema/paper.ts";
import { speaksOfReins } from "../../../shared/drill/settle.ts";
import { fewWordsLine } from "./act-spans.ts";
import type { BuiltPart } from "./paper-part.ts";
import type { PaperSigns } from "./paper-signs.ts";
import { soft, words } from "./spans.ts";

export interface OnFoot {
  /** The version of the day speaks of the reins itself: then they are something on foot as well. */
  hasReins: boolean;
  reins: ReadonlySet<string>;
}

/** Null for a part that is ridden. */
export function onFootOf({ part, rows, whole }: BuiltPart): OnFoot | null {
  if (whole.way !== "on foot") return null;
  return {
    hasReins: speaksOfReins(rows, part.variant),
    reins: new Set(whole.objects.flatMap(({ id, is }) => (is === "reins" ? [id] : []))),
  };
}

/** The act in few words; `onFoot` null: mounted. A lead means nothing on foot and is not asked for. */
export function fewWordsFor(
  action: DrillAction,
  element: DrillElement,
  signs: PaperSigns,
  onFoot: OnFoot | null,
): Line {
  const falls = onFoot === null ? null : fallsAway(action, onFoot);
  if (falls === null) return fewWordsLine(action, element, signs);
  const values = action.values.filter(({ slot }) => slot !== "lead");
  const line = softened(fewWordsLine({ ...action, values }, element, signs));
  if (falls === "all") return [soft("mounted only: "), ...line];
  return [words(falls === "gait" ? "at your own pace" : acrossWords(action)), soft("; mounted: "), ...line];
}

const softened = (line: Line): Line => line.map((span) => (span.is === "words" ? words(span.text, "soft") : span));

/** Verbs that only somebody with reins can do. */
const OF_REINS: ReadonlySet<string> = new Set(["change reins", "lay reins", "place rein hand"]);
/** Gaits that somebody on foot has as well. */
const OF_ALL: ReadonlySet<unknown> = new Set(["walk", "halt"]);

/** The weapon goes to the other side of the rider all the same. */
function acrossWords({ values }: DrillAction): string {
  const to = values.find(({ slot, standing }) => slot === "to" && standing !== "not settled");
  return to === undefined || to.text === "" ? "across before you" : `across before you, to the ${to.text}`;
}

/** What of an act has no meaning on foot: the gait it is ridden at, the neck it is done over, or all of it; null for what is
 *  done as it is told. */
export function fallsAway(action: DrillAction, { hasReins, reins }: OnFoot): "gait" | "neck" | "all" | null {
  const { verb, values } = action;
  if (verb === "go at") {
    const gait = values.find(({ slot }) => slot === "gait");
    return gait !== undefined && OF_ALL.has(gait.value) ? null : "gait";
  }
  if (verb === "cross the neck") return "neck";
  if (hasReins) return null;
  const object = values.find(({ slot }) => slot === "object")?.value;
  const ofReins = OF_REINS.has(verb) || (typeof object === "string" && reins.has(object));
  return ofReins ? "all" : null;
}
