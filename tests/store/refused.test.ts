/** tests/store/refused.test.ts - one bad request a line: its code, its words, the place it names; nothing is stored.
 *  Rules S2 and S8-S21. */
import { describe, expect, test } from "vitest";
import type { Edit } from "../../schema/change.ts";
import type { ErrorCode } from "../../server/errors.ts";
import { allRows, type Store, writeChange } from "../../server/store/index.ts";
import { anchor, ID, idOf, paragraph, TEXT } from "./full-book.ts";
import { bookStore, create, NOW, remove, request, set } from "./store-builders.ts";

const at = { now: NOW };
const note = (id: number, text = "n") => create("notes", { id: idOf(id), work: ID.work, text });
const write = (store: Store, number: number, edits: Edit[], by?: string) =>
  writeChange(store, request(number, edits, by), at);

const supplied = { warrant: "supplied", basis: [] };
const said = (value: unknown) => ({ is: "said", value, ...supplied });
const inCrux = (crux: string) => ({ is: "in crux", crux });
const give = (slot: string, given: unknown, id = ID.turn) => ({ at: { kind: "actions", id, slot }, value: given });
const adopted = { is: "adopted", on: "2026-05-04", sitting: null, reason: "clear", condition: "" };
const condition = (crux: string, reading: string) => ({ is: "reading", crux, readings: [reading] });
const turnAct = (slots: object) => set("actions", ID.turn, 1, { act: { verb: "ride", slots } });

/** Every edit list is refused with the code, some words, and the place; and nothing is stored. */
const REFUSED: [string, ErrorCode, string | RegExp, string, Edit[]][] = [
  [
    "[S8] an unknown field",
    "value_invalid",
    /Unrecognized key/,
    "edits[0].value",
    [create("notes", { id: idOf(1), work: ID.work, text: "n", colour: 1 })],
  ],
  [
    "[S8] a missing field",
    "value_invalid",
    "",
    "edits[0].value.text",
    [create("notes", { id: idOf(1), work: ID.work })],
  ],
  [
    "[S8] a field of another kind",
    "value_invalid",
    "notes have no field title",
    "edits[0].fields.title",
    [set("notes", ID.note, 1, { title: "x" })],
  ],
  [
    "[S8] the id set",
    "value_invalid",
    "never changes",
    "edits[0].fields.id",
    [set("notes", ID.note, 1, { id: idOf(1) })],
  ],
  [
    "[S8] stated without words",
    "value_invalid",
    "mark them, or say implied or supplied",
    "edits[0].fields.existence.basis",
    [set("elements", ID.step, 1, { existence: { warrant: "stated", basis: [] } })],
  ],
  ["[S8] a slot of another verb", "value_invalid", "", "edits[0].fields.act.slots", [turnAct({ zone: said("butt") })]],
  [
    "[S2] half a character",
    "value_invalid",
    "half of one",
    "edits[0].fields.text",
    [set("notes", ID.note, 1, { text: "\ud834" })],
  ],
  ["[S9] a name twice", "row_named_twice", "Join the two", "edits[1]", [note(1), note(1)]],
  [
    "[S10] an id that is there",
    "id_taken",
    "already",
    "edits[0].value.id",
    [create("notes", { id: ID.note, work: ID.work, text: "n" })],
  ],
  [
    "[S12] no such row",
    "row_unknown",
    "There is no note",
    "edits[0].fields",
    [set("notes", idOf(1), 1, { text: "x" })],
  ],
  [
    "[S12] a version not reached",
    "version_unknown",
    "is at version 1; version 7",
    "edits[0].fields",
    [set("notes", ID.note, 7, { text: "x" })],
  ],
  [
    "[S13] a hold that an action of a reading needs",
    "still_needed",
    "picture region",
    "edits[0]",
    [remove("regions", ID.region)],
  ],
  ["[S13] a reading a guard needs", "still_needed", "element “Take”", "edits[0]", [remove("readings", ID.reading)]],
  [
    "[S13] a row a reading addresses",
    "still_needed",
    "reading “The horse's”",
    "edits[0]",
    [remove("actions", ID.turn)],
  ],
  ["[S13] an object a slot names", "still_needed", "action “take”", "edits[0]", [remove("objects", ID.object)]],
  ["[S13] a passage with marks", "still_needed", "anchor “", "edits[0]", [remove("passages", ID.passage)]],
  [
    "[S14] a work that is not there",
    "reference_unknown",
    "Expected a work",
    "edits[0].value.work",
    [create("notes", { id: idOf(1), work: idOf(2), text: "n" })],
  ],
  [
    "[S14] a crux in a guard",
    "reference_unknown",
    "Expected a crux",
    "edits[0].fields.guard[0].crux",
    [set("elements", ID.step, 1, { guard: [condition(idOf(2), ID.reading)] })],
  ],
  [
    "[S14] a mark in a basis",
    "reference_unknown",
    "Expected a mark",
    "edits[0].fields.existence.basis[0].mark",
    [set("elements", ID.step, 1, { existence: { warrant: "stated", basis: [{ is: "words", mark: idOf(3) }] } })],
  ],
  [
    "[S14] a hold in an act",
    "reference_unknown",
    "Expected a hold",
    "edits[0].fields.act.slots.hold.value",
    [set("actions", ID.take, 1, { act: { verb: "hold", slots: { hold: said(idOf(2)) } } })],
  ],
  [
    "[S14] a row that goes in the same change",
    "reference_unknown",
    "Expected a term",
    "edits[1].value.term",
    [remove("terms", ID.term), create("senses", { id: idOf(1), term: ID.term, rank: "a0", title: "t", gloss: "" })],
  ],
  [
    "[S14] an attachment",
    "attachment_unknown",
    "Bring the file in first",
    "edits[0].fields.attachment",
    [set("pictures", ID.picture, 1, { attachment: "ff" })],
  ],
  [
    "[S15] a reading of another crux",
    "reading_of_other_crux",
    "of another",
    "edits[0].fields.guard[0].readings[0]",
    [set("elements", ID.step, 1, { guard: [condition(ID.crux, ID.other)] })],
  ],
  [
    "[S16] a slot of no crux",
    "slot_not_in_crux",
    "is not held by this crux (it is said)",
    "edits[0].fields.values[0].at",
    [set("readings", ID.reading, 1, { values: [give("figure", said("circle"))] })],
  ],
  [
    "[S16] a slot of another crux",
    "slot_not_in_crux",
    "held by another crux, the crux “Which left”",
    "edits[0].fields.values[0].at",
    [set("readings", ID.other, 1, { values: [give("turn", { is: "not said" })] })],
  ],
  [
    "[S16] a slot taken out of its crux",
    "slot_not_in_crux",
    "is not held by this crux (it is not said)",
    "reading “The horse's”.values[0].at",
    [turnAct({})],
  ],
  [
    "[S16] a slot that is not there",
    "slot_unknown",
    "it has timing, purpose, threat, figure",
    "edits[0].fields.values[0].at.slot",
    [set("readings", ID.reading, 1, { values: [give("gait", said("walk"))] })],
  ],
  [
    "[S16] a value of another kind",
    "slot_value_wrong",
    "of the kind “turn”",
    "edits[0].fields.values[0].value.value",
    [set("readings", ID.reading, 1, { values: [give("turn", said("walk"))] })],
  ],
  [
    "[S16] a value given twice",
    "value_invalid",
    "twice",
    "edits[0].fields.values[1].at",
    [set("readings", ID.reading, 1, { values: [give("turn", { is: "absent" }), give("turn", { is: "absent" })] })],
  ],
  [
    "[S17] a kit's slot in a crux",
    "slot_not_in_crux",
    "no crux can hold it",
    "edits[0].fields.horse.slots.withers",
    [set("kits", ID.kit, 1, { horse: { name: "", slots: { withers: inCrux(ID.crux) } } })],
  ],
  [
    "[S18] a crux that waits for itself",
    "crux_circle",
    "“Which left” → “Which left”",
    "edits[0].fields.arisesWhen",
    [set("cruxes", ID.crux, 1, { arisesWhen: [condition(ID.crux, ID.reading)] })],
  ],
  [
    "[S18] a circle",
    "crux_circle",
    "“Which left” → “How often” → “Which left”",
    "edits[0].fields.arisesWhen",
    [set("cruxes", ID.crux, 1, { arisesWhen: [condition(ID.crux2, ID.other)] })],
  ],
  [
    "[S19] two adopted",
    "two_adopted",
    "reading “The horse's” and reading “The onlookers'”",
    "edits[0].fields.status",
    [set("readings", ID.reading, 1, { status: adopted }), set("readings", ID.reading2, 1, { status: adopted })],
  ],
  [
    "[S20] words written over",
    "text_fixed",
    "Amend the passage instead",
    "edits[0]",
    [set("passageTexts", ID.text, 1, { text: "x" })],
  ],
  [
    "[S20] a second text by hand",
    "text_invalid",
    "Expected number 1",
    "edits[0].value.number",
    [
      create("passageTexts", {
        id: idOf(1),
        passage: ID.passage,
        revision: ID.revision,
        number: 2,
        doc: paragraph("x"),
        text: "x",
        steps: [],
      }),
    ],
  ],
  [
    "[S20] a second first text",
    "text_invalid",
    "it would have 1, 1",
    "edits[0].value",
    [
      create("passageTexts", {
        id: idOf(1),
        passage: ID.passage,
        revision: ID.revision,
        number: 1,
        doc: paragraph("x"),
        text: "x",
        steps: [],
      }),
    ],
  ],
  [
    "[S20] other words than the document",
    "text_invalid",
    "offset projection",
    "edits[0].value.text",
    [
      create("passageTexts", {
        id: idOf(1),
        passage: ID.passage2,
        revision: ID.oldRevision,
        number: 1,
        doc: paragraph("x"),
        text: "y",
        steps: [],
      }),
    ],
  ],
  [
    "[S20] a document of another sort",
    "text_invalid",
    "not one a passage can hold",
    "edits[0].value.doc",
    [
      create("passageTexts", {
        id: idOf(1),
        passage: ID.passage2,
        revision: ID.oldRevision,
        number: 1,
        doc: { type: "doc", content: [] },
        text: "",
        steps: [],
      }),
    ],
  ],
  [
    "[S20] a text its anchors need",
    "text_fixed",
    "anchor “Ride to the left hand”",
    "edits[0]",
    [remove("passageTexts", ID.text)],
  ],
  [
    "[S21] an anchor past the end",
    "anchor_outside",
    `the ${TEXT.length} units`,
    "edits[0].value.to",
    [create("anchors", { ...anchor(idOf(1), ID.noteMark, 0, 4), to: 99 })],
  ],
  [
    "[S21] an anchor that ends before it begins",
    "value_invalid",
    "ends where it begins",
    "edits[0].value.to",
    [create("anchors", { ...anchor(idOf(1), ID.noteMark, 0, 4), from: 5 })],
  ],
  [
    "[S21] other words than are there",
    "anchor_quote_differs",
    "the text has “Ride” there",
    "edits[0].value.quote",
    [create("anchors", { ...anchor(idOf(1), ID.noteMark, 0, 4), quote: "Walk" })],
  ],
  [
    "[S21] a text of another passage",
    "anchor_outside",
    "the anchor names",
    "edits[0].value.passage",
    [create("anchors", { ...anchor(idOf(1), ID.noteMark, 0, 4), passage: ID.passage2 })],
  ],
];

describe("refused, and nothing is stored", () => {
  const store = bookStore();
  const before = allRows(store);
  test.each(REFUSED)("%s", (_, code, words, where, edits) => {
    // A good edit beside the bad one must not be stored either.
    const outcome = write(store, 50, [...edits, note(900)]);
    expect(outcome).toMatchObject({
      ok: false,
      refusal: { error: { code, sentence: expect.stringMatching(/^Nothing was stored\. At .+ .+[.]/) } },
    });
    const issues = outcome.ok ? [] : (outcome.refusal.error.issues ?? []);
    expect(issues).toContainEqual({
      where,
      sentence: typeof words === "string" ? expect.stringContaining(words) : expect.stringMatching(words),
    });
    expect(allRows(store)).toEqual(before);
  });

  test("[S9] all problems are told at once", () => {
    const outcome = write(store, 50, [
      note(1, ""),
      set("notes", idOf(7), 1, { text: "x" }),
      set("notes", ID.note, 1, { a: 1, b: 2 }),
    ]);
    const wheres = outcome.ok ? [] : outcome.refusal.error.issues?.map(({ where }) => where);
    expect(wheres).toEqual(["edits[0].value.text", "edits[1].fields", "edits[2].fields.a", "edits[2].fields.b"]);
  });

  test("[S10] a sitting of the change that is not there", () => {
    expect(writeChange(store, { ...request(50, [note(1)]), sitting: idOf(8) }, at)).toMatchObject({
      refusal: { error: { code: "reference_unknown", issues: [{ where: "sitting" }] } },
    });
  });
});
