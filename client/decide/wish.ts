/** client/decide/wish.ts - what one looks at provisionally: readings picked, rules left out. Kept in this window only;
 *  nothing here is stored but how much effort each way of settling something is. */
import { computed, effect, signal } from "@preact/signals";
import type { Way } from "../../schema/guard.ts";
import type { Pick } from "../../shared/ride/puzzle/index.ts";
import type { Efforts } from "../../shared/ride/puzzle/what-next.ts";
import { one } from "../state/rows.ts";

/** A rule that is not counted at one stage. */
export interface LeftOut {
  stage: string;
  rule: string;
}

const picked = signal<readonly Pick[]>([]);
/** Readings picked, in the order they were; one that was taken away since is none. */
export const picks = computed<readonly Pick[]>(() =>
  picked.value.filter(({ crux, reading }) => one("readings", reading)?.crux === crux),
);
export const asAdopted = signal(false);
export const way = signal<Way>("mounted");
export const leftOut = signal<readonly LeftOut[]>([]);

/** Picks a reading of a crux in the place of another; the one that is picked already is let go. */
export function pick({ crux, reading }: Pick): void {
  const others = picked.value.filter((other) => other.crux !== crux);
  picked.value = isPicked(crux, reading) ? others : [...others, { crux, reading }];
}

export const isPicked = (crux: string, reading: string): boolean =>
  picks.value.some((known) => known.crux === crux && known.reading === reading);

export function letGo(crux: string): void {
  picked.value = picked.value.filter((known) => known.crux !== crux);
}

export function letAllGo(): void {
  picked.value = [];
}

export function leaveOut(rule: LeftOut): void {
  countAgain(rule);
  leftOut.value = [...leftOut.value, rule];
}

export function countAgain({ stage, rule }: LeftOut): void {
  leftOut.value = leftOut.value.filter((known) => known.stage !== stage || known.rule !== rule);
}

/** As the exercise is when one comes to it. */
export function wishNothing(): void {
  picked.value = [];
  asAdopted.value = false;
  leftOut.value = [];
}

const KEY = "passagework.efforts";
const USUAL: Efforts = { ask: 1, picture: 1, foot: 3, mounted: 8 };
export const MOST_EFFORT = 20;

function kept(): Efforts {
  try {
    const found = JSON.parse(localStorage.getItem(KEY) ?? "{}") as Partial<Record<keyof Efforts, unknown>>;
    const read = (name: keyof Efforts) => {
      const value = found[name];
      return typeof value === "number" && value >= 1 && value <= MOST_EFFORT ? value : USUAL[name];
    };
    return { ask: read("ask"), picture: read("picture"), foot: read("foot"), mounted: read("mounted") };
  } catch {
    return USUAL;
  }
}

/** How hard each way of settling something is, from 1. */
export const efforts = signal<Efforts>(kept());
effect(() => localStorage.setItem(KEY, JSON.stringify(efforts.value)));
