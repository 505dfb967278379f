/** server/routes/works.ts - a work whole, and the letters with its open questions.
 *  May import: express types, server/publish, server/store, siblings of server. */
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import type { Outcome } from "../errors.ts";
import { LETTER_TYPES, publishLetter, readLetterAsk } from "../publish/publish-letter.ts";
import { readBundle } from "../store/index.ts";

type WithId = Request<{ id: string }>;

export const sendWork = (desk: Desk) => (request: WithId, response: Response) => {
  answer(response, readBundle(desk.store, { work: request.params.id }));
};

export const sendLetter = (desk: Desk) => async (request: WithId, response: Response) => {
  const ask = readLetterAsk(request.query);
  const bytes = ask.ok ? await publishLetter(desk.store, request.params.id, ask.value) : ask;
  if (!ask.ok || !bytes.ok) return answer(response, bytes as Outcome<never>);
  response.type(LETTER_TYPES[ask.value.as]).send(Buffer.from(bytes.value));
};
