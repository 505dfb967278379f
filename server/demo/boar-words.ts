/** server/demo/boar-words.ts - the fifth exercise of the invented book: its words, Latin and English.
 *  May import: siblings. */
import { folio, page } from "./leaf.ts";
import type { SecondPart } from "./second-part.ts";

export type BoarWords = ReturnType<typeof boarWords>;

export function boarWords({ book, texts }: SecondPart, exercise: string) {
  const out = book.passage(texts, exercise, [folio("A", "8r", 1, 7), folio("C", "3r", 6, 11), page(30)], {
    translation: `
      The boar is angry because he cannot come to you; therefore you must go to him, and it is proper that he should see
      you coming by more roads than one. Let the rider go out from the gate at a canter with the wall upon his left, the
      spear upright and its butt upon his thigh, past the elm and past the stone, as far as the stair.`,
    original: `
      Aper irascitur quia ad te venire non potest; itaque tibi ad eum eundum est, et decet ut te pluribus viis venientem
      videat. Eques a porta exeat cursu, muro ad laevam, hasta erecta, calce eius super femur posita, praeter ulmum et
      praeter lapidem, usque ad gradus.`,
  });
  const snake = book.passage(texts, exercise, [folio("A", "8r", 8, 14), folio("C", "3r", 12, 18), page(30)], {
    translation: `
      From the stair he comes down the court as a snake comes down a road, in three⟦note: C: four.⟧ loops from wall to
      wall, so that he crosses the middle first between the boar and the well and then between the well and the gate, and
      no loop is larger than its brothers. Let the spear stand while the horse bends: whoever watches the point should
      believe that it goes straight.`,
    original: `
      A gradibus per curiam descendit ut serpens per viam, tribus flexibus a muro ad murum, ita ut medium primo inter aprum
      et puteum transeat, deinde inter puteum et portam, neque ullus flexus fratribus maior sit. Hasta stet dum equus
      flectitur: qui cuspidem spectat, eam recta ire credat.`,
  });
  const corner = book.passage(texts, exercise, [folio("A", "8r", 15, 21), folio("C", "3v", 1, 6), page(31)], {
    translation: `
      So he comes to the gate, and rides straight on into the corner. There he halts, and with the spear lowered beside the
      boot he turns until he has the whole court before him. Here the horse must be collected, for behind him
      there is nothing but wall; and a horse is never so well collected as when there is nowhere else to go.`,
    original: `
      Ita ad portam venit, et recta in angulum pergit. Ibi consistit, et hasta iuxta ocream demissa vertit donec totam curiam
      ante se habeat. Hic equus colligendus est, nam post eum nihil nisi murus est; neque umquam equus melius
      colligitur quam cum alio ire non potest.`,
  });
  const charge = book.passage(texts, exercise, [folio("A", "8v", 1, 8), folio("C", "3v", 7, 13), page(31)], {
    translation: `
      Then he slackens the reins⟦note: habenas remittit; C adds in collum.⟧ and rides at the boar, thirty-eight paces at
      full speed, on such a line that he will have the boar upon his right and beyond the boar the stair. He takes the
      spear with either hand,⟦note: utraque manu.⟧ shuts it beneath the arm, and looks over it at the place he means and
      not at the boar, whose face is not well made.`,
    original: `
      Tum habenas remittit et in aprum equitat, triginta octo passus, pleno cursu, ea linea ut aprum ad dextram habiturus
      sit et ultra aprum gradus. Hastam utraque manu capit, sub brachio claudit, et super eam locum spectat quem vult, non
      aprum, cuius facies parum bene facta est.`,
  });
  const thrust = book.passage(texts, exercise, [folio("A", "8v", 9, 14), folio("C", "3v", 14, 18), page(32)], {
    translation: `
      Behind the boar stands one on foot with a stave, who is to strike at the spear as it comes; but he has been told to
      be late, and let the rider not know it. When the boar's shoulder is beside his knee he thrusts, low and a little
      before him, and does not wait to see what he has done.`,
    original: `
      Post aprum stat pedes cum fuste, qui hastam venientem feriat; sed tardus esse iussus est, idque eques nesciat. Cum
      armus apri iuxta genu eius est, ferit demisse et paulum ante se, neque exspectat ut videat quid fecerit.`,
  });
  const breath = book.passage(texts, exercise, [folio("A", "8v", 15, 18), page(32)], {
    translation: `
      In the same breath he […]⟦note: re....it: four letters are rubbed away, by a thumb.⟧ the spear, and rides on, letting
      the canter slacken of itself, as a ball does that was thrown at nothing. Let him not look behind him. A boar that is
      dead will be dead when he comes back, and one that is not will make it known.`,
    original: `
      Eodem spiritu hastam re[....]it⟦note: Four letters are rubbed away.⟧ et pergit, cursum sua sponte remittens, sicut
      pila quae in nihil iacta est. Ne respiciat. Aper mortuus redeunti mortuus erit; qui non est, ipse indicabit.`,
  });
  const stair = book.passage(texts, exercise, [folio("A", "9r", 1, 6), folio("C", "4r", 1, 5), page(33)], {
    translation: `
      Before the stair he halts, gathers horse and reins together, and makes the greeting as I have taught it, with the
      spear that was in the boar; it need not be wiped. If those who sit upon the stair have risen, he rode too near them;
      if they are asleep, he rode too far away; in neither case let him ask.`,
    original: `
      Ante gradus consistit, equum et habenas colligit, et salutationem facit ut docui, ea hasta quae in apro fuit; tergere
      non opus est. Si qui in gradibus sedent surrexerunt, nimis prope equitavit; si dormiunt, nimis procul; neutro casu
      interroget.`,
  });
  const beginner = book.passage(texts, exercise, [folio("A", "9r", 7, 12), page(33)], {
    translation: `
      For a beginner let the straw be taken from the stake and the stake be taken away, and let him ride the same lines at
      a walk and thrust at nothing; for nothing is where most men's spears go, and it is useful to know the way there.
      When he no longer looks down give him back the boar, and after the boar the man.`,
    original: `
      Tironi stramen a palo tollatur et palus auferatur, easdemque lineas passu equitet et in nihil feriat; nam in nihil
      plerorumque hastae eunt, et illuc viam novisse prodest. Cum deorsum iam non spectat, redde ei aprum, et post aprum
      hominem.`,
  });
  return { out, snake, corner, charge, thrust, breath, stair, beginner };
}
