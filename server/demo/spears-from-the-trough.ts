/** server/demo/spears-from-the-trough.ts - the fourth exercise of the invented book, its second half: across the court, at the
 *  stone, at the stair and home. May import: siblings. */
import type { circleAboutTheWell } from "./circle-about-the-well.ts";
import { at, clock, does, implied, inCrux, inWords, LEFT, once, RIGHT, stated, supplied, times } from "./draft.ts";
import type { ExerciseBuilder } from "./exercise-builder.ts";
import type { SecondPart } from "./second-part.ts";
import type { SpearsDoubts } from "./spears-doubts.ts";
import type { SpearsWords } from "./spears-words.ts";

/** The exercise while it is being written. */
export interface SpearsWritten {
  part: SecondPart;
  exercise: ExerciseBuilder;
  words: SpearsWords;
  doubts: SpearsDoubts;
  holds: ReturnType<typeof circleAboutTheWell>["holds"];
}

export function acrossTheCourt({ part, exercise, words: { across, two }, doubts }: SpearsWritten): string {
  const { court, lesser } = part;
  const step = exercise.step(
    "Slanting across to the stone",
    across.both(
      "As he leaves the wall, to the left, with the spear lowered, he crosses the court between the well and the boar at an easy canter, until he comes to the stone and has the wall upon his left.",
      "Cum murum relinquit, ad laevam, hasta demissa, inter puteum et aprum leni cursu curiam transit, donec ad lapidem veniat et murum ad laevam habeat.",
    ),
    [
      does(
        "lower",
        {
          object: implied(lesser, "It is the one that is up."),
          level: implied("middle", "Lowered as in the first exercise, until it looks out over the ears."),
          bearing: inCrux(doubts.left, {
            way: implied(clock(12), "In the first exercise a point that is lowered looks ahead."),
            spear: stated(clock(10), across.both("to the left, with the spear lowered", "ad laevam, hasta demissa")),
          }),
        },
        {
          words: across.both("with the spear lowered", "hasta demissa"),
          timing: stated({ is: "before" }, across.both("As he leaves the wall", "Cum murum relinquit")),
        },
      ),
      does(
        "go at",
        { gait: stated("canter"), pace: stated("easy") },
        { words: across.both("at an easy canter", "leni cursu") },
      ),
      does(
        "ride",
        {
          figure: implied("change across", "From wall to wall, and the wall changes sides."),
          turn: inCrux(doubts.left, {
            way: stated(LEFT, across.both("As he leaves the wall, to the left", "Cum murum relinquit, ad laevam")),
            spear: implied(LEFT, "With the wall upon his right there is only the left."),
          }),
          toward: stated(at(court.stone)),
          how: stated(
            "between the well and the boar",
            across.both("between the well and the boar", "inter puteum et aprum"),
          ),
        },
        { words: across.both("crosses the court", "curiam transit") },
      ),
    ],
  );
  exercise.advice(
    "Keep the line straight",
    across.both(
      "The line is short and slanting, and the boar lies in wait for those who ride it crooked; he has taken more stirrups than spears.",
      "Linea brevis est et obliqua, et aper iis insidiatur qui eam curvam equitant; plures stapedes quam hastas cepit.",
    ),
    step,
    step,
  );
  exercise.advice(
    "Whoever drops a spear walks back",
    two.both(
      "He who drops a spear here dismounts for it and goes back to the gate on foot, so that he may remember the way.",
      "Qui hic hastam amittit, ad eam descendit et pedes ad portam redit, ut viae meminerit.",
    ),
    step,
    step,
  );
  part.book.note(
    "Them: the spears or the reins, and the Latin is no more helpful than the English.",
    two.both("and it will soon be seen which of them he thinks about", "et mox apparebit de quibus cogitet"),
  );
  return step;
}

export function atTheStone({ part, exercise, words: { turn }, doubts }: SpearsWritten): string {
  const { book, lesser } = part;
  const { free, turning, rounds } = doubts;
  const vertit = turn.both("to the right, he turns", "in dextram vertit");
  const step = exercise.step(
    "The point aside, and the turn",
    turn.both(
      "At the stone he draws the point aside, to the side of the hand that has it, so that he may see where he is; and once, to the right, he turns.",
      "Ad lapidem cuspidem ad latus manus quae eam habet deducit, ut videat ubi sit; et semel in dextram vertit.",
    ),
    [
      does(
        "carry",
        {
          object: implied(lesser, "It is the one before him."),
          hand: inCrux(free, {
            right: implied("right", "It was taken with the right."),
            left: implied("left", "It was taken with the left."),
          }),
          bearing: inCrux(free, {
            right: stated(clock(1), turn.both("to the side of the hand that has it", "ad latus manus quae eam habet")),
            left: stated(clock(11), turn.both("to the side of the hand that has it", "ad latus manus quae eam habet")),
          }),
        },
        {
          words: turn.both("draws the point aside", "cuspidem ad latus manus quae eam habet deducit"),
          timing: stated({ is: "before" }, turn.both("At the stone", "Ad lapidem")),
        },
      ),
      does(
        "ride",
        {
          figure: implied("volte", "Once round and on: a small circle."),
          turn: stated(RIGHT),
          laps: inCrux(rounds, {
            once: stated(once, turn.both("once", "semel")),
            twice: supplied(times(2), "C has “bis”."),
          }),
        },
        { words: vertit, onlyWhen: [turning.reads("horse")] },
      ),
      does(
        "pass",
        {
          object: implied(lesser, "The point that was drawn aside is its point."),
          from: implied("left", "It can be turned over into the right only from the left."),
          to: stated("right", vertit),
        },
        { words: vertit, onlyWhen: [turning.reads("spear")] },
      ),
    ],
  );
  book.note(
    "We asked.",
    turn.both(
      "Nobody has ever asked me what I mean by this, from which I conclude that it is clear.",
      "Nemo umquam me interrogavit quid hoc significet, unde concludo perspicuum esse.",
    ),
  );
  return step;
}

export function homeByTheStair({ part, exercise, words: { ring, home }, doubts, holds }: SpearsWritten) {
  const { book, court, spear, lesser } = part;
  const { putAway, turning, hung } = doubts;
  const theOne = ring.both("hangs the one in the ring", "alteram in anulo suspendit");
  const theOther = ring.both("lays the other back by the boot", "alteram ad ocream reponit");
  exercise.step(
    "One left in the ring",
    ring.both(
      "By the wall he comes to the stair, and halts. There he hangs the one in the ring and lays the other back by the boot, and takes the reins again into the left hand.",
      "Iuxta murum ad gradus venit et consistit. Ibi alteram in anulo suspendit, alteram ad ocream reponit, et habenas rursus in manum sinistram recipit.",
    ),
    [
      does(
        "ride",
        {
          figure: stated("along the wall"),
          turn: implied(RIGHT, "With the wall upon his left every corner turns right."),
          toward: stated(at(court.stair)),
        },
        { words: ring.both("By the wall he comes to the stair", "Iuxta murum ad gradus venit") },
      ),
      does("ride", { figure: stated("halt") }, { words: ring.both("halts", "consistit") }),
      does(
        "hook",
        {
          object: inCrux(hung, {
            lesser: implied(lesser, "The other was by the boot before."),
            own: implied(spear, "An exchange."),
          }),
          to: stated("the iron ring beside the stair", ring.both("in the ring", "in anulo")),
        },
        { words: theOne },
      ),
      does(
        "release",
        {
          object: implied(lesser, "It hangs."),
          hand: inCrux(turning, {
            horse: implied("left", "It has been there since the trough."),
            spear: implied("right", "It was turned over into that hand."),
          }),
        },
        { words: theOne, onlyWhen: [hung.reads("lesser")] },
      ),
      does(
        "release",
        { object: implied(spear, "It hangs."), hand: implied("right", "It was beneath the right arm.") },
        { words: theOne, onlyWhen: [hung.reads("own"), putAway.reads("arm")] },
      ),
      does(
        "take",
        {
          object: implied(spear, "It is his own that goes back to the boot."),
          hand: implied("right", "The boot is the right one."),
          from: implied(inWords("under the thigh"), "He had put it there."),
        },
        { words: theOther, onlyWhen: [hung.reads("lesser"), putAway.reads("thigh")] },
      ),
      does(
        "hold",
        {
          object: inCrux(hung, {
            lesser: implied(spear, "Only his own was by the boot before."),
            own: implied(lesser, "An exchange."),
          }),
          hold: stated(holds.byTheBoot),
          hand: implied("right", "The boot is the right one."),
        },
        { words: theOther },
      ),
      does(
        "change reins",
        { to: stated("left") },
        { words: ring.both("takes the reins again into the left hand", "habenas rursus in manum sinistram recipit") },
      ),
    ],
  );
  book.note(
    "One hangs there under every reading. What they learn by counting is whether he has dropped the other.",
    ring.both(
      "Those who sit upon the stair look at the ring and not at him, and count; and if they count one, he has done what I asked.",
      "Qui in gradibus sedent anulum spectant, non eum, et numerant; et si unam numerant, quod petivi fecit.",
    ),
  );
  exercise.step(
    "Home with one spear",
    home.both(
      "Then he sets the spear upright, its butt upon his thigh, and rides on by the wall at a walk, past the trough, to the gate, and goes out with one spear, as he came in.",
      "Deinde hastam erigit, calce super femur posita, et iuxta murum passu, praeter alveum, ad portam pergit, et cum una hasta exit, ut intraverat.",
    ),
    [
      does(
        "hold",
        {
          object: inCrux(hung, {
            lesser: implied(spear, "The lesser hangs in the ring."),
            own: implied(lesser, "His own hangs in the ring."),
          }),
          hold: stated(holds.upright),
          hand: implied("right", "It was laid by the right boot."),
        },
        {
          words: home.both(
            "sets the spear upright, its butt upon his thigh",
            "hastam erigit, calce super femur posita",
          ),
          timing: implied({ is: "before" }, "It is said before he rides on."),
        },
      ),
      does("go at", { gait: stated("walk") }, { words: home.both("at a walk", "passu") }),
      does(
        "ride",
        {
          figure: stated("along the wall"),
          turn: implied(RIGHT, "The trough is on that way."),
          toward: stated(at(court.gate)),
          how: stated("past the trough", home.both("past the trough", "praeter alveum")),
        },
        { words: home.both("rides on by the wall", "iuxta murum passu, praeter alveum, ad portam pergit") },
      ),
    ],
  );
  book.note(
    "The groom's part is over before anybody asks him.",
    home.both(
      "Meanwhile the groom fetches the other from the ring, and it is for him to say whether it hung straight.",
      "Agaso interea alteram ex anulo aufert, et eius est dicere num recte pependerit.",
    ),
  );
}
