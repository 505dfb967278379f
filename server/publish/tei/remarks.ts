/** server/publish/tei/remarks.ts - questions, notes and advice as TEI notes that point at the words they are about.
 *  May import: schema types, shared, siblings. */
import type { Question } from "../../../schema/crux.ts";
import type { Markable } from "../../../schema/mark.ts";
import type { Markup } from "../markup.ts";
import { element } from "../xml.ts";
import type { Edition } from "./edition.ts";
import { nameOf, pointer, pointers } from "./pointers.ts";

export function remarks(edition: Edition): Markup[] {
  return [
    ...edition.named.of("questions").map((question) => questionNote(edition, question)),
    ...edition.named
      .of("notes")
      .map(({ id, text }) =>
        element("note", { "xml:id": nameOf("notes", id), type: "note", target: spans(edition, "notes", id) }, text),
      ),
    ...edition.exercises.flatMap(({ elements }) =>
      elements.flatMap((one) =>
        one.is === "advice"
          ? [
              element(
                "note",
                {
                  type: "advice",
                  corresp: pointer(nameOf("elements", one.id)),
                  target: spans(edition, "elements", one.id),
                },
                one.demand,
              ),
            ]
          : [],
      ),
    ),
  ];
}

/** Pointers at all spans of a thing. */
function spans({ rows, named }: Edition, of: Markable, id: string): string | null {
  const names = rows
    .marksOf(of, id)
    .flatMap((mark) => rows.anchorsOf(mark.id))
    .flatMap((anchor) => named.name("anchors", anchor.id) ?? []);
  return pointers(names);
}

function questionNote(edition: Edition, question: Question): Markup {
  const { named, people } = edition;
  const { id, text, to, by, asked, state, answers } = question;
  const about = [
    question.crux === null ? null : named.name("cruxes", question.crux),
    question.exercise === null ? null : named.name("exercises", question.exercise),
  ].filter((name) => name !== null);
  const person = people.named(to);
  const addressee = to.trim() === "" ? null : element("persName", { ref: person && pointer(person) }, to);
  const put =
    by === "trial" ? ["To be settled by a trial", addressee && ", ", addressee] : ["To ", addressee ?? "nobody yet"];
  const when = asked === null ? null : [", asked ", element("date", { when: asked }, asked)];
  const choices = answers.map(({ label }) => element("item", {}, label));
  const attributes = {
    "xml:id": nameOf("questions", id),
    type: "question",
    subtype: state.is,
    target: spans(edition, "questions", id),
    corresp: pointers(about),
  };
  return element("note", attributes, [
    element("p", {}, text),
    element("p", {}, [...put, when]),
    choices.length === 0 ? null : element("list", { type: "answers" }, choices),
    stateOf(question),
  ]);
}

function stateOf({ state }: Question): Markup | null {
  if (state.is === "open") return null;
  const when = element("date", { when: state.on }, state.on);
  return state.is === "answered"
    ? element("p", {}, ["Answered ", when, `: ${state.answer}`])
    : element("p", {}, ["Withdrawn ", when, state.reason === "" ? "" : `: ${state.reason}`]);
}
