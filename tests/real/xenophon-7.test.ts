/** tests/real/xenophon-7.test.ts - Xenophon, On Horsemanship 7.13-17, from the digital texts to the drill and the count.
 *  Source: Perseus Digital Library, TEI of the minor works in Greek and in E. C. Marchant's English. */
import { expect, test } from "vitest";
import { parseCtsUrn } from "../../shared/cite/cts-urn.ts";
import { countByBruteForce } from "../../shared/decide/brute-force.ts";
import type { Puzzle } from "../../shared/decide/puzzle.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { idOf } from "../drill/build-rows.ts";
import { describeWithCheckData } from "../kit/check-data.ts";
import { citationsIn, expectTrueToSource } from "./drill-claims.ts";
import { puzzleCruxes } from "./puzzle-cruxes.ts";
import { textOf, wordsByReference } from "./source-texts.ts";
import { xenophonModel } from "./xenophon-model.ts";

describeWithCheckData("Xenophon, On Horsemanship 7.13–17", (path) => {
  const greek = textOf(path("texts", "xenophon", "xen.opuscula_gk.xml"), ({ title }) => title === "Περὶ Ἱππικῆς");
  const english = textOf(path("texts", "xenophon", "xen.opuscula_eng.xml"), ({ title }) =>
    title.endsWith("Horsemanship"),
  );
  const { rows, exercise, pede, changing, slant } = xenophonModel(greek, english);
  const source = (layer: string, reference: string) =>
    wordsByReference(layer === "Greek" ? greek : english).get(reference);
  const circle = { crux: pede, reading: idOf("a circle") };
  const eight = { crux: pede, reading: idOf("a figure of eight") };
  const otherRein = { crux: changing, reading: idOf("to the other rein") };

  test("each drill is true to its source, whatever is chosen", () => {
    for (const choice of [[], [circle], [eight], [circle, otherRein]]) {
      const drill = compileDrill(rows, exercise, { choice });
      expectTrueToSource(drill, source);
      expect(drill.exercise.references).toEqual(["7.13", "7.17"]);
    }
  });

  test("every citation of one section has a CTS URN of that section in its version", () => {
    for (const citation of citationsIn(compileDrill(rows, exercise))) {
      const parsed = parseCtsUrn(citation.urn ?? "");
      if (!parsed.ok) throw new Error(parsed.sentence);
      expect(parsed.urn.work.join(".")).toBe(`tlg0032.tlg013.perseus-${citation.language === "grc" ? "grc2" : "eng2"}`);
      expect(parsed.urn.passage?.from.levels.join(".")).toBe(citation.reference);
    }
  });

  test("two forms, both reins, and the advice on turns are treated; the reasons given are said to be left", () => {
    const drill = compileDrill(rows, exercise, {
      choice: [circle, otherRein, { crux: slant, reading: idOf("the rider’s") }],
    });
    expect(drill.treated.sentence).toBe(
      "Only part of the exercise is treated: 3 steps of the treated part. Nothing is said yet of 84 of its 203 words.",
    );
    const left = drill.treated.unmarked;
    for (const { reference, quote } of left) expect(source("English", reference)).toContain(quote);
    expect(left.map(({ quote }) => quote)).toContainEqual(
      expect.stringMatching(/^for thus the horse will turn more willing/),
    );
    expect(
      drill.elements.map(({ number, is, text, actions }) => [
        number,
        is,
        [...actions.map((action) => action.text), text].filter(Boolean).join("; "),
      ]),
    ).toEqual([
      [1, "step", "circle"],
      [2, "again", "as step 1, on the other rein"],
      [3, "step", "oblong; increase the pace, at once"],
      [null, "advice", "Ride the oblong ring rather than the round one (at steps 1 to 3)"],
      [null, "advice", "collected pace; Collect him at the turns (at steps 1 to 3)"],
      [
        null,
        "advice",
        "Do not turn short when going fast, least of all on uneven or slippery ground (at steps 1 to 3)",
      ],
      [null, "advice", "Slant the horse as little as possible with the bit (at steps 1 to 3)"],
      [null, "advice", "Slant his own body as little as possible (at steps 1 to 3)"],
      [null, "advice", "Practise increasing the pace after turning (at step 3)"],
    ]);
  });

  test("what the ring is stays open, side by side, until a reading is chosen", () => {
    const [first] = compileDrill(rows, exercise).elements;
    expect(first?.actions[0]).toMatchObject({ text: "circle or figure of eight" });
    expect(first?.cruxes.map(({ title, taken, others }) => [title, taken, others.map((other) => other.title)])).toEqual(
      [["What the ring (πέδη) is", null, ["a circle", "a figure of eight"]]],
    );
    expect(compileDrill(rows, exercise).questions.map(({ crux }) => crux)).toEqual([pede]);
    const drawn = compileDrill(rows, exercise, { choice: [eight] }).elements.find(
      ({ title }) => title === "the ring, oblong",
    );
    expect(drawn?.actions[0]?.text).toBe("figure of eight, each loop drawn out long");
  });

  test("to which side it turns is not said, and looks so", () => {
    const [first] = compileDrill(rows, exercise, { choice: [circle] }).elements;
    expect(first?.actions[0]?.values.map(({ slot, standing }) => [slot, standing])).toEqual([
      ["figure", "implied"],
      ["turn", "not said"],
    ]);
  });

  /** By hand: what the ring is (2) times what is changed (3), the other loop only with the figure of eight: 2 + 3 = 5;
   *  times whose slant (2) = 10. The text gives the rule itself: both jaws are to be practised alike. A circle turns to
   *  one side only, so with "to another exercise" it breaks the rule; the other rein mends it. The figure of eight keeps
   *  it whatever is changed. So 1 + 3 = 4 of 5, times 2 = 8 hold. Which side a circle turns to is not said, and makes no
   *  difference: all 8 hold surely. */
  test("the count over stages is the one worked by hand: 8 of 10 hold", () => {
    const puzzle: Puzzle = {
      ...puzzleCruxes(rows, [pede, changing, slant]),
      start: ["neither"],
      stages: [
        {
          id: "the ring",
          touches: [pede],
          run: (_, reading) =>
            reading(pede) === circle.reading
              ? ["left", "right"].map((state) => ({ state, hits: [], supplied: `to the ${state}` }))
              : [{ state: "both", hits: [] }],
        },
        {
          id: "changed",
          touches: [changing],
          run: (state, reading) => [{ state: reading(changing) === otherRein.reading ? "both" : state, hits: [] }],
        },
        {
          id: "the end",
          touches: [],
          run: (state) => [{ state, hits: state === "both" ? [] : [{ rule: "both jaws alike", bars: true }] }],
        },
      ],
    };
    const count = countByBruteForce(puzzle);
    expect([count.all, count.holding, count.surelyHolding]).toEqual([10n, 8n, 8n]);
    expect(count.excludedPairs).toEqual([
      {
        first: { crux: pede, reading: circle.reading },
        second: { crux: changing, reading: idOf("to the other loop") },
      },
      {
        first: { crux: pede, reading: circle.reading },
        second: { crux: changing, reading: idOf("to another exercise") },
      },
    ]);
  });
});
