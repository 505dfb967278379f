/** server/publish/papers/throughout.ts - what stands throughout an exercise, and what was looked for and is never mentioned.
 *  May import: schema types, siblings. */
import type { Drill } from "../../../schema/drill.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { PaperContext } from "./paper-context.ts";
import { heading, lined, soft, words } from "./spans.ts";

type Standing = Drill["standing"][number];

export interface StandingWords {
  /** The titles alone, without what each comes to in acts. */
  few: boolean;
  /** Of the heading. */
  level: number;
}

/** Nothing when there is none. */
export function throughoutBlocks(context: PaperContext, drill: Drill, told: StandingWords): PlainBlock[] {
  return standingBlocks(context, drill, { ...told, is: "instruction", head: "Throughout" });
}

export function neverMentionedBlocks(context: PaperContext, drill: Drill, level: number): PlainBlock[] {
  return standingBlocks(context, drill, {
    few: false,
    level,
    is: "never mentioned",
    head: "Looked for and never mentioned",
  });
}

function standingBlocks(
  { places }: PaperContext,
  drill: Drill,
  { few, level, is, head }: StandingWords & { is: Standing["is"]; head: string },
): PlainBlock[] {
  const list = drill.standing.filter((standing) => standing.is === is);
  if (list.length === 0) return [];
  const items = list.map((standing) => {
    const { id, title, text, standing: warrant, citations } = standing;
    const where = places.line(citations);
    const line: Line = [
      lined(title, warrant),
      ...(few || text === "" || text === title ? [] : [words(`: ${text}`)]),
      ...(where.length === 0 ? [] : [soft(" · "), ...where]),
    ];
    return { words: line, of: [{ kind: "standings" as const, id }] };
  });
  return [heading(level, [words(head)]), { is: "list", ordered: false, items }];
}
