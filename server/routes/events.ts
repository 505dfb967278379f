/** server/routes/events.ts - tells the open windows of every change, as server-sent events.
 *  May import: express types, siblings of server. */
import type { Request, Response } from "express";
import type { Desk } from "../desk.ts";

/** Often enough that nothing between window and server takes the connection for dead. */
const BEAT_MS = 25_000;

export const sendEvents = (desk: Desk) => (request: Request, response: Response) => {
  response.set({ "Content-Type": "text/event-stream", "Cache-Control": "no-store" });
  response.flushHeaders();
  response.write(": listening\n\n");
  const leave = desk.news.listen(
    (news) => response.write(`data: ${JSON.stringify(news)}\n\n`),
    () => response.end(),
  );
  const beat = setInterval(() => response.write(": beat\n\n"), BEAT_MS);
  request.on("close", () => {
    clearInterval(beat);
    leave();
  });
};
