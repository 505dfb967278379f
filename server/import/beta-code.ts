/** server/import/beta-code.ts - Greek written in ASCII letters (Beta Code) to Greek letters, composed (NFC).
 *  May import: nothing. Letters a..z, `*` before a capital; marks ) smooth, ( rough, / acute, \ grave, = circumflex,
 *  | iota beneath, + diaeresis, after the letter or between `*` and its capital. Keeps rule I10. */

const PAIRS = "aαbβgγdδeεzζhηqθiιkκlλmμnνcξoοpπrρsσtτuυfφxχyψwωvϝ";
const LETTERS = new Map(
  Array.from({ length: PAIRS.length / 2 }, (_, at) => [PAIRS[2 * at] ?? "", PAIRS[2 * at + 1] ?? ""]),
);
/** In the order in which Unicode composes them. */
const MARKS: readonly (readonly [string, string])[] = [
  ["+", "\u0308"],
  [")", "\u0313"],
  ["(", "\u0314"],
  ["/", "\u0301"],
  ["\\", "\u0300"],
  ["=", "\u0342"],
  ["|", "\u0345"],
];
const STOPS = new Map([
  [":", "·"],
  ["'", "\u2019"],
  ["_", "—"],
]);

// A capital with its marks; a numbered sigma; a letter that can carry marks, with them; any other letter; a stop.
const TOKEN = /\*[)(/\\=+|]{0,4}[A-Za-z][)(/\\=+|]{0,4}|[sS][123]|[aehiouwrAEHIOUWR][)(/\\=+|]{0,4}|[A-Za-z]|[:'_]/g;

const composed = (letter: string, marks: string): string =>
  (letter + MARKS.flatMap(([sign, mark]) => (marks.includes(sign) ? [mark] : [])).join("")).normalize("NFC");

/** At the end of a word that began with a consonant, `)` is a closing bracket of the edition and no breathing. */
const closesBracket = (beta: string, start: number, end: number): boolean => {
  if (beta[end - 1] !== ")" || /[A-Za-z']/.test(beta[end] ?? " ")) return false;
  const before = /[A-Za-z*)(/\\=+|]*$/.exec(beta.slice(Math.max(0, start - 40), start))?.[0] ?? "";
  return /[bgdzqklmncprstfxyv]/i.test(before);
};

/** What a token stands for wherever it stands; null for a sigma, which depends on what follows. */
const lettersOf = (token: string): string | null => {
  if (/^[sS]./.test(token)) return token.endsWith("1") ? "σ" : token.endsWith("2") ? "ς" : "ϲ";
  const roman = /[A-Za-z]/.exec(token)?.[0];
  if (roman === undefined) return STOPS.get(token) ?? token;
  const letter = LETTERS.get(roman.toLowerCase());
  if (letter === undefined) return token;
  if (token.startsWith("*")) return composed(letter.toUpperCase(), token);
  return letter === "σ" ? null : composed(letter, token);
};

/** All tokens that have been met: there are few of them, and composing one is slow. */
const known = new Map<string, string | null>();

/** Converts a run of Beta Code; what is no Beta Code (figures, other brackets, Greek letters) stays. Total. */
export const betaToGreek = (beta: string): string =>
  beta.replace(TOKEN, (token: string, start: number) => {
    let letters = known.get(token);
    if (letters === undefined) {
      letters = lettersOf(token);
      known.set(token, letters);
    }
    const end = start + token.length;
    if (letters === null) {
      // Within a word, also where a bracket of the edition stands before the next letter.
      return /^(?:[A-Za-z']|[\])>}][A-Za-z])/.test(beta.slice(end, end + 2)) ? "σ" : "ς";
    }
    if (token.length > 1 && token.endsWith(")") && !token.startsWith("*") && closesBracket(beta, start, end)) {
      return `${lettersOf(token.slice(0, -1)) ?? ""})`;
    }
    return letters;
  });

/** True when Greek words are written in Beta Code: no Greek letters, and its marks in at least a fifth of the words. */
export const looksLikeBetaCode = (words: string): boolean => {
  if (/[\u0370-\u03ff\u1f00-\u1fff]/.test(words)) return false;
  const all = words.split(/\s+/).filter((word) => /[A-Za-z]/.test(word));
  const marked = all.filter((word) => /[A-Za-z][)(]?[/\\=]|\*[)(]/.test(word));
  return all.length > 0 && marked.length * 5 >= all.length;
};
