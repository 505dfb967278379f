/** server/demo/change-upon-the-wall.ts - the second exercise of the invented book, complete: what is done, step by step.
 *  May import: siblings. Its words are in change-words.ts, its places of doubt in change-doubts.ts. It goes out along the
 *  wall with the wall on the right, turns about past the trough and comes back with the wall on the left; then the same
 *  on the other side of the court. With the wall on the right every corner of the court turns left. */

import { changeDoubts } from "./change-doubts.ts";
import { changeWords } from "./change-words.ts";
import type { circleAboutTheWell } from "./circle-about-the-well.ts";
import { type ActionDraft, at, clock, does, idOf, implied, inCrux, LEFT, RIGHT, stated, supplied } from "./draft.ts";
import { ExerciseBuilder } from "./exercise-builder.ts";
import type { Phrase } from "./phrase.ts";
import type { Setting } from "./setting.ts";

export function changeUponTheWall(setting: Setting, { holds, greeting }: ReturnType<typeof circleAboutTheWell>) {
  const { book, court, spear, turns, asTheHandsBegin } = setting;
  const exercise = new ExerciseBuilder(book, {
    label: "2",
    title: "Of the change upon the wall",
    note: "",
    ground: court.ground,
  });
  const passages = changeWords(setting, exercise.id);
  const { washes, other } = changeDoubts(setting, exercise.id, passages);
  const { out, change, mirror, home } = passages;
  const inTheRight = implied("right", "The opening words put the spear in the right hand.");
  const atTheBalance = implied("balance", "The opening words: held where it balances.");

  /** The spear goes from one hand to the other, and the reins the opposite way. */
  const handsChange = (from: "left" | "right", to: "left" | "right", given: Phrase[]): ActionDraft[] => {
    const pass = does(
      "pass",
      {
        object: stated(spear),
        from: implied(from, "That hand has it."),
        to: implied(to, "There are only two hands."),
        zone: atTheBalance,
      },
      { words: given, onlyWhen: [other.reads("hand")] },
    );
    const reins = does(
      "change reins",
      { to: implied(from, "The hand that has given up the spear is free.") },
      {
        onlyWhen: [other.reads("hand")],
        because: implied(true, "The hand that has the spear has not the reins (A f. 2v)."),
      },
    );
    return [pass, reins];
  };

  const alongTheWall = exercise.step(
    "Along the wall to the trough",
    out.both(
      "Here he goes out from the gate with the wall upon his right, the spear low beside the right boot as in the first exercise, and follows the wall about the corner as far as the trough.",
      "Hic a porta exit muro ad dextram, hasta demissa iuxta ocream dextram ut in exercitio primo, et murum sequitur circa angulum usque ad alveum.",
    ),
    [
      ...asTheHandsBegin(),
      does(
        "ride",
        {
          figure: stated("along the wall"),
          turn: implied(LEFT, "With the wall upon his right every corner turns left."),
          from: stated(at(court.gate), out.both("from the gate", "a porta")),
          toward: stated(at(court.trough), out.both("as far as the trough", "usque ad alveum")),
          how: stated("the wall upon his right", out.both("with the wall upon his right", "muro ad dextram")),
        },
        { words: out.both("follows the wall about the corner", "murum sequitur circa angulum") },
      ),
      does(
        "hold",
        { object: stated(spear), hold: stated(holds.byTheBoot), hand: inTheRight },
        { words: out.both("the spear low beside the right boot", "hasta demissa iuxta ocream dextram") },
      ),
    ],
  );

  const raise = does("raise", {
    object: implied(spear, "“eam” can only be the spear: nothing else so far is feminine and in his hand."),
    hand: inTheRight,
    level: supplied("high", "Raised from the boot, as in the first exercise."),
  });
  exercise.step(
    "The spear raised at the trough",
    out.both("At the trough he †washes† it.", "Ad alveum eam †lavat†."),
    [raise],
    {
      onlyWhen: [washes.reads("raises")],
      because: implied(true, "One letter is changed: levat for lavat."),
    },
  );

  const inTheTurn = exercise.step(
    "The turn off the wall, and the change",
    [
      ...out.both(
        "When he has passed the trough by three lengths of the horse, he turns off the wall in a small half circle and comes back to it, so that the wall which was upon his right is upon his left.",
        "Cum alveum tribus equi longitudinibus praeterierit, a muro parvo semicirculo vertit et ad eum redit, ita ut murus qui ad dextram fuerat ad laevam sit.",
      ),
      ...change.both(
        "As he turns he brings the spear across before him and gives it to the other",
        "Dum vertit, hastam ante se traducit et alteri dat",
      ),
    ],
    [
      does(
        "ride",
        {
          figure: implied("along the wall", "He has not left it yet."),
          turn: implied(LEFT, "With the wall upon his right every corner turns left."),
          how: stated("until three lengths of the horse past the trough"),
        },
        {
          words: out.both(
            "passed the trough by three lengths of the horse",
            "alveum tribus equi longitudinibus praeterierit",
          ),
        },
      ),
      does(
        "ride",
        {
          figure: stated("half volte"),
          turn: implied(LEFT, "The wall is upon his right: there is only the left."),
          manner: stated("small half circle", out.both("in a small half circle", "parvo semicirculo")),
        },
        {
          words: out.both(
            "he turns off the wall in a small half circle and comes back to it",
            "a muro parvo semicirculo vertit et ad eum redit",
          ),
        },
      ),
      does(
        "carry",
        {
          object: stated(spear),
          hand: inTheRight,
          level: implied("middle", "Across before him it lies over the horse's neck."),
        },
        {
          words: change.both("brings the spear across before him", "hastam ante se traducit"),
          timing: implied({ is: "at", over: 1, of: 2 }, "“As he turns”: not before the turn and not after it."),
        },
      ),
      ...handsChange("right", "left", change.both("gives it to the other", "alteri dat")),
      does(
        "cross the neck",
        { object: stated(spear), to: implied(LEFT, "From the right, the other side is the left.") },
        { words: change.both("gives it to the other", "alteri dat"), onlyWhen: [other.reads("side")] },
      ),
    ],
  );

  exercise.advice(
    "Do not hurry the change",
    change.both(
      "Let him not hurry this, for the horse reads haste in the hand",
      "Ne festinet in hoc, nam equus festinationem in manu legit",
    ),
    inTheTurn,
    inTheTurn,
  );

  const back = exercise.step(
    "Back to the gate, the point on the left",
    change.both(
      "and rides back the way he came, the point now looking forward upon the left",
      "et qua venerat redit, cuspide iam ad laevam prospiciente",
    ),
    [
      does(
        "ride",
        {
          figure: implied("along the wall", "The way he came was along the wall."),
          turn: implied(RIGHT, "With the wall upon his left every corner turns right."),
          toward: implied(at(court.gate), "The way he came began at the gate."),
        },
        { words: change.both("rides back the way he came", "qua venerat redit") },
      ),
      does(
        "carry",
        {
          object: stated(spear),
          hand: inCrux(other, {
            hand: implied("left", "He has given it to the left hand."),
            side: implied("right", "He has given it to the left side; the hand is the same."),
          }),
          bearing: stated(clock(11)),
        },
        { words: change.both("the point now looking forward upon the left", "cuspide iam ad laevam prospiciente") },
      ),
    ],
  );

  exercise.advice(
    "The point a cubit from the wall",
    change.both(
      "let the point keep a cubit from the wall, for stone is not persuaded",
      "cuspis cubitum a muro distet, nam lapidi non persuadetur",
    ),
    back,
    back,
  );

  const takenBack = change.both("takes it back as it was before", "eam recipit sicut ante erat");
  const atTheGate = exercise.step(
    "Halt, and the spear taken back",
    change.both(
      "When he is again at the gate he halts and takes it back as it was before.",
      "Cum iterum ad portam venerit, consistit et eam recipit sicut ante erat.",
    ),
    [
      does("go at", { gait: stated("halt") }, { words: change.both("he halts", "consistit") }),
      ...handsChange("left", "right", takenBack),
      does(
        "cross the neck",
        { object: stated(spear), to: implied(RIGHT, "As it was before: upon the right.") },
        { words: takenBack, onlyWhen: [other.reads("side")] },
      ),
      does(
        "hold",
        { object: stated(spear), hold: implied(holds.byTheBoot, "As it was before: by the boot."), hand: inTheRight },
        { because: implied(true, "As it was before: the place as well as the hand.") },
      ),
    ],
    { cue: stated("the gate") },
  );

  const spearGiven = does(
    "pass",
    {
      object: stated(spear),
      from: implied("right", "That hand has it."),
      to: stated("left"),
      zone: atTheBalance,
    },
    { words: mirror.both("gives the spear into his left hand", "hastam in manum sinistram dat") },
  );
  exercise.step(
    "Spear to the left hand, reins to the right",
    mirror.both(
      "Then, standing in the gate, he gives the spear into his left hand, and after it the reins into his right",
      "Tum in porta stans hastam in manum sinistram dat, et post eam habenas in dextram",
    ),
    [
      does(
        "go at",
        { gait: stated("halt") },
        { words: mirror.both("standing in the gate", "in porta stans"), timing: stated({ is: "throughout" }) },
      ),
      spearGiven,

      does(
        "change reins",
        { to: stated("right") },
        {
          words: mirror.both("after it the reins into his right", "post eam habenas in dextram"),
          timing: () =>
            stated({ is: "after action", action: idOf(spearGiven) }, mirror.both("and after it", "et post eam")),
        },
      ),
    ],
  );

  exercise.again(
    "The same by the other wall",
    mirror.both(
      "now he does all this by the other wall, where the elm is, with the sides changed, save that he does not raise the spear under the elm, whose boughs hang lower than any rider believes.",
      "nunc haec omnia facit iuxta alterum murum, ubi ulmus est, lateribus mutatis, nisi quod hastam sub ulmo non levat, cuius rami humilius pendent quam quisquam eques credit.",
    ),
    {
      of: { is: "elements", from: alongTheWall, to: atTheGate },
      manner: "mirrored",
      except: [
        { is: "without", action: idOf(raise) },
        { is: "words", words: "The elm takes the place of the trough." },
      ],
    },
  );

  const spearHome = does(
    "pass",
    {
      object: stated(spear),
      from: implied("left", "The mirrored course ends with it there."),
      to: implied("right", "As at first."),
      zone: atTheBalance,
    },
    {
      words: home.both("puts spear and reins back as they were at first", "hastam et habenas reddit ut initio erant"),
    },
  );
  exercise.step(
    "Spear and reins as at first",
    home.both(
      "When he has come to the gate the second time, he puts spear and reins back as they were at first",
      "Cum iterum ad portam venerit, hastam et habenas reddit ut initio erant",
    ),
    [
      does(
        "go at",
        { gait: implied("halt", "The first time he halted for it.") },
        { because: implied(true, "The first time he halted for it.") },
      ),
      spearHome,

      does(
        "change reins",
        { to: implied("left", "As at first.") },
        {
          timing: () =>
            implied(
              { is: "after action", action: idOf(spearHome) },
              "As in the gate before: the spear, then the reins.",
            ),
        },
      ),
    ],
    { cue: stated("the gate, the second time") },
  );

  exercise.step(
    "Up the court at a walk, and the greeting",
    home.both(
      "then he rides up the court to the stair at a walk, leaving the well upon whichever hand he pleases, and makes the greeting as I have taught it",
      "tum per curiam passu ad gradus ascendit, puteo ad utramlibet manum relicto, et salutationem facit ut docui",
    ),
    [
      does("go at", { gait: stated("walk") }, { words: home.both("at a walk", "passu") }),
      does(
        "ride",
        {
          figure: implied("straight", "Straight but for the well, which he leaves upon either hand."),
          from: implied(at(court.gate), "He is there."),
          toward: stated(at(court.stair)),
          how: stated(
            "leaving the well upon whichever hand he pleases",
            home.both("leaving the well upon whichever hand he pleases", "puteo ad utramlibet manum relicto"),
          ),
        },
        { words: home.both("rides up the court to the stair", "per curiam passu ad gradus ascendit") },
      ),
      does(
        "ride",
        { figure: implied("halt", "The greeting is made standing, a spear's length before the stair.") },
        { because: implied(true, "As I have taught it: in the first exercise he halts for it (A f. 3v).") },
      ),
      does(
        "perform",
        { movement: stated(greeting), hand: inTheRight },
        { words: home.both("makes the greeting as I have taught it", "salutationem facit ut docui") },
      ),
    ],
  );

  book.standing(
    {
      exercise: exercise.id,
      is: "never mentioned",
      title: "What becomes of the reins while the spear is given over in the turn",
      note: "Standing in the gate he is told: the spear, and after it the reins. At the canter he is told nothing.",
    },
    [],
    supplied(true, "Looked for in A ff. 4r–4v and in B f. 2r."),
  );
  book.note(
    "The only place where the book admits that anything can go wrong.",
    home.both(
      "He who has lost nothing may be content; he who has lost the reins lost them in the turn, and knows it already.",
      "Qui nihil amisit contentus sit; qui habenas amisit, in flexu amisit, et iam scit.",
    ),
  );
  book.mark("senses", turns.horse, out.both("he turns off the wall", "vertit"));
  book.mark("senses", turns.horse, change.both("As he turns", "Dum vertit"));
  return { id: exercise.id };
}
