/** server/import/decode.ts - bytes to text: byte order mark, XML declaration, strict UTF-8, old encodings, binary files.
 *  May import: schema types, siblings. Nothing is replaced silently: a wrong byte refuses, a guess is reported (I3). */
import type { FilePlace } from "../../schema/imported.ts";
import type { DroppedList } from "./dropped-list.ts";
import { RefusedError, refuse } from "./refusals.ts";

export interface Decoded {
  /** Without the byte order mark. Line ends are as they came. */
  text: string;
  /** What was read, in words: "UTF-8", "windows-1252 (guessed)". */
  encoding: string;
}

const startsWith = (bytes: Uint8Array, ...head: number[]) => head.every((byte, index) => bytes[index] === byte);

/** What a file that is no text looks like, or null. */
const binaryKind = (bytes: Uint8Array): string | null => {
  if (startsWith(bytes, 0x25, 0x50, 0x44, 0x46)) return "a PDF";
  if (startsWith(bytes, 0x50, 0x4b, 0x03, 0x04)) return "a packed file or a word processor's document";
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0)) return "an old word processor's document";
  if (startsWith(bytes, 0x89, 0x50, 0x4e, 0x47) || startsWith(bytes, 0xff, 0xd8, 0xff)) return "a picture";
  if (bytes.includes(0)) return "made of bytes that stand for no letters (it holds zero bytes)";
  return null;
};

/** Index of the first byte that is not well-formed UTF-8, or -1. */
const firstBadByte = (bytes: Uint8Array): number => {
  let index = 0;
  while (index < bytes.length) {
    const lead = bytes[index] ?? 0;
    let more = 0;
    let low = 0x80;
    let high = 0xbf;
    if (lead >= 0xc2 && lead <= 0xdf) more = 1;
    else if (lead >= 0xe0 && lead <= 0xef) {
      more = 2;
      if (lead === 0xe0) low = 0xa0;
      if (lead === 0xed) high = 0x9f;
    } else if (lead >= 0xf0 && lead <= 0xf4) {
      more = 3;
      if (lead === 0xf0) low = 0x90;
      if (lead === 0xf4) high = 0x8f;
    } else if (lead >= 0x80) return index;
    for (let ahead = 1; ahead <= more; ahead += 1) {
      const byte = bytes[index + ahead];
      if (byte === undefined || byte < low || byte > high) return index;
      low = 0x80;
      high = 0xbf;
    }
    index += more + 1;
  }
  return -1;
};

const placeOfByte = (bytes: Uint8Array, index: number): FilePlace => {
  let line = 1;
  let lineStart = 0;
  for (let at = 0; at < index; at += 1) {
    if (bytes[at] === 0x0a) {
      line += 1;
      lineStart = at + 1;
    }
  }
  return { line, column: [...new TextDecoder().decode(bytes.subarray(lineStart, index))].length + 1 };
};

/** The encoding an XML declaration names, or null. The declaration itself is ASCII in every encoding read here. */
const declaredEncoding = (bytes: Uint8Array): string | null => {
  const head = String.fromCharCode(...bytes.subarray(0, 300));
  return /^\s*<\?xml\s[^>]*?encoding\s*=\s*["']([A-Za-z0-9._-]+)["']/.exec(head)?.[1] ?? null;
};

const ASCII_NAMES = /^(utf-?8|us-ascii|ascii)$/i;

const strictUtf8 = (bytes: Uint8Array): string | null => {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return null;
  }
};

/** Decodes a whole file. Throws RefusedError for binary files and bytes that are not what they should be. */
export const decode = (bytes: Uint8Array, name: string, isXml: boolean | null, dropped: DroppedList): Decoded => {
  const start: FilePlace = { line: 1, column: 1 };
  for (const [label, encoding, bom] of [
    ["utf-16le", "UTF-16 (little-endian)", [0xff, 0xfe]],
    ["utf-16be", "UTF-16 (big-endian)", [0xfe, 0xff]],
  ] as const) {
    if (!startsWith(bytes, ...bom)) continue;
    try {
      return { text: new TextDecoder(label, { fatal: true }).decode(bytes), encoding };
    } catch {
      throw new RefusedError(refuse.wrongEncoding(name, encoding, start));
    }
  }
  const kind = binaryKind(bytes);
  if (kind !== null) throw new RefusedError(refuse.binary(name, kind));
  const hasBom = startsWith(bytes, 0xef, 0xbb, 0xbf);
  const body = hasBom ? bytes.subarray(3) : bytes;
  const declared = hasBom ? null : declaredEncoding(body);
  if (declared !== null && isXml !== false && !ASCII_NAMES.test(declared)) {
    try {
      const decoder = new TextDecoder(/^utf-?16/i.test(declared) ? "utf-8" : declared, { fatal: true });
      return { text: decoder.decode(body), encoding: decoder.encoding === "utf-8" ? "UTF-8" : decoder.encoding };
    } catch (error) {
      if (error instanceof RangeError) throw new RefusedError(refuse.unknownEncoding(name, declared));
      throw new RefusedError(refuse.wrongEncoding(name, declared, start));
    }
  }
  const text = strictUtf8(body);
  if (text !== null) return { text, encoding: "UTF-8" };
  const badPlace = placeOfByte(body, firstBadByte(body));
  const looksLikeXml = isXml ?? /^\s*<[?!A-Za-z]/.test(String.fromCharCode(...body.subarray(0, 100)));
  if (hasBom || looksLikeXml) throw new RefusedError(refuse.wrongEncoding(name, "UTF-8", badPlace));
  dropped.add(
    "encoding: not UTF-8",
    "The bytes are not UTF-8, so the text was read as windows-1252 (Western European). Check letters with accents.",
    badPlace,
  );
  return { text: new TextDecoder("windows-1252").decode(body), encoding: "windows-1252 (guessed)" };
};
