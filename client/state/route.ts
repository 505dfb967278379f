/** client/state/route.ts - which room is open, kept in the address so that it can be gone back to and sent to somebody. */
import { computed, signal } from "@preact/signals";

export type Route =
  | { room: "read"; passage: string | null }
  | { room: "decide"; of: "exercise" | "work" | "term"; id: string | null }
  | { room: "ride"; exercise: string | null }
  | { room: "print"; of: "papers" | "editions"; id: string | null }
  | { room: "import"; work: string | null }
  | { room: "history"; work: string | null };

const path = signal(location.pathname);
window.addEventListener("popstate", () => {
  path.value = location.pathname;
});

export const route = computed<Route>(() => {
  const [room = "", id = "", more = ""] = path.value.split("/").filter(Boolean).map(decodeURIComponent);
  if (room === "decide") {
    return id === "work" || id === "term"
      ? { room, of: id, id: more || null }
      : { room, of: "exercise", id: id || null };
  }
  if (room === "ride") return { room, exercise: id || null };
  if (room === "print") {
    return id === "editions" ? { room, of: "editions", id: more || null } : { room, of: "papers", id: id || null };
  }
  if (room === "import") return { room, work: id || null };
  if (room === "history") return { room, work: id || null };
  return { room: "read", passage: id || null };
});

/** Opens an address of this window ("/read/ID"). `replace` leaves no step to go back to. */
export function go(to: string, replace = false): void {
  if (to === path.value) return;
  if (replace) history.replaceState(null, "", to);
  else history.pushState(null, "", to);
  path.value = to;
}

/** For links: opens in this window unless a new one is asked for. */
export function follow(event: MouseEvent): void {
  const link = (event.currentTarget as HTMLElement).getAttribute("href");
  if (link === null || event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return;
  event.preventDefault();
  go(link);
}
