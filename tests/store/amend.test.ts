/** tests/store/amend.test.ts - typing on a passage: the new text, and what becomes of the anchors. Rules S20-S25.
 *  The oracle is a plain string whose characters each know where they came from. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Fate, TextAnchor } from "../../schema/mark.ts";
import type { PassageText } from "../../schema/work.ts";
import {
  allRows,
  amendPassage,
  readRow,
  replay,
  type Store,
  undoChange,
  writeChange,
} from "../../server/store/index.ts";
import { anchor, ID, idOf, TEXT } from "./full-book.ts";
import { accepted, bookStore, create, NOW, remove, request } from "./store-builders.ts";

const at = { now: NOW };

/** A step on a passage of one paragraph, whose offset 0 is editor position 1. */
const replace = (from: number, to: number, text = "") => ({
  ...{ stepType: "replace", from: from + 1, to: to + 1 },
  ...(text === "" ? {} : { slice: { content: [{ type: "text", text }] } }),
});

const amend = (store: Store, number: number, text: string, ...steps: ReturnType<typeof replace>[]) =>
  amendPassage(
    store,
    ID.passage,
    { id: idOf(number), who: "Ada", why: "typing", sitting: null, text, steps },
    {
      ...at,
      newId: () => idOf(5000 + number),
    },
  );

const anchorNow = (store: Store, id = ID.stepAnchor) => readRow(store, "anchors", id)?.value as TextAnchor;

describe("[S23] the words under an anchor", () => {
  // The anchor quotes "Ride to the left hand" (0 to 21).
  const cases: [string, ReturnType<typeof replace>[], Fate, string][] = [
    ["nothing near", [replace(40, 40, "very ")], "same", "Ride to the left hand"],
    ["words before", [replace(0, 0, "Now ")], "same", "Ride to the left hand"],
    ["words right after", [replace(21, 21, "s")], "same", "Ride to the left hand"],
    ["words within", [replace(7, 7, "wards")], "reworded", "Ride towards the left hand"],
    ["its end cut off", [replace(16, 21)], "reworded", "Ride to the left"],
    ["gone, and more", [replace(0, 22)], "lost", ""],
    [
      "gone, then written anew",
      [replace(0, 21), replace(0, 0, "So: Ride to the left hand")],
      "moved",
      "Ride to the left hand",
    ],
    [
      "gone from here, written there",
      [replace(0, 23), replace(38, 38, " Ride to the left hand.")],
      "moved",
      "Ride to the left hand",
    ],
  ];
  test.each(cases)("%s", (_, steps, fate, words) => {
    const store = bookStore();
    accepted(amend(store, 2, ID.text, ...steps));
    const now = anchorNow(store);
    const text = readRow(store, "passageTexts", now.text)?.value as PassageText;
    expect({ fate: now.fate, words: text.text.slice(now.from, now.to), quote: now.quote }).toEqual({
      fate,
      words,
      quote: "Ride to the left hand",
    });
    expect(replay(store)).toEqual(allRows(store));
  });

  test("a lost anchor whose words come back is found again", () => {
    const store = bookStore();
    accepted(amend(store, 2, ID.text, replace(0, 21)));
    expect(anchorNow(store)).toMatchObject({ fate: "lost", from: 0, to: 0, quote: "Ride to the left hand" });
    accepted(amend(store, 3, idOf(5002), replace(0, 0, "Once more: Ride to the left hand")));
    expect(anchorNow(store)).toMatchObject({ fate: "moved", from: 11, to: 32 });
  });
});

test("[S23] what is written where a lost anchor was is not its words, whichever way its ends cling", () => {
  const store = bookStore();
  const outward = { ...anchor(idOf(1), ID.noteMark, 0, 5), fromSide: "before", toSide: "after" };
  accepted(writeChange(store, request(2, [create("anchors", outward)]), at));
  accepted(amend(store, 3, ID.text, replace(0, 6)));
  expect(anchorNow(store, idOf(1))).toMatchObject({ fate: "lost", from: 0, to: 0, quote: "Ride " });
  accepted(amend(store, 4, idOf(5003), replace(0, 0, "Go on")));
  expect(anchorNow(store, idOf(1))).toMatchObject({ fate: "lost", quote: "Ride " });
  expect(anchorNow(store, idOf(1)).from).toBe(anchorNow(store, idOf(1)).to);
});

test("[S22] an anchor whose removal is undone comes back in the text as it is by then", () => {
  const store = bookStore();
  accepted(writeChange(store, request(2, [remove("anchors", ID.noteAnchor)]), at));
  accepted(amend(store, 3, ID.text, replace(0, 0, "Now ")));
  accepted(undoChange(store, { id: idOf(4), who: "Ada", why: "", undoes: idOf(2) }, at));
  expect(anchorNow(store, ID.noteAnchor)).toMatchObject({ text: idOf(5003), from: 41, to: 50, fate: "same" });
  expect(replay(store)).toEqual(allRows(store));
});

test("[S23] a new first paragraph is not taken in by an anchor whose first paragraph was deleted", () => {
  const store = bookStore();
  const block = (words: string) => ({ type: "paragraph", content: [{ type: "text", text: words }] });
  const text = "One.\nTwo words.\nThree.";
  const first = { id: idOf(1), passage: ID.passage2, revision: ID.oldRevision, number: 1, text, steps: [] };
  const doc = { type: "doc", content: text.split("\n").map(block) };
  const held = { ...anchor(idOf(2), ID.noteMark, 0, 8), passage: ID.passage2, text: idOf(1), quote: "One.\nTwo" };
  const edits = [create("passageTexts", { ...first, doc }), create("anchors", held)];
  accepted(writeChange(store, request(2, edits), at));
  const steps = [
    { stepType: "replace", from: 0, to: 6 },
    { stepType: "replace", from: 0, to: 0, slice: { content: [block("New.")] } },
  ];
  const amendment = { id: idOf(3), who: "Ada", why: "typing", sitting: null, text: idOf(1), steps };
  accepted(amendPassage(store, ID.passage2, amendment, at));
  const now = anchorNow(store, idOf(2));
  expect(now).toMatchObject({ fate: "reworded", quote: "One.\nTwo" });
  expect("New.\nTwo words.\nThree.".slice(now.from, now.to)).toBe("Two");
});

test("[S20] a stale text is refused with the one that is current, and nothing is lost", () => {
  const store = bookStore();
  accepted(amend(store, 2, ID.text, replace(0, 0, "Now ")));
  const before = allRows(store);
  expect(amend(store, 3, ID.text, replace(0, 0, "Then "))).toMatchObject({
    ok: false,
    refusal: {
      error: {
        code: "stale_text",
        sentence: expect.stringContaining("text 1 was named, text 2 is current"),
        current: { kind: "passageTexts", value: { id: idOf(5002), text: `Now ${TEXT}` } },
      },
    },
  });
  expect(allRows(store)).toEqual(before);
});

test("[S20] steps that do not fit, a text of another passage, the same request twice, and steps without effect", () => {
  const store = bookStore();
  const before = allRows(store);
  expect(amend(store, 2, ID.text, replace(0, 900))).toMatchObject({ refusal: { error: { code: "steps_invalid" } } });
  expect(amend(store, 2, ID.text2, replace(0, 0, "x"))).toMatchObject({ refusal: { error: { code: "row_unknown" } } });
  expect(accepted(amend(store, 2, ID.text, replace(0, 4, "Ride")))).toMatchObject({ change: 1, rows: [] });
  const backAndForth = [replace(0, 21), replace(0, 0, "Ride to the left hand")];
  expect(accepted(amend(store, 2, ID.text, ...backAndForth))).toMatchObject({ change: 1, rows: [] });
  expect(allRows(store)).toEqual(before);
  const first = amend(store, 3, ID.text, replace(0, 4, "Walk"));
  expect(amend(store, 3, ID.text, replace(0, 4, "Walk"))).toEqual(first);
});

test("[S24] undoing an amendment gives the state before it; the text under later work cannot be taken away", () => {
  const store = bookStore();
  const before = valuesOf(store);
  accepted(amend(store, 2, ID.text, replace(0, 22), replace(0, 0, "Walk. ")));
  const after = valuesOf(store);
  const undo = (number: number, undoes: number) =>
    undoChange(store, { id: idOf(number), who: "Ada", why: "", undoes: idOf(undoes) }, at);
  accepted(undo(3, 2));
  expect(valuesOf(store)).toEqual(before);
  accepted(undo(4, 3));
  expect(valuesOf(store)).toEqual(after);
  accepted(amend(store, 5, idOf(5002), replace(0, 0, "A")));
  expect(undo(6, 4)).toMatchObject({ refusal: { error: { code: "conflict" } } });
  accepted(undo(7, 5));
  const made = { ...anchor(idOf(1), ID.noteMark, 0, 4), text: idOf(5002), quote: "Walk" };
  accepted(writeChange(store, request(8, [create("anchors", made)]), at));
  expect(undo(9, 4)).toMatchObject({ refusal: { error: { code: "text_fixed" } } });
  expect(replay(store)).toEqual(allRows(store));
});

test("[S24] an early text cannot be taken back past a later one, even without anchors", () => {
  const store = bookStore();
  accepted(
    writeChange(
      store,
      request(
        2,
        [ID.stepAnchor, ID.noteAnchor, ID.cruxAnchor].map((id) => remove("anchors", id)),
      ),
      at,
    ),
  );
  accepted(amend(store, 3, ID.text, replace(0, 0, "A")));
  accepted(amend(store, 4, idOf(5003), replace(0, 0, "B")));
  const outcome = undoChange(store, { id: idOf(5), who: "Ada", why: "", undoes: idOf(3) }, at);
  expect(outcome).toMatchObject({
    refusal: { error: { code: "text_fixed", sentence: expect.stringContaining("Undo the later amendments first") } },
  });
});

describe("[S22] an anchor made against an earlier text", () => {
  const store = bookStore();
  accepted(amend(store, 2, ID.text, replace(0, 0, "Now ")));
  accepted(amend(store, 3, idOf(5002), replace(17, 20, "ight")));
  test.each([
    [37, 46, "same", "the spear".length],
    [12, 16, "reworded", "light".length],
  ] as const)("from %i to %i is carried: %s", (from, to, fate, length) => {
    const id = idOf(100 + from);
    accepted(writeChange(store, request(200 + from, [create("anchors", anchor(id, ID.noteMark, from, to))]), at));
    const now = anchorNow(store, id);
    expect(now).toMatchObject({ text: idOf(5003), fate, quote: TEXT.slice(from, to) });
    expect(now.to - now.from).toBe(length);
    expect(replay(store)).toEqual(allRows(store));
  });
});

/** Edits as shares of the text they meet: where, how much is cut, and what is put in (one of the two). */
const typing = fc.array(
  fc.record({
    where: fc.double({ min: 0, max: 1, noNaN: true }),
    cut: fc.integer({ min: 0, max: 9 }),
    put: fc.constantFrom("", "x", " ", "to the", "left hand ", "ā"),
  }),
  { minLength: 1, maxLength: 8 },
);
const places = fc.uniqueArray(fc.tuple(fc.nat(TEXT.length), fc.integer({ min: 1, max: 14 })), {
  minLength: 1,
  maxLength: 5,
});

test("[S21] [S23] anchors stay valid through any amendments, as the oracle has it", () => {
  fc.assert(
    fc.property(typing, places, (edits, ranges) => {
      const store = bookStore();
      const ids = ranges.map(([from, length], index) => {
        const to = Math.min(TEXT.length, from + length);
        const made = create("anchors", anchor(idOf(index + 1), ID.noteMark, from, to));
        accepted(writeChange(store, request(100 + index, [made]), at));
        return idOf(index + 1);
      });
      let text = ID.text;
      // Each character with the offset it had when the anchors were made, or -1 when it was typed since.
      let plain = [...TEXT].map((char, from) => ({ char, from }));
      const held = new Map(ids.map((id) => [id, spanOf(anchorNow(store, id))]));
      for (const [index, { where, cut, put }] of edits.entries()) {
        const from = Math.floor(where * plain.length);
        const to = put === "" ? Math.min(plain.length, from + cut) : from;
        if (to === from && put === "") continue;
        accepted(amend(store, 300 + index, text, replace(from, to, put)));
        text = idOf(5300 + index);
        plain = [...plain.slice(0, from), ...[...put].map((char) => ({ char, from: -1 })), ...plain.slice(to)];
        const words = plain.map(({ char }) => char).join("");
        expect(readRow(store, "passageTexts", text)?.value.text).toBe(words);
        for (const id of ids) {
          const now = anchorNow(store, id);
          const there = words.slice(now.from, now.to);
          const own = plain.flatMap((one, place) =>
            held.get(id)?.has(one.from) === true && one.from >= 0 ? place : [],
          );
          const alive = own.some((place) => plain[place]?.char.trim() !== "");
          expect(now.text).toBe(text);
          expect(now.quote).toBe(TEXT.slice(...firstRange(ranges, ids.indexOf(id))));
          if (now.fate === "lost") expect([now.from, alive]).toEqual([now.to, now.quote.trim() === "" ? alive : false]);
          else if (now.fate === "reworded") expect(there).not.toBe(now.quote);
          else expect(there).toBe(now.quote);
          // Only "moved" may leave the anchor's own characters; it then starts from the ones it found.
          const seated = own.length > 0 && now.from === own[0] && now.to === (own.at(-1) ?? 0) + 1;
          if (now.fate === "moved" && !seated) held.set(id, spanOfPlain(plain, now));
          else if (now.fate !== "lost" && now.from < now.to && alive)
            expect(seated, `${id} ${now.fate} ${there}`).toBe(true);
        }
        // Characters typed since count from here on like the others.
        plain = renumber(plain, held);
      }
      expect(replay(store)).toEqual(allRows(store));
      store.close();
    }),
    { numRuns: 60 },
  );
});

type Char = { char: string; from: number };

function spanOf({ from, to }: { from: number; to: number }): Set<number> {
  return new Set(Array.from({ length: to - from }, (_, index) => from + index));
}

function spanOfPlain(plain: readonly Char[], { from, to }: { from: number; to: number }): Set<number> {
  return new Set(plain.slice(from, to).map((one) => one.from));
}

/** Gives typed characters numbers of their own; those typed inside a range become part of it. */
function renumber(plain: readonly Char[], held: Map<string, Set<number>>): Char[] {
  let next = Math.max(TEXT.length, ...plain.map(({ from }) => from)) + 1;
  const bounds = [...held].map(([id, own]) => {
    const seats = plain.flatMap(({ from }, place) => (own.has(from) ? place : []));
    return { id, first: seats[0] ?? 0, last: seats.at(-1) ?? -1 };
  });
  return plain.map((one, place) => {
    if (one.from >= 0) return one;
    const from = next;
    next += 1;
    for (const { id, first, last } of bounds) if (place > first && place < last) held.get(id)?.add(from);
    return { ...one, from };
  });
}

function firstRange(ranges: readonly (readonly [number, number])[], index: number): [number, number] {
  const [from, length] = ranges[index] as [number, number];
  return [from, Math.min(TEXT.length, from + length)];
}

/** Values without versions: what undo must give back. */
function valuesOf(store: Store) {
  return Object.entries(allRows(store)).map(([kind, rows]) => [kind, rows.map(({ value }) => value)]);
}
