/** tests/tei/any-work.ts - works made by chance: texts in several languages with marks anywhere in them, and the book that
 *  has a row of every kind with odd words in every field. */
import fc from "fast-check";
import type { Node as DocNode } from "prosemirror-model";
import { passageSchema } from "../../schema/editor.ts";
import { type Kind, RECORDS, type Rows } from "../../schema/record.ts";
import type { Reference } from "../../schema/reference.ts";
import { projectDoc } from "../../shared/text/projection.ts";
import { idOf, WorkBuilder } from "../drill/build-rows.ts";
import { bookRows } from "../store/full-book.ts";

/** Words with what usually breaks markup, in several scripts. */
export const oddWords = fc
  .array(
    fc.constantFrom(
      "<b>",
      "</p>",
      "&amp;",
      "&",
      "]]>",
      "<!--",
      "-->",
      '"',
      "'",
      'xml:id="a"',
      "<?x?>",
      "#{x}",
      "%",
      "\\",
      "#a",
      "{",
      "`",
      "horse",
      "ṣūrah",
      "فرس",
      "ἵππος",
      "馬",
      "🐎",
      "e\u0301",
      "\u200f",
      " ",
      "  ",
      "\n",
      "\t",
      "\r",
      "\u00a0",
      "\u2028",
      "\u0000",
      "\ufeff",
      "\ud800",
    ),
    { minLength: 1, maxLength: 7 },
  )
  .map((parts) => parts.join(""));

const marks = fc
  .subarray(["emphasis", "foreign", "supplied", "unclear"])
  .map((names) => names.map((name) => passageSchema.mark(name, name === "foreign" ? { lang: "ar" } : null)));

const inline: fc.Arbitrary<DocNode> = fc.oneof(
  { weight: 5, arbitrary: fc.tuple(oddWords, marks).map(([text, on]) => passageSchema.text(text, on)) },
  {
    weight: 1,
    arbitrary: fc
      .tuple(oddWords, fc.constantFrom("", "1", " a ", "<&>"), marks)
      .map(([text, label, on]) => passageSchema.node("note", { text, label }, undefined, on)),
  },
  {
    weight: 1,
    arbitrary: fc
      .tuple(
        fc.constantFrom("page", "folio", "column", "line", "section", "a b", "m<&>", "x.y"),
        fc.constantFrom("", "2v", "3", "<"),
      )
      .map(([unit, n]) => passageSchema.node("milestone", { unit, n })),
  },
  {
    weight: 1,
    arbitrary: fc
      .record({ reason: fc.constantFrom("", "torn", "torn and wet", " torn ", "<&>", "a\nb") })
      .map((attributes) => passageSchema.node("gap", attributes)),
  },
);

const block = fc
  .tuple(fc.constantFrom("paragraph", "heading", "verse"), fc.array(inline, { maxLength: 4 }))
  .map(([type, content]) => passageSchema.node(type, null, content));

/** A document as the editor holds one: runs of words that are marked alike are one run. */
export const anyDoc = fc
  .array(block, { minLength: 1, maxLength: 4 })
  .map((blocks) => passageSchema.nodeFromJSON(passageSchema.node("doc", null, blocks).toJSON()));

const anyLabel = fc.constantFrom("1", "13", "12a", "pr", "a.b", "a b", "50%", "é", "<&>", "ب", "1:2");
const point = fc.record({
  leaf: fc.integer({ min: 1, max: 99 }),
  side: fc.constantFrom("r" as const, "v" as const),
  column: fc.constantFrom("a" as const, "b" as const, undefined),
  line: fc.option(fc.integer({ min: 1, max: 40 }), { nil: undefined }),
});
const page = fc.record({ page: anyLabel, line: fc.option(fc.integer({ min: 1, max: 40 }), { nil: undefined }) });
const range = <T>(of: fc.Arbitrary<T>) => fc.tuple(of, fc.option(of, { nil: undefined }));

/** Any reference the schema can hold, whose ends differ where it has two. */
export const anyReference: fc.Arbitrary<Reference> = fc
  .oneof(
    range(fc.array(anyLabel, { minLength: 1, maxLength: 4 })).map(([from, to]) => ({
      kind: "section" as const,
      from,
      to,
    })),
    fc
      .tuple(fc.constantFrom("", "A", "B 2", "Γ<"), range(point))
      .map(([witness, [from, to]]) => ({ kind: "folio" as const, witness, from, to })),
    fc
      .tuple(fc.constantFrom("", "tr.", "the print"), range(page))
      .map(([of, [from, to]]) => ({ kind: "page" as const, of, from, to })),
  )
  .map((reference) => JSON.parse(JSON.stringify(reference)) as Reference)
  .map((reference) => {
    const { to, ...single } = reference;
    return to !== undefined && JSON.stringify(to) === JSON.stringify(reference.from)
      ? (single as Reference)
      : reference;
  });

export interface MadeText {
  title: string;
  by: string;
  language: string;
  urn: string;
  /** By passage; null where the text has none of it. */
  docs: (DocNode | null)[];
}
export interface MadeWork {
  rows: Rows;
  work: string;
  levels: string[];
  references: Reference[][];
  texts: MadeText[];
}

const LANGUAGES = ["la", "grc", "ar", "en", ""] as const;

/** A work of a few passages in one to three texts, with steps marked anywhere in them. Each passage has a place of its own. */
export const anyWork: fc.Arbitrary<MadeWork> = fc
  .record({
    levels: fc.constantFrom([], ["chapter"], ["book", "chapter & verse"]),
    passages: fc.array(fc.tuple(fc.array(anyReference, { maxLength: 3 }), fc.constantFrom(null, "first", "second")), {
      minLength: 1,
      maxLength: 5,
    }),
    texts: fc.array(
      fc.record({
        by: fc.constantFrom("", "Y. Varne", "A & B"),
        language: fc.constantFrom(...LANGUAGES),
        urn: fc.constantFrom("", "urn:cts:demo:book.one.eng:"),
        docs: fc.array(fc.option(anyDoc, { nil: null, freq: 6 }), { minLength: 5, maxLength: 5 }),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    ends: fc.array(fc.tuple(fc.nat(), fc.nat()), { minLength: 3, maxLength: 6 }),
  })
  .map(({ levels, passages, texts, ends }) => made([...levels], passages, texts, ends));

function made(
  levels: string[],
  passages: [Reference[], "first" | "second" | null][],
  texts: Omit<MadeText, "title">[],
  ends: [number, number][],
): MadeWork {
  const book = new WorkBuilder("A made work", { levels });
  const exercises = {
    first: book.exercise("Of the first", { label: "1" }),
    second: book.exercise("Of the second <&>"),
  };
  const references = passages.map(([list], index): Reference[] => [
    { kind: "section", from: [`p${index + 1}`] },
    ...list,
  ]);
  const ids = passages.map(([, exercise], index) => {
    const id = idOf(`passage ${index}`);
    book.put("passages", {
      id,
      work: book.work,
      exercise: exercise && exercises[exercise],
      rank: `a${index}`,
      references: references[index] ?? [],
    });
    return id;
  });
  const step = book.step("a step", exercises.first);
  for (const [number, text] of texts.entries()) {
    const name = `text ${number + 1}`;
    book.layer(name, {
      by: text.by,
      language: text.language,
      urn: text.urn,
      is: number === 0 ? "translation" : "original",
    });
    for (const [index, doc] of text.docs.slice(0, ids.length).entries()) {
      if (doc === null) continue;
      const id = idOf(`${name} ${index}`);
      const words = projectDoc(doc);
      book.put("passageTexts", {
        id,
        passage: ids[index] ?? "",
        revision: idOf(`${name} revision`),
        number: 1,
        doc: doc.toJSON(),
        text: words,
        steps: [],
      });
      for (const [at, [one, other]] of ends.entries()) {
        const [from, to] = [one, other].map((end) => end % (words.length + 1)).sort((a, b) => a - b) as [
          number,
          number,
        ];
        const mark = idOf(`mark ${id} ${at}`);
        book.put("marks", { id: mark, work: book.work, of: "elements", target: step, as: "words" });
        const sides = { fromSide: "after", toSide: "before" } as const;
        const quote = { quote: words.slice(from, to), prefix: "", suffix: "", fate: "same" } as const;
        book.put("anchors", {
          id: idOf(`anchor ${mark}`),
          mark,
          rank: "a0",
          is: "text",
          passage: ids[index] ?? "",
          text: id,
          from,
          to,
          ...sides,
          ...quote,
        });
      }
    }
  }
  const kept = texts.map((text, index) => ({
    ...text,
    title: `text ${index + 1}`,
    docs: text.docs.slice(0, ids.length),
  }));
  return { rows: book.rows(), work: book.work, levels, references, texts: kept };
}

const FIXED =
  /^(id|rank|kind|is|as|of|verb|warrant|state|ownerKind|attachment|fate|fromSide|toSide|text|doc|quote|prefix|suffix|side|manner|item|language|urn|confidence|on|asked|issued|received|format)$/;

/** Rows by kind, as a store gives them. */
export function fullBook(list: readonly (readonly [Kind, unknown])[]): Rows {
  const rows: Record<string, unknown[]> = {};
  for (const [kind, value] of list) {
    const known = rows[kind] ?? [];
    rows[kind] = known;
    known.push({ kind, version: 1, value });
  }
  return rows as Rows;
}

/** The book with a row of every kind, each free field of words replaced by odd ones where its schema takes them. */
export const anyFullBook: fc.Arbitrary<Rows> = fc.array(oddWords, { minLength: 5, maxLength: 12 }).map((words) => {
  let next = 0;
  const odd = () => words[next++ % words.length] ?? "";
  return fullBook(bookRows("f".repeat(64)).map(([kind, value]) => [kind, withOddWords(kind, value, odd)] as const));
});

function withOddWords(kind: Kind, value: Record<string, unknown>, odd: () => string): unknown {
  let row: unknown = RECORDS[kind].parse(value);
  for (const key of Object.keys(value)) {
    if (FIXED.test(key)) continue;
    const changed = replaced((row as Record<string, unknown>)[key], odd);
    const tried = RECORDS[kind].safeParse({ ...(row as object), [key]: changed });
    if (tried.success) row = tried.data;
  }
  return row;
}

const ID = /^[0-9a-f]{8}-[0-9a-f-]{27}$/;

/** Words anywhere inside, but for ids and what tells the form of the rest. */
function replaced(value: unknown, odd: () => string): unknown {
  if (typeof value === "string") return ID.test(value) ? value : odd();
  if (Array.isArray(value)) return value.map((one) => replaced(one, odd));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, one]) => [key, FIXED.test(key) ? one : replaced(one, odd)]),
  );
}
