/** Ride: compile a drill of 200 steps with its hands, check it, sample eight riders of it 60 times a second, and find how
 *  near they come. The rows are the same every run: figures in a fixed order on one large ground, nothing drawn. */
import type { ActOf } from "../../schema/act.ts";
import type { Rows } from "../../schema/record.ts";
import { sampleRiders } from "../../shared/ground/index.ts";
import { rideExercise, rideWithContext } from "../../shared/ride/ride-exercise.ts";
import { rideTogether } from "../../shared/ride/ride-together.ts";
import { findingsOf } from "../../shared/ride/rules/index.ts";
import { idOf, supplied } from "../drill/build-rows.ts";
import { at, LEFT, metres, RIGHT, RideBuilder, times } from "../ride/build-ride.ts";
import type { Report } from "./harness.ts";

type Slots = ActOf<"ride">["slots"];

/** From the oak on the left rein, and back to it, a few seconds each; every step has an act of the hands. */
const ROUND: readonly [NonNullable<Slots["figure"]>, Slots][] = [
  [supplied("volte"), { turn: LEFT, size: metres(6) }],
  [supplied("circle"), { turn: LEFT, size: metres(10), laps: times(1) }],
  [supplied("half volte"), { turn: LEFT, size: metres(5) }],
  [supplied("along the wall"), { turn: RIGHT, toward: at("the elm") }],
  [supplied("turn"), { turn: RIGHT, amount: supplied("half"), manner: supplied("on the haunches") }],
  [supplied("halt"), {}],
  [supplied("straight"), { size: metres(4) }],
  [supplied("along the wall"), { turn: LEFT, toward: at("the oak") }],
];

function drill(steps: number): { rows: Rows; exercise: string } {
  const made = new RideBuilder({ width: 20, length: 40, trackOffset: 1.8 });
  made.station("the oak", 10, 0, "the elm");
  made.station("the elm", -10, 0, "the oak");
  const spear = supplied(made.object("spear", "shaft"));
  const gait = made.standing("canter throughout", made.home);
  made.action(gait, "go at", { gait: supplied("canter"), pace: supplied("working") });
  for (let index = 0; index < steps; index += 1) {
    const [figure, slots] = ROUND[index % ROUND.length] as (typeof ROUND)[number];
    const from = index === 0 ? { from: at("the oak") } : {};
    const step = made.step(`step ${index}`, made.home);
    made.action(step, "ride", { figure, ...slots, ...from });
    if (index === 0) made.action(step, "take", { object: spear, hand: supplied("right"), zone: supplied("balance") });
    const hour = ((index * 5) % 12) + 1;
    made.action(step, "carry", {
      object: spear,
      hand: supplied("right"),
      bearing: supplied({ is: "clock", hour }),
      level: supplied("high"),
    });
  }
  return { rows: made.rows(), exercise: idOf("a ride") };
}

export default async function rideBench(report: Report): Promise<void> {
  const { rows, exercise } = drill(200);
  const ridden = rideExercise(rows, exercise, {});
  const refused = ridden.stages.flatMap(({ refusal }) => refusal ?? []);
  if (refused.length > 0) throw new Error(refused[0]);
  if (ridden.stages.length !== 200) throw new Error("200 stages were expected.");
  const ride = `${ridden.pieces.length} pieces, ${Math.round(ridden.timed.duration)} s`;
  for (const steps of [50, 100, 200]) {
    const small = drill(steps);
    await report.bench(`ride: compile ${steps} steps`, { runs: 15, warmUp: 5 }, () =>
      rideWithContext(small.rows, small.exercise),
    );
  }
  const { ridden: bare, context } = rideWithContext(rows, exercise);
  await report.bench("ride: check 200 steps", { runs: 15, warmUp: 3, note: `${ridden.findings.length} findings` }, () =>
    findingsOf(bare, context),
  );
  const asked = (count: number) =>
    Array.from({ length: count }, (_, index) => ({ ridden, offsetSeconds: 3 * index, mirrored: index % 2 === 1 }));
  const search = { within: 0.01, care: 3 };
  for (const count of [1, 2, 4, 8])
    await report.bench(
      `ride: distances of ${count} ${count === 1 ? "rider" : "riders"} below 3 m`,
      { runs: 8, warmUp: 2, note: ride },
      () => rideTogether(asked(count), search),
    );
  const eight = rideTogether(asked(8), search);
  if (!eight.ok) throw new Error(eight.sentence);
  await report.bench("ride: sample 8 riders, 60 a second", { runs: 10, warmUp: 2, note: ride }, () =>
    sampleRiders(eight.riders, eight.from, eight.to, 60),
  );
  await report.bench(
    "ride: all of it, 200 steps and 8 riders (target 100 ms)",
    { runs: 15, warmUp: 5, note: ride },
    () => {
      const whole = rideExercise(rows, exercise, {});
      const together = rideTogether(
        Array.from({ length: 8 }, (_, index) => ({
          ridden: whole,
          offsetSeconds: 3 * index,
          mirrored: index % 2 === 1,
        })),
        search,
      );
      if (together.ok) sampleRiders(together.riders, together.from, together.to, 60);
    },
  );
}
