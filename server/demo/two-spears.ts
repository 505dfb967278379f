/** server/demo/two-spears.ts - the fourth exercise of the invented book, complete: what is done, step by step.
 *  May import: siblings. Its words are in spears-words.ts, its places of doubt in spears-doubts.ts. Out along the wall to the
 *  trough, slanting across above the well to the stone, and home by the stair with the wall on the left: the rein changes
 *  once, on the slant. The lesser spear stands ready at the trough and stays behind at the stair. */

import type { circleAboutTheWell } from "./circle-about-the-well.ts";
import { at, clock, does, implied, inCrux, LEFT, stated, supplied } from "./draft.ts";
import { ExerciseBuilder } from "./exercise-builder.ts";
import type { SecondPart } from "./second-part.ts";
import { spearsDoubts } from "./spears-doubts.ts";
import { acrossTheCourt, atTheStone, homeByTheStair, type SpearsWritten } from "./spears-from-the-trough.ts";
import { spearsWords } from "./spears-words.ts";

export function twoSpears(part: SecondPart, { holds }: ReturnType<typeof circleAboutTheWell>) {
  const { book, court } = part;
  const exercise = new ExerciseBuilder(book, {
    label: "4",
    title: "Of the two spears",
    note: "",
    ground: court.ground,
  });
  const words = spearsWords(part, exercise.id);
  const doubts = spearsDoubts(part, exercise.id, words);
  const written: SpearsWritten = { part, exercise, words, doubts, holds };
  toTheTrough(written);
  const taken = takingTheLesser(written);
  const across = acrossTheCourt(written);
  exercise.advice(
    "Sit as though there were neither spears nor reins",
    words.two.both(
      "Let him sit as though he had none of the three; for a horse that feels three things at once obeys the heaviest, and that is the rider.",
      "Ita sedeat quasi horum trium nihil habeat; nam equus qui tria simul sentit gravissimo paret, et is est eques.",
    ),
    taken,
    across,
  );
  const turn = atTheStone(written);
  homeByTheStair(written);
  whatGoesWrong(written, taken);
  return { id: exercise.id, doubts, taken, across, turn };
}

const inTheRight = implied("right", "The opening words put the spear in the right hand.");

function toTheTrough({ part, exercise, words: { out }, holds }: SpearsWritten) {
  const { court, spear, lesser, asTheHandsBegin } = part;
  exercise.step(
    "A groom plants the lesser spear",
    out.both(
      "A groom plants the lesser spear in the ground before the trough, its point down and its butt as high as a rider's hand, and comes away.",
      "Agaso hastam minorem ante alveum in terram defigit, cuspide deorsum, calce ad altitudinem manus equitis, et abscedit.",
    ),
    [
      does(
        "go at",
        { gait: implied("halt", "The rider is told to set out only after this.") },
        { because: implied(true, "“Then let the rider go out.”") },
      ),
      does(
        "plant",
        {
          object: stated(lesser),
          at: stated(at(court.trough)),
          end: stated("head", out.both("its point down", "cuspide deorsum")),
          how: stated(
            "the butt as high as a rider's hand",
            out.both("its butt as high as a rider's hand", "calce ad altitudinem manus equitis"),
          ),
        },
        { words: out.both("plants the lesser spear in the ground", "hastam minorem ante alveum in terram defigit") },
      ),
      does(
        "release",
        { object: stated(lesser), hand: implied("both", "The groom comes away with nothing.") },
        { words: out.both("comes away", "abscedit") },
      ),
    ],
  );
  exercise.step(
    "Out along the wall to the trough",
    out.both(
      "Then let the rider go out from the gate at a walk with the wall upon his right, the spear low beside the right boot, and follow the wall as far as the trough; and there he halts",
      "Tum eques a porta exeat passu, muro ad dextram, hasta demissa iuxta ocream dextram, et murum usque ad alveum sequatur; ibique consistit",
    ),
    [
      ...asTheHandsBegin(),
      does("go at", { gait: stated("walk") }, { words: out.both("at a walk", "passu") }),
      does(
        "ride",
        {
          figure: stated("along the wall"),
          turn: implied(LEFT, "With the wall upon his right every corner turns left."),
          from: stated(at(court.gate), out.both("from the gate", "a porta")),
          toward: stated(at(court.trough), out.both("as far as the trough", "usque ad alveum")),
        },
        { words: out.both("follow the wall", "murum usque ad alveum sequatur") },
      ),
      does(
        "hold",
        { object: stated(spear), hold: stated(holds.byTheBoot), hand: inTheRight },
        { words: out.both("the spear low beside the right boot", "hasta demissa iuxta ocream dextram") },
      ),
      does("ride", { figure: stated("halt") }, { words: out.both("there he halts", "ibique consistit") }),
    ],
  );
  part.book.note(
    "The three things are the spear, the other spear and the reins. The two hands are not further described.",
    out.both(
      "since he has three things to do and two hands to do them with",
      "quia tria ei facienda sunt et duae manus quibus faciat",
    ),
  );
  part.book.note(
    "C has asinus, an ass. The drawing of letters is close and the grooms of this house are well spoken of; A is followed.",
    out.both("A groom", "Agaso"),
  );
}

function takingTheLesser({ part, exercise, words: { taken, two }, doubts, holds }: SpearsWritten): string {
  const { court, spear, reins, lesser } = part;
  const { putAway, free, reins: whereReins } = doubts;
  const away = taken.both("puts away the spear that he has", "Hastam quam habet seponit");
  const left = taken.both("the reins, which are where he left them", "habenas quaerat, quae sunt ubi eas reliquit");
  const lets = does(
    "release",
    { object: stated(spear), hand: inTheRight },
    { words: away, onlyWhen: [putAway.reads("thigh", "ground")] },
  );
  const freeHand = () =>
    inCrux(free, {
      right: implied("right", "The left has the reins."),
      left: implied("left", "The reins are out of it."),
    });
  const step = exercise.step(
    "One put away, the other taken",
    taken.both(
      "He puts away the spear that he has, and with the free hand takes the lesser, drawing it upward and not toward him, and lifts it until the point is above his head.",
      "Hastam quam habet seponit, et manu vacua minorem capit, sursum eam trahens, non ad se, et tollit donec cuspis supra caput sit.",
    ),
    [
      does(
        "go at",
        { gait: implied("halt", "He has halted for it.") },
        { because: implied(true, "He has halted for it.") },
      ),
      does(
        "carry",
        {
          object: stated(spear),
          level: implied("middle", "It lies along the horse."),
          bearing: supplied(clock(12), "Under the thigh it can only lie along the horse; forward, as it was."),
          contact: implied({ with: "thigh", side: "right", degree: "bears" }, "What he sits on is held."),
        },
        { words: away, onlyWhen: [putAway.reads("thigh")] },
      ),
      does(
        "hold",
        {
          object: stated(spear),
          hold: implied(holds.beneathTheArm, "As the first exercise shuts it up."),
          hand: inTheRight,
        },
        { words: away, onlyWhen: [putAway.reads("arm")] },
      ),
      does(
        "plant",
        { object: stated(spear), at: implied(at(court.trough), "In the place of the other.") },
        { words: away, onlyWhen: [putAway.reads("ground")] },
      ),
      lets,
      does(
        "keep",
        { object: stated(reins), hand: implied("left", "He has not moved them.") },
        { words: left, onlyWhen: [whereReins.reads("hand")] },
      ),
      does(
        "lay reins",
        { on: implied("neck", "One leaves a thing by letting go of it.") },
        { words: left, onlyWhen: [whereReins.reads("neck")] },
      ),
      does(
        "change reins",
        { to: implied("right", "That hand has put its spear away.") },
        { words: left, onlyWhen: [whereReins.reads("right")] },
      ),
      does(
        "pick up",
        { object: stated(lesser), hand: freeHand(), at: implied(at(court.trough), "It was planted there.") },
        { words: taken.both("with the free hand takes the lesser", "manu vacua minorem capit") },
      ),
      does(
        "raise",
        {
          object: stated(lesser),
          hand: freeHand(),
          level: stated("high"),
          height: stated("until the point is above his head"),
          how: stated(
            "upward and not toward him",
            taken.both("drawing it upward and not toward him", "sursum eam trahens, non ad se"),
          ),
        },
        { words: taken.both("lifts it until the point is above his head", "tollit donec cuspis supra caput sit") },
      ),
    ],
  );
  exercise.advice(
    "Do not hurry, and do not look for the reins",
    taken.both(
      "Let him do this without haste, and not look for the reins, which are where he left them.",
      "Hoc sine festinatione faciat, nec habenas quaerat, quae sunt ubi eas reliquit.",
    ),
    step,
    step,
  );
  part.book.note(
    "He has them both with him, then, wherever he has put his own.",
    two.both("Now he has two spears and one pair of reins", "Nunc duas hastas habet et unas habenas"),
  );
  return step;
}

/** The three faults the book names, where they are made; and its praise. */
function whatGoesWrong({ part: { book }, exercise, words: { faults } }: SpearsWritten, taken: string) {
  const ofTheTaking = { of: "elements", target: taken } as const;
  book.add("faults", {
    ...ofTheTaking,
    fault: "The lesser spear is drawn toward the rider, and the butt comes with it.",
    correction: "Draw it upward until the point is above your head; only then is there anything to bring nearer.",
  });
  book.add("faults", {
    ...ofTheTaking,
    fault: "The rider looks for the reins, and finds them.",
    correction: "Look at the stone. The reins are where you left them.",
  });
  book.note(
    "Written down as faults of the taking of the lesser spear. The book counts three and describes two.",
    faults.both(
      "Three faults are common. The first is to take the lesser spear toward oneself, and so to learn what its butt is made of. The second is to look for the reins; the third, to find them.",
      "Tria vitia frequentia sunt. Primum est hastam minorem ad se trahere, et ita discere ex qua re calx facta sit. Secundum est habenas quaerere; tertium, invenire.",
    ),
  );
  exercise.advice(
    "A slack hand and a quiet leg throughout",
    faults.both(
      "He who rides it with a slack hand and a quiet leg will hear nothing said of him, which in this court is praise.",
      "Qui manu laxa et crure quieto equitaverit, nihil de se dici audiet, quod in hac curia laus est.",
    ),
    null,
    null,
  );
  book.standing(
    {
      exercise: exercise.id,
      is: "never mentioned",
      title: "Who brings the lesser spear to the trough for the next rider",
      note: "There is one groom, and he was last seen at the ring.",
    },
    [],
    supplied(true, "Looked for in A ff. 6v–7v and in C ff. 2r–3r."),
  );
}
