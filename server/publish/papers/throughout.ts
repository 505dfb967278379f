/** server/publish/papers/throughout.ts - what stands throughout an exercise, and what was looked for and is never mentioned.
 *  May import: schema types, siblings. */
import type { Drill } from "../../../schema/drill.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import { placesLine } from "./citation-spans.ts";
import { heading, lined, words } from "./spans.ts";

type Standing = Drill["standing"][number];

/** `few`: the titles alone, without what each comes to in acts. Nothing when there is none. */
export function throughoutBlocks(drill: Drill, { few }: { few: boolean }): PlainBlock[] {
  return standingBlocks(drill, "instruction", "Throughout", few);
}

export function neverMentionedBlocks(drill: Drill): PlainBlock[] {
  return standingBlocks(drill, "never mentioned", "Looked for and never mentioned", false);
}

function standingBlocks(drill: Drill, is: Standing["is"], head: string, few: boolean): PlainBlock[] {
  const list = drill.standing.filter((standing) => standing.is === is);
  if (list.length === 0) return [];
  const items = list.map((standing) => ({
    words: standingLine(standing, few),
    of: [{ kind: "standings" as const, id: standing.id }],
  }));
  return [heading(3, [words(head)]), { is: "list", ordered: false, items }];
}

function standingLine({ title, text, standing, citations }: Standing, few: boolean): Line {
  const places = placesLine(citations);
  return [
    lined(title, standing),
    ...(few || text === "" || text === title ? [] : [words(`: ${text}`)]),
    ...(places.length === 0 ? [] : [words(" "), ...places]),
  ];
}
