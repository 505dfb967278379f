/** client/read/part-name.ts - what the columns of a sheet are called; the shaft goes by the name of the main object. */
import type { DrillPart } from "../../schema/drill.ts";
import { drill } from "../state/passage.ts";
import { ranked } from "../state/rows.ts";

const NAMES: Record<DrillPart, string> = {
  horse: "Horse",
  "left hand": "Left hand",
  "right hand": "Right hand",
  shaft: "Shaft",
  rider: "Rider",
};

export function partName(part: DrillPart): string {
  const name = part === "shaft" ? (drill.value?.objects[0] ?? ranked("objects")[0])?.name : undefined;
  return name ? name.charAt(0).toUpperCase() + name.slice(1) : NAMES[part];
}
