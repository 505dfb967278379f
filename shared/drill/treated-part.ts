/** shared/drill/treated-part.ts - how much of an exercise the drill holds, said truthfully.
 *  May import: schema types, shared/cite, siblings in shared/drill. */
import type { Drill } from "../../schema/drill.ts";
import { formatReference } from "../cite/format-reference.ts";
import type { CompiledElement } from "./compile-element.ts";
import type { ExerciseRows } from "./exercise-rows.ts";

export function treatedPart(rows: ExerciseRows, elements: readonly CompiledElement[]): Drill["treated"] {
  const steps = elements.filter(({ drill }) => drill.number !== null).length;
  const untreatedParts = elements.filter(({ drill }) => drill.is === "untreated").length;
  const unmarked = unmarkedPassages(rows);
  const counted = steps === 1 ? "1 step" : `${steps} steps`;
  const head =
    untreatedParts === 0 && unmarked.length === 0
      ? `The whole exercise is treated: ${counted}.`
      : `Only part of the exercise is treated: ${counted} of the treated part.`;
  const parts = untreatedParts === 0 ? [] : [untreatedParts === 1 ? "1 part is" : `${untreatedParts} parts are`];
  const sentences = [
    head,
    ...parts.map((part) => `${part} noted as not yet treated.`),
    ...(unmarked.length === 0 ? [] : [`Nothing is marked yet in ${unmarked.join(", ")}.`]),
  ];
  return { steps, untreatedParts, sentence: sentences.join(" ") };
}

/** Passages that no mark touches and no untreated part names, as the work cites them. */
function unmarkedPassages(rows: ExerciseRows): string[] {
  const touched = new Set(
    rows.all("anchors").flatMap((anchor) => (anchor.is === "text" && anchor.fate !== "lost" ? [anchor.passage] : [])),
  );
  const order = rows.passages.map(({ id }) => id);
  for (const element of rows.elements) {
    if (element.is !== "untreated") continue;
    const [from, to] = [order.indexOf(element.fromPassage), order.indexOf(element.toPassage)];
    if (from !== -1) for (const id of order.slice(from, to + 1)) touched.add(id);
  }
  return rows.passages
    .filter(({ id }) => !touched.has(id))
    .map(({ references: [first] }) => (first ? formatReference(first) : "a passage without reference"));
}
