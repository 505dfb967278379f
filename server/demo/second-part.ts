/** server/demo/second-part.ts - what the later exercises of the invented book share: a second copy of them, what is set up in
 *  the court, the lesser spear, those who come against the rider, and the second sitting. May import: siblings. */
import { about, clock, implied, inCrux, stated, supplied } from "./draft.ts";
import { ASKED_ON, EDITOR, HORSES, SAT_AGAIN, TRANSLATOR } from "./people.ts";
import { type SecondPartWords, secondPartWords } from "./second-part-words.ts";
import type { Setting } from "./setting.ts";

export type SecondPart = ReturnType<typeof secondPart>;

export function secondPart(setting: Setting) {
  const { book, court, turns } = setting;
  book.add("witnesses", {
    siglum: "C",
    is: "manuscript",
    name: "the stable copy",
    place: "Varne House, from a nail in the harness room",
    date: "about 1490",
    note: "The second part alone, copied for use: no drawing, and now and then a better speller than A. It has been wet.",
  });
  const words = secondPartWords(setting);
  const { company, onFoot, mounted, lesserSpear } = words;
  const sittingAgain = book.add("sittings", {
    on: SAT_AGAIN,
    who: [TRANSLATOR, EDITOR],
    place: "Varne House, in the library",
    note: "The two spears and the boar, with A and C open on the table. Nobody got up.",
  });

  const lesser = book.object("shaft", "lesser spear", "A boar-spear too, shorter by a cubit.", {
    length: implied(about(1.55, 0.25), "The spear is taken as 2 m; a cubit is taken as 0.45 m."),
  });
  const groomsNotes = book.add("sources", {
    item: {
      id: "tarn-mullow",
      type: "manuscript",
      title: "What the groom of Tarn Mullow wrote down (invented)",
      author: [{ literal: "an unnamed groom" }],
      issued: { "date-parts": [[1471]] },
      archive: "Varne House, in the same harness room",
    },
  });
  const notBoth = book.add("notes", {
    text:
      "The rule that bars most in this book, and the book's own: a hand does one thing. In the first part nothing breaks " +
      "it; in the exercise that follows it decides.",
  });
  const saysSo = book.mark(
    "notes",
    notBoth,
    lesserSpear.both("the hand that has a spear has not the reins", "quae manus hastam habet, habenas non habet"),
  );
  book.add("rules", {
    code: "one-thing",
    sentence: "The hand that has a spear has not the reins.",
    basis: "the text",
    support: [{ is: "words", mark: saysSo }],
    severity: "bars",
    reach: "instant",
  });
  book.note(
    "The only measure of a weapon in the book, and it is a difference.",
    lesserSpear.both("shorter than the other by a cubit", "altera brevior est uno cubito"),
  );
  book.note(
    "No horse in this book is described, but several are quoted.",
    mounted.both("they will agree about it without asking you", "inter se consentient te non interrogato"),
  );
  book.note(
    "“Vertere” once more, of neither horse nor spear. It is the only place where the master admits that his book has leaves.",
    company.both("to turn the leaves", "folia vertere"),
  );
  book.mark("senses", turns.horse, onFoot.both("do not turn toward the stave", "Noli ergo ad fustem vertere"));
  book.mark("senses", turns.horse, onFoot.both("let it be he that turns", "sine illum vertere"));
  return {
    ...setting,
    court: { ...court, ...setUp(setting, words) },
    words,
    sittingAgain,
    groomsNotes,
    lesser,
    threats: threats(setting, words),
  };
}

/** The boar, and what there is to mount from, sit on and wait at; what is off the middle has its like over against it. */
function setUp({ book, court: { ground } }: Setting, { furnished, seats }: SecondPartWords) {
  const place = (x: number, y: number, why: string) => implied({ is: "point" as const, at: { x, y } }, why);
  const [seat, longBench] = [book.rows.newId(), book.rows.newId()];
  const boar = book.station(
    {
      ground,
      name: "the boar",
      partner: null,
      note: "Straw, on a stake. It stands there in the second part only.",
      at: place(0, 12_000, "Between well and stair, nearer to the stair: 12 m of the 20 are taken."),
    },
    furnished.both(
      "Between the well and the stair, nearer to the stair, stands a boar of straw tied to a stake",
      "Inter puteum et gradus, propius gradibus, stat aper stramineus ad palum alligatus",
    ),
  );
  const stone = book.station(
    {
      ground,
      name: "the stone",
      partner: seat,
      note: "Old men mount from it.",
      at: place(-10_000, 8_000, "Ten paces of 80 cm from the elm, along its wall."),
    },
    seats.both(
      "ten paces beyond the elm, is the stone from which old men mount",
      "decem passibus ultra ulmum, lapis est unde senes equum ascendunt",
    ),
  );
  book.station(
    {
      ground,
      name: "the seat",
      partner: stone,
      note: "The other stone.",
      at: place(10_000, 8_000, "Over against the stone."),
    },
    seats.both("over against it is another, on which they sit down", "contra eum alter, in quo postea sedent"),
    seat,
  );
  const bench = book.station(
    {
      ground,
      name: "the bench",
      partner: longBench,
      note: "For those whose turn it is not yet.",
      at: place(6_400, -20_000, "Eight paces of 80 cm from the gate, along the foot of the court."),
    },
    seats.both(
      "Eight paces from the gate, upon the right hand as you enter, is a bench",
      "Octo passibus a porta, ad dextram intranti, scamnum est",
    ),
  );
  book.station(
    {
      ground,
      name: "the long bench",
      partner: bench,
      note: "For those who have had their turn.",
      at: place(-6_400, -20_000, "As far to the left as the other is to the right."),
    },
    seats.both("upon the left a second for those who have had theirs", "ad sinistram alterum eis qui suas habuerunt"),
    longBench,
  );
  return { boar, stone, bench };
}

/** One on foot and one mounted. On which side the first has his stave depends on who is looking. */
function threats({ book }: Setting, { onFoot, mounted }: SecondPartWords) {
  const theRightSide = onFoot.both("upon the right side", "a dextra parte");
  const whoseRight = book.crux({
    exercise: null,
    is: "ambiguous",
    title: "His right side, or the rider's",
    note: "Everywhere else in this book left and right are the rider's. But everywhere else the rider is alone.",
    words: theRightSide,
    readings: {
      his: {
        title: "his own right, so the rider's left",
        argument: "A man holds a stave upon a side of himself. Nobody says of a man that he has his hat on your right.",
        holder: TRANSLATOR,
      },
      riders: {
        title: "the rider's right",
        argument:
          "“A little to the right”, a few words before, is the rider's right and nobody has doubted it. The master does not " +
          "dismount in the middle of a sentence.",
        holder: EDITOR,
        speaksFor: onFoot.both("a little to the right", "paulum ad dextram"),
      },
    },
  });
  book.question(
    {
      exercise: null,
      crux: whoseRight,
      text: "Stand there with a stave and let a rider come: on which side of him does the warning make sense?",
      to: HORSES,
      by: "trial",
      asked: ASKED_ON,
      effort: 3,
      answers: [
        { label: "With the stave on the rider's right", allows: [whoseRight.reads("riders")] },
        { label: "With the stave on the rider's left", allows: [whoseRight.reads("his")] },
        { label: "On either", allows: [whoseRight.reads("his", "riders")] },
      ],
    },
    theRightSide,
  );
  return {
    onFoot: book.threat(
      "the man on foot",
      "He has a stave, and is told to be late with it.",
      {
        mount: stated("on foot"),
        bearing: stated(clock(1), onFoot.both("before you, a little to the right", "Ante te stat, paulum ad dextram")),
        weaponSide: inCrux(whoseRight, {
          his: implied({ to: "left", viewpoint: "rider" }, "He faces the rider, so his right is the rider's left."),
          riders: stated({ to: "right", viewpoint: "rider" }, theRightSide),
        }),
      },
      onFoot.both("him who comes on foot", "eo qui pedes venit"),
    ),
    mounted: book.threat(
      "the other rider",
      "Another who has read the same book.",
      {
        mount: stated("mounted"),
        bearing: stated(clock(9), mounted.both("upon the left shoulder", "ad umerum sinistrum")),
        weaponSide: supplied(
          { to: "right", viewpoint: "rider" },
          "He has it on his right, and he is going the same way.",
        ),
      },
      mounted.both("him who comes mounted", "eo qui eques venit"),
    ),
  };
}
