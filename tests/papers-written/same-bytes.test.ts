/** tests/papers-written/same-bytes.test.ts - the same paper gives the same bytes: twice in a run, after other papers, and in
 *  other runs under other time zones and languages of the machine. */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { repoRoot } from "../../server/paths.ts";
import { richPaper } from "./paper-kit.ts";
import { written } from "./written.ts";

const FORMS = ["pdf", "docx", "html"] as const;
const sum = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/** Prints the sums of all forms of the rich paper, in a process of its own. */
const SCRIPT = `
import { createHash } from "node:crypto";
const { richPaper } = await import("./tests/papers-written/paper-kit.ts");
const { writePaper } = await import("./server/publish/write/write-paper.ts");
for (const form of ["pdf", "docx", "html"]) {
  const made = await writePaper(richPaper(), form);
  console.log(createHash("sha256").update(made.value).digest("hex"));
}
`;

describe("the same paper", () => {
  test.each(FORMS)("as %s gives the same bytes twice, and after another paper", async (form) => {
    const first = sum(await written(richPaper(), form));
    await written(richPaper({ size: "A5", notesAt: "end", kind: "class handout" }), form);
    expect(sum(await written(richPaper(), form))).toBe(first);
    expect(sum(await written(richPaper({ title: "Another" }), form))).not.toBe(first);
  });

  test("gives the same bytes under another time zone and language of the machine", async () => {
    const here = await Promise.all(FORMS.map(async (form) => sum(await written(richPaper(), form))));
    for (const [TZ, LANG] of [
      ["Pacific/Kiritimati", "tr_TR.UTF-8"],
      ["America/St_Johns", "C"],
    ]) {
      const told = execFileSync(process.execPath, ["--import", "tsx", "--input-type=module", "-e", SCRIPT], {
        cwd: join(repoRoot),
        encoding: "utf8",
        env: { ...process.env, TZ, LANG, LC_ALL: LANG },
      });
      expect(told.trim().split("\n")).toEqual(here);
    }
  }, 60_000);
});
