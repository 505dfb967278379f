/** shared/ride/rules/kit.ts - sizes allow what the hands are asked to do, as far as lengths are given.
 *  May import: shared/hands, types of shared/ride, siblings. Keeps rule V50 (shared/ride/rules/RULES.md). Metres.
 *  Necessary conditions only: what passes here may still not suit a horse or a rider. Where the text gives no length it
 *  cannot be told. */

import { inWords } from "../../ground/figures/figure.ts";
import { exactly, isKnown } from "../../hands/known.ts";
import { type Contact, HANDS, type ObjectState, type Zone } from "../../hands/state.ts";
import type { Ridden } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { type Judgement, kept, type RideRule, type Seen } from "./rule.ts";

/** Share of the length from the butt, or the pommel, at which a zone lies: a choice of this design. */
export const SHARE: Partial<Record<Zone, number>> = {
  butt: 0.05,
  rear: 0.28,
  balance: 0.45,
  fore: 0.62,
  head: 0.92,
  hilt: 0.08,
  blade: 0.5,
};

/** ANSUR II (2012; Gordon et al. 2014): elbow to grip, women, 5 %: the shortest that must lie behind the hand. */
const FOREARM = 0.29;
/** ANSUR II: shoulder height sitting, men, 95 %, with the thumb-tip reach of men, 95 %: the highest a hand comes. */
const HIGHEST = 0.656 + 0.889;
/** How low a mounted rider's hand comes without his leaving the saddle. A guess: no height of a seat is published. */
const LOWEST_GUESS = 0.8;

interface Ask {
  about: string;
  needs: string;
  /** Which of two hands is asked: the one that does it best, so that no more is asked than must be. */
  of: "front hand" | "rear hand";
  /** Whether a shaft of this length gripped at this share does it. */
  met: (length: number, share: number) => boolean;
  has: (length: number, share: number) => number;
}

const ASKS: readonly { when: (held: ObjectState, contacts: readonly Contact[]) => boolean; ask: Ask }[] = [
  {
    when: (_, contacts) =>
      contacts.some((one) => (one.with === "arm" || one.with === "forearm") && one.degree === "bears"),
    ask: {
      about: "beneath the arm",
      of: "front hand",
      needs: `beneath the arm at least ${FOREARM} m must lie behind the hand (elbow to grip of a small rider, ANSUR II)`,
      met: (length, share) => length * share >= FOREARM,
      has: (length, share) => length * share,
    },
  },
  {
    when: (held, contacts) =>
      isKnown(held.level, "high") && contacts.some((one) => one.with === "thigh" && one.degree === "bears"),
    ask: {
      about: "on the thigh",
      of: "rear hand",
      needs: `with the butt on the thigh the hand cannot be more than ${inWords(HIGHEST)} m above the seat (shoulder height and reach of a large rider, ANSUR II)`,
      met: (length, share) => length * share <= HIGHEST,
      has: (length, share) => length * share,
    },
  },
  {
    when: (held) => isKnown(held.level, "ground") && isKnown(held.frame, "carried"),
    ask: {
      about: "to the ground",
      of: "rear hand",
      needs: `to reach the ground from the saddle about ${LOWEST_GUESS} m must lie before the hand (a guess: no height of a seat is published)`,
      met: (length, share) => length * (1 - share) >= LOWEST_GUESS,
      has: (length, share) => length * (1 - share),
    },
  },
];

function check(ridden: Ridden, _: RideContext, { moments }: Seen): Judgement[] {
  if (ridden.way === "on foot") return [];
  return moments.flatMap((moment) =>
    moment.state.objects
      .filter(({ object }) => object.is === "shaft")
      .flatMap((held): Judgement[] => {
        const contacts = exactly(held.contacts) ?? [];
        const shares = sharesOf(held);
        const length = held.object.lengthMetres;
        return ASKS.filter(({ when }) => when(held, contacts)).map(({ ask }): Judgement => {
          const share = ask.of === "front hand" ? shares.at(-1) : shares[0];
          const told = length !== null && share !== undefined;
          if (told && ask.met(length, share)) return kept(moment.stage);
          return {
            verdict: told ? "broken" : "cannot tell",
            stage: moment.stage,
            about: `${held.object.id} ${ask.about}`,
            ...{ from: moment.from, to: moment.to, timed: moment.timed, lasts: true },
            action: moment.actions.at(-1) ?? null,
            quote: moment.actions,
            is: told
              ? `${ask.needs}; of a ${held.object.name} of ${inWords(length)} m held there, that is ${inWords(ask.has(length, share))} m`
              : `${ask.needs}, and ${length === null ? `the ${held.object.name} has no length` : "where it is held is not known"}`,
            lift: "Either the length is another, or it is held elsewhere",
            look: false,
          };
        });
      }),
  );
}

/** Where the hands are along it, from the butt. */
function sharesOf({ grip }: ObjectState): number[] {
  return HANDS.flatMap((hand) => {
    const zone = exactly<Zone | null>(grip[hand]);
    return zone === null ? [] : (SHARE[zone] ?? []);
  }).sort((a, b) => a - b);
}

export const sizesAllow: RideRule = {
  code: "sizes-allow",
  words: "says",
  sentence: "The length of the shaft allows what the hold asks, as far as lengths are given.",
  basis: "published source",
  source:
    "ANSUR II (2012; Gordon et al. 2014) for arms; where along the shaft a zone lies, and how low a mounted hand comes, are choices of this design.",
  severity: "warns",
  reach: "kit",
  check,
};
