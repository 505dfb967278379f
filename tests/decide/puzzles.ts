/** tests/decide/puzzles.ts - small puzzles for the tests of the count: made by hand, made at random, and from outside. */
import fc from "fast-check";
import type { Hit, Pick, Puzzle, PuzzleCrux, Stage, Successor } from "../../shared/decide/puzzle.ts";

export const plainCrux = (id: string, readings: string[], more: Partial<PuzzleCrux> = {}): PuzzleCrux => ({
  id,
  readings,
  ruledOut: [],
  arisesWhen: [],
  ...more,
});

export const puzzleOf = (cruxes: PuzzleCrux[], stages: Stage[], more: Partial<Puzzle> = {}): Puzzle => ({
  cruxes,
  requires: [],
  excludes: [],
  start: ["start"],
  stages,
  ...more,
});

export const bars = (rule: string): Hit => ({ rule, bars: true });
export const warns = (rule: string): Hit => ({ rule, bars: false });
export const goes = (state: string, ...hits: Hit[]): Successor => ({ state, hits });

/** Stays where it is, and bars when `breaks` says so of the readings. */
export function barringStage(
  id: string,
  touches: string[],
  breaks: (reading: (crux: string) => string | null) => boolean,
): Stage {
  return { id, touches, run: (state, reading) => [goes(state, ...(breaks(reading) ? [bars(id)] : []))] };
}

/** One queen a column, the row its reading. Each stage sets one queen beside those already standing in the state. */
export function queens(size: number): Puzzle {
  const rows = Array.from({ length: size }, (_, row) => String(row));
  const stages = rows.map(
    (_, column): Stage => ({
      id: `column ${column}`,
      touches: [`c${column}`],
      run: (state, reading) => {
        const row = Number(reading(`c${column}`));
        const standing = state === "" ? [] : state.split(",").map(Number);
        const attacked = standing.some((other, at) => other === row || Math.abs(other - row) === column - at);
        return [goes([...standing, row].join(","), ...(attacked ? [bars("attacked")] : []))];
      },
    }),
  );
  const cruxes = rows.map((_, column) => plainCrux(`c${column}`, rows));
  return puzzleOf(cruxes, stages, { start: [""] });
}

/** The same as ties between readings, with no stages at all. */
export function queensByTies(size: number): Puzzle {
  const rows = Array.from({ length: size }, (_, row) => row);
  const excludes = rows.flatMap((column) =>
    rows.flatMap((row) =>
      rows
        .filter((other) => other > column)
        .map((other) => ({
          crux: `c${column}`,
          reading: String(row),
          of: {
            crux: `c${other}`,
            readings: [row, row + other - column, row - other + column].filter((at) => rows.includes(at)).map(String),
          },
        })),
    ),
  );
  return puzzleOf(
    rows.map((column) => plainCrux(`c${column}`, rows.map(String))),
    [],
    { excludes },
  );
}

/** Vertices are cruxes, colours readings, and every edge is a stage that bars equal ends. */
export function colouring(vertices: number, edges: readonly (readonly [number, number])[], colours: number): Puzzle {
  const names = Array.from({ length: colours }, (_, colour) => String(colour));
  return puzzleOf(
    Array.from({ length: vertices }, (_, vertex) => plainCrux(`v${vertex}`, names)),
    edges.map(([from, to]) =>
      barringStage(`${from}-${to}`, [`v${from}`, `v${to}`], (reading) => reading(`v${from}`) === reading(`v${to}`)),
    ),
  );
}

/** A puzzle of up to four cruxes and four stages over three states: what each stage does is a table drawn at random. */
export const anyPuzzle: fc.Arbitrary<Puzzle> = fc
  .record({
    sizes: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: 4 }),
    salt: fc.integer(),
    stages: fc.integer({ min: 0, max: 4 }),
    ruledOut: fc.boolean(),
    arising: fc.boolean(),
    tied: fc.boolean(),
  })
  .map(({ sizes, salt, stages, ruledOut, arising, tied }) => {
    const ids = sizes.map((_, index) => `k${index}`);
    const cruxes = sizes.map((size, index): PuzzleCrux => {
      const readings = Array.from({ length: size }, (_, reading) => `r${reading}`);
      const nested = arising && index > 0 && pick(salt, index, 3) === 0;
      return plainCrux(`k${index}`, readings, {
        ruledOut: ruledOut && size > 1 && pick(salt, index, 5) === 0 ? ["r0"] : [],
        arisesWhen: nested ? [{ crux: `k${index - 1}`, readings: ["r0"] }] : [],
      });
    });
    const tie = { crux: "k0", reading: "r0", of: { crux: ids.at(-1) ?? "k0", readings: ["r0"] } };
    return puzzleOf(
      cruxes,
      Array.from({ length: stages }, (_, number) => tableStage(salt, number, ids)),
      { excludes: tied && ids.length > 1 ? [tie] : [] },
    );
  });

/** Where the stage goes from a state under readings is looked up in a table that the salt draws. Of twelve ways on, as
 *  many as `harsh` break a rule. */
function tableStage(salt: number, number: number, ids: readonly string[], harsh = 3): Stage {
  const touches = ids.filter((_, index) => pick(salt, number * 7 + index, ids.length < 5 ? 2 : 3) === 0);
  return {
    id: `s${number}`,
    touches,
    run: (state, reading) => {
      const row = `${number} ${state} ${touches.map((crux) => reading(crux) ?? "-").join(" ")}`;
      const ways = 1 + pick(salt, hash(row), 2);
      return Array.from({ length: ways }, (_, way) => {
        const draw = pick(salt, hash(`${row} ${way}`), 12);
        return goes(
          `q${draw % 3}`,
          ...(draw < harsh ? [bars(`rule ${draw % 2} of ${number}`)] : draw === 11 ? [warns("careful")] : []),
        );
      });
    },
  };
}

function pick(salt: number, of: number, range: number): number {
  return hash(`${salt} ${of}`) % range;
}

/** FNV-1a, 32 bits. */
export function hash(text: string): number {
  let value = 0x811c9dc5;
  for (let index = 0; index < text.length; index += 1) {
    value = Math.imul(value ^ text.charCodeAt(index), 0x01000193) >>> 0;
  }
  return value;
}

/** A puzzle of up to `most` cruxes with everything a puzzle can have: several beginnings, silence, warnings, readings that
 *  are ruled out, chains of cruxes that arise under one or two others, requires and excludes of every shape. */
export const anyRichPuzzle = (most: { cruxes: number; stages: number }): fc.Arbitrary<Puzzle> =>
  fc
    .record({
      sizes: fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 1, maxLength: most.cruxes }),
      salt: fc.integer(),
      stages: fc.integer({ min: 0, max: most.stages }),
      starts: fc.uniqueArray(fc.constantFrom("q0", "q1", "q2"), { minLength: 1, maxLength: 3 }),
      ties: fc.integer({ min: 0, max: 4 }),
      arising: fc.integer({ min: 0, max: 3 }),
      harsh: fc.integer({ min: 0, max: 4 }),
    })
    .map(({ sizes, salt, stages, starts, ties, arising, harsh }) => {
      const ids = sizes.map((_, index) => `k${index}`);
      const some = (of: number, crux: number) => {
        const readings = Array.from({ length: sizes[crux] ?? 1 }, (_, reading) => `r${reading}`);
        return readings.filter((_, reading) => reading === of % readings.length || pick(salt, of + reading, 3) === 0);
      };
      const readIn = (of: number, crux: number) => ({ crux: `k${crux}`, readings: some(of, crux) });
      const cruxes = sizes.map((size, index): PuzzleCrux => {
        const parents = [1, 2].filter(
          (back) => index - back >= 0 && arising > 0 && pick(salt, index * 31 + back, 6 - arising) === 0,
        );
        return plainCrux(
          `k${index}`,
          Array.from({ length: size }, (_, reading) => `r${reading}`),
          {
            ruledOut: size > 1 && pick(salt, index + 400, 6) === 0 ? [`r${pick(salt, index, size)}`] : [],
            arisesWhen: parents.map((back) => readIn(index * 17 + back, index - back)),
          },
        );
      });
      const tie = (of: number) => {
        const [first, second] = [pick(salt, of, ids.length), pick(salt, of + 50, ids.length)];
        return {
          crux: `k${first}`,
          reading: `r${pick(salt, of + 100, sizes[first] ?? 1)}`,
          of: readIn(of + 150, second),
        };
      };
      const drawn = Array.from({ length: ties }, (_, index) => tie(index * 7 + 1000));
      const order = pick(salt, 77, 2) === 0 ? cruxes : cruxes.toReversed();
      return puzzleOf(
        order,
        Array.from({ length: stages }, (_, number) => tableStage(salt, number, ids, harsh)),
        {
          requires: drawn.filter((_, index) => index % 2 === 0),
          excludes: drawn.filter((_, index) => index % 2 === 1),
          start: starts,
        },
      );
    });

/** Small puzzles in which little holds, with rules “a” and “b” and one value stated at most stages: what is not said there
 *  may go one way more, and the rule “b” no longer bars. */
export const anyClashing: fc.Arbitrary<{ puzzle: Puzzle; target: Pick | null; picks: Pick[] }> = fc
  .record({
    salt: fc.integer(),
    stages: fc.integer({ min: 1, max: 3 }),
    cruxes: fc.integer({ min: 1, max: 3 }),
    picked: fc.integer({ min: 0, max: 2 }),
    aimed: fc.boolean(),
  })
  .map(({ salt, stages, cruxes, picked, aimed }) => {
    const ids = Array.from({ length: cruxes }, (_, index) => `k${index}`);
    const readings = ["r0", "r1"];
    const reading = (of: number) => `r${pick(salt, of, 2)}`;
    const puzzle = puzzleOf(
      ids.map((id, index) =>
        plainCrux(
          id,
          readings,
          index > 0 && pick(salt, index, 4) === 0 ? { arisesWhen: [{ crux: "k0", readings: ["r0"] }] } : {},
        ),
      ),
      Array.from({ length: stages }, (_, number) => clashingStage(salt, number, ids)),
      pick(salt, 9, 5) === 0 && cruxes > 1
        ? { excludes: [{ crux: "k0", reading: "r1", of: { crux: "k1", readings: ["r1"] } }] }
        : {},
    );
    const picks = ids.slice(0, picked).map((crux, index) => ({ crux, reading: reading(index + 70) }));
    const last = ids.at(-1) as string;
    const target = aimed && picked < cruxes ? { crux: last, reading: reading(90) } : null;
    return { puzzle, target, picks };
  });

function clashingStage(salt: number, number: number, ids: readonly string[]): Stage {
  const touches = ids.filter((_, index) => pick(salt, number * 5 + index + 300, 3) > 0);
  const stated = pick(salt, number + 600, 3) > 0 ? ["said"] : [];
  return {
    id: `s${number}`,
    touches,
    stated,
    run: (state, readingOf, without) => {
      const row = `${number} ${state} ${touches.map((crux) => readingOf(crux) ?? "-").join(" ")}`;
      const unsaid = without?.has("said") === true;
      const way = (of: number): Successor => {
        const draw = pick(salt, hash(`${row} ${of}`), 8);
        const rules = [...(draw < 3 ? ["a"] : []), ...(draw % 3 === 2 && !unsaid ? ["b"] : [])];
        return goes(`q${draw % 2}`, ...rules.map(bars));
      };
      return unsaid ? [way(0), way(1)] : [way(0)];
    },
  };
}

/** Both puzzles one after the other, names kept apart; the second begins where the first ended. */
export function sideBySide(first: Puzzle, second: Puzzle): Puzzle {
  const renamed = (crux: string) => `other ${crux}`;
  return {
    cruxes: [
      ...first.cruxes,
      ...second.cruxes.map((crux) => ({
        ...crux,
        id: renamed(crux.id),
        arisesWhen: crux.arisesWhen.map((condition) => ({ ...condition, crux: renamed(condition.crux) })),
      })),
    ],
    requires: [...first.requires],
    excludes: [
      ...first.excludes,
      ...second.excludes.map((tie) => ({
        ...tie,
        crux: renamed(tie.crux),
        of: { ...tie.of, crux: renamed(tie.of.crux) },
      })),
    ],
    start: first.start,
    stages: [
      ...first.stages,
      { id: "between", touches: [], run: () => second.start.map((state) => goes(state)) },
      ...second.stages.map((stage) => ({
        ...stage,
        touches: stage.touches.map(renamed),
        run: (state: string, reading: (crux: string) => string | null) =>
          stage.run(state, (crux) => reading(renamed(crux))),
      })),
    ],
  };
}
