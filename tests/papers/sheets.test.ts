/** Sheets that are taken to the ground: what each says and what it leaves to others. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { PaperPart } from "../../schema/paper.ts";
import { paperOf } from "../../server/publish/papers/build-paper.ts";
import { markedText, type TextMark } from "../../server/publish/papers/marked-text.ts";
import { plainBlocks } from "../../server/publish/write/paper-places.ts";
import { idOf, supplied } from "../drill/build-rows.ts";
import { blocksThat, plain, printed, stepRowsOf, wordsOf } from "./paper-lines.ts";
import { askFor, FIRST, NO_FILES, smallBook } from "./small-book.ts";

const small = smallBook();
const { circle, wall } = small.exercises;
const part = (more: Partial<PaperPart> = {}): PaperPart => ({
  exercise: circle,
  from: null,
  to: null,
  variant: null,
  ...more,
});
const cellsOf = (paper: ReturnType<typeof printed>) =>
  stepRowsOf(paper).map(({ shown, cells }) => [shown, ...cells.slice(1).map((cell) => cell.map(plain).join(" / "))]);

describe("a ride sheet", () => {
  const paper = printed(paperOf(small.rows, askFor("ride sheet", [circle]), NO_FILES));

  test("says each step in few words, with its place", () => {
    expect(cellsOf(paper)).toEqual([
      [
        "1",
        "Ride the circle / canter; lead · · · / circle, about the well, once†a; to which side · · ·",
        "",
        "",
        "A f. 1r, ll. 1–9",
      ],
      [
        "2",
        "Raise the spear",
        "left: —",
        "raise the spear, with the right hand / the spear: upright",
        "A f. 1r, ll. 1–9",
      ],
      [
        "3",
        "Give it over",
        "left: pass the spear to the left hand; from · · · only †b 1",
        "bring the spear over the horse’s neck; to · · · only †b 2",
        "A f. 1r, ll. 1–9",
      ],
      [null, "Bear in mind: as round as you can (at step 1)"],
    ]);
  });

  test("has a line for each sign", () => {
    const lines = blocksThat(paper, "entries").flatMap(({ items }) =>
      items.flatMap(({ head, lines: own }) => [head, ...own]),
    );
    expect(lines.map(plain)).toEqual([
      "†a",
      "Once or twice: “once” (adopted); also “twice”",
      "†b",
      "The other: not settled: 1 “the other hand” or 2 “the other side”",
    ]);
  });

  test("says how much of the exercise it is", () => {
    const cut = askFor("ride sheet", [], { parts: [part({ from: small.steps.raise, to: small.steps.pass })] });
    const words = wordsOf(printed(paperOf(small.rows, cut, NO_FILES)));
    expect(words).toContain("1. The circle, steps 2–3 of 3");
    expect(words).toContain("On this paper: steps 2–3.");
    expect(words).not.toContain("Ride the circle");
    expect(words).toContain(
      "Before step 2: when the circle is closed; the horse canter; left hand · · ·; right hand · · ·; spear · · ·",
    );
  });

  test("keeps with a cut the advice that is about its steps, wherever it stands", () => {
    const { rows, exercises, steps } = smallBook((book) => {
      const every = { is: "advice" as const, rule: null, from: null, to: null };
      book.element("over all", idOf("The circle"), { ...every, demand: "Sit still" });
    });
    const parts = [{ exercise: exercises.circle, from: steps.raise, to: steps.pass, variant: null }];
    const words = wordsOf(printed(paperOf(rows, askFor("ride sheet", [], { parts }), NO_FILES)));
    expect(words).toContain("Bear in mind: sit still");
    expect(words).not.toContain("as round as you can");
    expect(words).toContain("On this paper: steps 2–3 and a piece of advice.");
  });

  test("has the plan of what is on it", () => {
    const [figure] = blocksThat(paper, "figure");
    expect(figure?.alternative).toContain("Plan of the court");
    expect(plain(figure?.caption ?? [])).toBe(
      "The court, with the line of the whole. Drawn with †b 1, which is not settled. A number stands where a step " +
        "begins; dotted: supplied; the thin inner line is the track. ×2 and more: how often the line that begins there is ridden.",
    );
    const none = askFor("ride sheet", [small.exercises.empty]);
    expect(blocksThat(printed(paperOf(small.rows, none, NO_FILES)), "figure")).toEqual([]);
  });
});

describe("a class handout", () => {
  const handout = (...parts: PaperPart[]) =>
    printed(paperOf(small.rows, askFor("class handout", [], { parts }), NO_FILES));

  test("says what the day changes, each with its reason, and leaves out what the day leaves out", () => {
    const words = wordsOf(handout(part({ variant: idOf("the quiet day") })));
    expect(words).toContain("For the day: the quiet day");
    expect(words).toContain("“Give it over” is left out. Nobody is ready for it.");
    expect(words).toContain("All of it at a walk. The ground is wet.");
    expect(words).toContain("in the version “the quiet day”");
    expect(words).not.toContain("pass the spear");
  });

  test("gives in full what the steps on it do not", () => {
    const words = wordsOf(handout(part(), part({ exercise: wall })));
    expect(words).toContain("A f. 1v, ll. 1–9 · not yet written out as steps");
    expect(words).toContain("Of this nobody has said anything yet.");
    const cut = wordsOf(handout(part({ exercise: wall, to: idOf("Follow the wall") }), part({ to: small.steps.ride })));
    expect(cut).toContain("2. The wall, step 1 of 2");
    expect(cut).toContain("1. The circle, step 1 of 3");
  });

  test("says which steps a passage belongs to that is cut away", () => {
    const { rows, exercises } = smallBook((book) => {
      const passage = book.passage("p4", [{ kind: "section", from: ["9"] }], idOf("The circle"));
      const text = book.text(passage, idOf("Translation"), "Last of all he rests.");
      const step = book.step("He rests", idOf("The circle"));
      book.mark("elements", step, text, "he rests");
    });
    const ask = askFor("class handout", [], {
      parts: [{ ...part({ to: small.steps.pass }), exercise: exercises.circle }],
    });
    const words = wordsOf(printed(paperOf(rows, ask, NO_FILES)));
    expect(words).toContain("9 · left out here: step 4");
    expect(words).toContain("Last of all he rests.");
  });

  test("has the holds that are used, with figures and faults, the ground and the faults of the steps", () => {
    const paper = handout(part());
    const words = wordsOf(paper);
    expect(words).toContain("Upright\none hand; where it is held at the balance; level high");
    expect(words).toContain("It leans.");
    expect(words).toContain("Step 2: The point wanders. Instead: Look where it goes.");
    expect(words).toContain("The ground: the court");
    expect(blocksThat(paper, "figure")).toHaveLength(3);
    expect(wordsOf(handout(part({ exercise: wall })))).not.toContain("The holds");
  });

  test("names a picture that cannot be printed", () => {
    expect(wordsOf(handout(part()))).toContain(
      "the hand (A drawing, f. 2r). The picture itself cannot be printed here.",
    );
  });

  test("cuts the part of a picture out of it", () => {
    const bytes = new Uint8Array([1, 2, 3]);
    const attachment = () => ({ hash: "x", mediaType: "image/png", name: "x", size: 3, bytes });
    const paper = printed(paperOf(small.rows, askFor("class handout", [circle]), { stylesFolder: null, attachment }));
    const figure = blocksThat(paper, "figure").find(({ of }) => of[0]?.kind === "regions");
    expect(figure?.svg).toContain('viewBox="10 10 50 30"');
    expect(figure?.svg).toContain("data:image/png;base64,AQID");
    expect(figure?.alternative).toBe("Picture: A drawing, f. 2r. the hand");
  });

  test("says what stands throughout the work once, above all exercises", () => {
    const words = wordsOf(handout(part(), part({ exercise: wall })));
    expect(words.split("The gait throughout")).toHaveLength(2);
    expect(words.indexOf("The gait throughout")).toBeLessThan(words.indexOf("1. The circle"));
  });

  test("explains each sign with its exercise", () => {
    const paper = handout(part(), part({ exercise: wall }));
    const kinds = plainBlocks(paper.blocks).map((block) =>
      block.is === "entries" ? "signs" : block.is === "heading" && block.level === 2 ? plain(block.words) : "",
    );
    expect(kinds.filter((kind) => kind !== "")).toEqual([
      "Throughout",
      "1. The circle",
      "signs",
      "2. The wall",
      "The holds",
      "The ground: the court",
      "The pictures",
    ]);
  });

  test("says what a movement it names is, with where it is taught", () => {
    const { rows, exercises } = smallBook((book) => {
      const greeting = book.put("movements", {
        id: idOf("greeting"),
        work: book.work,
        rank: "a0",
        name: "the greeting",
        note: "",
      });
      book.action(greeting, "wait", { until: supplied("he has drawn one breath") }, { ownerKind: "movements" });
      book.action(greeting, "raise", { object: supplied(idOf("the spear")) }, { ownerKind: "movements" });
      book.mark("movements", greeting, idOf(`text of ${idOf("p1")} in ${idOf("Translation")}`), "he raises the spear");
      book.action(book.step("He greets", idOf("The circle")), "perform", { movement: supplied(greeting) });
    });
    for (const kind of ["class handout", "ride sheet", "caller's sheet"] as const) {
      const words = wordsOf(printed(paperOf(rows, askFor(kind, [exercises.circle]), NO_FILES)));
      expect(words).toContain("The greeting: wait until he has drawn one breath; raise the spear · A f. 1r, ll. 1–9");
    }
  });
});

describe("a caller's sheet", () => {
  const paper = printed(paperOf(small.rows, askFor("caller's sheet", [circle, wall]), NO_FILES));

  test("calls each step in a few words, with when and where", () => {
    const calls = blocksThat(paper, "calls").flatMap(({ items }) => items);
    expect(
      calls.map(({ shown, call, acts = [], when, where }) => [
        shown,
        plain(call),
        acts.map(plain).join(" / "),
        plain(when),
        plain(where),
      ]),
    ).toEqual([
      ["1", "Canter, circle about the well, once†a, to which side · · ·", "", "to begin", "A f. 1r, ll. 1–9"],
      ["2", "Raise the spear: upright, with the right hand", "", "when the circle is closed", "A f. 1r, ll. 1–9"],
      [
        "3",
        "Give it over",
        "",
        "after 2",
        "†b 1: pass the spear to the left hand, from · · · · †b 2: bring the spear over the horse’s neck, to · · · · A f. 1r, ll. 1–9",
      ],
      [null, "", "Bear in mind: as round as you can (at step 1)", "", ""],
      ["1", "Canter, along the wall, left rein", "", "to begin", "A f. 1r, ll. 10–18"],
      ["2", "The same again", "As step 1, mirrored", "after 1", "A f. 1r, ll. 10–18"],
      [null, "", "Not yet treated: A f. 1v, ll. 1–9, perhaps 2 to 3 steps", "", ""],
    ]);
  });

  test("has the stations", () => {
    expect(wordsOf(paper)).toContain("the well · A f. 1r, ll. 1–9");
  });
});

describe("a working sheet", () => {
  const paper = printed(paperOf(small.rows, askFor("working sheet", [circle]), NO_FILES));
  const [first] = paper.blocks.flatMap((block) => (block.is === "beside" ? [block] : []));

  test("has the words of the text, whole and unchanged, with the signs in them", () => {
    const quotes = (first?.left ?? []).flatMap((block) =>
      block.is === "paragraph" && block.as === "quote" ? [block.words] : [],
    );
    const said = quotes.map((line) =>
      line.flatMap((span) => (span.is === "words" && span.as === "said" ? span.text : [])).join(""),
    );
    expect(said.join("\n")).toBe(FIRST);
    expect(quotes.map(plain)[1]).toBe("And he gives it to the other†b\u202f?1, once or twice†a.");
  });

  test("has cruxes and questions in the order of their words, with room to write below each", () => {
    const entries = (first?.right ?? []).flatMap((block) => (block.is === "entries" ? block.items : []));
    expect(entries.map(({ head, lines }) => [plain(head), ...lines.map(plain)])).toEqual([
      ["†b", "“the other”", "The other (silent)", "the other hand (the editor)", "the other side (T. Translator)"],
      ["?1", "“to the other”", "Is the other always a hand?†b", "to the translator, asked 5 April 2026"],
      [
        "†a",
        "“once or twice”",
        "Once or twice (ambiguous)",
        "once (the editor, adopted, read so here)",
        "twice (T. Translator)",
        "as often as he likes (ruled out)",
      ],
    ]);
    const below = (first?.right ?? []).map((_, at, all) => all[at + 1]?.is);
    expect((first?.right ?? []).every(({ is }, at) => is !== "entries" || below[at] === "writing")).toBe(true);
  });
});

describe("text with signs in it", () => {
  const place = fc.nat({ max: 60 });
  const mark = fc.tuple(place, place, fc.boolean(), fc.nat({ max: 99 })).map(
    ([a, b, open, id]): TextMark => ({
      from: Math.min(a, b),
      to: Math.max(a, b),
      signs: [{ is: "sign", sign: `†${id}`, crux: idOf(String(id)), to: null }],
      standing: open ? "not settled" : null,
    }),
  );

  test("loses no word, tells none twice, and has every sign once", () => {
    const text = fc.string({ unit: fc.constantFrom("a", "b", " ", "\n", "é"), maxLength: 60 });
    fc.assert(
      fc.property(text, fc.array(mark, { maxLength: 6 }), (words, marks) => {
        const fitting = marks.filter(({ to }) => to <= words.length);
        const lines = markedText(words, "en", fitting);
        const said = lines.map((line) => line.flatMap((span) => (span.is === "words" ? span.text : [])).join(""));
        expect(said.filter((line) => line !== "").join("\n")).toBe(
          words
            .split("\n")
            .filter((line) => line !== "")
            .join("\n"),
        );
        const signs = lines.flat().flatMap((span) => (span.is === "sign" ? [span.sign] : []));
        expect([...signs].sort()).toEqual(
          fitting.flatMap(({ signs: own }) => own.map((span) => (span.is === "sign" ? span.sign : ""))).sort(),
        );
      }),
    );
  });
});
