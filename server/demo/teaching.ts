/** server/demo/teaching.ts - the invented book in use: a horse with her spears, versions for the day, faults, trials, a lesson.
 *  May import: schema types, siblings. Nothing here is in the book itself, but for the faults it names. */
import { beginnersBoar } from "./beginners-boar.ts";
import type { boarOfStraw } from "./boar-of-straw.ts";
import type { BookBuilder } from "./builder.ts";
import { type CruxHandle, supplied } from "./draft.ts";
import type { knotOfTwo } from "./knot-of-two.ts";
import { EDITOR, HORSES, TRANSLATOR, TRIED_ON } from "./people.ts";
import type { NewRow } from "./row-list.ts";
import type { SecondPart } from "./second-part.ts";
import type { twoSpears } from "./two-spears.ts";

interface Taught {
  circle: string;
  spears: ReturnType<typeof twoSpears>;
  boar: ReturnType<typeof boarOfStraw>;
  knot: ReturnType<typeof knotOfTwo>;
}

export function teaching(part: SecondPart, taught: Taught) {
  const kit = horseAndSpears(part);
  const versions = versionsOfTheDay(part, taught);
  faults(part.book, taught);
  trials(part.book, taught, kit, versions);
  part.book.add("lessons", {
    on: "2026-10-17",
    title: "A Saturday in October, dry",
    contact: "none",
    equipment:
      "Staves without points in the place of both spears; caps and gloves for everybody; the gate shut. The boar is a " +
      "sack and may be struck.",
    items: [
      {
        exercise: taught.circle,
        variant: null,
        minutes: 20,
        demonstrates: HORSES,
        group: "mounted",
        note: "Until the circle is one.",
      },
      {
        exercise: taught.knot.id,
        variant: versions.inTheHall,
        minutes: 20,
        demonstrates: "whoever has done it before",
        group: "unmounted",
        note: "At the same time, behind the stair. Two chairs are wanted.",
      },
      {
        exercise: taught.boar.id,
        variant: versions.beginners,
        minutes: 30,
        demonstrates: HORSES,
        group: "mounted",
        note: "One at a time. Whoever is not riding stands on the stair and says nothing.",
      },
      {
        exercise: taught.spears.id,
        variant: versions.withARope,
        minutes: 15,
        demonstrates: EDITOR,
        group: "all",
        note: "Each tries a reading and says afterward which it was.",
      },
    ],
  });
}

function horseAndSpears({ book, spear, lesser }: SecondPart): string {
  const metres = (of: number, note: string) => supplied({ is: "exact" as const, of }, note);
  const measured = "Measured in the yard.";
  return book.add("kits", {
    name: "Madder, and two ash staves",
    horse: {
      name: "Madder, a bay mare of eleven",
      slots: filled(book, {
        withers: metres(1.49, measured),
        length: metres(2.3, measured),
        walk: metres(1.6, "Metres a second, over forty paces of the court as it is taken here."),
        canter: metres(3.8, "Metres a second, over the same. She was thinking of something else."),
      }),
    },
    rider: { name: HORSES, slots: filled(book, { stature: metres(1.68, measured), forearm: metres(0.3, measured) }) },
    objects: [
      { object: spear, metres: 2 },
      { object: lesser, metres: 1.55 },
    ],
    note: "The staves have no points. They are as long as the spears are taken to be.",
  });
}

/** Slots of something that no reading and no words can address. */
function filled(book: BookBuilder, drafts: Parameters<BookBuilder["slots"]>[0]) {
  return book.slots(drafts, { kind: "objects", id: "" }, "notes", []);
}

function versionsOfTheDay(part: SecondPart, { spears, boar, knot }: Taught) {
  const { book } = part;
  const beginners = book.add("variants", beginnersBoar(part, boar));
  const withARope = book.add("variants", {
    exercise: spears.id,
    name: "on foot, with a rope for reins",
    way: "on foot",
    deltas: [
      {
        is: "words",
        words:
          "The reins are a rope tied to the belt of somebody who walks in front, and who stops when it is dropped.",
        reason: "On foot nobody has reins, and the exercise is about where they are.",
      },
      { is: "words", words: "At a walk throughout.", reason: "Whoever walks in front has not practised." },
    ],
  });
  const inTheHall = book.add("variants", {
    exercise: knot.id,
    name: "on foot, in the hall",
    way: "on foot",
    deltas: [
      { is: "words", words: "One chair for the well and one for the boar, ten paces apart.", reason: "A f. 10r." },
      { is: "words", words: "No spears: each carries a hat, and changes the hat.", reason: "The hall has a lamp." },
    ],
  });
  return { beginners, withARope, inTheHall };
}

function faults(book: BookBuilder, { spears, boar, knot }: Taught) {
  const notLikeThis = (fault: Omit<NewRow<"faults">, "work">) => book.add("faults", fault);
  notLikeThis({
    of: "elements",
    target: spears.across,
    fault: "The line bends toward the boar, and the stirrup finds it.",
    correction: "Look at the stone before leaving the wall, and at nothing else after.",
  });
  notLikeThis({
    of: "elements",
    target: boar.charge,
    fault: "The rider leans toward the boar, and the horse goes where he leans.",
    correction: "Sit over the middle of the horse; the boar will come to you.",
  });
  notLikeThis({
    of: "holds",
    target: boar.twoHands,
    fault: "The second hand pulls the butt away from the arm.",
    correction: "It lies on the shaft and does nothing; if it has nothing to do it may as well have the reins.",
  });
  notLikeThis({
    of: "elements",
    target: knot.steps.knot,
    fault: "The second circle is smaller than the first, because the boar is less interesting than the well.",
    correction: "Count the strides of both aloud. They are the same number, or one of them is wrong.",
  });
  notLikeThis({
    of: "elements",
    target: knot.steps.end,
    fault: "The hand goes up quickly, and both horses leave.",
    correction: "Raise it as if it were full of water.",
  });
}

function trials(
  book: BookBuilder,
  { spears, boar }: Taught,
  kit: string,
  { beginners, withARope }: ReturnType<typeof versionsOfTheDay>,
) {
  const { putAway, free, reins, turning } = spears.doubts;
  const chosen = (...readings: [crux: CruxHandle, key: string][]) =>
    readings.map(([crux, key]) => ({ crux: crux.id, reading: crux.reads(key).readings[0] ?? "" }));
  const onFoot = {
    exercise: spears.id,
    on: TRIED_ON,
    way: "on foot" as const,
    variant: withARope,
    edition: null,
    drill: null,
  };
  book.rows.add(
    "trials",
    {
      ...onFoot,
      who: `${TRANSLATOR}, with ${EDITOR} for a horse`,
      choice: chosen([putAway, "arm"], [free, "right"], [reins, "hand"]),
      kit: null,
      outcome: "not ridden",
      findings: [
        {
          element: spears.taken,
          text: "With the right hand free there is nothing for it to be free of: it still has the spear under the arm.",
        },
        {
          element: spears.turn,
          text: "Nothing can be turned over into the right hand, as it is there. Turned the other way the point found the wall.",
        },
      ],
      note: "Abandoned at the stone, in good humour.",
    },
    spears.doubts.trial,
  );
  book.rows.add("trials", {
    ...onFoot,
    who: `${HORSES}, with ${TRANSLATOR} for a horse`,
    choice: chosen([putAway, "thigh"], [free, "left"], [reins, "neck"], [turning, "spear"]),
    kit: null,
    outcome: "in part",
    findings: [
      {
        element: spears.taken,
        text: "On foot there is no thigh to sit on a spear with; it was tied to the belt. After that it went as if it had been written so.",
      },
    ],
    note: "The horse of the day had to be asked twice to stand.",
  });
  book.rows.add("trials", {
    exercise: boar.id,
    on: TRIED_ON,
    who: HORSES,
    way: "mounted",
    choice: chosen([boar.doubts.whichWay, "inward"], [boar.doubts.when, "after"], [boar.doubts.hands, "one"]),
    variant: beginners,
    kit,
    edition: null,
    drill: null,
    outcome: "ridden",
    findings: [
      {
        element: boar.charge,
        text: "Thirty-eight paces from the corner end a pace and a half short of the boar, so that the knee is beside its shoulder.",
      },
    ],
    note: "At a walk, twice. The boar was not told.",
  });
}
