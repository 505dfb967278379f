/** What a reading that is not taken would give, as its note says it: each act once. */
import { expect, test } from "vitest";
import type { DrillCrux, DrillElement } from "../../schema/drill.ts";
import { givesWords } from "../../server/publish/papers/gives-words.ts";

type Give = [label: string, text: string];

/** One entry a step: what the reading gives there. */
function said(title: string, ...steps: Give[][]): string {
  const at = steps.map((gives, index) => ({
    element: { number: index + 1 } as DrillElement,
    crux: {
      others: [{ reading: "r", title, gives: gives.map(([label, text]) => ({ label, text })) }],
    } as never as DrillCrux,
    drill: {} as never,
  }));
  return givesWords(at, "r");
}

const PASS: Give = ["action", "pass the spear from the right hand to the left hand"];
const BACK: Give = ["action", "pass the spear from the left hand to the right hand"];

test.each<[what: string, got: string, expected: string]>([
  ["an act at one step", said("over", [PASS]), PASS[1]],
  ["the same act at two", said("over", [PASS], [PASS]), PASS[1]],
  ["an act and its undoing", said("over", [PASS, BACK]), `${PASS[1]}, and back`],
  ["a value that an act tells", said("over", [PASS, ["hand", "the left hand"]]), PASS[1]],
  ["a value that no act tells", said("over", [["hand", "the left hand"]]), "hand: the left hand"],
  ["a value that the name tells", said("twice, as in B", [["how often", "twice"]]), ""],
  ["not a part of a word of the name", said("rightly", [["side", "right"]]), "side: right"],
  ["what is open in another crux", said("round", [["action", "volte right, (not settled)"]]), "volte right"],
  ["that it is part of the exercise, alone", said("so", [["this element", ""]]), "this is part of the exercise"],
  ["and with its act", said("so", [["this element", ""], PASS]), PASS[1]],
  [
    "two things without their acts",
    said("so", [
      ["what", "spear"],
      ["what", "bridle"],
    ]),
    "",
  ],
  ["other acts at other steps", said("over", [PASS], [["action", "halt"]]), `(step 1) ${PASS[1]}; (step 2) halt`],
])("%s", (_what, got, expected) => {
  expect(got).toBe(expected);
});
