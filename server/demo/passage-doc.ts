/** server/demo/passage-doc.ts - a passage as it is typed in the demo, made into an editor's document.
 *  May import: schema. Typed form: paragraphs parted by an empty line; lines inside a paragraph run on; in double
 *  brackets what has no width: ⟦folio 3v⟧ a milestone, ⟦note: ...⟧ a translator's note, ⟦gap: ...⟧ words lost. */
import type { Node as DocNode } from "prosemirror-model";
import { passageSchema } from "../../schema/editor.ts";

const BRACKETS = /⟦([^⟧]*)⟧/;

/** The document of the typed text. Throws RangeError naming a bracket that is none of the three. */
export function passageDoc(typed: string): DocNode {
  const paragraphs = typed
    .trim()
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.replace(/\s+/g, " ").trim());
  return passageSchema.node(
    "doc",
    null,
    paragraphs.map((paragraph) => passageSchema.node("paragraph", null, inline(paragraph))),
  );
}

function inline(paragraph: string): DocNode[] {
  // split() with one capture group alternates: text, bracket, text, bracket, text.
  return paragraph.split(BRACKETS).flatMap((piece, index) => {
    if (index % 2 === 1) return [atom(piece)];
    return piece === "" ? [] : [passageSchema.text(piece)];
  });
}

function atom(inside: string): DocNode {
  const [, word = "", rest = ""] = /^(folio|note:|gap:)\s+(.+)$/.exec(inside) ?? [];
  if (word === "folio") return passageSchema.node("milestone", { unit: "folio", n: rest });
  if (word === "note:") return passageSchema.node("note", { text: rest });
  if (word === "gap:") return passageSchema.node("gap", { reason: rest });
  throw new RangeError(`Brackets hold "folio 3v", "note: ..." or "gap: ..."; got "${inside}".`);
}
