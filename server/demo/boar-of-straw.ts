/** server/demo/boar-of-straw.ts - the fifth exercise of the invented book, complete: what is done, step by step.
 *  May import: siblings. Its words are in boar-words.ts, its places of doubt in boar-doubts.ts. Up by the elm's wall, down the
 *  court in three loops, a turn in the corner, and the length of the court at the boar. What becomes of the spear after the
 *  thrust rests on a drawing. */

import {
  atTheBoar,
  type BoarWritten,
  beforeTheStair,
  goes,
  inTheRight,
  pastTheBoar,
  type Taught,
} from "./boar-charge.ts";
import { boarDoubts } from "./boar-doubts.ts";
import { boarDrawing } from "./boar-drawing.ts";
import { boarWords } from "./boar-words.ts";
import { type ActionDraft, at, does, implied, inCrux, LEFT, RIGHT, stated, supplied, times } from "./draft.ts";
import { ExerciseBuilder } from "./exercise-builder.ts";
import type { SecondPart } from "./second-part.ts";

export function boarOfStraw(part: SecondPart, taught: Taught) {
  const { book, court } = part;
  const exercise = new ExerciseBuilder(book, {
    label: "5",
    title: "Of the boar of straw",
    note: "",
    ground: court.ground,
  });
  const words = boarWords(part, exercise.id);
  const drawn = boarDrawing(book, part.houseCopy);
  const doubts = boarDoubts(part, exercise.id, words, drawn);
  const written: BoarWritten = { part, exercise, words, doubts, drawn, taught, gaits: [], atNothing: {} };
  const out = toTheStair(written);
  downTheCourt(written);
  const { charge, twoHands } = atTheBoar(written);
  const thrust = pastTheBoar(written);
  beforeTheStair(written, out);
  book.standing(
    {
      exercise: exercise.id,
      is: "never mentioned",
      title: "On which side of the boar the man on foot stands",
      note: "Behind it, which for a rider who comes from the gate is every side at once.",
    },
    [],
    supplied(true, "Looked for in A ff. 8r–9r and in C ff. 3r–4r."),
  );
  return {
    id: exercise.id,
    doubts,
    charge,
    thrust,
    twoHands,
    gaits: written.gaits,
    atNothing: written.atNothing,
    file: drawn.file,
  };
}

/** Nothing is said of the gait: it is that of the setting out. */
const asBefore = (): ActionDraft =>
  does(
    "go at",
    { gait: implied("canter", "He set out at a canter.") },
    { because: implied(true, "He set out at a canter, and nothing has changed it.") },
  );

function toTheStair({ part, exercise, words: { out }, taught, gaits }: BoarWritten): string {
  const { book, court, spear, asTheHandsBegin } = part;
  book.note(
    "The Latin is in the second person for one sentence, and then remembers itself.",
    out.both(
      "The boar is angry because he cannot come to you; therefore you must go to him, and it is proper that he should see you coming by more roads than one.",
      "Aper irascitur quia ad te venire non potest; itaque tibi ad eum eundum est, et decet ut te pluribus viis venientem videat.",
    ),
  );
  return exercise.step(
    "Up by the elm's wall to the stair",
    out.both(
      "Let the rider go out from the gate at a canter with the wall upon his left, the spear upright and its butt upon his thigh, past the elm and past the stone, as far as the stair.",
      "Eques a porta exeat cursu, muro ad laevam, hasta erecta, calce eius super femur posita, praeter ulmum et praeter lapidem, usque ad gradus.",
    ),
    [
      ...asTheHandsBegin(),
      goes(gaits, does("go at", { gait: stated("canter") }, { words: out.both("at a canter", "cursu") })),
      does(
        "hold",
        { object: stated(spear), hold: stated(taught.holds.upright), hand: inTheRight },
        {
          words: out.both(
            "the spear upright and its butt upon his thigh",
            "hasta erecta, calce eius super femur posita",
          ),
        },
      ),
      does(
        "ride",
        {
          figure: implied("along the wall", "The wall is upon his left as far as the stair."),
          turn: implied(RIGHT, "With the wall upon his left every corner turns right."),
          from: stated(at(court.gate), out.both("from the gate", "a porta")),
          toward: stated(at(court.stair), out.both("as far as the stair", "usque ad gradus")),
          how: stated(
            "past the elm and past the stone",
            out.both("past the elm and past the stone", "praeter ulmum et praeter lapidem"),
          ),
        },
        { words: out.both("with the wall upon his left", "muro ad laevam") },
      ),
    ],
  );
}

function downTheCourt({ part, exercise, words: { snake, corner }, doubts, taught, gaits }: BoarWritten) {
  const { book, spear, turns } = part;
  const { whichWay, when } = doubts;
  const loops = exercise.step(
    "Down the court in three loops",
    snake.both(
      "From the stair he comes down the court as a snake comes down a road, in three loops from wall to wall, so that he crosses the middle first between the boar and the well and then between the well and the gate, and no loop is larger than its brothers.",
      "A gradibus per curiam descendit ut serpens per viam, tribus flexibus a muro ad murum, ita ut medium primo inter aprum et puteum transeat, deinde inter puteum et portam, neque ullus flexus fratribus maior sit.",
    ),
    [
      goes(gaits, asBefore()),
      does(
        "ride",
        {
          figure: stated("serpentine", snake.both("as a snake comes down a road", "ut serpens per viam")),
          turn: implied(RIGHT, "He came to the stair with the wall on his left; the court lies on his right."),
          laps: stated(times(3), snake.both("in three loops", "tribus flexibus")),
          how: stated(
            "crossing the middle between boar and well, then between well and gate",
            snake.both(
              "first between the boar and the well and then between the well and the gate",
              "primo inter aprum et puteum transeat, deinde inter puteum et portam",
            ),
          ),
        },
        { words: snake.both("comes down the court", "per curiam descendit") },
      ),
    ],
  );
  book.note(
    "C has quattuor. With four loops the second crossing goes through the well, which C does not mention.",
    snake.both("in three loops", "tribus flexibus"),
  );
  exercise.advice(
    "The point goes straight though the horse does not",
    snake.both(
      "Let the spear stand while the horse bends: whoever watches the point should believe that it goes straight.",
      "Hasta stet dum equus flectitur: qui cuspidem spectat, eam recta ire credat.",
    ),
    loops,
    loops,
  );
  const turn = exercise.step(
    "The turn in the corner",
    corner.both(
      "So he comes to the gate, and rides straight on into the corner. There he halts, and with the spear lowered beside the boot he turns until he has the whole court before him.",
      "Ita ad portam venit, et recta in angulum pergit. Ibi consistit, et hasta iuxta ocream demissa vertit donec totam curiam ante se habeat.",
    ),
    [
      goes(gaits, asBefore()),
      does(
        "ride",
        { figure: stated("straight"), how: stated("into the corner", corner.both("into the corner", "in angulum")) },
        { words: corner.both("rides straight on into the corner", "recta in angulum pergit") },
      ),
      does(
        "ride",
        {
          figure: stated("turn"),
          manner: stated("halt and turn", corner.both("There he halts", "Ibi consistit")),
          turn: inCrux(whichWay, {
            inward: implied(RIGHT, "The wall is on his left."),
            outward: implied(LEFT, "Along the wall on his left, and then along the other."),
          }),
          amount: inCrux(whichWay, {
            inward: implied("quarter", "From along the wall to along the court."),
            outward: implied("three quarters", "The same, the long way round."),
          }),
        },
        { words: corner.both("he turns", "vertit") },
      ),
      does(
        "hold",
        { object: stated(spear), hold: implied(taught.holds.byTheBoot, "Beside the boot, low."), hand: inTheRight },
        {
          words: corner.both("with the spear lowered beside the boot", "hasta iuxta ocream demissa"),
          timing: inCrux(when, {
            before: implied({ is: "before" }, "The words come in this order."),
            after: implied({ is: "after" }, "The spear does not go before him into a bend."),
          }),
        },
      ),
    ],
  );
  exercise.advice(
    "Collect the horse in the corner",
    corner.both(
      "Here the horse must be collected, for behind him there is nothing but wall; and a horse is never so well collected as when there is nowhere else to go.",
      "Hic equus colligendus est, nam post eum nihil nisi murus est; neque umquam equus melius colligitur quam cum alio ire non potest.",
    ),
    turn,
    turn,
  );
  book.mark("senses", turns.horse, corner.both("he turns", "vertit"));
}
