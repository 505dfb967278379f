/** Ground: compile steps into a path of 200 pieces, sample eight riders 60 times a second over it, find how near they come.
 *  The ride is the same every run: figures in a fixed order on one large ground, nothing drawn. */
import {
  allDistances,
  arcFrom,
  type CarriedPoint,
  type FigureAsk,
  type GroundStation,
  joinPaths,
  type Manege,
  type Path,
  type PathResult,
  pathOf,
  poseAt,
  type Rider,
  rectangularGround,
  rideFigure,
  ridersTogether,
  sampleRiders,
  settled,
  timeAtOneSpeed,
  USUAL,
  USUAL_BODY,
} from "../../shared/ground/index.ts";
import type { Report } from "./harness.ts";

const PIECES = 200;
const SPEED = 5.36;

const station = (name: string, x: number): GroundStation => ({
  id: name,
  name,
  outline: { is: "point", at: { x, y: 0 } },
  partner: null,
});
const stations = [station("right", 30), station("left", -30)];
const made = rectangularGround({ width: 60, length: 120, trackOffset: 1.8, stations });
if (!made.ok) throw new Error(made.sentence);
const manege: Manege = { ground: made.ground, usual: USUAL };

/** From the middle of the right side on the left rein, and back to it. */
const ROUND: readonly FigureAsk[] = [
  { figure: "volte", side: "left", diameter: 10 },
  { figure: "circle", side: "left", diameter: 20 },
  { figure: "half volte", side: "left", diameter: 6, back: 14 },
  { figure: "along the wall", side: "right", toward: "left" },
  { figure: "turn", side: "right", amount: "half", manner: "on the haunches" },
  { figure: "halt", seconds: 1 },
  { figure: "straight", length: 8 },
  { figure: "along the wall", side: "left", toward: "right" },
];

/** Steps until the path has as many pieces as asked for. */
function compile(pieces: number): Path {
  const start = poseAt(28.2, 0, 9_000);
  let path: Path | null = null;
  for (let step = 0; path === null || path.pieces.length < pieces; step += 1) {
    const ask = ROUND[step % ROUND.length] as FigureAsk;
    const result = rideFigure(manege, path === null ? start : settled(path.end), ask);
    if (!result.ok) throw new Error(`Step ${step}: ${result.sentence}`);
    const joined: PathResult =
      path === null ? { ok: true, path: result.path } : joinPaths(path, result.path, USUAL.tolerance);
    if (!joined.ok) throw new Error(`Step ${step}: ${joined.sentence}`);
    path = joined.path;
  }
  return path;
}

/** Forward, across to the right, and back. */
const point: CarriedPoint = {
  name: "the point",
  moments: [
    { seconds: 0, ahead: 2.4, left: 0.3 },
    { seconds: 60, ahead: 1.2, left: -1.8 },
    { seconds: 120, ahead: 2.4, left: 0.3 },
  ],
};

function riders(path: Path, count: number): Rider[] {
  const timed = timeAtOneSpeed(path, SPEED);
  return Array.from({ length: count }, (_, index) => ({
    name: `rider ${index + 1}`,
    timed,
    starts: 2 * index,
    counts: "while riding",
    body: USUAL_BODY,
    points: [point],
  }));
}

/** The hard case for distances: in file round a circle nobody comes nearer, so that no moment is better than another. */
function inFile(seconds: number): Rider[] {
  const start = poseAt(10, 0, 9_000);
  const lap = (20 * Math.PI) / SPEED;
  const laps = Array.from({ length: Math.ceil(seconds / lap) }, () => arcFrom(start, 10, 36_000));
  const timed = timeAtOneSpeed(pathOf(laps, USUAL.tolerance), SPEED);
  return riders(timed.path, 8).map((rider, index) => ({ ...rider, starts: (index * lap) / 8 }));
}

export default async function groundBench(report: Report): Promise<void> {
  const path = compile(PIECES);
  const eight = riders(path, 8);
  const together = ridersTogether(eight);
  if (!together.ok) throw new Error(together.sentence);
  const samples = sampleRiders(eight, together.from, together.to, 60);
  if (samples.rows.length !== 8 || !samples.rows.every((row) => row.every((value) => Number.isFinite(value))))
    throw new Error("Eight rows of places and headings were expected.");
  const seconds = together.to - together.from;
  const ride = `${path.pieces.length} pieces, ${Math.round(seconds)} s, 60 samples a second`;
  for (const pieces of [50, 100, PIECES])
    await report.bench(`ground: compile ${pieces} pieces`, { runs: 20, warmUp: 5 }, () => compile(pieces));
  for (const count of [1, 2, 4, 8])
    await report.bench(
      `ground: sample ${count} ${count === 1 ? "rider" : "riders"}`,
      { runs: 15, warmUp: 3, note: ride },
      () => sampleRiders(eight.slice(0, count), together.from, together.to, 60),
    );
  const pairs = allDistances(eight, { within: 0.01, care: 3 });
  if (pairs.length !== 84) throw new Error("28 pairs of bodies and 56 of point and body were expected.");
  for (const care of [3, Number.POSITIVE_INFINITY])
    await report.bench(
      `ground: least distances of 8 riders with points${care === 3 ? ", below 3 m" : ""}`,
      { runs: 8, warmUp: 2, note: `84 pairs, within 1 cm, ${ride}` },
      () => allDistances(eight, { within: 0.01, care }),
    );
  const file = inFile(seconds);
  await report.bench(
    "ground: least distances of 8 in file, below 3 m",
    { runs: 8, warmUp: 2, note: "nobody gets nearer or farther" },
    () => allDistances(file, { within: 0.01, care: 3 }),
  );
}
