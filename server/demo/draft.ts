/** server/demo/draft.ts - how values are written in the demo: stated, implied, supplied, or held by a crux.
 *  May import: schema types, siblings. A draft becomes a slot in builder.ts, when it is known which row it lies in
 *  and which words that row rests on. */
import type { VERBS, Verb } from "../../schema/act.ts";
import type { ReadingCondition } from "../../schema/guard.ts";
import type { Basis, SlotTable, Warrant } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import type { Phrase } from "./phrase.ts";

export interface SaidDraft<T> {
  is: "said";
  value: T;
  warrant: Warrant;
  /** Its own words; empty: a stated value rests on the words of its action, or else of its step. */
  words: Phrase[];
  /** What it rests on beside words. */
  basis: Basis[];
}
export type ReadingDraft<T> = SaidDraft<T> | { is: "not said" } | { is: "absent" };
export interface CruxDraft<T> {
  is: "in crux";
  crux: CruxHandle;
  /** By the key of the reading; a reading left out does not say. */
  values: Readonly<Record<string, ReadingDraft<T>>>;
}
export type Draft<T> = SaidDraft<T> | CruxDraft<T> | { is: "not said" } | { is: "not applicable" };
export type DraftsOf<T extends SlotTable> = { [name in keyof T]?: Draft<ValueOf<T[name]>> };

/** A crux as other things refer to it. */
export interface CruxHandle {
  id: string;
  /** Ids of its readings by key. */
  readings: ReadonlyMap<string, string>;
  /** The condition that the crux is read as one of these. Throws RangeError for a key that is none of its own. */
  reads(...keys: string[]): ReadingCondition;
}

/** The words say it. Without words of its own the value rests on those of its action or step. */
export function stated<const T>(value: T, words: Phrase[] = []): SaidDraft<T> {
  return { is: "said", value, warrant: "stated", words, basis: [] };
}

/** A picture shows it. */
export function pictured<const T>(value: T, region: string): SaidDraft<T> {
  return { is: "said", value, warrant: "stated", words: [], basis: [{ is: "picture", region }] };
}

/** The words imply it, on a premise. */
export function implied<const T>(value: T, premise: string, words: Phrase[] = []): SaidDraft<T> {
  return { is: "said", value, warrant: "implied", words, basis: [{ is: "premise", text: premise }] };
}

/** We supply it, and say why. */
export function supplied<const T>(value: T, note: string): SaidDraft<T> {
  return { is: "said", value, warrant: "supplied", words: [], basis: [{ is: "editor", note }] };
}

/** The readings of a crux give it. */
export function inCrux<V extends Readonly<Record<string, ReadingDraft<unknown>>>>(
  crux: CruxHandle,
  values: V,
): CruxDraft<ValueIn<V[keyof V]>> {
  return {
    is: "in crux",
    crux,
    values: values as unknown as Readonly<Record<string, ReadingDraft<ValueIn<V[keyof V]>>>>,
  };
}
type ValueIn<D> = D extends SaidDraft<infer T> ? T : never;

/** Why something is there: stated by words, or implied or supplied. */
export type ExistenceDraft = Omit<SaidDraft<unknown>, "is" | "value">;

/** An action before it has an owner. */
export interface ActionDraft {
  /** Filled when the action is put into a step, so that other actions and exceptions can name it. */
  id: string | null;
  verb: Verb;
  slots: Readonly<Record<string, Draft<unknown> | undefined>>;
  /** Its own words; empty: it rests on those of its step. */
  words: Phrase[];
  onlyWhen: ReadingCondition[];
  /** Null: as its words or, without any, its step. */
  existence: ExistenceDraft | null;
  /** Called when the action is put into its step, so that it can name an action before it. */
  timing: (() => Draft<unknown>) | null;
  purpose: Draft<unknown> | null;
  threat: Draft<unknown> | null;
  note: string;
}

interface ActionMore {
  words?: Phrase[];
  onlyWhen?: ReadingCondition[];
  /** When it is not the words that say so: `implied(true, ...)` or `supplied(true, ...)`. */
  because?: SaidDraft<true>;
  timing?: Draft<ValueOf<"timing">> | (() => Draft<ValueOf<"timing">>);
  purpose?: Draft<ValueOf<"purpose">>;
  threat?: Draft<ValueOf<"threat">>;
  note?: string;
}

/** One thing a part does: the verb, its slots, and what else is to be said of it. */
export function does<V extends Verb>(
  verb: V,
  slots: DraftsOf<(typeof VERBS)[V]["slots"]>,
  { words = [], onlyWhen = [], because, timing, purpose, threat, note = "" }: ActionMore = {},
): ActionDraft {
  const when = timing === undefined ? null : typeof timing === "function" ? timing : () => timing;
  const about = { timing: when, purpose: purpose ?? null, threat: threat ?? null, note };
  return { id: null, verb, slots, words, onlyWhen, existence: because ?? null, ...about };
}

/** The id of an action that already stands in a step. Throws TypeError when it does not yet. */
export function idOf(action: ActionDraft): string {
  if (action.id === null) throw new TypeError(`The action "${action.verb}" is named before its step was written.`);
  return action.id;
}

/** Values that are written again and again. */
export const LEFT = { to: "left", viewpoint: "rider" } as const;
export const RIGHT = { to: "right", viewpoint: "rider" } as const;
export const times = (n: number) => ({ is: "times", n }) as const;
export const once = times(1);
export const clock = (hour: number) => ({ is: "clock", hour }) as const;
export const about = (metres: number, spread: number) => ({ is: "about", of: metres, spread }) as const;
export const at = (station: string) => ({ is: "station", station }) as const;
export const inWords = (words: string) => ({ is: "words", words }) as const;
