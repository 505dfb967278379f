/** server/publish/page-fonts.ts - the faces a page needs, inside the page, so that it looks and prints the same anywhere.
 *  May import: Node's own modules, server/paths. Only the parts of a face whose characters the page uses are taken, in a
 *  fixed order: the same page gives the same bytes wherever it is made from the same packages. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { repoRoot } from "../paths.ts";

/** Style sheets of the font packages, in the order they are written. */
const SHEETS = [
  "gentium-plus/400.css",
  "gentium-plus/400-italic.css",
  "source-sans-3/400.css",
  "source-sans-3/600.css",
  "amiri/400.css",
] as const;

const FOLDER = join(repoRoot, "node_modules", "@fontsource");

interface FacePart {
  family: string;
  style: string;
  weight: string;
  file: string;
  /** Code points, both ends counted. */
  ranges: [from: number, to: number][];
  /** As written in the sheet. */
  unicodeRange: string;
}

/** The dagger is set in this face alone; it must not pull in the rare letters of all the others. */
const SIGN = "†";
const SIGN_SHEET = "source-sans-3/400.css";

/** `@font-face` rules with the fonts in them for the characters of `text`. */
export function fontFaces(text: string): string {
  const used = new Set([...text.replaceAll(SIGN, "")].map((character) => character.codePointAt(0) ?? 0));
  const signed = text.includes(SIGN) ? [SIGN.codePointAt(0) ?? 0] : [];
  const parts = SHEETS.flatMap((sheet) => {
    const points = sheet === SIGN_SHEET ? [...used, ...signed] : [...used];
    return partsOf(sheet).filter(({ ranges }) => points.some((point) => isWithin(ranges, point)));
  });
  // Digits and signs lie in the ranges of Amiri too; its face is wanted for Arabic script alone.
  const arabic = [...used].some((point) => point >= 0x600 && point <= 0x6ff);
  return parts
    .filter(({ family }) => family !== "Amiri" || arabic)
    .map(faceRule)
    .join("\n");
}

function partsOf(sheet: string): FacePart[] {
  const css = readFileSync(join(FOLDER, sheet), "utf8");
  return [...css.matchAll(/@font-face\s*\{([^}]*)\}/g)].map(([, body = ""]) => {
    const held = (name: string): string => new RegExp(`${name}:\\s*([^;]+);`).exec(body)?.[1]?.trim() ?? "";
    const file = /url\(\.\/([^)]+\.woff2)\)/.exec(body)?.[1];
    if (file === undefined) throw new Error(`The sheet ${sheet} of the font packages names no woff2 file.`);
    const unicodeRange = held("unicode-range");
    return {
      family: held("font-family").replaceAll("'", ""),
      style: held("font-style"),
      weight: held("font-weight"),
      file: join(FOLDER, sheet.split("/")[0] ?? "", file),
      unicodeRange,
      ranges: unicodeRange.split(",").map((range): [number, number] => {
        const [from = "", to = from] = range.trim().replace(/^U\+/i, "").split("-");
        return [Number.parseInt(from, 16), Number.parseInt(to, 16)];
      }),
    };
  });
}

function isWithin(ranges: FacePart["ranges"], point: number): boolean {
  return ranges.some(([from, to]) => from <= point && point <= to);
}

function faceRule({ family, style, weight, file, unicodeRange }: FacePart): string {
  const data = readFileSync(file).toString("base64");
  return `@font-face{font-family:"${family}";font-style:${style};font-weight:${weight};src:url(data:font/woff2;base64,${data}) format("woff2");unicode-range:${unicodeRange}}`;
}
