/** server/demo/circle-about-the-well.ts - the first exercise of the invented book, complete: what is done, step by step.
 *  May import: siblings. Its words are in circle-words.ts, its places of doubt in circle-doubts.ts, what it is the first
 *  to teach in holds-and-greeting.ts. The first rounds are on the left rein and begin on the gate's side of the well; the
 *  turn is there too. */

import { circleDoubts } from "./circle-doubts.ts";
import { circleWords } from "./circle-words.ts";
import { paces } from "./court.ts";
import { at, clock, does, implied, inCrux, inWords, LEFT, once, RIGHT, stated, supplied } from "./draft.ts";
import { ExerciseBuilder } from "./exercise-builder.ts";
import { holdsAndGreeting } from "./holds-and-greeting.ts";
import type { Setting } from "./setting.ts";

export function circleAboutTheWell(setting: Setting) {
  const { book, court, spear, turns, asTheHandsBegin } = setting;
  const exercise = new ExerciseBuilder(book, {
    label: "1",
    title: "Of the circle about the well",
    note: "",
    ground: court.ground,
  });
  const passages = circleWords(setting, exercise.id);
  const taught = holdsAndGreeting(setting, passages);
  const { holds, greeting } = taught;
  const { laps, whichWay } = circleDoubts(setting, exercise.id, passages);
  const { setOut, point, greet } = passages;
  const inTheRight = implied("right", "The opening words put the spear in the right hand.");
  const stillLeft = implied(LEFT, "Nothing has turned him: the well is still on his left.");
  const sameCircle = implied(at(court.well), "He goes about the same circle.");

  const onceAbout = exercise.step(
    "Once about the well",
    setOut.both(
      "Let him set out from the gate at an easy canter, the well upon his left hand, the spear low beside the right boot, and ride a circle sixteen paces across.",
      "Exeat a porta leni cursu, puteo ad laevam, hasta demissa iuxta ocream dextram, et circulum equitet sedecim passus latum.",
    ),
    [
      ...asTheHandsBegin(),
      does(
        "ride",
        {
          figure: stated("circle"),
          turn: stated(LEFT, setOut.both("the well upon his left hand", "puteo ad laevam")),
          size: paces(16, setOut.both("sixteen paces across", "sedecim passus latum")),
          about: implied(at(court.well), "What lies on the left all the way round lies in the middle."),
          from: stated(at(court.gate), setOut.both("from the gate", "a porta")),
          laps: inCrux(laps, {
            once: stated(once, setOut.both("gone once about", "semel circumierit")),
            twice: supplied({ is: "times", n: 2 }, "B has “bis”."),
          }),
        },
        { words: setOut.both("ride a circle", "circulum equitet") },
      ),
      does(
        "go at",
        { gait: stated("canter"), pace: stated("easy") },
        { words: setOut.both("at an easy canter", "leni cursu") },
      ),
      does(
        "hold",
        { object: stated(spear), hold: stated(holds.byTheBoot), hand: inTheRight },
        { words: setOut.both("the spear low beside the right boot", "hasta demissa iuxta ocream dextram") },
      ),
    ],
  );

  const upright = exercise.step(
    "About again, the spear upright",
    setOut.both(
      "When he has gone once about, and is again on the side toward the gate, he raises the spear upright, sets its butt upon his thigh, and so goes about a second time",
      "Cum semel circumierit et iterum ad partem portae venerit, hastam erectam tollit, calcem eius super femur ponit, et sic secundo circumit",
    ),
    [
      does(
        "raise",
        { object: stated(spear), hand: inTheRight, level: stated("high") },
        {
          words: setOut.both("raises the spear upright", "hastam erectam tollit"),
          timing: stated(
            { is: "before" },
            setOut.both("is again on the side toward the gate", "iterum ad partem portae venerit"),
          ),
        },
      ),
      does(
        "hold",
        { object: stated(spear), hold: stated(holds.upright), hand: inTheRight },
        { words: setOut.both("sets its butt upon his thigh", "calcem eius super femur ponit") },
      ),
      does(
        "ride",
        { figure: stated("circle"), turn: stillLeft, about: sameCircle, laps: stated(once) },
        { words: setOut.both("goes about a second time", "secundo circumit") },
      ),
    ],
  );

  exercise.advice(
    "Keep the circle round",
    setOut.both(
      "Let him keep the circle round: the well does not move, and every egg he rides will be known from the stair.",
      "Circulum rotundum servet: puteus enim non movetur, et quodcumque ovum equitaverit a gradibus cognoscetur.",
    ),
    onceAbout,
    upright,
  );

  exercise.step(
    "About a third time, the point forward",
    point.both(
      "The third time he lets the point sink forward until it looks out over the horse's ears, the shaft shut beneath his arm, and presses the canter a little, as one who has seen what he came for. This he does once about and no more.",
      "Tertio cuspidem ante se demittit, donec super aures equi prospiciat, hastili sub brachio clauso, et cursum paulum urget, tamquam qui viderit quod quaerebat. Hoc semel facit nec amplius.",
    ),
    [
      does(
        "lower",
        {
          object: stated(spear),
          hand: inTheRight,
          level: implied("middle", "Shut beneath the arm and over the ears, it lies about level."),
          bearing: stated(clock(12), point.both("over the horse's ears", "super aures equi")),
        },
        { words: point.both("lets the point sink forward", "cuspidem ante se demittit") },
      ),
      does(
        "hold",
        { object: stated(spear), hold: stated(holds.beneathTheArm), hand: inTheRight },
        { words: point.both("the shaft shut beneath his arm", "hastili sub brachio clauso") },
      ),
      does(
        "go at",
        { gait: stated("canter"), pace: stated("increased") },
        { words: point.both("presses the canter a little", "cursum paulum urget") },
      ),
      does(
        "ride",
        {
          figure: implied("circle", "It is the third round of the same circle."),
          turn: stillLeft,
          about: sameCircle,
          laps: stated(once),
        },
        { words: point.both("This he does once about and no more.", "Hoc semel facit nec amplius.") },
      ),
    ],
  );

  const turn = point.both("and turns", "et vertit");
  exercise.step(
    "The turn",
    point.both(
      "Then he raises the spear as before, lest it go before him into the bend, and turns",
      "Tum hastam ut prius erigit, ne ante se in flexum eat, et vertit",
    ),
    [
      does(
        "raise",
        { object: stated(spear), hand: inTheRight, level: implied("high", "As before: upright.") },
        {
          words: point.both("raises the spear as before", "hastam ut prius erigit"),
          timing: implied({ is: "before" }, "It must be up before the bend it is not to go into."),
          note: "One of the few places where the book gives its reason.",
        },
      ),
      does(
        "hold",
        {
          object: stated(spear),
          hold: implied(holds.upright, "As before: the butt upon the thigh."),
          hand: inTheRight,
        },
        { because: implied(true, "“As before” is taken to mean the hold as well as the height.") },
      ),
      does(
        "ride",
        {
          figure: stated("turn"),
          amount: implied("half", "The well was on his left and is next on his right."),
          turn: inCrux(whichWay, {
            outward: implied(RIGHT, "The well is on his left: away from it is right."),
            inward: implied(LEFT, "The well is on his left."),
          }),
        },
        { words: turn },
      ),
    ],
  );

  exercise.step(
    "Once with the well upon the right",
    point.both(
      "rides the circle once with the well upon his right, the pace easy again",
      "semel circulum equitat, puteo ad dextram, cursu iterum leni",
    ),
    [
      does("ride", {
        figure: stated("circle"),
        turn: stated(RIGHT, point.both("the well upon his right", "puteo ad dextram")),
        about: sameCircle,
        laps: stated(once),
      }),
      does(
        "go at",
        { gait: implied("canter", "Only the pace is said to change."), pace: stated("easy") },
        { words: point.both("the pace easy again", "cursu iterum leni") },
      ),
    ],
  );

  exercise.step(
    "To the stair",
    greet.both(
      "From there he goes on until the elm is beside him, leaves the circle, and rides straight to the stair. A spear's length before it he halts",
      "Inde pergit donec ulmum iuxta se habeat, ibi circulum relinquit et recta ad gradus equitat. Spatio unius hastae ante eos consistit",
    ),
    [
      does(
        "ride",
        {
          figure: implied("part circle", "He is on the circle until he leaves it."),
          turn: implied(RIGHT, "The well is upon his right."),

          about: sameCircle,
          toward: stated(at(court.elm)),
        },
        { words: greet.both("goes on until the elm is beside him", "pergit donec ulmum iuxta se habeat") },
      ),
      does(
        "ride",
        { figure: stated("straight"), toward: stated(at(court.stair)) },
        { words: greet.both("rides straight to the stair", "recta ad gradus equitat") },
      ),
      does(
        "ride",
        { figure: stated("halt"), how: stated("a spear's length before the stair") },
        { words: greet.both("A spear's length before it he halts", "Spatio unius hastae ante eos consistit") },
      ),
    ],
  );

  const greets = exercise.step(
    "The greeting",
    greet.both(
      "makes the greeting. The greeting is this: he lets the point sink before him until it nearly touches the ground, waits while he draws one breath, raises it again, and lays the spear back by the boot.",
      "salutationem facit. Salutatio haec est: cuspidem ante se demittit, donec terram paene tangat; manet dum semel spiritum ducit; rursus eam erigit, et hastam ad ocream reponit.",
    ),
    [
      does(
        "go at",
        { gait: implied("halt", "He has halted for it.") },
        { because: implied(true, "He has halted for it.") },
      ),
      does(
        "perform",
        { movement: stated(greeting), hand: inTheRight },
        { words: greet.both("makes the greeting", "salutationem facit") },
      ),
      does(
        "look",
        { toward: stated(inWords("those he greets")) },
        {
          words: greet.both(
            "let him look at those he greets and not at his spear",
            "eos spectet quos salutat, non hastam",
          ),
          timing: stated({ is: "throughout" }, greet.both("All this while", "Interim")),
        },
      ),
    ],
  );

  exercise.advice(
    "Look at those you greet, not at the spear",
    greet.both(
      "All this while let him look at those he greets and not at his spear; for the spear will find the ground of itself, but they wish to be found.",
      "Interim eos spectet quos salutat, non hastam: hasta enim terram sua sponte inveniet, illi autem inveniri volunt.",
    ),
    greets,
    greets,
  );

  book.mark("senses", turns.horse, turn);
  book.note(
    "In B the leaf is cut away below “no more”. For the turn and the greeting there is only A.",
    point.la("nec amplius"),
  );
  return { id: exercise.id, ...taught };
}
