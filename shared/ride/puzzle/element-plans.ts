/** shared/ride/puzzle/element-plans.ts - what each element of an exercise does under every reading that bears on it.
 *  May import: schema types, shared/decide, shared/drill, shared/ground, shared/hands, shared/ride, siblings. Keeps rules
 *  P2-P4 (shared/ride/puzzle/RULES.md). Compiled as the drill is, without its words; each combination of readings once. */
import type { Again, Element, Variant } from "../../../schema/exercise.ts";
import type { Way } from "../../../schema/guard.ts";
import type { Rows } from "../../../schema/record.ts";
import type { ReadingOf } from "../../decide/puzzle.ts";
import type { CompiledAction } from "../../drill/compile-action.ts";
import { type CompiledElement, compileElement, presentElement } from "../../drill/compile-element.ts";
import { newBearing } from "../../drill/crux-bearing.ts";
import { type ExerciseRows, exerciseRows } from "../../drill/exercise-rows.ts";
import { contextOf } from "../../drill/follow-hands.ts";
import { namesOf } from "../../drill/names.ts";
import { objectsUsed } from "../../drill/objects-used.ts";
import type { CompilingBase } from "../../drill/resolve-slot.ts";
import { type Settlement, settleBy, type Taken } from "../../drill/settle.ts";
import { type Inherited, inheritedOf, openingOf } from "../../drill/standing-instructions.ts";
import type { Names } from "../../drill/words.ts";
import type { ActContext } from "../../hands/apply.ts";
import { compareRanked } from "../../rank.ts";
import { type FoundGround, groundOf } from "../ground-of.ts";
import { planStages } from "../plan.ts";
import { ridesIn } from "../roles.ts";
import type { CompiledPart, PartOf } from "../sources.ts";
import { ByReadings } from "./by-readings.ts";
import { type StagePlan, type Surroundings, stagePlanOf } from "./stage-plan.ts";

/** What one element does under some readings. */
export interface ElementPlan {
  /** Elements that do the same have the same: what is ridden and judged hangs on nothing else. */
  key: string;
  /** Whether it is part of the exercise; advice may be, and has no stages. */
  present: boolean;
  stages: readonly StagePlan[];
  /** Things carried that it names. */
  objects: readonly string[];
}

export interface PlanSources {
  rows: Rows;
  /** The exercise, as its rows are laid out. */
  laid: ExerciseRows;
  /** Whose part is ridden; null: all of it. */
  role: string | null;
  way: Way;
  variant: Variant | null;
  around: Surroundings;
}

/** An exercise as its elements are planned under readings. */
export class ElementPlans {
  readonly laid: ExerciseRows;
  /** By element, in the order of the exercise. */
  readonly plans: ReadonlyMap<string, ByReadings<ElementPlan>>;
  readonly #sources: PlanSources;
  readonly #names: Names;
  readonly #ground: ByReadings<FoundGround>;
  readonly #parts = new Map<string, PlannedPart>();

  constructor(sources: PlanSources) {
    this.#sources = sources;
    this.#names = namesOf(sources.rows);
    this.laid = sources.laid;
    const home = this.#part(sources.laid.exercise.id);
    this.#ground = new ByReadings((readingOf) => {
      const base = this.#base(home, readingOf);
      return groundOf({ ...base, element: null, bearing: newBearing() }, home.laid.exercise.ground);
    });
    const left = new Set(sources.variant?.deltas.flatMap((delta) => (delta.is === "leave out" ? [delta.element] : [])));
    this.plans = new Map(
      home.laid.elements.map((element) => [
        element.id,
        new ByReadings((readingOf) => (left.has(element.id) ? ABSENT : this.#plan(home, element, readingOf))),
      ]),
    );
  }

  ground(readingOf: ReadingOf): FoundGround {
    return this.#ground.get(readingOf);
  }

  /** How the exercise begins by its standing instructions, and what they name. */
  opening(readingOf: ReadingOf): Opening {
    const { laid, variant } = { laid: this.laid, variant: this.#sources.variant };
    const compiling = { ...this.#base({ laid, variant }, readingOf), element: null, bearing: newBearing() };
    const opening = openingOf(compiling);
    const objects = carriedIn(laid, opening);
    return { opening, context: contextOf(compiling), objects, settlement: compiling.settlement };
  }

  #part(exercise: string): PlannedPart {
    const known = this.#parts.get(exercise);
    if (known) return known;
    const isHome = exercise === this.laid.exercise.id;
    const laid = isHome ? this.laid : exerciseRows(this.#sources.rows, exercise, this.laid);
    const variant = isHome ? this.#sources.variant : null;
    const left = new Set(variant?.deltas.flatMap((delta) => (delta.is === "leave out" ? [delta.element] : [])));
    const part: PlannedPart = {
      laid,
      variant,
      elements: new Map(),
      inherited: new ByReadings((readingOf) =>
        inheritedOf({ ...this.#base(part, readingOf), element: null, bearing: newBearing() }),
      ),
    };
    for (const element of laid.elements) {
      const compiled = (readingOf: ReadingOf) =>
        left.has(element.id) ? null : this.#compile(part, element, readingOf);
      part.elements.set(element.id, new ByReadings(compiled));
    }
    this.#parts.set(exercise, part);
    return part;
  }

  #base({ laid, variant }: Pick<PlannedPart, "laid" | "variant">, readingOf: ReadingOf): CompilingBase {
    const taken = (crux: string): Taken | null => {
      const reading = readingOf(crux);
      const found = reading === null ? undefined : laid.readingsOf(crux).find(({ id }) => id === reading);
      return found === undefined ? null : { reading: found, because: "chosen", reason: "", condition: "" };
    };
    const settlement = settleBy(laid, taken, this.#sources.way, variant?.id ?? null);
    return { rows: laid, names: this.#names, settlement, wordless: true };
  }

  #compile(part: PlannedPart, element: Element, readingOf: ReadingOf): CompiledElement | null {
    const present = presentElement(this.#base(part, readingOf), element);
    if (present === null) return null;
    const inherited: readonly Inherited[] = element.is === "step" ? part.inherited.get(readingOf) : [];
    return compileElement(
      present,
      { rows: part.laid, names: this.#names, numbers: NO_NUMBERS },
      inherited,
      part.variant,
    );
  }

  #plan(home: PlannedPart, element: Element, readingOf: ReadingOf): ElementPlan {
    const compiled = home.elements.get(element.id)?.get(readingOf) ?? null;
    if (compiled === null) return ABSENT;
    const { role } = this.#sources;
    const objects = carriedIn(home.laid, compiled.actions);
    if (!ridesIn(element.role, role)) return { key: JSON.stringify(objects), present: true, stages: [], objects };
    if (element.is === "advice") return { key: "advice", present: true, stages: [], objects };
    const { ground } = this.ground(readingOf);
    const needed = element.is === "again" ? this.#doneAgain(element) : new Map<string, ReadonlySet<string>>();
    const parts = new Map<string, CompiledPart>();
    const partOf: PartOf = (exercise) => {
      const known = parts.get(exercise);
      const wanted = needed.get(exercise);
      if (known !== undefined || wanted === undefined) return known ?? null;
      const part = this.#part(exercise);
      const elements = part.laid.elements
        .filter(({ id }) => wanted.has(id))
        .flatMap(({ id }) => part.elements.get(id)?.get(readingOf) ?? [])
        .filter(({ drill }) => ridesIn(drill.role, role));
      const made = { elements, base: this.#base(part, readingOf), role };
      parts.set(exercise, made);
      return made;
    };
    const own: CompiledPart = { elements: [compiled], base: this.#base(home, readingOf), role };
    const stages = planStages(own, partOf, ground, false).map((plan) =>
      stagePlanOf(plan, ground, this.#sources.around),
    );
    const key = JSON.stringify([stages.map((stage) => stage.key), objects]);
    return { key, present: true, stages, objects };
  }

  /** Elements an again may do again, and what those do again, by exercise. */
  #doneAgain(again: Again): Map<string, ReadonlySet<string>> {
    const needed = new Map<string, Set<string>>();
    const todo: Again[] = [again];
    for (let one = todo.pop(); one !== undefined; one = todo.pop()) {
      for (const element of rangeOf(this.#sources.rows, one)) {
        const known = needed.get(element.exercise) ?? new Set();
        needed.set(element.exercise, known);
        if (known.has(element.id)) continue;
        known.add(element.id);
        if (element.is === "again") todo.push(element);
      }
      if (one.of.is === "exercise" && !needed.has(one.of.exercise) && this.#isThere(one.of.exercise))
        needed.set(one.of.exercise, new Set());
    }
    return needed;
  }

  #isThere(exercise: string): boolean {
    return (this.#sources.rows.exercises ?? []).some(({ value }) => value.id === exercise);
  }
}

/** Ids of things that are named; reins are a part of the state whether they are or not. */
function carriedIn(laid: ExerciseRows, actions: readonly CompiledAction[]): string[] {
  return objectsUsed(laid, [{ actions: [...actions] }]).flatMap(({ id, is }) => (is === "reins" ? [] : [id]));
}

export interface Opening {
  opening: readonly CompiledAction[];
  /** Holds and movements as they are read at the beginning. */
  context: ActContext;
  objects: readonly string[];
  settlement: Settlement;
}

interface PlannedPart {
  laid: ExerciseRows;
  variant: Variant | null;
  /** Null: no part of the exercise under these readings. */
  elements: Map<string, ByReadings<CompiledElement | null>>;
  inherited: ByReadings<Inherited[]>;
}

const ABSENT: ElementPlan = Object.freeze({ key: "absent", present: false, stages: [], objects: [] });
const NO_NUMBERS: ReadonlyMap<string, number> = new Map();

/** Every element it may do again, under any reading. */
export function rangeOf(rows: Rows, { of }: Again): Element[] {
  if (of.is === "movement") return [];
  const elements = (rows.elements ?? []).map(({ value }) => value);
  const home = of.is === "exercise" ? of.exercise : elements.find(({ id }) => id === of.from)?.exercise;
  const ordered = elements.filter(({ exercise }) => exercise === home).sort(compareRanked);
  if (of.is === "exercise") return ordered;
  const [from, to] = [of.from, of.to].map((wanted) => ordered.findIndex(({ id }) => id === wanted)) as [number, number];
  return from === -1 || to < from ? [] : ordered.slice(from, to + 1);
}
