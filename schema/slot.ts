/** schema/slot.ts - one addressable value: said, not said, not applicable, or held by a crux; with its warrant.
 *  May import: zod, siblings.
 *  A slot that is missing from a row is *not said*. There is no base underneath a crux: a slot held by a crux has
 *  no value of its own, and each reading of the crux gives one (schema/crux.ts). */
import { z } from "zod";
import { Id, Words } from "./id.ts";
import { AnyValue, VALUES, type ValueKind, type ValueOf } from "./values.ts";

/** Why we believe a value: the words say it, they imply it, or we supply it. Strongest first. */
export const Warrant = z.enum(["stated", "implied", "supplied"]);
export type Warrant = z.infer<typeof Warrant>;

/** What a warrant rests on. */
export const Basis = z.discriminatedUnion("is", [
  z.strictObject({ is: z.literal("words"), mark: Id }).describe("the words under a mark; its anchors name their layer"),
  z.strictObject({ is: z.literal("picture"), region: Id }),
  z.strictObject({ is: z.literal("premise"), text: Words.min(1), crux: Id.optional() }),
  z.strictObject({ is: z.literal("parallel"), source: Id.optional(), where: Words, text: Words }),
  z.strictObject({ is: z.literal("trial"), trial: Id }),
  z.strictObject({ is: z.literal("editor"), note: Words }),
]);
export type Basis = z.infer<typeof Basis>;

/** Stated needs something that states it. */
const restsOnSomething = (support: { warrant: Warrant; basis: readonly Basis[] }) =>
  support.warrant !== "stated" || support.basis.some((basis) => basis.is === "words" || basis.is === "picture");
const NEEDS_WORDS = {
  error: "stated needs the words or the picture that state it; mark them, or say implied or supplied",
  path: ["basis"],
};

/** The warrant of something that is there without being a value: that a step exists, that it comes in this order. */
export const Support = z
  .strictObject({ warrant: Warrant, basis: z.array(Basis).max(100) })
  .refine(restsOnSomething, NEEDS_WORDS);
export type Support = z.infer<typeof Support>;

export interface Said<T> {
  is: "said";
  value: T;
  warrant: Warrant;
  basis: Basis[];
}
export type Slot<T> = Said<T> | { is: "not said" } | { is: "not applicable" } | { is: "in crux"; crux: Id };
/** What one reading gives to a slot its crux holds; absent takes the thing itself away. */
export type ReadingValue = Said<unknown> | { is: "not said" } | { is: "not applicable" } | { is: "absent" };

const said = (value: z.ZodType) =>
  z
    .strictObject({ is: z.literal("said"), value, warrant: Warrant, basis: z.array(Basis).max(100) })
    .refine(restsOnSomething, NEEDS_WORDS);
const notSaid = z.strictObject({ is: z.literal("not said") });
const notApplicable = z.strictObject({ is: z.literal("not applicable") });
const inCrux = z.strictObject({ is: z.literal("in crux"), crux: Id });

/** The slot that holds a value of the named kind. */
export const slotOf = <K extends ValueKind>(kind: K) => SLOTS[kind] as unknown as z.ZodType<Slot<ValueOf<K>>>;

const SLOTS = Object.fromEntries(
  Object.entries(VALUES).map(([kind, value]) => [
    kind,
    z.discriminatedUnion("is", [said(value), notSaid, notApplicable, inCrux]),
  ]),
);

/** Slots by name, the kind of each given by a table; every one may be missing (not said). */
export type SlotTable = Readonly<Record<string, ValueKind>>;
export type SlotsOf<T extends SlotTable> = { [name in keyof T]?: Slot<ValueOf<T[name]>> };
export function slotsOf<T extends SlotTable>(table: T) {
  const shape = Object.fromEntries(Object.entries(table).map(([name, kind]) => [name, slotOf(kind).optional()]));
  return z.strictObject(shape) as unknown as z.ZodType<SlotsOf<T>>;
}

export const ReadingValue: z.ZodType<ReadingValue> = z.discriminatedUnion("is", [
  said(AnyValue),
  notSaid,
  notApplicable,
  z.strictObject({ is: z.literal("absent") }),
]) as unknown as z.ZodType<ReadingValue>;

/** Where a slot is: a row, and the name of the slot in it ("figure", "timing", "bearing"). */
export const SlotAddress = z.strictObject({
  kind: z.enum(["actions", "elements", "holds", "stations", "threats", "objects", "grounds"]),
  id: Id,
  slot: z.string().min(1).max(60),
});
export type SlotAddress = z.infer<typeof SlotAddress>;

/** What is known of a value over a stated finite domain: exactly one, some of them, or no limit at all. */
export type Known<T> = { is: "known"; value: T } | { is: "one of"; values: readonly T[] } | { is: "unknown" };
