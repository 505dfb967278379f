/** shared/ride/puzzle/told-member.ts - a member of a clash as a colleague says it, with the words of the passage behind it.
 *  May import: schema types, shared/decide, shared/drill, shared/ride, siblings. Keeps rule P12 (shared/ride/puzzle/RULES.md). */
import type { Citation } from "../../../schema/drill.ts";
import type { Slot, Warrant } from "../../../schema/slot.ts";
import type { Member, Pick } from "../../decide/index.ts";
import { citationsOf, citationsOfBasis, inTextOrder } from "../../drill/citations.ts";
import { type ExerciseRows, exerciseRows } from "../../drill/exercise-rows.ts";
import { namesOf } from "../../drill/names.ts";
import { kindOfActSlot, slotLabel } from "../../drill/slot-labels.ts";
import { type Names, valueWords } from "../../drill/words.ts";
import type { Finding } from "../ridden.ts";
import { rideWithContext } from "../ride-exercise.ts";
import { findingsOf } from "../rules/findings.ts";
import { RULES_TABLE } from "../rules/table.ts";
import { actionAndSlot } from "./stated-values.ts";
import type { WeighedExercise, WeighedStage } from "./weighed.ts";

export interface ToldMember {
  member: Member;
  words: string;
  quote: Citation[];
  element: string | null;
  crux: string | null;
  reading: string | null;
  rule: string | null;
}

/** Rides that are looked at to say what a rule finds, at most for one answer. */
const MOST_RIDES = 12;

/** Tells members of one weighed exercise. */
export class MemberTeller {
  readonly #weighed: WeighedExercise;
  readonly #rows: ExerciseRows;
  readonly #names: Names;
  readonly #found = new Map<string, readonly Finding[]>();

  /** Throws RangeError when the exercises are no longer among the rows. */
  constructor(weighed: WeighedExercise) {
    this.#weighed = weighed;
    this.#rows = exerciseRows(weighed.rows, weighed.exercises[0] ?? "");
    this.#names = namesOf(weighed.rows);
  }

  /** `picks` are those the member is told under, so that what a rule finds can be looked up in a ride. */
  told(member: Member, picks: readonly Pick[]): ToldMember {
    const nothing = { member, quote: [], element: null, crux: null, reading: null, rule: null };
    if (member.is === "pick") {
      const { crux, reading } = member;
      return { ...nothing, words: this.pickWords(member), quote: this.#wordsOfPick(member), crux, reading };
    }
    const stage = this.stage(member.stage);
    const element = stage?.element ?? null;
    if (member.is === "rule")
      return { ...nothing, ...this.#ruleTold(member, stage, picks), element, rule: member.rule };
    return { ...nothing, ...this.#statedTold(member.value, stage), element };
  }

  pickWords({ crux, reading }: Pick): string {
    const title = this.#rows.cruxes.get(crux)?.title ?? "a crux that is gone";
    return `“${title}” read as “${this.readingTitle({ crux, reading })}”`;
  }

  readingTitle({ crux, reading }: Pick): string {
    return this.#rows.readingsOf(crux).find(({ id }) => id === reading)?.title ?? "a reading that is gone";
  }

  stage(id: string): WeighedStage | undefined {
    return this.#weighed.stages.find((stage) => stage.id === id);
  }

  #wordsOfPick({ crux, reading }: Pick): Citation[] {
    const own = citationsOf(this.#rows, "readings", reading);
    return inTextOrder([...citationsOf(this.#rows, "cruxes", crux), ...own]);
  }

  #ruleTold(
    { rule }: Extract<Member, { is: "rule" }>,
    stage: WeighedStage | undefined,
    picks: readonly Pick[],
  ): Partial<ToldMember> & { words: string } {
    const finding = stage === undefined ? null : this.#findingAt(rule, stage, picks);
    if (finding !== null) return { words: firstSentence(finding.sentence), quote: finding.citations };
    const sentence = RULES_TABLE.find(({ code }) => code === rule)?.sentence ?? rule;
    const row = stage && this.#rows.find("elements", stage.element);
    return {
      words: `${stage === undefined ? "" : `${capital(stageWords(this.#weighed, stage))}: `}the rule “${sentence}”`,
      quote: row ? citationsOf(this.#rows, "elements", row.id, row.existence) : [],
    };
  }

  /** What the rule says of the step in some ride under these picks; null where none that was looked at shows it. */
  #findingAt(rule: string, stage: WeighedStage, picks: readonly Pick[]): Finding | null {
    for (const choice of choicesFor(this.#weighed, stage, picks)) {
      const found = this.#findings(stage, choice).find(
        (one) => one.rule === rule && one.element === stage.element && one.verdict === "broken" && one.waived === null,
      );
      if (found) return found;
    }
    return null;
  }

  #findings({ exercise, role }: WeighedStage, choice: readonly Pick[]): readonly Finding[] {
    const key = JSON.stringify([exercise, role, choice]);
    const known = this.#found.get(key);
    if (known !== undefined) return known;
    if (this.#found.size >= MOST_RIDES) return [];
    const { ridden, context } = rideWithContext(this.#weighed.rows, exercise, {
      ...this.#weighed.ridden,
      role,
      choice,
    });
    const found = findingsOf(ridden, context, { compareReadings: false });
    this.#found.set(key, found);
    return found;
  }

  #statedTold(value: string, stage: WeighedStage | undefined): Partial<ToldMember> & { words: string } {
    const { action, slot } = actionAndSlot(value);
    const row = this.#rows.find("actions", action);
    const kind = row === undefined ? null : kindOfActSlot(row.act.verb, slot);
    const said = row === undefined ? null : this.#statedIn(row.id, slot);
    const where = stage === undefined ? "" : stageWords(this.#weighed, stage);
    if (row === undefined || kind === null || said === null)
      return { words: `${where}: ${slotLabel(slot)}`, quote: [] };
    const words = valueWords(kind, said.value as never, this.#names);
    return {
      words: `${capital(where)}: what is stated there: ${slotLabel(slot)} – ${words}`,
      quote: citationsOfBasis(this.#rows, said.basis),
    };
  }

  /** The value that stands in the row, or that a reading of its crux states. */
  #statedIn(id: string, slot: string): { value: unknown; basis: Parameters<typeof citationsOfBasis>[1] } | null {
    const row = this.#rows.find("actions", id);
    const slots = row?.act.slots as Record<string, Slot<unknown> | undefined> | undefined;
    const held = slots?.[slot] ?? (slot === "timing" ? row?.timing : undefined);
    if (held?.is === "said") return held;
    if (held?.is !== "in crux") return null;
    const given = this.#rows
      .readingsOf(held.crux)
      .flatMap(({ values }) => values)
      .find(({ at, value }) => at.kind === "actions" && at.id === id && at.slot === slot && isStated(value));
    return given?.value.is === "said" ? given.value : null;
  }
}

const isStated = (value: { is: string; warrant?: Warrant }): boolean =>
  value.is === "said" && value.warrant === "stated";

/** The picks as they are, then with each other reading of the cruxes that the stage touches. */
function choicesFor({ puzzle }: WeighedExercise, { id }: WeighedStage, picks: readonly Pick[]): Pick[][] {
  const picked = new Set(picks.map(({ crux }) => crux));
  const touched = puzzle.stages.find((stage) => stage.id === id)?.touches ?? [];
  const others = puzzle.cruxes.filter((crux) => touched.includes(crux.id) && !picked.has(crux.id));
  const more = others.flatMap(({ id: crux, readings, ruledOut }) =>
    readings.filter((reading) => !ruledOut.includes(reading)).map((reading) => [...picks, { crux, reading }]),
  );
  return [[...picks], ...more];
}

/** "step 5", “the greeting”; with the role and the exercise where there are several. */
export function stageWords({ exercises, rows }: WeighedExercise, stage: WeighedStage): string {
  const { number, title, is, exercise, role } = stage;
  const unnamed = is === "untreated" ? "the part not written out" : "a step without a name";
  const own = number === null ? (title === "" ? unnamed : `“${title}”`) : `step ${number}`;
  const of = rows.exercises?.find(({ value }) => value.id === exercise)?.value.title ?? "";
  return [own, ...(exercises.length < 2 ? [] : [`of “${of}”`]), ...(role === null ? [] : [`(${role})`])].join(" ");
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What is in the way, without the words quoted and what would lift it. */
function firstSentence(sentence: string): string {
  const end = sentence.search(/\. (The passage|Either|No words|The step does|It comes)\b/);
  return (end === -1 ? sentence : sentence.slice(0, end)).replace(/\.$/, "");
}
