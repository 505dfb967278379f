/** server/demo/knot-of-two.ts - the sixth exercise of the invented book, complete: what is done, step by step.
 *  May import: siblings. Its words are in knot-words.ts, its places of doubt in knot-doubts.ts. Two riders on one figure of
 *  eight, about the well on the left hand and about the boar on the right, the second half a circle behind the first. */

import type { circleAboutTheWell } from "./circle-about-the-well.ts";
import { paces } from "./court.ts";
import { type ActionDraft, at, clock, does, implied, inCrux, inWords, LEFT, stated, supplied, times } from "./draft.ts";
import { ExerciseBuilder } from "./exercise-builder.ts";
import { type KnotDoubts, knotDoubts } from "./knot-doubts.ts";
import { type KnotWords, knotWords } from "./knot-words.ts";
import type { SecondPart } from "./second-part.ts";

type Taught = Pick<ReturnType<typeof circleAboutTheWell>, "holds" | "greeting">;

/** The exercise while it is being written. */
interface Written {
  part: SecondPart;
  exercise: ExerciseBuilder;
  words: KnotWords;
  doubts: KnotDoubts;
  taught: Taught;
}

const THE_FIRST = "the first";
const THE_SECOND = "the second";

export function knotOfTwo(part: SecondPart, taught: Taught) {
  const { book, court } = part;
  const exercise = new ExerciseBuilder(book, {
    label: "6",
    title: "Of the knot that two ride",
    note: "",
    ground: court.ground,
  });
  const words = knotWords(part, exercise.id);
  const doubts = knotDoubts(part, exercise.id, words);
  const written: Written = { part, exercise, words, doubts, taught };
  settingOut(written);
  const knot = theKnot(written);
  const end = faceToFace(written, knot);
  atAnyTime(written);
  book.standing(
    {
      exercise: exercise.id,
      is: "never mentioned",
      title: "What either rider does if he drops the spear in the knot",
      note: "At the trough whoever drops one goes back to the gate on foot. There the court was empty.",
    },
    [],
    supplied(true, "Looked for in A ff. 9r–10r and in C ff. 4r–5r."),
  );
  return { id: exercise.id, doubts, steps: { knot, end } };
}

const inTheRight = implied("right", "The opening words put the spear in the right hand.");

function settingOut({ part, exercise, words: { two, up }, doubts, taught }: Written) {
  const { book, court, spear, asTheHandsBegin } = part;
  book.note(
    "Why they should not be related is not said. It can be tried.",
    two.both(
      "Two riders are wanted for this who can keep a pace, and who are not related.",
      "Duo equites ad hoc requiruntur qui gradum servare possint nec cognati sint.",
    ),
  );
  const byTheBench = two.both("stays by the bench", "iuxta scamnum manet");
  exercise.step(
    "The second stays by the bench",
    two.both(
      "the second stays by the bench until the first is over against him, and then rides as he rode",
      "secundus iuxta scamnum manet donec primus ex adverso sit, deinde equitat ut ille equitavit",
    ),
    [
      does("go at", { gait: implied("halt", "He stays.") }, { words: byTheBench }),
      does(
        "ride",
        {
          figure: implied("halt", "He stays."),
          from: stated(at(court.bench), two.both("by the bench", "iuxta scamnum")),
        },
        { words: byTheBench },
      ),
    ],
    {
      role: THE_SECOND,
      cue: inCrux(doubts.setsOut, {
        knot: implied("the first has ended his part of the circle", "So he comes into the knot."),
        stair: implied("the first comes by the stair", "The stair is over against the foot of the court."),
      }),
      note: "He stands there first and sets out second. What he waits for is told of the step, since it ends it.",
    },
  );
  exercise.step(
    "The first rides out",
    two.both("The first rides out from the gate", "Primus a porta exit"),
    [
      does("ride", {
        figure: implied("straight", "Out of the gate there is only up the court."),
        how: stated("out from the gate"),
        size: supplied({ is: "exact", of: 2.4 }, "Until his horse is in the court: a length."),
      }),
    ],
    { role: THE_FIRST },
  );
  exercise.step(
    "Up the court, and about the well",
    up.both(
      "Each goes up the court at an easy canter, the spear low beside the right boot, and comes upon a circle about the well, fifteen paces across, the well upon his left; this he follows until the boar is beside him upon the right.",
      "Uterque per curiam leni cursu ascendit, hasta demissa iuxta ocream dextram, et in circulum circa puteum venit, quindecim passus latum, puteo ad laevam; hunc sequitur donec aprum iuxta se ad dextram habeat.",
    ),
    [
      ...asTheHandsBegin(),
      does(
        "go at",
        { gait: stated("canter"), pace: stated("easy") },
        { words: up.both("at an easy canter", "leni cursu") },
      ),
      does(
        "hold",
        { object: stated(spear), hold: stated(taught.holds.byTheBoot), hand: inTheRight },
        { words: up.both("the spear low beside the right boot", "hasta demissa iuxta ocream dextram") },
      ),
      does(
        "ride",
        {
          figure: implied("part circle", "He follows it as far as the knot."),
          turn: stated(LEFT, up.both("the well upon his left", "puteo ad laevam")),
          size: paces(15, up.both("fifteen paces across", "quindecim passus latum")),
          about: stated(at(court.well), up.both("about the well", "circa puteum")),
          toward: stated(at(court.boar), up.both("until the boar is beside him", "donec aprum iuxta se")),
        },
        {
          words: up.both(
            "comes upon a circle about the well, fifteen paces across",
            "in circulum circa puteum venit, quindecim passus latum",
          ),
        },
      ),
    ],
  );
  book.note(
    "A knot is here a place and, in the next passage, a figure. The master has one word for both and rides them alike.",
    up.both(
      "There the knot is: for where the one circle ends the other begins, and neither the well nor the boar can say to which of them the place belongs.",
      "Ibi nodus est: nam ubi alter circulus finitur alter incipit, nec puteus nec aper dicere potest utri locus debeatur.",
    ),
  );
}

function theKnot({ part, exercise, words: { knot, pass }, doubts, taught }: Written): string {
  const { book, spear, threats, turns } = part;
  const { mutat, reinsToo } = doubts;
  const changes = knot.both("In the knot he changes the hand", "In nodo manum mutat");
  const back = knot.both(
    "when he comes into the knot again he changes it back",
    "cum iterum in nodum venerit, rursus mutat",
  );
  const halfway = implied(
    { is: "at", over: 1, of: 2 } as const,
    "The two circles are of one size, and the knot lies between them.",
  );
  const atTheEnd = stated(
    { is: "after" } as const,
    knot.both("when he comes into the knot again", "cum iterum in nodum venerit"),
  );
  const given = (from: "left" | "right", to: "left" | "right") => ({
    object: implied(spear, "It is in that hand."),
    from: implied(from, "That hand has it."),
    to: implied(to, "There are only two hands."),
    zone: implied("balance" as const, "The opening words: held where it balances."),
  });
  const reinsTo = (to: "left" | "right", words: typeof changes, timing: ActionDraft["timing"]): ActionDraft => ({
    ...does(
      "change reins",
      { to: implied(to, "The hand that has given up the spear is free.") },
      {
        words,
        onlyWhen: [mutat.reads("hand"), reinsToo.reads("yes")],
        because: implied(true, "On the principle that the reins change too."),
      },
    ),
    timing,
  });
  const step = exercise.step(
    "The knot",
    knot.both(
      "Now he rides the knot: once about the well, the well still upon his left, and from the same place once about the boar, the boar upon his right, and both circles of one size. In the knot he changes the hand; and when he comes into the knot again he changes it back, so that at the end of every round all is as it was.",
      "Nunc nodum equitat: semel circa puteum, puteo adhuc ad laevam, et ex eodem loco semel circa aprum, apro ad dextram, utroque circulo eiusdem magnitudinis. In nodo manum mutat; et cum iterum in nodum venerit, rursus mutat, ita ut in fine cuiusque orbis omnia sint ut fuerunt.",
    ),
    [
      does(
        "ride",
        {
          figure: implied(
            "figure of eight",
            "Two circles of one size from one place, the one left and the other right.",
          ),
          turn: stated(LEFT, knot.both("the well still upon his left", "puteo adhuc ad laevam")),
          size: paces(15, knot.both("both circles of one size", "utroque circulo eiusdem magnitudinis")),
          how: stated("first about the well, then about the boar"),
        },
        {
          words: knot.both(
            "once about the well, the well still upon his left, and from the same place once about the boar, the boar upon his right",
            "semel circa puteum, puteo adhuc ad laevam, et ex eodem loco semel circa aprum, apro ad dextram",
          ),
        },
      ),
      does("pass", given("right", "left"), { words: changes, onlyWhen: [mutat.reads("hand")], timing: halfway }),
      does(
        "carry",
        {
          object: implied(spear, "It has changed hands."),
          hand: implied("left", "That hand has it now."),
          bearing: implied(clock(11), "Beside the left boot as it was beside the right."),
        },
        { words: changes, onlyWhen: [mutat.reads("hand")], timing: halfway },
      ),
      reinsTo("right", changes, () => halfway),
      does(
        "cross the neck",
        { object: implied(spear, "It is what he has in the hand."), to: implied(LEFT, "It was on the right.") },
        { words: changes, onlyWhen: [mutat.reads("side")], timing: halfway },
      ),
      does("pass", given("left", "right"), { words: back, onlyWhen: [mutat.reads("hand")], timing: atTheEnd }),
      does(
        "cross the neck",
        {
          object: implied(spear, "It is what he has in the hand."),
          to: implied({ to: "right", viewpoint: "rider" } as const, "It was on the left."),
        },
        { words: back, onlyWhen: [mutat.reads("side")], timing: atTheEnd },
      ),
      reinsTo("left", back, () => atTheEnd),
      does(
        "hold",
        {
          object: implied(spear, "All is as it was."),
          hold: implied(taught.holds.byTheBoot, "All is as it was."),
          hand: inTheRight,
        },
        { words: knot.both("all is as it was", "omnia sint ut fuerunt"), timing: atTheEnd },
      ),
    ],
    {
      threat: stated(
        threats.mounted,
        pass.both(
          "When one is in the knot the other is somewhere upon the circles, and comes upon the left shoulder with the spear in his hand",
          "Cum alter in nodo est, alter alicubi in circulis est, et ad umerum sinistrum venit hastam manu tenens",
        ),
      ),
    },
  );
  exercise.advice(
    "Neither turn toward the other nor give way",
    [
      ...pass.both(
        "Let the rider neither turn toward him nor give way, but ride on as though the knot had been made for one",
        "Eques neque ad eum vertat neque cedat, sed pergat quasi nodus uni factus sit",
      ),
      ...pass.both(
        "For if both give way they meet, and if neither does they only pass.",
        "Nam si uterque cedit, concurrunt; si neuter, tantum praetereunt.",
      ),
    ],
    step,
    step,
  );
  exercise.advice(
    "At least two lengths of a horse between the riders",
    pass.both(
      "let there be at least two lengths of a horse between the riders",
      "inter equites duae saltem equi longitudines intersint",
    ),
    step,
    step,
  );
  book.mark("senses", turns.horse, pass.both("neither turn toward him", "neque ad eum vertat"));
  return step;
}

function faceToFace({ part, exercise, words: { end, hands }, doubts, taught }: Written, knot: string): string {
  const { book, spear, turns } = part;
  exercise.again(
    "Three times",
    end.both("This they do three times.", "Hoc ter faciunt."),
    {
      of: { is: "elements", from: knot, to: knot },
      manner: "as it is",
      except: [],
    },
    { times: implied(times(2), "Three times: once as it was told, and twice more.") },
  );
  exercise.step(
    "The first rides out of the knot and turns about",
    end.both(
      "The first then rides straight on out of the knot, eleven paces, which is as far as the wall allows, and turns to the left until he looks at the knot again",
      "Tum primus e nodo recta pergit, undecim passus, quatenus murus patitur, et ad sinistram vertit donec nodum rursus spectet",
    ),
    [
      does(
        "go at",
        { gait: supplied("walk", "Eleven paces to a wall, and then he turns about: nobody canters that.") },
        { because: supplied(true, "The book says nothing of the pace here.") },
      ),
      does(
        "ride",
        {
          figure: stated("straight", end.both("straight on", "recta pergit")),
          size: paces(11, end.both("eleven paces, which", "undecim passus")),
          how: stated("as far as the wall allows", end.both("as far as the wall allows", "quatenus murus patitur")),
        },
        { words: end.both("rides straight on out of the knot", "e nodo recta pergit") },
      ),
      does(
        "ride",
        {
          figure: stated("turn"),
          turn: stated(LEFT, end.both("to the left", "ad sinistram")),
          amount: implied("half", "He looks back at where he came from."),
        },
        {
          words: end.both(
            "turns to the left until he looks at the knot again",
            "ad sinistram vertit donec nodum rursus spectet",
          ),
        },
      ),
      does(
        "ride",
        { figure: implied("halt", "So they stand.") },
        { words: end.both("So they stand", "Ita adversi stant") },
      ),
    ],
    { role: THE_FIRST },
  );
  exercise.step(
    "The second halts in the knot",
    end.both("the second halts in the knot", "secundus in nodo consistit"),
    [does("ride", { figure: stated("halt") })],
    { role: THE_SECOND },
  );
  book.note(
    "Eleven paces are not quite nine metres. Two spears take four of them.",
    end.both(
      "So they stand face to face with eleven paces between them, which is room enough for two spears and not enough for an argument.",
      "Ita adversi stant, undecim passibus interpositis, quod duabus hastis satis est spatii, rixae parum.",
    ),
  );
  book.mark("senses", turns.horse, end.both("turns to the left", "ad sinistram vertit"));
  const shows = hands.both("each shows the other his empty hand", "alter alteri manum vacuam ostendit");
  const step = exercise.step(
    "The greeting, and the empty hand",
    hands.both(
      "Both make the greeting together, and lay the spear by the boot. Then each shows the other his empty hand",
      "Uterque simul salutationem facit et hastam ad ocream reponit. Deinde alter alteri manum vacuam ostendit",
    ),
    [
      does("go at", { gait: implied("halt", "So they stand.") }, { because: implied(true, "So they stand.") }),
      does(
        "perform",
        { movement: stated(taught.greeting), hand: inTheRight },
        { words: hands.both("Both make the greeting together", "Uterque simul salutationem facit") },
      ),
      does(
        "lay reins",
        { on: implied("neck", "A hand that has the reins is not empty.") },
        { words: shows, onlyWhen: [doubts.empty.reads("left")] },
      ),
      does(
        "plant",
        {
          object: implied(spear, "A hand that has the spear is not empty."),
          end: supplied("butt", "The point would not be polite."),
        },
        { words: shows, onlyWhen: [doubts.empty.reads("right")] },
      ),
      does(
        "release",
        { object: implied(spear, "It stands in the ground."), hand: inTheRight },
        { words: shows, onlyWhen: [doubts.empty.reads("right")] },
      ),
      does(
        "gesture",
        {
          hand: inCrux(doubts.empty, {
            left: implied("left", "It has put down the reins."),
            right: implied("right", "It has put down the spear."),
          }),
          toward: stated(inWords("the other rider")),
          how: implied("the open hand shown", "He shows it."),
        },
        { words: shows },
      ),
    ],
  );
  exercise.advice(
    "Raise the hand slowly",
    hands.both(
      "Let them do it slowly, since horses do not know the custom, and remember only that a hand that goes up comes down.",
      "Lente faciant, quia equi morem nesciunt, et hoc solum meminerunt, manum quae surgit descendere.",
    ),
    step,
    step,
  );
  book.note(
    "It is the nearest the book comes to a proof.",
    hands.both(
      "which is the custom of this house; for he who shows an empty hand shows that he has another",
      "qui mos huius domus est; nam qui manum vacuam ostendit, alteram se habere ostendit",
    ),
  );
  return step;
}

/** What is said of the whole of it. */
function atAnyTime({ part: { book }, exercise, words: { two, teacher, hall } }: Written) {
  exercise.advice(
    "Ride your own circles",
    two.both(
      "Neither hurries for the other or waits for him: each rides his own circles, and if both ride them truly they never meet. This is taught here as a great secret, and is true of most people.",
      "Neuter propter alterum festinat aut eum exspectat: suos quisque circulos equitat, et si uterque vere equitat numquam concurrunt. Hoc hic pro magno arcano docetur, et de plerisque hominibus verum est.",
    ),
    null,
    null,
  );
  exercise.advice(
    "Whoever teaches it listens",
    teacher.both(
      "He who teaches this stands at the well, from where he sees little, and listens; for two horses that keep one pace sound like one that is larger. When he hears two he lets them go on, for they hear it themselves. When he hears none, they have met.",
      "Qui hoc docet ad puteum stat, unde parum videt, et auscultat; nam duo equi qui eundem gradum servant tamquam unus maior sonant. Cum duos audit, pergere sinit, nam ipsi audiunt. Cum nullum audit, concurrerunt.",
    ),
    null,
    null,
  );
  book.note(
    "The two chairs are the only furniture in the book.",
    hall.both(
      "It can also be learned on foot by two who have no horses, and in winter it is learned so in the hall; the servants carry in two chairs, the one for the well and the other for the boar. Those who learned it so have ridden it at the first attempt. Those who learned it mounted have never been able to walk it, which I report and do not explain.",
      "Pedibus quoque a duobus qui equos non habent disci potest, et hieme sic in aula discitur; servi duas sellas inferunt, alteram pro puteo, alteram pro apro. Qui sic didicerunt, primo conatu equitaverunt. Qui equo didicerunt, pedibus numquam ire potuerunt; quod refero, non explico.",
    ),
  );
}
