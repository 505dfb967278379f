/** server/publish/papers/day-version.ts - the version of the day: what is done otherwise than in the text, each with its reason.
 *  May import: schema types, shared/drill, siblings. */
import type { Variant } from "../../../schema/exercise.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import { actWords } from "../../../shared/drill/act-words.ts";
import { stopped } from "../stopped.ts";
import { plainMeasures } from "./few-words.ts";
import { listed, numbersWords } from "./numbers-words.ts";
import type { BuiltPart } from "./paper-part.ts";
import { heading, soft, words } from "./spans.ts";

/** Nothing for the text's own version. */
export function dayBlocks({ part, rows, base, whole }: BuiltPart, level: number): PlainBlock[] {
  const variant = part.variant === null ? undefined : rows.find("variants", part.variant);
  if (variant === undefined) return [];
  const titleOf = (id: string): string => {
    const number = whole.elements.find((one) => one.id === id)?.number ?? null;
    if (number !== null) return `step ${number}`;
    const element = rows.find("elements", id);
    return element !== undefined && "title" in element && element.title !== "" ? `“${element.title}”` : "one step";
  };
  const items = sameTogether(variant.deltas.map((delta) => whatOf(delta, { rows, base, titleOf }))).map((line) => ({
    words: line,
    of: [{ kind: "variants" as const, id: variant.id }],
  }));
  const says =
    items.length === 0 ? `The version “${variant.name}” changes nothing yet.` : `For the day: ${variant.name}`;
  if (items.length === 0) return [{ is: "paragraph", as: "small", words: [words(says)], of: [] }];
  return [heading(level, [words(says)]), { is: "list", ordered: false, items }];
}

/** One change: where, what is done, in place of what, and why. */
interface Change {
  at: string[];
  what: string;
  instead: string[];
  reason: string;
}

interface Told extends Pick<BuiltPart, "rows" | "base"> {
  titleOf: (element: string) => string;
}

function whatOf(delta: Variant["deltas"][number], { rows, base, titleOf }: Told): Change {
  const { reason } = delta;
  if (delta.is === "words") return { at: [], what: delta.words, instead: [], reason };
  if (delta.is === "leave out") return { at: [], what: `${titleOf(delta.element)} is left out`, instead: [], reason };
  if (delta.is === "no opponent") return { at: [titleOf(delta.element)], what: "no opponent", instead: [], reason };
  const action = rows.find("actions", delta.action);
  const what = plainMeasures(actWords(delta.act, base.names));
  if (action === undefined) return { at: [], what, instead: [], reason };
  const at = action.ownerKind === "elements" ? [titleOf(action.owner)] : [];
  return { at, what, instead: [bareWords(actWords(action.act, base.names))], reason };
}

/** "charge" of "charge, of about 30.4 m, toward the stair"; an act told by what it is done to keeps all its words. */
function bareWords(act: string): string {
  const [first = act] = act.split(",");
  return /^(?:the|his|an?|it) ?[^ ]*$/u.test(first) ? act : first;
}

/** Changes that do the same for the same reason as one: "Steps 1–7: walk, in place of canter, full speed gallop or trot." */
function sameTogether(changes: readonly Change[]): Line[] {
  const together: Change[] = [];
  for (const { at, what, instead, reason } of changes) {
    const known = together.find((one) => one.what === what && one.reason === reason && one.at.length > 0);
    if (known === undefined || at.length === 0) {
      together.push({ at: [...at], what, instead: [...instead], reason });
      continue;
    }
    known.at.push(...at.filter((place) => !known.at.includes(place)));
    known.instead.push(...instead.filter((act) => !known.instead.includes(act)));
  }
  return together.map(({ at, what, instead, reason }): Line => {
    const where = at.length === 0 ? "" : `${placesWords(at)}: `;
    const before = instead.length === 0 ? "" : `, in place of ${listed(instead)}`;
    return [words(stopped(`${where}${what}${before}`)), soft(` ${stopped(reason)}`)];
  });
}

/** "steps 1–3" of "step 1", "step 2" and "step 3"; others by their names. */
function placesWords(at: readonly string[]): string {
  const numbers = at.flatMap((place) => (/^step \d+$/u.test(place) ? [Number(place.slice(5))] : []));
  const told = numbersWords(numbers.map((number) => ({ number, is: "step" as const })));
  return listed([...(told === "" ? [] : [told]), ...at.filter((place) => !/^step \d+$/u.test(place))]);
}
