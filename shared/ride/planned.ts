/** shared/ride/planned.ts - what is to be ridden in one stage, before it has a path or a time.
 *  May import: types of schema and of shared rooms, siblings in shared/ride. */
import type { DrillValue } from "../../schema/drill.ts";
import type { CompiledAction } from "../drill/compile-action.ts";
import type { Compiling } from "../drill/resolve-slot.ts";
import type { RiddenStage, Standing } from "./ridden.ts";
import type { RiddenAct } from "./ride-context.ts";

export interface PlannedStage
  extends Pick<RiddenStage, "element" | "source" | "round" | "mirrored" | "number" | "title" | "is"> {
  acts: RiddenAct[];
  /** The cue and threat of the element whose actions are done. */
  values: readonly DrillValue[];
  standing: Standing;
  compiling: Compiling;
  /** For the first stage of a run that is done again: it begins where this element began, mirrored or not. */
  beginsLike: string | null;
  refusal: string | null;
  notes: string[];
  withoutPartner: string[];
}

/** What one element gives to the stages of an again, itself one or many. */
export interface Source {
  id: string;
  title: string;
  is: "step" | "again" | "untreated";
  actions: SourceAction[];
  values: readonly DrillValue[];
  standing: Standing;
  /** 0 outside an again, else from 1. */
  round: number;
  mirrored: boolean;
  compiling: Compiling;
  beginsLike: string | null;
  refusal: string | null;
  notes: string[];
}

/** `mirrored` may differ from its source's: what is put in the place of another act is done as it is said. */
export interface SourceAction {
  action: CompiledAction;
  mirrored: boolean;
  via: string | null;
}
