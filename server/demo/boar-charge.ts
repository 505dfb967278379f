/** server/demo/boar-charge.ts - the fifth exercise of the invented book, its second half: the charge, the thrust, and what
 *  becomes of the spear, which rests on a drawing. May import: siblings. */
import type { boarDoubts } from "./boar-doubts.ts";
import type { boarDrawing } from "./boar-drawing.ts";
import type { BoarWords } from "./boar-words.ts";
import type { circleAboutTheWell } from "./circle-about-the-well.ts";
import { paces } from "./court.ts";
import { type ActionDraft, at, clock, does, implied, inCrux, pictured, stated, supplied } from "./draft.ts";
import type { ExerciseBuilder } from "./exercise-builder.ts";
import type { SecondPart } from "./second-part.ts";

export type Taught = Pick<ReturnType<typeof circleAboutTheWell>, "holds" | "greeting">;

/** The exercise while it is being written. */
export interface BoarWritten {
  part: SecondPart;
  exercise: ExerciseBuilder;
  words: BoarWords;
  doubts: ReturnType<typeof boarDoubts>;
  drawn: ReturnType<typeof boarDrawing>;
  taught: Taught;
  /** What the horse goes at in each step; a beginner goes at a walk. */
  gaits: ActionDraft[];
  /** What a beginner does otherwise, since nothing stands there. */
  atNothing: Partial<Record<"charge" | "thrust" | "draws" | "leaves" | "letsGo", ActionDraft>>;
}

export const inTheRight = implied("right", "The opening words put the spear in the right hand.");

/** An action of the gait, remembered for the version of beginners. */
export function goes(gaits: ActionDraft[], gait: ActionDraft): ActionDraft {
  gaits.push(gait);
  return gait;
}

/** An act that a beginner does otherwise. */
function otherwise(
  atNothing: BoarWritten["atNothing"],
  name: keyof BoarWritten["atNothing"],
  action: ActionDraft,
): ActionDraft {
  atNothing[name] = action;
  return action;
}

export function atTheBoar({
  part,
  exercise,
  words: { charge, thrust },
  doubts,
  taught,
  gaits,
  atNothing,
}: BoarWritten): {
  charge: string;
  twoHands: string;
} {
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
      goes(
        gaits,
        does(
          "go at",
          { gait: implied("gallop", "Full speed is no canter."), pace: stated("full speed") },
          { words: charge.both("at full speed", "pleno cursu") },
        ),
      ),
      otherwise(
        atNothing,
        "charge",
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
  return { charge: step, twoHands };
}

/** The thrust and what follows in one breath; then what only the drawing shows. */
export function pastTheBoar({ part, exercise, words, doubts, drawn, gaits, atNothing }: BoarWritten): string {
  const { thrust, breath } = words;
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
      goes(
        gaits,
        does(
          "go at",
          { gait: implied("gallop", "He does not wait."), pace: implied("full speed", "He does not wait.") },
          { because: implied(true, "He does not wait.") },
        ),
      ),
      otherwise(
        atNothing,
        "thrust",
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
      ),
      otherwise(
        atNothing,
        "draws",
        does(
          "carry",
          { object: stated(spear), hand: inTheRight, how: implied("drawn back out of the straw", "retrahit") },
          { words: lost, onlyWhen: [doubts.then.reads("draws")] },
        ),
      ),
      otherwise(
        atNothing,
        "leaves",
        does(
          "plant",
          {
            object: stated(spear),
            at: implied(at(court.boar), "In the boar."),
            end: implied("head", "One thrusts with the head."),
          },
          { words: lost, onlyWhen: [doubts.then.reads("leaves")] },
        ),
      ),
      otherwise(
        atNothing,
        "letsGo",
        does(
          "release",
          { object: stated(spear), hand: inTheRight },
          { words: lost, onlyWhen: [doubts.then.reads("leaves")] },
        ),
      ),
    ],
  );
  exercise.step(
    "The spear behind him",
    breath.both("and rides on, letting the canter slacken of itself", "et pergit, cursum sua sponte remittens"),
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
      goes(
        gaits,
        does(
          "go at",
          { gait: implied("canter", "It is the canter that slackens.") },
          { words: breath.both("letting the canter slacken of itself", "cursum sua sponte remittens") },
        ),
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

export function beforeTheStair(
  { part, exercise, words: { stair, beginner }, doubts, taught, gaits }: BoarWritten,
  out: string,
) {
  const { book, court, spear } = part;
  const gathers = stair.both("gathers horse and reins together", "equum et habenas colligit");
  const end = exercise.step(
    "Before the stair",
    stair.both(
      "Before the stair he halts, gathers horse and reins together, and makes the greeting as I have taught it, with the spear that was in the boar; it need not be wiped.",
      "Ante gradus consistit, equum et habenas colligit, et salutationem facit ut docui, ea hasta quae in apro fuit; tergere non opus est.",
    ),
    [
      goes(
        gaits,
        does(
          "go at",
          { gait: supplied("trot", "The canter has slackened of itself, and he is about to halt.") },
          { because: supplied(true, "A ball that was thrown at nothing does not halt at a canter.") },
        ),
      ),
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
