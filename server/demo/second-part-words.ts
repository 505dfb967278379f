/** server/demo/second-part-words.ts - the opening of the second part of the invented book: its words, Latin and English.
 *  May import: siblings. */
import { folio, page } from "./leaf.ts";
import type { Setting } from "./setting.ts";

export type SecondPartWords = ReturnType<typeof secondPartWords>;

export function secondPartWords({ book, texts }: Setting) {
  const company = book.passage(texts, null, [folio("A", "5v", 1, 8), folio("C", "1r", 1, 8), page(23)], {
    translation: `
      So far the rider has been alone in the court, and whatever went amiss was his own work. In what follows there is
      always somebody else: a boar of straw, or a man on foot, or another who has read the same book. I have written it
      in the order in which it is taught and not in the order in which it is wanted; for he who wants it has no leisure
      to turn the leaves.`,
    original: `
      Hactenus eques solus in curia fuit, et quidquid male cessit ipsius opus erat. In sequentibus semper alius adest: aut
      aper stramineus, aut homo pedes, aut alter qui eundem librum legit. Haec eo ordine scripsi quo docentur, non eo quo
      postulantur; nam cui opus est, ei folia vertere non vacat.`,
  });
  const furnished = book.passage(texts, null, [folio("A", "5v", 9, 13), folio("C", "1r", 9, 12), page(23)], {
    translation: `
      For this the court wants some things that it had not before. Between the well and the stair, nearer to the stair,
      stands a boar of straw tied to a stake; he has been killed oftener than any beast of this country, and is none the
      worse. In the wall beside the stair hangs an iron ring; who put it there, and why, nobody has said.`,
    original: `
      Ad haec curia quaedam desiderat quae antea non habebat. Inter puteum et gradus, propius gradibus, stat aper stramineus
      ad palum alligatus; qui saepius occisus est quam ulla huius regionis bestia, neque eo deterius se habet. In muro iuxta
      gradus anulus ferreus pendet; quis eum posuerit et cur, nemo dixit.`,
  });
  const seats = book.passage(texts, null, [folio("A", "5v", 14, 20), folio("C", "1r", 13, 17), page(24)], {
    translation: `
      By the wall that is next the elm, ten paces beyond the elm, is the stone from which old men mount; over against it is
      another, on which they sit down afterward. Eight paces from the gate, upon the right hand as you enter, is a bench for
      those whose turn it is not yet, and upon the left a second for those who have had theirs. The second is the longer.`,
    original: `
      Iuxta murum qui ulmo proximus est, decem passibus ultra ulmum, lapis est unde senes equum ascendunt; contra eum alter,
      in quo postea sedent. Octo passibus a porta, ad dextram intranti, scamnum est eis quorum vices nondum venerunt; ad
      sinistram alterum eis qui suas habuerunt. Alterum longius est.`,
  });
  const onFoot = book.passage(texts, null, [folio("A", "6r", 1, 8), folio("C", "1v", 1, 7), page(24)], {
    translation: `
      Of him who comes on foot know three things: he is lower than you look, nearer than you think, and not so much
      afraid of the horse as the horse is of him. He stands before you, a little to the right, and holds his stave upon
      the right side. Therefore do not turn toward the stave; ride by, and let it be he that turns.`,
    original: `
      De eo qui pedes venit tria scito: humilior est quam spectas, propior quam putas, neque tam equum timet quam eum
      equus. Ante te stat, paulum ad dextram, et fustem a dextra parte tenet. Noli ergo ad fustem vertere; praeteri, et
      sine illum vertere.`,
  });
  const mounted = book.passage(texts, null, [folio("A", "6r", 9, 16), page(24)], {
    translation: `
      Of him who comes mounted know one thing: his horse wishes to pass yours upon the same side upon which yours wishes
      to pass his, and they will agree about it without asking you. Look for him upon the left shoulder, where the way
      comes into the knot; and do not look at his spear, which goes where he looks, but at the ears of his horse, which
      go where he goes.`,
    original: `
      De eo qui eques venit unum scito: equus eius eadem parte tuum praeterire vult qua tuus illum, et inter se
      consentient te non interrogato. Quaere eum ad umerum sinistrum, ubi via in nodum intrat; nec hastam eius spectes,
      quae it quo ille spectat, sed aures equi, quae eunt quo it ipse.`,
  });
  const lesserSpear = book.passage(texts, null, [folio("A", "6v", 1, 8), folio("C", "1v", 8, 15), page(25)], {
    translation: `
      The lesser spear is shorter than the other by a cubit, and is carried by those who like to have something that can
      be thrown away. What I said at the beginning I say here again, because it is forgotten as soon as there are two
      spears in the court: the hand that has a spear has not the reins. And where I say that he changes the hand, let
      the reader not ask whether I mean the spear or the reins, but consider which of them he can do without.`,
    original: `
      Hasta minor altera brevior est uno cubito, et ab iis portatur qui aliquid habere volunt quod abici possit. Quod
      initio dixi hic iterum dico, quia simul atque duae hastae in curia sunt oblivione deletur: quae manus hastam habet,
      habenas non habet. Ubi autem dico eum manum mutare, ne quaerat lector utrum hastam dicam an habenas, sed cogitet
      utra re carere possit.`,
  });
  return { company, furnished, seats, onFoot, mounted, lesserSpear };
}
