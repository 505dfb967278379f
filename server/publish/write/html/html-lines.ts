/** server/publish/write/html/html-lines.ts - lines of a paper as HTML: words with their role, language and line of warrant.
 *  May import: schema types, server/publish, the room above. */
import type { Line, Paper, Span } from "../../../../schema/paper.ts";
import { html, joined, type Markup, type Piece } from "../../markup.ts";
import { languageTag, runsRightToLeft } from "../language-tag.ts";
import { linkTarget } from "../link-target.ts";
import { bare, type PaperPlaces } from "../paper-places.ts";
import type { Printable } from "../printable.ts";
import { NOTHING_WORDS, SILENT_WORDS } from "../standing-words.ts";
import { bound, unbrokenParts } from "../unbroken.ts";

type Words = Extract<Span, { is: "words" }>;

const LINED = new Set(["stated", "implied", "supplied", "not settled"]);

export class HtmlLines {
  readonly #paper: Paper;
  readonly #numbers: ReadonlyMap<string, number>;
  readonly #ids = new Map<string, string>();
  readonly #printable: Printable;

  constructor(paper: Paper, { notes, anchors }: PaperPlaces, printable: Printable) {
    this.#paper = paper;
    this.#printable = printable;
    this.#numbers = new Map(notes.map(({ id, number }) => [id, number]));
    for (const anchor of anchors) this.#ids.set(anchor, sound(anchor) ? anchor : `place-${this.#ids.size + 1}`);
  }

  words(text: string): string {
    return this.#printable.forAnyFaces(text);
  }

  line(line: Line): Markup {
    return html`${line.map((span) => this.#span(span))}`;
  }

  /** ` id="…"` for a place; nothing for null. */
  idAt(place: string | null): Markup | null {
    return place === null ? null : html` id="${this.idOf(place)}"`;
  }

  idOf(place: string): string {
    const id = this.#ids.get(place);
    if (id === undefined) throw new RangeError(`No place of the paper is named ${place}.`);
    return id;
  }

  /** ` dir="rtl"` for a line that runs so as a whole. */
  directionOf(line: Line): Markup | null {
    const text = line.map((span) => (span.is === "words" ? span.text : "")).join("");
    return runsRightToLeft(text) ? html` dir="rtl"` : null;
  }

  #span(span: Span): Markup {
    switch (span.is) {
      case "words":
        return this.#words(span);
      case "silent":
        return html`<span class="silent" role="img" aria-label="${SILENT_WORDS}">· · ·</span>`;
      case "nothing":
        return html`<span class="nothing" role="img" aria-label="${NOTHING_WORDS}"></span>`;
      case "sign": {
        const sign = this.words(span.sign);
        if (span.to === null) return html`<span class="sign">${sign}</span>`;
        return html`<a class="sign" href="#${this.idOf(bare(span.to))}">${sign}</a>`;
      }
      case "note": {
        const number = this.#numbers.get(span.note);
        if (number === undefined) throw new RangeError(`The paper has no note ${span.note}.`);
        const id = this.idOf(span.note);
        return html`<a class="call" role="doc-noteref" id="call-${id}" href="#${id}">${number}</a>`;
      }
    }
  }

  #words(span: Words): Markup {
    const lined = span.standing !== null && LINED.has(span.standing);
    const text = this.words(span.text);
    const parts = span.as === "reference" ? unbrokenParts(text) : null;
    const unbroken =
      parts === null
        ? html`${span.as === "said" ? text : bound(text)}`
        : joined(
            parts.map((part) => html`<span class="part">${part}</span>`),
            html` `,
          );
    const inner = lined
      ? html`<span class="w-${(span.standing ?? "").replaceAll(" ", "-")}">${unbroken}</span>`
      : unbroken;
    return this.#linked(span, this.#ofRole(span, inner));
  }

  #ofRole({ as, language, text }: Words, inner: Markup): Markup {
    const tag = language === this.#paper.language ? null : languageTag(language);
    const lang = tag === null ? null : html` lang="${language}"`;
    const foreign = runsRightToLeft(text) ? html`${lang} dir="rtl"` : lang;
    if (as === "said") return html`<bdi class="said"${foreign}>${inner}</bdi>`;
    if (as === "strong") return html`<strong${foreign}>${inner}</strong>`;
    if (as === "emphasis") return html`<em${foreign}>${inner}</em>`;
    if (as === "reference") return html`<span class="ref"${foreign}>${inner}</span>`;
    if (as === "soft") return html`<span class="soft"${foreign}>${inner}</span>`;
    return foreign === null ? inner : html`<bdi${foreign}>${inner}</bdi>`;
  }

  #linked({ to }: Words, inner: Piece): Markup {
    const target = linkTarget(to);
    if (target === null) return html`${inner}`;
    if (target.to === "place") return html`<a href="#${this.idOf(target.name)}">${inner}</a>`;
    if (target.to === "window") return html`<a href="${target.path}">${inner}</a>`;
    return html`<a href="${target.address}" rel="noreferrer">${inner}</a>`;
  }
}

/** Whether a name may stand as an id and after "#" as it is. */
function sound(name: string): boolean {
  return /^[A-Za-z][\w.:-]*$/.test(name) && !/^(?:place-\d+|call-.*|f\d+-.*|heading-\d+)$/.test(name);
}
