/** tests/kit/check-data.ts - finds the folder of published texts that some tests check against.
 *  It is no part of the project and is never copied into it: it lies beside the project (../shared/data), or where
 *  PASSAGEWORK_CHECK_DATA says. Tests that need it are skipped with a message where it is missing. */
import { existsSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { describe, test } from "vitest";
import { repoRoot } from "../../server/paths.ts";

const folder = process.env.PASSAGEWORK_CHECK_DATA ?? join(dirname(repoRoot), "shared", "data");

/** The absolute path of a file or folder inside the folder of published texts; null when it is not there. */
export function checkDataPath(...parts: string[]): string | null {
  const path = join(folder, ...parts);
  return existsSync(path) ? path : null;
}

/** A `describe` for tests that need the folder of published texts; `define` is given a function from the parts of a path
 *  to the absolute path, which throws Error when that file is missing from a folder that is otherwise there. Where the
 *  folder is missing `define` is never called, and one skipped test names it. */
export function describeWithCheckData(name: string, define: (path: (...parts: string[]) => string) => void): void {
  describe(name, () => {
    if (!existsSync(folder)) {
      const place = relative(repoRoot, folder);
      test.skipIf(true)(`needs the folder ${place}, which is missing here (or set PASSAGEWORK_CHECK_DATA)`, () => {});
      return;
    }
    define((...parts) => {
      const path = checkDataPath(...parts);
      if (path === null)
        throw new Error(`The folder of published texts has no ${join(...parts)}; look at its list of sources.`);
      return path;
    });
  });
}
