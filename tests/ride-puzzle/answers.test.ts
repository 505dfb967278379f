/** tests/ride-puzzle/answers.test.ts - what is answered of small exercises: counts, classes, picks, confidences, and several at once. */
import { describe, expect, test } from "vitest";
import { countByBruteForce } from "../../shared/decide/brute-force.ts";
import {
  type AnsweredReading,
  answerDecide,
  type DecideAsk,
  exercisePuzzle,
  type Pick,
  type WeighedExercise,
} from "../../shared/ride/puzzle/index.ts";
import { held, idOf, slotAt, supplied, under } from "../drill/build-rows.ts";
import { LEFT, metres, RIGHT, RideBuilder } from "../ride/build-ride.ts";
import { demoRows } from "../ride/rides.ts";

const ASK: DecideAsk = { picks: [], asAdopted: false, without: [] };
const asked = (weighed: WeighedExercise, ask: Partial<DecideAsk> = {}) => answerDecide(weighed, { ...ASK, ...ask });
const pick = (crux: string, reading: string): Pick => ({ crux: idOf(crux), reading: idOf(reading) });
const decided = { on: "2026-01-01", sitting: null, reason: "so it reads" };

/** Circles whose sizes are in cruxes. On this ground a circle of 30 m does not fit, and 8 m does. */
class Circles extends RideBuilder {
  constructor() {
    super({ width: 20, length: 40, trackOffset: 1 });
  }

  /** A circle whose size is given by the readings of a crux, in metres. */
  sized(crux: string, sizes: Record<string, number>, fields: { home?: string; work?: boolean } = {}): string {
    const step = this.step(`step of ${crux} ${fields.home ?? ""}`, fields.home ?? this.home);
    const action = this.action(step, "ride", {
      figure: supplied("circle" as const),
      turn: LEFT,
      size: held(crux),
    });
    for (const [reading, size] of Object.entries(sizes))
      this.gives(crux, reading, { at: slotAt(action, "size"), value: metres(size) });
    return action;
  }

  readonly #given = new Map<
    string,
    Map<string, { at: ReturnType<typeof slotAt>; value: ReturnType<typeof metres> }[]>
  >();

  gives(
    crux: string,
    reading: string,
    value: { at: ReturnType<typeof slotAt>; value: ReturnType<typeof metres> },
  ): void {
    const readings = this.#given.get(crux) ?? new Map();
    readings.set(reading, [...(readings.get(reading) ?? []), value]);
    this.#given.set(crux, readings);
  }

  /** The cruxes with their readings, each with what it gives; `more` by name. */
  close(more: Record<string, object> = {}): this {
    for (const [crux, readings] of this.#given) {
      this.crux(crux, this.home, more[crux] ?? {});
      for (const [reading, values] of readings) this.reading(reading, idOf(crux), { values, ...(more[reading] ?? {}) });
    }
    return this;
  }

  weighed(): WeighedExercise {
    return exercisePuzzle(this.rows(), [this.home]);
  }
}

const row = (shares: readonly AnsweredReading[], reading: string) => {
  const share = shares.find((one) => one.reading === idOf(reading));
  return share && [share.verdict, share.holding, share.all, share.share];
};

describe("counts", () => {
  const made = new Circles();
  made.sized("first", { small: 8, huge: 30 });
  made.sized("second", { narrow: 8, wide: 16 });
  const weighed = made.close().weighed();
  const answer = asked(weighed);

  test("[P1] the size that does not fit is dead, the other forced, and what does not matter to it open", () => {
    expect([answer.holding, answer.all, answer.exact]).toEqual(["2", "4", true]);
    expect(row(answer.shares, "small")).toEqual(["forced", "2", "2", 1]);
    expect(row(answer.shares, "huge")).toEqual(["dead", "0", "2", 0]);
    expect(row(answer.shares, "narrow")).toEqual(["possible", "1", "2", 0.5]);
  });

  test("[P10] a pick narrows the count, and a pick of what is not counted changes nothing", () => {
    expect(asked(weighed, { picks: [pick("second", "wide")] }).holding).toBe("1");
    expect(asked(weighed, { picks: [pick("first", "huge")] }).holding).toBe("0");
    expect(asked(weighed, { picks: [pick("gone", "gone")] })).toEqual(answer);
  });

  test("[P1] where nothing holds, it is told what broke", () => {
    expect(asked(weighed, { picks: [pick("first", "huge")] }).broken).toEqual([
      { stage: idOf("step of first "), rule: "figure-fits", assignments: "2" },
    ]);
  });

  test("without the rule that is in the way it holds, here and nowhere else", () => {
    const without = (stage: string) =>
      asked(weighed, {
        picks: [pick("first", "huge")],
        without: [{ stage: idOf(stage), rule: "figure-fits" }],
      }).holding;
    expect([without("step of first "), without("step of second ")]).toEqual(["2", "0"]);
  });

  test("everything that is answered goes through JSON", () => {
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });
});

describe("classes of readings", () => {
  test("[P6] readings of equal effect are one class, and share their numbers", () => {
    const made = new Circles();
    made.sized("size", { small: 8, wee: 8, large: 16 });
    const weighed = made.close().weighed();
    const { all, shares } = asked(weighed);
    expect(all).toBe("2");
    expect(row(shares, "wee")).toEqual(row(shares, "small"));
    expect(shares.find(({ reading }) => reading === idOf("wee"))?.sameAs).toBe(idOf("small"));
    expect(asked(weighed, { picks: [pick("size", "wee")] }).holding).toBe("1");
  });

  test("[P6] a crux without effect is listed and not counted, until something is tied to it", () => {
    const made = new Circles();
    made.sized("size", { small: 8, large: 16 });
    made.sized("words", { one: 10, two: 10 });
    const untied = made.close().weighed();
    expect(untied.apparatus).toEqual([{ crux: idOf("words"), why: "Its readings do the same to the ride." }]);
    expect(asked(untied).all).toBe("2");

    const again = new Circles();
    again.sized("size", { small: 8, large: 16 });
    again.sized("words", { one: 10, two: 10 });
    const requires = [{ is: "reading" as const, crux: idOf("words"), readings: [idOf("two")] }];
    const tied = again.close({ small: { requires } }).weighed();
    expect(tied.apparatus).toEqual([]);
    expect([asked(tied).all, asked(tied).holding]).toEqual(["3", "3"]);
  });

  test("[P3] steps that two readings put in and that do the same are one class", () => {
    const made = new Circles();
    made.crux("which", made.home);
    for (const reading of ["as A", "as B", "as C"]) {
      made.reading(reading, idOf("which"));
      const step = made.step(`step ${reading}`, made.home);
      made.action(step, "ride", {
        figure: supplied("circle" as const),
        turn: reading === "as C" ? RIGHT : LEFT,
        size: metres(8),
      });
    }
    const rows = made.rows();
    const guarded = {
      ...rows,
      actions: rows.actions?.map((action, index) => ({
        ...action,
        value: {
          ...action.value,
          owner: idOf("step as A"),
          guard: under("which", ["as A", "as B", "as C"][index] ?? ""),
        },
      })),
      elements: rows.elements?.slice(0, 1),
    };
    const { classes } = exercisePuzzle(guarded, [made.home]);
    expect(classes.get(idOf("which"))?.map(({ members }) => members)).toEqual([
      [idOf("as A"), idOf("as B")],
      [idOf("as C")],
    ]);
  });

  test("[P10] as adopted: one reading a crux, without a condition; what is left free stays free", () => {
    const adopted = (condition = "") => ({ status: { is: "adopted" as const, ...decided, condition } });
    const cases: [more: Record<string, object>, holding: string][] = [
      [{}, "4"],
      [{ small: adopted() }, "2"],
      [{ small: adopted("against a rider on foot") }, "4"],
      [{ small: adopted(), size: { leftFree: { ...decided, default: idOf("small") } } }, "4"],
      [{ small: adopted(), narrow: adopted() }, "1"],
    ];
    for (const [more, holding] of cases) {
      const made = new Circles();
      made.sized("size", { small: 8, large: 16 });
      made.sized("second", { narrow: 8, wide: 16 });
      const weighed = made.close(more).weighed();
      expect(asked(weighed, { asAdopted: true }).holding).toBe(holding);
      expect(asked(weighed).holding).toBe("4");
      expect(asked(weighed, { asAdopted: true, picks: [pick("size", "large")] }).holding).not.toBe("0");
    }
  });

  test("[P14] confidences weigh exactly, a class with its members' together", () => {
    const made = new Circles();
    made.sized("size", { small: 8, wee: 8, huge: 30 });
    made.sized("second", { narrow: 8, wide: 16 });
    const sure = (confidence: string) => ({ confidence });
    const weighed = made
      .close({ small: sure("0.3"), wee: sure("0.3"), huge: sure("0.4"), narrow: sure("0.9"), wide: sure("0.1") })
      .weighed();
    const { weighted } = asked(weighed);
    const { denominator = "0", holding = "0", shares = [] } = weighted ?? {};
    expect(Number(holding) / Number(denominator)).toBeCloseTo(0.6, 12);
    expect(shares.find(({ reading }) => reading === idOf("narrow"))?.share).toBe(0.9);
    expect(asked(made.weighed(), { picks: [pick("size", "huge")] }).weighted?.holding).toBe("0");
  });
});

describe("more combinations at one step than are tried", () => {
  test("[P2] every crux that bears is touched all the same", { timeout: 60_000 }, () => {
    const made = new Circles();
    const step = made.step("busy", made.home);
    const names = Array.from({ length: 11 }, (_, index) => `crux ${index}`);
    for (const [index, name] of names.entries()) {
      made.crux(name, made.home);
      const id = idOf(`act ${index}`);
      if (index === 0) made.action(step, "ride", { figure: supplied("circle" as const), size: held(name) }, { id });
      else made.action(step, "sit", { how: held(name) }, { id });
      for (const size of [8, 30]) {
        const value = {
          at: slotAt(id, index === 0 ? "size" : "how"),
          value: index === 0 ? metres(size) : supplied(`${size}`),
        };
        made.reading(`${name} ${size}`, idOf(name), { values: [value] });
      }
    }
    // Where it begins hangs on the first figure, and that may be the second step's.
    made.sized("next", { narrow: 8, wide: 16 });
    made.sized("far", { near: 8, away: 16 });
    const weighed = made.close().weighed();
    expect(weighed.puzzle.stages.map(({ touches }) => touches.length)).toEqual([12, 1, 1]);
    const { holding, all } = asked(weighed);
    expect([holding, all]).toEqual(["4096", "8192"]);
  });
});

describe("several exercises", () => {
  const { rows, exercises } = demoRows();
  const ids = Object.values(exercises);
  const alone = ids.map((id) => asked(exercisePuzzle(rows, [id])));

  test("exercises that share no crux multiply", () => {
    const together = asked(exercisePuzzle(rows, ids));
    const product = alone.reduce((all, { holding }) => all * BigInt(holding), 1n);
    expect(together.exact).toBe(true);
    expect(BigInt(together.holding)).toBe(product);
  });

  test("[P4] each begins anew: in whatever order they come, the count is the same", () => {
    const [first = "", second = ""] = ids;
    const both = asked(exercisePuzzle(rows, [first, second]));
    const turned = asked(exercisePuzzle(rows, [second, first]));
    expect([turned.holding, turned.surely, turned.all]).toEqual([both.holding, both.surely, both.all]);
  });

  test("a crux of the whole work is one crux, however many exercises hang on it", () => {
    const made = new Circles();
    const other = made.exercise("another ride", { ground: idOf("ground") });
    made.sized("size", { small: 8, huge: 30, large: 16 });
    made.sized("size", { small: 30, huge: 8, large: 16 }, { home: other });
    made.close({ size: { exercise: null } });
    const answers = [[made.home], [other], [made.home, other]].map((set) => asked(exercisePuzzle(made.rows(), set)));
    expect(answers.map(({ holding, all }) => [holding, all])).toEqual([
      ["2", "3"],
      ["2", "3"],
      ["1", "3"],
    ]);
  });

  test("the whole demo is counted as by trying everything, exercise by exercise", () => {
    for (const [index, id] of ids.entries()) {
      const { puzzle } = exercisePuzzle(rows, [id]);
      const plain = countByBruteForce(puzzle);
      expect([alone[index]?.holding, alone[index]?.surely]).toEqual([plain.holding, plain.surelyHolding].map(String));
    }
  });
});
