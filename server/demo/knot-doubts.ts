/** server/demo/knot-doubts.ts - the sixth exercise of the invented book: where it can be understood in more than one way, and
 *  a principle that reaches through the whole book. May import: siblings. */
import type { KnotWords } from "./knot-words.ts";
import { ASKED_ON, EDITOR, HORSES, SAT_AGAIN, TRANSLATOR } from "./people.ts";
import type { SecondPart } from "./second-part.ts";

export type KnotDoubts = ReturnType<typeof knotDoubts>;

export function knotDoubts(part: SecondPart, exercise: string, words: KnotWords) {
  return { reinsToo: principle(part, words), ...inTheKnot(part, exercise, words), ...between(part, exercise, words) };
}

/** Whoever changes the spear changes the reins: for it and against it from all over the book. */
function principle({ book, words: { lesserSpear } }: SecondPart, { knot }: KnotWords) {
  const changes = lesserSpear.both("where I say that he changes the hand", "Ubi autem dico eum manum mutare");
  const reinsToo = book.crux({
    exercise: null,
    is: "ambiguous",
    scope: "principle",
    title: "When the spear changes hands, whether the reins change too",
    note: "It bears on every place where a spear is given over and nothing is said of the reins.",
    words: changes,
    readings: {
      yes: {
        title: "the reins change with it",
        argument:
          "That is why the reader is not to ask: it is both. The hand that gets the spear must get rid of the reins, or the " +
          "sentence before this one was for nothing.",
        holder: EDITOR,
        speaksFor: lesserSpear.both(
          "the hand that has a spear has not the reins",
          "quae manus hastam habet, habenas non habet",
        ),
        evidence: [
          {
            is: "parallel",
            where: "A f. 4v, ll. 1–2",
            text: "“... and after it the reins into his right”: both, in order.",
          },
        ],
      },
      no: {
        title: "the reins stay where they are",
        argument:
          "“Which of them he can do without”: of the two he does without one. A book that says of a gate that it is at the " +
          "foot of the court would have said this.",
        holder: TRANSLATOR,
        speaksFor: lesserSpear.both("consider which of them he can do without", "cogitet utra re carere possit"),
        speaksAgainst: knot.both("all is as it was", "omnia sint ut fuerunt"),
      },
    },
  });
  return reinsToo;
}

function inTheKnot({ book }: SecondPart, exercise: string, { two, knot }: KnotWords) {
  const changes = knot.both("In the knot he changes the hand", "In nodo manum mutat");
  const mutat = book.crux({
    exercise,
    is: "ambiguous",
    title: "In the knot he changes the hand",
    note: "Riders have always said “to change the hand” of a horse that goes from one rein to the other. This rider has hands of his own.",
    words: changes,
    readings: {
      hand: {
        title: "the spear goes to the other hand",
        argument: "A hand is a hand. It is changed where the circles are, so that the spear is always on the outside.",
        holder: TRANSLATOR,
      },
      side: {
        title: "the spear goes to the other side of the neck, in the same hand",
        argument:
          "It has to be done at a canter twice in every round, by two people who are looking at each other. Nobody gives " +
          "anything to anybody then; one lifts the point over the neck.",
        holder: HORSES,
      },
      rein: {
        title: "the horse changes the rein; the spear stays",
        argument:
          "It is what the words mean wherever horses are taught, and it is what happens in the knot, whether or not " +
          "anybody writes it down.",
        holder: EDITOR,
      },
    },
  });
  book.question(
    {
      exercise,
      crux: mutat,
      text: "Is “manum mutare” said of a horse anywhere in the book outside the knot?",
      to: TRANSLATOR,
      by: "person",
      asked: ASKED_ON,
      effort: 1,
      answers: [
        { label: "Yes", allows: [mutat.reads("hand", "side", "rein")] },
        { label: "No", allows: [mutat.reads("hand", "side")] },
      ],
    },
    changes,
  );
  const against = two.both("until the first is over against him", "donec primus ex adverso sit");
  const setsOut = book.crux({
    exercise,
    is: "ambiguous",
    title: "Over against him",
    note: "He who waits is at the foot of the court. Two places lie over against him, the one behind the other.",
    words: against,
    readings: {
      stair: {
        title: "when he comes round by the stair",
        argument:
          "Over against the foot of the court is the stair; the opening words of the book are about nothing else. And from " +
          "the knot the two would be at each other's heels for three rounds.",
        holder: HORSES,
      },
      knot: {
        title: "when he comes into the knot",
        argument: "There he is first to be seen straight ahead, over the well, and there the exercise begins.",
        holder: TRANSLATOR,
      },
    },
  });
  book.question(
    {
      exercise,
      crux: setsOut,
      text: "With somebody who is not related to you, at one pace: from which start do two horses keep clear for three rounds?",
      to: HORSES,
      by: "trial",
      asked: SAT_AGAIN,
      effort: 5,
      answers: [
        { label: "From the knot", allows: [setsOut.reads("knot")] },
        { label: "From the stair", allows: [setsOut.reads("stair")] },
        { label: "From both", allows: [setsOut.reads("knot", "stair")] },
      ],
    },
    against,
  );
  return { mutat, setsOut };
}

function between({ book }: SecondPart, exercise: string, { hands }: KnotWords) {
  const emptyHand = hands.both("shows the other his empty hand", "alteri manum vacuam");
  const empty = book.crux({
    exercise,
    is: "contradictory",
    title: "The empty hand of a rider with two things in two hands",
    note: "He has the reins in the one and the spear in the other, and shows the empty one. “Vacua” is also the free hand at the trough (A f. 6v).",
    words: emptyHand,
    readings: {
      left: {
        title: "the left: he lays the reins on the neck",
        argument:
          "The horse is standing. And at the trough it is the left that is free, if anything can be ridden there at all.",
        holder: HORSES,
      },
      right: {
        title: "the right: he sets the spear in the ground",
        argument:
          "What one wishes to be shown is the hand that had the spear. An empty left hand has never reassured anybody.",
        holder: EDITOR,
      },
    },
  });
  return { empty };
}
