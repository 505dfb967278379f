/** server/import/tei-language.ts - languages of a TEI file as BCP 47, and Greek that is written in Beta Code.
 *  May import: siblings. Keeps rule I10. */
import { betaToGreek, looksLikeBetaCode } from "./beta-code.ts";
import type { XmlElement } from "./xml-reader.ts";

const NAMES: ReadonlyMap<string, string> = new Map([
  ["greek", "grc"],
  ["gre", "grc"],
  ["latin", "la"],
  ["lat", "la"],
  ["english", "en"],
  ["eng", "en"],
  ["german", "de"],
  ["ger", "de"],
  ["deu", "de"],
  ["french", "fr"],
  ["fre", "fr"],
  ["fra", "fr"],
  ["italian", "it"],
  ["ita", "it"],
  ["spanish", "es"],
  ["spa", "es"],
  ["arabic", "ar"],
  ["ara", "ar"],
  ["persian", "fa"],
  ["per", "fa"],
  ["fas", "fa"],
]);

/** A language as BCP 47 where the word is known or already has that shape, else empty. */
export const languageTag = (written: string): string => {
  const known = NAMES.get(written.trim().toLowerCase());
  if (known !== undefined) return known;
  return /^[A-Za-z]{2,3}(-[A-Za-z0-9]{1,8})*$/.test(written.trim()) ? written.trim().slice(0, 40) : "";
};

/** The language an element declares for itself, else the one around it. */
export const languageIn = (element: XmlElement, around: string): string => {
  const own = element.attributes["xml:lang"] ?? element.attributes.lang;
  return own === undefined ? around : languageTag(own) || own;
};

const isGreek = (language: string) => /^(grc|el)$/.test(language);

const SAMPLE_LENGTH = 200_000;

/** True when the Greek of this tree is written in Beta Code; all of it is then, for nobody mixes the two. */
export const greekIsBetaCode = (root: XmlElement, language: string): boolean => {
  const runs: string[] = [];
  let length = 0;
  const gather = (element: XmlElement, around: string): void => {
    const own = languageIn(element, around);
    for (const child of element.children) {
      if (length > SAMPLE_LENGTH) return;
      if (typeof child !== "string") gather(child, own);
      else if (isGreek(own) && child.trim() !== "") {
        runs.push(child);
        length += child.length;
      }
    }
  };
  gather(root, language);
  return looksLikeBetaCode(runs.join(" "));
};

/** A run of words in `language`, its Beta Code read as Greek when `betaCode` says so. */
export const readRun = (run: string, language: string, betaCode: boolean): string =>
  betaCode && isGreek(language) ? betaToGreek(run) : run;
