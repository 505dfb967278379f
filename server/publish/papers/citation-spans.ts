/** server/publish/papers/citation-spans.ts - where an item stands in the book, as the work is cited.
 *  May import: schema types, shared/cite, siblings. */
import type { Citation, DrillElement } from "../../../schema/drill.ts";
import type { Line } from "../../../schema/paper.ts";
import { citationsOfElement } from "../cited.ts";
import { joinedLines, reference } from "./spans.ts";

/** The places, each once, in their order. Empty when there are none. */
export function placesLine(citations: readonly Citation[]): Line {
  const places = [...new Set(citations.map((citation) => citation.reference))].filter((place) => place !== "");
  return joinedLines(
    places.map((place) => [reference(place)]),
    "; ",
  );
}

export function placesOfElement(element: DrillElement): Line {
  return placesLine(citationsOfElement(element));
}
