/** server/import/xml-entities.ts - what `&name;` stands for: the file's own declarations, then a table of names.
 *  May import: character-entities (the names HTML shares with the ISO sets). Nothing outside the file is ever fetched.
 *  Growth is measured before a single letter is built, so that a bomb costs nothing (I4). */
import { characterEntities } from "character-entities";

/** Entities inside entities, at most. */
export const ENTITY_DEPTH_LIMIT = 8;
/** UTF-16 units all entities of a file may grow to together. */
export const ENTITY_GROWTH_LIMIT = 4_000_000;

export type EntityAnswer =
  | { kind: "text"; text: string }
  | { kind: "unknown" }
  | { kind: "external" }
  | { kind: "markup" }
  | { kind: "bomb"; why: string };

/** Own names only: "constructor" is no entity. */
const fromTable = (name: string): string | undefined =>
  Object.hasOwn(characterEntities, name) ? characterEntities[name] : undefined;

type Declaration = { kind: "internal"; value: string } | { kind: "external" };

const DECLARATION =
  /<!ENTITY\s+(%\s+)?([^\s%"'<>]+)\s+(?:(SYSTEM|PUBLIC)\b(?:[^>"']|"[^"]*"|'[^']*')*|"([^"]*)"|'([^']*)')\s*>/g;
const REFERENCE = /&([^\s&;#]+);/g;

const characterReferences = (value: string): string =>
  value.replace(/&#(?:x([0-9a-fA-F]{1,6})|([0-9]{1,7}));/g, (whole, hex: string | undefined, decimal: string) => {
    const code = hex === undefined ? Number.parseInt(decimal, 10) : Number.parseInt(hex, 16);
    return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });

export class XmlEntities {
  readonly #declared = new Map<string, Declaration>();
  readonly #lengths = new Map<string, number>();
  readonly #texts = new Map<string, string>();
  #grown = 0;

  /** Takes the declarations of an internal subset; the first one of a name counts, as XML says. */
  declare(doctype: string): void {
    for (const match of doctype.replace(/<!--[\s\S]*?-->/g, "").matchAll(DECLARATION)) {
      const name = match[2];
      if (match[1] !== undefined || name === undefined || this.#declared.has(name)) continue;
      const value = match[4] ?? match[5];
      this.#declared.set(
        name,
        value === undefined ? { kind: "external" } : { kind: "internal", value: characterReferences(value) },
      );
    }
  }

  /** Length of the whole expansion in UTF-16 units, or the reason why there is none. */
  #lengthOf(name: string, above: readonly string[]): number | { why: string } {
    const known = this.#lengths.get(name);
    if (known !== undefined) return known;
    if (above.includes(name)) return { why: "refers to itself" };
    if (above.length >= ENTITY_DEPTH_LIMIT)
      return { why: `stands for entities inside entities, more than ${ENTITY_DEPTH_LIMIT} deep` };
    const declaration = this.#declared.get(name);
    if (declaration?.kind !== "internal") return fromTable(name)?.length ?? 0;
    let length = declaration.value.length;
    for (const [, inner] of declaration.value.matchAll(REFERENCE)) {
      const added = this.#lengthOf(inner ?? "", [...above, name]);
      if (typeof added !== "number") return added;
      length += added;
      if (length > ENTITY_GROWTH_LIMIT) return { why: `would grow to more than ${ENTITY_GROWTH_LIMIT} letters` };
    }
    this.#lengths.set(name, length);
    return length;
  }

  #expand(name: string): string {
    const known = this.#texts.get(name);
    if (known !== undefined) return known;
    const declaration = this.#declared.get(name);
    const text =
      declaration?.kind === "internal"
        ? declaration.value.replace(REFERENCE, (_whole, inner: string) => this.#expand(inner))
        : (fromTable(name) ?? "");
    this.#texts.set(name, text);
    return text;
  }

  /** What the name stands for. The five names of XML itself are in the table. */
  resolve(name: string): EntityAnswer {
    const declaration = /^(lt|gt|amp|quot|apos)$/.test(name) ? undefined : this.#declared.get(name);
    if (declaration === undefined) {
      const text = fromTable(name);
      return text === undefined ? { kind: "unknown" } : { kind: "text", text };
    }
    if (declaration.kind === "external") return { kind: "external" };
    const length = this.#lengthOf(name, []);
    if (typeof length !== "number") return { kind: "bomb", why: length.why };
    this.#grown += length;
    if (this.#grown > ENTITY_GROWTH_LIMIT) {
      return { kind: "bomb", why: `makes the text grow by more than ${ENTITY_GROWTH_LIMIT} letters` };
    }
    const text = this.#expand(name);
    return text.includes("<") ? { kind: "markup" } : { kind: "text", text };
  }
}

/** Text with its character references read: numbers and the names of the table. Unknown names stay as they are. */
export const readReferencesIn = (text: string): string =>
  text.includes("&")
    ? characterReferences(text).replace(REFERENCE, (whole, name: string) => fromTable(name) ?? whole)
    : text;
