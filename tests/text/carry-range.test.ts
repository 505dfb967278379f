/** Carrying ranges through amendments: cases, and random scripts against a plain-string oracle. Rules T13-T18. */
import fc from "fast-check";
import { Transform } from "prosemirror-transform";
import { describe, expect, it } from "vitest";
import {
  type AnchorRange,
  anchorRange,
  carryAll,
  carryRange,
  fateOf,
  offsetToPosition,
  projectDoc,
  quoteAt,
} from "../../shared/text/index.ts";
import { doc, note, p } from "../kit/passage-doc.ts";
import { amend, anyEdits, anyPassageDoc, type Character } from "../kit/random-passage.ts";

/** "ab[cd]ef" gives the text and the range between the brackets; "|" parts blocks. */
function marked(text: string): { text: string; from: number; to: number } {
  const from = text.indexOf("[");
  return { text: text.replace(/[[\]]/g, ""), from, to: text.indexOf("]") - 1 };
}

function show(text: string, result: ReturnType<typeof carryRange>): string {
  if (!result.ok) return `lost near ${result.near.from}-${result.near.to}`;
  const { from, to } = result.range;
  return `${text.slice(0, from)}[${text.slice(from, to)}]${text.slice(to)}`.replaceAll("\n", "|");
}

function carry(
  before: string,
  edit: (transform: Transform, at: (offset: number) => number) => void,
  sides = {},
): string {
  const { text, from, to } = marked(before);
  const document = doc(...text.split("|").map((part) => p(part)));
  const transform = new Transform(document);
  edit(transform, (offset) => offsetToPosition(transform.doc, offset, "before"));
  const range: AnchorRange = { ...anchorRange(from, to), ...sides };
  return show(projectDoc(transform.doc), carryRange(range, transform.mapping.maps, document, transform.doc));
}

const write = (offset: number, text: string) => (transform: Transform, at: (offset: number) => number) => {
  transform.insert(at(offset), transform.doc.type.schema.text(text));
};
const remove = (from: number, to: number) => (transform: Transform, at: (offset: number) => number) => {
  transform.delete(at(from), at(to));
};
const rewrite = (from: number, to: number, text: string) => (transform: Transform, at: (offset: number) => number) => {
  transform.replaceWith(at(from), at(to), transform.doc.type.schema.text(text));
};

describe("carryRange", () => {
  it.each([
    ["[T14] text before moves it", "ab[cd]ef", write(0, "x"), "xab[cd]ef"],
    ["[T14] text inside joins it", "ab[cd]ef", write(3, "x"), "ab[cxd]ef"],
    ["[T14] text at its start stays outside", "ab[cd]ef", write(2, "x"), "abx[cd]ef"],
    ["[T14] text at its end stays outside", "ab[cd]ef", write(4, "x"), "ab[cd]xef"],
    ["[T15] what is left of it stays", "ab[cd]ef", remove(1, 3), "a[d]ef"],
    ["[T15] a rewritten beginning stays inside", "ab[cd]ef", rewrite(2, 3, "x"), "ab[xd]ef"],
    ["[T15] a rewriting over its edge stays outside", "ab[cd]ef", rewrite(1, 3, "x"), "ax[d]ef"],
    ["[T16] all its words gone", "ab[cd]ef", remove(2, 4), "lost near 2-2"],
    ["[T16] all its words rewritten at once", "ab[cd]ef", rewrite(2, 4, "xyz"), "lost near 2-5"],
    [
      "[T16] only a space left",
      "ab[c d]ef",
      (t: Transform, at: (o: number) => number) => {
        t.delete(at(4), at(5));
        t.delete(at(2), at(3));
      },
      "lost near 2-3",
    ],
    ["[T13] over a block break", "ab[c|d]ef", write(4, "x"), "ab[c|xd]ef"],
    [
      "[T13] a split inside it",
      "ab[cd]ef",
      (t: Transform, at: (o: number) => number) => {
        t.split(at(3));
      },
      "ab[c|d]ef",
    ],
    [
      "[T13] a split at its start",
      "ab[cd]ef",
      (t: Transform, at: (o: number) => number) => {
        t.split(at(2));
      },
      "ab|[cd]ef",
    ],
    [
      "[T13] a split at its end",
      "ab[cd]ef",
      (t: Transform, at: (o: number) => number) => {
        t.split(at(4));
      },
      "ab[cd]|ef",
    ],
    [
      "[T13] a join inside it",
      "ab[c|d]ef",
      (t: Transform, at: (o: number) => number) => {
        t.join(at(4) - 1);
      },
      "ab[cd]ef",
    ],
    ["[T13] breaks at its ends are left behind", "ab[|cd|]ef", write(0, "x"), "xab|[cd]|ef"],
    ["[T17] a gap stays with the character before it", "ab[]cd", write(2, "x"), "ab[]xcd"],
    ["[T17] a gap stays when all around it goes", "ab[]cd", remove(0, 4), "[]"],
  ])("%s", (_name, before, edit, after) => {
    expect(carry(before, edit)).toBe(after);
  });

  it.each([
    [
      "[T14] outward ends take in what is written there",
      "ab[cd]ef",
      write(2, "x"),
      "ab[xcd]ef",
      { fromSide: "before" },
    ],
    ["[T14] and at the end", "ab[cd]ef", write(4, "x"), "ab[cdx]ef", { toSide: "after" }],
    ["[T17] a gap that follows", "ab[]cd", write(2, "x"), "abx[]cd", { fromSide: "after", toSide: "after" }],
    ["[T17] a gap that is filled", "ab[]cd", write(2, "x"), "ab[x]cd", { fromSide: "before", toSide: "after" }],
    [
      "[T17] a gap with inward ends stays one point",
      "ab[]cd",
      write(2, "x"),
      "abx[]cd",
      { fromSide: "after", toSide: "before" },
    ],
  ] as const)("%s", (_name, before, edit, after, sides) => {
    expect(carry(before, edit, sides)).toBe(after);
  });

  it("[T3] atoms at the edges do not matter", () => {
    const document = doc(p("ab", note("1"), "cd", note("2"), "ef"));
    const transform = new Transform(document).insert(3, document.type.schema.text("x"));
    const result = carryRange(anchorRange(2, 4), transform.mapping.maps, document, transform.doc);
    expect(show(projectDoc(transform.doc), result)).toBe("abx[cd]ef");
  });

  it("[T8] refuses a range that is not in the text", () => {
    const document = doc(p("ab"));
    expect(() => carryRange(anchorRange(1, 3), [], document, document)).toThrow(
      "A range needs whole offsets 0 <= from <= to and a text of 2 units; got 1 to 3.",
    );
    expect(() => anchorRange(2, 1)).toThrow(RangeError);
  });
});

/** The oracle's view of one mark: which characters belong to it. Breaks belong too, but nothing hangs on them. */
type Oracle = { range: AnchorRange; members: Set<Character> };

/** After an edit: what was written strictly inside belongs to the mark, and so does what stands for its own words. */
function follow(
  oracle: Oracle,
  before: readonly Character[],
  at: number,
  removed: number,
  added: readonly Character[],
) {
  const inside = before.map((character) => oracle.members.has(character));
  const first = inside.indexOf(true);
  const last = inside.lastIndexOf(true);
  if (first === -1) return;
  const within = removed === 0 ? first < at && at <= last : first <= at && at + removed <= last + 1;
  const whole = removed > 0 && at <= first && at + removed > last;
  before.slice(at, at + removed).forEach((character) => {
    oracle.members.delete(character);
  });
  if (within && !whole) for (const character of added) oracle.members.add(character);
  oracle.members = new Set(
    withoutEdgeBreaks(before.toSpliced(at, removed, ...added).filter((character) => oracle.members.has(character))),
  );
}

function withoutEdgeBreaks(characters: readonly Character[]): readonly Character[] {
  const first = characters.findIndex(({ unit }) => unit !== "\n");
  return characters.slice(first, characters.findLastIndex(({ unit }) => unit !== "\n") + 1);
}

const isWord = ({ unit }: Character) => !/\s/u.test(unit);

describe("carryAll against the plain string", () => {
  it("[T13][T14][T15][T16] any script of amendments keeps exactly the surviving characters", () => {
    let carried = 0;
    let lost = 0;
    fc.assert(
      fc.property(
        anyPassageDoc(),
        anyEdits(),
        fc.array(fc.tuple(fc.nat(40), fc.nat(12)), { minLength: 1, maxLength: 6 }),
        (document, edits, spans) => {
          const text = projectDoc(document);
          let characters: Character[] = text.split("").map((unit, id) => ({ id, unit }));
          const oracles: Oracle[] = spans
            .map(([start, length]) => {
              const from = start % (text.length + 1);
              return anchorRange(from, Math.min(text.length, from + length));
            })
            .filter((range) => characters.slice(range.from, range.to).some(isWord))
            .map((range) => ({ range, members: new Set(withoutEdgeBreaks(characters.slice(range.from, range.to))) }));
          const originals = oracles.map(({ members }) => [...members].filter(isWord));

          const transform = new Transform(document);
          for (const edit of edits) {
            const splice = amend(transform, characters, edit);
            if (splice === null) continue;
            for (const oracle of oracles) follow(oracle, characters, splice.at, splice.removed, splice.added);
            characters = characters.toSpliced(splice.at, splice.removed, ...splice.added);
          }
          const now = projectDoc(transform.doc);
          expect(now).toBe(characters.map(({ unit }) => unit).join(""));

          const results = carryAll(
            document,
            transform.doc,
            transform.mapping.maps,
            oracles.map(({ range }) => range),
            transform.docs,
          );
          for (const [index, result] of results.entries()) {
            const there = new Set(characters);
            const survives = originals[index]!.some((character) => there.has(character));
            expect(result.ok).toBe(survives);
            if (!result.ok) {
              lost += 1;
              expect(result.near.from).toBeLessThanOrEqual(result.near.to);
              expect(result.near.to).toBeLessThanOrEqual(now.length);
              continue;
            }
            carried += 1;
            const covered = characters.slice(result.range.from, result.range.to);
            const members = characters.filter((character) => oracles[index]!.members.has(character));
            expect(covered.filter(isWord)).toEqual(members.filter(isWord));
            expect(covered.filter(isWord).every((character) => oracles[index]!.members.has(character))).toBe(true);
          }
        },
      ),
      { numRuns: 1500 },
    );
    // The script would prove nothing if every mark were lost, or none.
    expect(carried).toBeGreaterThan(500);
    expect(lost).toBeGreaterThan(100);
  });

  it("[T13] one by one and all at once give the same", () => {
    fc.assert(
      fc.property(anyPassageDoc(), anyEdits(), fc.nat(40), fc.nat(9), (document, edits, start, length) => {
        const text = projectDoc(document);
        const from = start % (text.length + 1);
        const range = anchorRange(from, Math.min(text.length, from + length));
        const transform = new Transform(document);
        let characters: Character[] = text.split("").map((unit, id) => ({ id, unit }));
        for (const edit of edits) {
          const splice = amend(transform, characters, edit);
          if (splice !== null) characters = characters.toSpliced(splice.at, splice.removed, ...splice.added);
        }
        const all = carryAll(document, transform.doc, transform.mapping.maps, [range, range]);
        const one = carryRange(range, transform.mapping.maps, document, transform.doc);
        expect(all).toEqual([one, one]);
        const still = carryRange(range, [], document, document);
        if (!/^\n|\n$/u.test(text.slice(range.from, range.to))) expect(still).toEqual({ ok: true, range });
      }),
    );
  });
});

describe("fateOf", () => {
  const old = "Let the rider carry the spear low, and turn the horse to the left without haste.";
  const words = "the spear low";
  const wanted = quoteAt(old, old.indexOf(words), old.indexOf(words) + words.length);
  const span = (text: string, part: string) => ({ from: text.indexOf(part), to: text.indexOf(part) + part.length });

  it.each([
    ["[T18] same", old, words, { fate: "same", ...span(old, words) }],
    ["[T18] same, though all else moved", `Now. ${old}`, words, { fate: "same", ...span(`Now. ${old}`, words) }],
    [
      "[T18] reworded",
      old.replace("spear", "lance"),
      "the lance low",
      { fate: "reworded", ...span(old.replace("spear", "lance"), "the lance low") },
    ],
    ["[T18] lost", "Let the rider turn.", null, { fate: "lost" }],
  ] as const)("%s", (_name, text, part, fate) => {
    expect(fateOf(wanted, text, part === null ? null : span(text, part))).toEqual(fate);
  });

  it("[T18] moved when the words after it moved along, not when only a like phrase is left", () => {
    const moved = "Turn first. Then let him carry the spear low, and turn the horse to the left without haste.";
    expect(fateOf(wanted, moved, null)).toEqual({ fate: "moved", ...span(moved, words) });
    expect(fateOf(wanted, "He holds the spear low.", null)).toEqual({ fate: "lost" });
    expect(fateOf(wanted, "He holds the spear low.", null, old)).toEqual({ fate: "moved", from: 9, to: 22 });
    expect(fateOf(wanted, "He holds the spear low.", null, `${old} Again: the spear low!`)).toEqual({ fate: "lost" });
  });
});
