/** server/demo/change-doubts.ts - the second exercise of the invented book: where it can be understood in more than one way.
 *  May import: siblings. */
import { adopted } from "./builder.ts";
import type { ChangeWords } from "./change-words.ts";
import { ASKED_ON, EDITOR, SAT_ON, TRANSLATOR } from "./people.ts";
import type { Setting } from "./setting.ts";

/** Two places of doubt: a word that cannot be right as it stands, and one that can be right in two ways. */
export function changeDoubts({ book, sitting }: Setting, exercise: string, { out, change, mirror, home }: ChangeWords) {
  const lavat = out.both("he †washes† it", "†lavat†");
  const washes = book.crux({
    exercise,
    is: "corrupt",
    title: "He washes it at the trough",
    note: "A has “lauat” in plain letters. In B the corner with this line is torn away.",
    words: lavat,
    readings: {
      raises: {
        title: "he raises it (levat)",
        argument:
          "One letter, and one this hand is careless of. And under the elm he is told not to raise the spear, which " +
          "need not be said unless he has raised it at the trough.",
        holder: TRANSLATOR,
        speaksFor: mirror.both("he does not raise the spear under the elm", "hastam sub ulmo non levat"),
        status: adopted(SAT_ON, sitting, "The exception under the elm has nothing to be an exception from otherwise."),
      },
      washes: {
        title: "he washes it (lavat), and nothing is ridden",
        argument:
          "A groom's reminder beside the word for a trough, copied into the line by somebody who was thinking of " +
          "supper. Then the spear simply stays low.",
        holder: EDITOR,
        evidence: [
          { is: "editor", note: "The words are in A as they stand, and no scribe is obliged to be sensible." },
        ],
      },
    },
  });
  book.question(
    {
      exercise,
      crux: washes,
      text: "Is the a of “lauat” certain in A?",
      to: TRANSLATOR,
      by: "person",
      asked: "2026-09-02",
      effort: 1,
      answers: [
        { label: "Certain: an a", allows: [washes.reads("raises", "washes")] },
        { label: "It can be an e", allows: [washes.reads("raises")] },
      ],
      state: {
        is: "answered",
        on: SAT_ON,
        sitting,
        answer: "It can be an e. The same letter stands twice more on this leaf where an e is meant beyond doubt.",
      },
    },
    lavat,
  );

  const alteri = change.both("gives it to the other", "alteri dat");
  const other = book.crux({
    exercise,
    is: "ambiguous",
    title: "The other hand, or the other side",
    note:
      "“alteri” wants a noun and has none. It may be the other hand (manui): spear and reins change places. It may be " +
      "the other side (lateri): the same hand carries the spear across the neck.",
    words: alteri,
    readings: {
      hand: {
        title: "to the other hand; the reins change too",
        argument:
          "One gives to a hand. And the close of the exercise knows of reins lost in the turn, where there would be " +
          "nothing to lose them by if the hands kept what they had.",
        holder: TRANSLATOR,
        speaksFor: home.both("who has lost the reins lost them in the turn", "qui habenas amisit, in flexu amisit"),
      },
      side: {
        title: "to the other side, in the same hand",
        argument:
          "When this book means a hand it writes a hand: standing in the gate he gives the spear “in manum sinistram”. " +
          "A change of both hands in half a small circle is a great deal to leave unsaid.",
        holder: EDITOR,
        speaksFor: mirror.both("into his left hand", "in manum sinistram"),
      },
    },
  });
  book.question(
    {
      exercise,
      crux: other,
      text: "Is “alteri” without a noun always a hand in this book, or may it be a side?",
      to: TRANSLATOR,
      by: "person",
      asked: ASKED_ON,
      effort: 2,
      answers: [
        { label: "Always a hand", allows: [other.reads("hand")] },
        { label: "Here a side", allows: [other.reads("side")] },
        { label: "Either", allows: [other.reads("hand", "side")] },
      ],
    },
    alteri,
  );
  return { washes, other };
}
