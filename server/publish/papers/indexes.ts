/** server/publish/papers/indexes.ts - where each passage of the book is used on the paper, and where each word that is
 *  followed stands.
 *  May import: schema types, shared/cite, shared/drill, siblings. Both go by step, since a paper's pages are its writer's. */
import type { Citation, Drill } from "../../../schema/drill.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { Passage } from "../../../schema/work.ts";
import { formatReference } from "../../../shared/cite/format-reference.ts";
import { citationsOf } from "../../../shared/drill/citations.ts";
import { citationsOfElement } from "../cited.ts";
import { sensesOf, termAnchor, termsInOrder } from "./glossary.ts";
import type { PaperContext } from "./paper-context.ts";
import { heading, joinedLines, reference, said, soft, words } from "./spans.ts";
import { stepAnchor } from "./step-rows.ts";

/** Passages in the order of the book, each with the steps that cite it. Nothing where none is cited. */
export function passageIndex(context: PaperContext): PlainBlock[] {
  const used = new Map<string, Line[]>();
  for (const { drill } of context.parts) {
    for (const [place, lines] of usesIn(drill, context.parts.length > 1)) {
      used.set(place, [...(used.get(place) ?? []), joinedLines(lines, ", ")]);
    }
  }
  const items = context.places.passages.flatMap((passage) => {
    const lines = used.get(keyOf(passage.references[0]));
    if (lines === undefined) return [];
    return [{ anchor: null, head: headOf(passage), lines, of: [{ kind: "passages" as const, id: passage.id }] }];
  });
  if (items.length === 0) return [];
  return [heading(2, [words("Index of passages")], { anchor: "passages" }), { is: "entries", as: "index", items }];
}

/** By the place cited, one line an exercise: "1: 2, 3, 5". Advice and parts not treated are told by name. */
function usesIn({ elements, exercise, standing }: Drill, several: boolean): Map<string, Line[]> {
  const uses = new Map<string, Map<string, Line>>();
  const name = several ? (exercise.label === "" ? exercise.title : exercise.label) : "";
  const add = (citations: readonly Citation[], text: string, to: string | null): void => {
    for (const place of new Set(citations.map(({ references: [first] }) => keyOf(first)))) {
      const known = uses.get(place) ?? new Map<string, Line>();
      if (known.has(text)) continue;
      const lead = known.size === 0 && name !== "" ? [soft(`${name}: `)] : [];
      uses.set(place, known.set(text, [...lead, { ...words(text), to }]));
    }
  };
  for (const { citations } of standing) add(citations, "throughout", null);
  for (const element of elements) {
    const text = element.number === null ? element.is : String(element.number);
    add(citationsOfElement(element), text, `#${stepAnchor(element.id)}`);
  }
  return new Map([...uses].map(([place, lines]) => [place, [...lines.values()]]));
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

function headOf({ references: [first] }: Passage): Line {
  return first === undefined ? [] : [reference(formatReference(first))];
}

/** Passages are told apart by their first reference, as they are cited. */
function keyOf(first: Passage["references"][number] | undefined): string {
  return first === undefined ? "" : formatReference(first);
}
