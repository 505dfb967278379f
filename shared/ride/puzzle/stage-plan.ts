/** shared/ride/puzzle/stage-plan.ts - one stage as it is planned, with a key that holds all its ride and its verdicts hang on.
 *  May import: schema types, shared/drill, shared/ground, shared/hands, shared/ride. Keeps rule P3
 *  (shared/ride/puzzle/RULES.md). Everything a ride may look up later is looked up here, while it is known which readings
 *  are asked for. */
import type { Threat } from "../../../schema/riding.ts";
import type { SlotAddress } from "../../../schema/slot.ts";
import { type Resolved, resolveSlot } from "../../drill/resolve-slot.ts";
import { distanceToWall, type RidingGround } from "../../ground/grounds.ts";
import { type GroundStation, placeOfStation } from "../../ground/stations.ts";
import { possible } from "../../hands/known.ts";
import { slotOf } from "../../hands/known-act.ts";
import { contextIn } from "../follow.ts";
import { isGait, isRide } from "../horse-order.ts";
import type { PlannedStage } from "../planned.ts";
import type { RiddenAct } from "../ride-context.ts";
import { threatsNamed } from "../threats-of.ts";

export interface StagePlan {
  plan: PlannedStage;
  ground: RidingGround;
  /** Of all it does. Ids of actions are not in it, so that copies under two readings are one. */
  key: string;
  /** Of what the horse does: its way hangs on nothing else. */
  pathKey: string;
  /** Stations about which a circle may take the size last ridden there. */
  sizesRead: readonly string[];
}

/** Codes of rules that look at opponents. */
const ON_THREATS = ["threat-weapon", "parry-across", "threat-covered"];

/** Whether opponents make a difference to what is counted. */
export function looksAtThreats({ bars }: Pick<Surroundings, "bars">): boolean {
  return ON_THREATS.some((code) => bars.has(code));
}

/** What of the world a plan is made with. */
export interface Surroundings {
  /** Codes of the rules that bar. */
  bars: ReadonlySet<string>;
  /** Holds whose place for the rein hand is in a crux: one that is in force may be any of them. */
  holdsInCrux: readonly string[];
}

export function stagePlanOf(plan: PlannedStage, ground: RidingGround, { bars, holdsInCrux }: Surroundings): StagePlan {
  const ordinals = new Map<string, string>();
  for (const { id } of plan.acts) if (!ordinals.has(id)) ordinals.set(id, `#${ordinals.size}`);
  const ordinal = (id: string): string => ordinals.get(id) ?? "elsewhere";
  const told = plan.acts.map((act) => actKey(act, ordinal));
  const head = [plan.is, plan.source, plan.beginsLike, plan.mirrored, plan.refusal !== null];
  const onGround = groundKey(ground, plan.acts);
  // A way names the actions it was laid for, so here ids count.
  const horse = plan.acts.flatMap((act, index) => (isRide(act) || isGait(act) ? [act.id, told[index]] : []));
  // How many acts of the hands there are tells how long a halt lasts, and so how far a horse that goes on gets.
  const order = plan.acts.map((act) => (isRide(act) ? "r" : isGait(act) ? "g" : act.drill.inherited ? "" : "h"));
  const timings = plan.acts.map(({ id, known, timing }) => [id, known.verb, timing]);
  const threats = looksAtThreats({ bars }) ? threatsIn(plan) : [];
  const reinZones = holdsInCrux.map((id) => contextIn(plan).hold(id)?.slots.reinZone);
  return {
    plan,
    ground,
    key: JSON.stringify([head, told, onGround, holdsIn(plan), reinZones, threats]),
    pathKey: JSON.stringify([head, horse, order, timings, onGround]),
    sizesRead: plan.acts.flatMap((act) => sizeRead(act, ground)),
  };
}

function actKey(
  { id, known, timing, drill, mirrored, via, idle }: RiddenAct,
  ordinal: (id: string) => string,
): unknown[] {
  const value = timing?.is === "known" ? timing.value : null;
  const when = value?.is === "with" || value?.is === "after action" ? [value.is, ordinal(value.action)] : timing;
  // Of what has no meaning here only its moment and its hands are heard.
  const { hand, to } = known.slots;
  return [
    ordinal(id),
    idle ? ["idle", hand, to] : known,
    when,
    drill.onlyUnder.length > 0,
    drill.inherited,
    mirrored,
    via !== null,
  ];
}

/** Holds and movements as they are used here, looked up once so that the readings behind them are asked for. */
function holdsIn(plan: PlannedStage): unknown[] {
  const context = contextIn(plan);
  const { rows } = plan.compiling;
  const seen = new Map<string, unknown>();
  for (const { known } of plan.acts) lookUp(known);
  return [...seen];

  function lookUp(known: RiddenAct["known"]): void {
    const holds = slotOf(known, "hold", "hold");
    for (const id of holds === null ? [] : possible(holds, [])) {
      if (seen.has(id)) continue;
      seen.set(id, null);
      seen.set(id, [context.hold(id), rows.find("holds", id)?.strong ?? false]);
    }
    const movements = slotOf(known, "movement", "movement");
    for (const id of movements === null ? [] : possible(movements, [])) {
      if (seen.has(id)) continue;
      seen.set(id, null);
      const acts = context.movement(id);
      seen.set(id, acts);
      for (const act of acts ?? []) lookUp(act);
    }
  }
}

/** The opponents it assumes, with all that is said of them. */
function threatsIn(plan: PlannedStage): unknown[] {
  const { compiling } = plan;
  return [...threatsNamed(plan)].map((id) => {
    const row = compiling.rows.find("threats", id);
    const slots = Object.entries(row?.slots ?? {}) as [keyof Threat["slots"], Parameters<typeof resolveSlot>[2]][];
    return [
      id,
      slots.map(([slot, held]) => {
        const resolved: Resolved = resolveSlot(compiling, { kind: "threats", id, slot } as SlotAddress, held);
        return [slot, resolved.is, resolved.is === "said" ? resolved.value : null];
      }),
    ];
  });
}

/** Metres: a station nearer to the wall than this may be a gate in it. */
const AT_THE_WALL = 1;

/** The ground as far as the stage can tell it from another: its sizes, the stations that are named here, and those in the
 *  wall, beside which the way may touch it. */
function groundKey(
  { shape, width, length, trackOffset, stations }: RidingGround,
  acts: readonly RiddenAct[],
): unknown[] {
  const named = new Set<string>();
  for (const { known, timing } of acts)
    for (const held of [...Object.values(known.slots), timing]) collectWords(held, named);
  const told = [...named].join("\n");
  const isNamed = ({ id, name }: GroundStation): boolean => named.has(id) || told.includes(plain(name));
  const names = new Set(stations.filter(isNamed).map(({ name }) => name));
  const kept = stations.filter((station) => names.has(station.name) || mayBeGate(station));
  return [shape, width, length, trackOffset, kept];

  function mayBeGate(station: GroundStation): boolean {
    const place = placeOfStation(station, { x: 0, y: 0 });
    return (
      station.outline.is !== "point" ||
      distanceToWall({ shape, width, length, trackOffset, stations }, place) < AT_THE_WALL
    );
  }
}

const plain = (name: string): string => name.toLowerCase().replace(/^the /, "").trim();

function collectWords(value: unknown, words: Set<string>): void {
  if (typeof value === "string") words.add(value).add(value.toLowerCase());
  else if (typeof value === "object" && value !== null)
    for (const part of Object.values(value)) collectWords(part, words);
}

function sizeRead(act: RiddenAct, { stations }: RidingGround): string[] {
  const about = slotOf(act.known, "about", "place");
  const size = slotOf(act.known, "size", "length");
  if (about === null || size?.is === "known") return [];
  return possible(about, []).flatMap((place) =>
    stations
      .filter(({ id, name }) => (place.is === "station" ? id === place.station : plain(name) === plain(place.words)))
      .map(({ id }) => id),
  );
}
