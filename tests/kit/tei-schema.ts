/** tests/kit/tei-schema.ts - holds documents against TEI's own schema with Debian's `jing`, all in one go.
 *  Tests that need it are skipped with a message where the program or the schema is missing. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "vitest";
import { checkDataPath } from "./check-data.ts";

const schema = checkDataPath("tei", "tei_all-4.12.0.rng");
const hasJing = spawnSync("jing", ["-v"], { encoding: "utf8" }).error === undefined;

/** What the schema says against documents, a line each; empty when all are valid. */
export function teiComplaints(documents: readonly string[]): string[] {
  const folder = mkdtempSync(join(tmpdir(), "passagework-tei-"));
  try {
    const files = documents.map((document, index) => {
      const file = join(folder, `${index}.xml`);
      writeFileSync(file, document);
      return file;
    });
    const said = spawnSync("jing", [schema ?? "", ...files], { encoding: "utf8", maxBuffer: 1 << 24 });
    return said.stdout.split("\n").filter((line) => line !== "");
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** A test that needs the schema and the program that reads it. */
export function testWithTeiSchema(name: string, check: () => void, timeout = 60_000): void {
  const missing = schema === null ? "the schema of TEI" : hasJing ? null : "the program jing";
  if (missing === null) test(name, check, timeout);
  else test.skipIf(true)(`${name}: needs ${missing}, which is missing here`, () => {});
}
