/** A rule that somebody set aside at a step prints on every paper of the exercise, with what it rests on. */
import { describe, expect, test } from "vitest";
import type { PaperAsk } from "../../schema/paper.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { RULES_TABLE } from "../../shared/ride/rules/index.ts";
import { idOf } from "../drill/build-rows.ts";
import { blocksThat, plain, printed } from "./paper-lines.ts";
import { askFor, NO_FILES, smallBook } from "./small-book.ts";

const KINDS: PaperAsk["kind"][] = ["ride sheet", "class handout", "caller's sheet", "appendix"];
const [rule] = RULES_TABLE;
const circle = idOf("The circle");

/** The first rule of the table set aside at the second step. */
const rows = smallBook((book) => {
  book.put("waivers", {
    id: idOf("waiver"),
    rule: rule?.code ?? "",
    element: idOf("Raise the spear"),
    reason: "The horse knows it",
    basis: [{ is: "premise", text: "It was bred to it" }],
  });
}).rows;

function setAside(kind: PaperAsk["kind"], ask: Partial<PaperAsk> = {}, of = rows) {
  return blocksThat(printed(paperOf(of, askFor(kind, [circle], ask), NO_FILES)), "paragraph").flatMap((block) => {
    const says = plain(block.words);
    return says.startsWith("Set aside") ? [{ says, of: block.of }] : [];
  });
}

const cut = (step: string): Partial<PaperAsk> => ({
  parts: [{ exercise: circle, from: idOf(step), to: idOf(step), variant: null }],
});

describe("a rule set aside", () => {
  test.each(KINDS)("is told on a %s with its sentence, its step, the reason and the evidence", (kind) => {
    const sentence = rule?.sentence.replace(/\.$/, "");
    expect(setAside(kind)).toEqual([
      {
        says: `Set aside at step 2: “${sentence}.” The horse knows it. It was bred to it.`,
        of: [{ kind: "waivers", id: idOf("waiver") }],
      },
    ]);
  });

  test.each(KINDS)("is told on a %s of a part only where its step is printed", (kind) => {
    expect(setAside(kind, cut("Raise the spear"))).toHaveLength(1);
    expect(setAside(kind, cut("Ride the circle"))).toEqual([]);
  });

  test.each(KINDS)("leaves no trace on a %s where there is none", (kind) => {
    expect(setAside(kind, {}, smallBook().rows)).toEqual([]);
  });
});
