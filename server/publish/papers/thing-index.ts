/** server/publish/papers/thing-index.ts - the stations, holds, movements and followed words of the paper, each with its steps.
 *  May import: schema types, shared/drill, shared/text, siblings. By the name as it is folded for searching, so that no machine's
 *  language decides the order. */
import type { Citation, DrillElement } from "../../../schema/drill.ts";
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { citationsOf } from "../../../shared/drill/citations.ts";
import { compareCodeUnits } from "../../../shared/rank.ts";
import { foldForSearch } from "../../../shared/text/fold.ts";
import { citationsOfElement } from "../cited.ts";
import { usedHolds } from "./holds-page.ts";
import { usedMovements } from "./movement-lines.ts";
import type { PaperContext } from "./paper-context.ts";
import { heading, joinedLines, type Of, said, words } from "./spans.ts";
import { newUses, useOf, usesLine } from "./uses.ts";

type Item = Extract<PlainBlock, { is: "entries" }>["items"][number];

/** Where the glossary tells of a hold, a movement or a word. */
export const glossaryAnchor = (id: string): string => `term-${id}`;

/** Nothing where nothing of it is used. */
export function thingIndex(context: PaperContext): PlainBlock[] {
  const { book, parts } = context;
  const usesOf = usesOfThings(context);
  const inGlossary = (id: string): string => `#${glossaryAnchor(id)}`;
  const things = [
    ...book.all("stations").map(({ id, name }) => ({ id, name, kind: "stations" as const, to: null })),
    ...usedHolds(context).map(({ hold: { id, name } }) => ({ id, name, kind: "holds" as const, to: inGlossary(id) })),
    ...usedMovements(context, parts).map(({ movement: { id, name } }) => ({
      ...{ id, name: withoutArticle(name), kind: "movements" as const, to: inGlossary(id) },
    })),
  ].map(({ id, name, kind, to }) => ({
    ...{ name: kind === "stations" ? withoutArticle(name) : name, uses: usesOf(id) },
    ...{ of: [{ kind, id }] as Of, head: { ...words(kind === "stations" ? withoutArticle(name) : name), to } },
  }));
  const terms = book.all("terms").flatMap(({ id, work, word, language }) =>
    work === book.work.id
      ? [
          {
            ...{ name: word, uses: usesOfTerm(context, id), of: [{ kind: "terms", id }] as Of },
            head: { ...said(word, language), to: inGlossary(id) },
          },
        ]
      : [],
  );
  const items = [...things, ...terms]
    .filter(({ uses }) => uses.length > 0)
    .sort((a, b) => compareCodeUnits(foldForSearch(a.name), foldForSearch(b.name)) || compareCodeUnits(a.name, b.name))
    .map(({ head, uses, of }): Item => ({ anchor: null, head: [head], lines: [uses], of }));
  if (items.length === 0) return [];
  return [
    heading(2, [words("Index of things and words")], { anchor: "things" }),
    { is: "entries", as: "index", items },
  ];
}

/** "exercise 1, steps 2–4; exercise 2, step 9", by the id of what is a value in these steps. Empty for what is in none. */
export function usesOfThings({ book, parts }: PaperContext): (id: string) => Line {
  const users = new Map<string, Set<DrillElement>>();
  for (const element of parts.flatMap(({ drill }) => drill.elements)) {
    const row = book.find("elements", element.id);
    const again = row?.is === "again" && row.of.is === "movement" ? row.of.movement : null;
    const values = [...element.values, ...element.actions.flatMap((action) => action.values)];
    for (const id of idsIn([again, ...values.map(({ value }) => value)])) {
      users.set(id, (users.get(id) ?? new Set()).add(element));
    }
  }
  return (id) => usesWhere(parts, (element) => users.get(id)?.has(element) === true);
}

/** Every text within a value: the ids of what it names are among them. */
function idsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(idsIn) : [];
}

/** The steps that rest on words in which it stands; where none does, its places. */
function usesOfTerm({ book, parts, places }: PaperContext, term: string): Line {
  const senses = book.all("senses").filter((sense) => sense.term === term);
  const marked = [...citationsOf(book, "terms", term), ...senses.flatMap(({ id }) => citationsOf(book, "senses", id))];
  const uses = usesWhere(parts, (element) =>
    citationsOfElement(element).some((cited) => marked.some((mark) => overlap(mark, cited))),
  );
  return uses.length > 0 ? uses : places.line(marked);
}

const overlap = (one: Citation, other: Citation): boolean =>
  one.layer === other.layer && one.reference === other.reference && one.from < other.to && other.from < one.to;

function usesWhere(parts: PaperContext["parts"], isUsed: (element: DrillElement) => boolean): Line {
  const lines = parts.flatMap(({ drill }) => {
    const uses = newUses();
    const used = drill.elements.filter(isUsed);
    for (const element of used) useOf(uses, element);
    return used.length === 0 ? [] : [usesLine(drill.exercise, uses, parts.length > 1)];
  });
  return joinedLines(lines, "; ");
}
