/** shared/cite/cts-urn.ts - reads, writes and checks CTS URNs, the lasting citation of a passage or of words in it.
 *  May import: schema types, siblings in shared/cite. Keeps rules C10-C16 (shared/cite/RULES.md).
 *  After the Canonical Text Services URN specification, version 2.0.rc.1 (Blackwell and Smith, February 2014). */
import type { Reference } from "../../schema/reference.ts";

/** `urn:cts:NAMESPACE:WORK:PASSAGE`, taken apart. Data only: two equal citations may be written differently, see
 *  `ctsEqual`. */
export type CtsUrn = {
  readonly namespace: string;
  /** One to four names: text group, work, version, exemplar. */
  readonly work: readonly string[];
  /** Null when the URN names the whole text. */
  readonly passage: CtsPassage | null;
};

/** `to` is the last node of a range; null for a single node. */
export type CtsPassage = { readonly from: CtsNode; readonly to: CtsNode | null };

export type CtsNode = {
  /** From the widest to the narrowest level: ["10", "4"]. */
  readonly levels: readonly string[];
  /** Words inside the node, or null. */
  readonly words: CtsWords | null;
};

/** The `to` of a range of words stands in the same node; null when one string says it all. */
export type CtsWords = { readonly from: CtsString; readonly to: CtsString | null };

/** `occurrence` counts from 1. */
export type CtsString = { readonly text: string; readonly occurrence: number };

export type CtsResult =
  | { readonly ok: true; readonly urn: CtsUrn }
  | { readonly ok: false; readonly code: CtsRefusalCode; readonly sentence: string };

export type CtsRefusalCode =
  | "cts_not_a_cts_urn"
  | "cts_parts_missing"
  | "cts_parts_too_many"
  | "cts_work_malformed"
  | "cts_character_not_allowed"
  | "cts_passage_without_work"
  | "cts_passage_malformed"
  | "cts_words_need_version"
  | "cts_words_malformed"
  | "cts_reference_has_no_sections"
  | "cts_words_not_found";

/** Reads a CTS URN and checks its form; whether such a text exists is not asked. */
export function parseCtsUrn(text: string): CtsResult {
  const [scheme = "", protocol = "", namespace, work, passage, ...rest] = text.split(":");
  if (scheme.toLowerCase() !== "urn" || protocol.toLowerCase() !== "cts") {
    return refuse("cts_not_a_cts_urn", `A CTS URN begins with "urn:cts:"; got "${shorten(text)}".`);
  }
  if (!namespace || !work) {
    return refuse(
      "cts_parts_missing",
      `A CTS URN names a namespace and a work: urn:cts:NAMESPACE:WORK:PASSAGE; got "${shorten(text)}".`,
    );
  }
  if (passage === undefined) {
    return refuse(
      "cts_parts_missing",
      `A CTS URN has a colon after the work even when no passage follows: write "${shorten(text)}:".`,
    );
  }
  if (rest.length > 0) {
    return refuse(
      "cts_parts_too_many",
      `A CTS URN has four colons before its passage and none after; got "${shorten(text)}".`,
    );
  }
  for (const [name, part] of [
    ["namespace", namespace],
    ["work", work],
    ["passage", passage],
  ] as const) {
    const bad = FORBIDDEN.exec(part)?.[0];
    if (bad !== undefined)
      return refuse("cts_character_not_allowed", `The ${name} of a CTS URN may not hold ${nameOf(bad)}.`);
  }
  // A hyphen makes a range in the passage alone. The specification lists it among the reserved characters everywhere, yet
  // the versions of published collections are named with it (tlg0032.tlg013.perseus-eng2), so it may stand in a work.
  const reserved = /[.@[\]-]/u.exec(namespace)?.[0] ?? /[@[\]]/u.exec(work)?.[0];
  if (reserved !== undefined) {
    return refuse(
      "cts_character_not_allowed",
      `"${reserved}" has a meaning of its own in CTS URNs and may not stand in a namespace or work.`,
    );
  }
  const names = work.split(".");
  if (names.length > 4 || names.includes("")) {
    return refuse(
      "cts_work_malformed",
      `A work is named by one to four parts with a stop between: GROUP.WORK.VERSION.EXEMPLAR; got "${shorten(work)}".`,
    );
  }
  if (passage === "") return { ok: true, urn: { namespace, work: names, passage: null } };
  if (names.length < 2) {
    return refuse(
      "cts_passage_without_work",
      `A passage needs a work within its group: "${shorten(work)}" names a group only.`,
    );
  }
  const read = parsePassage(passage);
  if ("code" in read) return read;
  if (names.length < 3 && (read.from.words !== null || read.to?.words)) {
    return refuse(
      "cts_words_need_version",
      `Words after "@" belong to one version: name the edition or translation after "${shorten(work)}".`,
    );
  }
  return { ok: true, urn: { namespace, work: names, passage: read } };
}

/** The URN as text: occurrence numbers are written from 2 on, and the colon before an empty passage always. */
export function formatCtsUrn(urn: CtsUrn): string {
  const passage = urn.passage === null ? "" : formatPassage(urn.passage);
  return `urn:cts:${urn.namespace}:${urn.work.join(".")}:${passage}`;
}

/** Whether two texts are CTS URNs of the same thing: `@Atreus` equals `@Atreus[1]`, and a range of words from one node to
 *  itself needs no second node. False when one of them is no CTS URN. */
export function ctsEqual(first: string, second: string): boolean {
  const [a, b] = [parseCtsUrn(first), parseCtsUrn(second)];
  return a.ok && b.ok && formatCtsUrn(a.urn) === formatCtsUrn(b.urn);
}

/** Quoted words and the whole text of the node they stand in, with the offset of the words there where it is known. */
export type WordsInNode = { readonly quote: string; readonly text: string; readonly from?: number };

export type PassageUrn =
  | { readonly ok: true; readonly urn: string }
  | { readonly ok: false; readonly code: CtsRefusalCode; readonly sentence: string };

/** The URN of a section reference in the text that `textUrn` names (any passage of its own is left aside). With
 *  `words`, the quoted words are named with the number of their occurrence: only at version level, only for a single
 *  node, and only when the words hold no character that a CTS URN excludes. */
export function passageUrn(textUrn: string, reference: Reference, words?: WordsInNode): PassageUrn {
  const parsed = parseCtsUrn(textUrn);
  if (!parsed.ok) return parsed;
  if (reference.kind !== "section") {
    return refuse(
      "cts_reference_has_no_sections",
      `A CTS URN cites by sections such as 7.13, not by folio or page: give the passage a section reference too.`,
    );
  }
  const from = { levels: reference.from, words: null };
  const to = reference.to === undefined ? null : { levels: reference.to, words: null };
  let passage: CtsPassage = { from, to };
  if (words !== undefined) {
    if (to !== null) {
      return refuse("cts_words_malformed", `Words can be cited in one section only; this reference runs over several.`);
    }
    const occurrence = occurrenceOf(words);
    if (occurrence === 0) {
      return refuse(
        "cts_words_not_found",
        `The section does not hold the words "${shorten(words.quote)}" at that place.`,
      );
    }
    passage = { from: { levels: reference.from, words: { from: { text: words.quote, occurrence }, to: null } }, to };
  }
  const urn = formatCtsUrn({ ...parsed.urn, passage });
  const checked = parseCtsUrn(urn);
  if (!checked.ok) return checked;
  const asMeant = JSON.stringify(checked.urn.passage) === JSON.stringify(passage);
  return asMeant
    ? { ok: true, urn }
    : refuse(
        "cts_passage_malformed",
        `The reference cannot be written in a CTS URN without being read as another one: "${shorten(urn)}".`,
      );
}

/** Excluded code points, and those the generic syntax reserves (specification, "Character set"). */
// biome-ignore lint/suspicious/noControlCharactersInRegex: the specification excludes every code point below U+0020.
const FORBIDDEN = /[\u0000-\u001f%/?#\\"&<>^`|{}~]/u;

function parsePassage(passage: string): CtsPassage | Refusal {
  const hyphens = [...passage.matchAll(/-/gu)].map((match) => match.index);
  // A hyphen parts two nodes, or two strings within one node. It is tried from the left as the former, which the
  // specification's own example (10.4@Atreus-10.10) asks for; see rule C13 for what makes a second part a node.
  for (const at of hyphens) {
    const second = passage.slice(at + 1);
    const first = parseNode(passage.slice(0, at));
    if ("code" in first || !readsAsNode(second, first)) continue;
    const last = parseNode(second);
    if (!("code" in last)) return { from: first, to: last };
  }
  const only = parseNode(passage);
  return "code" in only ? only : { from: only, to: null };
}

/** Whether what follows a hyphen begins a node: always after a node without words; after words when it has words of its
 *  own ("@"), or as many levels as the first node and begins with a digit. */
function readsAsNode(text: string, first: CtsNode): boolean {
  if (first.words === null) return true;
  const [levels = ""] = text.split("@");
  if (/[[\]]/u.test(levels)) return false;
  return text.includes("@") || (/^\d/u.test(levels) && levels.split(".").length === first.levels.length);
}

function parseNode(text: string): CtsNode | Refusal {
  const at = text.indexOf("@");
  const levels = (at === -1 ? text : text.slice(0, at)).split(".");
  if (levels.includes("") || levels.some((level) => /[-[\]]/u.test(level))) {
    return refuse(
      "cts_passage_malformed",
      `A passage is a node such as 10.4 or a range such as 10.1-10.10, with a stop between levels and none at the end; got "${shorten(text)}".`,
    );
  }
  if (at === -1) return { levels, words: null };
  const words = parseWords(text.slice(at + 1));
  return "code" in words ? words : { levels, words };
}

function parseWords(text: string): CtsWords | Refusal {
  const [from, to, ...rest] = text.split("-").map(parseString);
  if (!from || rest.length > 0 || to === null || text.includes("@")) {
    return refuse(
      "cts_words_malformed",
      `After "@" come words with the number of their occurrence from 1, as in 10.1@the[2]; got "@${shorten(text)}".`,
    );
  }
  return { from, to: to ?? null };
}

function parseString(text: string): CtsString | null {
  const match = /^([^[\]]+)(?:\[([1-9]\d{0,8})\])?$/u.exec(text);
  return match?.[1] === undefined ? null : { text: match[1], occurrence: Number(match[2] ?? "1") };
}

function formatPassage(passage: CtsPassage): string {
  const from = formatNode(passage.from);
  return passage.to === null ? from : `${from}-${formatNode(passage.to)}`;
}

function formatNode(node: CtsNode): string {
  const levels = node.levels.join(".");
  if (node.words === null) return levels;
  const from = formatString(node.words.from);
  if (node.words.to === null) return `${levels}@${from}`;
  const second = formatString(node.words.to);
  // With its number written out, a second string cannot be read as a node.
  const to = readsAsNode(second, node) ? `${node.words.to.text}[${node.words.to.occurrence}]` : second;
  return `${levels}@${from}-${to}`;
}

function formatString(string: CtsString): string {
  return string.occurrence === 1 ? string.text : `${string.text}[${string.occurrence}]`;
}

/** Which occurrence of the quote begins at `from` (or the first), counted from 1; 0 when none does. Overlapping
 *  occurrences are counted, so that every place has a number. */
function occurrenceOf({ quote, text, from }: WordsInNode): number {
  if (quote === "") return 0;
  let count = 0;
  for (let at = text.indexOf(quote); at !== -1; at = text.indexOf(quote, at + 1)) {
    count += 1;
    if (from === undefined || at === from) return count;
  }
  return 0;
}

type Refusal = { readonly ok: false; readonly code: CtsRefusalCode; readonly sentence: string };

function refuse(code: CtsRefusalCode, sentence: string): Refusal {
  return { ok: false, code, sentence };
}

function nameOf(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  return code < 0x20 ? `the control character U+${code.toString(16).toUpperCase().padStart(4, "0")}` : `"${character}"`;
}

function shorten(text: string): string {
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}
