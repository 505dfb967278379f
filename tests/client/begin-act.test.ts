/** tests/client/begin-act.test.ts - what an act begun under a heading has already: what the heading says is stated, what is
 *  guessed is at most implied, and what is not known is not said. */
import "../kit/no-window.ts";
import { beforeEach, describe, expect, test } from "vitest";
import { beginAct } from "../../client/read/begin-act.ts";
import { partName, thePart } from "../../client/read/part-name.ts";
import { newRow } from "../../client/read/row-choice.tsx";
import { sameHandIn } from "../../client/read/same-hand.ts";
import { passageId } from "../../client/state/passage.ts";
import { replaceRows } from "../../client/state/rows.ts";
import type { Act, Verb } from "../../schema/act.ts";
import type { DrillPart } from "../../schema/drill.ts";
import type { Kind, Rows } from "../../schema/record.ts";
import type { Slot } from "../../schema/slot.ts";

const REINS = { id: "reins", name: "the reins", is: "reins" };
const LANCE = { id: "lance", name: "the lance", is: "shaft" };
const SHIELD = { id: "shield", name: "shield", is: "shield" };
const SHEATH = { id: "sheath", name: "scabbard", is: "sheath" };
const supplied = { warrant: "supplied", basis: [] };

/** One action of a step, every slot supplied. */
const did = (step: string, verb: Verb, slots: Record<string, unknown>) => ({ step, verb, slots });

/** The rows of a work with one exercise of the steps s1, s2 and s3; `objects` by rank. */
function open(objects: object[], actions: ReturnType<typeof did>[] = []): void {
  const made: { [K in Kind]?: object[] } = {
    works: [{ id: "w", title: "A book", author: "", note: "" }],
    exercises: [{ id: "e", work: "w", rank: "a", title: "Of the lance", label: "", note: "", way: "mounted" }],
    passages: [{ id: "p", work: "w", exercise: "e", rank: "a", references: [] }],
    objects: objects.map((object, at) => ({ work: "w", rank: `a${at}`, slots: {}, note: "", ...object })),
    elements: ["s1", "s2", "s3"].map((id) => ({
      id,
      exercise: "e",
      rank: id,
      is: "step",
      title: "",
      guard: [],
      role: "",
      existence: supplied,
      note: "",
    })),
    actions: actions.map(({ step, verb, slots }, at) => ({
      id: `act${at}`,
      ownerKind: "elements",
      owner: step,
      rank: `a${at}`,
      guard: [],
      existence: supplied,
      note: "",
      act: {
        verb,
        slots: Object.fromEntries(
          Object.entries(slots).map(([slot, value]) => [slot, { is: "said", value, ...supplied }]),
        ),
      },
    })),
  };
  const rows = Object.entries(made).map(([kind, list]) => [
    kind,
    list.map((value) => ({ kind, version: 1, at: "", by: "", value })),
  ]);
  replaceRows(Object.fromEntries(rows) as Rows, 1);
  passageId.value = "p";
}

/** "object: lance (implied)" for each slot of an act begun in step s3 from inside a mark. */
function begun(verb: Verb, part: DrillPart, marks: readonly string[] = ["m"]): string[] {
  const act = beginAct(verb, part, { marks, owner: "s3", before: ["s2", "s1"] });
  return Object.entries(act.slots as Record<string, Slot<unknown>>).map(([slot, held]) =>
    held.is === "said" ? `${slot}: ${held.value} (${held.warrant})` : `${slot}: ${held.is}`,
  );
}

beforeEach(() => open([]));

describe("the object of an act", () => {
  const keepsReins = did("s1", "keep", { hand: "left", object: "reins" });
  const takesLance = did("s1", "take", { hand: "right", object: "lance", zone: "balance" });
  const cases: [when: string, objects: object[], acts: ReturnType<typeof did>[], Verb, DrillPart, string[]][] = [
    [
      "under the heading of the lance is the lance, though the reins were used last",
      [LANCE, REINS],
      [takesLance, keepsReins],
      "lower",
      "shaft",
      ["object: lance (stated)"],
    ],
    ["whatever stands first by rank", [REINS, LANCE], [keepsReins], "lower", "shaft", ["object: lance (stated)"]],
    [
      "is a guess where the column may mean another",
      [LANCE, SHIELD],
      [],
      "lower",
      "shaft",
      ["object: lance (implied)"],
    ],
    ["is nothing where there is only a rein", [REINS], [keepsReins], "lower", "shaft", []],
    [
      "of a hand is what was used last, reins left out",
      [LANCE, SHIELD, REINS],
      [did("s1", "take", { hand: "left", object: "shield" }), did("s2", "take", { hand: "left", object: "reins" })],
      "release",
      "right hand",
      ["hand: right (stated)", "object: shield (implied)"],
    ],
    [
      "of a hand else the only one there is",
      [LANCE, REINS, SHEATH],
      [],
      "take",
      "right hand",
      ["hand: right (stated)", "object: lance (implied)"],
    ],
    ["of a hand else none", [LANCE, SHIELD], [], "take", "right hand", ["hand: right (stated)"]],
    [
      "of keeping is what the hand has",
      [LANCE, REINS],
      [takesLance, keepsReins],
      "keep",
      "right hand",
      ["hand: right (stated)", "object: lance (implied)"],
    ],
    [
      "of keeping is the reins in a hand that has them",
      [LANCE, REINS],
      [takesLance, did("s1", "change reins", { to: "left" })],
      "keep",
      "left hand",
      ["hand: left (stated)", "object: reins (implied)"],
    ],
    [
      "of keeping is not said where it is not known what the hand has",
      [LANCE, REINS],
      [],
      "keep",
      "right hand",
      ["hand: right (stated)"],
    ],
    [
      "of drawing comes from the only sheath",
      [LANCE, SHEATH],
      [],
      "draw",
      "shaft",
      ["object: lance (stated)", "from: sheath (implied)"],
    ],
  ];
  test.each(cases)("%s", (_when, objects, acts, verb, part, expected) => {
    open(objects, acts);
    expect(begun(verb, part)).toEqual(expected);
  });

  test("is supplied where the act rests on no words", () => {
    open([LANCE]);
    expect(begun("lower", "shaft", [])).toEqual(["object: lance (supplied)"]);
  });
});

describe("passing", () => {
  test("gives from the hand of the heading and leaves the other end to be said", () => {
    open([LANCE]);
    expect(begun("pass", "right hand")).toEqual(["from: right (stated)", "object: lance (implied)"]);
    expect(begun("change reins", "right hand")).toEqual(["to: right (stated)"]);
  });

  const from = (value: string) => ({ verb: "pass", slots: { from: { is: "said", value, ...supplied } } }) as Act;
  test("to the same hand is refused with a sentence, to another is not", () => {
    expect(sameHandIn(from("right"), "to", "right")).toBe(
      "It is passed from the right hand already, and no hand passes a thing to itself. Choose another hand, or change the other end first.",
    );
    expect(sameHandIn(from("right"), "to", "left")).toBe("");
    expect(sameHandIn(from("right"), "from", "right")).toBe("");
    expect(sameHandIn({ verb: "take", slots: {} } as Act, "hand", "right")).toBe("");
  });
});

test("something else in words is done by what the heading names", () => {
  expect(begun("other", "shaft")).toEqual(["who: object (stated)"]);
  expect(begun("other", "left hand")).toEqual(["who: left hand (stated)"]);
});

test("a name with an article heads its column without it and is not given a second one", () => {
  open([REINS, LANCE]);
  expect([partName("shaft"), thePart("shaft")]).toEqual(["Lance", "the lance"]);
  open([{ ...LANCE, name: "boar-spear" }]);
  expect([partName("shaft"), thePart("shaft")]).toEqual(["Boar-spear", "the boar-spear"]);
  open([REINS]);
  expect([partName("shaft"), thePart("shaft"), thePart("left hand")]).toEqual(["Shaft", "the shaft", "the left hand"]);
});

describe("a new object", () => {
  const cases: [name: string, there: object[], is: string][] = [
    ["lance", [], "shaft"],
    ["the reins", [], "reins"],
    ["Reins", [LANCE], "reins"],
    ["lance", [REINS], "shaft"],
    ["cloak", [LANCE, REINS], "other"],
  ];
  test.each(cases)("“%s” beside %j is of the kind %s", (name, there, is) => {
    open(there);
    expect(newRow("objects", name)?.is).toBe(is);
  });
});
