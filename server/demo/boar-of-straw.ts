/** server/demo/boar-of-straw.ts - the fifth exercise of the invented book, complete: what is done, step by step.
 *  May import: siblings. Its words are in boar-words.ts, its places of doubt in boar-doubts.ts. Up by the elm's wall, down the
 *  court in three loops, a turn in the corner, and the length of the court at the boar. What becomes of the spear after the
 *  thrust rests on a drawing. */

import { boarDoubts } from "./boar-doubts.ts";
import { boarDrawing } from "./boar-drawing.ts";
import { type BoarWords, boarWords } from "./boar-words.ts";
import type { circleAboutTheWell } from "./circle-about-the-well.ts";
import { paces } from "./court.ts";
import { at, clock, does, implied, inCrux, LEFT, pictured, RIGHT, stated, supplied, times } from "./draft.ts";
import { ExerciseBuilder } from "./exercise-builder.ts";
import type { SecondPart } from "./second-part.ts";

type Taught = Pick<ReturnType<typeof circleAboutTheWell>, "holds" | "greeting">;

/** The exercise while it is being written. */
interface Written {
  part: SecondPart;
  exercise: ExerciseBuilder;
  words: BoarWords;
  doubts: ReturnType<typeof boarDoubts>;
  drawn: ReturnType<typeof boarDrawing>;
  taught: Taught;
}

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
  const written: Written = { part, exercise, words, doubts, drawn, taught };
  const out = toTheStair(written);
  const corner = downTheCourt(written);
  const charge = atTheBoar(written);
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
  return { id: exercise.id, doubts, steps: { out, corner, charge, thrust }, file: drawn.file };
}

const inTheRight = implied("right", "The opening words put the spear in the right hand.");

function toTheStair({ part, exercise, words: { out }, taught }: Written): string {
  const { book, court, spear, asTheHandsBegin } = part;
  book.note(
    "The Latin is in the second person for one sentence, and then remembers itself.",
    out.both(
      "The boar is angry because he cannot come to you; therefore you must go to him, and it is proper that he should see you coming by more roads than one.",
      "Aper irascitur quia ad te venire non potest; itaque tibi ad eum eundum est, et decet ut pluribus viis venientem videat.",
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
      does("go at", { gait: stated("canter") }, { words: out.both("at a canter", "cursu") }),
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

function downTheCourt({ part, exercise, words: { snake, corner }, doubts, taught }: Written): string {
  const { book, spear, turns } = part;
  const { whichWay, when } = doubts;
  const loops = exercise.step(
    "Down the court in three loops",
    snake.both(
      "From the stair he comes down the court as a snake comes down a road, in three loops from wall to wall, so that he crosses the middle first between the boar and the well and then between the well and the gate, and no loop is larger than its brothers.",
      "A gradibus per curiam descendit ut serpens per viam, tribus flexibus a muro ad murum, ita ut medium primo inter aprum et puteum transeat, deinde inter puteum et portam, neque ullus flexus fratribus maior sit.",
    ),
    [
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
      "So he comes to the gate, and rides straight on into the corner. There, with the spear lowered beside the boot, he turns upon the haunches until he has the whole court before him.",
      "Ita ad portam venit, et recta in angulum pergit. Ibi, hasta iuxta ocream demissa, super posteriora vertit, donec totam curiam ante se habeat.",
    ),
    [
      does(
        "ride",
        { figure: stated("straight"), how: stated("into the corner", corner.both("into the corner", "in angulum")) },
        { words: corner.both("rides straight on into the corner", "recta in angulum pergit") },
      ),
      does(
        "ride",
        {
          figure: stated("turn"),
          manner: stated("on the haunches", corner.both("upon the haunches", "super posteriora")),
          turn: inCrux(whichWay, {
            inward: implied(RIGHT, "The wall is on his left."),
            outward: implied(LEFT, "Along the wall on his left, and then along the other."),
          }),
          amount: inCrux(whichWay, {
            inward: implied("quarter", "From along the wall to along the court."),
            outward: implied("three quarters", "The same, the long way round."),
          }),
        },
        { words: corner.both("he turns upon the haunches", "super posteriora vertit") },
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
  book.mark("senses", turns.horse, corner.both("he turns upon the haunches", "super posteriora vertit"));
  return turn;
}

function atTheBoar({ part, exercise, words: { charge, thrust }, doubts, taught }: Written): string {
  const { book, court, spear, reins, threats } = part;
  const slackens = charge.both("slackens the reins", "habenas remittit");
  const shut = charge.both(
    "He takes the spear with either hand, shuts it beneath the arm",
    "Hastam utraque manu capit, sub brachio claudit",
  );
  const twoHands = book.hold(
    {
      name: "in both hands",
      for: ["shaft"],
      hands: "two",
      strong: true,
      note: "Who has the reins is another question.",
    },
    {
      zone: implied("balance", "The opening words: held where it balances."),
      secondZone: supplied("rear", "Two hands on one shaft need two places, and the arm is behind."),
      level: implied("middle", "Shut beneath the arm, and he looks over it."),
      bearing: implied(clock(12), "He rides at what it points at."),
      contact: stated({ with: "arm", degree: "bears" }),
    },
    shut,
  );
  const step = exercise.step(
    "At the boar",
    [
      ...charge.both(
        "Then he slackens the reins and rides at the boar, thirty-eight paces at full speed, on such a line that he will have the boar upon his right and beyond the boar the stair.",
        "Tum habenas remittit et in aprum equitat, triginta octo passus, pleno cursu, ea linea ut aprum ad dextram habiturus sit et ultra aprum gradus.",
      ),
      ...shut,
    ],
    [
      does(
        "keep",
        {
          object: stated(reins),
          hand: implied("left", "They were there, and one slackens what one has."),
          how: stated("slackened"),
        },
        { words: slackens, onlyWhen: [doubts.reins.reads("slack")], timing: stated({ is: "before" }) },
      ),
      does(
        "lay reins",
        { on: supplied("neck", "C: in collum.") },
        { words: slackens, onlyWhen: [doubts.reins.reads("neck")], timing: stated({ is: "before" }) },
      ),
      does(
        "hold",
        {
          object: stated(spear),
          hold: inCrux(doubts.hands, {
            one: implied(taught.holds.beneathTheArm, "As in the first exercise."),
            both: stated(twoHands, charge.both("with either hand", "utraque manu")),
          }),
          hand: inTheRight,
        },
        { words: shut },
      ),
      does(
        "go at",
        { gait: implied("gallop", "Full speed is no canter."), pace: stated("full speed") },
        { words: charge.both("at full speed", "pleno cursu") },
      ),
      does(
        "ride",
        {
          figure: implied("charge", "At full speed, at something."),
          size: paces(38, charge.both("thirty-eight paces", "triginta octo passus")),
          toward: implied(at(court.stair), "Beyond the boar he is to have the stair."),
          how: stated(
            "the boar upon his right",
            charge.both("he will have the boar upon his right", "aprum ad dextram habiturus sit"),
          ),
        },
        { words: charge.both("rides at the boar", "in aprum equitat") },
      ),
    ],
    {
      threat: stated(
        threats.onFoot,
        thrust.both(
          "Behind the boar stands one on foot with a stave, who is to strike at the spear as it comes",
          "Post aprum stat pedes cum fuste, qui hastam venientem feriat",
        ),
      ),
    },
  );
  exercise.advice(
    "Look at the place and not at the boar",
    charge.both(
      "and looks over it at the place he means and not at the boar, whose face is not well made",
      "et super eam locum spectat quem vult, non aprum, cuius facies parum bene facta est",
    ),
    step,
    step,
  );
  book.note(
    "It is the one secret in the book that the book keeps from the rider and not from the reader.",
    thrust.both(
      "but he has been told to be late, and let the rider not know it",
      "sed tardus esse iussus est, idque eques nesciat",
    ),
  );
  return step;
}

/** The thrust and what follows in one breath; then what only the drawing shows. */
function pastTheBoar({ part, exercise, words: { thrust, breath }, doubts, drawn }: Written): string {
  const { court, spear, threats } = part;
  const lost = breath.both("he […] the spear", "hastam re[....]it");
  const inPassing = supplied({ is: "exact" as const, of: 2.4 }, "To pass a boar of straw takes a length of the horse.");
  const thrusting = exercise.step(
    "The thrust, in passing",
    [
      ...thrust.both(
        "When the boar's shoulder is beside his knee he thrusts, low and a little before him, and does not wait to see what he has done.",
        "Cum armus apri iuxta genu eius est, ferit demisse et paulum ante se, neque exspectat ut videat quid fecerit.",
      ),
      ...breath.both("In the same breath he […] the spear", "Eodem spiritu hastam re[....]it"),
    ],
    [
      does(
        "ride",
        {
          figure: implied("straight", "He does not wait."),
          toward: implied(at(court.stair), "He is on the line to it."),
          size: inPassing,
        },
        { because: implied(true, "He does not wait.") },
      ),
      does(
        "go at",
        { gait: implied("gallop", "He does not wait."), pace: implied("full speed", "He does not wait.") },
        { because: implied(true, "He does not wait.") },
      ),
      does(
        "thrust",
        {
          object: stated(spear),
          hand: inTheRight,
          bearing: implied(clock(1), "Low and a little before him, on the side of the boar."),
          level: stated("low"),
        },
        {
          words: thrust.both("he thrusts, low and a little before him", "ferit demisse et paulum ante se"),
          timing: stated(
            { is: "before" },
            thrust.both("When the boar's shoulder is beside his knee", "Cum armus apri iuxta genu eius est"),
          ),
          purpose: implied("attack", "It is a boar."),
          threat: implied(threats.onFoot, "He is to strike at the spear as it comes."),
        },
      ),
      does(
        "carry",
        { object: stated(spear), hand: inTheRight, how: implied("drawn back out of the straw", "retrahit") },
        { words: lost, onlyWhen: [doubts.then.reads("draws")] },
      ),
      does(
        "plant",
        {
          object: stated(spear),
          at: implied(at(court.boar), "In the boar."),
          end: implied("head", "One thrusts with the head."),
        },
        { words: lost, onlyWhen: [doubts.then.reads("leaves")] },
      ),
      does(
        "release",
        { object: stated(spear), hand: inTheRight },
        { words: lost, onlyWhen: [doubts.then.reads("leaves")] },
      ),
    ],
  );
  exercise.step(
    "The spear behind him",
    [],
    [
      does(
        "ride",
        {
          figure: implied("straight", "He rides on."),
          toward: implied(at(court.stair), "He is on the line to it, and looks there."),
          size: inPassing,
        },
        { words: breath.both("rides on", "pergit") },
      ),
      does(
        "go at",
        { gait: implied("canter", "It is the canter that slackens.") },
        {
          words: breath.both("letting the canter slacken of itself", "cursum sua sponte remittens"),
        },
      ),
      does(
        "carry",
        {
          object: pictured(spear, drawn.spear),
          hand: pictured("right", drawn.spear),
          bearing: pictured(clock(5), drawn.spear),
          level: pictured("low", drawn.spear),
        },
        {
          because: pictured(true, drawn.spear),
          timing: supplied({ is: "before" }, "The drawing has no before; it is what he does first."),
        },
      ),
      does("look", { toward: pictured(at(court.stair), drawn.face) }, { because: pictured(true, drawn.face) }),
    ],
    {
      onlyWhen: [doubts.then.reads("draws")],
      because: pictured(true, drawn.spear),
      note: "No word of the text has the spear behind him. It is so only in the drawing.",
    },
  );
  exercise.advice(
    "Do not look back",
    breath.both(
      "Let him not look behind him. A boar that is dead will be dead when he comes back, and one that is not will make it known.",
      "Ne respiciat. Aper mortuus redeunti mortuus erit; qui non est, ipse indicabit.",
    ),
    thrusting,
    null,
  );
  part.book.note(
    "The ball is thrown at nothing twice in this exercise.",
    breath.both("as a ball does that was thrown at nothing", "sicut pila quae in nihil iacta est"),
  );
  return thrusting;
}

function beforeTheStair({ part, exercise, words: { stair, beginner }, doubts, taught }: Written, out: string) {
  const { book, court, spear } = part;
  const gathers = stair.both("gathers horse and reins together", "equum et habenas colligit");
  const end = exercise.step(
    "Before the stair",
    stair.both(
      "Before the stair he halts, gathers horse and reins together, and makes the greeting as I have taught it, with the spear that was in the boar; it need not be wiped.",
      "Ante gradus consistit, equum et habenas colligit, et salutationem facit ut docui, ea hasta quae in apro fuit; tergere non opus est.",
    ),
    [
      does(
        "ride",
        { figure: implied("straight", "He has been on this line since the corner."), toward: stated(at(court.stair)) },
        { words: stair.both("Before the stair he halts", "Ante gradus consistit") },
      ),
      does("ride", { figure: stated("halt") }, { words: stair.both("he halts", "consistit") }),
      does(
        "change reins",
        { to: implied("left", "As the opening words have them.") },
        { words: gathers, onlyWhen: [doubts.reins.reads("neck")] },
      ),
      does(
        "release",
        { object: implied(spear, "It is in both hands."), hand: implied("left", "It is wanted for the reins.") },
        { words: gathers, onlyWhen: [doubts.hands.reads("both")] },
      ),
      does(
        "perform",
        {
          movement: stated(taught.greeting),
          hand: inTheRight,
          object: stated(spear, stair.both("with the spear that was in the boar", "ea hasta quae in apro fuit")),
        },
        { words: stair.both("makes the greeting as I have taught it", "salutationem facit ut docui") },
      ),
    ],
  );
  book.note(
    "How near is right is not said, only how near is wrong.",
    stair.both(
      "If those who sit upon the stair have risen, he rode too near them; if they are asleep, he rode too far away; in neither case let him ask.",
      "Si qui in gradibus sedent surrexerunt, nimis prope equitavit; si dormiunt, nimis procul; neutro casu interroget.",
    ),
  );
  exercise.advice(
    "A beginner rides it at a walk and thrusts at nothing",
    beginner.both(
      "For a beginner let the straw be taken from the stake and the stake be taken away, and let him ride the same lines at a walk and thrust at nothing; for nothing is where most men's spears go, and it is useful to know the way there. When he no longer looks down give him back the boar, and after the boar the man.",
      "Tironi stramen a palo tollatur et palus auferatur, easdemque lineas passu equitet et in nihil feriat; nam in nihil plerorumque hastae eunt, et illuc viam novisse prodest. Cum deorsum iam non spectat, redde ei aprum, et post aprum hominem.",
    ),
    out,
    end,
  );
}
