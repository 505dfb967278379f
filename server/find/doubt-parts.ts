/** server/find/doubt-parts.ts - the words of readings and questions, each with what it is.
 *  May import: schema types, siblings. */
import type { RecordOf } from "../../schema/record.ts";
import type { Basis } from "../../schema/slot.ts";
import { type Entry, type Part, part } from "./entry.ts";

export function readingParts(reading: RecordOf<"readings">): Part[] {
  const name = `“${reading.title}”`;
  const { status } = reading;
  const decided = status.is === "standing" ? "" : status.reason;
  const condition = status.is === "adopted" ? status.condition : "";
  return [
    ...part("a reading of it", reading.title),
    ...part(`the argument for ${name}`, reading.argument),
    ...part(`who holds ${name}`, reading.holder),
    ...reading.evidence.flatMap((basis) => part(`evidence for ${name}`, basisWords(basis))),
    ...part(`why ${name} is ${status.is}`, decided),
    ...part(`when ${name} is adopted`, condition),
  ];
}

/** The words of a basis that has some of its own; marks, pictures and trials are found by theirs. */
function basisWords(basis: Basis): string {
  switch (basis.is) {
    case "premise":
      return basis.text;
    case "parallel":
      return [basis.where, basis.text].filter(Boolean).join(": ");
    case "editor":
      return basis.note;
    case "words":
    case "picture":
    case "trial":
      return "";
  }
}

export function questionEntry(question: RecordOf<"questions">): Entry {
  const { id, crux, state } = question;
  const shown = { kind: "questions", id } as const;
  const inCrux = { kind: "cruxes", id: crux ?? "" } as const;
  return {
    kind: "questions",
    id,
    work: question.work,
    exercise: question.exercise,
    title: question.text,
    parts: [
      ...part("addressed to", question.to),
      ...question.answers.flatMap(({ label }) => part("a possible answer", label)),
      ...part("the answer", state.is === "answered" ? state.answer : ""),
      ...part("why it was withdrawn", state.is === "withdrawn" ? state.reason : ""),
    ],
    place: {
      is: "tied",
      ties: [{ of: shown, shown }, ...(crux === null ? [] : [{ of: inCrux, shown: inCrux }])],
      after: null,
    },
  };
}
