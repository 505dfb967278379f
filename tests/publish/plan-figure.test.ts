/** tests/publish/plan-figure.test.ts - the plan and the rider's hands on paper: they stand alone, show every step, and come
 *  out the same each time; names of a text are words in them and nothing else. */
import fc from "fast-check";
import { SaxesParser } from "saxes";
import { beforeAll, describe, expect, test } from "vitest";
import { runCommandLine } from "../../server/commands/run.ts";
import { demoBook } from "../../server/demo/book.ts";
import { exerciseRides, ridesWithin } from "../../server/publish/figures/exercise-rides.ts";
import { holdFigure } from "../../server/publish/figures/hold-figure.ts";
import { planFigure, planOfRides } from "../../server/publish/figures/plan-figure.ts";
import { pngOf } from "../../server/publish/figures/png.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { handsFigure } from "../../shared/hands/figure.ts";
import { startState } from "../../shared/hands/state.ts";
import { rideExercise } from "../../shared/ride/ride-exercise.ts";
import { supplied } from "../drill/build-rows.ts";
import { type RunningApp, refusalOf, runningApp, send } from "../kit/running-app.ts";
import { demoRows, LEFT, metres, RideBuilder } from "../ride/rides.ts";

interface Read {
  names: string[];
  attributes: string[];
  words: string[];
}

/** Throws where the drawing is not well-formed. */
function read(svg: string): Read {
  const found: Read = { names: [], attributes: [], words: [] };
  const parser = new SaxesParser({ xmlns: true });
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", (tag) => {
    found.names.push(tag.name);
    found.attributes.push(...Object.entries(tag.attributes).map(([name, { value }]) => `${name}=${value}`));
  });
  parser.on("text", (text) => {
    if (text.trim() !== "") found.words.push(text);
  });
  parser.write(svg).close();
  return found;
}

const { rows, exercises } = demoRows();

describe.each(Object.entries(exercises))("the plan of the exercise “%s”", (_name, id) => {
  const ridden = rideExercise(rows, id, {});
  const figure = planFigure(ridden, { millimetres: 100 });

  test("stands alone: nothing to load, nothing to run, no style from elsewhere", () => {
    const { names, attributes } = read(figure.svg);
    expect(new Set(names)).toEqual(new Set([...names].filter((name) => ALLOWED.has(name))));
    const elsewhere = attributes.filter((one) => /^(class|style|href|xlink|on)|url\(|https?:/.test(one));
    expect(elsewhere).toEqual(["xmlns=http://www.w3.org/2000/svg"]);
    expect(attributes).toContain("width=100mm");
  });

  test("names every station and numbers every step that is ridden", () => {
    const { words } = read(figure.svg);
    const said = words.join(" ");
    for (const { name } of ridden.ground.stations) expect(said).toContain(name);
    const numbers = new Set(ridden.stages.flatMap(({ number }) => number ?? []));
    const shown = numbersShown(words).flatMap(numbersIn);
    expect(shown.sort((a, b) => a - b)).toEqual([...numbers].sort((a, b) => a - b));
    expect(figure.alternative).toContain(ridden.title);
    for (const number of numbers) expect(numbersIn(figure.alternative)).toContain(number);
  });

  test("comes out the same each time, as a drawing and in dots", () => {
    expect(planFigure(rideExercise(rows, id, {}), { millimetres: 100 })).toEqual(figure);
    const [one, other] = [pngOf(figure.svg, 100), pngOf(figure.svg, 100)];
    expect(Buffer.from(one).equals(other)).toBe(true);
    expect([...one.slice(1, 4)].map((byte) => String.fromCharCode(byte)).join("")).toBe("PNG");
    expect(Buffer.from(one).readUInt32BE(16)).toBe(1200);
  });

  test("draws a part, a moment, and no taller than it may be", () => {
    const last = ridden.stages.length;
    const part = planFigure(ridden, { fromStage: last - 1, toStage: last });
    const numbers = numbersShown(read(part.svg).words);
    expect(numbers.length).toBeLessThanOrEqual(1);
    const still = planFigure(ridden, { at: (ridden.stages[0]?.to ?? 0) / 2 });
    expect(still.svg.length).toBeGreaterThan(planFigure(ridden).svg.length);
    expect(heightOf(planFigure(ridden, { millimetres: 150, tallest: 60 }).svg)).toBeLessThanOrEqual(60.01);
    expect(() => planFigure(ridden, { fromStage: 2, toStage: 1 })).toThrow(RangeError);
    expect(() => planFigure(ridden, { toStage: last + 1 })).toThrow(RangeError);
  });
});

const ALLOWED = new Set(["svg", "title", "g", "path", "rect", "circle", "text"]);
const heightOf = (svg: string) => Number(/viewBox="0 0 \S+ (\S+)"/.exec(svg)?.[1]);

/** Numbers of steps as they stand, without how often their line is ridden: "1–6 ×4". */
function numbersShown(words: readonly string[]): string[] {
  return words.flatMap((one) => /^([\d ,–]+)(?: ×\d+)?$/.exec(one)?.[1] ?? []);
}

function numbersIn(words: string): number[] {
  return [...words.matchAll(/(\d+)(?:–(\d+))?/g)].flatMap(([, from, to]) => {
    const [first, last] = [Number(from), Number(to ?? from)];
    return Array.from({ length: last - first + 1 }, (_, index) => first + index);
  });
}

describe("two riders", () => {
  const { elements } = compileDrill(rows, exercises.knot, {});
  const rides = exerciseRides(rows, exercises.knot, {}, elements);
  const figure = planOfRides(rides, { millimetres: 100 });

  test("each has a letter where he sets out, and is named for who cannot see it", () => {
    expect(rides.map(({ letter, role }) => `${letter} ${role}`)).toEqual(["A the first", "B the second"]);
    const { words } = read(figure.svg);
    for (const letter of ["A", "B"]) expect(words.filter((one) => one === letter)).toHaveLength(1);
    expect(figure.alternative).toMatch(/A, the first: .*\. B, the second: /);
  });

  test("the steps of both are numbered, and what both ride alike has the arrows of one", () => {
    const shown = new Set(numbersShown(read(figure.svg).words).flatMap(numbersIn));
    const ridden = new Set(rides.flatMap(({ ride }) => ride.stages.flatMap(({ number }) => number ?? [])));
    expect(shown).toEqual(ridden);
    const arrows = (svg: string) => (svg.match(/ L/g) ?? []).length;
    const [first, second] = rides.map((one) => arrows(planOfRides([one], { millimetres: 100 }).svg));
    expect(arrows(figure.svg)).toBeLessThan((first ?? 0) + (second ?? 0));
  });

  test("a part that one of them alone rides is his alone", () => {
    const alone = ridesWithin(rides, ({ number }) => number === 2);
    expect(alone.map(({ letter, stages }) => [letter, stages])).toEqual([["A", { from: 0, to: 1 }]]);
    expect(() => planOfRides([], {})).toThrow(RangeError);
  });
});

describe("odd things", () => {
  test("names are words, whatever signs they hold, and very long ones end in dots", () => {
    const anyName = fc.oneof(
      fc.string({ unit: "binary", minLength: 1, maxLength: 60 }),
      fc.constantFrom(
        '"><script>alert(1)</script>',
        "]]>&amp;<!--",
        "the ⟨well⟩ & ‘oak’",
        "البئر",
        "τὸ φρέαρ",
        "x".repeat(500),
      ),
    );
    const made = new RideBuilder({ width: 20, length: 40, trackOffset: 1.8 });
    made.station("the oak", 10, 0);
    made.figure("round", "circle", { turn: LEFT, size: metres(10) });
    const ridden = rideExercise(made.rows(), made.home, {});
    fc.assert(
      fc.property(
        anyName.filter((name) => name.trim() !== ""),
        (name) => {
          const ground = { ...ridden.ground, stations: ridden.ground.stations.map((one) => ({ ...one, name })) };
          const figure = planFigure({ ...ridden, ground, title: name, groundName: name }, { millimetres: 80 });
          const { names } = read(figure.svg);
          expect(names.filter((one) => !ALLOWED.has(one))).toEqual([]);
          expect(figure.width).toBeLessThanOrEqual(80);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("an exercise without steps is the ground alone", () => {
    const made = new RideBuilder({ width: 20, length: 40 });
    const figure = planFigure(rideExercise(made.rows(), made.home, {}));
    expect(figure.alternative).toMatch(/no step is drawn on it/);
    expect(read(figure.svg).names).toContain("rect");
  });

  test("sixty steps at one place are told by their ends", () => {
    const made = new RideBuilder({ width: 20, length: 40 });
    for (let index = 0; index < 60; index += 1)
      made.figure(`round ${index}`, "circle", { turn: LEFT, size: metres(10) });
    expect(read(planFigure(rideExercise(made.rows(), made.home, {})).svg).words).toContain("1–60 ×60");
  });

  type Figure = Parameters<RideBuilder["figure"]>[1];
  const once = metres(10);
  test.each<[why: string, ridden: [Figure, Parameters<RideBuilder["figure"]>[2]][], shown: string[]]>([
    ["a circle ridden once has its number alone", [["circle", { turn: LEFT, size: once }]], ["1"]],
    [
      "laps of one step are counted",
      [["circle", { turn: LEFT, size: once, laps: supplied({ is: "times", n: 3 }) }]],
      ["1 ×3"],
    ],
    [
      "a circle ridden again by another step is the same line",
      [
        ["circle", { turn: LEFT, size: once }],
        ["circle", { turn: LEFT, size: once }],
      ],
      ["1, 2 ×2"],
    ],
    [
      "a wider one is another",
      [
        ["circle", { turn: LEFT, size: once }],
        ["circle", { turn: LEFT, size: metres(14) }],
      ],
      ["1, 2"],
    ],
  ])("%s", (_why, figures, shown) => {
    const made = new RideBuilder({ width: 20, length: 40 });
    for (const [index, [figure, slots]] of figures.entries()) made.figure(`round ${index}`, figure, slots);
    const { svg } = planFigure(rideExercise(made.rows(), made.home, {}));
    expect(read(svg).words.filter((one) => /^\d/.test(one) && !one.endsWith(" m"))).toEqual(shown);
  });

  test("hands nothing is known of are drawn, and say so", () => {
    const spear = { id: "s", name: "spear", is: "shaft" as const, lengthMetres: 2 };
    const figure = holdFigure(handsFigure(startState([spear], "mounted"), "At first"), { scale: 1 });
    expect(figure.alternative).toMatch(/^At first: .*not known/);
    const { names, words } = read(figure.svg);
    expect(names.filter((one) => !ALLOWED.has(one))).toEqual([]);
    expect(words).toContain("· · ·");
  });
});

describe("as it is asked for", () => {
  const { circle } = demoBook().exercises;
  let app: RunningApp;
  beforeAll(async () => {
    app = await runningApp();
  });

  async function fromCommandLine(...args: string[]): Promise<{ code: number; bytes: Buffer; errors: string }> {
    const chunks: Uint8Array[] = [];
    const errors: string[] = [];
    const code = await runCommandLine([...args, "--file", app.file], {
      out: (text) => chunks.push(Buffer.from(`${text}\n`)),
      bytes: (bytes) => chunks.push(bytes),
      error: (text) => errors.push(text),
      environment: {},
      now: "2026-05-04T10:00:00.000Z",
    });
    return { code, bytes: Buffer.concat(chunks), errors: errors.join("\n") };
  }

  test("window and command line give the same bytes", async () => {
    const svg = await send(app, `/api/exercises/${circle}/plan.svg?steps=2-5&width=90&at=12`);
    expect(svg.headers["content-type"]).toMatch(/^image\/svg\+xml/);
    const drawn = await fromCommandLine("plan", circle, "--steps", "2-5", "--width", "90", "--at", "12");
    expect(drawn.bytes.equals(svg.bytes)).toBe(true);
    const png = await send(app, `/api/exercises/${circle}/plan.png`);
    expect(png.headers["content-type"]).toBe("image/png");
    expect((await fromCommandLine("plan", circle, "--as", "png")).bytes.equals(png.bytes)).toBe(true);
  });

  test.each<[query: string, words: RegExp]>([
    ["steps=40", /has not a step 40: its steps are 1 to \d+\. Ask for steps that it has/],
    ["steps=5-2", /first step before the last/],
    ["width=2", /20/],
    ["colour=red", /colour/],
    ["way=swimming", /way/],
  ])("“%s” is refused in words", async (query, words) => {
    const reply = await send(app, `/api/exercises/${circle}/plan.svg?${query}`);
    expect(reply.status).toBe(422);
    expect(refusalOf(reply).sentence).toMatch(words);
  });

  test("an exercise that is not there, and a form that is none, are refused", async () => {
    const reply = await send(app, "/api/exercises/0190c000-0000-7000-8000-000000000000/plan.svg");
    expect(reply.status).toBe(404);
    expect(await fromCommandLine("plan", circle, "--as", "gif")).toMatchObject({
      code: 2,
      errors: expect.stringMatching(/svg or png, not as “gif”/),
    });
  });
});
