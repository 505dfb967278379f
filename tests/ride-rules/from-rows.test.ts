/** tests/ride-rules/from-rows.test.ts - findings of a small work, from its rows: sentences word by word, readings that lift,
 *  waivers, severities, the order of rows. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Kind, Rows } from "../../schema/record.ts";
import { answerDecide, exercisePuzzle } from "../../shared/ride/puzzle/index.ts";
import type { Finding } from "../../shared/ride/ridden.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { held, idOf, NO_BASIS, said, slotAt, supplied } from "../drill/build-rows.ts";
import { LEFT, metres, RideBuilder, timed } from "../ride/rides.ts";
import { expectAsRidden } from "../ride-puzzle/whole-rides.ts";

interface Asked {
  rule?: { code: string; severity: "bars" | "warns" | "notes" | "off" };
  waiver?: { rule: string; reason: string };
}

/** A circle, and a turn with both hands on the spear from its middle; whether it is both hands is a crux. */
function twoHandsInTheTurn({ rule, waiver }: Asked = {}) {
  const book = new RideBuilder({ width: 40, length: 60, trackOffset: 2 });
  const layer = book.layer("The translation");
  const passage = book.passage("12v", [{ kind: "section", from: ["12v"] }], book.home);
  const text = book.text(
    passage,
    layer,
    "Ride the circle. As he turns he sets both hands to the spear and looks about.",
  );
  const spear = book.object("spear", "shaft");
  const reins = book.object("reins", "reins");
  const bothHands = book.hold("in both hands", {
    hands: "two",
    slots: { zone: supplied("balance"), secondZone: supplied("fore") },
  });
  const low = book.hold("by the boot", {
    slots: { zone: supplied("balance"), level: supplied("low"), bearing: supplied({ is: "clock", hour: 12 }) },
  });

  const circle = book.step("The circle", book.home);
  book.action(circle, "keep", { hand: supplied("left"), object: supplied(reins) }, timed({ is: "before" }));
  book.action(circle, "lay reins", { on: supplied("neck") }, timed({ is: "before" }));
  book.action(circle, "change reins", { to: supplied("left") }, timed({ is: "before" }));
  book.action(
    circle,
    "take",
    { hand: supplied("right"), object: supplied(spear), zone: supplied("balance") },
    timed({ is: "before" }),
  );
  book.action(
    circle,
    "hold",
    { object: supplied(spear), hold: supplied(low), hand: supplied("right") },
    timed({ is: "before" }),
  );
  book.action(circle, "ride", { figure: supplied("circle"), turn: LEFT, size: metres(12) });

  const turn = book.step("The turn", book.home);
  book.action(turn, "ride", { figure: supplied("half volte"), turn: LEFT, size: metres(8) });
  const both = book.action(
    turn,
    "hold",
    { object: supplied(spear), hold: held("which hold"), hand: supplied("right") },
    timed({ is: "at", over: 1, of: 2 }),
  );
  const mark = book.mark("actions", both, text, "he sets both hands to the spear");
  const which = book.crux("which hold", book.home);
  const at = slotAt(both, "hold");
  book.reading("both hands", which, { values: [{ at, value: said(bothHands, "stated", [{ is: "words", mark }]) }] });
  book.reading("one hand after the other", which, { values: [{ at, value: supplied(low) }] });
  if (rule)
    book.put("rules", {
      id: idOf("rule"),
      work: book.work,
      sentence: "Ours.",
      basis: "the user",
      support: NO_BASIS,
      reach: "instant",
      ...rule,
    });
  if (waiver)
    book.put("waivers", {
      id: idOf("waiver"),
      element: turn,
      basis: [{ is: "editor", note: "seen at the court" }],
      ...waiver,
    });
  return { rows: book.rows(), exercise: book.home, which, turn };
}

/** The work begins the exercise with the spear in a strong hold, in one hand; a second step carries it otherwise. */
function begunInStrongHold() {
  const book = new RideBuilder({ width: 40, length: 60, trackOffset: 2 });
  const layer = book.layer("The translation");
  const passage = book.passage("2r", [{ kind: "section", from: ["2r"] }], book.home);
  const text = book.text(passage, layer, "He begins with the spear couched. He rides the circle, and then lowers it.");
  const [spear, reins] = [book.object("spear", "shaft"), book.object("reins", "reins")];
  const couched = book.hold("couched", {
    strong: true,
    slots: { zone: supplied("balance"), reinZone: supplied("raised") },
  });
  const begins = book.standing("How it begins", null);
  const before = { timing: supplied({ is: "before" as const }) };
  book.action(begins, "keep", { hand: supplied("left"), object: supplied(reins) }, before);
  const taken = { object: supplied(spear), hold: supplied(couched), hand: supplied("right" as const) };
  const opening = book.action(begins, "hold", taken, before);
  book.action(begins, "place rein hand", { zone: supplied("at its place") }, before);
  const circle = book.step("The circle", book.home);
  book.action(circle, "ride", { figure: supplied("circle"), turn: LEFT, size: metres(12) });
  const lowers = book.step("He lowers it", book.home);
  book.action(lowers, "carry", { object: supplied(spear), level: supplied("low") });
  book.mark("actions", opening, text, "with the spear couched");
  for (const code of ["rein-hand-zone", "strong-hold"])
    book.put("rules", {
      id: idOf(code),
      work: book.work,
      ...{ code, sentence: "Ours.", basis: "the user", support: NO_BASIS, severity: "bars", reach: "instant" },
    });
  return { rows: book.rows(), exercise: book.home, circle, opening };
}

const found = (rows: Rows, exercise: string, options = {}): Finding[] =>
  rideExercise(rows, exercise, options).findings.filter(({ rule }) => rule !== "joins-shown");

describe("findings from rows", () => {
  const { rows, exercise, which, turn } = twoHandsInTheTurn();

  test("[V10] a finding says where, what is in the way, what the words say, what lifts it, and under which reading it comes", () => {
    const [finding, another] = found(rows, exercise);
    expect(another).toBeUndefined();
    expect(finding?.sentence).toBe(
      "Step 2, from the middle of the half volte: both hands are on the spear, so nobody holds the reins. " +
        "The passage (§ 12v) says only “he sets both hands to the spear”. " +
        "Either one hand keeps the reins together with the spear, and the hold says so, or the reins are laid somewhere first, or one hand stays off the spear. " +
        "It comes with the reading “both hands” of “which hold”, which nobody has settled; under “one hand after the other” it does not arise.",
    );
    expect(finding).toMatchObject({
      rule: "reins-held",
      severity: "bars",
      verdict: "broken",
      element: turn,
      waived: null,
    });
    expect(finding?.reading?.lifting.map(({ title }) => title)).toEqual(["one hand after the other"]);
    expect(finding?.citations.map(({ quote }) => quote)).toEqual(["he sets both hands to the spear"]);
  });

  test("[V70] under the other reading it does not arise", () => {
    expect(found(rows, exercise, { choice: [{ crux: which, reading: idOf("one hand after the other") }] })).toEqual([]);
  });

  test("[V9] a waiver is shown with its reason and what it rests on, and changes nothing else", () => {
    const waived = twoHandsInTheTurn({ waiver: { rule: "reins-held", reason: "The horse knows the way" } });
    const [before] = found(rows, exercise);
    expect(found(waived.rows, exercise)).toEqual([
      { ...before, waived: "The horse knows the way (the editor: seen at the court)" },
    ]);
  });

  test("the work sets the severity, and turns a rule off", () => {
    for (const severity of ["warns", "notes"] as const) {
      const set = twoHandsInTheTurn({ rule: { code: "reins-held", severity } });
      expect(found(set.rows, exercise).map((one) => one.severity)).toEqual([severity]);
    }
    expect(found(twoHandsInTheTurn({ rule: { code: "reins-held", severity: "off" } }).rows, exercise)).toEqual([]);
  });

  test("the order of rows does not matter, to the byte", () => {
    const full = twoHandsInTheTurn({
      rule: { code: "reins-held", severity: "warns" },
      waiver: { rule: "reins-held", reason: "tried" },
    }).rows;
    const first = JSON.stringify(rideExercise(full, exercise).findings);
    fc.assert(
      fc.property(fc.infiniteStream(fc.nat()), (dice) => {
        const shuffled = Object.fromEntries(
          Object.entries(full).map(([kind, list]) => [kind, shuffle(list as unknown[], dice)]),
        ) as { [kind in Kind]?: never };
        expect(JSON.stringify(rideExercise(shuffled, exercise).findings)).toBe(first);
      }),
      { numRuns: 30 },
    );
  });

  test("in the mirrored world the same findings stand, told with the sides changed over and the words as they are", () => {
    const [plain] = found(rows, exercise);
    const [mirrored] = found(rows, exercise, { rein: "mirror the world" });
    expect(mirrored).toEqual({ ...plain, sentence: plain?.sentence });
  });
});

function shuffle<T>(list: readonly T[], dice: { next(): IteratorResult<number> }): T[] {
  const rest = [...list];
  return list.flatMap(() => rest.splice((dice.next().value as number) % rest.length, 1));
}

test("[V9] what is done again within what is done again has findings of its own", () => {
  const book = new RideBuilder({ width: 40, length: 60, trackOffset: 2 });
  const spear = book.object("spear", "shaft");
  const step = book.step("give it", book.home);
  book.action(step, "take", { hand: supplied("right"), object: supplied(spear), zone: supplied("head") });
  book.action(step, "pass", {
    object: supplied(spear),
    from: supplied("right"),
    to: supplied("left"),
    zone: supplied("butt"),
  });
  const twice = { times: supplied({ is: "times" as const, n: 2 }), manner: "as it is" as const, except: [] };
  book.element("again", book.home, { is: "again", of: { is: "elements", from: step, to: step }, ...twice });
  book.element("and again", book.home, {
    is: "again",
    of: { is: "elements", from: idOf("again"), to: idOf("again") },
    ...twice,
  });
  const passed = found(book.rows(), book.home).filter(({ rule }) => rule === "pass-grips");
  expect(passed.length).toBeGreaterThan(2);
  expect(new Set(passed.map(({ id }) => id)).size).toBe(passed.length);
});

describe("a hold the exercise begins with", () => {
  const { rows, exercise, circle, opening } = begunInStrongHold();

  test("[V12] [V15] is in force from the first moment until something changes it", () => {
    const told = found(rows, exercise).filter(({ rule }) => rule === "rein-hand-zone" || rule === "strong-hold");
    expect(told.map(({ rule, verdict, element }) => [rule, verdict, element])).toEqual([
      ["strong-hold", "cannot tell", circle],
      ["rein-hand-zone", "broken", circle],
    ]);
    const [strong, zone] = told;
    expect(strong?.action).toBe(opening);
    expect(strong?.sentence).toContain("The passage (§ 2r) says only “with the spear couched”.");
    expect(zone?.sentence).toContain("the hold “couched” has the rein hand raised, but the rein hand is at its place");
  });

  test("[P5] so it is where readings are counted", () => {
    expectAsRidden(rows, [exercise]);
    const { holding } = answerDecide(exercisePuzzle(rows, [exercise]), { picks: [], asAdopted: false, without: [] });
    expect(holding).toBe("0");
  });
});
