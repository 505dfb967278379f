/** server/routes/passages.ts - a passage with all that bears on it, and typing on its words.
 *  May import: express types, schema, server/store, siblings of server. */
import type { Request, Response } from "express";
import { Amendment } from "../../schema/api.ts";
import { answer } from "../answer.ts";
import { type Desk, tell } from "../desk.ts";
import { readJson } from "../read-body.ts";
import { amendPassage, readBundle } from "../store/index.ts";

type WithId = Request<{ id: string }>;

export const sendPassage = (desk: Desk) => (request: WithId, response: Response) => {
  answer(response, readBundle(desk.store, { passage: request.params.id }));
};

export const takeAmendment = (desk: Desk) => async (request: WithId, response: Response) => {
  const body = await readJson(request, Amendment);
  if (!body.ok) return answer(response, body);
  const written = amendPassage(desk.store, request.params.id, body.value, { now: desk.now() });
  answer(response, written);
  if (written.ok) tell(desk, body.value, written.value);
};
