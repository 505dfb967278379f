/** tests/papers/calls.test.ts - what a caller calls out: one breath, with side and station, and nothing nobody has settled. */
import { describe, expect, test } from "vitest";
import type { Verb } from "../../schema/act.ts";
import type { Slot } from "../../schema/slot.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { buildPaper, paperOf } from "../../server/publish/papers/build-paper.ts";
import { BREATH, countedWords } from "../../server/publish/papers/call-words.ts";
import { openStore, readContents } from "../../server/store/index.ts";
import { held, idOf, said, slotAt, supplied, under, WorkBuilder } from "../drill/build-rows.ts";
import { blocksThat, plain, printed } from "./paper-lines.ts";
import { askFor, NO_FILES, smallBook } from "./small-book.ts";

const side = (to: "left" | "right") => ({ to, viewpoint: "rider" });
const place = (name: string) => ({ is: "station", station: idOf(name) });
const once = { is: "times", n: 1 };
const half = { is: "at", over: 1, of: 2 };
const SPEAR = idOf("the spear");

type Acted = [verb: Verb, slots: Record<string, unknown>, more?: { timing?: unknown; reads?: string }];
interface Stepped {
  title?: string;
  role?: string;
  cue?: string;
  acts: Acted[];
}

/** The calls of a book with one exercise of these steps: call, lines under it, when, and what is told small. */
function callsOf(...steps: Stepped[]) {
  const book = new WorkBuilder("A book");
  const ground = book.put("grounds", {
    id: idOf("the court"),
    work: book.work,
    rank: "a0",
    name: "the court",
    is: "rectangular",
    slots: { length: supplied({ is: "exact", of: 40 }), width: supplied({ is: "exact", of: 20 }) },
    note: "",
  });
  for (const [index, name] of ["the well", "the stair", "the gate", "the trough"].entries()) {
    book.put("stations", {
      id: idOf(name),
      ground,
      rank: `a${index}`,
      name,
      is: "point",
      outline: supplied({ is: "point", at: { x: 0, y: 1000 * index } }),
      partner: null,
      note: "",
    });
  }
  const exercise = book.exercise("An exercise", { ground });
  book.object("the spear", "shaft");
  book.hold("upright", { slots: { level: supplied("high") } });
  const crux = book.crux("Which", exercise, { is: "ambiguous" });
  book.reading("one", crux);
  book.reading("two", crux);
  for (const [index, { title, role = "", cue, acts }] of steps.entries()) {
    const step = book.step(title ?? `Step ${index}`, exercise, {
      role,
      ...(cue === undefined ? {} : { cue: supplied(cue) }),
      ...(title === undefined ? { title: "" } : {}),
    });
    for (const [verb, slots, { timing, reads } = {}] of acts) {
      const given = Object.entries(slots).map(([slot, value]) => [slot, supplied(value)] as const);
      book.action(step, verb, Object.fromEntries(given), {
        ...(timing === undefined ? {} : { timing: supplied(timing) as Slot<never> }),
        ...(reads === undefined ? {} : { guard: under("Which", reads) }),
      });
    }
  }
  const paper = printed(paperOf(book.rows(), askFor("caller's sheet", [exercise]), NO_FILES));
  return blocksThat(paper, "calls")
    .flatMap(({ items }) => items)
    .map(({ call, acts = [], when, where }) => [plain(call), acts.map(plain).join(" / "), plain(when), plain(where)]);
}

const hold = (hand: string): Acted => ["hold", { object: SPEAR, hold: idOf("upright"), hand }];

describe("a call", () => {
  const table: [why: string, acts: Acted[], call: string][] = [
    [
      "has figure, side, middle and laps",
      [["ride", { figure: "circle", turn: side("left"), about: place("the well"), laps: once }]],
      "Circle left about the well, once",
    ],
    [
      "has the gait before the line it is ridden on, and where it goes",
      [
        ["ride", { figure: "straight", toward: place("the stair") }],
        ["go at", { gait: "walk" }],
      ],
      "Walk, straight to the stair",
    ],
    [
      "has the rein along a wall",
      [["ride", { figure: "along the wall", turn: side("right"), toward: place("the gate") }]],
      "Along the wall, right rein, to the gate",
    ],
    [
      "says where a line goes by its manner where no place is named",
      [["ride", { figure: "straight", how: "into the corner" }]],
      "Straight into the corner",
    ],
    [
      "goes toward a place where the line has a length of its own",
      [["ride", { figure: "charge", size: { is: "exact", of: 20 }, toward: place("the stair") }]],
      "Charge toward the stair",
    ],
    [
      "says of half a circle where it ends",
      [["ride", { figure: "part circle", amount: "half", turn: side("left"), toward: place("the gate") }]],
      "Half circle left to the gate",
    ],
    ["has the side of a turn", [["ride", { figure: "turn", amount: "half", turn: side("right") }]], "Half turn right"],
    [
      "says a halt once",
      [
        ["go at", { gait: "halt" }],
        ["ride", { figure: "halt" }],
      ],
      "Halt",
    ],
    [
      "says of a circle that the text does not say its side",
      [["ride", { figure: "circle" }]],
      "Circle, to which side · · ·",
    ],
    [
      "raises a spear into its hold in one",
      [["raise", { object: SPEAR, hand: "right", level: "high" }], hold("right")],
      "Raise the spear: upright, with the right hand",
    ],
    [
      "has first what is done before the horse goes",
      [
        ["ride", { figure: "turn", amount: "half", turn: side("left") }],
        ["raise", { object: SPEAR, level: "high" }, { timing: { is: "before" } }],
      ],
      "Raise the spear high; half turn left",
    ],
    [
      "says that one thing follows another",
      [
        ["pass", { object: SPEAR, from: "right", to: "left" }],
        ["change reins", { to: "right" }, { timing: { is: "after action", action: idOf("a pass") } }],
      ],
      "Pass the spear to the left hand; then reins to the right hand",
    ],
  ];
  test.each(table)("%s", (_why, acts, call) => {
    expect(callsOf({ acts })[0]?.[0]).toBe(call);
  });
});

describe("a step", () => {
  const circle: Acted = ["ride", { figure: "circle", turn: side("left"), about: place("the well"), laps: once }];
  test("tells of the hand and the middle of a figure only what changes", () => {
    const calls = callsOf(
      { acts: [circle, hold("right")] },
      { acts: [circle, hold("right")] },
      { acts: [hold("left")] },
    );
    expect(calls.map(([call]) => call)).toEqual([
      "Circle left about the well, once; spear upright, with the right hand",
      "Circle left again, once; spear upright",
      "Spear upright, with the left hand",
    ]);
  });

  test("too long for a breath is called by its name, its acts under it", () => {
    const long: Acted[] = [
      circle,
      ["ride", { figure: "straight", toward: place("the stair") }],
      ["ride", { figure: "halt", how: "a spear's length before it" }],
      hold("right"),
    ];
    expect(callsOf({ title: "To the stair", acts: long })[0]).toEqual([
      "To the stair",
      "Circle left about the well, once / Straight to the stair / Halt a spear's length before it / Spear upright, with the right hand",
      "to begin",
      "",
    ]);
  });

  test("is never called as an order where it hangs on a reading; the whole sign is with it", () => {
    const open: Acted[] = [
      ["pass", { object: SPEAR, from: "right", to: "left" }, { reads: "one", timing: half }],
      ["cross the neck", { object: SPEAR, to: side("left") }, { reads: "two" }],
      circle,
    ];
    expect(callsOf({ title: "The change", acts: open })[0]).toEqual([
      "The change",
      "Circle left about the well, once",
      "to begin",
      "†a 1: half-way: pass the spear to the left hand · †a 2: bring the spear over the horse’s neck to the left",
    ]);
  });

  test("of somebody else orders the rider only what is his", () => {
    const acts: Acted[] = [
      ["go at", { gait: "halt" }],
      ["plant", { object: SPEAR, at: place("the trough") }],
    ];
    expect(callsOf({ title: "A groom plants the spear", acts })[0]).toEqual([
      "A groom plants the spear",
      "The rider: Halt",
      "to begin",
      "a groom: plant the spear at the trough",
    ]);
    expect(callsOf({ title: "The spear stands upright", acts })[0]?.[0]).toBe("Halt; plant the spear at the trough");
    expect(callsOf({ role: "the second", acts: [["ride", { figure: "halt" }]] })[0]?.[0]).toBe("The second: halt");
  });
});

describe("when it is called", () => {
  const ride = (slots: Record<string, unknown>): Stepped => ({ acts: [["ride", slots]] });
  const table: [why: string, before: Stepped, step: Stepped, when: string][] = [
    [
      "where the one before it ends",
      ride({ figure: "straight", toward: place("the stair") }),
      ride({ figure: "halt" }),
      "at the stair",
    ],
    [
      "where he halted",
      {
        acts: [
          ["ride", { figure: "straight", toward: place("the gate") }],
          ["ride", { figure: "halt" }],
        ],
      },
      ride({ figure: "straight" }),
      "halted at the gate",
    ],
    [
      "when the circle is closed",
      ride({ figure: "circle", turn: side("left") }),
      ride({ figure: "halt" }),
      "when the circle is closed",
    ],
    [
      "out of a turn",
      ride({ figure: "turn", turn: side("left"), amount: "half" }),
      ride({ figure: "straight" }),
      "out of the turn",
    ],
    [
      "after the one before, where that need not come to a place",
      ride({ figure: "straight", toward: place("the stair"), size: { is: "exact", of: 5 } }),
      ride({ figure: "halt" }),
      "after 1",
    ],
    [
      "at the station it waits for",
      ride({ figure: "straight" }),
      { ...ride({ figure: "halt" }), cue: "the gate, the second time" },
      "at the gate, the second time",
    ],
    [
      "when something happens",
      ride({ figure: "straight" }),
      { ...ride({ figure: "halt" }), cue: "the horn is blown" },
      "when the horn is blown",
    ],
    [
      "with what is done on the way",
      ride({ figure: "straight" }),
      {
        acts: [
          ["ride", { figure: "circle", turn: side("left") }],
          ["raise", { object: SPEAR, level: "high" }, { timing: half }],
        ],
      },
      "after 1; half-way: raise the spear high",
    ],
  ];
  test.each(table)("%s", (_why, before, step, when) => {
    expect(callsOf(before, step)[1]?.[2]).toBe(when);
  });
});

describe("every exercise of the demo", () => {
  const opened = openStore(":memory:");
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  const loaded = loadDemo(opened.value, "2026-01-01T00:00:00Z");
  if (!loaded?.ok) throw new Error("The invented book was not written.");
  const exercises = readContents(opened.value).works.flatMap(({ rows }) => rows.exercises ?? []);

  test.each(exercises.map(({ value }) => [value.title, value.id]))(
    "%s: a breath each, and no open reading in it",
    (_title, id) => {
      const paper = printed(buildPaper(opened.value, askFor("caller's sheet", [id])));
      for (const { call, acts = [] } of blocksThat(paper, "calls").flatMap(({ items }) => items)) {
        expect(countedWords(call), plain(call)).toBeLessThanOrEqual(BREATH);
        for (const span of [call, ...acts].flat()) {
          expect(span.is === "words" ? span.standing : null).not.toBe("not settled");
        }
      }
    },
  );
});

test("a value nobody has settled is left out of the call and told small", () => {
  const book = new WorkBuilder("A book");
  const exercise = book.exercise("An exercise");
  const spear = book.object("the spear", "shaft");
  const crux = book.crux("Where to", exercise, { is: "ambiguous" });
  const step = book.step("Lower it", exercise);
  const act = book.action(step, "lower", {
    object: supplied(spear),
    level: supplied("middle"),
    bearing: held("Where to"),
  });
  for (const [name, hour] of [
    ["ahead", 12],
    ["aside", 10],
  ] as const) {
    const value = said({ is: "clock", hour }, "supplied", [{ is: "editor", note: "" }]);
    book.reading(name, crux, { values: [{ at: slotAt(act, "bearing"), value }] });
  }
  const paper = printed(paperOf(book.rows(), askFor("caller's sheet", [exercise]), NO_FILES));
  const [item] = blocksThat(paper, "calls").flatMap(({ items }) => items);
  expect([plain(item?.call ?? []), (item?.acts ?? []).map(plain), plain(item?.where ?? [])]).toEqual([
    "Lower it",
    ["Lower the spear, middle height"],
    "lower the spear, middle height: point forward or forward left (10 o’clock)†a",
  ]);
});

test("only what is not settled has a line under it: a caller's sheet has the key to no other", () => {
  const { rows, exercises } = smallBook();
  const paper = printed(paperOf(rows, askFor("caller's sheet", Object.values(exercises)), NO_FILES));
  const lined = blocksThat(paper, "calls")
    .flatMap(({ items }) => items)
    .flatMap(({ call, acts = [], when, where }) => [...call, ...acts.flat(), ...when, ...where])
    .flatMap((span) => (span.is === "words" && span.standing !== null ? [span.standing] : []));
  expect(lined.filter((standing) => standing !== "not settled")).toEqual([]);
});
