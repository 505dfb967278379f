/** schema/values.ts - the kinds of value a slot may hold, each over a domain that is written down here.
 *  May import: zod, siblings. Lengths are metres, angles degrees, whole numbers where positions are meant (design 4). */
import { z } from "zod";
import { Id, Words } from "./id.ts";

/** From where "left", "right" or "clockwise" is said. */
export const Viewpoint = z.enum(["rider", "from above", "onlookers", "text does not say"]);

/** Exact, a range, or about so much: what the text gives, never a false precision. */
const measure = z.discriminatedUnion("is", [
  z.strictObject({ is: z.literal("exact"), of: z.number() }),
  z.strictObject({ is: z.literal("range"), from: z.number(), to: z.number() }),
  z.strictObject({ is: z.literal("about"), of: z.number(), spread: z.number().nonnegative() }),
]);

const handRoles = [
  "left",
  "right",
  "both",
  "rein hand",
  "shaft hand",
  "the other",
  "inside",
  "outside",
  "near",
  "off",
] as const;
const sides = ["left", "right", "inside", "outside", "near", "off"] as const;
const figures = [
  "straight",
  "along the wall",
  "change across",
  "circle",
  "part circle",
  "volte",
  "half volte",
  "half volte reversed",
  "figure of eight",
  "oblong",
  "serpentine",
  "spiral in",
  "spiral out",
  "turn",
  "rein back",
  "halt",
  "charge",
] as const;

/** One point of the ground in whole millimetres: x to the right, y toward the head, from the centre. */
const point = z.strictObject({ x: z.int(), y: z.int() });

/** Every kind of value, by name. Acts, holds, threats, stations and kit name their slots' kinds from this table. */
export const VALUES = {
  hand: z.enum(handRoles),
  side: z.strictObject({ to: z.enum(sides), viewpoint: Viewpoint }),
  object: Id,
  hold: Id,
  movement: Id,
  /** Where an object is gripped, from its rear end forward. */
  zone: z.enum(["butt", "rear", "balance", "fore", "head", "hilt", "blade", "upper band", "ring", "strap", "end"]),
  palm: z.enum(["over", "under"]),
  /** Where a point looks: a clock position from the rider, or toward (or away from) something named. */
  bearing: z.discriminatedUnion("is", [
    z.strictObject({ is: z.literal("clock"), hour: z.int().min(1).max(12) }),
    z.strictObject({ is: z.literal("toward"), what: Words.min(1), station: Id.optional() }),
    z.strictObject({ is: z.literal("away from"), what: Words.min(1), station: Id.optional() }),
  ]),
  level: z.enum(["low", "middle", "high", "ground"]),
  /** Which way an edge, a palm or a face looks. */
  facing: z.enum(["left", "right", "front", "rear", "up", "down"]),
  /** What besides a hand holds, touches or is near an object. */
  contact: z.strictObject({
    with: z.enum([
      "thigh",
      "boot",
      "stirrup",
      "hip",
      "arm",
      "forearm",
      "shoulder",
      "breast",
      "wrist",
      "saddle",
      "neck of the horse",
      "flank of the horse",
      "sheath",
      "ground",
      "wall",
      "other",
    ]),
    side: z.enum(["left", "right"]).optional(),
    words: Words.optional(),
    degree: z.enum(["near", "touches", "bears"]),
  }),
  frame: z.enum(["carried", "planted"]),
  reinZone: z.enum(["at its place", "over the neck to the left", "over the neck to the right", "raised", "any"]),
  reinsOn: z.enum(["neck", "left arm", "right arm", "saddle"]),
  gait: z.enum(["halt", "walk", "trot", "canter", "gallop"]),
  pace: z.enum(["collected", "working", "medium", "extended", "easy", "increased", "full speed"]),
  lead: z.enum(["left", "right", "inside", "outside"]),
  figure: z.enum(figures),
  amount: z.enum(["quarter", "half", "three quarters", "full"]),
  manner: z.enum([
    "on the haunches",
    "on the forehand",
    "half pirouette",
    "roll back over the hocks",
    "halt and turn",
    "small half circle",
  ]),
  /** A turn of the horse or of the line ridden. */
  turn: z.strictObject({ to: z.enum(sides), viewpoint: Viewpoint }),
  /** A turn of an object about a hand; its sense is typed by the plane it turns in. */
  spin: z.discriminatedUnion("plane", [
    z.strictObject({
      plane: z.literal("fore and aft"),
      sense: z.enum(["point forward and down", "point backward and up"]),
    }),
    z.strictObject({
      plane: z.literal("across"),
      sense: z.enum(["point over to the left", "point over to the right"]),
    }),
    z.strictObject({
      plane: z.literal("level"),
      sense: z.enum(["clockwise", "counter-clockwise"]),
      viewpoint: Viewpoint,
    }),
  ]),
  length: measure,
  angle: measure,
  mass: measure,
  count: z.discriminatedUnion("is", [
    z.strictObject({ is: z.literal("times"), n: z.number().positive().max(10_000) }),
    z.strictObject({ is: z.literal("until"), event: Words.min(1) }),
  ]),
  /** A place of the ground: a station, or the words for it. */
  place: z.discriminatedUnion("is", [
    z.strictObject({ is: z.literal("station"), station: Id }),
    z.strictObject({ is: z.literal("words"), words: Words.min(1) }),
  ]),
  outline: z.discriminatedUnion("is", [
    z.strictObject({ is: z.literal("point"), at: point }),
    z.strictObject({ is: z.literal("line"), from: point, to: point }),
    z.strictObject({ is: z.literal("area"), corners: z.array(point).min(3) }),
  ]),
  mount: z.enum(["on foot", "mounted"]),
  bend: z.enum(["inside", "outside"]),
  purpose: z.enum(["attack", "cover", "deflect", "show", "change"]),
  threat: Id,
  /** When an action happens within its step; not said means anywhere in it. */
  timing: z.discriminatedUnion("is", [
    z.strictObject({ is: z.literal("before") }),
    z.strictObject({ is: z.literal("at"), over: z.int().min(0), of: z.int().min(1) }),
    z.strictObject({ is: z.literal("after") }),
    z.strictObject({ is: z.literal("during"), from: z.tuple([z.int(), z.int()]), to: z.tuple([z.int(), z.int()]) }),
    z.strictObject({ is: z.literal("throughout") }),
    z.strictObject({ is: z.literal("when"), event: Words.min(1) }),
    z.strictObject({ is: z.literal("until"), event: Words.min(1) }),
    z.strictObject({ is: z.literal("with"), action: Id }),
    z.strictObject({ is: z.literal("after action"), action: Id }),
  ]),
  /** Whose column of the sheet an act without a verb of its own belongs to. */
  part: z.enum(["horse", "left hand", "right hand", "object", "rider"]),
  words: Words.min(1),
} as const;

export type ValueKind = keyof typeof VALUES;
export type ValueOf<K extends ValueKind> = z.infer<(typeof VALUES)[K]>;
export type Measure = z.infer<typeof measure>;
export const VALUE_KINDS = Object.keys(VALUES) as ValueKind[];

/** Any value of any kind. Where the kind is known the write function checks against that kind alone. */
export const AnyValue = z.union(Object.values(VALUES) as unknown as [z.ZodType, z.ZodType, ...z.ZodType[]]);

/** The finite domain of a kind that has one, in the order it is offered; null where any number or word may stand. */
export function domainOf(kind: ValueKind): readonly string[] | null {
  const type: unknown = VALUES[kind];
  return type instanceof z.ZodEnum ? (type.options as string[]) : null;
}
