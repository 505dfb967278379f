/** server/publish/papers/passage-index.ts - where each passage of the book is used on the paper.
 *  May import: schema types, shared/cite, siblings. It goes by step, since a paper's pages are its writer's. */
import type { Citation, Drill } from "../../../schema/drill.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { Reference } from "../../../schema/reference.ts";
import { formatReference } from "../../../shared/cite/format-reference.ts";
import { citationsOfElement } from "../cited.ts";
import type { PaperContext } from "./paper-context.ts";
import { heading, joinedLines, reference, words } from "./spans.ts";
import { newUses, type Uses, useOf, usesLine } from "./uses.ts";

/** Passages in the order of the book, those of one page of a witness together, each with the steps that cite it. Nothing
 *  where none is cited. */
export function passageIndex(context: PaperContext): PlainBlock[] {
  const used = new Map<string, Line[]>();
  for (const { drill } of context.parts) {
    for (const [place, line] of usesIn(drill, context.parts.length > 1)) {
      used.set(place, [...(used.get(place) ?? []), line]);
    }
  }
  const items: IndexItem[] = [];
  let open = "";
  for (const { id, references } of context.places.passages) {
    const lines = used.get(keyOf(references[0]));
    if (lines === undefined) continue;
    const { page, within } = headOf(references[0]);
    const of = { kind: "passages" as const, id };
    const uses = joinedLines(lines, "; ");
    const line = within === "" ? uses : [reference(`${within}: `), ...uses];
    const last = items.at(-1);
    if (last !== undefined && page !== "" && page === open) {
      last.lines.push(line);
      last.of.push(of);
    } else items.push({ anchor: null, head: [reference(page)], lines: [line], of: [of] });
    open = within === "" ? "" : page;
  }
  if (items.length === 0) return [];
  return [heading(2, [words("Index of passages")], { anchor: "passages" }), { is: "entries", as: "index", items }];
}

interface IndexItem {
  anchor: null;
  head: Line;
  lines: Line[];
  of: { kind: "passages"; id: string }[];
}

/** By the place cited, one line an exercise: "exercise 1, steps 2–4, 6, advice". */
function usesIn({ elements, exercise, standing }: Drill, several: boolean): Map<string, Line> {
  const uses = new Map<string, Uses>();
  const at = (citations: readonly Citation[], add: (place: Uses) => void) => {
    for (const place of new Set(citations.map(({ references: [first] }) => keyOf(first)))) {
      const known = uses.get(place) ?? newUses();
      uses.set(place, known);
      add(known);
    }
  };
  for (const { citations } of standing) {
    at(citations, ({ others }) => others.set("throughout", words("throughout")));
  }
  for (const element of elements) at(citationsOfElement(element), (known) => useOf(known, element));
  return new Map([...uses].map(([place, known]) => [place, usesLine(exercise, known, several)]));
}

/** "A f. 3r" and "ll. 1–9" of a place on one page of a witness; of any other the whole place, with nothing within it. */
function headOf(first: Reference | undefined): { page: string; within: string } {
  if (first === undefined) return { page: "", within: "" };
  const whole = formatReference(first);
  if (first.kind !== "folio" || first.from.line === undefined) return { page: whole, within: "" };
  const { line: _line, ...point } = first.from;
  const page = formatReference({ kind: "folio", witness: first.witness, from: point });
  return whole.startsWith(`${page}, `) ? { page, within: whole.slice(page.length + 2) } : { page: whole, within: "" };
}

/** Passages are told apart by their first reference, as they are cited. */
function keyOf(first: Reference | undefined): string {
  return first === undefined ? "" : formatReference(first);
}
