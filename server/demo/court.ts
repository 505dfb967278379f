/** server/demo/court.ts - the opening words of the invented book: the walled court, its stations, and how the hands begin.
 *  May import: siblings. Places are in whole millimetres from the middle, y toward the stair, x to the right as one
 *  enters (design: the ground frame). */
import type { BookBuilder, Revisions } from "./builder.ts";
import { type ActionDraft, about, does, implied, type SaidDraft, stated, supplied } from "./draft.ts";
import { addActions } from "./exercise-builder.ts";
import { folio, page } from "./leaf.ts";
import { ASKED_ON, TRANSLATOR } from "./people.ts";
import type { Phrase } from "./phrase.ts";

/** How long a pace of the book is taken to be, and how far that may be out, in centimetres. */
const PACE = { of: 80, spread: 10 };

/** So many paces of the book, in metres. */
export function paces(count: number, words: Phrase[] = []) {
  const length = about((count * PACE.of) / 100, (count * PACE.spread) / 100);
  return implied(length, "A pace is taken as one step of a man, 0.7 to 0.9 m.", words);
}

export function court(book: BookBuilder, texts: Revisions, { spear, reins }: { spear: string; reins: string }) {
  const opening = book.passage(texts, null, [folio("A", "2v", 4, 15), folio("B", "1r", 1, 9), page(17)], {
    translation: `
      The court in which I teach is fifty paces long and half as wide, and walled on every side. The gate is at its
      foot and the stair at its head, where those sit who judge us; the well is in the middle. Upon the right hand, as
      you enter, is the trough; upon the left an elm leans in over the wall. Unless I say otherwise, ride at an easy
      canter, the reins in the left hand and the spear in the right, held where it balances. The hand that has the
      spear has not the reins.`,
    original: `
      Curia in qua doceo quinquaginta passus longa est, dimidio minus lata, et undique muro cincta. Porta in imo est,
      gradus in summo, ubi sedent qui nos iudicant; puteus in medio. Ad dextram intranti est alveus; ad sinistram ulmus
      muro imminet. Nisi aliter dicam, equita leni cursu, habenis in manu sinistra, hasta in dextra, ea parte
      retenta qua aequo pondere libratur. Quae manus hastam habet, habenas non habet.`,
  });

  const ground = book.ground(
    { name: "the walled court", is: "rectangular", note: "As the opening of the book describes it (A f. 2v)." },
    { length: paces(50), width: paces(25) },
  );
  const place = (x: number, y: number) =>
    implied({ is: "point" as const, at: { x, y } }, "Drawn on a court of 40 m by 20 m.");
  const elm = book.rows.newId();
  const stations = {
    gate: book.station(
      { ground, name: "the gate", partner: null, note: "The only way in.", at: place(0, -20_000) },
      opening.both("The gate is at its foot", "Porta in imo est"),
    ),
    stair: book.station(
      { ground, name: "the stair", partner: null, note: "Those who judge sit on it.", at: place(0, 20_000) },
      opening.both(
        "the stair at its head, where those sit who judge us",
        "gradus in summo, ubi sedent qui nos iudicant",
      ),
    ),
    well: book.station(
      { ground, name: "the well", partner: null, note: "With a low kerb.", at: place(0, 0) },
      opening.both("the well is in the middle", "puteus in medio"),
    ),
    trough: book.station(
      { ground, name: "the trough", partner: elm, note: "", at: place(10_000, 0) },
      opening.both("Upon the right hand, as you enter, is the trough", "Ad dextram intranti est alveus"),
    ),
  };
  book.station(
    { ground, name: "the elm", partner: stations.trough, note: "It grows outside the wall.", at: place(-10_000, 0) },
    opening.both("upon the left an elm leans in over the wall", "ad sinistram ulmus muro imminet"),
    elm,
  );

  const gait = book.standing(
    { exercise: null, is: "instruction", title: "The gait, unless another is named", note: "" },
    opening.both("Unless I say otherwise, ride at an easy canter", "Nisi aliter dicam, equita leni cursu"),
  );
  addActions(book, "standings", gait.id, gait.around, [
    does("go at", { gait: stated("canter"), pace: stated("easy") }),
  ]);
  const hands = book.standing(
    {
      exercise: null,
      is: "instruction",
      title: "Where the hands begin",
      note: "",
    },
    opening.both(
      "the reins in the left hand and the spear in the right, held where it balances",
      "habenis in manu sinistra, hasta in dextra, ea parte retenta qua aequo pondere libratur",
    ),
  );
  const beforeAll = { timing: implied({ is: "before" as const }, "It is how an exercise is set out on.") };
  addActions(book, "standings", hands.id, hands.around, [
    does("keep", { hand: stated("left"), object: stated(reins) }, beforeAll),
    does("keep", { hand: stated("right"), object: stated(spear), zone: stated("balance") }, beforeAll),
  ]);
  book.standing(
    { exercise: null, is: "instruction", title: "The hand that has the spear has not the reins", note: "" },
    opening.both("The hand that has the spear has not the reins.", "Quae manus hastam habet, habenas non habet."),
  );
  book.standing(
    {
      exercise: null,
      is: "never mentioned",
      title: "On which leg the horse canters",
      note: "A circle and a turn about are both affected by it, and the book has words for neither leg.",
    },
    [],
    supplied(true, "Looked for through all of A and what is left of B."),
  );

  const measures = opening.both(
    "fifty paces long and half as wide",
    "quinquaginta passus longa est, dimidio minus lata",
  );
  book.note(
    "Passus is Englished “pace” and taken as a single step. As the double step of the ancients it would make the court " +
      "80 m by 40 m, and the circle about the well no exercise at all.",
    measures,
  );
  book.question(
    {
      exercise: null,
      crux: null,
      text: "Can the old court still be traced at the house? Is its pace one step or two?",
      to: TRANSLATOR,
      by: "person",
      asked: ASKED_ON,
      effort: 3,
      answers: [],
    },
    measures,
  );

  /** How an exercise begins that does not say: the hands as the opening words have them. */
  const asTheHandsBegin = (): ActionDraft[] => {
    const fromTheOpening = <const T>(value: T): SaidDraft<T> => {
      const draft = implied(value, "The opening words hold for every exercise.");
      return { ...draft, basis: [...hands.around, ...draft.basis] };
    };
    const because = fromTheOpening(true);
    return [
      does("keep", { hand: fromTheOpening("left"), object: fromTheOpening(reins) }, { because }),
      does(
        "keep",
        { hand: fromTheOpening("right"), object: fromTheOpening(spear), zone: fromTheOpening("balance") },
        { because },
      ),
    ];
  };
  return { asTheHandsBegin, court: { ground, elm, ...stations } };
}
