/** tests/papers-written/typesetter.test.ts - the thread that sets pages: papers asked for at once do not mix, the program
 *  answers while a long one is set, and a paper that cannot be set leaves the next one alone. */
import { describe, expect, test } from "vitest";
import { withTypesetter } from "../../server/publish/write/pdf/typesetter.ts";
import { sidesOfPaper } from "../../server/publish/write/write-paper.ts";
import { longPaper } from "./long-paper.ts";
import { heading, paperOf } from "./paper-kit.ts";
import { readPdf } from "./read-pdf.ts";
import { written } from "./written.ts";

describe("the type setter", () => {
  test("sets papers that are asked for at once one after another", async () => {
    const titles = ["The gate", "The well", "The elm", "The stair"];
    const made = await Promise.all(
      titles.map((title, index) =>
        written(
          paperOf({ title, kind: index % 2 === 0 ? "ride sheet" : "appendix", blocks: [heading(1, title)] }),
          "pdf",
        ),
      ),
    );
    const read = await Promise.all(made.map(readPdf));
    expect(read.map(({ title }) => title)).toEqual(titles);
    expect(read.map(({ outline }) => outline.map((entry) => entry.title))).toEqual(titles.map((title) => [title]));
  });

  test("lets the program answer while a long paper is set", async () => {
    const paper = longPaper({ exercises: 12, stepsEach: 12, cruxesEach: 6 });
    await written(paper, "pdf");
    let ticks = 0;
    const clock = setInterval(() => {
      ticks += 1;
    }, 10);
    await written({ ...paper, title: "The same, once more" }, "pdf");
    clearInterval(clock);
    expect(ticks).toBeGreaterThan(10);
  });

  test("counts the sides that the PDF has, and none that nobody waits for", async () => {
    const paper = longPaper({ exercises: 4, stepsEach: 12, cruxesEach: 3 });
    const counted = await sidesOfPaper(paper, () => false);
    const pdf = await readPdf(await written(paper, "pdf"));
    expect(counted).toEqual({ ok: true, value: pdf.pages.length });
    expect(await sidesOfPaper(paper, () => true)).toEqual({ ok: true, value: null });
  });

  test("says what is wrong with data it cannot set, and sets the next paper", async () => {
    await expect(withTypesetter((typesetter) => typesetter.set({ title: "no look, no blocks" }))).rejects.toThrow(
      /^The pages could not be set: .*look/,
    );
    const pdf = await readPdf(await written(paperOf({ blocks: [heading(1, "After it")] }), "pdf"));
    expect(pdf.pages[0]).toContain("After it");
  });
});
