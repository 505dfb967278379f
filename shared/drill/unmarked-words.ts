/** shared/drill/unmarked-words.ts - the words of an exercise's passages that no mark speaks of yet.
 *  May import: schema types, shared/cite, shared/text, siblings in shared/drill. Keeps rule D8 (shared/drill/RULES.md). */
import type { Drill } from "../../schema/drill.ts";
import { formatReference } from "../cite/format-reference.ts";
import { untouchedWords } from "../text/untouched-words.ts";
import type { CurrentText, ExerciseRows } from "./exercise-rows.ts";

export interface UnmarkedWords {
  /** Words of all the passages, as they are read first. */
  words: number;
  /** Of these, how many stand in `stretches`. */
  left: number;
  /** The longest first; those of one length in the order of the text. */
  stretches: Drill["treated"]["unmarked"];
}

/** Fewer words than this that only join others are no stretch. */
const SHORTEST = 3;

/** Words that only join others, by language. Between two marked phrases they need no mark of their own. */
const JOINING: { readonly [language: string]: ReadonlySet<string> } = {
  en: new Set(
    "a an and as at but by for from he his in it its nor of on or so that the then this to when with".split(" "),
  ),
  la: new Set("ac ad atque aut autem cum de dum enim et ex in nam nec que sed si tum ubi ut vel".split(" ")),
  grc: new Set("δὲ δέ δ μὲν μέν καὶ καί τε γὰρ γάρ οὖν ἀλλὰ ἀλλά ἐν εἰς ὁ ἡ τὸ τὸν τὴν τοῦ τῆς τῷ τῇ".split(" ")),
};

/** The words of each passage in the translation that comes first, or in the first original where no translation has the
 *  passage. `untreated`: passages noted as not yet treated, whose words are told of there. */
export function unmarkedWords(rows: ExerciseRows, untreated: ReadonlySet<string>): UnmarkedWords {
  const leading = leadingTexts(rows);
  let words = 0;
  const found: { size: number; entry: Drill["treated"]["unmarked"][number] }[] = [];
  for (const passage of rows.passages) {
    const current = leading.get(passage.id);
    if (current === undefined) continue;
    const { text, layer } = current;
    const counted = untouchedWords(
      text.text,
      rows.anchorsIn(passage.id).filter((anchor) => anchor.text === text.id),
    );
    words += counted.words;
    if (untreated.has(passage.id)) continue;
    const [first] = passage.references;
    for (const stretch of counted.stretches) {
      if (onlyJoins(stretch.words, layer.language)) continue;
      const quote = text.text.slice(stretch.from, stretch.to);
      const entry = { reference: first ? formatReference(first) : "", language: layer.language, quote };
      found.push({ size: stretch.words.length, entry });
    }
  }
  // Sorting is stable: stretches of one length stay in the order of the text.
  found.sort((first, second) => second.size - first.size);
  return {
    words,
    left: found.reduce((sum, { size }) => sum + size, 0),
    stretches: found.map(({ entry }) => entry),
  };
}

function onlyJoins(words: readonly string[], language: string): boolean {
  const joining = JOINING[language.split("-")[0] ?? ""];
  return words.length < SHORTEST && joining !== undefined && words.every((word) => joining.has(word.toLowerCase()));
}

/** The text each passage of the exercise is read in first, by passage; a passage without any text has none. */
function leadingTexts(rows: ExerciseRows): Map<string, CurrentText> {
  const ours = new Set(rows.passages.map(({ id }) => id));
  const order = [
    ...rows.layers.filter(({ is }) => is === "translation"),
    ...rows.layers.filter(({ is }) => is === "original"),
  ].map(({ id }) => id);
  const leading = new Map<string, CurrentText>();
  for (const { id, passage } of rows.all("passageTexts")) {
    const current = ours.has(passage) ? rows.currentText(id) : null;
    if (current === null) continue;
    const held = leading.get(passage);
    if (held && order.indexOf(held.layer.id) <= order.indexOf(current.layer.id)) continue;
    leading.set(passage, current);
  }
  return leading;
}
