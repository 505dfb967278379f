/** schema/editor.ts - the editor's document schema: what one passage text may hold.
 *  May import: prosemirror-model. Marks of the researcher (steps, cruxes ...) are never in here: they are
 *  anchored to the text from tables. The width of every node in the offset projection is fixed in shared/text. */
import { type Node as DocNode, Schema } from "prosemirror-model";

/** Blocks are parted by one U+000A in the projection; atoms (note, milestone, gap) have no width there. */
export const passageSchema = new Schema({
  nodes: {
    doc: { content: "block+" },
    paragraph: { group: "block", content: "inline*", parseDOM: [{ tag: "p" }], toDOM: () => ["p", 0] },
    heading: { group: "block", content: "inline*", defining: true, parseDOM: [{ tag: "h3" }], toDOM: () => ["h3", 0] },
    verse: {
      group: "block",
      content: "inline*",
      parseDOM: [{ tag: "p.verse", priority: 60 }],
      toDOM: () => ["p", { class: "verse" }, 0],
    },
    text: { group: "inline" },
    /** A note of the text's own editor or translator; its words are kept, and shown on demand. */
    note: {
      group: "inline",
      inline: true,
      atom: true,
      selectable: false,
      attrs: { text: { default: "", validate: "string" }, label: { default: "", validate: "string" } },
      parseDOM: [
        {
          tag: "span[data-note]",
          getAttrs: (dom) => ({
            text: dom.getAttribute("data-note") ?? "",
            label: dom.getAttribute("data-label") ?? "",
          }),
        },
      ],
      toDOM: (node) => [
        "span",
        { class: "note-atom", "data-note": node.attrs.text, "data-label": node.attrs.label, title: node.attrs.text },
      ],
    },
    /** A page, folio, line or section boundary inside the passage. */
    milestone: {
      group: "inline",
      inline: true,
      atom: true,
      selectable: false,
      attrs: { unit: { validate: "string" }, n: { default: "", validate: "string" } },
      parseDOM: [
        {
          tag: "span[data-unit]",
          getAttrs: (dom) => ({ unit: dom.getAttribute("data-unit") ?? "", n: dom.getAttribute("data-n") ?? "" }),
        },
      ],
      toDOM: (node) => [
        "span",
        {
          class: "milestone",
          "data-unit": node.attrs.unit,
          "data-n": node.attrs.n,
          title: `${node.attrs.unit} ${node.attrs.n}`,
        },
      ],
    },
    /** Words lost in the witness. */
    gap: {
      group: "inline",
      inline: true,
      atom: true,
      selectable: false,
      attrs: { reason: { default: "", validate: "string" } },
      parseDOM: [{ tag: "span[data-gap]", getAttrs: (dom) => ({ reason: dom.getAttribute("data-gap") ?? "" }) }],
      toDOM: (node) => ["span", { class: "gap", "data-gap": node.attrs.reason, title: node.attrs.reason }],
    },
  },
  marks: {
    emphasis: { parseDOM: [{ tag: "em" }, { tag: "i" }], toDOM: () => ["em", 0] },
    foreign: {
      attrs: { lang: { default: "", validate: "string" } },
      parseDOM: [{ tag: "i[lang]", priority: 60, getAttrs: (dom) => ({ lang: dom.getAttribute("lang") ?? "" }) }],
      toDOM: (mark) => ["i", { lang: mark.attrs.lang, class: "foreign" }, 0],
    },
    /** Words restored or added by the text's own editor. */
    supplied: { parseDOM: [{ tag: "span.supplied" }], toDOM: () => ["span", { class: "supplied" }, 0] },
    unclear: { parseDOM: [{ tag: "span.unclear" }], toDOM: () => ["span", { class: "unclear" }, 0] },
  },
});

/** A passage's document as JSON, as stored and sent. Checked with `docFromJson`. */
export type DocJson = { type: string; [key: string]: unknown };

/** Reads and checks a document. Throws RangeError naming what is out of place. */
export function docFromJson(json: DocJson): DocNode {
  const doc = passageSchema.nodeFromJSON(json);
  doc.check();
  return doc;
}
