/** shared/ride/sources.ts - the elements of an exercise one after another, what is done again unrolled.
 *  May import: schema types, shared/drill, siblings in shared/ride. Keeps rules R5-R8 (shared/ride/RULES.md). Advice is no
 *  stage; an again that cannot be unrolled is one stage, with the reason. */
import type { DrillElement } from "../../schema/drill.ts";
import type { Again } from "../../schema/exercise.ts";
import type { ValueOf } from "../../schema/values.ts";
import { type CompiledAction, compileAction, OWN } from "../drill/compile-action.ts";
import { type CompiledElement, compileElement, presentElement } from "../drill/compile-element.ts";
import { newBearing } from "../drill/crux-bearing.ts";
import { inOrder } from "../drill/follow-hands.ts";
import type { Compiling, CompilingBase } from "../drill/resolve-slot.ts";
import { standingOf } from "../drill/standing-instructions.ts";
import { exactly } from "../hands/known.ts";
import { compareRanked } from "../rank.ts";
import { figureMeant } from "./event-meant.ts";
import type { Source, SourceAction } from "./planned.ts";
import { ridesIn } from "./roles.ts";

/** More stages than this are a slip of the pen in how often something is done again. */
export const MOST_STAGES = 2_000;

/** One exercise as it is compiled for this ride. */
export interface CompiledPart {
  elements: readonly CompiledElement[];
  base: CompilingBase;
  /** Whose elements these are, besides those that are everybody's; absent or null: everybody's. */
  role?: string | null;
}

/** Finds an exercise to be done again; null when its rows were not given. */
export type PartOf = (exercise: string) => CompiledPart | null;

/** The sources of one element. `within`: agains and exercises being unrolled, so that one that names itself ends. */
export function sourcesOf(
  part: CompiledPart,
  element: CompiledElement,
  partOf: PartOf,
  mirrored: boolean,
  within: readonly string[] = [],
): Source[] {
  const { drill } = element;
  if (drill.is === "advice") return [];
  const compiling: Compiling = { ...part.base, element: drill.id, bearing: newBearing() };
  const base = {
    id: drill.id,
    title: drill.title,
    values: drill.values,
    standing: drill.standing,
    mirrored,
    compiling,
  };
  const alone = { ...base, round: 0, beginsLike: null, refusal: null, notes: [] };
  if (drill.is !== "again") return [{ ...alone, is: drill.is, actions: own(element.actions, mirrored) }];
  const row = part.base.rows.find("elements", drill.id);
  if (row?.is !== "again") throw new TypeError("An element that is done again has a row that says so.");
  const refused = (sentence: string): Source[] => [
    { ...alone, is: "again", actions: own(element.actions, mirrored), refusal: sentence },
  ];
  if (within.includes(drill.id)) return refused(`${called(drill)} does itself again, without end. Name other steps.`);
  const found = doneAgain(part, row, partOf, compiling);
  if (typeof found === "string") return refused(found);

  const { rounds, note } = roundsOf(drill);
  const turned = mirrored !== (row.manner !== "as it is");
  const inside = [...within, drill.id];
  const run =
    "movement" in found
      ? [{ ...alone, is: "again" as const, mirrored: turned, actions: own(found.movement, turned) }]
      : found.elements.flatMap((one) => sourcesOf(found.part, one, partOf, turned, inside));
  if (run.length * rounds > MOST_STAGES)
    return refused(
      `At most ${MOST_STAGES} stages were expected, but ${called(drill)} makes ${run.length * rounds}. Do it again less often.`,
    );
  const begins = "movement" in found ? null : (run.find(({ refusal }) => refusal === null)?.id ?? null);
  const notes = [...(note === null ? [] : [note]), ...exceptionsInWords(drill, row)];
  const once = excepted(run, row, own(element.actions, mirrored));
  return Array.from({ length: rounds }, () => once).flatMap((list, round) =>
    list.map((source, index) => ({
      ...source,
      round: round + 1,
      beginsLike: index === 0 ? (source.beginsLike ?? begins) : source.beginsLike,
      notes: round === 0 && index === 0 ? [...notes, ...source.notes] : source.notes,
    })),
  );
}

function own(actions: readonly CompiledAction[], mirrored: boolean): SourceAction[] {
  return actions.map((action) => ({ action, mirrored, via: null }));
}

function called({ title, number }: DrillElement): string {
  return title === "" ? `Step ${number}` : `“${title}”`;
}

type Found = { elements: readonly CompiledElement[]; part: CompiledPart } | { movement: CompiledAction[] };

/** What is done again, or the sentence why that cannot be told. */
function doneAgain(part: CompiledPart, row: Again, partOf: PartOf, compiling: Compiling): Found | string {
  const { of } = row;
  const { rows } = part.base;
  if (of.is === "movement") {
    if (!rows.find("movements", of.movement))
      return "The movement that is done again is no longer there. Name another.";
    const actions = rows.actionsOf(of.movement).flatMap((action) => compileAction(compiling, action, OWN) ?? []);
    return { movement: inOrder(actions) };
  }
  if (of.is === "exercise") {
    const other = partOf(of.exercise);
    return other === null ? NOT_GIVEN : { elements: other.elements, part: other };
  }
  const first = rows.find("elements", of.from);
  const home = first && partOf(first.exercise);
  if (!first || !home) return NOT_GIVEN;
  const order = rows
    .all("elements")
    .filter(({ exercise }) => exercise === first.exercise)
    .sort(compareRanked)
    .map(({ id }) => id);
  const [from, to] = [order.indexOf(of.from), order.indexOf(of.to)];
  if (to === -1) return NOT_GIVEN;
  if (to < from) return "The last step to be done again comes before the first. Exchange the two.";
  const wanted = order.slice(from, to + 1);
  const present = home.elements.filter(({ drill }) => wanted.includes(drill.id));
  return { elements: present.length > 0 ? present : fromTheOtherWay(home, wanted), part: home };
}

/** "As on foot", said of riding: steps that are done the other way alone are done again as they are. */
function fromTheOtherWay({ base, role = null }: CompiledPart, wanted: readonly string[]): CompiledElement[] {
  const inherited = standingOf({ ...base, element: null, bearing: newBearing() }).inherited;
  return wanted.flatMap((id) => {
    const row = base.rows.find("elements", id);
    if (!row || row.is === "advice" || !ridesIn(row.role, role)) return [];
    const guard = row.guard.filter(({ is }) => is === "reading");
    const present = presentElement(base, { ...row, guard });
    return present ? [compileElement(present, { ...base, numbers: new Map() }, inherited, null)] : [];
  });
}

const NOT_GIVEN = "What is done again is not among what was read here. Name steps or an exercise of this work.";

/** Once where the text does not say how often, or says it only in words. */
function roundsOf(drill: DrillElement): { rounds: number; note: string | null } {
  const held = drill.values.find(({ slot }) => slot === "times");
  const count = held && held.standing !== "not settled" ? (held.value as ValueOf<"count"> | null) : null;
  if (count === null)
    return { rounds: 1, note: `How often ${called(drill)} is done again is not said: once is shown.` };
  if (count.is === "until")
    return {
      rounds: 1,
      note: `${called(drill)} is done again until ${count.event}; how often that is, is not said: once is shown.`,
    };
  const rounds = Math.max(1, Math.floor(count.n));
  const note = rounds === count.n ? null : `${called(drill)} is done again ${count.n} times; ${rounds} are shown.`;
  return { rounds, note };
}

function exceptionsInWords(drill: DrillElement, row: Again): string[] {
  return row.except.flatMap((entry) =>
    entry.is === "words"
      ? [`${called(drill)} has an exception that is only in words and is not ridden: “${entry.words}”`]
      : [],
  );
}

/** Actions left out, or others of the again's own in their place; what is left of its own is done as it is said: where a
 *  figure of the run ends or begins that its words name, else last. */
function excepted(run: readonly Source[], row: Again, ownActions: readonly SourceAction[]): Source[] {
  const without = new Set(row.except.flatMap((entry) => (entry.is === "without" ? [entry.action] : [])));
  const instead = new Map(row.except.flatMap((entry) => (entry.is === "instead" ? [[entry.action, entry.by]] : [])));
  const replacing = new Set(instead.values());
  const changed = run.map((source) => ({
    ...source,
    actions: source.actions.flatMap((one) => {
      const by = instead.get(one.action.drill.id);
      if (by !== undefined) return ownActions.filter(({ action }) => action.drill.id === by);
      return without.has(one.action.drill.id) ? [] : [one];
    }),
  }));
  const rest = ownActions.filter(({ action }) => !replacing.has(action.drill.id));
  const at = rest.map((one) => stageNamed(changed, one) ?? changed.length - 1);
  return changed.map((source, index) => ({
    ...source,
    actions: [...source.actions, ...rest.filter((_, which) => at[which] === index)],
  }));
}

/** Which of the run rides the figure that the action waits for; null where it waits for none of them. */
function stageNamed(run: readonly Source[], { action }: SourceAction): number | null {
  const timing = action.timing === null ? null : exactly(action.timing);
  if (timing?.is !== "when" && timing?.is !== "until") return null;
  const ridden = run.map(({ actions }) => actions.map(({ action: { drill, known } }) => ({ id: drill.id, known })));
  const meant = figureMeant(timing.event, ridden.flat());
  if (meant === null) return null;
  const index = ridden.findIndex((acts) => acts.some(({ id }) => id === meant.action));
  // Within its own stage the words must name it too: "the second turn" is not the second of that stage.
  return figureMeant(timing.event, ridden[index] ?? [])?.action === meant.action ? index : null;
}
