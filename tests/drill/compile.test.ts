/** tests/drill/compile.test.ts - an exercise compiled: filtered, numbered, cited, and said in words. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Drill } from "../../schema/drill.ts";
import type { Rows } from "../../schema/record.ts";
import { canonicalJson } from "../../shared/drill/canonical-json.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { stateAfterEach } from "../../shared/drill/state-after-each.ts";
import { held, idOf, said, slotAt, supplied, WorkBuilder } from "./build-rows.ts";
import { smallWork } from "./small-work.ts";

const { rows, exercise, side, manner, height, variant } = smallWork();
const left = { crux: side, reading: idOf("to the left") };
const right = { crux: side, reading: idOf("to the right") };

const titles = (drill: Drill) => drill.elements.map(({ number, title, is }) => `${number ?? "-"} ${title || is}`);
const texts = (drill: Drill, at: number) => drill.elements[at]?.actions.map(({ text }) => text);

describe("[D1] what is not settled", () => {
  const drill = compileDrill(rows, exercise);

  test("is kept with all its readings", () => {
    expect(titles(drill)).toEqual([
      "1 The circle",
      "2 The turn",
      "3 The spear",
      "- advice",
      "4 Once more",
      "- untreated",
    ]);
    expect(texts(drill, 0)).toEqual([
      "canter",
      "circle left or right",
      "the spear: carried upright, with the right hand",
    ]);
    expect(drill.elements[0]?.actions[1]?.values[1]).toMatchObject({
      standing: "not settled",
      text: "not settled: left or right",
      crux: side,
      reading: null,
    });
    expect(drill.elements[1]?.onlyUnder).toEqual([{ crux: side, readings: [idOf("to the left")] }]);
  });

  test("shows what each reading would give", () => {
    expect(drill.elements[0]?.cruxes.find(({ crux }) => crux === side)).toMatchObject({
      taken: null,
      others: [
        { title: "to the left", gives: [{ label: "to which side", text: "left" }] },
        { title: "to the right", gives: [{ label: "to which side", text: "right" }] },
      ],
    });
  });
});

describe("[D1] what readings agree on", () => {
  /** The side of a ride, held by a crux whose readings give these sides with these warrants. */
  function sideUnder(...gives: ["left" | "right", "implied" | "supplied"][]) {
    const book = new WorkBuilder("A book of sides");
    const home = book.exercise("Of sides");
    const step = book.step("The ride", home);
    const ride = book.action(step, "ride", { figure: supplied("circle"), turn: held("of the side") });
    const crux = book.crux("of the side", home);
    for (const [at, [to, warrant]] of gives.entries()) {
      const value = said({ to, viewpoint: "rider" }, warrant, [{ is: "premise", text: `premise ${at + 1}` }]);
      book.reading(`reading ${at + 1}`, crux, { values: [{ at: slotAt(ride, "turn"), value }] });
    }
    const action = compileDrill(book.rows(), home).elements[0]?.actions[0];
    return { crux, text: action?.text, value: action?.values.find(({ slot }) => slot === "turn") };
  }

  test("is said once, by the weakest warrant, and rests on what each rests on", () => {
    const { crux, text, value } = sideUnder(["left", "implied"], ["left", "supplied"]);
    expect(text).toBe("circle left");
    expect(value).toMatchObject({ text: "left", standing: "supplied", crux, reading: null });
    expect(value?.value).toEqual({ to: "left", viewpoint: "rider" });
    expect(value?.rests).toEqual(["premise 1", "premise 2"]);
    expect(sideUnder(["left", "implied"], ["left", "implied"]).value?.standing).toBe("implied");
  });

  test("is named once where only some agree", () => {
    const { text, value } = sideUnder(["left", "implied"], ["left", "supplied"], ["right", "implied"]);
    expect(text).toBe("circle left or right");
    expect(value).toMatchObject({ text: "not settled: left or right", standing: "not settled" });
  });
});

describe("[D2] a reading that is taken", () => {
  test("drops what it leaves out; numbers are given afterwards", () => {
    const drill = compileDrill(rows, exercise, { choice: [right] });
    expect(titles(drill)).toEqual(["1 The circle", "2 The spear", "- advice", "3 Once more", "- untreated"]);
    expect(texts(drill, 0)?.[1]).toBe("circle right");
    expect(drill.elements[2]?.text).toBe("Sit still (at steps 1 to 2)");
    expect(drill.elements[3]?.text).toBe("as steps 1 to 2, mirrored, save: without “turn”");
  });

  test("a crux that does not arise is not listed, and holds nothing", () => {
    const arising = (choice: typeof left) =>
      JSON.stringify(compileDrill(rows, exercise, { choice: [choice] })).includes(manner);
    expect(arising(left)).toBe(true);
    expect(arising(right)).toBe(false);
  });

  test("adopted comes before left free, chosen before both, and only what is adopted without condition", () => {
    const decide = (change: (value: Record<string, unknown>) => unknown) => {
      const readings = (rows.readings ?? []).map((row) => {
        const wanted = row.value.id === idOf("to the left");
        return { ...row, value: wanted ? { ...row.value, ...(change(row.value) as object) } : row.value };
      });
      return compileDrill({ ...rows, readings } as Rows, exercise).elements[0]?.cruxes.find(
        ({ crux }) => crux === side,
      );
    };
    const adopted = (condition: string) => () => ({
      status: { is: "adopted", on: "2026-05-04", sitting: null, reason: "the grammar", condition },
    });
    expect(decide(adopted(""))?.taken).toMatchObject({ because: "adopted", reason: "the grammar" });
    const conditional = decide(adopted("against a rider on foot"));
    expect(conditional?.taken).toBeNull();
    expect(conditional?.others[0]).toMatchObject({ status: "adopted", condition: "against a rider on foot" });
  });

  test("a place's exception beats what is read elsewhere", () => {
    const drill = compileDrill(rows, exercise, { choice: [right, { crux: height, reading: idOf("at the shoulder") }] });
    const level = (at: number) =>
      drill.elements[at]?.actions.flatMap(({ values }) => values).find(({ slot }) => slot === "hold.level");
    expect(level(0)?.text).toBe("high");
    expect(level(1)?.text).toBe("low");
    expect(drill.elements[1]?.cruxes[0]?.taken).toMatchObject({ because: "exception", reason: "the picture shows it" });
  });
});

describe("[D4] what stands throughout", () => {
  const drill = compileDrill(rows, exercise, { choice: [left] });
  test("is printed once at the head and inherited, implied, by each step that does not say otherwise", () => {
    expect(drill.standing.map(({ title, text }) => [title, text])).toEqual([["At the canter throughout", "canter"]]);
    const gaits = drill.elements
      .slice(0, 3)
      .map(({ actions }) =>
        actions.filter(({ verb }) => verb === "go at").map(({ text, inherited }) => [text, inherited]),
      );
    expect(gaits).toEqual([[["canter", true]], [["walk", false]], [["canter", true]]]);
    expect(drill.elements[0]?.actions[0]?.rests).toEqual(["holds throughout: At the canter throughout"]);
  });
});

describe("[D6] citations", () => {
  const drill = compileDrill(rows, exercise);
  test("quote the text, with reference and CTS URN", () => {
    expect(drill.elements[0]?.citations).toEqual([
      {
        reference: "7.13",
        references: [{ kind: "section", from: ["7", "13"] }],
        layer: "The translation",
        language: "en",
        quote: "Ride the circle about the well",
        from: 0,
        to: 30,
        urn: "urn:cts:demo:book.one.en:7.13@Ride the circle about the well",
        state: "same",
      },
    ]);
    expect(drill.notes).toEqual([
      { text: "The well is dry.", citations: [expect.objectContaining({ quote: "the well" })] },
    ]);
    expect(drill.questions.map(({ text, to }) => [text, to])).toEqual([["To which side?", "the translator"]]);
  });

  test("words that are in no text that is read now are lost, and keep what they were", () => {
    const { passageTexts: _, ...without } = rows;
    expect(compileDrill(without, exercise).elements[0]?.citations[0]).toMatchObject({
      state: "lost",
      quote: "Ride the circle about the well",
    });
  });
});

describe("[D7] way and version of the day", () => {
  test("mounted unless said otherwise", () => {
    expect(texts(compileDrill(rows, exercise, { choice: [right] }), 1)).toContain("look toward the horse’s ears");
    expect(texts(compileDrill(rows, exercise, { choice: [right], way: "on foot" }), 1)).not.toContain(
      "look toward the horse’s ears",
    );
  });
  test("a version of the day leaves out, changes and adds words, each with its reason", () => {
    const drill = compileDrill(rows, exercise, { variant });
    expect(drill.way).toBe("on foot");
    expect(drill.variant).toBe("beginners");
    expect(titles(drill)[1]).toBe("2 The spear");
    const ride = drill.elements[0]?.actions.find(({ verb }) => verb === "ride");
    expect(ride).toMatchObject({
      text: "straight on",
      standing: "supplied",
      rests: ["changed for the day: no circle on foot"],
    });
    expect(drill.notes.map(({ text }) => text)).toEqual([
      "Left out for the day: “The turn” (too soon)",
      "Bring a stick (no spears today)",
      "The well is dry.",
    ]);
  });
});

describe("[D8] the treated part", () => {
  test("is told truthfully, with the words that nothing is said of, the longest first", () => {
    expect(compileDrill(rows, exercise).treated).toEqual({
      steps: 4,
      untreatedParts: 1,
      unmarked: [
        { reference: "7.13", language: "en", quote: "at a canter" },
        { reference: "7.13", language: "en", quote: "Sit still throughout" },
      ],
      sentence:
        "Only part of the exercise is treated: 4 steps of the treated part. 1 part is noted as not yet treated. Nothing is said yet of 6 of its 16 words.",
    });
  });

  const WORDS = "He rides on, and turns; then he halts.";
  /** One step of a passage in two languages, its marks on these words of the translation. */
  function treatedOf(marked: readonly string[], { english = WORDS, markLatin = false } = {}) {
    const book = new WorkBuilder("A book");
    const [latin, translation] = [book.layer("Latin", { is: "original", language: "la" }), book.layer("English")];
    const of = book.exercise("An exercise");
    const passage = book.passage("7.13", [{ kind: "section", from: ["7", "13"] }], of);
    const original = book.text(passage, latin, "Pergit et vertit, deinde consistit.");
    const step = book.step("A step", of);
    if (english !== "") {
      const text = book.text(passage, translation, english);
      for (const words of marked) book.mark("elements", step, text, words);
    }
    if (markLatin) book.mark("elements", step, original, "Pergit", "consistit");
    return compileDrill(book.rows(), of).treated;
  }
  test("[D8] an exercise without steps is not treated, even where it has no words to treat", () => {
    const book = new WorkBuilder("A book");
    const of = book.exercise("An exercise");
    expect(compileDrill(book.rows(), of).treated.sentence).toBe("No step of the exercise is treated yet.");
  });

  const whole = "The whole exercise is treated: 1 step.";
  const part = "Only part of the exercise is treated: 1 step of the treated part.";
  const table: [why: string, treated: Drill["treated"], sentence: string, left: string[]][] = [
    ["all under one mark", treatedOf([WORDS]), whole, []],
    ["joining words between marks", treatedOf(["He rides on", "turns", "halts"]), whole, []],
    ["a word marked in part", treatedOf(["e rides on", "turns", "alts"]), whole, []],
    [
      "one word that says something",
      treatedOf(["He rides on", "halts"]),
      `${part} Nothing is said yet of 4 of its 8 words.`,
      ["and turns; then he"],
    ],
    [
      "three joining words",
      treatedOf(["rides on", "halts"], { english: "He rides on, and so when he halts." }),
      `${part} Nothing is said yet of 4 of its 8 words.`,
      ["and so when he"],
    ],
    [
      "no mark at all",
      treatedOf([]),
      `${part} Nothing is marked yet in 7.13. Nothing is said yet of 8 of its 8 words.`,
      ["He rides on, and turns; then he halts"],
    ],
    ["the original where nothing is translated", treatedOf([], { english: "", markLatin: true }), whole, []],
    [
      "the translation goes before the original",
      treatedOf(["He rides on, and turns"], { markLatin: true }),
      `${part} Nothing is said yet of 3 of its 8 words.`,
      ["then he halts"],
    ],
  ];
  test.each(table)("%s", (_why, treated, sentence, quotes) => {
    expect(treated.sentence).toBe(sentence);
    expect(treated.unmarked.map(({ quote }) => quote)).toEqual(quotes);
  });
});

describe("[D9] the same content gives the same bytes", () => {
  test("whatever order rows come in", () => {
    const bytes = canonicalJson(compileDrill(rows, exercise));
    const order = fc.infiniteStream(fc.integer({ min: 0, max: 1_000_000 }));
    fc.assert(
      fc.property(order, (draws) => {
        const shuffled = Object.fromEntries(
          Object.entries(rows).map(([kind, list]) => [
            kind,
            (list as { value: unknown }[])
              .map((row) => ({ row, at: draws.next().value ?? 0 }))
              .sort((a, b) => a.at - b.at)
              .map(({ row }) => row),
          ]),
        );
        expect(canonicalJson(compileDrill(shuffled as Rows, exercise))).toBe(bytes);
      }),
      { numRuns: 60 },
    );
  });

  test("and whatever order readings are chosen in, for any assignment", () => {
    const readings = (crux: string) =>
      (rows.readings ?? []).filter(({ value }) => value.crux === crux).map(({ value }) => value.id);
    const pick = (crux: string) => fc.constantFrom(...readings(crux)).map((reading) => ({ crux, reading }));
    fc.assert(
      fc.property(
        fc
          .tuple(pick(side), pick(manner), pick(height))
          .chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: 3 }))),
        ([choice, shuffled]) => {
          const one = canonicalJson(compileDrill(rows, exercise, { choice }));
          expect(canonicalJson(compileDrill(rows, exercise, { choice: shuffled }))).toBe(one);
          expect(
            canonicalJson(
              compileDrill(rows, exercise, { choice: new Map(shuffled.map(({ crux, reading }) => [crux, reading])) }),
            ),
          ).toBe(one);
          const drill = JSON.parse(one) as Drill;
          expect(Drill.parse(drill)).toEqual(drill);
        },
      ),
    );
  });

  test("keys stand in the order of the schema", () => {
    const drill = compileDrill(rows, exercise);
    expect(Object.keys(drill)).toEqual(Object.keys(Drill.shape));
    expect(Object.keys(drill.elements[0] ?? {})).toEqual(Object.keys(Drill.shape.elements.element.shape));
    const actions = Drill.shape.elements.element.shape.actions.element.shape;
    expect(Object.keys(drill.elements[0]?.actions[0] ?? {})).toEqual(Object.keys(actions));
  });
});

describe("the state after each element", () => {
  test("follows hold and carry; what is not settled or not written out is not known", () => {
    const drill = compileDrill(rows, exercise, { choice: [right] });
    const states = stateAfterEach(rows, drill, { choice: [right] });
    expect(states.map(({ element }) => element)).toEqual(drill.elements.map(({ id }) => id));
    expect(states.map(({ figure }) => figure.sentence)).toEqual([
      "After step 1: where the reins are is not known, spear in the right hand, point low or high, where it looks is not known.",
      "After step 2: where the reins are is not known, spear in the right hand, point left and low.",
      "After the advice: where the reins are is not known, spear in the right hand, point left and low.",
      "After step 3: where the reins are is not known, which hand has the spear is not known, where the point looks and how high is not known.",
      "After the part not yet treated: where the reins are is not known, which hand has the spear is not known, where the point looks and how high is not known.",
    ]);
    expect(states[0]?.state.objects[0]?.level).toEqual({ is: "one of", values: ["low", "high"] });
    expect(states[1]?.state.objects[0]?.level).toEqual({ is: "known", value: "low" });
  });
});

describe("what cannot be compiled is the caller's mistake", () => {
  const table: [why: string, compile: () => Drill, message: string][] = [
    ["no such exercise", () => compileDrill(rows, side), `The exercise ${side} is not among the rows that were given.`],
    [
      "no such variant",
      () => compileDrill(rows, exercise, { variant: side }),
      `The variant ${side} is not among the rows that were given.`,
    ],
    [
      "a reading of another crux",
      () => compileDrill(rows, exercise, { choice: [{ crux: side, reading: manner }] }),
      `The chosen reading ${manner} is not among the readings of the crux ${side}.`,
    ],
  ];
  test.each(table)("%s", (_why, compile, message) => {
    expect(compile).toThrow(new RangeError(message));
  });
});
