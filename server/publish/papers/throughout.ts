/** server/publish/papers/throughout.ts - what stands throughout an exercise, and what was looked for and is never mentioned.
 *  May import: schema types, siblings. */
import type { Drill } from "../../../schema/drill.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { heading, lined, soft, words } from "./spans.ts";

type Standing = Drill["standing"][number];

/** Nothing when there is none. `level`: of the heading. */
export function throughoutBlocks(context: PaperContext, drill: Drill, level: number): PlainBlock[] {
  return standingBlocks(context, drill, { level, is: "instruction", head: "Throughout" });
}

/** The same without what stood with an earlier exercise of the paper already. */
export function throughoutOnce(context: PaperContext, { drill }: BuiltPart, level: number): PlainBlock[] {
  const before = context.parts.slice(
    0,
    context.parts.findIndex((part) => part.drill === drill),
  );
  const told = new Set(before.flatMap((part) => part.drill.standing.map(({ id, text }) => `${id} ${text}`)));
  const standing = drill.standing.filter(({ id, text }) => !told.has(`${id} ${text}`));
  return throughoutBlocks(context, { ...drill, standing }, level);
}

export function neverMentionedBlocks(context: PaperContext, drill: Drill, level: number): PlainBlock[] {
  return standingBlocks(context, drill, {
    level,
    is: "never mentioned",
    head: "Looked for and never mentioned",
  });
}

function standingBlocks(
  { places }: PaperContext,
  drill: Drill,
  { level, is, head }: { level: number; is: Standing["is"]; head: string },
): PlainBlock[] {
  const list = drill.standing.filter((standing) => standing.is === is);
  if (list.length === 0) return [];
  const items = list.map((standing) => {
    const { id, title, text, standing: warrant, citations } = standing;
    const where = places.line(citations);
    const line: Line = [
      lined(title, warrant),
      ...(text === "" || text === title ? [] : [words(`: ${text}`)]),
      ...(where.length === 0 ? [] : [soft(" · "), ...where]),
    ];
    return { words: line, of: [{ kind: "standings" as const, id }] };
  });
  return [heading(level, [words(head)]), { is: "list", ordered: false, items }];
}
