/** server/demo/change-words.ts - the second exercise of the invented book: its words, Latin and English.
 *  May import: siblings. */
import { folio, page } from "./leaf.ts";
import type { Setting } from "./setting.ts";

export type ChangeWords = ReturnType<typeof changeWords>;

export function changeWords({ book, texts }: Setting, exercise: string) {
  const out = book.passage(texts, exercise, [folio("A", "4r", 1, 10), folio("B", "2r", 1, 10), page(20)], {
    translation: `
      Here he goes out from the gate with the wall upon his right, the spear low beside the right boot as in the first
      exercise, and follows the wall about the corner as far as the trough. At the trough he †washes†⟦note: A: lauat.⟧
      it. When he has passed the trough by three lengths of the horse, he turns off the wall in a small half circle and
      comes back to it, so that the wall which was upon his right is upon his left.`,
    original: `
      Hic a porta exit muro ad dextram, hasta demissa iuxta ocream dextram ut in exercitio primo, et murum sequitur circa
      angulum usque ad alveum. Ad alveum eam †lavat†. Cum alveum tribus equi longitudinibus praeterierit, a muro parvo
      semicirculo vertit et ad eum redit, ita ut murus qui ad dextram fuerat ad laevam sit.`,
  });
  const change = book.passage(texts, exercise, [folio("A", "4r", 11, 19), folio("B", "2r", 11, 18), page(20)], {
    translation: `
      As he turns he brings the spear across before him and gives it to the other, and rides back the way he came, the
      point now looking forward upon the left. Let him not hurry this, for the horse reads haste in the hand; and let the
      point keep a cubit from the wall, for stone is not persuaded. When he is again at the gate he halts and takes it
      back as it was before.`,
    original: `
      Dum vertit, hastam ante se traducit et alteri dat, et qua venerat redit, cuspide iam ad laevam prospiciente. Ne
      festinet in hoc, nam equus festinationem in manu legit; et cuspis cubitum a muro distet, nam lapidi non persuadetur.
      Cum iterum ad portam venerit, consistit et eam recipit sicut ante erat.`,
  });
  const mirror = book.passage(texts, exercise, [folio("A", "4v", 1, 7), page(21)], {
    translation: `
      Then, standing in the gate, he gives the spear into his left hand, and after it the reins into his right; and now
      he does all this by the other wall, where the elm is, with the sides changed, save that he does not raise the spear
      under the elm, whose boughs hang lower than any rider believes.`,
    original: `
      Tum in porta stans hastam in manum sinistram dat, et post eam habenas in dextram; et nunc haec omnia facit iuxta
      alterum murum, ubi ulmus est, lateribus mutatis, nisi quod hastam sub ulmo non levat, cuius rami humilius pendent
      quam quisquam eques credit.`,
  });
  const home = book.passage(texts, exercise, [folio("A", "4v", 8, 14), page(21)], {
    translation: `
      When he has come to the gate the second time, he puts spear and reins back as they were at first; then he rides
      up the court to the stair at a walk, leaving the well upon whichever hand he pleases, and makes the greeting as I
      have taught it. He who has lost nothing may be content; he who has lost the reins lost them in the turn, and knows
      it already.`,
    original: `
      Cum iterum ad portam venerit, hastam et habenas reddit ut initio erant; tum per curiam passu ad gradus ascendit,
      puteo ad utramlibet manum relicto, et salutationem facit ut docui. Qui nihil amisit contentus sit; qui habenas
      amisit, in flexu amisit, et iam scit.`,
  });
  return { out, change, mirror, home };
}
