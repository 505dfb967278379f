/** shared/ride/kit-gaits.ts - what the horse of a stored kit was measured to do, gait by gait.
 *  May import: schema types, shared/ground, siblings. Keeps rule R40 (shared/ride/RULES.md). Metres a second. */
import type { Kit } from "../../schema/teaching.ts";
import { type HorseGait, horseGaits } from "../ground/gaits.ts";
import { measured } from "./measured.ts";

/** The gaits a kit has a place for; of the others nothing is stored, so they go by the published table. */
const KIT_GAITS = ["walk", "canter"] as const;

/** Every pace of each gait with a speed; empty where the kit has none. */
export function kitGaits({ horse }: Pick<Kit, "horse">): HorseGait[] {
  return KIT_GAITS.flatMap((gait) => {
    const slot = horse.slots[gait];
    if (slot?.is !== "said") return [];
    const notes = slot.basis.flatMap((basis) => (basis.is === "editor" ? [basis.note] : [])).join(" ");
    const said = notes === "" ? "" : `: “${notes.replace(/\.$/, "")}”`;
    const name = horse.name === "" ? "the horse of the kit" : horse.name;
    return horseGaits({ [gait]: measured(slot.value).metres }).map((pace) => ({
      ...pace,
      basis:
        pace.basis === undefined
          ? `${name}, as the kit has it${said}`
          : `in proportion to the ${gait} of the kit: ${name}`,
    }));
  });
}
