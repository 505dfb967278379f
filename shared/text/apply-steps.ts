/** shared/text/apply-steps.ts - applies the editor's steps to a passage document, or says why they cannot be applied.
 *  May import: prosemirror-model types, prosemirror-transform, schema/editor. Keeps rules T19 and T20
 *  (shared/text/RULES.md). Steps are numbered from 1 in sentences. */
import type { Node as DocNode, Fragment } from "prosemirror-model";
import { ReplaceAroundStep, ReplaceStep, Step, type StepMap } from "prosemirror-transform";
import { passageSchema } from "../../schema/editor.ts";

export type AppliedSteps =
  | {
      readonly ok: true;
      readonly doc: DocNode;
      readonly maps: readonly StepMap[];
      /** The document before each step, for `carryAll`. */
      readonly docs: readonly DocNode[];
    }
  | { readonly ok: false; readonly code: StepRefusalCode; readonly sentence: string };

export type StepRefusalCode =
  | "steps_not_a_list"
  | "step_unreadable"
  | "step_does_not_fit"
  | "step_line_break"
  | "step_half_character";

/** Applies steps as they come from outside: each is read, applied and its result checked. All or nothing: on a refusal
 *  nothing is changed. Never throws for bad JSON. */
export function applySteps(doc: DocNode, steps: unknown): AppliedSteps {
  if (!Array.isArray(steps)) return refuse("steps_not_a_list", `Expected a list of steps; got ${nameOf(steps)}.`);
  const maps: StepMap[] = [];
  const docs: DocNode[] = [];
  let current = doc;
  for (const [index, json] of steps.entries()) {
    const which = `Step ${index + 1} of ${steps.length}`;
    const step = readStep(json);
    if (typeof step === "string") return refuse("step_unreadable", `${which} cannot be read: ${step}.`);
    if (insertsLineBreak(step)) {
      return refuse("step_line_break", `${which} puts a line break inside a block: split the block there instead.`);
    }
    const next = applyOne(current, step);
    if (typeof next === "string") {
      return refuse(
        "step_does_not_fit",
        `${which} does not fit this text: ${next}. The text may have changed meanwhile: load it again, then amend.`,
      );
    }
    if (hasHalfCharacter(next) && !hasHalfCharacter(current)) {
      return refuse(
        "step_half_character",
        `${which} leaves half of a character behind: delete or write the whole of it.`,
      );
    }
    maps.push(step.getMap());
    docs.push(current);
    current = next;
  }
  return { ok: true, doc: current, maps, docs };
}

/** The maps of steps that were applied before and kept. Throws RangeError when one cannot be read. */
export function mapsOfSteps(steps: readonly unknown[]): StepMap[] {
  return steps.map((json, index) => {
    const step = readStep(json);
    if (typeof step === "string") throw new RangeError(`Kept step ${index + 1} cannot be read: ${step}.`);
    return step.getMap();
  });
}

function refuse(code: StepRefusalCode, sentence: string): AppliedSteps {
  return { ok: false, code, sentence };
}

/** The step, or what is wrong with it. The reader throws errors of several classes for bad input; all mean the same. */
function readStep(json: unknown): Step | string {
  if (typeof json !== "object" || json === null) return `expected an object with a stepType, got ${nameOf(json)}`;
  try {
    return Step.fromJSON(passageSchema, json);
  } catch (error) {
    return messageOf(error);
  }
}

/** The document after the step, or why there is none: the step is out of place, or its result would not be valid. */
function applyOne(doc: DocNode, step: Step): DocNode | string {
  try {
    const { doc: next, failed } = step.apply(doc);
    next?.check();
    return next ?? failed ?? "it gives no text";
  } catch (error) {
    return messageOf(error);
  }
}

function insertsLineBreak(step: Step): boolean {
  if (!(step instanceof ReplaceStep || step instanceof ReplaceAroundStep)) return false;
  return someText(step.slice.content, (text) => text.includes("\n") || text.includes("\r"));
}

function hasHalfCharacter(doc: DocNode): boolean {
  // With the u flag this class matches lone halves only: a pair is read as one character.
  // A character may be parted over two text nodes by a mark, so whole blocks are tested.
  return doc.children.some((block) => /\p{Surrogate}/u.test(block.textContent));
}

function someText(content: Fragment, test: (text: string) => boolean): boolean {
  let found = false;
  content.descendants((node) => {
    if (node.isText && test(node.text ?? "")) found = true;
    return !found;
  });
  return found;
}

function nameOf(value: unknown): string {
  if (value === null) return "null";
  if (Array.isArray(value)) return "a list";
  return typeof value === "object" ? "an object" : `a ${typeof value}`;
}

function messageOf(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).replace(/\.$/, "");
}
