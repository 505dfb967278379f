/** server/routes/works.ts - a work whole, and the letters with its open questions.
 *  May import: express types, zod, server/publish, server/store, siblings of server. */
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import { readBundle } from "../store/index.ts";

type WithId = Request<{ id: string }>;

export const sendWork = (desk: Desk) => (request: WithId, response: Response) => {
  answer(response, readBundle(desk.store, { work: request.params.id }));
};
