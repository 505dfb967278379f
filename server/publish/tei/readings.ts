/** server/publish/tei/readings.ts - the apparatus: each crux with the words it stands on and all its readings, who holds
 *  them and why. May import: schema types, shared, siblings. Keeps rule X11 (server/publish/tei/RULES.md). */
import type { Crux, Reading } from "../../../schema/crux.ts";
import type { Markable, TextAnchor } from "../../../schema/mark.ts";
import { readingValueWords, restsOf } from "../../../shared/drill/resolve-slot.ts";
import { kindOfActSlot, kindOfSlot, slotLabel } from "../../../shared/drill/slot-labels.ts";
import type { Markup } from "../markup.ts";
import { element, inLines, type XmlContent } from "../xml.ts";
import type { Edition } from "./edition.ts";
import { conditionPointers, conditionWords, spansOf } from "./features.ts";
import { nameOf, pointer, pointers, tokenOf } from "./pointers.ts";

export function apparatusList(edition: Edition): Markup | null {
  const entries = inBookOrder(edition).map((crux) => entry(edition, crux));
  return entries.length === 0 ? null : inLines("listApp", {}, entries);
}

/** By the first words of each; those without words last. */
function inBookOrder(edition: Edition): Crux[] {
  const LAST = [Number.POSITIVE_INFINITY, 0, 0] as const;
  const placed = edition.named.of("cruxes").map((crux) => {
    const orders = standingAnchors(edition, "cruxes", crux.id).flatMap((one) => {
      const order = edition.places.orderOf(one);
      return order === null ? [] : [order];
    });
    return { crux, order: orders.sort(byPlace)[0] ?? LAST };
  });
  return placed.sort((a, b) => byPlace(a.order, b.order)).map(({ crux }) => crux);
}

type Order = readonly [number, number, number];

function byPlace(a: Order, b: Order): number {
  // Both may be last: what is endless taken from itself is no number.
  return (a[0] === b[0] ? 0 : a[0] - b[0]) || a[1] - b[1] || a[2] - b[2];
}

function entry(edition: Edition, crux: Crux): Markup {
  const { places, rows, named } = edition;
  const [anchor] = standingAnchors(edition, "cruxes", crux.id);
  const ends = anchor ? places.endsOf(anchor) : null;
  const exercise = crux.exercise === null ? null : named.name("exercises", crux.exercise);
  const attributes = {
    "xml:id": nameOf("cruxes", crux.id),
    type: tokenOf(crux.is),
    subtype: tokenOf(crux.scope),
    from: ends && pointer(ends.from),
    to: ends && pointer(ends.to),
    corresp: exercise && pointer(exercise),
  };
  const lemma = anchor && anchor.from < anchor.to ? element("lem", {}, places.quoteOf(anchor)) : null;
  const readings = rows.readingsOf(crux.id);
  return inLines("app", attributes, [
    lemma,
    ...readings.map((reading) => readingOf(edition, crux, reading)),
    note("title", null, crux.title),
    note("crux", null, crux.note),
    conditions(edition, "arises-when", null, crux.arisesWhen),
    leftFree(edition, crux),
    ...crux.exceptions.map(({ element: at, reading, reason }) => exception(edition, at, reading, reason)),
    ...readings.flatMap((reading) => notesOn(edition, reading)),
  ]);
}

/** Anchors of a thing's own words in the texts as they are now, in the order of layers and words. */
function standingAnchors({ rows, places }: Edition, of: Markable, id: string): TextAnchor[] {
  return rows
    .marksOf(of, id)
    .flatMap((mark) => rows.anchorsOf(mark.id))
    .filter((anchor) => anchor.is === "text")
    .filter((anchor) => places.endsOf(anchor) !== null);
}

const STATUS = { standing: "standing", adopted: "adopted", "ruled out": "ruled-out" } as const;

function readingOf(edition: Edition, crux: Crux, reading: Reading): Markup {
  const { people } = edition;
  const anchors = crux.is === "witnesses differ" ? standingAnchors(edition, "readings", reading.id) : [];
  const attested = anchors.flatMap((anchor) => {
    const witness = edition.rows.currentText(anchor.text)?.layer.witness ?? null;
    return witness === null ? [] : [{ witness, anchor }];
  });
  const held = people.witness(reading.holder);
  const witnesses = [...new Set([...(held === null ? [] : [held]), ...attested.map(({ witness }) => witness)])];
  const person = people.named(reading.holder);
  const excluded = reading.excludes
    .flatMap(({ readings }) => readings)
    .flatMap((id) => edition.named.name("readings", id) ?? []);
  const attributes = {
    "xml:id": nameOf("readings", reading.id),
    type: STATUS[reading.status.is],
    wit: pointers(witnesses.map((id) => nameOf("witnesses", id))),
    source: person && pointer(person),
    cert: reading.confidence,
    exclude: pointers([...new Set(excluded)]),
  };
  // What a witness has is told by its own words; what somebody understands, by the name of the reading.
  const own = [...new Set(attested.map(({ anchor }) => edition.places.quoteOf(anchor)))].filter(
    (quote) => quote !== "",
  );
  return element("rdg", attributes, own.length > 0 ? own.join(" … ") : reading.title);
}

function note(type: string, target: string | null, content: XmlContent): Markup | null {
  if (content === "") return null;
  return element("note", { type, target: target && pointer(target) }, content);
}

function conditions(edition: Edition, type: string, target: string | null, list: Reading["requires"]): Markup | null {
  if (list.length === 0) return null;
  const corresp = pointers(conditionPointers(edition, list));
  const words = list.map((one) => conditionWords(edition, one)).join("; ");
  return element("note", { type, target: target && pointer(target), corresp }, words);
}

function leftFree({ named }: Edition, { leftFree: free }: Crux): Markup | null {
  if (free === null) return null;
  const chosen = named.name("readings", free.default);
  const content = ["Left to the rider, ", element("date", { when: free.on }, free.on), `: ${free.reason}`];
  return element("note", { type: "left-free", corresp: chosen && pointer(chosen) }, content);
}

function exception({ named }: Edition, at: string, reading: string, reason: string): Markup {
  const to = [named.name("elements", at), named.name("readings", reading)].filter((name) => name !== null);
  return element("note", { type: "exception", corresp: pointers(to) }, reason);
}

function notesOn(edition: Edition, reading: Reading): (Markup | null)[] {
  const target = nameOf("readings", reading.id);
  const evidence = restsOf(edition.rows, reading.evidence);
  const spans = pointers([...new Set(spansOf(edition, reading.evidence))]);
  return [
    note("title", target, reading.title),
    note("holder", target, reading.holder.trim()),
    note("argument", target, reading.argument),
    evidence.length === 0 && spans === null
      ? null
      : element("note", { type: "evidence", target: pointer(target), corresp: spans }, evidence.join("; ")),
    status(target, reading),
    conditions(edition, "requires", target, reading.requires),
    conditions(edition, "excludes", target, reading.excludes),
    ...reading.values.map(({ at, value }) => {
      const there = edition.named.name(at.kind, at.id);
      const words = `${slotLabel(at.slot)}: ${readingValueWords(value, kindAt(edition, at), edition.names)}`;
      return element("note", { type: "gives", target: pointer(target), corresp: there && pointer(there) }, words);
    }),
  ];
}

function status(target: string, { status: held }: Reading): Markup | null {
  if (held.is === "standing") return null;
  const condition = held.is === "adopted" && held.condition !== "" ? ` ${held.condition}` : "";
  const content = [`${held.is}${condition}, `, element("date", { when: held.on }, held.on), `: ${held.reason}`];
  return element("note", { type: "status", target: pointer(target) }, content);
}

function kindAt({ rows }: Edition, at: Reading["values"][number]["at"]) {
  if (at.kind !== "actions") return kindOfSlot(at.kind, at.slot);
  const action = rows.find("actions", at.id);
  return action ? kindOfActSlot(action.act.verb, at.slot) : null;
}

/** How sure a person is of a reading, where that was said. */
export function certainties({ named }: Edition): Markup[] {
  return named
    .of("readings")
    .flatMap(({ id, confidence }) =>
      confidence === null
        ? []
        : [element("certainty", { target: pointer(nameOf("readings", id)), locus: "value", degree: confidence })],
    );
}
