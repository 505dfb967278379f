/** shared/ground/figures/turn.ts - the horse turned about, by quarters, in each manner.
 *  May import: schema types, siblings in shared/ground. Keeps rules G31-G36, G49-G50 (shared/ground/RULES.md). */
import type { ValueOf } from "../../../schema/values.ts";
import { arcFrom, halt, type Piece, type Turn, turnOnSpot } from "../piece.ts";
import { type Pose, type Side, signOf } from "../plane.ts";
import { AMOUNTS, type Amount } from "./circle.ts";
import {
  after,
  checkSize,
  checkStart,
  type FigureNote,
  type FigureResult,
  finish,
  firstRefusal,
  inWords,
  type Manege,
  refuse,
  remark,
  sideOrRein,
  supplied,
  valueOr,
} from "./figure.ts";

export type Manner = ValueOf<"manner">;

/** `diameter` is for the small half circle alone. */
export type TurnAsk = {
  readonly figure: "turn";
  readonly amount?: Amount | null;
  readonly side?: Side | null;
  readonly manner?: Manner | null;
  readonly diameter?: number | null;
};

/** What stays where it is in each manner that turns on the spot. */
const STAYS: Readonly<Record<Exclude<Manner, "small half circle">, Turn["about"]>> = Object.freeze({
  "on the haunches": "haunches",
  "on the forehand": "forehand",
  "half pirouette": "haunches",
  "roll back over the hocks": "haunches",
  "halt and turn": "middle",
});

export function rideTurn(manege: Manege, start: Pose, ask: TurnAsk): FigureResult {
  const wrong = firstRefusal(
    checkStart(manege, start),
    (ask.diameter ?? null) === null ? null : checkSize("the small half circle of the turn", ask.diameter as number, 3),
  );
  if (wrong !== null) return wrong;
  const notes: FigureNote[] = [];
  const manner = ask.manner ?? null;
  const ridden = manner ?? "on the haunches";
  if (manner === null)
    notes.push(
      supplied("manner", "The text does not say in what manner the horse turns; a turn on the haunches is shown."),
    );
  if (ridden !== "small half circle" && (ask.diameter ?? null) !== null)
    return refuse(
      "contradiction",
      `A turn ${inManner(ridden)} stays on the spot and has no size, but ${inWords(ask.diameter as number)} m are given. Leave the size out, or ride a small half circle.`,
    );
  const amount = amountOf(ask, ridden, notes);
  const side = sideOrRein(ask.side, start, "the turn", notes);
  if (ridden === "half pirouette" && amount !== "half")
    notes.push(
      remark(
        "amount",
        `A half pirouette is half a turn; this one is said to be ${amount === "quarter" ? "a quarter" : amount}.`,
      ),
    );
  return finish(
    manege,
    `the turn ${inManner(ridden)}`,
    piecesOf(manege, start, ask, ridden, signOf(side) * AMOUNTS[amount], notes),
    notes,
  );
}

function inManner(manner: Manner): string {
  return manner.startsWith("on the") ? manner : `by ${manner}`;
}

function amountOf(ask: TurnAsk, manner: Manner, notes: FigureNote[]): Amount {
  if (ask.amount !== null && ask.amount !== undefined) return ask.amount;
  // The names of these two say how much.
  if (manner === "half pirouette" || manner === "small half circle") return "half";
  notes.push(supplied("amount", "The text does not say how far the horse turns; half a turn is supplied."));
  return "half";
}

function piecesOf(
  manege: Manege,
  start: Pose,
  ask: TurnAsk,
  manner: Manner,
  sweep: number,
  notes: FigureNote[],
): Piece[] {
  const { usual } = manege;
  if (manner === "small half circle") {
    const diameter = valueOr(
      ask.diameter,
      usual.smallHalfCircle,
      "diameter",
      "how large the small half circle is",
      " m across",
      notes,
    );
    return [arcFrom(start, diameter / 2, sweep)];
  }
  const turn = (from: Pose): Piece => turnOnSpot(from, sweep, STAYS[manner]);
  if (manner !== "halt and turn") return [turn(start)];
  notes.push(
    supplied(
      "seconds",
      `The text does not say how long the halt before the turn lasts; ${inWords(usual.haltSeconds)} s is supplied.`,
    ),
  );
  const first = halt(start, usual.haltSeconds);
  return [first, turn(after(start, [first]))];
}
