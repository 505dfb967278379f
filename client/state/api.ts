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
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch (error) {
    if (error instanceof DOMException && error.name === "AbortError") {
      return { ok: false, status: 0, error: { code: "stopped", sentence: "Stopped. Nothing was stored." } };
    }
    return { ok: false, status: 0, error: AWAY };
  }
  const text = await response.text();
  try {
    const value: unknown = JSON.parse(text);
    if (response.ok) return { ok: true, value: value as T };
    return { ok: false, status: response.status, error: (value as Refusal).error };
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
