/** server/publish/papers/day-version.ts - the version of the day: what is done otherwise than in the text, each with its reason.
 *  May import: schema types, shared/drill, siblings. */
import type { PlainBlock } from "../../../schema/paper.ts";
import { actWords } from "../../../shared/drill/act-words.ts";
import { stopped } from "../stopped.ts";
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
  const items = variant.deltas.map((delta) => {
    const what = (): string => {
      if (delta.is === "words") return stopped(delta.words);
      if (delta.is === "leave out") return `${titleOf(delta.element)} is left out.`.replace(/^./u, upper);
      const action = rows.find("actions", delta.action);
      const instead = actWords(delta.act, base.names);
      if (action === undefined) return stopped(instead);
      const at = action.ownerKind === "elements" ? `${titleOf(action.owner)}: ` : "";
      return stopped(`${at}${instead}, in place of ${actWords(action.act, base.names)}`);
    };
    return {
      words: [words(what()), soft(` ${stopped(delta.reason)}`)],
      of: [{ kind: "variants" as const, id: variant.id }],
    };
  });
  const says =
    items.length === 0 ? `The version “${variant.name}” changes nothing yet.` : `For the day: ${variant.name}`;
  if (items.length === 0) return [{ is: "paragraph", as: "small", words: [words(says)], of: [] }];
  return [heading(level, [words(says)]), { is: "list", ordered: false, items }];
}

const upper = (letter: string): string => letter.toUpperCase();
