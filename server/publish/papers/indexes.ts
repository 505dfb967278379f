/** server/publish/papers/indexes.ts - where each passage of the book is used on the paper, and where each word that is
 *  followed stands.
 *  May import: schema types, shared/cite, shared/drill, siblings. Both go by step, since a paper's pages are its writer's. */
import type { Citation, Drill } from "../../../schema/drill.ts";
import type { Line, PlainBlock, Span } from "../../../schema/paper.ts";
import type { Reference } from "../../../schema/reference.ts";
import { formatReference } from "../../../shared/cite/format-reference.ts";
import { citationsOf } from "../../../shared/drill/citations.ts";
import { citationsOfElement } from "../cited.ts";
import { sensesOf, termAnchor, termsInOrder } from "./glossary.ts";
import type { PaperContext } from "./paper-context.ts";
import { heading, joinedLines, reference, said, soft, words } from "./spans.ts";
import { stepAnchor } from "./step-rows.ts";

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
  const uses = new Map<string, { steps: Step[]; others: Map<string, Span> }>();
  const at = (citations: readonly Citation[], add: (place: { steps: Step[]; others: Map<string, Span> }) => void) => {
    for (const place of new Set(citations.map(({ references: [first] }) => keyOf(first)))) {
      const known = uses.get(place) ?? { steps: [], others: new Map<string, Span>() };
      uses.set(place, known);
      add(known);
    }
  };
  for (const { citations } of standing) {
    at(citations, ({ others }) => others.set("throughout", words("throughout")));
  }
  for (const element of elements) {
    const { id, number, is } = element;
    const to = `#${stepAnchor(id)}`;
    at(citationsOfElement(element), ({ steps, others }) => {
      if (number !== null) steps.push({ number, to });
      else if (!others.has(is)) others.set(is, { ...words(is), to });
    });
  }
  const name = exercise.label === "" ? exercise.title : exercise.label;
  const lead: Line[] = several ? [[soft(exercise.label === "" ? name : `exercise ${name}`)]] : [];
  return new Map(
    [...uses].map(([place, { steps, others }]) => [
      place,
      joinedLines([...lead, stepRuns(steps), ...[...others.values()].map((span) => [span])], ", "),
    ]),
  );
}

interface Step {
  number: number;
  to: string;
}

/** "steps 2–4, 6", each run leading to its first step. Empty for none. */
function stepRuns(steps: readonly Step[]): Line {
  const runs: { first: Step; last: Step }[] = [];
  for (const step of [...steps].sort((a, b) => a.number - b.number)) {
    const run = runs.at(-1);
    if (run !== undefined && step.number <= run.last.number + 1) run.last = step;
    else runs.push({ first: step, last: step });
  }
  if (runs.length === 0) return [];
  const told = runs.map(({ first, last }): Line => {
    const { number: to } = last;
    const text = to === first.number ? String(to) : `${first.number}${to === first.number + 1 ? ", " : "–"}${to}`;
    return [{ ...words(text), to: first.to }];
  });
  const one = steps.every(({ number }) => number === steps[0]?.number);
  return [words(one ? "step " : "steps "), ...joinedLines(told, ", ")];
}

/** Words that are followed, each with the places where it stands. */
export function termIndex(context: PaperContext): PlainBlock[] {
  const { book, places } = context;
  const items = termsInOrder(context).flatMap((term) => {
    const marked = [
      ...citationsOf(book, "terms", term.id),
      ...sensesOf(context, term.id).flatMap(({ id }) => citationsOf(book, "senses", id)),
    ];
    const where = places.line(marked);
    if (where.length === 0) return [];
    const head = [{ ...said(term.word, term.language), to: `#${termAnchor(term.id)}` }];
    return [{ anchor: null, head, lines: [where], of: [{ kind: "terms" as const, id: term.id }] }];
  });
  if (items.length === 0) return [];
  return [heading(2, [words("Index of terms")], { anchor: "terms" }), { is: "entries", as: "index", items }];
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
