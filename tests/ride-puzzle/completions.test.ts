/** tests/ride-puzzle/completions.test.ts - what the text leaves open, completed one way and another. */
import { describe, expect, test } from "vitest";
import { answerDecide, type DecideAsk, exercisePuzzle } from "../../shared/ride/puzzle/index.ts";
import { idOf, supplied } from "../drill/build-rows.ts";
import { at, metres, RideBuilder } from "../ride/build-ride.ts";

const ASK: DecideAsk = { picks: [], asAdopted: false, without: [] };
const right = supplied("right" as const);
const left = supplied("left" as const);

/** A narrow ground with a place near its left wall, and a spear. */
class Narrow extends RideBuilder {
  readonly spear = supplied(this.object("spear", "shaft"));

  constructor() {
    super({ width: 20, length: 40, trackOffset: 1 });
    this.station("the post", -9, 0);
    this.station("the door", 0, -20);
  }

  answer(completions: boolean) {
    return answerDecide(exercisePuzzle(this.rows(), [this.home], { completions }), ASK);
  }

  /** The spear stands in the ground, and no hand is on it. */
  begin(): string {
    const step = this.figure("out", "straight", { from: at("the door"), size: metres(10) });
    this.action(step, "plant", { object: this.spear });
    this.action(step, "release", { object: this.spear, hand: supplied("both") });
    return this.step("take it", this.home);
  }
}

describe("which hand takes", () => {
  test("[P7] two things that no one hand could do do not hold, though each by itself might", () => {
    const made = new Narrow();
    const step = made.begin();
    made.action(step, "take", { object: made.spear });
    const next = made.step("keep it right", made.home);
    made.action(next, "keep", { object: made.spear, hand: right });
    const last = made.step("keep it left", made.home);
    made.action(last, "keep", { object: made.spear, hand: left });
    // Until it is asked for as well, each hand may be the one.
    expect(made.answer(false).holding).toBe("1");
    expect(made.answer(true)).toMatchObject({ holding: "0", broken: [{ stage: idOf("keep it left") }] });
  });

  test("[P7] what is completed is told with the way that holds", () => {
    const made = new Narrow();
    const step = made.begin();
    made.action(step, "take", { object: made.spear });
    const next = made.step("keep it right", made.home);
    made.action(next, "keep", { object: made.spear, hand: right });
    const { holding, surely, witness } = made.answer(true);
    expect([holding, surely]).toEqual(["1", "0"]);
    expect(witness?.supplied).toEqual([{ stage: idOf("take it"), words: "take the spear: with the right hand" }]);
  });

  test("[P7] nothing is supplied where it makes no difference", () => {
    const made = new Narrow();
    made.action(made.begin(), "take", { object: made.spear, hand: right });
    expect(made.answer(true).witness?.supplied).toEqual([]);
  });
});

describe("to which side it turns", () => {
  const turning = (turn?: "left" | "right") =>
    turn === undefined ? {} : { turn: supplied({ to: turn, viewpoint: "rider" as const }) };

  /** Up the ground 3 m from the left wall, and there a circle of 12 m. */
  function besideTheWall(turn?: "left" | "right"): Narrow {
    const made = new Narrow();
    made.station("below", -7, -10);
    made.station("above", -7, 10);
    made.figure("up", "straight", { from: at("below"), toward: at("above") });
    made.figure("round", "circle", { size: metres(12), ...turning(turn) });
    return made;
  }

  test("[P7] a circle that is said to no side is ridden to the side on which it fits", () => {
    expect(besideTheWall("left").answer(true).holding).toBe("0");
    expect(besideTheWall("right").answer(true)).toMatchObject({ holding: "1", surely: "1" });
    const { holding, surely, witness } = besideTheWall().answer(true);
    expect([holding, surely]).toEqual(["1", "0"]);
    expect(witness?.supplied).toEqual([{ stage: idOf("round"), words: "circle, of 12 m (39 ft): to the right" }]);
  });

  test("[P7] where it begins goes by the side that is supplied", () => {
    const made = new Narrow();
    made.figure("round", "circle", { from: at("the door"), size: metres(16) });
    expect(made.answer(true)).toMatchObject({ holding: "1", surely: "1" });
  });
});
