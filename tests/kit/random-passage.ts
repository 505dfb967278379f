/** tests/kit/random-passage.ts - random passage documents, and random amendments of them with a plain-string oracle.
 *  The oracle keeps an array of characters, each with an identity of its own; it knows nothing of positions, and the
 *  document knows nothing of identities. */
import fc from "fast-check";
import type { Node as DocNode } from "prosemirror-model";
import type { Transform } from "prosemirror-transform";
import { passageSchema } from "../../schema/editor.ts";
import { offsetToPosition } from "../../shared/text/index.ts";
import { doc, em, note } from "./passage-doc.ts";

const word = fc.string({ unit: fc.constantFrom("a", "b", "c", " ", "é", "\u0301", "ع", "🐎"), maxLength: 6 });

const inline = fc.oneof(
  { weight: 4, arbitrary: word.map((text) => (text === "" ? null : passageSchema.text(text))) },
  { weight: 1, arbitrary: word.map((text) => (text === "" ? null : em(text))) },
  { weight: 1, arbitrary: word.map(note) },
  { weight: 1, arbitrary: fc.nat(9).map((n) => passageSchema.node("milestone", { unit: "line", n: String(n) })) },
  { weight: 1, arbitrary: fc.constant(passageSchema.node("gap", { reason: "hole" })) },
);

export function anyPassageDoc(): fc.Arbitrary<DocNode> {
  const block = fc
    .tuple(fc.constantFrom("paragraph", "verse", "heading"), fc.array(inline, { maxLength: 5 }))
    .map(([type, content]) =>
      passageSchema.node(
        type,
        null,
        content.filter((node) => node !== null),
      ),
    );
  return fc.array(block, { minLength: 1, maxLength: 4 }).map((blocks) => doc(...blocks));
}

/** Numbers are taken modulo what the text has at that moment, so that any sequence is a valid script. */
export type Edit =
  | { kind: "insert"; at: number; text: string; atoms: "before" | "after" }
  | { kind: "replace"; at: number; length: number; text: string }
  | { kind: "split"; at: number }
  | { kind: "join"; block: number }
  | { kind: "retype"; block: number }
  | { kind: "emphasise"; at: number; length: number }
  | { kind: "atom"; at: number }
  | { kind: "dropBlock"; block: number };

const letters = fc.string({ unit: fc.constantFrom("x", "y", " "), minLength: 1, maxLength: 3 });

export function anyEdits(): fc.Arbitrary<Edit[]> {
  const nat = fc.nat(60);
  return fc.array(
    fc.oneof(
      fc.record({
        kind: fc.constant("insert" as const),
        at: nat,
        text: letters,
        atoms: fc.constantFrom("before" as const, "after" as const),
      }),
      fc.record({
        kind: fc.constant("replace" as const),
        at: nat,
        length: fc.nat(8),
        text: fc.oneof(fc.constant(""), letters),
      }),
      fc.record({ kind: fc.constant("split" as const), at: nat }),
      fc.record({ kind: fc.constant("join" as const), block: nat }),
      fc.record({ kind: fc.constant("retype" as const), block: nat }),
      fc.record({ kind: fc.constant("emphasise" as const), at: nat, length: fc.nat(8) }),
      fc.record({ kind: fc.constant("atom" as const), at: nat }),
      fc.record({ kind: fc.constant("dropBlock" as const), block: nat }),
    ),
    { maxLength: 8 },
  );
}

/** One character of the oracle. `id` is the offset in the first text, or null for what was written later. */
export type Character = { readonly id: number | null; readonly unit: string };

/** What an edit did to the characters: those from `at` on, `removed` many, gave way to `added`. */
export type Splice = { at: number; removed: number; added: Character[] };

/** Applies `edit` to the document and says what it means for the characters. Null when it does not apply here. */
export function amend(transform: Transform, characters: readonly Character[], edit: Edit): Splice | null {
  const starts = [0];
  characters.forEach(({ unit }, index) => {
    if (unit === "\n") starts.push(index + 1);
  });
  const place = "at" in edit ? edit.at % (characters.length + 1) : 0;
  const endOfBlock = (start: number) => {
    const stop = characters.findIndex(({ unit }, index) => index >= start && unit === "\n");
    return stop === -1 ? characters.length : stop;
  };
  const stay: Splice = { at: 0, removed: 0, added: [] };
  switch (edit.kind) {
    case "insert": {
      const position = offsetToPosition(transform.doc, place, edit.atoms);
      transform.insert(position, passageSchema.text(edit.text));
      return { at: place, removed: 0, added: fresh(edit.text) };
    }
    case "replace": {
      // Over block breaks too: the blocks between are then joined.
      const end = Math.min(characters.length, place + edit.length);
      if (end === place) return null;
      const from = offsetToPosition(transform.doc, place, "after");
      const to = offsetToPosition(transform.doc, end, "before");
      if (edit.text === "") transform.delete(from, to);
      else transform.replaceWith(from, to, passageSchema.text(edit.text));
      return { at: place, removed: end - place, added: fresh(edit.text) };
    }
    case "split": {
      transform.split(offsetToPosition(transform.doc, place, "before"));
      return { at: place, removed: 0, added: fresh("\n") };
    }
    case "join": {
      if (starts.length < 2) return null;
      const start = starts[1 + (edit.block % (starts.length - 1))] ?? 1;
      transform.join(offsetToPosition(transform.doc, start, "before") - 1);
      return { at: start - 1, removed: 1, added: [] };
    }
    case "retype": {
      const start = starts[edit.block % starts.length] ?? 0;
      const position = offsetToPosition(transform.doc, start, "before");
      transform.setNodeMarkup(position - 1, passageSchema.nodes.verse);
      return stay;
    }
    case "emphasise": {
      const end = Math.min(endOfBlock(place), place + edit.length);
      const from = offsetToPosition(transform.doc, place, "after");
      const to = offsetToPosition(transform.doc, end, "before");
      if (from < to) transform.addMark(from, to, passageSchema.mark("emphasis"));
      return stay;
    }
    case "atom": {
      transform.insert(offsetToPosition(transform.doc, place, "before"), note("new"));
      return stay;
    }
    case "dropBlock": {
      if (starts.length < 2) return null;
      const index = edit.block % starts.length;
      const start = starts[index] ?? 0;
      const position = offsetToPosition(transform.doc, start, "before");
      const node = transform.doc.child(index);
      transform.delete(position - 1, position - 1 + node.nodeSize);
      // The break before the block goes with it; before the first block, the one after it.
      const end = endOfBlock(start);
      return index === 0
        ? { at: 0, removed: end + 1, added: [] }
        : { at: start - 1, removed: end - start + 1, added: [] };
    }
  }
}

function fresh(text: string): Character[] {
  return text.split("").map((unit) => ({ id: null, unit }));
}
