/** server/demo/boar-doubts.ts - the fifth exercise of the invented book: where it can be understood in more than one way.
 *  May import: siblings. */
import type { BoarWords } from "./boar-words.ts";
import { ruledOut } from "./builder.ts";
import { ASKED_ON, COPYIST, EDITOR, HORSES, SAT_AGAIN, TRANSLATOR } from "./people.ts";
import type { SecondPart } from "./second-part.ts";

export type BoarDoubts = ReturnType<typeof boarDoubts>;
/** Parts of the drawing, by what they show. */
export interface Drawn {
  spear: string;
  face: string;
  straw: string;
}

export function boarDoubts(part: SecondPart, exercise: string, words: BoarWords, drawn: Drawn) {
  return { ...inTheCorner(part, exercise, words), ...atTheBoar(part, exercise, words, drawn) };
}

function inTheCorner({ book }: SecondPart, exercise: string, { corner }: BoarWords) {
  const turns = corner.both(
    "he turns until he has the whole court before him",
    "vertit donec totam curiam ante se habeat",
  );
  const whichWay = book.crux({
    exercise,
    is: "silent",
    title: "Which way he turns in the corner",
    note: "He rides into it with one wall on his left and comes to another. Out of it there are a short way and a long one.",
    words: turns,
    readings: {
      inward: {
        title: "to the right, off the wall: a quarter",
        argument:
          "The court lies there. Nobody who is told to turn until he has it before him goes round the other way.",
        holder: EDITOR,
      },
      outward: {
        title: "to the left, along both walls: three quarters",
        argument:
          "“Until he has the whole court before him” is a long way to say a quarter. And a horse that has been shown two " +
          "walls, one after the other, leaves the third side with conviction.",
        holder: HORSES,
      },
    },
  });
  const lowered = corner.both("with the spear lowered beside the boot", "hasta iuxta ocream demissa");
  const when = book.crux({
    exercise,
    is: "ambiguous",
    title: "Lowered for the turn, or by the turn",
    note: "An ablative absolute is done before its verb, or while it is done, or so that it is done. Here it matters to the horse.",
    words: lowered,
    readings: {
      after: {
        title: "he turns, and comes out of it with the spear lowered",
        argument:
          "In the first exercise he raises the spear “lest it go before him into the bend”. The master will not have " +
          "forgotten in the fifth what he gave a reason for in the first.",
        holder: EDITOR,
        evidence: [
          { is: "parallel", where: "A f. 3r, ll. 10–18", text: "“... lest it go before him into the bend ...”" },
        ],
      },
      before: {
        title: "he lowers the spear and then turns",
        argument: "The words come in this order, and the book is written for people who ride while it is read to them.",
        holder: TRANSLATOR,
      },
    },
  });
  book.question(
    {
      exercise,
      crux: whichWay,
      text: "Will a cantering horse turn three quarters in that corner, or does he stop and think?",
      to: HORSES,
      by: "trial",
      asked: SAT_AGAIN,
      effort: 4,
      answers: [
        { label: "He turns", allows: [whichWay.reads("inward", "outward")] },
        { label: "He thinks", allows: [whichWay.reads("inward")] },
      ],
    },
    turns,
  );
  return { whichWay, when };
}

function atTheBoar({ book }: SecondPart, exercise: string, words: BoarWords, drawn: Drawn) {
  const { charge, breath, stair } = words;
  const slackens = charge.both("slackens the reins", "habenas remittit");
  const reins = book.crux({
    exercise,
    is: "witnesses differ",
    title: "Slackened, or let go",
    note: "“Remittere” is to slacken a thing or to send it away. C f. 3v adds “in collum”, upon the neck; A does not.",
    words: slackens,
    readings: {
      slack: {
        title: "slackened, in the left hand still (A)",
        argument:
          "Ten lines on the canter is “slackened” with the same word, and nobody thinks that he lets go of the canter.",
        holder: TRANSLATOR,
        speaksFor: breath.both("letting the canter slacken of itself", "cursum sua sponte remittens"),
      },
      neck: {
        title: "let go, upon the neck (C)",
        argument:
          "“Gathers horse and reins together” before the stair: one gathers what lies about. C was written by somebody " +
          "who had seen it done.",
        holder: COPYIST,
        speaksFor: stair.both("gathers horse and reins together", "equum et habenas colligit"),
      },
    },
  });
  const either = charge.both("with either hand", "utraque manu");
  const hands = book.crux({
    exercise,
    is: "translator's doubt",
    title: "Either hand",
    note: "“Either” was chosen because it is as bad in English as “utraque” is in Latin.",
    words: either,
    readings: {
      one: {
        title: "with the one or the other; here the right",
        argument:
          "He means: whichever has it. The boar may be set up on the other side on another day, and the master is thinking " +
          "of that day.",
        holder: EDITOR,
      },
      both: {
        title: "with both hands",
        argument: "“Uterque” is each of two, and each of two is both. Boys have been beaten for less.",
        holder: TRANSLATOR,
      },
    },
  });
  book.question(
    {
      exercise,
      crux: hands,
      text: "Does the book ever write “utraque” where it can only mean one of the two?",
      to: TRANSLATOR,
      by: "person",
      asked: ASKED_ON,
      effort: 1,
      answers: [
        { label: "Yes", allows: [hands.reads("one", "both")] },
        { label: "No", allows: [hands.reads("both")] },
      ],
    },
    either,
  );
  const lost = breath.both("In the same breath he […] the spear", "hastam re[....]it");
  const then = book.crux({
    exercise,
    is: "corrupt",
    title: "What he does with the spear in the same breath",
    note: "A has “re”, room for four letters or five, and “it”. C leaves the sentence out.",
    words: lost,
    readings: {
      draws: {
        title: "draws it back (retrahit)",
        argument:
          "The drawing at the foot of the same page shows the spear behind the rider and none in the boar. And “retrahit” " +
          "has exactly four letters to lose.",
        holder: EDITOR,
        evidence: [
          { is: "picture", region: drawn.spear },
          { is: "picture", region: drawn.straw },
        ],
        speaksFor: stair.both("with the spear that was in the boar", "ea hasta quae in apro fuit"),
      },
      leaves: {
        title: "leaves it (relinquit)",
        argument:
          "It is what one does with a spear in a boar, at that speed. It has five letters to lose, but the thumb was not a " +
          "small one; and he can have been given it back afterward.",
        holder: TRANSLATOR,
        speaksAgainst: stair.both("with the spear that was in the boar", "ea hasta quae in apro fuit"),
      },
      gives: {
        title: "gives it back (reddit)",
        argument: "The shortest of the three, and the politest.",
        holder: EDITOR,
        status: ruledOut(
          SAT_AGAIN,
          null,
          "There is nobody there to give it to but the boar and a man who has been told to be late.",
        ),
      },
    },
  });
  book.question(
    {
      exercise,
      crux: then,
      text: "Under a raking light, do the four letters of “re....it” leave a dent?",
      to: "whoever keeps the lamp at Varne House",
      by: "person",
      asked: SAT_AGAIN,
      effort: 2,
      answers: [
        { label: "A long letter among them", allows: [then.reads("draws", "leaves")] },
        { label: "A q, without doubt", allows: [then.reads("leaves")] },
        { label: "Nothing to be seen", allows: [then.reads("draws", "leaves")] },
      ],
    },
    lost,
  );
  return { reins, hands, then };
}
