/** shared/ride/mirror-state.ts - a control state with left and right changed over.
 *  May import: types of shared/hands, siblings in shared/ride. Keeps rule R11 (shared/ride/RULES.md). Twice is the same again,
 *  to the byte; and acting mirrored on a mirrored state gives the mirrored state. */
import type { Known } from "../../schema/slot.ts";
import type { ControlState, Doing, ObjectState } from "../hands/state.ts";
import { mirrorKnown, mirrorValue, swapped } from "./mirror-act.ts";

const stays = (station: string): string => station;

export function mirrorState(state: ControlState): ControlState {
  return {
    ...state,
    objects: state.objects.map(mirrorObject),
    doing: bothOver(state.doing, mirrorDoing),
    reins: mirrorKnown(state.reins, swapped),
    reinZone: mirrorKnown(state.reinZone, (zone) => (zone === null ? null : swapped(zone))),
    lead: mirrorKnown(state.lead, (lead) => (lead === null ? null : swapped(lead))),
    rein: mirrorKnown(state.rein, swapped),
  };
}

function mirrorObject(held: ObjectState): ObjectState {
  return {
    ...held,
    grip: bothOver(held.grip, (zone) => zone),
    palm: bothOver(held.palm, (palm) => palm),
    bearing: mirrorKnown(held.bearing, (bearing) => mirrorValue("bearing", bearing, stays)),
    edge: mirrorKnown(held.edge, (edge) => mirrorValue("facing", edge, stays)),
    contacts: mirrorKnown(held.contacts, (contacts) =>
      contacts.map((contact) => mirrorValue("contact", contact, stays)),
    ),
  };
}

function mirrorDoing(doing: Doing): Doing {
  if (doing.is !== "rests" || doing.on === null) return doing;
  return { ...doing, on: mirrorValue("contact", doing.on, stays) };
}

type PerHand<T> = Readonly<Record<"left" | "right", Known<T>>>;

/** The left hand's becomes the right hand's. */
function bothOver<T>(both: PerHand<T>, change: (value: T) => T): PerHand<T> {
  return { left: mirrorKnown(both.right, change), right: mirrorKnown(both.left, change) };
}
