/** tests/kit/source-files.ts - the project's own source files, for the tests that read them as text. */
import { readdirSync, readFileSync } from "node:fs";
import { join, relative, sep } from "node:path";
import { repoRoot } from "../../server/paths.ts";

export const FOLDERS = ["schema", "shared", "server", "client", "tests"] as const;
export type Folder = (typeof FOLDERS)[number];

/** `path` is from the top of the project, with `/` on every system. */
export type SourceFile = { folder: Folder; path: string; text: string };

const CODE = /\.(ts|tsx|mjs)$/;

/** Every code file of the five folders, sorted by path. */
export function sourceFiles(): SourceFile[] {
  return FOLDERS.flatMap((folder) =>
    pathsIn(folder)
      .filter((path) => CODE.test(path))
      .map((path) => ({ folder, path, text: readFileSync(join(repoRoot, path), "utf8") })),
  );
}

/** Every file of a folder at the top, from the top, sorted. Throws when the folder is not there. */
export function pathsIn(folder: string): string[] {
  return readdirSync(join(repoRoot, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => relative(repoRoot, join(entry.parentPath, entry.name)).split(sep).join("/"))
    .sort();
}
