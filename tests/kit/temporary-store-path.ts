/** tests/kit/temporary-store-path.ts - a place for a store or other files that lasts as long as one test file.
 *  Import it in test files only: it removes its folders through vitest's hook when the file is done. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";

const folders: string[] = [];

afterAll(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** The absolute path of a new, empty folder. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "passagework-test-"));
  folders.push(folder);
  return folder;
}

/** The absolute path of a store that does not exist yet, in a folder of its own (its -wal and -shm lie there too). */
export function temporaryStorePath(): string {
  return join(temporaryFolder(), "store.sqlite");
}
