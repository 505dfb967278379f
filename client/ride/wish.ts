/** client/ride/wish.ts - how one wants to see the exercise ridden. Kept in this window only; nothing here is stored. */
import { signal } from "@preact/signals";
import type { Way } from "../../schema/guard.ts";
import type { Rein } from "../../shared/ride/ride-context.ts";

export const REINS: readonly { value: Rein; words: string }[] = [
  { value: "as it is", words: "as it is" },
  { value: "mirror the world", words: "mirrored, ground and all" },
  { value: "on the other rein", words: "on the other rein" },
];

/** How a rider is set off against the first: so many seconds later, metres behind on the same line, or metres to the
 *  right or toward the head of the ground. */
export const OFFSETS = ["seconds later", "metres behind", "metres to the right", "metres toward the head"] as const;
export interface RiderWish {
  id: number;
  /** Whose part it is; null for all of it. */
  role: string | null;
  mirrored: boolean;
  by: (typeof OFFSETS)[number];
  amount: number;
}
/** Riders besides the first; null for the usual ones: one for each other part that has a figure to ride. */
export const riderWishes = signal<readonly RiderWish[] | null>(null);
/** Whose part the first rider rides where the exercise names roles: null for all of it, undefined for the usual one. */
export const firstRole = signal<string | null | undefined>(undefined);

/** Metres a second that somebody measured of the horse that is to be ridden, gait by gait. It stays as long as the window. */
export const HORSE_GAITS = ["walk", "trot", "canter", "gallop"] as const;
export type HorseMeasure = Readonly<Partial<Record<(typeof HORSE_GAITS)[number], number>>>;
export const thisHorse = signal<HorseMeasure>({});
/** Id of the stored kit whose horse is ridden; null for the published speeds. It stays as long as the window. */
export const chosenKit = signal<string | null>(null);

export const rein = signal<Rein>("as it is");
export const way = signal<Way>("mounted");
/** Readings taken here, by crux; a crux that is not among them goes as it was decided. */
export const choice = signal<Readonly<Record<string, string>>>({});
/** A reading ridden beside the one that is taken, in soft ink. */
export const besideReading = signal<{ crux: string; reading: string } | null>(null);

/** Takes a reading of a crux; null goes back to what was decided. */
export function read(crux: string, reading: string | null): void {
  const { [crux]: _before, ...rest } = choice.value;
  choice.value = reading === null ? rest : { ...rest, [crux]: reading };
  if (besideReading.value?.crux === crux && besideReading.value.reading === reading) besideReading.value = null;
}

/** How the next exercise that is opened is to be ridden, asked for by another room: readings taken, and the element to go
 *  to (null: the beginning). */
interface Arrival {
  readings: readonly { crux: string; reading: string }[];
  element: string | null;
}
let arrival: Arrival | null = null;

export function wishFor(wanted: Arrival): void {
  arrival = wanted;
}

/** As the exercise is when one comes to it, or as another room asked for it, which is asked once. Gives the element that is to be
 *  gone to. */
export function wishAsAsked(): string | null {
  const wanted = arrival;
  arrival = null;
  choice.value = Object.fromEntries((wanted?.readings ?? []).map(({ crux, reading }) => [crux, reading]));
  besideReading.value = null;
  rein.value = "as it is";
  way.value = "mounted";
  riderWishes.value = null;
  firstRole.value = undefined;
  return wanted?.element ?? null;
}
