/** server/publish/tei/things.ts - the studied things of the work: objects, holds, movements, grounds with their stations,
 *  opponents, rules, faults, terms with their senses. May import: schema types and constants, shared/drill, siblings. */
import { GROUND_SLOTS, HOLD_SLOTS, OBJECT_SLOTS, THREAT_SLOTS } from "../../../schema/riding.ts";
import type { Slot } from "../../../schema/slot.ts";
import type { ValueKind } from "../../../schema/values.ts";
import { STATION_SLOTS } from "../../../shared/drill/slot-labels.ts";
import type { Markup } from "../markup.ts";
import { element, inLines } from "../xml.ts";
import { actionsFeature } from "./actions.ts";
import type { Edition } from "./edition.ts";
import { link, slotFeatures, words } from "./features.ts";
import { languageAttribute, nameOf } from "./pointers.ts";

type Slots = Readonly<Record<string, Slot<unknown> | undefined>>;
const kindsOf = (table: Readonly<Record<string, ValueKind>>) => Object.entries(table);

export function thingStructures(edition: Edition): Markup[] {
  const { named } = edition;
  return [
    ...named
      .of("objects")
      .map(({ id, is, name, slots, note }) =>
        thing("objects", id, is, [
          words("name", name),
          ...slotFeatures(edition, slots as Slots, kindsOf(OBJECT_SLOTS)),
          words("note", note),
        ]),
      ),
    ...named
      .of("holds")
      .map(({ id, hands, name, strong, slots, note }) =>
        thing("holds", id, `${hands}-handed`, [
          words("name", name),
          element("f", { name: "strong" }, element("binary", { value: String(strong) })),
          ...slotFeatures(edition, slots as Slots, kindsOf(HOLD_SLOTS)),
          words("note", note),
        ]),
      ),
    ...named
      .of("movements")
      .map(({ id, name, note }) =>
        thing("movements", id, null, [words("name", name), actionsFeature(edition, id), words("note", note)]),
      ),
    ...named
      .of("grounds")
      .map(({ id, is, name, slots, note }) =>
        thing("grounds", id, is, [
          words("name", name),
          ...slotFeatures(edition, slots as Slots, kindsOf(GROUND_SLOTS)),
          words("note", note),
        ]),
      ),
    ...named.of("stations").map((station) => {
      const { id, ground, is, name, partner, note } = station;
      const other = partner === null ? null : named.name("stations", partner);
      return thing("stations", id, is, [
        words("name", name),
        link("ground", named.name("grounds", ground)),
        ...slotFeatures(edition, { outline: station.outline as Slot<unknown> | undefined }, kindsOf(STATION_SLOTS)),
        link("partner", other),
        words("note", note),
      ]);
    }),
    ...named
      .of("threats")
      .map(({ id, name, slots, note }) =>
        thing("threats", id, null, [
          words("name", name),
          ...slotFeatures(edition, slots as Slots, kindsOf(THREAT_SLOTS)),
          words("note", note),
        ]),
      ),
    ...named
      .of("rules")
      .map(({ id, code, sentence, severity, basis }) =>
        thing("rules", id, code, [words("sentence", sentence), words("severity", severity), words("basis", basis)]),
      ),
    ...named.of("faults").map(({ id, of, target, fault, correction }) => {
      const at = named.name(of, target);
      return thing("faults", id, null, [words("fault", fault), words("correction", correction), link("of", at)]);
    }),
    ...named
      .of("terms")
      .map(({ id, word, language, note }) =>
        inLines(
          "fs",
          { "xml:id": nameOf("terms", id), type: "term", "xml:lang": languageAttribute(language) || null },
          [words("word", word), words("note", note)],
        ),
      ),
    ...named
      .of("senses")
      .map(({ id, term, title, gloss }) =>
        thing("senses", id, null, [
          words("title", title),
          words("gloss", gloss),
          link("term", named.name("terms", term)),
          actionsFeature(edition, id),
        ]),
      ),
  ];
}

type Things = "objects" | "holds" | "movements" | "grounds" | "stations" | "threats" | "rules" | "faults" | "senses";

function thing(kind: Things, id: string, n: string | null, features: readonly (Markup | null)[]): Markup {
  const name = nameOf(kind, id);
  return inLines("fs", { "xml:id": name, type: name.slice(0, name.indexOf("-")), n }, features);
}
