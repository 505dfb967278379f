/** server/routes/exercises.ts - an exercise with all that bears on it, and its drill as file and as page.
 *  May import: express types, server/publish, server/store, siblings of server. */
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import { readDrillOptions } from "../publish/drill-options.ts";
import { drillJson, drillPage } from "../publish/publish-drill.ts";
import { readBundle } from "../store/index.ts";

type WithId = Request<{ id: string }>;

/** The page brings its own style and fonts, runs nothing, loads nothing, and may stand in a frame of the window. */
const PAGE_POLICY = "default-src 'none'; style-src 'unsafe-inline'; font-src data:; frame-ancestors 'self'";

export const sendExercise = (desk: Desk) => (request: WithId, response: Response) => {
  answer(response, readBundle(desk.store, { exercise: request.params.id }));
};

export const sendDrillJson = (desk: Desk) => (request: WithId, response: Response) => {
  const options = readDrillOptions(request.query);
  const bytes = options.ok ? drillJson(desk.store, request.params.id, options.value) : options;
  if (!bytes.ok) return answer(response, bytes);
  response.type("application/json").send(Buffer.from(bytes.value));
};

export const sendDrillPage = (desk: Desk) => (request: WithId, response: Response) => {
  const options = readDrillOptions(request.query);
  const bytes = options.ok ? drillPage(desk.store, request.params.id, options.value) : options;
  if (!bytes.ok) return answer(response, bytes);
  response.set("Content-Security-Policy", PAGE_POLICY).type("text/html").send(Buffer.from(bytes.value));
};
