/** tests/editions/compare-papers.test.ts - what one edition says otherwise than another. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Block, Paper } from "../../schema/paper.ts";
import { comparePapers } from "../../server/publish/editions/compare-papers.ts";
import { idOf, type SmallStep, smallPaper, words } from "./small-paper.ts";

const A: SmallStep = { element: "a", horse: "walk to the trough", left: ["keeps the reins", "rests on the pommel"] };
const B: SmallStep = { element: "b", horse: "turn to the left", left: ["lets go the reins"] };
const C: SmallStep = { element: "c", horse: "halt" };
const D: SmallStep = { element: "d", horse: "rein back three steps" };

const brief = (older: SmallStep[], newer: SmallStep[]) => {
  const { differences, renumbered } = comparePapers(smallPaper(older), smallPaper(newer));
  return { told: differences.map(({ is, where, was, now }) => [is, where, was, now].join(" | ")), renumbered };
};

describe("comparing two editions", () => {
  const cases: [name: string, older: SmallStep[], newer: SmallStep[], told: string[], renumbered: string][] = [
    ["the same", [A, B, C], [A, B, C], [], ""],
    [
      "one value",
      [A, B],
      [A, { ...B, horse: "turn to the right" }],
      ["reads | Step 2, horse | turn to the left | turn to the right"],
      "",
    ],
    [
      "the second line of a cell",
      [A, B],
      [{ ...A, left: ["keeps the reins", "rests on the thigh"] }, B],
      ["reads | Step 1, left hand | rests on the pommel | rests on the thigh"],
      "",
    ],
    [
      "a line struck out",
      [A],
      [{ ...A, left: ["rests on the pommel"] }],
      ["reads | Step 1, left hand | keeps the reins | "],
      "",
    ],
    [
      "a line added",
      [B],
      [{ ...B, left: ["lets go the reins", "takes the mane"] }],
      ["reads | Step 1, left hand |  | takes the mane"],
      "",
    ],
    [
      "a step put in",
      [A, B, C],
      [A, D, B, C],
      ["added | After step 1 |  | rein back three steps"],
      "Steps 2 to 3 are now numbered 3 to 4.",
    ],
    [
      "a step put before all others",
      [A],
      [D, A],
      ["added | Before the first step |  | rein back three steps"],
      "Step 1 is now numbered 2.",
    ],
    [
      "a step left out",
      [A, B, C],
      [A, C],
      ["left out | Step 2 | turn to the left; lets go the reins | "],
      "Step 3 is now numbered 2.",
    ],
    [
      "a step moved",
      [A, B, C, D],
      [B, C, D, A],
      ["moved | Step 1 | walk to the trough | now comes after “rein back three steps”"],
      "Step 1 is now numbered 4; steps 2 to 4 are now numbered 1 to 3.",
    ],
  ];
  it.each(cases)("%s", (_name, older, newer, told, renumbered) => {
    expect(brief(older, newer)).toEqual({ told, renumbered });
  });

  it("names the rows a difference comes from", () => {
    const { differences } = comparePapers(smallPaper([A, B]), smallPaper([A, { ...B, horse: "turn to the right" }]));
    expect(differences).toMatchObject([{ element: idOf("b"), shown: "2", of: [{ kind: "elements", id: idOf("b") }] }]);
  });

  it("tells what is no step by its rows", () => {
    const { differences } = comparePapers(smallPaper([A]), smallPaper([A], "Keep off the wall."));
    expect(differences).toMatchObject([
      { is: "reads", was: "Keep to the wall.", now: "Keep off the wall.", element: null },
    ]);
  });

  it("tells what is new under a new heading in one, behind what the older paper has there", () => {
    const older = smallPaper([A, B]);
    const note = (text: string): Block => ({ is: "paragraph", as: "body", words: words(text), of: [] });
    const added: Block[] = [
      { is: "heading", level: 3, anchor: null, words: words("Not like this"), of: [] },
      note("Do not hurry."),
      note("Do not pull."),
    ];
    const at = (from: number): Paper => ({
      ...older,
      blocks: [...older.blocks.slice(0, from), ...added, ...older.blocks.slice(from)],
    });
    const told = (newer: Paper) => comparePapers(older, newer).differences.map(({ where, now }) => [where, now]);
    const all = "Not like this – Do not hurry. Do not pull.";
    expect(told(at(1))).toEqual([["Under “Of the turn at the trough”", all]]);
    expect(told(at(2))).toEqual([["After step 2", all]]);
  });

  it("names the exercise on a paper of several", () => {
    const two = (second: SmallStep[]): Paper => {
      const papers = [smallPaper([A, B]), smallPaper(second)];
      const of = papers.map((_, index) => [{ kind: "exercises" as const, id: idOf(`exercise ${index}`) }]);
      const blocks = papers.flatMap(({ blocks: [head, table] }, index): Block[] =>
        head?.is === "heading" && table
          ? [{ ...head, words: words(`${index + 1}. The ride`), of: of[index] ?? [] }, table]
          : [],
      );
      return { ...smallPaper([]), blocks };
    };
    const { differences, renumbered } = comparePapers(two([C]), two([D, C]));
    expect(differences).toMatchObject([{ where: "Before the first step", exercise: "2. The ride" }]);
    expect(renumbered).toBe("Step 1 of “2. The ride” is now numbered 2.");
  });

  it("says nothing of equal papers, and gives back the newer words from the older ones by what it says", () => {
    const anyStep = fc.record({
      element: fc.constantFrom("a", "b", "c", "d", "e"),
      horse: fc.constantFrom("walk on", "trot on", "halt", "turn about"),
      left: fc.array(fc.constantFrom("keeps the reins", "lets go", "takes the shaft"), { maxLength: 3 }),
    });
    const anySteps = fc.uniqueArray(anyStep, { selector: ({ element }) => element, maxLength: 5 });
    fc.assert(
      fc.property(anySteps, anySteps, (older, newer) => {
        expect(brief(older, older)).toEqual({ told: [], renumbered: "" });
        const { differences } = comparePapers(smallPaper(older), smallPaper(newer));
        const patched = older
          .filter(({ element }) => !differences.some((one) => one.is === "left out" && one.element === idOf(element)))
          .map(({ element }) => element);
        const added = newer.filter(({ element }) => !older.some((old) => old.element === element));
        expect(new Set([...patched, ...added.map(({ element }) => element)])).toEqual(
          new Set(newer.map(({ element }) => element)),
        );
        for (const step of newer) {
          const old = older.find(({ element }) => element === step.element);
          if (old === undefined) continue;
          const reads = differences.filter((one) => one.is === "reads" && one.element === idOf(step.element));
          expect(patchedWords(old, reads)).toEqual(wordsOf(step));
        }
      }),
    );
  });
});

const wordsOf = ({ horse, left = [] }: SmallStep): string[] => [horse, ...left].sort();

/** The words of a step after its corrections, in any order. */
function patchedWords(step: SmallStep, reads: readonly { was: string; now: string }[]): string[] {
  const said = wordsOf(step);
  for (const { was } of reads) {
    if (was !== "") said.splice(said.indexOf(was), 1);
  }
  return [...said, ...reads.flatMap(({ now }) => (now === "" ? [] : [now]))].sort();
}
