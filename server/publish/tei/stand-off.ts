/** server/publish/tei/stand-off.ts - all that is said of the texts, beside them: how passages are cited, the exercises with
 *  their steps, the things of the work, the apparatus, remarks, and the spans that tie it to words.
 *  May import: siblings. */
import type { Markup } from "../markup.ts";
import { inLines } from "../xml.ts";
import type { Edition } from "./edition.ts";
import { interpretations } from "./features.ts";
import { passageList } from "./layer-text.ts";
import { apparatusList, certainties } from "./readings.ts";
import { remarks } from "./remarks.ts";
import { spanGroups } from "./spans.ts";
import { exerciseStructure, standingStructures } from "./steps.ts";
import { thingStructures } from "./things.ts";

export function standOff(edition: Edition): Markup {
  return inLines("standOff", {}, [
    passageList(edition),
    interpretations(),
    ...edition.exercises.map((exercise) => exerciseStructure(edition, exercise)),
    ...standingStructures(edition),
    ...thingStructures(edition),
    apparatusList(edition),
    ...certainties(edition),
    ...remarks(edition),
    ...spanGroups(edition),
  ]);
}
