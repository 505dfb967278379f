/** server/publish/write/face-files.ts - the whole faces papers are set in, from the font packages alone.
 *  May import: Node's own modules, server/paths, siblings. No face of the machine is ever used: the same packages give the
 *  same paper. Read once and kept. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { repoRoot } from "../../paths.ts";
import { type CodePoints, codePointsOf } from "./face-coverage.ts";

const FOLDER = join(repoRoot, "node_modules", "@expo-google-fonts");

/** Family and file of each face: Gentium Plus for what was written, Source Sans 3 for what the program says, Amiri for
 *  Arabic script. Every style that is asked for is there, so that none is looked for on the machine. */
const FACES = [
  ["Gentium Plus", "gentium-plus/GentiumPlus_400Regular.ttf"],
  ["Gentium Plus", "gentium-plus/GentiumPlus_400Regular_Italic.ttf"],
  ["Gentium Plus", "gentium-plus/GentiumPlus_700Bold.ttf"],
  ["Gentium Plus", "gentium-plus/GentiumPlus_700Bold_Italic.ttf"],
  ["Source Sans 3", "source-sans-3/400Regular/SourceSans3_400Regular.ttf"],
  ["Source Sans 3", "source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf"],
  ["Source Sans 3", "source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf"],
  ["Source Sans 3", "source-sans-3/600SemiBold_Italic/SourceSans3_600SemiBold_Italic.ttf"],
  ["Amiri", "amiri/400Regular/Amiri_400Regular.ttf"],
  ["Amiri", "amiri/400Regular_Italic/Amiri_400Regular_Italic.ttf"],
  ["Amiri", "amiri/700Bold/Amiri_700Bold.ttf"],
  ["Amiri", "amiri/700Bold_Italic/Amiri_700Bold_Italic.ttf"],
] as const;

export interface Face {
  family: (typeof FACES)[number][0];
  path: string;
  bytes: Buffer;
}

let kept: Face[] | null = null;

export function faces(): readonly Face[] {
  kept ??= FACES.map(([family, file]) => {
    const path = join(FOLDER, file);
    return { family, path, bytes: readFileSync(path) };
  });
  return kept;
}

let keptPoints: CodePoints[] | null = null;

/** What each family can print whatever its style: the characters that all its faces have. */
export function pointsOfFamilies(): readonly CodePoints[] {
  const families = new Set(FACES.map(([family]) => family));
  keptPoints ??= [...families].map((name) => {
    const group = faces().filter(({ family }) => family === name);
    const [first = new Set<number>(), ...others] = group.map(({ bytes }) => codePointsOf(bytes));
    return new Set([...first].filter((point) => others.every((set) => set.has(point))));
  });
  return keptPoints;
}
