/** shared/ride/rules/bends.ts - a bend is not too tight for the gait, and a circle is of a size that is ridden.
 *  May import: shared/ground, types of shared/ride, siblings. Keeps rules V25, V26 (shared/ride/rules/RULES.md).
 *  Metres, metres a second, degrees. */
import { inWords } from "../../ground/figures/figure.ts";
import { leanDegrees } from "../../ground/lean.ts";
import type { Arc } from "../../ground/piece.ts";
import type { Ridden } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { turnSide, type Window, type Windows } from "./moments.ts";
import { type Judgement, kept, type RideRule, type Seen } from "./rule.ts";

/** Degrees. No published limit was found: a choice of this design. It lets pass what published rules ride, a corner of
 *  6 m at the working canter (27.5), and little above. */
export const MOST_LEAN = 30;
/** FEI Dressage Rules Art. 410.1: a volte is 6, 8 or 10 m across; more than 10 m is a circle. Metres. */
export const VOLTE = { least: 6, most: 10 } as const;
/** Metres: a size that is this near a bound is at it. */
const NEAR = 0.005;

interface Bend {
  window: Window;
  arc: Arc;
}

function bendsIn(windows: Windows, stage: number): Bend[] {
  return windows(stage).flatMap((window) =>
    window.piece.is === "arc" && turnSide(window.piece) !== null ? [{ window, arc: window.piece }] : [],
  );
}

function checkLean(ridden: Ridden, _: RideContext, { windows }: Seen): Judgement[] {
  if (ridden.way === "on foot") return [];
  return ridden.stages.flatMap((__, stage) =>
    bendsIn(windows, stage).map(({ window, arc }): Judgement => {
      const { speed, gait, pace, gaitSupplied, action } = window.ridden;
      const lean = leanDegrees(speed, arc.radius);
      if (lean <= MOST_LEAN) return kept(stage);
      const gaitWords = `${pace === null ? "" : `${pace === "full speed" ? "full-speed" : pace} `}${gait}`;
      return {
        verdict: "broken",
        stage,
        about: action ?? "bend",
        ...{ from: window.from, to: window.to, timed: true, lasts: false },
        action,
        quote: action === null ? [] : [action],
        is: `at the ${gaitWords}${gaitSupplied ? " (which is supplied)" : ""}, ${inWords(speed)} m/s, a bend of ${inWords(2 * arc.radius)} m across makes horse and rider lean ${Math.round(lean)}°, more than the ${MOST_LEAN}° this program takes for safe`,
        lift: "Either the bend is wider, or the pace is shorter there",
        look: false,
      };
    }),
  );
}

export const bendSuitsGait: RideRule = {
  code: "bend-suits-gait",
  words: "says",
  sentence: `A bend is not so tight for the gait that horse and rider lean more than ${MOST_LEAN}°.`,
  basis: "common practice",
  source:
    "The lean is v²/(g·r); horses on a lunge leaned about 1° less (Brocklehurst, Weller and Pfau 2014). No limit is published: 30° is a choice of this design.",
  severity: "warns",
  reach: "piece",
  check: checkLean,
};

const CIRCLES: readonly unknown[] = ["circle", "part circle", "volte", "figure of eight"];

function checkCircle(ridden: Ridden, _: RideContext, { windows }: Seen): Judgement[] {
  return ridden.stages.flatMap((__, stage) =>
    bendsIn(windows, stage)
      .filter(({ window }) => CIRCLES.includes(window.ridden.figure))
      .map(({ window, arc }): Judgement => {
        const { figure, action, gait } = window.ridden;
        const across = 2 * arc.radius;
        const tooSmall = across < VOLTE.least - NEAR && gait !== "walk";
        const tooLarge = figure === "volte" && across > VOLTE.most + NEAR;
        if (!tooSmall && !tooLarge) return kept(stage);
        const size = `${inWords(across)} m across`;
        return {
          verdict: "broken",
          stage,
          about: action ?? "circle",
          ...{ from: window.from, to: window.to, timed: true, lasts: false },
          action,
          quote: action === null ? [] : [action],
          is: tooLarge
            ? `a volte ${size} is a circle by today’s rules, which end the volte at ${VOLTE.most} m (FEI Dressage Rules Art. 410.1)`
            : `the ${figure} is ${size}; the smallest that today’s rules ride is ${VOLTE.least} m (FEI Dressage Rules Art. 410.1)`,
          lift: tooLarge
            ? "Either it is smaller, or it is better called a circle"
            : "Either it is larger, or it is ridden at the walk: the 19th-century volte was 12 yards round, 3.5 m across (De Bussigny)",
          look: false,
        };
      }),
  );
}

export const circleSize: RideRule = {
  code: "circle-size",
  words: "says",
  sentence: `A volte is ${VOLTE.least} to ${VOLTE.most} m across, and no circle above the walk is smaller.`,
  basis: "published source",
  source: "FEI Dressage Rules Art. 410.1; De Bussigny, Equitation, for the volte of 12 yards round.",
  severity: "notes",
  reach: "piece",
  check: checkCircle,
};
