/** shared/hands/contradictions.ts - what in a state cannot be true together; the law is that no reachable one has any.
 *  May import: schema types, siblings in shared/hands. Written apart from `consistent`, so that each checks the other. */
import type { Known } from "../../schema/slot.ts";
import { type ControlState, HANDS, REIN_PLACES, REIN_ZONES, zonesOf } from "./state.ts";

/** A sentence for each; empty for a state that can be. */
export function contradictions(state: ControlState): string[] {
  const found: string[] = [];
  const say = (wrong: boolean, sentence: string): void => {
    if (wrong) found.push(sentence);
  };
  for (const { object, grip, palm, bearing } of state.objects) {
    for (const hand of HANDS) {
      const zones = certain(grip[hand]);
      say(
        outside(grip[hand], [null, ...zonesOf(object)]),
        `the ${hand} hand grips the ${object.name} where it has no place`,
      );
      say(
        zones === null && certain(palm[hand]) !== null,
        `the ${hand} hand is off the ${object.name}, yet its palm is told`,
      );
    }
    const hour = certain(bearing);
    say(
      typeof hour === "object" && hour?.is === "clock" && (hour.hour < 1 || hour.hour > 12),
      `the ${object.name} points to no hour`,
    );
  }
  const ids = state.objects.map(({ object }) => object.id);
  say(new Set(ids).size !== ids.length, "one object is there twice");

  const place = certain(state.reins);
  const inHand = (typeof place === "string" && place.endsWith("hand")) || place === "both hands";
  const zone = certain(state.reinZone);
  say(outside(state.reins, REIN_PLACES), "the reins are at no place");
  say(outside(state.reinZone, [null, ...REIN_ZONES]), "the rein hand is at no place");
  say(typeof place === "string" && !inHand && zone !== null, "no hand has the reins, yet a rein hand is placed");
  say(inHand && zone === null, "a hand has the reins, yet there is no rein hand");

  const gait = certain(state.gait);
  const leads = gait === "canter" || gait === "gallop";
  say(typeof gait === "string" && !leads && certain(state.lead) !== null, `a lead at the ${String(gait)}`);
  say(leads && certain(state.lead) === null, `no lead at the ${String(gait)}`);
  for (const held of parts(state)) say(held.is === "one of" && held.values.length < 2, "one of fewer than two values");
  return found;
}

/** The one value, or undefined where there is not exactly one. */
function certain<T>(value: Known<T>): T | undefined {
  return value.is === "known" ? value.value : undefined;
}

function outside<T>(value: Known<T>, domain: readonly T[]): boolean {
  if (value.is === "unknown") return false;
  return (value.is === "known" ? [value.value] : value.values).some((held) => !domain.includes(held));
}

function parts(state: ControlState): Known<unknown>[] {
  const { reins, reinZone, gait, pace, lead, rein, direction, doing } = state;
  const ofObjects = state.objects.flatMap(({ grip, palm, bearing, level, edge, contacts, frame }) => [
    ...[grip.left, grip.right, palm.left, palm.right],
    ...[bearing, level, edge, contacts, frame],
  ]);
  return [reins, reinZone, gait, pace, lead, rein, direction, doing.left, doing.right, ...ofObjects];
}
