/** server/publish/papers/movement-lines.ts - the named movements that a paper's steps use, each told in one line: what is done in
 *  it, one thing after another, and where the book teaches it.
 *  May import: schema types, shared/drill, siblings. */
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { Movement } from "../../../schema/riding.ts";
import { citationsOf } from "../../../shared/drill/citations.ts";
import { compileAction, OWN } from "../../../shared/drill/compile-action.ts";
import { newBearing } from "../../../shared/drill/crux-bearing.ts";
import { compareRanked } from "../../../shared/rank.ts";
import { capital } from "../stopped.ts";
import { actLine } from "./act-spans.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { heading, joinedLines, type Of, soft, strong, words } from "./spans.ts";

/** By rank, each once. Nothing where none is used. `parts`: those whose movements are told here. */
export function movementBlocks(context: PaperContext, parts: readonly BuiltPart[], level: number): PlainBlock[] {
  const used = usedMovements(context, parts);
  if (used.length === 0) return [];
  const items = used.map(({ movement, part }) => ({
    words: movementLine(context, part, movement),
    of: [{ kind: "movements" as const, id: movement.id }] as Of,
  }));
  return [heading(level, [words("What is named")]), { is: "list", ordered: false, items }];
}

/** "The greeting: lower the spear …; wait until he has drawn one breath; … · A f. 3v, ll. 1–9". */
function movementLine(context: PaperContext, part: BuiltPart, movement: Movement): Line {
  const { name, note } = movement;
  const where = context.places.line(citationsOf(context.book, "movements", movement.id));
  const done = movementActs(context, part, movement);
  return joinedLines([[strong(`${capital(name)}: `), ...done], note === "" ? [] : [soft(note)], where], " · ");
}

/** What is done in it, one thing after another. */
export function movementActs({ book, signs }: PaperContext, { base }: BuiltPart, { id }: Movement): Line {
  const compiling = { ...base, element: null, bearing: newBearing() };
  const acts = book.actionsOf(id).flatMap((action) => {
    const compiled = compileAction(compiling, action, OWN);
    if (compiled === null) return [];
    // Which hand does it is for whoever performs it, and nothing the text leaves out.
    const values = compiled.drill.values.filter(({ slot, standing }) => slot !== "hand" || standing !== "not said");
    return [actLine({ ...compiled.drill, values }, signs)];
  });
  return acts.length === 0 ? [soft("what is done in it is not written down")] : joinedLines(acts, "; ");
}

interface UsedMovement {
  movement: Movement;
  /** The first part that uses it. */
  part: BuiltPart;
}

/** By rank, each once. */
export function usedMovements({ book }: PaperContext, parts: readonly BuiltPart[]): UsedMovement[] {
  const used = new Map<string, UsedMovement>();
  for (const part of parts) {
    const ids = part.drill.elements.flatMap((element) => {
      const row = book.find("elements", element.id);
      const again = row?.is === "again" && row.of.is === "movement" ? [row.of.movement] : [];
      const performed = element.actions.flatMap(({ values }) =>
        values.flatMap(({ slot, value }) => (slot === "movement" && typeof value === "string" ? [value] : [])),
      );
      return [...again, ...performed];
    });
    for (const id of ids) {
      const movement = book.find("movements", id);
      if (movement !== undefined && !used.has(id)) used.set(id, { movement, part });
    }
  }
  return [...used.values()].sort((a, b) => compareRanked(a.movement, b.movement));
}
