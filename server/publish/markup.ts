/** server/publish/markup.ts - HTML put together so that no words of a text can be taken for tags.
 *  May import: nothing. */

/** A finished piece of HTML. Everything else that is put into one is words and is escaped. */
export class Markup {
  constructor(readonly text: string) {}
}

export type Piece = Markup | string | number | null | false | readonly Piece[];

/** `html`<b>${words}</b>``: pieces are put in as they are, words escaped; null and false give nothing. */
export function html(strings: TemplateStringsArray, ...pieces: Piece[]): Markup {
  return new Markup(strings.map((part, index) => part + written(pieces[index] ?? null)).join(""));
}

/** Pieces one after the other with something between them. */
export function joined(pieces: readonly Piece[], between: Piece): Markup {
  return new Markup(pieces.map(written).join(written(between)));
}

function written(piece: Piece): string {
  if (piece === null || piece === false) return "";
  if (piece instanceof Markup) return piece.text;
  if (typeof piece === "string") return escaped(piece);
  return typeof piece === "number" ? String(piece) : piece.map(written).join("");
}

/** Words as they may stand in text and in an attribute between quotes. */
export function escaped(words: string): string {
  return words.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
