/** shared/ride/rules/passing.ts - a shaft goes from hand to hand where the hands meet.
 *  May import: shared/hands, types of shared/ride, siblings. Keeps rule V14 (shared/ride/rules/RULES.md). */
import { isKnown, mayBe, possible } from "../../hands/known.ts";
import { HANDS, type ObjectState, type Zone, zonesOf } from "../../hands/state.ts";
import type { Ridden } from "../ridden.ts";
import type { RideContext } from "../ride-context.ts";
import { objectOf } from "./holds-in-force.ts";
import { type Judgement, kept, type RideRule, type Seen, type Verdict, verdictOver } from "./rule.ts";

function check(_: Ridden, __: RideContext, { moments }: Seen): Judgement[] {
  return moments.flatMap((moment) =>
    moment.acts
      .filter(({ known }) => known.verb === "pass")
      .flatMap(({ id, known }): Judgement[] => {
        const object = objectOf(known, moment.before);
        const [before, after] = [moment.before, moment.state].map(({ objects }) =>
          objects.find((held) => held.object.id === object),
        );
        if (before === undefined || after === undefined) return [];
        const { verdict, words } = gripsMeet(before, after);
        if (verdict === "kept") return [kept(moment.stage)];
        return [
          {
            verdict,
            stage: moment.stage,
            about: before.object.id,
            ...{ from: moment.from, to: moment.from, timed: moment.timed, lasts: false },
            action: id,
            quote: [id],
            is: `the ${before.object.name} is passed between hands that do not meet on it: ${words}`,
            lift: "Either a hand slides along it first, or the other hand takes it beside the one that gives",
            look: false,
          },
        ];
      }),
  );
}

/** One hand gives and the other takes; where they are on the shaft must be the same place or the next. */
function gripsMeet(before: ObjectState, after: ObjectState): { verdict: Verdict; words: string } {
  const off = (grip: ObjectState["grip"][keyof ObjectState["grip"]]): boolean => isKnown<Zone | null>(grip, null);
  const on = (grip: ObjectState["grip"][keyof ObjectState["grip"]]): boolean => !mayBe<Zone | null>(grip, null);
  const [giving] = HANDS.filter((hand) => on(before.grip[hand]) && off(after.grip[hand]));
  const [taking] = HANDS.filter((hand) => hand !== giving && on(after.grip[hand]));
  const order = before.object.is === "other" ? [] : zonesOf(before.object);
  if (giving === undefined || taking === undefined || order.length === 0) return { verdict: "cannot tell", words: "" };
  const [gives, takes] = [possible(before.grip[giving], order), possible(after.grip[taking], order)];
  const apart = gives.flatMap((from) =>
    takes.map((to) => Math.abs(order.indexOf(from as Zone) - order.indexOf(to as Zone)) > 1),
  );
  const words = `the ${giving} hand gives ${gives.map(zoneWords).join(" or ")}, the ${taking} hand takes ${takes.map(zoneWords).join(" or ")}`;
  return { verdict: verdictOver(apart), words };
}

const ZONE_WORDS: Partial<Record<Zone, string>> = {
  butt: "at the butt",
  rear: "behind the balance",
  balance: "at the balance",
  fore: "before the balance",
  head: "at the head",
};

export function zoneWords(zone: Zone | null): string {
  return zone === null ? "nowhere" : (ZONE_WORDS[zone] ?? `at the ${zone}`);
}

export const passGrips: RideRule = {
  code: "pass-grips",
  words: "says",
  sentence: "What is passed from hand to hand is taken where it is given, or next to it.",
  basis: "common practice",
  source: "Two hands near the body meet at one place of a shaft; no source.",
  severity: "warns",
  reach: "instant",
  check,
};
