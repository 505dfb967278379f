/** server/publish/papers/kit-and-ground.ts - what is carried, with its sizes, and the ground with its stations.
 *  May import: schema types and constants, shared/drill, siblings. Sizes nobody has entered are not told; those recorded as not said are. */
import type { Line, PlainBlock } from "../../../schema/paper.ts";
import type { Ground, Station } from "../../../schema/riding.ts";
import { GROUND_SLOTS, OBJECT_SLOTS } from "../../../schema/riding.ts";
import type { Slot, SlotAddress, SlotTable } from "../../../schema/slot.ts";
import { withoutArticle } from "../../../shared/article.ts";
import { citationsOf } from "../../../shared/drill/citations.ts";
import { newBearing } from "../../../shared/drill/crux-bearing.ts";
import { drillValue, resolveSlot } from "../../../shared/drill/resolve-slot.ts";
import { compareRanked } from "../../../shared/rank.ts";
import { capital } from "../stopped.ts";
import { valueSpans } from "./act-spans.ts";
import type { PaperContext } from "./paper-context.ts";
import type { BuiltPart } from "./paper-part.ts";
import { heading, joinedLines, paragraph, soft, words } from "./spans.ts";

/** Each object with its sizes. Nothing where nothing is carried. */
export function kitBlocks(context: PaperContext, part: BuiltPart, level: number): PlainBlock[] {
  const rows = part.drill.objects.flatMap(({ id, is }) => {
    const object = is === "reins" ? undefined : context.book.find("objects", id);
    if (object === undefined) return [];
    const sizes = slotLines(context, part, { kind: "objects", id, table: OBJECT_SLOTS, slots: object.slots });
    const note: Line = object.note === "" ? [] : [soft(object.note)];
    const line = joinedLines([joinedLines(sizes, "; "), note], ". ");
    const name = withoutArticle(object.name);
    return [{ name: capital(name), words: line.length === 0 ? [soft("no size is entered")] : line }];
  });
  if (rows.length === 0) return [];
  return [heading(level, [words("What is carried")]), { is: "facts", rows }];
}

/** A ground with its size and stations, each with the places that name it. `part`: any, for the readings taken. */
export function groundBlocks(context: PaperContext, part: BuiltPart, ground: Ground): PlainBlock[] {
  const { book, places } = context;
  const sizes = slotLines(context, part, { kind: "grounds", id: ground.id, table: GROUND_SLOTS, slots: ground.slots });
  const note: Line = ground.note === "" ? [] : [soft(ground.note)];
  const items = stationsOf(context, ground.id).map((station) => {
    const where = places.line(citationsOf(book, "stations", station.id));
    const remark: Line = station.note === "" ? [] : [soft(station.note)];
    return {
      words: joinedLines([[words(station.name)], remark, where], " · "),
      of: [{ kind: "stations" as const, id: station.id }],
    };
  });
  return [
    paragraph("body", joinedLines([joinedLines([[words(ground.is)], ...sizes], "; "), note], ". "), [
      { kind: "grounds", id: ground.id },
    ]),
    ...(items.length === 0 ? [] : [{ is: "list" as const, ordered: false, items }]),
  ];
}

/** The grounds of the exercises on the paper, by rank, each once, with the first part that is ridden on it. */
export function groundsOnPaper({ book, parts }: PaperContext): { ground: Ground; part: BuiltPart }[] {
  const found = new Map<string, { ground: Ground; part: BuiltPart }>();
  for (const part of parts) {
    const ground = book.find("grounds", part.rows.exercise.ground ?? "");
    if (ground !== undefined && !found.has(ground.id)) found.set(ground.id, { ground, part });
  }
  return [...found.values()].sort((a, b) => compareRanked(a.ground, b.ground));
}

function stationsOf({ book }: PaperContext, ground: string): Station[] {
  return book
    .all("stations")
    .filter((station) => station.ground === ground)
    .sort(compareRanked);
}

interface SlotsOf {
  kind: SlotAddress["kind"];
  id: string;
  table: SlotTable;
  slots: Readonly<Record<string, Slot<unknown> | undefined>>;
}

/** Slots of a thing that is no act, each as a line with its label. */
export function slotLines({ signs }: PaperContext, { base }: BuiltPart, { kind, id, table, slots }: SlotsOf): Line[] {
  const compiling = { ...base, element: null, bearing: newBearing() };
  return Object.entries(table).flatMap(([slot, valueKind]) => {
    const held = slots[slot];
    if (held === undefined) return [];
    const value = drillValue(compiling, slot, valueKind, resolveSlot(compiling, { kind, id, slot }, held));
    const line = valueSpans(value, signs);
    return line.length === 0 ? [] : [line];
  });
}
