/** client/read/part-name.ts - what the columns of a sheet are called; the shaft goes by the name of the main object. */
import type { DrillPart } from "../../schema/drill.ts";
import { withArticle, withoutArticle } from "../../shared/article.ts";
import { drill } from "../state/passage.ts";
import { ranked } from "../state/rows.ts";

const NAMES: Record<DrillPart, string> = {
  horse: "Horse",
  "left hand": "Left hand",
  "right hand": "Right hand",
  shaft: "Shaft",
  rider: "Rider",
};

/** As the drill or the rows have it. */
interface Named {
  id: string;
  name: string;
  is: string;
}

/** The object whose column it is: a weapon the exercise speaks of, else one of the work, else whatever else is carried.
 *  Never reins or a sheath, which stand with the hand. Null where there is none. */
export function columnObject(): Named | null {
  const used: readonly Named[] = drill.value?.objects ?? [];
  const there: readonly Named[] = ranked("objects");
  const weapon = ({ is }: Named) => is === "shaft" || is === "blade";
  const carried = ({ is }: Named) => is !== "reins" && is !== "sheath";
  return used.find(weapon) ?? there.find(weapon) ?? used.find(carried) ?? there.find(carried) ?? null;
}

/** As a heading: "Lance", "Left hand". */
export function partName(part: DrillPart): string {
  const name = part === "shaft" ? withoutArticle(columnObject()?.name ?? "") : "";
  return name === "" ? NAMES[part] : name.charAt(0).toUpperCase() + name.slice(1);
}

/** In a sentence: "the lance", "the left hand". */
export function thePart(part: DrillPart): string {
  return withArticle((part === "shaft" && columnObject()?.name) || NAMES[part].toLowerCase());
}
