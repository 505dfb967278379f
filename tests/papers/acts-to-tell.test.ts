/** tests/papers/acts-to-tell.test.ts - what a sheet that is ridden from tells of each step: what changes, each once, and on foot
 *  what has no meaning there. */
import { describe, expect, test } from "vitest";
import type { Verb } from "../../schema/act.ts";
import type { Slot } from "../../schema/slot.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { idOf, supplied, under, WorkBuilder } from "../drill/build-rows.ts";
import { plain, printed, stepRowsOf } from "./paper-lines.ts";
import { askFor, NO_FILES } from "./small-book.ts";

type Acted = [verb: Verb, slots: Record<string, unknown>, reads?: string];
interface Asked {
  way?: "mounted" | "on foot";
  /** The gait of the standing instruction; null for none. */
  gait?: "walk" | "trot" | null;
  titles?: string[];
  roles?: string[];
  /** Words of a version of the day. */
  day?: string;
}

/** The cells of each step after its title: horse and rider, hands, spear. */
function told(
  steps: Acted[][],
  { way = "mounted", gait = null, titles = [], roles = [], day }: Asked = {},
): string[][] {
  const book = new WorkBuilder("A book");
  const exercise = book.exercise("An exercise");
  book.object("the spear", "shaft");
  book.object("the reins", "reins");
  if (gait !== null) book.action(book.standing("The gait", null, { note: "" }), "go at", { gait: supplied(gait) });
  const crux = book.crux("Which", exercise, { is: "ambiguous" });
  book.reading("one", crux);
  book.reading("two", crux);
  for (const [index, acts] of steps.entries()) {
    const step = book.step(titles[index] ?? `Step ${index}`, exercise, { role: roles[index] ?? "" });
    for (const [verb, slots, reads] of acts) {
      const given = Object.entries(slots).map(([slot, value]): [string, Slot<unknown>] => [slot, supplied(value)]);
      book.action(step, verb, Object.fromEntries(given), {
        ...(reads === undefined ? {} : { guard: under("Which", reads) }),
      });
    }
  }
  if (day !== undefined) {
    book.put("variants", {
      id: idOf("day"),
      work: book.work,
      exercise,
      rank: "a0",
      name: "the day",
      way,
      deltas: [{ is: "words", words: day, reason: "it rains" }],
    });
  }
  const ask = askFor("ride sheet", [exercise], { way });
  const parts = ask.parts.map((part) => ({ ...part, variant: day === undefined ? null : idOf("day") }));
  const paper = printed(paperOf(book.rows(), { ...ask, parts }, NO_FILES));
  return stepRowsOf(paper).map(({ cells }) => {
    const [, head = [], hands = [], spear = []] = cells;
    return [head.slice(1), hands, spear].map((cell) => cell.map(plain).join(" / "));
  });
}

const SPEAR = idOf("the spear");
const straight: Acted = ["ride", { figure: "straight" }];
const trot: Acted = ["go at", { gait: "trot" }];
const horses = (steps: Acted[][], asked: Asked = {}): string[] => told(steps, asked).map(([horse = ""]) => horse);

describe("the gait", () => {
  test.each<[string, Acted[][], Asked, string[]]>([
    [
      "stands at the first line that is ridden, where it is inherited",
      [[straight], [straight]],
      { gait: "walk" },
      ["walk / straight on", "straight on"],
    ],
    [
      "is told again where it changes",
      [[trot, straight], [["go at", { gait: "walk" }]]],
      {},
      ["trot / straight on", "walk"],
    ],
    [
      "is not told where it only stays",
      [
        [trot, straight],
        [trot, straight],
      ],
      {},
      ["trot / straight on", "straight on"],
    ],
    [
      "comes back to what stands throughout",
      [[trot, straight], [straight]],
      { gait: "walk" },
      ["trot / straight on", "walk / straight on"],
    ],
    [
      "of a halt is told once, by its figure",
      [
        [
          ["go at", { gait: "halt" }],
          ["ride", { figure: "halt" }],
        ],
      ],
      {},
      ["halt"],
    ],
    [
      "of a rider who stands is not told again",
      [[trot, ["ride", { figure: "halt" }]], [["go at", { gait: "halt" }]]],
      {},
      ["trot / halt", ""],
    ],
    [
      "is each rider's own",
      [
        [trot, straight],
        [trot, straight],
        [trot, straight],
      ],
      { roles: ["one", "two", "one"] },
      ["trot / straight on", "trot / straight on", "straight on"],
    ],
  ])("%s", (_why, steps, asked, cells) => {
    expect(horses(steps, asked)).toEqual(cells);
  });
});

describe("hands", () => {
  const keep: Acted = ["keep", { hand: "left", object: idOf("the reins") }];
  test("that only keep what they have are told where they begin", () => {
    expect(told([[keep], [keep]]).map(([, hands]) => hands)).toEqual(["left: keep the reins", ""]);
  });
  test("are told in the order of what they do", () => {
    const acts: Acted[] = [
      ["pass", { object: SPEAR, from: "left", to: "right" }],
      ["change reins", { to: "left" }],
    ];
    expect(told([acts])[0]?.[1]).toBe(
      "right: pass the spear from the left hand to the right hand / left: change the reins to the left hand",
    );
  });
  test("do once, and under no reading, what they do under every one", () => {
    const drop = (reads: string): Acted => ["release", { hand: "left", object: SPEAR }, reads];
    expect(told([[drop("one"), drop("two")]])[0]?.[1]).toBe("left: let go of the spear");
    expect(told([[drop("one")]])[0]?.[1]).toBe("left: let go of the spear only †a 1");
  });
});

describe("on foot", () => {
  const acts: Acted[] = [
    ["go at", { gait: "canter" }],
    straight,
    ["change reins", { to: "left" }],
    ["cross the neck", { object: SPEAR, to: { to: "left", viewpoint: "rider" } }],
  ];
  test("each act says what of it has no meaning", () => {
    expect(told([acts], { way: "on foot" })[0]).toEqual([
      "at your own pace; mounted: canter / straight on",
      "left: mounted only: change the reins to the left hand",
      "across before you, to the left; mounted: bring the spear over the horse’s neck to the left",
    ]);
  });
  test("reins that the day supplies are reins", () => {
    expect(told([acts], { way: "on foot", day: "The reins are a rope." })[0]?.[1]).toBe(
      "left: change the reins to the left hand",
    );
  });
  test("a walk and a halt are what they are", () => {
    expect(horses([[["go at", { gait: "walk" }], straight, ["ride", { figure: "halt" }]]], { way: "on foot" })).toEqual(
      ["walk / straight on / halt"],
    );
  });
});

test("what somebody else does is told as his", () => {
  const acts: Acted[] = [["plant", { object: SPEAR }]];
  const [cells] = told([acts], { titles: ["A groom plants the spear"] });
  expect(cells?.[1]).toBe("a groom: plant the spear; where · · ·");
  expect(told([acts], { titles: ["The spear stands alone"] })[0]?.[1]).toBe("plant the spear; where · · ·");
});
