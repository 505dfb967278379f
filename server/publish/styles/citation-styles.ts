/** server/publish/styles/citation-styles.ts - the citation styles there are: the program's own, and those put into a folder.
 *  May import: Node's own modules, shared/cite, server/store, server/errors, siblings. The folder is `styles` beside the store; styles
 *  are CSL files, locales beside them are named locales-LANGUAGE.xml. A broken file is told of and never stops the rest. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type CslEngine, type CslNode, openCslEngine } from "../../../shared/cite/csl-engine.ts";
import { compareCodeUnits } from "../../../shared/rank.ts";
import { done, type Outcome, refused } from "../../errors.ts";
import type { Store } from "../../store/index.ts";
import { type CslProblem, problemWithStyle, type ReadCsl, readCsl, styleTitle } from "./read-csl.ts";

export interface StyleEntry {
  /** What a paper asks for it by: its title; with the name of its file where two have one title. */
  name: string;
  file: string;
  /** Whether it comes with the program. */
  own: boolean;
  /** Whether it cites in notes. */
  inNotes: boolean;
}

export interface StyleList {
  /** The program's own first, then by name. */
  styles: StyleEntry[];
  broken: { file: string; sentence: string }[];
}

/** The style a paper is asked for with where nobody has chosen one. */
export const DEFAULT_STYLE = "notes and bibliography";
/** Language of what the program writes; styles that have a language of their own keep it. */
const LANGUAGE = "en-GB";

/** Where a user's own styles lie; null for a store that is not kept. */
export function stylesFolderOf(store: Store): string | null {
  return store.path === ":memory:" ? null : join(dirname(store.path), "styles");
}

export function listStyles(folder: string | null): StyleList {
  const { found, broken } = readStyles(folder);
  return { styles: found.map(({ entry }) => entry), broken };
}

/** Another whenever a file of a style or a locale is put there, taken away or changed. */
export function stampOfStyles(folder: string | null): string {
  const places = folder === null ? [OWN] : [OWN, folder];
  const files = places.flatMap((place) => filesIn(place, /\.(csl|xml)$/i).map((file) => [place, file] as const));
  const hashes = files.map(([place, file]) => [
    file,
    readOnce(place, file, /csl$/i.test(file) ? "style" : "locale").hash,
  ]);
  return JSON.stringify(hashes);
}

/** The engine of a style by its name. Refused when there is no such style, or when it cannot be used. */
export function openStyle(folder: string | null, name: string): Outcome<CslEngine> {
  const { found, broken } = readStyles(folder);
  const style = found.find(({ entry }) => entry.name === name);
  if (style === undefined) {
    const names = found.map(({ entry }) => `“${entry.name}”`).join(", ");
    const trouble = broken.map(({ sentence }) => ` ${sentence}`).join("");
    return refused("style_unknown", `There is no citation style “${name}”. Choose one of ${names}.${trouble}`);
  }
  return engineOf(style, folder);
}

interface FoundStyle {
  entry: StyleEntry;
  read: ReadCsl;
  hash: string;
}

const OWN = dirname(fileURLToPath(import.meta.url));

function readStyles(folder: string | null): { found: FoundStyle[]; broken: StyleList["broken"] } {
  const broken: StyleList["broken"] = [];
  const own = filesIn(OWN, /\.csl$/i).flatMap((file) => readStyle(OWN, file, true, broken) ?? []);
  const added =
    folder === null ? [] : filesIn(folder, /\.csl$/i).flatMap((file) => readStyle(folder, file, false, broken) ?? []);
  const inOrder = (list: FoundStyle[]): FoundStyle[] =>
    list.sort((a, b) => compareCodeUnits(a.entry.name, b.entry.name));
  const taken = new Set<string>();
  const found = [...inOrder(own).sort((a, b) => Number(isDefault(b)) - Number(isDefault(a))), ...inOrder(added)];
  for (const { entry } of found) {
    if (taken.has(entry.name)) entry.name = `${entry.name} (${entry.file})`;
    taken.add(entry.name);
  }
  return { found, broken };
}

const isDefault = ({ entry }: FoundStyle): boolean => entry.name === DEFAULT_STYLE;

function readStyle(folder: string, file: string, own: boolean, broken: StyleList["broken"]): FoundStyle | null {
  const known = readOnce(folder, file, "style");
  if (known.problem !== null) {
    broken.push({ file, sentence: brokenSentence(file, known.problem) });
    return null;
  }
  const { read, hash } = known;
  const entry = { name: styleTitle(read), file, own, inNotes: read.root.attrs.class === "note" };
  return { entry, read, hash };
}

type ReadFile = { hash: string } & ({ problem: CslProblem; read: null } | { problem: null; read: ReadCsl });

/** Files that were read, by the hash of their bytes: large styles take long. The oldest goes where there are many. */
const readFiles = new Map<string, ReadFile>();
const KEPT_FILES = 40;
/** Larger than any style there is, in bytes. */
const LARGEST = 4_000_000;

function readOnce(folder: string, file: string, root: "style" | "locale"): ReadFile {
  const bytes = bytesOf(join(folder, file));
  if (bytes === null) {
    return { hash: "", problem: { line: 1, says: "it cannot be opened" }, read: null };
  }
  const hash = `${root} ${createHash("sha256").update(bytes).digest("hex")}`;
  const known = readFiles.get(hash);
  if (known !== undefined) return known;
  const reading: ReturnType<typeof readCsl> =
    bytes.byteLength > LARGEST
      ? { ok: false, problem: { line: 1, says: "it is larger than any style is" } }
      : readCsl(new TextDecoder().decode(bytes), root);
  const wrong = reading.ok ? (root === "style" ? problemWithStyle(reading.read) : null) : reading.problem;
  const made: ReadFile =
    reading.ok && wrong === null
      ? { hash, problem: null, read: reading.read }
      : { hash, problem: wrong ?? { line: 1, says: "it cannot be read" }, read: null };
  keep(readFiles, hash, made, KEPT_FILES);
  return made;
}

function keep<T>(kept: Map<string, T>, key: string, value: T, most: number): void {
  for (const oldest of kept.keys()) {
    if (kept.size < most) break;
    kept.delete(oldest);
  }
  kept.set(key, value);
}

function bytesOf(path: string): Uint8Array | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}

function filesIn(folder: string, pattern: RegExp): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => pattern.test(name))
      .sort(compareCodeUnits);
  } catch {
    // No such folder: nobody has added a style.
    return [];
  }
}

/** Engines by the hashes of their style and locale: to build one can take seconds. */
const engines = new Map<string, CslEngine>();
const KEPT_ENGINES = 12;

function engineOf({ entry, read, hash }: FoundStyle, folder: string | null): Outcome<CslEngine> {
  const locales = new Map<string, CslNode | null>();
  const hashes: string[] = [hash];
  for (const place of [OWN, folder]) {
    if (place === null) continue;
    for (const file of filesIn(place, /^locales-[A-Za-z-]+\.xml$/)) {
      const language = file.slice("locales-".length, -".xml".length);
      const locale = readOnce(place, file, "locale");
      locales.set(language, locale.read === null ? null : locale.read.root);
      hashes.push(`${language} ${locale.hash}`);
      // A broken locale stops only the styles that need it.
      if (locale.problem !== null && needs(read, language)) {
        return refused("style_broken", brokenSentence(file, locale.problem));
      }
    }
  }
  const key = hashes.join("\n");
  const known = engines.get(key);
  if (known !== undefined) return done(known);
  const language = read.root.attrs["default-locale"];
  if (language !== undefined && !language.startsWith("en") && !locales.get(language)) {
    return refused(
      "style_broken",
      `The style “${entry.name}” (${entry.file}) is in the language ${language}, for which there is no file locales-${language}.xml. Put one beside it, or choose another style.`,
    );
  }
  const fallback = locales.get(LANGUAGE) ?? null;
  try {
    const engine = openCslEngine(read.root, (tag) => locales.get(tag) ?? fallback, LANGUAGE);
    // A style that only fails when it is used is found out here, not on a paper.
    engine.set({ items: PROBE, calls: [{ source: "probe", where: "p. 1", note: 1 }], uncited: [] });
    keep(engines, key, engine, KEPT_ENGINES);
    return done(engine);
  } catch (error) {
    const says = `the engine cannot use it (${error instanceof Error ? error.message : String(error)})`;
    return refused("style_broken", brokenSentence(entry.file, { line: 1, says }));
  }
}

const PROBE = new Map([
  [
    "probe",
    { type: "book", title: "A title", author: [{ family: "A", given: "B" }], issued: { "date-parts": [[1900]] } },
  ],
]);

/** The locale a style is in, or the one that is taken where it names none or one of its kin. */
function needs({ root }: ReadCsl, language: string): boolean {
  const named = root.attrs["default-locale"] ?? LANGUAGE;
  return named === language || (language === LANGUAGE && named.startsWith("en"));
}

function brokenSentence(file: string, { line, says }: CslProblem): string {
  return `The file ${file} in the folder of citation styles cannot be used: line ${line}: ${says}. Mend it, or take it out of the folder.`;
}
