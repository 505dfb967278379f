/** tests/demo/book.test.ts - the invented book holds together: rows, ids, marks, warrants, cruxes, drill, store. */
import { createHash } from "node:crypto";
import { describe, expect, test } from "vitest";
import { Edit } from "../../schema/change.ts";
import { CRUX_KINDS } from "../../schema/crux.ts";
import { docFromJson } from "../../schema/editor.ts";
import { type Kind, RECORDS, type RecordOf, type Rows } from "../../schema/record.ts";
import { demoBook } from "../../server/demo/book.ts";
import { loadDemo } from "../../server/demo/load.ts";
import {
  allRows,
  openStore,
  readBundle,
  readHistory,
  replay,
  type Store,
  undoChange,
} from "../../server/store/index.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { projectDoc } from "../../shared/text/projection.ts";

const NOW = "2026-09-20T08:00:00.000Z";
const book = demoBook();
const created = book.edits.map((edit) => {
  if (edit.do !== "create") throw new TypeError(`The demo only creates; got ${edit.do}.`);
  return edit;
});
const all = <K extends Kind>(kind: K): RecordOf<K>[] =>
  created.filter((edit) => edit.kind === kind).map((edit) => edit.value as unknown as RecordOf<K>);

/** Every object anywhere inside a value. */
function* objectsIn(value: unknown): Generator<Record<string, unknown>> {
  if (typeof value !== "object" || value === null) return;
  if (!Array.isArray(value)) yield value as Record<string, unknown>;
  for (const inner of Object.values(value)) yield* objectsIn(inner);
}

describe("rows", () => {
  test("each is what its kind holds", () => {
    const wrong = created.flatMap((edit) => {
      const read = RECORDS[edit.kind].safeParse(edit.value);
      return read.success && Edit.safeParse(edit).success ? [] : [`${edit.kind}: ${read.error?.message}`];
    });
    expect(wrong).toEqual([]);
  });

  test("are the same every time", () => {
    expect(demoBook()).toEqual(book);
  });

  test("have ids of their own, and name only rows that are there", () => {
    const ids = created.map((edit) => edit.value.id);
    expect(new Set(ids).size).toBe(ids.length);
    const named = JSON.stringify(created).match(/018cc251-f400-7[0-9a-f-]{21}/g) ?? [];
    expect([...new Set(named)].filter((id) => !ids.includes(id))).toEqual([]);
  });
});

describe("words", () => {
  test("each text is what its document gives, in 40 to 110 words of English with its Latin beside it", () => {
    const revisions = new Map(all("revisions").map((revision) => [revision.id, revision.layer]));
    const layers = new Map(all("layers").map((layer) => [layer.id, layer.is]));
    for (const passage of all("passages")) {
      const texts = all("passageTexts").filter((text) => text.passage === passage.id);
      expect(texts.map((text) => layers.get(revisions.get(text.revision) ?? "")).sort()).toEqual([
        "original",
        "translation",
      ]);
      for (const text of texts) {
        expect(projectDoc(docFromJson(text.doc))).toBe(text.text);
        const count = text.text.split(/\s+/).length;
        const translation = layers.get(revisions.get(text.revision) ?? "") === "translation";
        expect(count, text.text).toBeGreaterThanOrEqual(translation ? 40 : 25);
        expect(count, text.text).toBeLessThanOrEqual(110);
      }
    }
  });

  test("each anchor quotes what stands there, with its neighbours", () => {
    const texts = new Map(all("passageTexts").map((text) => [text.id, text]));
    for (const anchor of all("anchors")) {
      if (anchor.is !== "text") continue;
      const text = texts.get(anchor.text);
      expect(text?.passage).toBe(anchor.passage);
      expect(text?.text.slice(anchor.from, anchor.to)).toBe(anchor.quote);
      expect(text?.text.slice(0, anchor.from).endsWith(anchor.prefix)).toBe(true);
      expect(text?.text.slice(anchor.to).startsWith(anchor.suffix)).toBe(true);
    }
  });

  test("whatever is called stated rests on words, or on a picture", () => {
    const unfounded = created.flatMap((edit) =>
      [...objectsIn(edit.value)]
        .filter((held) => held.warrant === "stated")
        .filter((held) => !(held.basis as { is: string }[]).some(({ is }) => is === "words" || is === "picture"))
        .map((held) => `${edit.kind} ${JSON.stringify(held)}`),
    );
    expect(unfounded).toEqual([]);
  });

  test("each element has words in both texts, or says why it is there without", () => {
    const language = (text: string) => (/\b(the|and)\b/.test(text) ? "English" : "Latin");
    const texts = new Map(all("passageTexts").map((text) => [text.id, language(text.text)]));
    const anchors = all("anchors").filter((anchor) => anchor.is === "text");
    const languagesOf = (element: string) => {
      const marks = all("marks").filter((mark) => mark.target === element);
      const lying = anchors.filter((anchor) => marks.some((mark) => mark.id === anchor.mark));
      return new Set(lying.map((anchor) => texts.get(anchor.text)));
    };
    const bare = all("elements").filter((element) => languagesOf(element.id).size < 2);
    expect(bare.map((element) => element.is)).toEqual(["untreated"]);
    for (const { existence } of bare) {
      expect(existence.warrant).not.toBe("stated");
      expect(existence.basis.length).toBeGreaterThan(0);
    }
    const seen = all("elements").filter(({ existence }) => existence.basis.every(({ is }) => is === "picture"));
    expect(seen.map(({ existence }) => existence.warrant)).toEqual(["stated"]);
  });
});

describe("what a newcomer finds", () => {
  test.each<[kind: Kind, least: number]>([
    ["exercises", 6],
    ["passages", 41],
    ["witnesses", 3],
    ["cruxes", 21],
    ["questions", 13],
    ["sittings", 2],
    ["threats", 2],
    ["pictures", 1],
    ["trials", 3],
    ["kits", 1],
    ["variants", 3],
    ["lessons", 1],
    ["faults", 7],
    ["rules", 1],
    ["sources", 2],
  ])("%s: %i", (kind, count) => {
    expect(all(kind)).toHaveLength(count);
  });

  test("a movement that is used often, and a term of two senses that both are", () => {
    const performed = all("actions").filter(({ act }) => act.verb === "perform");
    expect(performed.length).toBeGreaterThanOrEqual(4);
    for (const sense of all("senses"))
      expect(all("marks").filter(({ target }) => target === sense.id).length, sense.title).toBeGreaterThan(1);
  });

  test("every question is about words; those that are about a crux say what each answer leaves", () => {
    for (const { id, crux, answers, text } of all("questions")) {
      expect(all("marks").some(({ target }) => target === id)).toBe(true);
      if (crux === null) continue;
      const left = answers.flatMap(({ allows }) => allows);
      expect(answers.length, text).toBeGreaterThan(1);
      expect(left.every((one) => one.crux === crux)).toBe(true);
      const readings = all("readings").filter((reading) => reading.crux === crux);
      expect(left.some((one) => one.readings.length < readings.length)).toBe(true);
    }
  });

  test("every kind of crux there is, a principle among them, and every state of a reading", () => {
    expect(new Set(all("cruxes").map(({ is }) => is))).toEqual(new Set(CRUX_KINDS));
    expect(all("cruxes").filter(({ scope }) => scope === "principle")).toHaveLength(1);
    expect(new Set(all("readings").map(({ status }) => status.is))).toEqual(
      new Set(["standing", "adopted", "ruled out"]),
    );
  });

  test("the drawing is kept with the book, and its parts lie on it", () => {
    const [picture] = all("pictures");
    const [file] = book.files;
    expect(file && createHash("sha256").update(file.bytes).digest("hex")).toBe(picture?.attachment);
    const sizes = file && Buffer.from(file.bytes);
    expect([sizes?.readUInt32BE(16), sizes?.readUInt32BE(20)]).toEqual([picture?.width, picture?.height]);
    for (const { corners } of all("regions"))
      for (const [x, y] of corners) expect(x <= (picture?.width ?? 0) && y <= (picture?.height ?? 0)).toBe(true);
  });
});

describe("cruxes", () => {
  test("of the first part are of four kinds: two with a reading adopted, one left free, one standing", () => {
    const state = (crux: RecordOf<"cruxes">) => {
      if (crux.leftFree !== null) return "left free";
      const readings = all("readings").filter((reading) => reading.crux === crux.id);
      return readings.some((reading) => reading.status.is === "adopted") ? "adopted" : "standing";
    };
    const first = all("cruxes").slice(0, 4);
    expect(first.map((crux) => `${crux.is}: ${state(crux)}`)).toEqual([
      "witnesses differ: adopted",
      "silent: left free",
      "corrupt: adopted",
      "ambiguous: standing",
    ]);
  });

  test("have two readings or three, every one with an argument and a holder, and words they are about", () => {
    for (const crux of all("cruxes")) {
      const readings = all("readings").filter((reading) => reading.crux === crux.id);
      expect([2, 3], crux.title).toContain(readings.length);
      expect(all("marks").some((mark) => mark.target === crux.id)).toBe(true);
      expect(readings.filter((reading) => reading.argument === "" || reading.holder === "")).toEqual([]);
    }
  });

  test("give every slot they hold a value under each reading", () => {
    const slotsOf = (kind: "actions" | "elements" | "threats", row: { id: string }) => {
      const named = row as Record<string, unknown>;
      const slots = { ...named, ...(named.slots as object), ...(named.act as { slots: object } | undefined)?.slots };
      return Object.entries(slots).flatMap(([slot, value]) => {
        const held = value as { is?: string; crux?: string } | null;
        return held?.is === "in crux" ? [{ crux: held.crux, at: { kind, id: row.id, slot } }] : [];
      });
    };
    const held = (["actions", "elements", "threats"] as const).flatMap((kind) =>
      all(kind).flatMap((row) => slotsOf(kind, row)),
    );
    expect(new Set(held.map(({ at }) => at.kind)).size).toBeGreaterThan(1);
    for (const { crux, at } of held) {
      const readings = all("readings").filter((reading) => reading.crux === crux);
      const given = readings.map(({ values }) =>
        values.filter((one) => one.at.id === at.id && one.at.slot === at.slot),
      );
      expect(given).toEqual(readings.map(() => [expect.objectContaining({ at })]));
    }
  });

  test("guard steps, and actions inside steps that are there in any case", () => {
    const guarded = all("elements").filter((element) => element.guard.length > 0);
    expect(new Set(guarded.map((element) => element.is))).toEqual(new Set(["step"]));
    const free = all("elements").filter((element) => element.guard.length === 0);
    const inside = all("actions").filter(({ guard, owner }) => guard.length > 0 && free.some(({ id }) => id === owner));
    expect(inside.length).toBeGreaterThan(12);
  });
});

describe("the drill", () => {
  const { circle, change, turned, spears, boar, knot } = book.exercises;

  test.each([
    ["Of the circle about the well", circle, "The whole exercise is treated: 7 steps."],
    ["Of the change upon the wall", change, "The whole exercise is treated: 9 steps."],
    ["Of the two spears", spears, "The whole exercise is treated: 7 steps."],
    ["Of the boar of straw", boar, "The whole exercise is treated: 7 steps."],
    ["Of the knot that two ride", knot, "The whole exercise is treated: 8 steps."],
  ])("%s is compiled whole", (title, exercise, treated) => {
    const drill = compileDrill(rowsOf(exercise), exercise, {});
    expect(drill.exercise.title).toBe(title);
    expect(drill.treated.sentence).toBe(treated);
    expect(drill.treated.unmarked).toEqual([]);
    expect(drill.elements.filter((element) => element.citations.length === 0)).toEqual([]);
  });

  test("the third exercise is said to be only begun", () => {
    const drill = compileDrill(rowsOf(turned), turned, {});
    expect(drill.treated).toMatchObject({ steps: 1, untreatedParts: 1 });
    expect(drill.treated.unmarked.map(({ quote }) => quote)).toEqual([
      expect.stringMatching(/^as though he had nothing/),
    ]);
    expect(drill.elements.map((element) => element.is)).toEqual(["step", "untreated"]);
  });

  test("the change reads as a rider can follow it, under either reading of “the other”", () => {
    expect(stepsUnder("to the other hand; the reins change too")).toEqual([
      "left hand: pass the spear from the right hand to the left hand, at the balance",
      "right hand: change the reins to the right hand",
    ]);
    expect(stepsUnder("to the other side, in the same hand")).toEqual([
      "shaft: bring the spear over the horse’s neck to the left",
    ]);
  });

  test("without the raising at the trough there is a step less", () => {
    const washes = readingCalled("he washes it (lavat), and nothing is ridden");
    const steps = compileDrill(rowsOf(change), change, { choice: [washes] }).elements.filter(({ is }) => is === "step");
    expect(steps.length).toBe(7);
  });

  /** What is done in the turn because of "the other", once it is read so. */
  function stepsUnder(title: string): string[] {
    const drill = compileDrill(rowsOf(change), change, { choice: [readingCalled(title)] });
    const turn = drill.elements.find((element) => element.title === "The turn off the wall, and the change");
    expect(turn?.actions.flatMap((action) => action.onlyUnder)).toEqual([]);
    return (turn?.actions ?? [])
      .filter((action) => ["pass", "change reins", "cross the neck"].includes(action.verb))
      .map((action) => `${action.part}: ${action.text}`);
  }

  function readingCalled(title: string): { crux: string; reading: string } {
    const reading = all("readings").find((candidate) => candidate.title === title);
    if (reading === undefined) throw new RangeError(`No reading is called "${title}".`);
    return { crux: reading.crux, reading: reading.id };
  }
});

describe("in a store", () => {
  test("is written as one change, once, and can be undone whole", () => {
    withStore((store) => {
      expect(loadDemo(store, NOW)).toMatchObject({ ok: true });
      expect(loadDemo(store, NOW)).toBeNull();
      expect(replay(store)).toEqual(allRows(store));
      const [entry, ...others] = readHistory(store, {});
      expect(others).toEqual([]);
      expect(entry?.why).toBe("The invented book that comes with Passagework");
      const undone = undoChange(
        store,
        { id: "01900000-0000-7000-8000-000000000001", who: "a reader", why: "", undoes: entry?.id ?? "" },
        { now: NOW },
      );
      expect(undone).toMatchObject({ ok: true });
      expect(allRows(store)).toEqual({});
      // Taken out on purpose, it does not come back by itself.
      expect(loadDemo(store, NOW)).toBeNull();
    });
  });
});

/** The rows of an exercise as the store hands them out. */
function rowsOf(exercise: string): Rows {
  return withStore((store) => {
    expect(loadDemo(store, NOW)).toMatchObject({ ok: true });
    const bundle = readBundle(store, { exercise });
    if (!bundle.ok) throw new Error(bundle.refusal.error.sentence);
    return bundle.value.rows;
  });
}

function withStore<T>(work: (store: Store) => T): T {
  const opened = openStore(":memory:");
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  try {
    return work(opened.value);
  } finally {
    opened.value.close();
  }
}
