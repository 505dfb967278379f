/** client/state/api.ts - asking the server, with every refusal as a value.
 *  May import: types of schema. Nothing here throws on an expected refusal or when the server is away. */
import type { Refusal } from "../../schema/api.ts";

export type Refused = Refusal["error"];
export type Answer<T> = { ok: true; value: T } | { ok: false; status: number; error: Refused };

const AWAY: Refused = {
  code: "server_away",
  sentence: "The server does not answer. Nothing was stored; see whether it still runs, then try again.",
};

/** GET, or POST when a body is given. A string or bytes go as they are, anything else as JSON. */
export async function ask<T>(path: string, body?: unknown, signal?: AbortSignal): Promise<Answer<T>> {
  const raw = typeof body === "string" || body instanceof Blob;
  const init: RequestInit =
    body === undefined
      ? { signal: signal ?? null }
      : {
          method: "POST",
          headers: { "content-type": raw ? "application/octet-stream" : "application/json" },
          body: raw ? body : JSON.stringify(body),
          signal: signal ?? null,
        };
  return send(path, init, (text) => JSON.parse(text) as T);
}

/** GET of something that is no JSON: a text as it is. */
export function readText(path: string, signal: AbortSignal): Promise<Answer<string>> {
  return send(path, { signal }, (text) => text);
}

async function send<T>(path: string, init: RequestInit, read: (text: string) => T): Promise<Answer<T>> {
  let response: Response;
  let text: string;
  try {
    response = await fetch(path, init);
    text = await response.text();
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") {
      return { ok: false, status: 0, error: { code: "stopped", sentence: "Stopped. Nothing was stored." } };
    }
    return { ok: false, status: 0, error: AWAY };
  }
  try {
    if (response.ok) return { ok: true, value: read(text) };
    return { ok: false, status: response.status, error: (JSON.parse(text) as Refusal).error };
  } catch {
    return {
      ok: false,
      status: response.status,
      error: {
        code: "not_json",
        sentence: `The server answered ${response.status} with something unreadable. Try again.`,
      },
    };
  }
}
