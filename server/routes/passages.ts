/** server/routes/passages.ts - a passage with all that bears on it, and typing on its words.
 *  May import: express types, schema, server/store, siblings of server. */
import type { Request, Response } from "express";
import { Amendment } from "../../schema/api.ts";
import { answer } from "../answer.ts";
import { type Desk, tell } from "../desk.ts";
import { refused } from "../errors.ts";
import { readJson } from "../read-body.ts";
import { amendPassage, readBundle, readTextsAfter } from "../store/index.ts";

type WithId = Request<{ id: string }>;

export const sendPassage = (desk: Desk) => (request: WithId, response: Response) => {
  answer(response, readBundle(desk.store, { passage: request.params.id }));
};

/** Query: revision, and the number of the text the asker has. */
export const sendTexts = (desk: Desk) => (request: WithId, response: Response) => {
  const { revision, after } = request.query;
  const number = Number(after);
  if (typeof revision !== "string" || !Number.isInteger(number)) {
    const sentence = "The later texts of a passage are asked for with ?revision=ID&after=NUMBER. Say both.";
    return answer(response, refused("body_invalid", sentence));
  }
  response.json(readTextsAfter(desk.store, request.params.id, revision, number));
};

export const takeAmendment = (desk: Desk) => async (request: WithId, response: Response) => {
  const body = await readJson(request, Amendment);
  if (!body.ok) return answer(response, body);
  const written = amendPassage(desk.store, request.params.id, body.value, { now: desk.now() });
  answer(response, written);
  if (written.ok) tell(desk, body.value, written.value);
};
