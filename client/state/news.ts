/** client/state/news.ts - hears of changes made in other windows and fetches what they touched. */
import type { ChangeNews } from "../../schema/api.ts";
import { loadContents, refreshPassage } from "./passage.ts";
import { isOwn } from "./write.ts";

let waiting: ReturnType<typeof setTimeout> | undefined;
let stale = false;

/** Starts listening; the browser reconnects by itself. */
export function listen(): void {
  const source = new EventSource("/api/events");
  source.addEventListener("message", (event) => {
    const news = JSON.parse(event.data as string) as ChangeNews;
    // Changes come in bursts (an import, a run of forms); one fetch for a burst is enough.
    stale ||= !isOwn(news.id);
    clearTimeout(waiting);
    waiting = setTimeout(() => {
      void loadContents();
      if (stale) void refreshPassage();
      stale = false;
    }, 150);
  });
}
