/** A paper holds no clock, no place and no language of the machine: the same bytes under two time zones and two locales. */
import { execFileSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { repoRoot } from "../../server/paths.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { saidAgain } from "../../server/publish/papers/few-words.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { printed } from "./paper-lines.ts";
import { askFor, NO_FILES, smallBook } from "./small-book.ts";

function hashUnder(environment: Record<string, string>): string {
  const script = join(repoRoot, "tests/papers/hash-of-papers.ts");
  return execFileSync(process.execPath, ["--import", "tsx", script], {
    cwd: repoRoot,
    env: { ...process.env, ...environment },
    encoding: "utf8",
  });
}

test("the same bytes on two machines", () => {
  const here = hashUnder({ TZ: "UTC", LANG: "C", LC_ALL: "C" });
  expect(here).toMatch(/^[0-9a-f]{64}\n$/);
  expect(hashUnder({ TZ: "Pacific/Auckland", LANG: "tr_TR.UTF-8", LC_ALL: "tr_TR.UTF-8" })).toBe(here);
}, 60_000);

test("the same paper when it is asked for again", () => {
  const { rows, exercises } = smallBook();
  const made = () => printed(paperOf(rows, askFor("appendix", Object.values(exercises)), NO_FILES));
  expect(made()).toEqual(made());
});

describe("an act said again", () => {
  const { rows, exercises } = smallBook();
  const actions = Object.values(exercises).flatMap((id) =>
    compileDrill(rows, id).elements.flatMap((element) => element.actions),
  );

  test("with all its values is the act", () => {
    expect(actions.length).toBeGreaterThan(8);
    for (const action of actions) expect(saidAgain(action, ({ text }) => text).text).toBe(action.text);
  });

  test("without any has nothing of them", () => {
    const ride = actions.find(({ verb }) => verb === "raise");
    expect(ride && saidAgain(ride, () => null).text).toBe("raise it");
  });
});
