/** server/publish/write/link-target.ts - where a link of a paper may lead: to a place in it, to the window, to the web.
 *  May import: siblings. Anything else ("javascript:" and its kin) is no link and is printed as the words alone. */
import { bare } from "./paper-places.ts";

export type LinkTarget =
  | { to: "place"; name: string }
  /** A room of the window, on the machine the paper is served from: "/read/…". */
  | { to: "window"; path: string }
  | { to: "web"; address: string };

export function linkTarget(to: string | null): LinkTarget | null {
  if (to === null) return null;
  if (to.startsWith("#")) return { to: "place", name: bare(to) };
  if (/^\/(?![/\\])[^\s\\]*$/u.test(to)) return { to: "window", path: to };
  return /^https?:\/\/[^\s\\]+$/iu.test(to) ? { to: "web", address: to } : null;
}
