/** shared/text/fold.ts - folds a text for searching, so that a word is found however it was written.
 *  May import: nothing. Keeps rules T21 and T22 (shared/text/RULES.md). The values are those of ALA-LC, DIN 31635 and
 *  ISO 233 for Arabic in Latin letters. Offsets: UTF-16 units from 0, half-open. */

export type FoldedText = {
  readonly text: string;
  /** Per unit of the folded text: where what it stands for begins and ends in the original. */
  readonly starts: readonly number[];
  readonly ends: readonly number[];
};

/** The folded form only. Folding a folded text changes nothing. */
export function foldForSearch(text: string): string {
  return foldWithOffsets(text).text;
}

/** The original words behind a place of the folded text. Throws RangeError when the place is not within it. */
export function unfoldRange(folded: FoldedText, from: number, to: number): { from: number; to: number } {
  const start = folded.starts[from];
  const end = folded.ends[to - 1];
  if (start === undefined || end === undefined || to <= from) {
    throw new RangeError(`A folded text of ${folded.text.length} units has no place ${from} to ${to}.`);
  }
  return { from: start, to: end };
}

export function foldWithOffsets(original: string): FoldedText {
  const out: Unit[] = [];
  for (const { 0: cluster, index } of original.matchAll(CLUSTER)) {
    const folded = foldCluster(cluster);
    const end = index + cluster.length;
    const last = out.at(-1);
    if (folded === " " && (last === undefined || last.text === " ")) {
      // Any stretch of white space is one space, and none at the start.
      if (last !== undefined) last.end = end;
      continue;
    }
    for (let at = 0; at < folded.length; at += 1) out.push({ text: folded.charAt(at), start: index, end });
  }
  if (out.at(-1)?.text === " ") out.pop();
  const units = SPELLINGS.reduce<readonly Unit[]>((kept, [pattern, to]) => rewrite(kept, pattern, to), out);
  return {
    text: units.map((unit) => unit.text).join(""),
    starts: units.map((unit) => unit.start),
    ends: units.map((unit) => unit.end),
  };
}

type Unit = { text: string; start: number; end: number };

/** A character with the marks that follow it. */
const CLUSTER = /\P{M}\p{M}*|\p{M}+/gu;

/** Latin letters whose mark stands for a second letter in the other romanizations: DIN and ISO to ALA-LC. */
const DIGRAPHS: Readonly<Record<string, string>> = {
  "t\u0331": "th", // ṯ
  "g\u030c": "j", // ǧ
  "h\u032e": "kh", // ḫ
  "h\u0331": "kh", // ẖ
  "d\u0331": "dh", // ḏ
  "s\u030c": "sh", // š
  "g\u0307": "gh", // ġ
  "c\u030c": "ch", // č
  "z\u030c": "zh", // ž
};

/** Single characters that no decomposition folds. */
const LETTERS: Readonly<Record<string, string>> = {
  ß: "ss",
  æ: "ae",
  œ: "oe",
  ø: "o",
  ł: "l",
  đ: "d",
  ð: "d",
  þ: "th",
  ı: "i",
  ς: "σ",
  ٱ: "ا",
  ى: "ي",
  ی: "ي",
  ک: "ك",
  ة: "ه",
};

/** Hamza and ayn in their several shapes, apostrophes, the prime that parts letters, tatweel: they stand for nothing. */
const DROPPED = /[\u02b9\u02bb\u02bc\u02bd\u02be\u02bf\u2018\u2019\u201b\u2032'`\u0640]|\p{Cf}|\p{M}/gu;

/** Spellings that differ between the romanizations, on letters already folded. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  // The article: always al- (ALA-LC), assimilated to sun letters or without its vowel (DIN).
  [/(?<![\p{L}\p{N}])a?(th|dh|sh|[tdrzsnl])-(?=\1)/gu, "al-"],
  [/(?<![\p{L}\p{N}-])l-(?=\p{L})/gu, "al-"],
  // ū and ī before w and y: qūwah and quwwa, nabīyah and nabiyya.
  [/(?<=u)ww+/gu, "w"],
  [/(?<=i)yy+/gu, "y"],
  // ة at the end of a word: h (ALA-LC) or nothing (DIN).
  [/(?<=\p{L}a)h(?![\p{L}\p{N}])/gu, ""],
];

function foldCluster(cluster: string): string {
  if (cluster.length === 1) {
    const code = cluster.charCodeAt(0);
    if (code > 0x27 && code < 0x7f && code !== 0x60) return cluster.toLowerCase();
  }
  const plain = cluster.normalize("NFKD").toLowerCase().normalize("NFD");
  const digraph = DIGRAPHS[plain.slice(0, 2)];
  if (digraph !== undefined) return digraph;
  const bare = plain.replace(DROPPED, "");
  if (bare === "") return "";
  if (/^\s+$/u.test(bare)) return " ";
  return bare.replace(/[\s\S]/gu, foldLetter);
}

function foldLetter(letter: string): string {
  if (/[\u2010-\u2015\u2212]/u.test(letter)) return "-";
  if (/["\u201c\u201d\u201e\u00ab\u00bb]/u.test(letter)) return '"';
  const code = letter.charCodeAt(0);
  if (code >= 0x0660 && code <= 0x0669) return String(code - 0x0660);
  if (code >= 0x06f0 && code <= 0x06f9) return String(code - 0x06f0);
  return LETTERS[letter] ?? letter;
}

/** Replaces every match. Units that stay keep their own place; new ones stand for the whole match. */
function rewrite(units: readonly Unit[], pattern: RegExp, replacement: string): readonly Unit[] {
  const text = units.map((unit) => unit.text).join("");
  const out: Unit[] = [];
  let done = 0;
  for (const match of text.matchAll(pattern)) {
    const stop = match.index + match[0].length;
    for (const unit of units.slice(done, match.index)) out.push(unit);
    done = stop;
    const start = units[match.index]?.start ?? 0;
    const end = units[stop - 1]?.end ?? start;
    for (const letter of replacement) out.push({ text: letter, start, end });
  }
  // Most texts hold no match of most patterns: then nothing is copied.
  return done === 0 ? units : out.concat(units.slice(done));
}
