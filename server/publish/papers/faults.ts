/** server/publish/papers/faults.ts - "not like this": faults with their corrections, of steps, holds and movements.
 *  May import: schema types, shared/drill, siblings. */
import type { PlainBlock } from "../../../schema/paper.ts";
import type { Fault } from "../../../schema/teaching.ts";
import { compareRanked } from "../../../shared/rank.ts";
import { capital, stopped } from "../stopped.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { heading, soft, words } from "./spans.ts";

type Item = Extract<PlainBlock, { is: "list" }>["items"][number];

export function faultsOf({ book }: PaperContext, of: Fault["of"], target: string): Fault[] {
  return book
    .all("faults")
    .filter((fault) => fault.of === of && fault.target === target)
    .sort(compareRanked);
}

/** Of the steps on the paper, and of the movements they perform, in their order. Nothing when there is none. */
export function faultBlocks(context: PaperContext, { drill }: BuiltPart, level: number): PlainBlock[] {
  const ofSteps = drill.elements.flatMap(({ id, number, is }) =>
    faultsOf(context, "elements", id).map((fault) => faultItem(fault, number === null ? is : `step ${number}`)),
  );
  const ofMovements = performedIn(drill.elements).flatMap((movement) =>
    faultsOf(context, "movements", movement).map((fault) =>
      faultItem(fault, context.names("movements", movement) ?? "a movement"),
    ),
  );
  const items = [...ofSteps, ...ofMovements];
  return items.length === 0 ? [] : [heading(level, [words("Not like this")]), { is: "list", ordered: false, items }];
}

/** "Step 3: the point drops. Instead: keep it over the ears." */
export function faultItem({ id, fault, correction }: Fault, where: string): Item {
  return {
    words: [
      ...(where === "" ? [] : [soft(`${capital(where)}: `)]),
      words(stopped(fault)),
      ...(correction === "" ? [] : [words(" "), soft("Instead: "), words(stopped(correction))]),
    ],
    of: [{ kind: "faults", id }],
  };
}

function performedIn(elements: BuiltPart["drill"]["elements"]): string[] {
  const performed = elements.flatMap(({ actions }) =>
    actions.flatMap(({ values }) =>
      values.flatMap(({ slot, value }) => (slot === "movement" && typeof value === "string" ? [value] : [])),
    ),
  );
  return [...new Set(performed)];
}
