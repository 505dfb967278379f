/** server/news-board.ts - who listens for changes, and what they are told.
 *  May import: schema types. */
import type { ChangeNews } from "../schema/api.ts";

export type NewsListener = (news: ChangeNews) => void;

export class NewsBoard {
  readonly #listeners = new Set<NewsListener>();
  readonly #closers = new Set<() => void>();

  /** `close` is called when the server stops. Gives the function that stops listening. */
  listen(listener: NewsListener, close: () => void): () => void {
    this.#listeners.add(listener);
    this.#closers.add(close);
    return () => {
      this.#listeners.delete(listener);
      this.#closers.delete(close);
    };
  }

  post(news: ChangeNews): void {
    for (const listener of [...this.#listeners]) listener(news);
  }

  /** Ends every listener's connection, so that the server can stop. */
  close(): void {
    for (const close of [...this.#closers]) close();
  }
}
