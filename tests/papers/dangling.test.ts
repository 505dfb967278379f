/** Citations that lead nowhere: none is printed, and each is listed with its place. */
import { describe, expect, test } from "vitest";
import type { PaperKind } from "../../schema/paper.ts";
import type { Kind, RecordOf, Rows } from "../../schema/record.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { idOf } from "../drill/build-rows.ts";
import { askFor, NO_FILES, smallBook } from "./small-book.ts";

const small = smallBook();

function change<K extends Kind>(
  rows: Rows,
  kind: K,
  which: (value: RecordOf<K>) => boolean,
  to: (value: RecordOf<K>) => void,
): void {
  const row = (rows[kind] as { value: RecordOf<K> }[] | undefined)?.find(({ value }) => which(value));
  if (row === undefined) throw new RangeError(`There is no such row of ${kind}.`);
  to(row.value);
}

function take<K extends Kind>(rows: Rows, kind: K, which: (value: RecordOf<K>) => boolean): void {
  const list = (rows[kind] ?? []) as { value: RecordOf<K> }[];
  const left = list.filter(({ value }) => !which(value));
  if (left.length === list.length) throw new RangeError(`There is no such row of ${kind}.`);
  (rows as Record<string, unknown>)[kind] = left;
}

/** Ids of the marks on a thing. */
const marksOn = (rows: Rows, id: string): string[] =>
  (rows.marks ?? []).flatMap(({ value }) => (value.target === id ? [value.id] : []));

const lose = (rows: Rows, id: string): void => {
  const [mark] = marksOn(rows, id);
  change(
    rows,
    "anchors",
    (anchor) => anchor.mark === mark,
    (anchor) => {
      if (anchor.is === "text") anchor.fate = "lost";
    },
  );
};

type Case = [
  what: string,
  kind: Exclude<PaperKind, "correction slip">,
  harm: (rows: Rows) => void,
  where: string,
  says: string,
];

const CASES: Case[] = [
  [
    "words of a step that are lost",
    "ride sheet",
    (rows) => lose(rows, small.steps.raise),
    "“1. The circle”, step 2 (Raise the spear)",
    "the words “Then he raises the spear” are no longer in the text.",
  ],
  [
    "a mark that stands nowhere",
    "class handout",
    (rows) => take(rows, "anchors", (anchor) => marksOn(rows, small.steps.raise).includes(anchor.mark)),
    "“1. The circle”, step 2 (Raise the spear)",
    "its mark stands nowhere in the text.",
  ],
  [
    "a basis whose mark is gone",
    "ride sheet",
    (rows) => take(rows, "marks", (mark) => mark.target === small.steps.raise),
    "“1. The circle”, step 2 (Raise the spear)",
    "it rests on words whose mark is no longer there.",
  ],
  [
    "a passage text that is no longer read",
    "appendix",
    (rows) => take(rows, "passageTexts", (text) => text.text.startsWith("Here he follows")),
    "“2. The wall”, step 1 (Follow the wall)",
    "the words “Here he follows the wall” are no longer in the text.",
  ],
  [
    "a source that is gone",
    "appendix",
    (rows) => take(rows, "sources", (source) => source.id === idOf("marr")),
    "“1. The circle”, step 2 (Raise the spear)",
    "it names a parallel in a source that is no longer there.",
  ],
  [
    "a part of a picture that is gone",
    "ride sheet",
    (rows) => take(rows, "regions", () => true),
    "“1. The circle”, step 2 (Raise the spear)",
    "it rests on a part of a picture that is no longer there.",
  ],
  [
    "words of a question that are lost",
    "working sheet",
    (rows) => lose(rows, idOf("Is the other always a hand?")),
    "“1. The circle”, the question “Is the other always a hand?”",
    "the words “to the other” are no longer in the text.",
  ],
  [
    "words of a crux that are lost",
    "appendix",
    (rows) => lose(rows, idOf("Once or twice")),
    "†a (Once or twice)",
    "the words “once or twice” are no longer in the text.",
  ],
  [
    "words of a sense that are lost",
    "appendix",
    (rows) => lose(rows, idOf("turns")),
    "the word “vertit”, “he turns”",
    "the words “vertit” are no longer in the text.",
  ],
  [
    "words of a remark that are lost",
    "appendix",
    (rows) => lose(rows, idOf("remark")),
    "“1. The circle”, a note",
    "the words “once” are no longer in the text.",
  ],
];

describe("the print stops for", () => {
  test.each(CASES)("%s", (_what, kind, harm, where, says) => {
    const { rows, exercises } = smallBook();
    harm(rows);
    const outcome = paperOf(rows, askFor(kind, Object.values(exercises)), NO_FILES);
    const error = outcome.ok ? null : outcome.refusal.error;
    expect(error?.code).toBe("citation_dangling");
    expect(error?.issues?.map(({ where: at, sentence }) => `${at}: ${sentence}`)).toContain(`${where}: ${says}`);
    // Each names the row it is about, so that the window can lead there.
    const named = (error?.issues ?? []).map(({ at }) => at);
    const there = named.filter((at) => at && rows[at.kind]?.some(({ value }) => value.id === at.id));
    expect(there).toHaveLength(named.length);
    expect(error?.sentence).toMatch(
      /^Nothing was printed: (1 citation leads|\d+ citations lead) nowhere\. The first is at /,
    );
  });

  test("all of them at once, each once", () => {
    const { rows, exercises } = smallBook();
    for (const step of [small.steps.ride, small.steps.raise, small.steps.pass]) lose(rows, step);
    const outcome = paperOf(rows, askFor("ride sheet", [exercises.circle]), NO_FILES);
    const issues = outcome.ok ? [] : (outcome.refusal.error.issues ?? []);
    expect(issues.map(({ where }) => where)).toEqual([
      "“1. The circle”, step 1 (Ride the circle)",
      "“1. The circle”, step 2 (Raise the spear)",
      "“1. The circle”, step 3 (Give it over)",
    ]);
  });
});

describe("the print goes on", () => {
  test("for what is lost and not on the paper", () => {
    const { rows, exercises, steps } = smallBook();
    lose(rows, steps.pass);
    const parts = [{ exercise: exercises.circle, from: steps.ride, to: steps.raise, variant: null }];
    expect(paperOf(rows, askFor("ride sheet", [], { parts }), NO_FILES).ok).toBe(true);
    expect(paperOf(rows, askFor("working sheet", [exercises.circle]), NO_FILES).ok).toBe(true);
  });
});
