/** tests/bench/big-work.ts - a work of invented words with thousands of marks, the same every time.
 *  May import: schema types, shared, server/demo ids. */
import type { Edit } from "../../schema/change.ts";
import { passageSchema } from "../../schema/editor.ts";
import { ranksBetween } from "../../shared/rank.ts";
import { anchorRange } from "../../shared/text/anchor-range.ts";
import { quoteAt } from "../../shared/text/quote.ts";

const WORDS =
  "let him ride the horse about well at an easy canter with spear low beside his right boot and when he has gone once round he brings it across before him then turns by the wall".split(
    " ",
  );

export interface BigWork {
  edits: Edit[];
  /** A passage in the middle, and the exercise it stands in. */
  passage: string;
  exercise: string;
  marks: number;
}

/** `passages` passages of `words` words in exercises of five, each with `marksEach` steps of one action on its words. */
export function bigWork(passages: number, marksEach: number, words = 80): BigWork {
  let made = 0;
  const id = () => `0190c000-0000-7000-8000-${String(++made).padStart(12, "0")}`;
  const edits: Edit[] = [];
  const create = (kind: Extract<Edit, { do: "create" }>["kind"], value: Record<string, unknown>) => {
    edits.push({ do: "create", kind, value: value as Extract<Edit, { do: "create" }>["value"] });
    return value.id as string;
  };
  const work = create("works", {
    id: id(),
    rank: "a0",
    title: "A large invented work",
    author: "",
    levels: ["chapter", "section"],
    note: "",
    source: null,
    invented: true,
  });
  const layer = create("layers", {
    id: id(),
    work,
    rank: "a0",
    is: "translation",
    title: "Translation",
    by: "",
    language: "en",
    witness: null,
    urn: "",
  });
  const revision = create("revisions", {
    id: id(),
    layer,
    rank: "a0",
    label: "revision 1",
    received: null,
    from: "",
    attachment: null,
    note: "",
  });
  const object = create("objects", { id: id(), work, rank: "a0", is: "shaft", name: "spear", slots: {}, note: "" });
  const passageRanks = ranksBetween(null, null, passages);
  const exercises: string[] = [];
  const ids: string[] = [];
  let seed = 1;
  const draw = (below: number) => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return seed % below;
  };
  for (let index = 0; index < passages; index += 1) {
    if (index % 5 === 0) {
      exercises.push(
        create("exercises", {
          id: id(),
          work,
          rank: ranksBetween(null, null, passages)[index],
          label: String(index / 5 + 1),
          title: `Exercise ${index / 5 + 1}`,
          note: "",
          ground: null,
        }),
      );
    }
    const exercise = exercises.at(-1);
    const passage = create("passages", {
      id: id(),
      work,
      exercise,
      rank: passageRanks[index],
      references: [{ kind: "section", from: [String(Math.floor(index / 10) + 1), String((index % 10) + 1)] }],
    });
    ids.push(passage);
    const text = Array.from({ length: words }, () => WORDS[draw(WORDS.length)]).join(" ");
    const doc = passageSchema
      .node("doc", null, [passageSchema.node("paragraph", null, [passageSchema.text(text)])])
      .toJSON();
    const textId = create("passageTexts", { id: id(), passage, revision, number: 1, doc, text, steps: [] });
    const ranks = ranksBetween(null, null, marksEach);
    for (let mark = 0; mark < marksEach; mark += 1) {
      const from = Math.floor((text.length * mark) / (marksEach + 2));
      const to = Math.min(text.length, from + 24);
      const markId = id();
      const existence = { warrant: "stated", basis: [{ is: "words", mark: markId }] };
      const element = create("elements", {
        id: id(),
        exercise,
        rank: `${ranks[mark]}${passageRanks[index]}`,
        guard: [],
        existence,
        order: null,
        role: "",
        copyOf: null,
        note: "",
        is: "step",
        title: `Step ${mark + 1}`,
      });
      create("marks", { id: markId, work, of: "elements", target: element, as: "words" });
      create("anchors", {
        id: id(),
        mark: markId,
        rank: "a0",
        is: "text",
        passage,
        text: textId,
        ...anchorRange(from, to),
        ...quoteAt(text, from, to),
        fate: "same",
      });
      create("actions", {
        id: id(),
        ownerKind: "elements",
        owner: element,
        rank: "a0",
        guard: [],
        existence,
        note: "",
        act: {
          verb: "take",
          slots: {
            hand: { is: "said", value: "right", ...existence },
            object: { is: "said", value: object, warrant: "implied", basis: [] },
          },
        },
      });
    }
  }
  const middle = Math.floor(passages / 2);
  return {
    edits,
    passage: ids[middle] ?? "",
    exercise: exercises[Math.floor(middle / 5)] ?? "",
    marks: passages * marksEach,
  };
}
