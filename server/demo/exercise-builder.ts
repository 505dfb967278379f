/** server/demo/exercise-builder.ts - writes the elements of one exercise, in their order, and their actions.
 *  May import: schema types, siblings. What is entered with words is stated by them unless `because` says otherwise. */
import type { Act } from "../../schema/act.ts";
import type { Action, Again } from "../../schema/exercise.ts";
import type { Guard, ReadingCondition } from "../../schema/guard.ts";
import type { Basis, Slot, Support } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import type { BookBuilder } from "./builder.ts";
import type { ActionDraft, Draft, SaidDraft } from "./draft.ts";
import type { Phrase } from "./phrase.ts";
import type { NewRow } from "./row-list.ts";

interface ElementMore {
  onlyWhen?: ReadingCondition[];
  /** When it is not the words alone that say so: `implied(true, ...)` or `supplied(true, ...)`. */
  because?: SaidDraft<true>;
  cue?: Draft<string>;
  threat?: Draft<string>;
  /** Who does it, where there are several. */
  role?: string;
  note?: string;
}

/** What every element of the demo has. */
interface Every {
  exercise: string;
  guard: Guard;
  existence: Support;
  order: null;
  role: string;
  copyOf: null;
  note: string;
}

export class ExerciseBuilder {
  readonly #book: BookBuilder;
  readonly id: string;

  constructor(book: BookBuilder, exercise: Omit<NewRow<"exercises">, "work">) {
    this.#book = book;
    this.id = book.add("exercises", exercise);
  }

  step(title: string, words: Phrase[], actions: readonly ActionDraft[], more: ElementMore = {}): string {
    const { id, around, every, ridden } = this.#element(words, more);
    this.#book.rows.add("elements", { ...every, is: "step", title, ...ridden }, id);
    addActions(this.#book, "elements", id, around, actions);
    return id;
  }

  again(
    title: string,
    words: Phrase[],
    again: Pick<Again, "of" | "manner" | "except">,
    { times, ...more }: ElementMore & { times?: Draft<ValueOf<"count">> } = {},
  ): string {
    const { id, around, every, ridden } = this.#element(words, more);
    const often = times && this.#book.slot(times, { kind: "elements", id, slot: "times" }, "elements", around);
    const counted = often === undefined ? {} : { times: often as Again["times"] };
    return this.#book.rows.add("elements", { ...every, is: "again", title, ...again, ...ridden, ...counted }, id);
  }

  /** A demand over the elements from one to another, both included; null: from the first, to the last. */
  advice(
    demand: string,
    words: Phrase[],
    from: string | null,
    to: string | null,
    more: Omit<ElementMore, "cue" | "threat"> = {},
  ): string {
    const { id, every } = this.#element(words, more);
    return this.#book.rows.add("elements", { ...every, is: "advice", demand, from, to, rule: null }, id);
  }

  /** Passages not written out yet, both ends included. It needs no mark: the passages are its words. */
  untreated(
    fromPassage: string,
    toPassage: string,
    estimate: { from: number; to: number },
    because: SaidDraft<true>,
  ): string {
    const { id, every } = this.#element([], { because });
    return this.#book.rows.add("elements", { ...every, is: "untreated", fromPassage, toPassage, estimate }, id);
  }

  #element(words: Phrase[], { onlyWhen = [], because, cue, threat, role = "", note = "" }: ElementMore) {
    const id = this.#book.rows.newId();
    const around = this.#book.basisOf("elements", id, words);
    const existence = this.#book.existence(because ?? null, around);
    const every: Every = { exercise: this.id, guard: onlyWhen, existence, order: null, role, copyOf: null, note };
    const slots = this.#book.slots({ cue, threat }, { kind: "elements", id }, "elements", around);
    return { id, around, every, ridden: slots as { cue?: Slot<string>; threat?: Slot<string> } };
  }
}

/** Actions of a step, of a standing instruction, of a movement or of a sense, in their order. */
export function addActions(
  book: BookBuilder,
  ownerKind: Action["ownerKind"],
  owner: string,
  around: Basis[],
  actions: readonly ActionDraft[],
): void {
  for (const action of actions) addAction(book, ownerKind, owner, around, action);
}

function addAction(
  book: BookBuilder,
  ownerKind: Action["ownerKind"],
  owner: string,
  around: Basis[],
  action: ActionDraft,
): void {
  const id = book.rows.newId();
  action.id = id;
  const own = book.basisOf("actions", id, action.words);
  const rests = own.length > 0 ? own : around;
  const existence = book.existence(action.existence, rests);
  const slots = book.slots(action.slots, { kind: "actions", id }, "actions", rests);
  const { timing, purpose, threat } = action;
  const about = { timing: timing?.(), purpose: purpose ?? undefined, threat: threat ?? undefined };
  const aboutIt = book.slots(about, { kind: "actions", id }, "actions", rests);
  book.rows.add(
    "actions",
    {
      ownerKind,
      owner,
      guard: action.onlyWhen,
      act: { verb: action.verb, slots } as Act,
      existence,
      ...(aboutIt as Pick<Action, "timing" | "purpose" | "threat">),
      note: action.note,
    },
    id,
  );
}
