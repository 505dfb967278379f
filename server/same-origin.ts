/** server/same-origin.ts - keeps other web pages away from the local server, and tells the browser to be strict.
 *  May import: express types, siblings. A page elsewhere may have the user's browser send requests here: it is known by
 *  its Origin, or, where it made its own name point at this machine, by its Host. */
import type { NextFunction, Request, Response } from "express";
import { answer } from "./answer.ts";
import { refused } from "./errors.ts";

const OWN_HOSTS = ["127.0.0.1", "localhost", "[::1]"];

/** What the window may load: its own files; fonts and pictures may be inside them. */
const WINDOW_POLICY = [
  "default-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "style-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'self'",
].join("; ");

export function strictHeaders(_request: Request, response: Response, next: NextFunction): void {
  response.set({
    "Content-Security-Policy": WINDOW_POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
  });
  next();
}

export function sameOriginOnly(request: Request, response: Response, next: NextFunction): void {
  const host = request.headers.host ?? "";
  const { origin } = request.headers;
  if (!OWN_HOSTS.includes(host.replace(/:\d+$/, "").toLowerCase())) {
    const sentence = `Expected a request to this machine (127.0.0.1 or localhost); it was sent to “${host}”. Open the address the program printed when it started.`;
    answer(response, refused("host_foreign", sentence));
  } else if (origin !== undefined && origin.toLowerCase() !== `http://${host.toLowerCase()}`) {
    const sentence = `A page of ${origin} asked. Only the window of this program, at http://${host}, may read or write here; nothing was done.`;
    answer(response, refused("origin_foreign", sentence));
  } else next();
}
