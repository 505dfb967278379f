/** tests/house/imports.test.ts - dependencies point one way: schema <- shared <- server and client; tests on top.
 *  The linter and the compiler guard the same; this test reads the statements themselves and knows what each folder may have. */
import { readFileSync } from "node:fs";
import { dirname, join, posix } from "node:path";
import { describe, expect, test } from "vitest";
import { repoRoot } from "../../server/paths.ts";
import { importStatements, withoutComments } from "../kit/import-statements.ts";
import { type Folder, type SourceFile, sourceFiles } from "../kit/source-files.ts";

const files = sourceFiles();
const manifest = JSON.parse(readFileSync(join(repoRoot, "package.json"), "utf8"));
const published = Object.keys(manifest.dependencies);
const development = Object.keys(manifest.devDependencies);

/** Folders whose files a folder may import. */
const MAY_IMPORT: Record<Folder, Folder[]> = {
  schema: ["schema"],
  shared: ["shared", "schema"],
  server: ["server", "shared", "schema"],
  client: ["client", "shared", "schema"],
  tests: ["tests", "client", "server", "shared", "schema"],
};

/** Packages a folder may import; null means all that package.json names as dependencies. */
const MAY_USE: Record<Folder, string[] | null> = {
  schema: ["zod", "prosemirror-model"],
  shared: ["prosemirror-model", "prosemirror-transform", "fractional-indexing", "diff", "citeproc"],
  server: null,
  client: null,
  tests: [...published, ...development],
};

/** Rooms of shared/ with what else of shared/ and schema/ they may import; a room not named here may have what its headers
 *  say. The longest name that fits is the room. */
const ROOMS: Record<string, string[]> = {
  "shared/decide/": ["shared/decide/"],
  "shared/drawing/": ["shared/drawing/", "shared/ground/", "shared/hands/", "shared/ride/"],
  "shared/ride/": ["schema/", "shared/drill/", "shared/ground/", "shared/hands/", "shared/ride/", "shared/rank.ts"],
  "shared/ride/puzzle/": [
    "schema/",
    "shared/decide/",
    "shared/drill/",
    "shared/ground/",
    "shared/hands/",
    "shared/ride/",
    "shared/rank.ts",
  ],
};

function roomOf(path: string): string | undefined {
  const fitting = Object.keys(ROOMS).filter((room) => path.startsWith(room));
  return fitting.sort((a, b) => b.length - a.length)[0];
}

/** What is wrong with one import of one file of a room; null when nothing is. Only its own files reach into a room inside
 *  another. */
function roomComplaint(path: string, specifier: string): string | null {
  const room = roomOf(path);
  if (room === undefined || !specifier.startsWith(".")) return null;
  const target = posix.normalize(posix.join(dirname(path), specifier));
  const into = roomOf(target);
  const allowed = (ROOMS[room] ?? []).some((from) => target.startsWith(from));
  const nested = into !== undefined && into !== room && into.startsWith(room);
  return allowed && !nested ? null : `${path} may not import ${target}`;
}

/** Files that run in development only, and so may use the development packages. */
const DEVELOPMENT_ONLY = ["server/setup/find-browser.mjs"];

/** What is wrong with one import of one file; null when nothing is. */
function complaint(file: SourceFile, specifier: string): string | null {
  if (specifier.startsWith(".")) {
    const target = posix.normalize(posix.join(dirname(file.path), specifier));
    const folder = target.split("/")[0] as Folder;
    return MAY_IMPORT[file.folder].includes(folder) ? null : `${file.folder}/ may not import ${target}`;
  }
  if (specifier.startsWith("node:")) {
    const buildFile = file.path === "client/vite.config.ts";
    return file.folder === "server" || file.folder === "tests" || buildFile ? null : `${file.folder}/ has no Node`;
  }
  const name = specifier
    .split("/")
    .slice(0, specifier.startsWith("@") ? 2 : 1)
    .join("/");
  const allowed = DEVELOPMENT_ONLY.includes(file.path)
    ? [...published, ...development]
    : (MAY_USE[file.folder] ?? published);
  return allowed.includes(name) ? null : `${file.folder}/ may not use the package ${name}`;
}

describe("imports point one way", () => {
  test("the rule itself tells right from wrong", () => {
    const at = (path: string): SourceFile => ({ folder: path.split("/")[0] as Folder, path, text: "" });
    const cases: [path: string, specifier: string, expected: string | null][] = [
      ["schema/a.ts", "./b.ts", null],
      ["schema/a.ts", "zod", null],
      ["schema/a.ts", "../shared/text/b.ts", "schema/ may not import shared/text/b.ts"],
      ["schema/a.ts", "diff", "schema/ may not use the package diff"],
      ["shared/text/a.ts", "../../schema/b.ts", null],
      ["shared/text/a.ts", "zod", "shared/ may not use the package zod"],
      ["shared/text/a.ts", "node:fs", "shared/ has no Node"],
      ["server/a.ts", "../client/b.tsx", "server/ may not import client/b.tsx"],
      ["server/a.ts", "vitest", "server/ may not use the package vitest"],
      ["client/rooms/a.tsx", "../../server/b.ts", "client/ may not import server/b.ts"],
      ["client/a.tsx", "@preact/signals", null],
      ["client/a.tsx", "../tests/kit/b.ts", "client/ may not import tests/kit/b.ts"],
      ["tests/text/a.test.ts", "../../client/b.tsx", null],
    ];
    for (const [path, specifier, expected] of cases) expect(complaint(at(path), specifier)).toBe(expected);
  });

  test("every file keeps it", () => {
    const complaints = files.flatMap((file) =>
      importStatements(file.text).flatMap(({ specifier }) => {
        const found = complaint(file, specifier);
        return found === null ? [] : [`${file.path}: ${found}`];
      }),
    );
    expect(complaints).toEqual([]);
  });

  test("every room of shared/ that is named keeps to what it may import", () => {
    const cases: [path: string, specifier: string, expected: string | null][] = [
      ["shared/decide/a.ts", "./b.ts", null],
      ["shared/decide/a.ts", "../ride/b.ts", "shared/decide/a.ts may not import shared/ride/b.ts"],
      ["shared/ride/puzzle/a.ts", "../../decide/b.ts", null],
      ["shared/ride/puzzle/a.ts", "../rules/b.ts", null],
      ["shared/ride/rules/a.ts", "../../decide/b.ts", "shared/ride/rules/a.ts may not import shared/decide/b.ts"],
      ["shared/ride/a.ts", "./puzzle/b.ts", "shared/ride/a.ts may not import shared/ride/puzzle/b.ts"],
      ["shared/text/a.ts", "../ride/b.ts", null],
    ];
    for (const [path, specifier, expected] of cases) expect(roomComplaint(path, specifier)).toBe(expected);
    const complaints = files.flatMap(({ path, text }) =>
      importStatements(text).flatMap(({ specifier }) => roomComplaint(path, specifier) ?? []),
    );
    expect(complaints).toEqual([]);
  });

  test("the reader of imports sees every form", () => {
    const text = [
      'import { a } from "./a.ts";',
      'import type {\n  B,\n} from "./b.ts";',
      'export * from "./c.ts";',
      'import "./d.css";',
      'const e = await import("./e.ts");',
      '// import { f } from "./f.ts";',
      '/** import { g } from "./g.ts"; */',
    ].join("\n");
    expect(importStatements(text).map((found) => found.specifier)).toEqual([
      "./a.ts",
      "./b.ts",
      "./c.ts",
      "./d.css",
      "./e.ts",
    ]);
    expect(importStatements(text).filter((found) => found.typeOnly)).toHaveLength(1);
  });
});

describe("shared/ is pure", () => {
  /** The compiler keeps out the DOM and Node; these are part of the language itself. */
  const IMPURE = [
    [/\bDate\.now\b|\bnew Date\(\s*\)/, "reads the clock"],
    [/\bMath\.random\b/, "is random"],
    [/^(export )?(let|var)\s/m, "has a variable of its module that can change"],
    [/\bglobalThis\b/, "reaches for the global object"],
    [/\.(safe)?[pP]arse\(/, "parses (only JSON.parse may)"],
  ] as const;

  function impurities(text: string): string[] {
    const code = withoutComments(text).replaceAll("JSON.parse(", "");
    return IMPURE.filter(([pattern]) => pattern.test(code)).map(([, words]) => words);
  }

  test("the patterns tell right from wrong", () => {
    expect(impurities("const x = Date.now();")).toEqual(["reads the clock"]);
    expect(impurities("new Date('2020-01-01'); JSON.parse('1');\nfunction f() {\n  let y = 1;\n}")).toEqual([]);
    expect(impurities("let count = 0;")).toEqual(["has a variable of its module that can change"]);
    expect(impurities("thing.safeParse(x)")).toEqual(["parses (only JSON.parse may)"]);
  });

  test("every file keeps it", () => {
    const found = files
      .filter((file) => file.folder === "shared")
      .flatMap((file) => impurities(file.text).map((words) => `${file.path} ${words}`));
    expect(found).toEqual([]);
  });
});
