/** tests/import/beta-code.test.ts - [I10] Greek in ASCII letters, as the public table of Beta Code gives it. */
import { describe, expect, test } from "vitest";
import { betaToGreek, looksLikeBetaCode } from "../../server/import/beta-code.ts";

describe("[I10] Beta Code", () => {
  test.each([
    ["a)/nqrwpos", "ἄνθρωπος"],
    ["*)/aggelos", "Ἄγγελος"],
    ["*(ella/s", "Ἑλλάς"],
    ["i(ppiko/s", "ἱππικός"],
    ["r(a|/dion", "ῥᾴδιον"],
    ["r(a/|dion", "ῥᾴδιον"],
    ["a)i+/sson", "ἀΐσσον"],
    ["th=s: a)ll' ou)de/n;", "τῆς· ἀλλ’ οὐδέν;"],
    ["s1 s2 sofo/s", "σ ς σοφός"],
    ["<po/s>oi", "<πόσ>οι"],
    ["(e)n toi=s)", "(ἐν τοῖς)"],
    ["(to\\ de)", "(τὸ δε)"],
    ["ou) ga\\r", "οὐ γὰρ"],
    ["12 [a]", "12 [α]"],
    ["\u03b1", "\u03b1"],
    ["", ""],
  ])("%s", (beta, greek) => {
    expect(betaToGreek(beta)).toBe(greek.normalize("NFC"));
  });

  test.each([
    ["to\\n i(/ppon e)/xei", true],
    ["τὸν ἵππον", false],
    ["ton hippon echei", false],
    ["", false],
  ])("looks like it: %s", (words, expected) => {
    expect(looksLikeBetaCode(words)).toBe(expected);
  });
});
