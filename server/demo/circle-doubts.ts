/** server/demo/circle-doubts.ts - the first exercise of the invented book: where it can be understood in more than one way.
 *  May import: siblings. */
import { adopted } from "./builder.ts";
import type { CircleWords } from "./circle-words.ts";
import { ASKED_ON, EDITOR, SAT_ON, TRANSLATOR } from "./people.ts";
import type { Setting } from "./setting.ts";

/** Two places of doubt: one the manuscripts disagree about and one the book is silent on. */
export function circleDoubts({ book, sitting }: Setting, exercise: string, { setOut, point }: CircleWords) {
  const laps = book.crux({
    exercise,
    is: "witnesses differ",
    title: "Once about, or twice",
    note: "A has “semel”, once; B f. 1r, l. 14 has “bis”, twice.",
    words: setOut.both("gone once about", "semel circumierit"),
    readings: {
      once: {
        title: "once, as in A",
        argument:
          "The next sentence counts the round with the upright spear as the second, and the next passage has a third. " +
          "That only comes out if the first was one round.",
        holder: TRANSLATOR,
        speaksFor: [
          ...setOut.both("goes about a second time", "secundo circumit"),
          ...point.both("The third time", "Tertio"),
        ],
        status: adopted(SAT_ON, sitting, "A counts once, second, third. B's own next line says “secundo” too."),
      },
      twice: {
        title: "twice, as in B",
        argument: "One round is short for settling horse and hand. B's scribe, or his master, may have known better.",
        holder: EDITOR,
        evidence: [{ is: "editor", note: "B f. 1r, l. 14: cum bis circumierit." }],
      },
    },
  });
  const turn = point.both("and turns", "et vertit");
  const whichWay = book.crux({
    exercise,
    is: "silent",
    title: "Which way he turns",
    note: "He comes out of it on the other rein. Whether he turned toward the well or away from it, neither language says.",
    words: turn,
    readings: {
      outward: {
        title: "away from the well",
        argument:
          "On the gate's side there are some seventeen paces of open court outside the circle, and the well is no danger there.",
        holder: EDITOR,
      },
      inward: {
        title: "toward the well",
        argument:
          "It is the shorter way, and stays in the circle, which nothing tells him to leave. It wants a horse that turns within eight paces.",
        holder: TRANSLATOR,
      },
    },
    leftFree: {
      on: SAT_ON,
      sitting,
      reason: "Both can be ridden with the spear upright, and the book does not seem to care. The rider may choose.",
      default: "outward",
    },
  });
  book.question(
    {
      exercise,
      crux: whichWay,
      text: "Can a horse turn between the well and the circle without leaving the canter?",
      to: "a quiet horse and an empty court",
      by: "trial",
      asked: ASKED_ON,
      effort: 4,
      answers: [
        { label: "Yes, with room to spare", allows: [whichWay.reads("outward", "inward")] },
        { label: "No", allows: [whichWay.reads("outward")] },
      ],
    },
    turn,
  );
  return { laps, whichWay };
}
