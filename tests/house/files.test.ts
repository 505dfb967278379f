/** tests/house/files.test.ts - the house rules a newcomer can rely on: one concept a file, named for it, with a header;
 *  short enough to hold in the head; nothing at the top but what the layout names. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { repoRoot } from "../../server/paths.ts";
import { pathsIn, sourceFiles } from "../kit/source-files.ts";

const files = sourceFiles();
const LONGEST = 500;

/** What the top level may hold: the layout, what tools demand, and what is made and ignored. */
const AT_THE_TOP = [
  ["README.md", "DEVELOPERS.md", "LICENSE", "package.json", "tsconfig.json"],
  ["server", "client", "schema", "tests", "shared"],
  ["package-lock.json", ".biome.json", ".ci", ".git", ".gitattributes", ".gitignore", ".npmrc"],
  ["node_modules", "dist", "data", ".cache"],
].flat();

/** The header comment a file opens with; "" when it opens with something else. */
function header(text: string): string {
  return /^(?:#!.*\n)?\/\*\*[\s\S]*?\*\//.exec(text)?.[0] ?? "";
}

/** An index.ts of bare re-exports needs no header: it is the list of what its room offers. */
function opensWell(path: string, text: string): boolean {
  const bare = /^(export (\*|type \{[^}]*\}|\{[^}]*\}) from "[^"]+";\s*)+$/;
  if (path.endsWith("/index.ts") && bare.test(text)) return true;
  return header(text).startsWith(path.startsWith("tests/") ? "/** " : `/** ${path} - `);
}

/** The header of a long file says why it is long, in a sentence with the word "long". */
function saysWhyLong(text: string): boolean {
  return /\blong\b/i.test(header(text));
}

describe("files", () => {
  test("each opens with a header, which outside tests/ begins with the file's own path", () => {
    expect(opensWell("shared/a.ts", "/** shared/a.ts - what it is for. */\nexport const a = 1;\n")).toBe(true);
    expect(opensWell("shared/a.ts", "/** shared/b.ts - copied and not changed. */\n")).toBe(false);
    expect(opensWell("shared/a.ts", "export const a = 1;\n")).toBe(false);
    expect(opensWell("tests/text/a.test.ts", "/** Quotes. Rules T9-T12. */\n")).toBe(true);
    expect(opensWell("shared/text/index.ts", 'export * from "./a.ts";\n')).toBe(true);
    expect(opensWell("shared/text/index.ts", 'export * from "./a.ts";\nexport const a = 1;\n')).toBe(false);
    expect(files.filter((file) => !opensWell(file.path, file.text)).map((file) => file.path)).toEqual([]);
  });

  test(`none is longer than ${LONGEST} lines unless its header says why it is long`, () => {
    expect(saysWhyLong("/** a.ts - a table. Long, because it is one table. */\n")).toBe(true);
    expect(saysWhyLong("/** a.ts - a table. */\nconst long = 1;\n")).toBe(false);
    const tooLong = files
      .map((file) => ({ ...file, lines: file.text.split("\n").length - 1 }))
      .filter((file) => file.lines > LONGEST && !saysWhyLong(file.text))
      .map((file) => `${file.path}: ${file.lines} lines`);
    expect(tooLong).toEqual([]);
  });

  test("none is named for nothing in particular", () => {
    const empty = /(^|[/.-])(utils?|helpers?|common|misc|stuff)([/.-]|$)/i;
    expect(empty.test("shared/text/utils.ts")).toBe(true);
    expect(empty.test("shared/text/map-helpers.ts")).toBe(true);
    expect(empty.test("shared/commonplace.ts")).toBe(false);
    expect(files.map((file) => file.path).filter((path) => empty.test(path))).toEqual([]);
  });

  test("the top level holds only what the layout names", () => {
    expect(readdirSync(repoRoot).filter((name) => !AT_THE_TOP.includes(name))).toEqual([]);
  });

  test("each test file lies in a room and ends in .test.ts", () => {
    const strays = pathsIn("tests").filter(
      (path) => /\.(spec|test)\./.test(path) && !/^tests\/[\w-]+\/.*\.test\.tsx?$/.test(path),
    );
    expect(strays).toEqual([]);
  });
});

describe("the lock file", () => {
  const lock = JSON.parse(readFileSync(join(repoRoot, "package-lock.json"), "utf8"));
  const manifest = JSON.parse(readFileSync(join(repoRoot, "package.json"), "utf8"));

  test("names no address: it must serve whatever registry a machine is set to", () => {
    const tied = Object.entries<{ resolved?: string }>(lock.packages)
      .filter(([, entry]) => /^https?:/.test(entry.resolved ?? ""))
      .map(([place]) => place);
    expect(tied).toEqual([]);
  });

  test("is in step with package.json", () => {
    for (const kind of ["dependencies", "devDependencies", "engines"] as const) {
      expect(lock.packages[""][kind]).toEqual(manifest[kind]);
    }
  });
});
