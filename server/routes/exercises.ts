/** server/routes/exercises.ts - an exercise with all that bears on it, and its drill as a file.
 *  May import: express types, server/publish, server/store, siblings of server. */
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import { readDrillOptions } from "../publish/drill-options.ts";
import { drillJson } from "../publish/publish-drill.ts";
import { readBundle } from "../store/index.ts";

type WithId = Request<{ id: string }>;

export const sendExercise = (desk: Desk) => (request: WithId, response: Response) => {
  answer(response, readBundle(desk.store, { exercise: request.params.id }));
};

export const sendDrillJson = (desk: Desk) => (request: WithId, response: Response) => {
  const options = readDrillOptions(request.query);
  const bytes = options.ok ? drillJson(desk.store, request.params.id, options.value) : options;
  if (!bytes.ok) return answer(response, bytes);
  response.type("application/json").send(Buffer.from(bytes.value));
};
