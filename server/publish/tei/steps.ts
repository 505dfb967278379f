/** server/publish/tei/steps.ts - the elements of each exercise in their order: steps, what is done again, advice, and what
 *  is not treated yet. May import: schema types, shared/drill, siblings. Keeps rules X8-X10 (server/publish/tei/RULES.md). */
import type { Element } from "../../../schema/exercise.ts";
import type { Slot } from "../../../schema/slot.ts";
import { elementWords } from "../../../shared/drill/element-words.ts";
import type { ExerciseRows } from "../../../shared/drill/exercise-rows.ts";
import { ELEMENT_SLOTS } from "../../../shared/drill/slot-labels.ts";
import type { Markup } from "../markup.ts";
import { stepNumbers } from "../step-numbers.ts";
import { element, inLines } from "../xml.ts";
import { actionsFeature } from "./actions.ts";
import type { Edition } from "./edition.ts";
import { guardFeatures, link, rests, slotFeatures, supported, words } from "./features.ts";
import { nameOf, pointers } from "./pointers.ts";

type SlotKinds = readonly (readonly [keyof typeof ELEMENT_SLOTS, (typeof ELEMENT_SLOTS)[keyof typeof ELEMENT_SLOTS]])[];
const KINDS = Object.entries(ELEMENT_SLOTS) as unknown as SlotKinds;

/** The exercise with all its elements; those that other readings want are there too, without a number. */
export function exerciseStructure(edition: Edition, exercise: ExerciseRows): Markup {
  const { id, label, title, note, ground } = exercise.exercise;
  const numbers = stepNumbers(exercise, edition.names);
  const named = ground === null ? null : edition.named.name("grounds", ground);
  const attributes = {
    "xml:id": nameOf("exercises", id),
    type: "exercise",
    n: label || null,
    corresp: pointers(named === null ? [] : [named]),
  };
  const elements = exercise.elements.map((one) => elementStructure(edition, exercise, one, numbers));
  return inLines("fs", attributes, [
    words("title", title),
    words("note", note),
    elements.length === 0 ? null : element("f", { name: "elements" }, inLines("vColl", { org: "list" }, elements)),
  ]);
}

function elementStructure(
  edition: Edition,
  rows: ExerciseRows,
  one: Element,
  numbers: ReadonlyMap<string, number>,
): Markup {
  const { names } = edition;
  const attributes = {
    "xml:id": nameOf("elements", one.id),
    type: one.is,
    n: numbers.get(one.id) ?? null,
    ...supported(edition, one.existence),
  };
  const text = elementWords({ rows, names, numbers }, one);
  return inLines("fs", attributes, [
    words("title", "title" in one ? one.title : ""),
    words("text", text),
    words("role", one.role),
    ...slotFeatures(edition, one as unknown as Record<string, Slot<unknown> | undefined>, KINDS),
    ...whatItNames(edition, one),
    ...guardFeatures(edition, one.guard),
    rests(edition, "rests", one.existence.basis),
    one.order === null ? null : element("f", { name: "order", ...supported(edition, one.order) }),
    actionsFeature(edition, one.id),
    words("note", one.note),
  ]);
}

/** Elements, passages and exercises that an element speaks of. */
function whatItNames({ named }: Edition, one: Element): Markup[] {
  const links: [name: string, to: (string | null)[]][] = [
    ["sameAs", [one.copyOf === null ? null : named.name("elements", one.copyOf)]],
  ];
  if (one.is === "untreated")
    links.push(["passages", [named.name("passages", one.fromPassage), named.name("passages", one.toPassage)]]);
  if (one.is === "advice")
    links.push(["over", [one.from, one.to].map((id) => (id === null ? null : named.name("elements", id)))]);
  if (one.is === "again") {
    const { of } = one;
    if (of.is === "exercise") links.push(["of", [named.name("exercises", of.exercise)]]);
    if (of.is === "movement") links.push(["of", [named.name("movements", of.movement)]]);
    if (of.is === "elements") links.push(["of", [named.name("elements", of.from), named.name("elements", of.to)]]);
  }
  return links.flatMap(([name, to]) => {
    const there = to.filter((target) => target !== null);
    return there.length === 0 ? [] : [element("f", { name, corresp: pointers(there) })];
  });
}

/** What holds throughout the work or an exercise, and what is never mentioned in it. */
export function standingStructures(edition: Edition): Markup[] {
  return edition.named.of("standings").map((standing) => {
    const exercise = standing.exercise === null ? null : edition.named.name("exercises", standing.exercise);
    const attributes = {
      "xml:id": nameOf("standings", standing.id),
      type: "standing",
      n: standing.is,
      ...supported(edition, standing.existence),
    };
    return inLines("fs", attributes, [
      words("title", standing.title),
      link("throughout", exercise),
      ...guardFeatures(edition, standing.guard),
      rests(edition, "rests", standing.existence.basis),
      actionsFeature(edition, standing.id),
      words("note", standing.note),
    ]);
  });
}
