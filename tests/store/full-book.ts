/** tests/store/full-book.ts - an invented book with a row of every kind, all named by each other as they may be.
 *  The words are made up for these tests. */
import type { Kind } from "../../schema/record.ts";
import { quoteAt } from "../../shared/text/index.ts";

/** A fixed id: 1 to 9999 name rows and changes of a test. */
export function idOf(number: number): string {
  return `00000000-0000-4000-8000-${String(number).padStart(12, "0")}`;
}

const names = [
  ...["work", "source", "witness", "layer", "original", "revision", "oldRevision", "ground", "station", "exercise"],
  ...["passage", "passage2", "text", "text2", "originalText", "link"],
  ...["stepMark", "noteMark", "stepAnchor", "noteAnchor"],
  ...["regionMark", "regionAnchor", "note", "picture", "region", "step", "step2", "again", "advice", "untreated"],
  ...["turn", "take", "standing", "variant", "crux", "crux2", "reading", "reading2", "other", "other2"],
  ...["question", "sitting", "term", "sense", "object", "hold", "movement", "threat", "rule", "waiver"],
  ...["fault", "kit", "trial", "edition", "edition2", "slip", "report", "lesson", "cruxMark", "cruxAnchor"],
] as const;
export type BookName = (typeof names)[number];
export const ID = Object.fromEntries(names.map((name, index) => [name, idOf(1000 + index)])) as Record<
  BookName,
  string
>;

export const TEXT = "Ride to the left hand, and carry the spear low until the wall.";
export const paragraph = (text: string) => ({
  type: "doc",
  content: [text === "" ? { type: "paragraph" } : { type: "paragraph", content: [{ type: "text", text }] }],
});

const supplied = { warrant: "supplied", basis: [] };
const stated = (mark: string) => ({ warrant: "stated", basis: [{ is: "words", mark }] });
const said = (value: unknown) => ({ is: "said", value, ...supplied });
const inCrux = (crux: string) => ({ is: "in crux", crux });
const when = (crux: string, ...readings: string[]) => ({ is: "reading", crux, readings });
export const anchor = (id: string, mark: string, from: number, to: number) => ({
  ...{ id, mark, rank: "a0", is: "text", passage: ID.passage, text: ID.text, from, to },
  ...{ fromSide: "after", toSide: "before", ...quoteAt(TEXT, from, to), fate: "same" },
});
const element = (id: string, rank: string) => ({
  ...{ id, exercise: ID.exercise, rank, guard: [], existence: supplied, order: null, role: "", copyOf: null, note: "" },
});
const readingOf = (id: string, crux: string, title: string) => ({
  ...{ id, crux, rank: "a0", title, argument: "", holder: "editor", evidence: [], requires: [], excludes: [] },
  ...{ values: [], status: { is: "standing" }, confidence: null },
});
const cruxOf = (id: string, title: string) => ({
  ...{ id, work: ID.work, exercise: ID.exercise, is: "ambiguous", scope: "place", title, note: "" },
  ...{ arisesWhen: [] as unknown[], leftFree: null, exceptions: [] as unknown[] },
});
const passageText = (id: string, passage: string, revision: string, text: string) => ({
  ...{ id, passage, revision, number: 1, doc: paragraph(text), text, steps: [] },
});
const edition = (id: string, number: number) => ({
  ...{ id, work: ID.work, exercises: [ID.exercise], number, title: "First sheet", issued: "2026-05-01" },
  ...{ choice: [{ crux: ID.crux, reading: ID.reading }], variant: ID.variant, model: { of: ["anything"] } },
  ...{ papers: [], at: 1, recipients: [{ who: "the Thursday class", on: "2026-05-02" }] },
});

const of = (extra: object) => ({ work: ID.work, rank: "a0", note: "", ...extra });

/** Kind and value of every row, in no order that matters. `image` is the hash of an attachment. */
export function bookRows(image: string): [Kind, Record<string, unknown>][] {
  return [
    [
      "works",
      {
        id: ID.work,
        rank: "a0",
        title: "The Book of the Court",
        author: "",
        levels: [],
        note: "",
        source: ID.source,
        invented: true,
      },
    ],
    ["sources", { id: ID.source, work: ID.work, item: { id: "court", type: "book", title: "The Book of the Court" } }],
    ["witnesses", of({ id: ID.witness, siglum: "A", is: "manuscript", name: "", place: "", date: "" })],
    [
      "layers",
      {
        id: ID.layer,
        work: ID.work,
        rank: "a0",
        is: "translation",
        title: "English",
        by: "",
        language: "en",
        witness: null,
        urn: "",
      },
    ],
    [
      "layers",
      {
        id: ID.original,
        work: ID.work,
        rank: "a1",
        is: "original",
        title: "Latin",
        by: "",
        language: "la",
        witness: ID.witness,
        urn: "",
      },
    ],
    [
      "revisions",
      {
        id: ID.revision,
        layer: ID.layer,
        rank: "a1",
        label: "spring",
        received: "2026-04-01",
        from: "pasted",
        attachment: image,
        note: "",
      },
    ],
    [
      "revisions",
      {
        id: ID.oldRevision,
        layer: ID.original,
        rank: "a0",
        label: "first",
        received: null,
        from: "",
        attachment: null,
        note: "",
      },
    ],
    [
      "grounds",
      of({
        id: ID.ground,
        name: "Court",
        is: "rectangular",
        slots: { length: said({ is: "about", of: 40, spread: 5 }) },
      }),
    ],
    [
      "stations",
      {
        id: ID.station,
        ground: ID.ground,
        rank: "a0",
        name: "Well",
        is: "point",
        partner: null,
        note: "",
        outline: said({ is: "point", at: { x: -10, y: 2500 } }),
      },
    ],
    ["exercises", of({ id: ID.exercise, label: "1", title: "The left hand", ground: ID.ground })],
    [
      "passages",
      {
        id: ID.passage,
        work: ID.work,
        exercise: ID.exercise,
        rank: "a0",
        references: [{ kind: "section", from: ["1"] }],
      },
    ],
    [
      "passages",
      {
        id: ID.passage2,
        work: ID.work,
        exercise: ID.exercise,
        rank: "a1",
        references: [{ kind: "section", from: ["2"] }],
      },
    ],
    ["passageTexts", passageText(ID.text, ID.passage, ID.revision, TEXT)],
    ["passageTexts", passageText(ID.text2, ID.passage2, ID.revision, "Then do it again.")],
    ["passageTexts", passageText(ID.originalText, ID.passage, ID.oldRevision, "Ad laevam equita.")],
    [
      "passageLinks",
      { id: ID.link, work: ID.work, is: "split", from: [ID.passage], to: [ID.passage, ID.passage2], note: "" },
    ],
    ["marks", { id: ID.stepMark, work: ID.work, of: "elements", target: ID.step, as: "words" }],
    ["marks", { id: ID.noteMark, work: ID.work, of: "notes", target: ID.note, as: "words" }],
    ["marks", { id: ID.regionMark, work: ID.work, of: "holds", target: ID.hold, as: "for" }],
    ["marks", { id: ID.cruxMark, work: ID.work, of: "cruxes", target: ID.crux, as: "words" }],
    ["anchors", anchor(ID.stepAnchor, ID.stepMark, 0, 21)],
    ["anchors", anchor(ID.noteAnchor, ID.noteMark, 37, 46)],
    ["anchors", anchor(ID.cruxAnchor, ID.cruxMark, 12, 16)],
    ["anchors", { id: ID.regionAnchor, mark: ID.regionMark, rank: "a0", is: "region", region: ID.region }],
    ["notes", { id: ID.note, work: ID.work, text: "So in both." }],
    [
      "pictures",
      of({
        id: ID.picture,
        title: "Rider",
        witness: ID.witness,
        where: "f. 3r",
        attachment: image,
        width: 10,
        height: 10,
      }),
    ],
    [
      "regions",
      {
        id: ID.region,
        picture: ID.picture,
        corners: [
          [0, 0],
          [5, 5],
        ],
        label: "",
      },
    ],
    ["elements", { ...element(ID.step, "a0"), existence: stated(ID.stepMark), is: "step", title: "Turn" }],
    [
      "elements",
      {
        ...element(ID.step2, "a1"),
        guard: [when(ID.crux, ID.reading)],
        is: "step",
        title: "Take",
        cue: inCrux(ID.crux2),
      },
    ],
    [
      "elements",
      {
        ...element(ID.again, "a2"),
        is: "again",
        title: "",
        of: { is: "elements", from: ID.step, to: ID.step2 },
        manner: "mirrored",
        except: [{ is: "without", action: ID.take }],
        times: said({ is: "times", n: 2 }),
      },
    ],
    [
      "elements",
      {
        ...element(ID.advice, "a3"),
        is: "advice",
        demand: "Keep it low.",
        from: ID.step,
        to: null,
        rule: ID.rule,
      },
    ],
    [
      "elements",
      {
        ...element(ID.untreated, "a4"),
        is: "untreated",
        fromPassage: ID.passage2,
        toPassage: ID.passage2,
        estimate: { from: 1, to: 3 },
      },
    ],
    [
      "actions",
      {
        id: ID.turn,
        ownerKind: "elements",
        owner: ID.step,
        rank: "a0",
        guard: [],
        existence: supplied,
        note: "",
        act: { verb: "ride", slots: { figure: said("circle"), turn: inCrux(ID.crux) } },
        timing: said({ is: "before" }),
      },
    ],
    [
      "actions",
      {
        id: ID.take,
        ownerKind: "elements",
        owner: ID.step2,
        rank: "a0",
        guard: [],
        existence: supplied,
        note: "",
        act: { verb: "take", slots: { object: said(ID.object) } },
        threat: said(ID.threat),
      },
    ],
    [
      "standings",
      of({
        id: ID.standing,
        exercise: null,
        is: "instruction",
        title: "At the canter",
        guard: [],
        existence: supplied,
      }),
    ],
    [
      "variants",
      {
        id: ID.variant,
        work: ID.work,
        exercise: ID.exercise,
        rank: "a0",
        name: "On foot",
        way: "on foot",
        deltas: [{ is: "leave out", element: ID.step2, reason: "no horse" }],
      },
    ],
    [
      "cruxes",
      {
        ...cruxOf(ID.crux, "Which left"),
        exceptions: [{ element: ID.again, reading: ID.reading2, reason: "so here" }],
      },
    ],
    [
      "cruxes",
      {
        ...cruxOf(ID.crux2, "How often"),
        arisesWhen: [when(ID.crux, ID.reading)],
        leftFree: { on: "2026-05-01", sitting: ID.sitting, reason: "rider's choice", default: ID.other },
      },
    ],
    [
      "readings",
      {
        ...readingOf(ID.reading, ID.crux, "The horse's"),
        evidence: [
          { is: "picture", region: ID.region },
          { is: "trial", trial: ID.trial },
        ],
        values: [
          { at: { kind: "actions", id: ID.turn, slot: "turn" }, value: said({ to: "left", viewpoint: "rider" }) },
        ],
      },
    ],
    [
      "readings",
      {
        ...readingOf(ID.reading2, ID.crux, "The onlookers'"),
        excludes: [when(ID.crux2, ID.other)],
        values: [{ at: { kind: "actions", id: ID.turn, slot: "turn" }, value: { is: "not said" } }],
      },
    ],
    [
      "readings",
      {
        ...readingOf(ID.other, ID.crux2, "Once"),
        values: [{ at: { kind: "elements", id: ID.step2, slot: "cue" }, value: { is: "absent" } }],
      },
    ],
    ["readings", { ...readingOf(ID.other2, ID.crux2, "Twice"), confidence: "0.25" }],
    [
      "questions",
      {
        id: ID.question,
        work: ID.work,
        exercise: ID.exercise,
        crux: ID.crux,
        text: "Which?",
        to: "translator",
        by: "person",
        asked: "2026-05-01",
        effort: 2,
        answers: [{ label: "horse", allows: [when(ID.crux, ID.reading)] }],
        state: { is: "answered", on: "2026-05-03", sitting: ID.sitting, answer: "The horse's." },
      },
    ],
    ["sittings", { id: ID.sitting, work: ID.work, on: "2026-05-03", who: ["the translator"], place: "", note: "" }],
    ["terms", { id: ID.term, work: ID.work, word: "laeva", language: "la", note: "" }],
    ["senses", { id: ID.sense, term: ID.term, rank: "a0", title: "left hand", gloss: "" }],
    ["objects", of({ id: ID.object, is: "shaft", name: "Spear", slots: { length: said({ is: "exact", of: 2.4 }) } })],
    [
      "holds",
      of({
        id: ID.hold,
        name: "Low",
        for: ["shaft"],
        hands: "one",
        strong: false,
        slots: { bearing: said({ is: "toward", what: "the well", station: ID.station }) },
      }),
    ],
    ["movements", of({ id: ID.movement, name: "Change over" })],
    ["threats", { id: ID.threat, work: ID.work, name: "Rider", slots: { mount: said("mounted") }, note: "" }],
    [
      "rules",
      {
        id: ID.rule,
        work: ID.work,
        code: "low-spear",
        sentence: "Keep it low.",
        basis: "the text",
        support: [{ is: "parallel", source: ID.source, where: "", text: "" }],
        severity: "notes",
        reach: "piece",
      },
    ],
    [
      "waivers",
      {
        id: ID.waiver,
        rule: "low-spear",
        element: ID.step2,
        reason: "just taken",
        basis: [{ is: "premise", text: "it is in the ground", crux: ID.crux }],
      },
    ],
    [
      "faults",
      { id: ID.fault, work: ID.work, of: "holds", target: ID.hold, rank: "a0", fault: "Too high", correction: "" },
    ],
    [
      "kits",
      of({
        id: ID.kit,
        name: "Today",
        horse: { name: "", slots: {} },
        rider: { name: "", slots: { reach: said({ is: "exact", of: 0.7 }) } },
        objects: [{ object: ID.object, metres: 2.4 }],
      }),
    ],
    [
      "trials",
      {
        id: ID.trial,
        exercise: ID.exercise,
        on: "2026-05-02",
        who: "",
        way: "mounted",
        choice: [{ crux: ID.crux, reading: ID.reading }],
        variant: ID.variant,
        kit: ID.kit,
        edition: ID.edition,
        drill: null,
        outcome: "in part",
        findings: [{ element: ID.step, text: "too tight" }],
        note: "",
      },
    ],
    ["editions", edition(ID.edition, 1)],
    ["editions", edition(ID.edition2, 2)],
    [
      "slips",
      {
        id: ID.slip,
        from: ID.edition,
        to: ID.edition2,
        on: "2026-05-03",
        entries: [{ element: ID.step, shown: "1", was: "left", now: "right", why: "" }],
      },
    ],
    [
      "reports",
      {
        id: ID.report,
        edition: ID.edition,
        shown: "1",
        element: ID.step,
        who: "",
        on: "2026-05-03",
        text: "Left?",
        state: "new",
        answer: "",
      },
    ],
    [
      "lessons",
      {
        id: ID.lesson,
        work: ID.work,
        on: null,
        title: "Thursday",
        contact: "none",
        equipment: "",
        items: [{ exercise: ID.exercise, variant: ID.variant, minutes: 20, demonstrates: "", group: "all", note: "" }],
      },
    ],
  ];
}
