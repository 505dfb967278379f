/** server/demo/spears-words.ts - the fourth exercise of the invented book: its words, Latin and English.
 *  May import: siblings. */
import { folio, page } from "./leaf.ts";
import type { SecondPart } from "./second-part.ts";

export type SpearsWords = ReturnType<typeof spearsWords>;

export function spearsWords({ book, texts }: SecondPart, exercise: string) {
  const out = book.passage(texts, exercise, [folio("A", "6v", 9, 16), folio("C", "2r", 1, 7), page(26)], {
    translation: `
      A groom⟦note: agaso; C has asinus, an ass.⟧ plants the lesser spear in the ground before the trough, its point down
      and its butt as high as a rider's hand, and comes away. Then let the rider go out from the gate at a walk with the
      wall upon his right, the spear low beside the right boot, and follow the wall as far as the trough; and there he
      halts, since he has three things to do and two hands to do them with.`,
    original: `
      Agaso hastam minorem ante alveum in terram defigit, cuspide deorsum, calce ad altitudinem manus equitis, et abscedit.
      Tum eques a porta exeat passu, muro ad dextram, hasta demissa iuxta ocream dextram, et murum usque ad alveum
      sequatur; ibique consistit, quia tria ei facienda sunt et duae manus quibus faciat.`,
  });
  const taken = book.passage(texts, exercise, [folio("A", "6v", 17, 23), folio("C", "2r", 8, 13), page(26)], {
    translation: `
      He puts away⟦note: seponit; C: deponit.⟧ the spear that he has, and with the free hand takes the lesser, drawing it
      upward and not toward him, and lifts it until the point is above his head. Let him do this without haste, and not
      look for the reins, which are where he left them.`,
    original: `
      Hastam quam habet seponit, et manu vacua minorem capit, sursum eam trahens, non ad se, et tollit donec cuspis supra
      caput sit. Hoc sine festinatione faciat, nec habenas quaerat, quae sunt ubi eas reliquit.`,
  });
  const two = book.passage(texts, exercise, [folio("A", "7r", 1, 6), folio("C", "2r", 14, 19), page(27)], {
    translation: `
      Now he has two spears and one pair of reins, and it will soon be seen which of them he thinks about. Let him sit as
      though he had none of the three; for a horse that feels three things at once obeys the heaviest, and that is the
      rider. He who drops a spear here dismounts for it and goes back to the gate on foot, so that he may remember the
      way.`,
    original: `
      Nunc duas hastas habet et unas habenas, et mox apparebit de quibus cogitet. Ita sedeat quasi horum trium nihil habeat; nam
      equus qui tria simul sentit gravissimo paret, et is est eques. Qui hic hastam amittit, ad eam descendit et pedes ad
      portam redit, ut viae meminerit.`,
  });
  const across = book.passage(texts, exercise, [folio("A", "7r", 7, 13), folio("C", "2v", 1, 6), page(27)], {
    translation: `
      As he leaves the wall, to the left, with the spear lowered, he crosses the court between the well and the boar at
      an easy canter, until he comes to the stone and has the wall upon his left. The line is short and slanting, and the
      boar lies in wait for those who ride it crooked; he has taken more stirrups than spears.`,
    original: `
      Cum murum relinquit, ad laevam, hasta demissa, inter puteum et aprum leni cursu curiam transit, donec ad lapidem
      veniat et murum ad laevam habeat. Linea brevis est et obliqua, et aper iis insidiatur qui eam curvam equitant; plures
      stapedes quam hastas cepit.`,
  });
  const turn = book.passage(texts, exercise, [folio("A", "7r", 14, 19), folio("C", "2v", 7, 11), page(28)], {
    translation: `
      At the stone he draws the point aside, to the side of the hand that has it, so that he may see where he is; and
      once,⟦note: semel; C: bis, twice.⟧ to the right, he turns.⟦note: in dextram vertit.⟧ Nobody has ever asked me what I
      mean by this, from which I conclude that it is clear.`,
    original: `
      Ad lapidem cuspidem ad latus manus quae eam habet deducit, ut videat ubi sit; et semel in dextram vertit. Nemo umquam
      me interrogavit quid hoc significet, unde concludo perspicuum esse.`,
  });
  const ring = book.passage(texts, exercise, [folio("A", "7v", 1, 8), folio("C", "2v", 12, 18), page(28)], {
    translation: `
      By the wall he comes to the stair, and halts. There he hangs the one in the ring and lays the other back by the
      boot, and takes the reins again into the left hand. Those who sit upon the stair look at the ring and not at him,
      and count; and if they count one, he has done what I asked.`,
    original: `
      Iuxta murum ad gradus venit et consistit. Ibi alteram in anulo suspendit, alteram ad ocream reponit, et habenas rursus
      in manum sinistram recipit. Qui in gradibus sedent anulum spectant, non eum, et numerant; et si unam numerant, quod
      petivi fecit.`,
  });
  const home = book.passage(texts, exercise, [folio("A", "7v", 9, 14), folio("C", "2v", 19, 23), page(29)], {
    translation: `
      Then he sets the spear upright, its butt upon his thigh, and rides on by the wall at a walk, past the trough, to the
      gate, and goes out with one spear, as he came in. Meanwhile the groom fetches the other from the ring, and it is for
      him to say whether it hung straight.`,
    original: `
      Deinde hastam erigit, calce super femur posita, et iuxta murum passu, praeter alveum, ad portam pergit, et cum una
      hasta exit, ut intraverat. Agaso interea alteram ex anulo aufert, et eius est dicere num recte pependerit.`,
  });
  const faults = book.passage(texts, exercise, [folio("A", "7v", 15, 20), folio("C", "3r", 1, 5), page(29)], {
    translation: `
      Three faults are common. The first is to take the lesser spear toward oneself, and so to learn what its butt is
      made of. The second is to look for the reins; the third, to find them. He who rides it with a slack hand and a
      quiet leg will hear nothing said of him, which in this court is praise.`,
    original: `
      Tria vitia frequentia sunt. Primum est hastam minorem ad se trahere, et ita discere ex qua re calx facta sit. Secundum est
      habenas quaerere; tertium, invenire. Qui manu laxa et crure quieto equitaverit, nihil de se dici audiet, quod in hac
      curia laus est.`,
  });
  return { out, taken, two, across, turn, ring, home, faults };
}
