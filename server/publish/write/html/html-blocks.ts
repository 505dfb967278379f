/** server/publish/write/html/html-blocks.ts - blocks of a paper as HTML.
 *  May import: schema types, server/publish, siblings, the room above. */
import type { Block, Line, PlainBlock } from "../../../../schema/paper.ts";
import { html, joined, type Markup } from "../../markup.ts";
import { type RowGroup, rowGroups } from "../row-groups.ts";
import { safeSvg } from "../safe-svg.ts";
import type { HtmlLines } from "./html-lines.ts";

type Of<Is extends Block["is"]> = Extract<Block, { is: Is }>;

/** A step longer than this many characters may part at the foot of a page. */
const TALL = 1400;

export class HtmlBlocks {
  readonly #lines: HtmlLines;
  /** Id of each heading, in the order of the paper. */
  readonly #headings: { block: Of<"heading">; id: string }[];
  #figures = 0;

  constructor(lines: HtmlLines, headings: readonly Of<"heading">[]) {
    this.#lines = lines;
    this.#headings = headings.map((block, index) => ({
      block,
      id: block.anchor === null ? `heading-${index + 1}` : lines.idOf(block.anchor),
    }));
  }

  block(block: Block): Markup {
    if (block.is !== "beside") return this.#plain(block);
    const { columns = "margin" } = block;
    return html`<div class="beside ${columns}"><div>${this.#all(block.left)}</div><div>${this.#all(block.right)}</div></div>\n`;
  }

  #all(blocks: readonly PlainBlock[]): Markup[] {
    return blocks.map((block) => this.#plain(block));
  }

  #plain(block: PlainBlock): Markup {
    switch (block.is) {
      case "heading":
        return this.#heading(block);
      case "paragraph":
        return html`<p class="${block.as}"${this.#lines.directionOf(block.words)}>${this.#lines.line(block.words)}</p>\n`;
      case "list": {
        const items = block.items.map(
          ({ words }) => html`<li${this.#lines.directionOf(words)}>${this.#lines.line(words)}</li>`,
        );
        return block.ordered ? html`<ol class="list">${items}</ol>\n` : html`<ul class="list">${items}</ul>\n`;
      }
      case "facts": {
        const rows = block.rows.map(
          ({ name, words }) => html`<dt>${this.#lines.words(name)}</dt><dd>${this.#lines.line(words)}</dd>`,
        );
        return html`<dl class="facts">${rows}</dl>\n`;
      }
      case "table":
        return this.#table(block);
      case "calls":
        return html`<ol class="calls">${block.items.map((item) => this.#call(item))}</ol>\n`;
      case "figure":
        return this.#figure(block);
      case "entries":
        return html`<dl class="entries ${block.as}">${block.items.map((item) => this.#entry(item))}</dl>\n`;
      case "writing":
        return html`<div class="writing" aria-hidden="true">${Array.from({ length: block.lines }, () => html`<i></i>`)}</div>\n`;
      case "contents":
        return this.#contents(block.depth);
      case "page break":
        return html`<hr class="page-break">\n`;
    }
  }

  #heading(block: Of<"heading">): Markup {
    const id = this.#headings.find((heading) => heading.block === block)?.id ?? null;
    const level = html`h${block.level}`;
    return html`<${level}${id === null ? null : html` id="${id}"`}>${this.#lines.line(block.words)}</${level}>\n`;
  }

  #contents(depth: number): Markup {
    const items = this.#headings
      .filter(({ block }) => block.level <= depth)
      .map(({ block, id }) => {
        const words = block.words.flatMap((span) => (span.is === "words" ? [this.#lines.words(span.text)] : []));
        return html`<li class="level-${block.level}"><a href="#${id}">${words}</a></li>`;
      });
    return html`<nav class="contents" aria-label="Contents"><ol>${items}</ol></nav>\n`;
  }

  #table(block: Of<"table">): Markup {
    const { caption, columns } = block;
    const numbered = block.as === "steps";
    const shares = numbered ? columns.slice(1) : columns;
    const total = shares.reduce((sum, { share }) => sum + share, 0);
    const widths = shares.map(
      ({ share }) => html`<col style="width:${((share / total) * (numbered ? 94 : 100)).toFixed(2)}%">`,
    );
    const heads = columns.map(({ name }, at) =>
      name === "" && at === 0
        ? html`<th scope="col"><span class="unseen">No.</span></th>`
        : html`<th scope="col">${this.#lines.words(name)}</th>`,
    );
    return html`<div class="wide"><table class="${block.as}">${caption.length === 0 ? null : html`<caption>${this.#lines.line(caption)}</caption>`}
<colgroup>${numbered && html`<col class="number">`}${widths}</colgroup>
<thead><tr>${heads}</tr></thead>
${rowGroups(block).map((group) => this.#group(group, columns, numbered))}
</table></div>\n`;
  }

  #group({ number, rows, length }: RowGroup, columns: Of<"table">["columns"], numbered: boolean): Markup {
    const made = rows.map(({ anchor, cells, minor }, piece) => {
      const head =
        numbered && piece === 0 ? html`<th scope="row" rowspan="${rows.length}">${this.#cell(number)}</th>` : null;
      const first = numbered ? 1 : 0;
      const width = columns.length - first;
      const told = cells.map((cell, at) => {
        const across = at + 1 === cells.length ? width - at : 1;
        const name = across === 1 && cell.length > 0 ? (columns[at + first]?.name ?? "") : "";
        return html`<td${across > 1 && html` colspan="${across}"`}${minor && html` class="minor"`}${name !== "" && html` data-name="${this.#lines.words(name)}"`}>${this.#cell(cell)}</td>`;
      });
      return html`<tr${this.#lines.idAt(anchor)}>${head}${told}</tr>`;
    });
    return html`<tbody${length > TALL && html` class="tall"`}>${made}</tbody>\n`;
  }

  #cell(cell: readonly Line[]): Markup {
    const [only, ...more] = cell;
    if (only === undefined) return html``;
    if (more.length === 0 && this.#lines.directionOf(only) === null) return this.#lines.line(only);
    return html`${cell.map((line) => html`<div${this.#lines.directionOf(line)}>${this.#lines.line(line)}</div>`)}`;
  }

  #call({ shown, call, acts = [], when, where }: Of<"calls">["items"][number]): Markup {
    const beside = [when, where].filter((line) => line.length > 0).map((line) => this.#lines.line(line));
    const number = shown === null ? "" : this.#lines.words(shown);
    return html`<li><b class="number">${number}</b><div>${call.length > 0 && html`<p class="call">${this.#lines.line(call)}</p>`}${acts.map((line) => html`<p class="act">${this.#lines.line(line)}</p>`)}${beside.length > 0 && html`<p class="when">${joined(beside, html` <span class="soft">·</span> `)}</p>`}</div></li>`;
  }

  #figure({ anchor, svg, width, caption, alternative }: Of<"figure">): Markup {
    this.#figures += 1;
    const drawing = safeSvg(this.#lines.words(svg), {
      prefix: `f${this.#figures}-`,
      alternative: this.#lines.words(alternative),
      width,
    });
    const told = caption.length > 0 && html`<figcaption>${this.#lines.line(caption)}</figcaption>`;
    return html`<figure${this.#lines.idAt(anchor)}>${drawing}${told}</figure>\n`;
  }

  #entry({ anchor, head, lines }: Of<"entries">["items"][number]): Markup {
    const told = lines.map((line) => html`<p${this.#lines.directionOf(line)}>${this.#lines.line(line)}</p>`);
    return html`<div><dt${this.#lines.idAt(anchor)}>${this.#lines.line(head)}</dt><dd>${told}</dd></div>`;
  }
}
