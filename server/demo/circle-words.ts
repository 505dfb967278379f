/** server/demo/circle-words.ts - the first exercise of the invented book: its words, Latin and English.
 *  May import: siblings. */
import { folio, page } from "./leaf.ts";
import type { Setting } from "./setting.ts";

export type CircleWords = ReturnType<typeof circleWords>;

export function circleWords({ book, texts }: Setting, exercise: string) {
  const setOut = book.passage(texts, exercise, [folio("A", "3r", 1, 9), folio("B", "1r", 10, 19), page(18)], {
    translation: `
      Let him set out from the gate at an easy canter, the well upon his left hand, the spear low beside the right boot,
      and ride a circle sixteen paces across. When he has gone once about, and is again on the side toward the gate, he
      raises the spear upright, sets its butt upon his thigh, and so goes about a second time. Let him keep the circle
      round: the well does not move, and every egg he rides will be known from the stair.`,
    original: `
      Exeat a porta leni cursu, puteo ad laevam, hasta demissa iuxta ocream dextram, et circulum equitet sedecim passus
      latum. Cum semel circumierit et iterum ad partem portae venerit, hastam erectam tollit, calcem eius super femur
      ponit, et sic secundo circumit. Circulum rotundum servet: puteus enim non movetur, et quodcumque ovum equitaverit a
      gradibus cognoscetur.`,
  });
  const point = book.passage(texts, exercise, [folio("A", "3r", 10, 18), folio("B", "1v", 1, 5), page(18)], {
    translation: `
      The third time he lets the point sink forward until it looks out over the horse's ears, the shaft shut beneath his
      arm, and presses the canter a little, as one who has seen what he came for. This he does once about and no more.
      Then he raises the spear as before, lest it go before him into the bend, and turns, and rides the circle once with
      the well upon his right, the pace easy again.`,
    original: `
      Tertio cuspidem ante se demittit, donec super aures equi prospiciat, hastili sub brachio clauso, et cursum paulum
      urget, tamquam qui viderit quod quaerebat. Hoc semel facit nec amplius. Tum hastam ut prius erigit, ne ante se in
      flexum eat, et vertit, et semel circulum equitat, puteo ad dextram, cursu iterum leni.`,
  });
  const greet = book.passage(texts, exercise, [folio("A", "3v", 1, 9), page(19)], {
    translation: `
      From there he goes on until the elm is beside him, leaves the circle, and rides straight to the stair. A spear's
      length before it he halts and makes the greeting. The greeting is this: he lets the point sink before him until it
      nearly touches the ground, waits while he draws one breath, raises it again, and lays the spear back by the boot.
      All this while let him look at those he greets and not at his spear; for the spear will find the ground of itself,
      but they wish to be found.`,
    original: `
      Inde pergit donec ulmum iuxta se habeat, ibi circulum relinquit et recta ad gradus equitat. Spatio unius hastae ante
      eos consistit et salutationem facit. Salutatio haec est: cuspidem ante se demittit, donec terram paene tangat; manet
      dum semel spiritum ducit; rursus eam erigit, et hastam ad ocream reponit. Interim eos spectet quos salutat, non
      hastam: hasta enim terram sua sponte inveniet, illi autem inveniri volunt.`,
  });
  return { setOut, point, greet };
}
