/** tests/ride-rules/words-behind.test.ts - which words a finding quotes, passage by passage of the invented book; and that every
 *  quotation stands where its finding says. */
import { describe, expect, test } from "vitest";
import type { Citation } from "../../schema/drill.ts";
import type { Finding } from "../../shared/ride/ridden.ts";
import { rideExercise, rideWithContext } from "../../shared/ride/ride-exercise.ts";
import { findingsOf } from "../../shared/ride/rules/index.ts";
import { joinedWords } from "../../shared/ride/rules/telling-words.ts";
import { demoRows } from "../ride/rides.ts";

const { rows, exercises } = demoRows();
type Name = keyof typeof exercises;

/** The reading with this title, as a choice. */
function reads(title: string) {
  const found = rows.readings?.find(({ value }) => value.title.startsWith(title))?.value;
  if (!found) throw new Error(`The invented book has no reading “${title}”.`);
  return [{ crux: found.crux, reading: found.id }];
}

const quotesOf = ({ sentence }: Finding): string[] =>
  [...(/The passage .*?”\.(?= |$)/.exec(sentence)?.[0] ?? "").matchAll(/“([^”]*)”/g)].map(([, quote = ""]) => quote);

function finding(exercise: Name, step: number, rule: string, title?: string): Finding | undefined {
  const choice = title === undefined ? [] : reads(title);
  const { findings, stages } = rideExercise(rows, exercises[exercise], { choice });
  return findings.find((one) => one.rule === rule && stages[one.stage]?.number === step);
}

const ASIDE = "draws the point aside, to the side of the hand that has it";
const TAKES = "with the free hand takes the lesser";

describe("[V71] the words a finding quotes", () => {
  test.each<[Name, number, string, string | undefined, string[]]>([
    ["spears", 5, "own-point", undefined, [ASIDE, "to the right, he turns"]],
    ["spears", 6, "own-point", undefined, [ASIDE, "By the wall he comes to the stair"]],
    ["spears", 7, "own-point", undefined, [ASIDE, "rides on by the wall"]],
    ["spears", 6, "asserted-state", undefined, ["hangs the one in the ring", TAKES]],
    ["spears", 6, "one-thing", undefined, ["lays the other back by the boot"]],
    [
      "spears",
      4,
      "own-point",
      "the spear is lowered to the left",
      ["to the left, with the spear lowered", "crosses the court"],
    ],
    ["spears", 5, "asserted-state", "he turns the spear over", ["to the right, he turns", TAKES]],
    ["boar", 3, "own-point", "he lowers the spear and then turns", ["with the spear lowered beside the boot he turns"]],
    ["boar", 6, "asserted-state", "leaves it", ["makes the greeting as I have taught it", "he […] the spear"]],
    [
      "change",
      3,
      "own-point",
      undefined,
      ["brings the spear across before him", "he turns off the wall in a small half circle and comes back to it"],
    ],
  ])("%s, step %i, %s, read as %s", (exercise, step, rule, title, quotes) => {
    const found = finding(exercise, step, rule, title);
    expect(found && quotesOf(found)).toEqual(quotes);
  });

  test("under every reading each quotation stands at its offsets in the text it is cited from, and its place is named before it", () => {
    const texts = (rows.passageTexts ?? []).map(({ value }) => value.text);
    for (const exercise of Object.values(exercises)) {
      const own = new Set(rows.cruxes?.flatMap(({ value }) => (value.exercise === exercise ? [value.id] : [])));
      for (const { value } of rows.readings?.filter((row) => own.has(row.value.crux)) ?? []) {
        const choice = [{ crux: value.crux, reading: value.id }];
        const { ridden, context } = rideWithContext(rows, exercise, { choice });
        for (const one of findingsOf(ridden, context, { compareReadings: false })) {
          for (const { quote, from, to } of one.citations)
            expect(
              texts.some((text) => text.slice(from, to) === quote),
              quote,
            ).toBe(true);
          for (const quote of quotesOf(one)) {
            const cited = one.citations.find((words) => squeezed(words.quote).startsWith(quote.replace(/ …$/, "")));
            expect(one.sentence).toContain(`(${cited?.reference})`);
          }
        }
      }
    }
  });
});

const squeezed = (words: string): string => words.replace(/\s+/g, " ");

describe("words that stand side by side", () => {
  const text = "He lifts the spear, to the left. Then he turns.";
  const at = (quote: string): Citation => ({
    reference: "f. 1r",
    references: [],
    layer: "The translation",
    language: "en",
    quote,
    from: text.indexOf(quote),
    to: text.indexOf(quote) + quote.length,
    state: "same",
  });
  test.each<[string, string[], string[]]>([
    ["a comma between them", ["lifts the spear", "to the left"], ["lifts the spear, to the left"]],
    ["in the other order", ["to the left", "lifts the spear"], ["lifts the spear, to the left"]],
    ["one within the other", ["the spear", "lifts the spear"], ["lifts the spear"]],
    ["overlapping", ["lifts the", "the spear"], ["lifts the spear"]],
    ["a sentence ends between them", ["to the left", "Then he turns"], ["to the left", "Then he turns"]],
    ["a word between them", ["He lifts", "spear"], ["He lifts", "spear"]],
  ])("%s", (_, quotes, joined) => {
    expect(joinedWords(quotes.map(at), [at(text)]).map(({ quote }) => quote)).toEqual(joined);
    for (const { quote, from, to } of joinedWords(quotes.map(at), [at(text)])) expect(text.slice(from, to)).toBe(quote);
  });
  test("without the words between them they stay two", () => {
    expect(joinedWords(["lifts the", "the spear"].map(at), [])).toHaveLength(2);
  });
});
