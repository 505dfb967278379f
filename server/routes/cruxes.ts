/** server/routes/cruxes.ts - what was decided of a crux.
 *  May import: express types, server/store, siblings of server. */
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import { refused } from "../errors.ts";
import { readDecisions, readRow } from "../store/index.ts";

export const sendDecisions = (desk: Desk) => (request: Request<{ id: string }>, response: Response) => {
  const { id } = request.params;
  const decisions = readDecisions(desk.store, id);
  if (decisions.length > 0 || readRow(desk.store, "cruxes", id) !== null) {
    response.json(decisions);
    return;
  }
  const sentence = `There is no crux with the id ${id}. Load the page again: it may have been removed.`;
  answer(response, refused("row_unknown", sentence));
};
