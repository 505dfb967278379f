/** shared/hands/apply-horse.ts - what riding does to gait, pace, lead and the rein that is ridden.
 *  May import: schema types, siblings in shared/hands. Where the horse is on the ground is not told here. */
import type { Known } from "../../schema/slot.ts";
import type { ValueOf } from "../../schema/values.ts";
import { otherHand } from "./derived.ts";
import { either, known, mapKnown, possible, UNKNOWN } from "./known.ts";
import { type KnownAct, slotOf } from "./known-act.ts";
import { sideOf } from "./roles.ts";
import { type ControlState, eitherState, type Gait, type Hand } from "./state.ts";

type Figure = ValueOf<"figure">;

/** What a figure does to the rein that is ridden: takes the side it turns to, changes to the other, leaves it as it
 *  was, or cannot be told here. */
const REIN_AFTER: Record<Figure, "turned to" | "against the turn" | "changed" | "stays" | "cannot tell"> = {
  straight: "stays",
  "along the wall": "stays",
  "change across": "changed",
  circle: "turned to",
  "part circle": "turned to",
  volte: "turned to",
  // The half circle is ridden to one side, and the wall is met again on the other rein.
  "half volte": "against the turn",
  "half volte reversed": "turned to",
  "figure of eight": "cannot tell",
  oblong: "turned to",
  serpentine: "cannot tell",
  "spiral in": "turned to",
  "spiral out": "turned to",
  turn: "turned to",
  "rein back": "stays",
  halt: "stays",
  charge: "stays",
};

export function applyRide(state: ControlState, act: KnownAct): ControlState {
  const figures = slotOf(act, "figure", "figure");
  if (figures === null) return state;
  if (figures.is === "unknown") {
    return { ...state, rein: UNKNOWN, gait: UNKNOWN, pace: UNKNOWN, lead: UNKNOWN, direction: UNKNOWN };
  }
  const turn = slotOf(act, "turn", "turn");
  const after = possible(figures, []).map((figure) => rideFigure(state, figure, turn));
  return after.reduce(eitherState);
}

function rideFigure(state: ControlState, figure: Figure, turn: Known<ValueOf<"turn">> | null): ControlState {
  const halted: Partial<ControlState> =
    figure === "halt" ? { gait: known("halt"), pace: UNKNOWN, lead: known(null) } : {};
  const direction: ControlState["direction"] =
    figure === "rein back" ? known("back") : figure === "halt" ? state.direction : known("forward");
  return { ...state, ...halted, direction, rein: reinAfter(state, figure, turn) };
}

function reinAfter(state: ControlState, figure: Figure, turn: Known<ValueOf<"turn">> | null): Known<Hand> {
  const turned = (): Known<Hand> => {
    if (turn === null || turn.is === "unknown") return UNKNOWN;
    return possible(turn, [])
      .map(({ to }) => sideOf(to, state))
      .reduce(either);
  };
  switch (REIN_AFTER[figure]) {
    case "stays":
      return state.rein;
    case "changed":
      return mapKnown(state.rein, otherHand);
    case "turned to":
      return turned();
    case "against the turn":
      return mapKnown(turned(), otherHand);
    case "cannot tell":
      return UNKNOWN;
  }
}

/** A gait stands until another is said; so does its lead. A new gait has a pace and a lead that must be said. */
export function applyGait(state: ControlState, act: KnownAct): ControlState {
  const gait = slotOf(act, "gait", "gait") ?? state.gait;
  const pace = slotOf(act, "pace", "pace");
  const lead = slotOf(act, "lead", "lead");
  const stays = JSON.stringify(gait) === JSON.stringify(state.gait);
  return {
    ...state,
    gait,
    pace: pace ?? (stays ? state.pace : UNKNOWN),
    lead: lead === null ? leadUnsaid(state, gait) : leadSaid(state, lead),
  };
}

const WITH_LEAD: readonly Gait[] = ["canter", "gallop"];

function leadUnsaid(state: ControlState, gait: Known<Gait>): Known<Hand | null> {
  const [before, after] = [state.gait, gait].map((held) => possible<Gait>(held, ["walk"]));
  const both = before?.every((held) => WITH_LEAD.includes(held)) && after?.every((held) => WITH_LEAD.includes(held));
  return both ? state.lead : UNKNOWN;
}

function leadSaid(state: ControlState, lead: Known<ValueOf<"lead">>): Known<Hand | null> {
  if (lead.is === "unknown") return UNKNOWN;
  return possible(lead, [])
    .map((side): Known<Hand | null> => sideOf(side, state))
    .reduce(either);
}
