/** shared/drill/compile.ts - an exercise under one choice of readings as a drill: filtered, numbered, cited.
 *  May import: schema types and constants, shared/cite, shared/hands, siblings in shared/drill. Keeps rules D1-D10 (shared/drill/RULES.md).
 *  Pure: the same rows in any order give the same drill, and the drill the same bytes (canonical-json.ts). */
import { DRILL_FORMAT, DRILL_FORMAT_VERSION, type Drill } from "../../schema/drill.ts";
import type { Variant } from "../../schema/exercise.ts";
import type { Way } from "../../schema/guard.ts";
import type { Rows } from "../../schema/record.ts";
import { formatReference } from "../cite/format-reference.ts";
import type { ControlState } from "../hands/state.ts";
import { beginningState } from "./beginning-state.ts";
import { CAUTION } from "./caution.ts";
import type { CompiledAction } from "./compile-action.ts";
import { compileElement, presentElement } from "./compile-element.ts";
import { newBearing } from "./crux-bearing.ts";
import { type ExerciseRows, exerciseRows } from "./exercise-rows.ts";
import { contextOf, type FollowedElement, followHands } from "./follow-hands.ts";
import { namesOf } from "./names.ts";
import { carriedObjects, objectsUsed, printedObjects } from "./objects-used.ts";
import { placeCruxes } from "./place-cruxes.ts";
import { notesOf, questionsOf } from "./questions-and-notes.ts";
import type { Compiling, CompilingBase } from "./resolve-slot.ts";
import { type Choice, settle } from "./settle.ts";
import { openingOf, standingOf } from "./standing-instructions.ts";
import { treatedPart } from "./treated-part.ts";

export interface CompileOptions {
  /** Readings to take; other cruxes as adopted, else as left free, else not settled. */
  choice?: Choice;
  /** Default: as the variant has it, else mounted. */
  way?: Way;
  /** Id of a variant of the exercise or the work. */
  variant?: string | null;
}

/** `rows` as a bundle of the exercise gives them. Throws RangeError when the exercise, the variant or a chosen reading
 *  is not among them. */
export function compileDrill(rows: Rows, exerciseId: string, options: CompileOptions = {}): Drill {
  return compileExercise(rows, exerciseId, options).drill;
}

/** The drill with what its elements do as acts, for whoever follows hands and horse. */
export interface CompiledExercise {
  drill: Drill;
  followed: FollowedElement[];
  /** How things stand before the first of them. */
  begins: ControlState;
  /** What its instructions begin with, in their order. */
  opening: readonly CompiledAction[];
  /** What it was compiled with. */
  base: CompilingBase;
}

/** `rows`: those of `allRows` laid out for this exercise, where the caller has them already. */
export function compileExercise(
  allRows: Rows,
  exerciseId: string,
  options: CompileOptions,
  rows: ExerciseRows = exerciseRows(allRows, exerciseId),
): CompiledExercise {
  const variant = variantOf(rows, options.variant ?? null);
  const way = options.way ?? variant?.way ?? "mounted";
  const settlement = settle(rows, options.choice ?? [], way, variant?.id ?? null);
  const base: CompilingBase = { rows, names: namesOf(allRows), settlement };
  const whole: Compiling = { ...base, element: null, bearing: newBearing() };

  const leftOut = new Set(variant?.deltas.flatMap((delta) => (delta.is === "leave out" ? [delta.element] : [])));
  const present = rows.elements
    .filter((element) => !leftOut.has(element.id))
    .flatMap((element) => presentElement(base, element) ?? []);
  const numbered = present.filter(({ element }) => element.is === "step" || element.is === "again");
  const numbers = new Map(numbered.map(({ element }, index) => [element.id, index + 1]));
  const wording = { rows, names: base.names, numbers };
  const standing = standingOf(whole);
  const compiled = present.map((element) => compileElement(element, wording, standing.inherited, variant));
  const opening = openingOf(whole);
  const objects = objectsUsed(rows, [...compiled, { actions: opening }]);
  const begins = beginningState(carriedObjects(objects), settlement, opening, contextOf(whole));
  const followed = followHands(whole, compiled, begins);
  const elements = followed.map((element) => element.compiled);
  const placed = placeCruxes(whole, elements);

  const drill: Drill = {
    format: DRILL_FORMAT,
    formatVersion: DRILL_FORMAT_VERSION,
    work: { id: rows.work.id, title: rows.work.title, author: rows.work.author, invented: rows.work.invented },
    layers: rows.layers.map((layer) => ({
      title: layer.title,
      is: layer.is,
      by: layer.by,
      language: layer.language,
      revision: rows.newestRevision(layer.id)?.label ?? "",
      urn: layer.urn,
    })),
    exercise: {
      id: rows.exercise.id,
      label: rows.exercise.label,
      title: rows.exercise.title,
      references: ends(rows.passages).map(({ references: [first] }) => (first ? formatReference(first) : "")),
    },
    way,
    variant: variant?.name ?? null,
    objects: printedObjects(objects),
    standing: standing.printed,
    elements: placed.elements.map(({ drill: element }) => element),
    cruxes: placed.cruxes,
    questions: questionsOf(rows, placed),
    notes: [...dayNotes(rows, variant), ...notesOf(rows)],
    treated: treatedPart(rows, elements),
    caution: CAUTION,
  };
  return { drill, followed, begins, opening, base };
}

function variantOf(rows: ExerciseRows, id: string | null): Variant | null {
  if (id === null) return null;
  const variant = rows.find("variants", id);
  if (!variant) throw new RangeError(`The variant ${id} is not among the rows that were given.`);
  return variant;
}

/** The first and the last; one when they are the same, none of none. */
function ends<T>(list: readonly T[]): T[] {
  const [first, last] = [list[0], list.at(-1)];
  if (first === undefined || last === undefined) return [];
  return first === last ? [first] : [first, last];
}

/** What a version of the day does otherwise, each with its reason. */
function dayNotes(rows: ExerciseRows, variant: Variant | null): Drill["notes"] {
  return (variant?.deltas ?? []).flatMap((delta) => {
    if (delta.is === "act instead") return [];
    const element = delta.is === "words" ? undefined : rows.find("elements", delta.element);
    const title = element && "title" in element && element.title !== "" ? `“${element.title}”` : "one element";
    const changes = {
      "leave out": `Left out for the day: ${title}`,
      "no opponent": `No opponent for the day: ${title}`,
    };
    const what = delta.is === "words" ? delta.words : changes[delta.is];
    return [{ text: `${what} (${delta.reason})`, citations: [] }];
  });
}
