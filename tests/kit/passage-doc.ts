/** tests/kit/passage-doc.ts - short words for building passage documents in tests.
 *  doc(p("the ", note("n"), "fox")) is one paragraph with an atom; a plain string is text. */
import type { Node as DocNode } from "prosemirror-model";
import { passageSchema } from "../../schema/editor.ts";

type Inline = string | DocNode;

export function doc(...blocks: DocNode[]): DocNode {
  return passageSchema.node("doc", null, blocks);
}

export function p(...content: Inline[]): DocNode {
  return block("paragraph", content);
}

export function verse(...content: Inline[]): DocNode {
  return block("verse", content);
}

export function note(text: string): DocNode {
  return passageSchema.node("note", { text });
}

export function milestone(unit: string, n: string): DocNode {
  return passageSchema.node("milestone", { unit, n });
}

export function em(text: string): DocNode {
  return passageSchema.text(text, [passageSchema.mark("emphasis")]);
}

function block(type: string, content: Inline[]): DocNode {
  const nodes = content
    .filter((part) => part !== "")
    .map((part) => (typeof part === "string" ? passageSchema.text(part) : part));
  return passageSchema.node(type, null, nodes);
}
