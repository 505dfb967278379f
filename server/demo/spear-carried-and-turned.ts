/** server/demo/spear-carried-and-turned.ts - the third exercise of the invented book, only begun: one step is written
 *  out, the rest is marked as not yet treated. May import: siblings. */
import type { circleAboutTheWell } from "./circle-about-the-well.ts";
import { at, does, implied, stated, supplied } from "./draft.ts";
import { ExerciseBuilder } from "./exercise-builder.ts";
import { folio, page } from "./leaf.ts";
import type { Setting } from "./setting.ts";

export function spearCarriedAndTurned(setting: Setting, { holds }: ReturnType<typeof circleAboutTheWell>) {
  const { book, texts, court, spear, turns, asTheHandsBegin } = setting;
  const exercise = new ExerciseBuilder(book, {
    label: "3",
    title: "Of the spear carried and turned",
    note: "",
    ground: court.ground,
  });
  const carried = book.passage(texts, exercise.id, [folio("A", "5r", 1, 7), page(22)], {
    translation: `
      Let him ride up the middle of the court from the gate at a walk, the spear upright and its butt upon his thigh, as
      though he had nothing to do. This is harder than it looks, for a walking horse gives the rider time to think, and
      the spear feels him thinking.`,
    original: `
      Per mediam curiam a porta passu equitet, hasta erecta, calce eius super femur posita, quasi nihil habeat quod agat.
      Hoc difficilius est quam videtur, nam equus qui passu incedit equiti spatium cogitandi dat, et hasta cogitantem
      sentit.`,
  });
  const turned = book.passage(texts, exercise.id, [folio("A", "5r", 8, 18), page(22)], {
    translation: `
      Before the well he turns the spear in his hand, so that the point which looked at heaven looks at the ground behind
      the rider, and passes the well upon his left. When the well is behind him he turns the spear back. Beyond it he
      turns, and comes down again by the trough, and does with the left hand what he did with the right; the rest as in
      the second exercise, save that he ends before the stair.`,
    original: `
      Ante puteum hastam in manu vertit, ita ut cuspis quae caelum spectabat terram post equitem spectet, et puteum ad
      laevam praeterit. Cum puteus post eum est, hastam rursus vertit. Ultra puteum vertit, et iuxta alveum redit, et manu
      laeva facit quod dextra fecit; cetera ut in exercitio secundo, nisi quod ante gradus finit.`,
  });

  exercise.step(
    "Up the middle at a walk",
    carried.both(
      "Let him ride up the middle of the court from the gate at a walk, the spear upright and its butt upon his thigh",
      "Per mediam curiam a porta passu equitet, hasta erecta, calce eius super femur posita",
    ),
    [
      ...asTheHandsBegin(),
      does("go at", { gait: stated("walk") }, { words: carried.both("at a walk", "passu equitet") }),
      does(
        "ride",
        {
          figure: implied("straight", "Up the middle, before anything is said of the well."),
          from: stated(at(court.gate)),
          toward: supplied(at(court.well), "The next words are “before the well”."),
        },
        { words: carried.both("ride up the middle of the court from the gate", "Per mediam curiam a porta") },
      ),
      does(
        "hold",
        {
          object: stated(spear),
          hold: stated(holds.upright),
          hand: implied("right", "The opening words put the spear in the right hand."),
        },
        {
          words: carried.both(
            "the spear upright and its butt upon his thigh",
            "hasta erecta, calce eius super femur posita",
          ),
        },
      ),
    ],
  );
  exercise.untreated(
    turned.id,
    turned.id,
    { from: 5, to: 9 },
    supplied(true, "Waits until “the other” in the second exercise is settled: its ending stands on that."),
  );

  book.mark("senses", turns.spear, turned.both("he turns the spear in his hand", "hastam in manu vertit"));
  book.mark("senses", turns.spear, turned.both("he turns the spear back", "hastam rursus vertit"));
  book.mark("senses", turns.horse, turned.both("Beyond it he turns", "Ultra puteum vertit"));
  return { id: exercise.id };
}
