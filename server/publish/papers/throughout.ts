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

/** On a paper of several exercises: what stands throughout the work, once for all of them. */
export function throughoutWork(context: PaperContext, level: number): PlainBlock[] {
  const [first] = context.parts;
  if (first === undefined) return [];
  const standing = new Map(
    context.parts.flatMap((part) => ofWork(part).map((one) => [`${one.id} ${one.text}`, one] as const)),
  );
  return throughoutBlocks(context, { ...first.drill, standing: [...standing.values()] }, level);
}

/** What stands throughout this exercise alone. */
export function throughoutOwn(context: PaperContext, part: BuiltPart, level: number): PlainBlock[] {
  const shared = new Set(ofWork(part).map(({ id }) => id));
  const standing = part.drill.standing.filter(({ id }) => !shared.has(id));
  return throughoutBlocks(context, { ...part.drill, standing }, level);
}

function ofWork({ drill, rows }: BuiltPart): Standing[] {
  const shared = new Set(rows.standings.flatMap(({ id, exercise }) => (exercise === null ? [id] : [])));
  return drill.standing.filter(({ id }) => shared.has(id));
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
