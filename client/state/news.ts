/** client/state/news.ts - hears of changes made in other windows and fetches what they touched. */
import type { ChangeNews } from "../../schema/api.ts";
import { loadContents, refreshPassage } from "./passage.ts";
import { isOwn, writing } from "./write.ts";

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
    const take = () => {
      void loadContents();
      // Rows fetched now would lack what is still on its way from here.
      if (stale && writing.value > 0) {
        waiting = setTimeout(take, 150);
        return;
      }
      if (stale) void refreshPassage();
      stale = false;
    };
    waiting = setTimeout(take, 150);
  });
}
