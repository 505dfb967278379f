/** server/demo/beginners-boar.ts - the fifth exercise as a beginner rides it: at a walk, at nothing, and with nobody behind it.
 *  May import: schema types, siblings. The book says so itself; what follows from it act by act is the editor's. */
import type { Act } from "../../schema/act.ts";
import type { Variant } from "../../schema/exercise.ts";
import type { boarOfStraw } from "./boar-of-straw.ts";
import { paces } from "./court.ts";
import { type ActionDraft, at, clock, idOf, supplied } from "./draft.ts";
import type { NewRow } from "./row-list.ts";
import type { SecondPart } from "./second-part.ts";

const WALKS = "The book lets a beginner ride the same lines at a walk.";
const AS_IN_TEXT = "As the text has it for whoever is no beginner.";
const AT_NOTHING = "The book has a beginner thrust at nothing (A f. 9r).";

export function beginnersBoar(
  { book, court, spear }: SecondPart,
  boar: ReturnType<typeof boarOfStraw>,
): Omit<NewRow<"variants">, "work"> {
  const act = (verb: Act["verb"], drafts: Parameters<typeof book.slots>[0]): Act =>
    ({ verb, slots: book.slots(drafts, { kind: "objects", id: "" }, "notes", []) }) as Act;
  const instead = (draft: ActionDraft | undefined, by: Act, reason: string): Variant["deltas"] =>
    draft === undefined ? [] : [{ is: "act instead", action: idOf(draft), act: by, reason }];
  const { charge, thrust, draws, leaves, letsGo } = boar.atNothing;
  const inTheRight = { object: supplied(spear, AS_IN_TEXT), hand: supplied("right", AS_IN_TEXT) };
  const walk = act("go at", { gait: supplied("walk", "A f. 9r: “the same lines at a walk”.") });
  const toTheStair = act("ride", {
    figure: supplied("straight", "At a walk nobody charges."),
    size: paces(38),
    toward: supplied(at(court.stair), "The line is the same."),
    how: supplied("past where the boar stood", "It is taken away."),
  });
  const atNothing = act("thrust", {
    ...inTheRight,
    bearing: supplied(clock(1), AS_IN_TEXT),
    level: supplied("low", AS_IN_TEXT),
    how: supplied("at nothing, where the boar stood", "A f. 9r: “thrust at nothing”."),
  });
  return {
    exercise: boar.id,
    name: "the beginner's, at a walk",
    way: "mounted",
    deltas: [
      ...boar.gaits.flatMap((gait) => instead(gait, walk, WALKS)),
      ...instead(charge, toTheStair, WALKS),
      ...instead(thrust, atNothing, AT_NOTHING),
      ...instead(
        draws,
        act("carry", { ...inTheRight, how: supplied("drawn back", AS_IN_TEXT) }),
        "There is no straw to draw it out of.",
      ),
      ...instead(leaves, act("keep", inTheRight), "There is nothing to leave it in."),
      ...instead(letsGo, act("keep", inTheRight), "There is nothing to leave it in."),
      ...[boar.charge, boar.thrust].map((element) => ({
        is: "no opponent" as const,
        element,
        reason: "“After the boar the man”: only when he no longer looks down.",
      })),
      { is: "words", words: "The boar and its stake are taken away.", reason: AT_NOTHING },
    ],
  };
}
