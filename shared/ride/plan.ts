/** shared/ride/plan.ts - the stages of a ride with their acts as they are done: unrolled, movements written out, mirrored.
 *  May import: schema types, shared/drill, shared/hands, siblings in shared/ride. Keeps rules R5-R10 (shared/ride/RULES.md). */
import type { Known } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import { phraseAct } from "../drill/act-words.ts";
import { type CompiledAction, compileAction, OWN } from "../drill/compile-action.ts";
import { inOrder } from "../drill/follow-hands.ts";
import { handSlotOf } from "../drill/part-of.ts";
import type { Compiling } from "../drill/resolve-slot.ts";
import type { Settlement } from "../drill/settle.ts";
import { kindOfActSlot } from "../drill/slot-labels.ts";
import { type Names, valueWords } from "../drill/words.ts";
import type { RidingGround } from "../ground/grounds.ts";
import { placeOfStation } from "../ground/stations.ts";
import { exactly, possible } from "../hands/known.ts";
import { filledIn, type KnownAct, slotOf } from "../hands/known-act.ts";
import { needsReins } from "../hands/on-reins.ts";
import { mirrorAct } from "./mirror-act.ts";
import { asOnFoot } from "./on-foot.ts";
import type { PlannedStage, Source, SourceAction } from "./planned.ts";
import type { RiddenAct } from "./ride-context.ts";
import { type CompiledPart, type PartOf, sourcesOf } from "./sources.ts";

/** `otherRein`: the whole of it mirrored, on the same ground. */
export function planStages(
  part: CompiledPart,
  partOf: PartOf,
  ground: RidingGround,
  otherRein: boolean,
): PlannedStage[] {
  const { settlement } = part.base;
  return part.elements.flatMap((element) => {
    const { drill } = element;
    return sourcesOf(part, element, partOf, otherRein).map((source) => ({
      element: drill.id,
      source: source.id,
      round: source.round,
      mirrored: source.mirrored,
      number: drill.number,
      title: source.title === "" ? drill.title : source.title,
      is: drill.is === "again" && source.is !== "untreated" ? "again" : source.is,
      ...actsOf(source, ground, settlement),
      values: source.values,
      standing: drill.standing,
      compiling: source.compiling,
      beginsLike: source.beginsLike,
      refusal: source.refusal,
    }));
  });
}

function actsOf(
  source: Source,
  ground: RidingGround,
  { way, reins }: Pick<Settlement, "way" | "reins">,
): Pick<PlannedStage, "acts" | "withoutPartner" | "notes"> {
  const alone = new Set<string>();
  const partnerOf = (id: string): string => {
    const station = ground.stations.find((candidate) => candidate.id === id);
    if (station?.partner) return station.partner;
    if (station && Math.abs(placeOfStation(station, { x: 0, y: 0 }).x) > 0.001) alone.add(id);
    return id;
  };
  const { rows, wordless, names } = source.compiling;
  const isReins = (object: string): boolean => rows.find("objects", object)?.is === "reins";
  const acts = source.actions
    .flatMap((one) => writtenOut(source.compiling, one))
    .map(({ action, mirrored, via }): RiddenAct => {
      const { drill, timing } = action;
      const said = mirrored ? mirrorAct(action.known, partnerOf) : action.known;
      const words = !mirrored ? drill.text : wordless ? "" : knownWords(said, names, { mirrored });
      const known = way === "mounted" ? said : asOnFoot(said);
      const idle = !reins && needsReins(said, isReins);
      return { id: drill.id, via, drill, known, timing, words, mirrored, idle };
    });
  const idle = acts.filter((act) => act.idle && act.words !== "");
  const left = idle.map(({ words }) => `On foot “${words}” has no meaning: it is left out.`);
  return { acts: withoutIdle(acts), withoutPartner: [...alone].sort(), notes: [...source.notes, ...left] };
}

/** An act that means nothing here is kept only where another is told by it: by its moment, or as "the other" hand. */
function withoutIdle(acts: readonly RiddenAct[]): RiddenAct[] {
  const told = acts.flatMap(({ timing }) => (timing === null ? [] : possible(timing, [])));
  const moments = new Set(told.flatMap((when) => ("action" in when ? [when.action] : [])));
  const other = acts.some(({ known }) =>
    Object.values(known.slots).some((held) => possible<unknown>(held, []).includes("the other")),
  );
  return acts.filter((act) => !act.idle || other || moments.has(act.id));
}

/** More acts than this in one performance of a movement are not shown one by one. */
const MOST_TIMES = 50;

/** A movement that is performed, as its own acts in their order; hand and object of the use where they leave them open.
 *  One that performs another is not looked into further. */
function writtenOut(compiling: Compiling, one: SourceAction): SourceAction[] {
  const { known, drill, timing } = one.action;
  if (known.verb !== "perform") return [one];
  const held = slotOf(known, "movement", "movement");
  const id = held === null ? null : exactly(held);
  if (id === null || !compiling.rows.find("movements", id)) return [one];
  const times = slotOf(known, "times", "count");
  const count = times === null ? null : exactly(times);
  const rounds = count?.is === "times" ? Math.max(1, Math.min(MOST_TIMES, Math.floor(count.n))) : 1;
  const compiled = compiling.rows.actionsOf(id).flatMap((action) => compileAction(compiling, action, OWN) ?? []);
  if (compiled.length === 0) return [one];
  const acts = inOrder(compiled).map((action) => inUse(action, known, drill.onlyUnder));
  return Array.from({ length: rounds }, () => acts)
    .flat()
    .map((action, index) => ({
      action: index === 0 ? { ...action, timing: timing ?? action.timing } : action,
      mirrored: one.mirrored,
      via: drill.id,
    }));
}

function inUse(action: CompiledAction, use: KnownAct, onlyUnder: CompiledAction["drill"]["onlyUnder"]): CompiledAction {
  const known = filledIn(filledIn(action.known, "hand", use.slots.hand), "object", use.slots.object);
  return { ...action, known, drill: { ...action.drill, onlyUnder: [...onlyUnder, ...action.drill.onlyUnder] } };
}

/** An act in words by what is known of its slots, as the drill says it. `mirrored`: words of the text are not changed over, so they
 *  stand in quotation marks, and nobody takes their sides for those that are ridden. */
export function knownWords(act: KnownAct, names: Names, { mirrored } = { mirrored: false }): string {
  const hand = handSlotOf(act.verb);
  return phraseAct(act.verb, (slot) => {
    // The column of a hand says which hand it is.
    if (slot === "hand" && slot === hand && inColumn(act)) return null;
    const held = act.slots[slot];
    const kind = kindOfActSlot(act.verb, slot);
    if (held === undefined || kind === null) return null;
    const words = possible(held, []).map((value) => valueWords(kind, value as ValueOf<typeof kind>, names));
    const told = mirrored && kind === "words" ? words.map((said) => `“${said}”`) : words;
    return told.length === 0 ? null : [...new Set(told)].join(" or ");
  });
}

function inColumn(act: KnownAct): boolean {
  const held = act.slots.hand as Known<ValueOf<"hand">> | undefined;
  const hand = held === undefined ? null : exactly(held);
  return (hand === "left" || hand === "right") && IN_COLUMN.has(act.verb);
}

/** Verbs that stand in the column of the hand that does them. */
const IN_COLUMN: ReadonlySet<string> = new Set([
  "take",
  "release",
  "keep",
  "slide",
  "place rein hand",
  "rest",
  "gesture",
  "do nothing",
]);
