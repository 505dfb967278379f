/** server/demo/knot-words.ts - the sixth exercise of the invented book, and its last leaf: their words, Latin and English.
 *  May import: siblings. */
import { folio, page } from "./leaf.ts";
import type { SecondPart } from "./second-part.ts";

export type KnotWords = ReturnType<typeof knotWords>;

export function knotWords({ book, texts }: SecondPart, exercise: string) {
  const two = book.passage(texts, exercise, [folio("A", "9r", 13, 20), folio("C", "4r", 6, 11), page(34)], {
    translation: `
      Two riders are wanted for this who can keep a pace, and who are not related. The first rides out from the gate; the
      second stays by the bench until the first is over against him, and then rides as he rode. Neither hurries for the other or waits for
      him: each rides his own circles, and if both ride them truly they never meet. This is taught here as a great secret,
      and is true of most people.`,
    original: `
      Duo equites ad hoc requiruntur qui gradum servare possint nec cognati sint. Primus a porta exit; secundus iuxta scamnum
      manet donec primus ex adverso sit, deinde equitat ut ille equitavit. Neuter propter alterum festinat aut eum exspectat: suos
      quisque circulos equitat, et si uterque vere equitat numquam concurrunt. Hoc hic pro magno arcano docetur, et de
      plerisque hominibus verum est.`,
  });
  const up = book.passage(texts, exercise, [folio("A", "9v", 1, 6), folio("C", "4r", 12, 17), page(34)], {
    translation: `
      Each goes up the court at an easy canter, the spear low beside the right boot, and comes upon a circle about the
      well, fifteen paces across, the well upon his left; this he follows until the boar is beside him upon the right.
      There the knot is: for where the one circle ends the other begins, and neither the well nor the boar can say to which
      of them the place belongs.`,
    original: `
      Uterque per curiam leni cursu ascendit, hasta demissa iuxta ocream dextram, et in circulum circa puteum venit, quindecim
      passus latum, puteo ad laevam; hunc sequitur donec aprum iuxta se ad dextram habeat. Ibi nodus est: nam ubi alter
      circulus finitur alter incipit, nec puteus nec aper dicere potest utri locus debeatur.`,
  });
  const knot = book.passage(texts, exercise, [folio("A", "9v", 7, 13), folio("C", "4v", 1, 7), page(35)], {
    translation: `
      Now he rides the knot: once about the well, the well still upon his left, and from the same place once about the
      boar, the boar upon his right, and both circles of one size. In the knot he changes the hand; and when he comes into
      the knot again he changes it back, so that at the end of every round all is as it was.`,
    original: `
      Nunc nodum equitat: semel circa puteum, puteo adhuc ad laevam, et ex eodem loco semel circa aprum, apro ad dextram,
      utroque circulo eiusdem magnitudinis. In nodo manum mutat; et cum iterum in nodum venerit, rursus mutat, ita ut in fine
      cuiusque orbis omnia sint ut fuerunt.`,
  });
  const pass = book.passage(texts, exercise, [folio("A", "9v", 14, 20), folio("C", "4v", 8, 13), page(35)], {
    translation: `
      When one is in the knot the other is somewhere upon the circles, and comes upon the left shoulder with the spear in
      his hand. Let the rider neither turn toward him nor give way, but ride on as though the knot had been made for one;
      and let there be at least two lengths of a horse between the riders. For if both give way they meet, and if neither
      does they only pass.`,
    original: `
      Cum alter in nodo est, alter alicubi in circulis est, et ad umerum sinistrum venit hastam manu tenens. Eques neque ad
      eum vertat neque cedat, sed pergat quasi nodus uni factus sit; et inter equites duae saltem equi longitudines
      intersint. Nam si uterque cedit, concurrunt; si neuter, tantum praetereunt.`,
  });
  const end = book.passage(texts, exercise, [folio("A", "9v", 21, 25), folio("C", "4v", 14, 18), page(36)], {
    translation: `
      This they do three times. The first then rides straight on out of the knot, eleven paces, which is as far as the wall
      allows, and turns to the left until he looks at the knot again; the second halts in the knot. So they stand face to
      face with eleven paces between them, which is room enough for two spears and not enough for an argument.`,
    original: `
      Hoc ter faciunt. Tum primus e nodo recta pergit, undecim passus, quatenus murus patitur, et ad sinistram vertit donec
      nodum rursus spectet; secundus in nodo consistit. Ita adversi stant, undecim passibus interpositis, quod duabus hastis
      satis est spatii, rixae parum.`,
  });
  const hands = book.passage(texts, exercise, [folio("A", "10r", 1, 6), folio("C", "5r", 1, 5), page(37)], {
    translation: `
      Both make the greeting together, and lay the spear by the boot. Then each shows the other his empty hand, which is the
      custom of this house; for he who shows an empty hand shows that he has another. Let them do it slowly, since horses
      do not know the custom, and remember only that a hand that goes up comes down.`,
    original: `
      Uterque simul salutationem facit et hastam ad ocream reponit. Deinde alter alteri manum vacuam ostendit, qui mos huius
      domus est; nam qui manum vacuam ostendit, alteram se habere ostendit. Lente faciant, quia equi morem nesciunt, et hoc
      solum meminerunt, manum quae surgit descendere.`,
  });
  const teacher = book.passage(texts, exercise, [folio("A", "10r", 7, 12), folio("C", "5r", 6, 10), page(37)], {
    translation: `
      He who teaches this stands at the well, from where he sees little, and listens; for two horses that keep one pace
      sound like one that is larger. When he hears two he lets them go on, for they hear it themselves. When he hears none,
      they have met.`,
    original: `
      Qui hoc docet ad puteum stat, unde parum videt, et auscultat; nam duo equi qui eundem gradum servant tamquam unus
      maior sonant. Cum duos audit, pergere sinit, nam ipsi audiunt. Cum nullum audit, concurrerunt.`,
  });
  const hall = book.passage(texts, exercise, [folio("A", "10r", 13, 19), page(38)], {
    translation: `
      It can also be learned on foot by two who have no horses, and in winter it is learned so in the hall; the servants
      carry in two chairs, the one for the well and the other for the boar. Those who learned it so have ridden it at the
      first attempt. Those who learned it mounted have never been able to walk it, which I report and do not explain.`,
    original: `
      Pedibus quoque a duobus qui equos non habent disci potest, et hieme sic in aula discitur; servi duas sellas inferunt,
      alteram pro puteo, alteram pro apro. Qui sic didicerunt, primo conatu equitaverunt. Qui equo didicerunt, pedibus
      numquam ire potuerunt; quod refero, non explico.`,
  });
  return { two, up, knot, pass, end, hands, teacher, hall };
}

/** The last words of the book; they stand in no exercise. */
export function lastWords({ book, texts }: SecondPart) {
  const end = book.passage(texts, null, [folio("A", "10v", 1, 7), page(39)], {
    translation: `
      Here the book ends, for the court is wanted for the hay. He who has ridden all of it may ride it again and will find
      it longer; he who has only read it has not yet begun. I ask him who copies this to change nothing that he understands,
      and to ask about the rest. The well does not move.`,
    original: `
      Hic liber finitur, nam curia ad fenum opus est. Qui totum equitavit rursus equitet, et longiorem inveniet; qui tantum
      legit nondum coepit. Rogo eum qui haec describit ne quid mutet quod intellegat, de ceteris interroget. Puteus non
      movetur.`,
  });
  book.note(
    "The first thing he says of it (A f. 3r) and the last.",
    end.both("The well does not move.", "Puteus non movetur."),
  );
  book.note(
    "C was copied from A, or from a book that had lost the same letters; whether its copyist asked anybody is not known.",
    end.both(
      "I ask him who copies this to change nothing that he understands, and to ask about the rest.",
      "Rogo eum qui haec describit ne quid mutet quod intellegat, de ceteris interroget.",
    ),
  );
}
