/** server/publish/tei/spans.ts - every mark as a span from anchor to anchor, pointing at what is said of the words.
 *  May import: schema types, shared, siblings. Keeps rules X7 and X9 (server/publish/tei/RULES.md). */
import type { Anchor, Mark } from "../../../schema/mark.ts";
import type { Markup } from "../markup.ts";
import { element, inLines } from "../xml.ts";
import type { Edition } from "./edition.ts";
import { nameOf, pointer } from "./pointers.ts";

/** One group a kind of thing. */
export function spanGroups(edition: Edition): Markup[] {
  const groups = new Map<string, Markup[]>();
  for (const mark of edition.named.marks) {
    for (const anchor of edition.rows.anchorsOf(mark.id)) {
      const spans = groups.get(mark.of) ?? [];
      groups.set(mark.of, spans);
      spans.push(span(edition, mark, anchor));
    }
  }
  return [...groups].map(([type, spans]) => inLines("spanGrp", { type }, spans));
}

function span({ places, named }: Edition, mark: Mark, anchor: Anchor): Markup {
  const name = { "xml:id": nameOf("anchors", anchor.id) };
  const evidence = mark.as === "words" ? null : mark.as;
  const ana = pointer(nameOf(mark.of, mark.target));
  if (anchor.is === "region") {
    const zone = named.name("regions", anchor.region);
    return element("span", { ...name, type: evidence, facs: zone && pointer(zone), ana });
  }
  const ends = places.endsOf(anchor);
  if (ends === null) return element("span", { ...name, type: "lost", ana }, places.quoteOf(anchor));
  const at = { from: pointer(ends.from), to: pointer(ends.to) };
  return element("span", { ...name, type: evidence, ...at, ana }, places.quoteOf(anchor));
}
