/** server/demo/spears-doubts.ts - the fourth exercise of the invented book: where it can be understood in more than one way.
 *  May import: siblings. Seven places of doubt that lean on one another: few of their combinations can be ridden. */
import { adopted } from "./builder.ts";
import { ASKED_ON, COPYIST, EDITOR, HORSES, SAT_AGAIN, TRANSLATOR } from "./people.ts";
import type { SecondPart } from "./second-part.ts";
import type { SpearsWords } from "./spears-words.ts";

export type SpearsDoubts = ReturnType<typeof spearsDoubts>;

export function spearsDoubts(part: SecondPart, exercise: string, words: SpearsWords) {
  const atTheTrough = doubtsAtTheTrough(part, exercise, words);
  const atTheStone = doubtsAtTheStone(part, exercise, words);
  const { book } = part;
  const { ring } = words;
  const theOne = ring.both("hangs the one in the ring", "alteram in anulo suspendit");
  const hung = book.crux({
    exercise,
    is: "ambiguous",
    title: "Which of the two is hung up",
    note: "“Alteram ... alteram”: the one, the other. Both are feminine, both are spears, and both are tired.",
    words: theOne,
    readings: {
      lesser: {
        title: "the lesser; his own goes back to the boot",
        argument:
          "“Reponit”, lays back: only his own was ever by the boot. And the lesser belongs to those who like to have " +
          "something to be rid of.",
        holder: HORSES,
        speaksFor: ring.both("lays the other back by the boot", "alteram ad ocream reponit"),
      },
      own: {
        title: "his own; he rides home with the lesser",
        argument:
          "Otherwise there is nothing for those on the stair to count: one hangs there either way, and only this way has " +
          "anything been exchanged.",
        holder: EDITOR,
        excludes: [atTheTrough.putAway.reads("ground")],
      },
    },
  });
  return { ...atTheTrough, ...atTheStone, hung };
}

function doubtsAtTheTrough(part: SecondPart, exercise: string, { taken, two, ring }: SpearsWords) {
  const { book, sittingAgain, groomsNotes } = part;
  /** Of the free hand, on foot; it is written down with the other trials. */
  const trial = book.rows.newId();
  const putsAway = taken.both("puts away", "seponit");
  const putAway = book.crux({
    exercise,
    is: "witnesses differ",
    title: "Where he puts his own spear",
    note: "A has “seponit”, puts away, and does not say where; C f. 2r has “deponit”, sets down.",
    words: putsAway,
    readings: {
      thigh: {
        title: "under his thigh",
        argument:
          "Away is out of the hands but not out of the saddle. A shaft under the thigh is held by what sits on it, and " +
          "both hands are the rider's own again.",
        holder: HORSES,
      },
      arm: {
        title: "beneath his arm, the right hand still upon it",
        argument:
          "The first exercise taught one way of shutting a spear up so that it can be forgotten. He who puts a thing away " +
          "need not let go of it.",
        holder: TRANSLATOR,
      },
      ground: {
        title: "into the ground, in the place of the other (deponit, as in C)",
        argument: "A spear for a spear is a fair exchange, and leaves the trough as it was found.",
        holder: COPYIST,
        speaksAgainst: two.both("Now he has two spears", "Nunc duas hastas habet"),
      },
    },
  });
  book.question(
    {
      exercise,
      crux: putAway,
      text: "Is “deponit” in C by the first hand, or written over something?",
      to: "whoever next has C in daylight",
      by: "person",
      asked: SAT_AGAIN,
      effort: 2,
      answers: [
        { label: "By the first hand", allows: [putAway.reads("thigh", "arm", "ground")] },
        { label: "Over an erasure", allows: [putAway.reads("thigh", "arm")] },
      ],
    },
    putsAway,
  );

  const freeHand = taken.both("with the free hand", "manu vacua");
  const free = book.crux({
    exercise,
    is: "silent",
    title: "Which hand is the free one",
    note: "“Vacua” is empty, free, with nothing to do. The same word comes again where two riders greet each other (A f. 10r).",
    words: freeHand,
    readings: {
      right: {
        title: "the right: it has just put its spear away",
        argument:
          "The left hand has the reins by the opening words, and nothing is said to have taken them out of it. Then the " +
          "free hand is the other.",
        holder: TRANSLATOR,
        status: adopted(
          SAT_AGAIN,
          sittingAgain,
          "The left has the reins. Nobody at the table could think of a hand more.",
        ),
      },
      left: {
        title: "the left: the reins are somewhere else by then",
        argument:
          "A hand is free when it has put something down, and nothing says that only a spear can be put down. At the end " +
          "he takes the reins “again” into the left, so they had been out of it.",
        holder: HORSES,
        speaksFor: ring.both("takes the reins again into the left hand", "habenas rursus in manum sinistram recipit"),
        evidence: [{ is: "trial", trial }],
      },
    },
  });

  const where = taken.both("the reins, which are where he left them", "habenas quaerat, quae sunt ubi eas reliquit");
  const reins = book.crux({
    exercise,
    is: "ambiguous",
    title: "Where he left the reins",
    note: "The master says that they are where they were left, which is true of most things.",
    words: where,
    readings: {
      hand: {
        title: "in the left hand: he never moved them",
        argument: "What is not spoken of stays as it was. He need not look for them because they are in his hand.",
        holder: TRANSLATOR,
        speaksAgainst: ring.both(
          "takes the reins again into the left hand",
          "habenas rursus in manum sinistram recipit",
        ),
      },
      neck: {
        title: "on the neck of the horse",
        argument:
          "One leaves a thing by letting go of it, and at the halt a horse carries his own reins. That they are not to be " +
          "looked for means that they could be.",
        holder: HORSES,
        evidence: [
          {
            is: "parallel",
            source: groomsNotes,
            where: "leaf 6",
            text: "“He that would use both hands let him first make the neck a third.”",
          },
        ],
      },
      right: {
        title: "in his right hand",
        argument:
          "The spear was put away so that the hand could be used. If it is not to take the other spear it must be to hold " +
          "the reins, as by the other wall in the second exercise.",
        holder: EDITOR,
        evidence: [{ is: "parallel", where: "A f. 4v, ll. 1–2", text: "“... and after it the reins into his right.”" }],
      },
    },
  });
  book.question(
    {
      exercise,
      crux: reins,
      text: "With the gate shut, will a quiet horse stand at the trough and then cross the court with the reins on his neck?",
      to: HORSES,
      by: "trial",
      asked: SAT_AGAIN,
      effort: 4,
      answers: [
        { label: "Yes", allows: [reins.reads("neck", "right", "hand")] },
        { label: "No", allows: [reins.reads("right", "hand")] },
      ],
    },
    where,
  );
  return { putAway, free, reins, trial };
}

function doubtsAtTheStone({ book }: SecondPart, exercise: string, { across, turn }: SpearsWords) {
  const toTheLeft = across.both("to the left, with the spear lowered", "ad laevam, hasta demissa");
  const left = book.crux({
    exercise,
    is: "ambiguous",
    title: "To the left: the way, or the spear",
    note: "Two commas, both of them ours.",
    words: toTheLeft,
    readings: {
      way: {
        title: "he leaves the wall to the left; the spear is lowered ahead",
        argument:
          "He can leave the wall to no other side, but the master has been known to say what cannot be otherwise.",
        holder: EDITOR,
      },
      spear: {
        title: "the spear is lowered to the left",
        argument:
          "A man with the wall on his right does not need to be told which way the court lies. The words are worth their " +
          "ink only if they are about the spear.",
        holder: TRANSLATOR,
      },
    },
  });

  const vertit = turn.both("to the right, he turns", "in dextram vertit");
  const turning = book.crux({
    exercise,
    is: "ambiguous",
    title: "To the right he turns: horse or spear",
    note:
      "“In dextram” wants a noun: the right side (partem), or the right hand (manum). “Vertit” means the horse without " +
      "an object and the spear with one, and whether there is an object is the question.",
    words: vertit,
    readings: {
      horse: {
        title: "the horse turns to the right: a small circle",
        argument:
          "Without an object it is the horse, here as everywhere. With the wall on his left there is room for it.",
        holder: TRANSLATOR,
        evidence: [
          { is: "parallel", where: "A ff. 3r and 4r", text: "“vertit” without an object: both times the horse." },
        ],
      },
      spear: {
        title: "he turns the spear over into the right hand",
        argument:
          "The sentence began with the point, and the point is still what it is about. It would also explain how a rider " +
          "who took the lesser spear with his left comes to lay a spear by his right boot. Of the side of a horse the master " +
          "writes “ad”, here he writes “in”.",
        holder: EDITOR,
        evidence: [
          { is: "parallel", where: "A f. 9v, ll. 21–25", text: "“ad sinistram vertit”, of a horse and nothing else." },
        ],
      },
    },
  });
  book.question(
    {
      exercise,
      crux: turning,
      text: "Can “in dextram” without a noun be a hand in this book?",
      to: TRANSLATOR,
      by: "person",
      asked: ASKED_ON,
      effort: 2,
      answers: [
        { label: "Never: always the side", allows: [turning.reads("horse")] },
        { label: "Here it must be", allows: [turning.reads("spear")] },
        { label: "Either", allows: [turning.reads("horse", "spear")] },
      ],
    },
    vertit,
  );
  const rounds = book.crux({
    exercise,
    is: "witnesses differ",
    title: "The small circle once, or twice",
    note: "A has “semel”, C f. 2v has “bis”. Of a spear that changes hands it could not be asked.",
    arisesWhen: [turning.reads("horse")],
    words: turn.both("once", "semel"),
    readings: {
      once: { title: "once, as in A", argument: "One pen and one ink with the rest of the page.", holder: EDITOR },
      twice: {
        title: "twice, as in C",
        argument:
          "C was used by people who rode it, and they may have found that once was not enough to see where one is.",
        holder: COPYIST,
      },
    },
  });
  return { left, turning, rounds };
}
