/** server/desk.ts - what every handler works with: the store, the clock, and the board that news is put on.
 *  May import: server/store, siblings. Handed about as one value; nothing here is global. */
import type { Written } from "../schema/api.ts";
import { NewsBoard } from "./news-board.ts";
import type { Store } from "./store/index.ts";

export interface Desk {
  readonly store: Store;
  /** Now, as ISO 8601 in UTC. */
  readonly now: () => string;
  readonly news: NewsBoard;
}

export function deskFor(store: Store, now = () => new Date().toISOString()): Desk {
  return { store, now, news: new NewsBoard() };
}

/** Tells all windows of a change that was written. */
export function tell(desk: Desk, request: { id: string; who: string }, written: Written): void {
  const touched = written.rows.map(({ kind, value }) => ({ kind, id: value.id }));
  desk.news.post({
    change: written.change,
    id: request.id,
    who: request.who,
    touched: [...touched, ...written.removed],
  });
}
