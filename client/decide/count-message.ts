/** client/decide/count-message.ts - what the window and the counting thread say to each other; plain data only.
 *  May import: types. */
import type { Question } from "../../schema/crux.ts";
import type { Way } from "../../schema/guard.ts";
import type {
  AnsweredReading,
  DecideAnswer,
  DecideAsk,
  Efforts,
  Instead,
  NearestAsk,
  NextStep,
  Pick,
  WeighedCrux,
  WeighedStage,
  WhyNot,
} from "../../shared/ride/puzzle/index.ts";
import type { RowsSent } from "./rows-sent.ts";

/** What is weighed: exercises one after another, done in one way. */
export interface Weighing {
  exercises: readonly string[];
  way: Way;
}

export type CountAsk =
  | { do: "answer"; ask: DecideAsk }
  /** The readings of every picked crux, as if it alone were not picked. */
  | { do: "beside"; ask: DecideAsk }
  | { do: "why"; ask: DecideAsk; target: Pick | null }
  /** Which readings to show of what nobody settled. */
  | { do: "nearest"; ask: NearestAsk }
  | { do: "next"; ask: DecideAsk; questions: Question[]; efforts: Efforts };

/** The cruxes and stages a count is told of; known before it is done. */
export interface LaidOut {
  cruxes: WeighedCrux[];
  stages: WeighedStage[];
}
export interface CountValues {
  answer: DecideAnswer;
  beside: AnsweredReading[];
  why: WhyNot;
  next: NextStep[];
  nearest: Instead[] | null;
}

export interface ToCounter {
  job: number;
  rows: RowsSent | null;
  weighing: Weighing;
  asked: CountAsk;
}
export type FromCounter =
  /** Before a count. */
  | { job: number; is: "laid out"; laid: LaidOut }
  /** The furthest stage that was looked at, from 1, of so many. */
  | { job: number; is: "progress"; stage: number; of: number }
  | { job: number; is: "done"; value: CountValues[keyof CountValues] }
  | { job: number; is: "failed"; sentence: string };
