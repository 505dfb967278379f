/** server/publish/annotations/marked-thing.ts - what a mark ties to words: what kind of thing it is, and what that says.
 *  May import: schema types, shared/drill, siblings. */
import type { Mark, Markable } from "../../../schema/mark.ts";
import type { RecordOf } from "../../../schema/record.ts";
import { actWords } from "../../../shared/drill/act-words.ts";
import { elementWords } from "../../../shared/drill/element-words.ts";
import type { ExerciseRows, WorkRows } from "../../../shared/drill/exercise-rows.ts";
import type { Names } from "../../../shared/drill/words.ts";
import type { Motivation } from "./web-annotation.ts";

export interface MarkedThing {
  /** "step 3", "reading", "question to Y. Varne". */
  tag: string;
  /** What it says; may be empty. */
  says: string;
  motivation: Motivation;
}

export interface Telling {
  rows: WorkRows;
  names: Names;
  exercises: ReadonlyMap<string, { rows: ExerciseRows; numbers: ReadonlyMap<string, number> }>;
}

const MOTIVATIONS: Record<Markable, Motivation> = {
  elements: "describing",
  actions: "describing",
  standings: "describing",
  cruxes: "commenting",
  readings: "commenting",
  questions: "questioning",
  terms: "classifying",
  senses: "classifying",
  notes: "commenting",
  holds: "identifying",
  movements: "identifying",
  stations: "identifying",
  threats: "identifying",
  rules: "commenting",
  faults: "commenting",
};

/** Null when the thing is not among the rows. */
export function markedThing(telling: Telling, { of, target, as }: Mark): MarkedThing | null {
  const row = telling.rows.find(of, target);
  if (row === undefined) return null;
  const { tag, says } = TELLERS[of](telling, row as never);
  const evidence = as === "words" ? "" : ` (evidence ${as} it)`;
  return { tag: `${tag}${evidence}`, says, motivation: MOTIVATIONS[of] };
}

type Told = { tag: string; says: string };
const TELLERS: { [K in Markable]: (telling: Telling, row: RecordOf<K>) => Told } = {
  elements: elementTold,
  actions: ({ names }, { act }) => ({ tag: "action", says: actWords(act, names) }),
  standings: (_telling, { is, title }) => ({ tag: is === "instruction" ? "standing instruction" : is, says: title }),
  cruxes: (_telling, { is, title }) => ({ tag: `crux (${is})`, says: title }),
  readings: (_telling, { title, holder }) => ({ tag: holder === "" ? "reading" : `reading of ${holder}`, says: title }),
  questions: (_telling, { text, to }) => ({ tag: to === "" ? "question" : `question to ${to}`, says: text }),
  terms: (_telling, { word }) => ({ tag: "term", says: word }),
  senses: ({ names }, { term, title }) => ({ tag: `sense of “${names("terms", term) ?? ""}”`, says: title }),
  notes: (_telling, { text }) => ({ tag: "note", says: text }),
  holds: named("hold"),
  movements: named("movement"),
  stations: named("station"),
  threats: named("opponent"),
  rules: (_telling, { sentence }) => ({ tag: "rule", says: sentence }),
  faults: (_telling, { fault, correction }) => ({
    tag: "fault",
    says: correction === "" ? fault : `${fault} Correction: ${correction}`,
  }),
};

function named(tag: string) {
  return (_telling: Telling, { name }: { name: string }): Told => ({ tag, says: name });
}

/** A step by its title, else by what is done in it. */
function elementTold({ rows, names, exercises }: Telling, element: RecordOf<"elements">): Told {
  const exercise = exercises.get(element.exercise);
  const number = exercise?.numbers.get(element.id);
  const tag = number === undefined ? element.is : `${element.is} ${number}`;
  const title = "title" in element ? element.title : "";
  const text = exercise ? elementWords({ rows: exercise.rows, names, numbers: exercise.numbers }, element) : "";
  const acts = rows.actionsOf(element.id).map(({ act }) => actWords(act, names));
  return { tag, says: [title, text || acts.join("; ")].filter((part) => part !== "").join(": ") };
}
