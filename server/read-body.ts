/** server/read-body.ts - the body of a request: its bytes up to a limit, or a value checked against its schema.
 *  May import: Node's own modules, express types, zod, server/errors, server/store. Nothing is stored before a body is
 *  whole and right. */
import type { Request } from "express";
import type { z } from "zod";
import { done, type Outcome, refused } from "./errors.ts";
import { problemsOf, refuseFor } from "./store/index.ts";

/** Largest JSON body, in bytes. */
export const JSON_LIMIT_BYTES = 20 * 1024 * 1024;

/** How much more of a body that is too large is read and thrown away, so that the refusal reaches its sender. */
const DISCARD_LIMIT_BYTES = 1024 * 1024 * 1024;

/** All bytes of the body. `tooLarge` makes the refusal from the size known so far, in bytes. */
export async function readBytes(
  request: Request,
  limit: number,
  tooLarge: (bytes: number) => Outcome<never>,
): Promise<Outcome<Uint8Array>> {
  const declared = Number(request.headers["content-length"] ?? 0);
  const chunks: Buffer[] = [];
  let size = 0;
  try {
    for await (const chunk of request as AsyncIterable<Buffer>) {
      size += chunk.length;
      if (size > limit + DISCARD_LIMIT_BYTES) break;
      if (size > limit || declared > limit) chunks.length = 0;
      else chunks.push(chunk);
    }
  } catch {
    return refused(
      "body_incomplete",
      "The request ended before its body was whole. Nothing was stored; send it again.",
    );
  }
  return size > limit ? tooLarge(Math.max(size, declared)) : done(Buffer.concat(chunks));
}

/** The body as JSON in UTF-8, checked. Every issue is told with its path in the body. */
export async function readJson<T>(request: Request, schema: z.ZodType<T>): Promise<Outcome<T>> {
  const type = request.headers["content-type"] ?? "";
  if (!/^application\/json\s*(;|$)/i.test(type)) {
    const came = type === "" ? "no content type" : `“${type}”`;
    request.resume();
    return refused(
      "media_type_wrong",
      `Expected JSON with the content type application/json; got ${came}. Send it so.`,
    );
  }
  const bytes = await readBytes(request, JSON_LIMIT_BYTES, jsonTooLarge);
  if (!bytes.ok) return bytes;
  const json = parseJson(bytes.value);
  return json.ok ? checked(json.value, schema, "") : json;
}

function jsonTooLarge(bytes: number): Outcome<never> {
  const megabytes = (count: number) => Math.ceil(count / (1024 * 1024));
  return refused(
    "body_too_large",
    `The body has ${megabytes(bytes)} MB; at most ${megabytes(JSON_LIMIT_BYTES)} MB of JSON are read. Nothing was stored; send it in parts.`,
  );
}

/** A value against its schema; `at` is the path of the value, "" for a whole body. */
export function checked<T>(value: unknown, schema: z.ZodType<T>, at: string): Outcome<T> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return done(parsed.data);
  const problems = problemsOf(parsed.error, at, "body_invalid");
  return refuseFor(problems.map((problem) => (problem.where === "" ? { ...problem, where: "the body" } : problem)));
}

/** JSON from bytes; what is wrong with it is told with line and column, both from 1. */
export function parseJson(bytes: Uint8Array): Outcome<unknown> {
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return refused("body_not_json", "Expected JSON in UTF-8; the bytes are in another encoding. Nothing was stored.");
  }
  try {
    return done(JSON.parse(text) as unknown);
  } catch (error) {
    const before = text.slice(0, breakOff(text, error)).split("\n");
    const place = `line ${before.length}, column ${(before.at(-1)?.length ?? 0) + 1}`;
    const sentence =
      text.trim() === ""
        ? "Expected JSON; the body is empty. Nothing was stored."
        : `Expected JSON; the body cannot be read as JSON from ${place} on. Nothing was stored; mend that place and send it again.`;
    return refused("body_not_json", sentence, { issues: [{ where: place, sentence: "The JSON breaks off here." }] });
  }
}

/** Where the text stops being JSON, in UTF-16 units from 0. Not every engine says it of every error; where it does not,
 *  the longest beginning is sought that could still become JSON. */
function breakOff(text: string, error: unknown): number {
  const told = positionIn(error);
  if (told !== null) return told;
  let [fits, breaks] = [0, text.length + 1];
  while (breaks - fits > 1) {
    const middle = Math.floor((fits + breaks) / 2);
    if (mayGoOn(text.slice(0, middle))) fits = middle;
    else breaks = middle;
  }
  return fits;
}

function positionIn(error: unknown): number | null {
  const position = /position (\d+)/.exec(error instanceof Error ? error.message : "")?.[1];
  return position === undefined ? null : Number(position);
}

/** Whether nothing is wrong with the beginning of a JSON text but that it ends too soon. */
function mayGoOn(beginning: string): boolean {
  try {
    JSON.parse(beginning);
    return true;
  } catch (error) {
    const position = positionIn(error);
    if (position === null) return /end of JSON input/.test(error instanceof Error ? error.message : "");
    return position >= beginning.length || /^Unterminated string/.test(error instanceof Error ? error.message : "");
  }
}
