/** server/routes/changes.ts - writing, taking back, and the history.
 *  May import: express types, zod, schema, server/store, siblings of server. */
import type { Request, Response } from "express";
import { z } from "zod";
import { UndoRequest } from "../../schema/api.ts";
import { ChangeRequest } from "../../schema/change.ts";
import { answer } from "../answer.ts";
import { type Desk, tell } from "../desk.ts";
import { refused } from "../errors.ts";
import { checked, readJson } from "../read-body.ts";
import { readHistory, readRow, undoChange, writeChange } from "../store/index.ts";

export const takeChange = (desk: Desk) => async (request: Request, response: Response) => {
  const body = await readJson(request, ChangeRequest);
  if (!body.ok) return answer(response, body);
  const written = writeChange(desk.store, body.value, { now: desk.now() });
  answer(response, written);
  if (written.ok) tell(desk, body.value, written.value);
};

export const takeUndo = (desk: Desk) => async (request: Request<{ id: string }>, response: Response) => {
  const body = await readJson(request, UndoRequest);
  if (!body.ok) return answer(response, body);
  const written = undoChange(desk.store, { ...body.value, undoes: request.params.id }, { now: desk.now() });
  answer(response, written);
  if (written.ok) tell(desk, body.value, written.value);
};

const HistoryQuery = z.strictObject({
  work: z.uuid().optional(),
  before: z.coerce.number().int().min(1).optional(),
});

export const sendHistory = (desk: Desk) => (request: Request, response: Response) => {
  const query = checked(request.query, HistoryQuery, "query");
  if (!query.ok) return answer(response, query);
  const { work, before } = query.value;
  if (work !== undefined && readRow(desk.store, "works", work) === null) {
    const sentence = `There is no work with the id ${work}. Load the page again: it may have been removed.`;
    return answer(response, refused("row_unknown", sentence));
  }
  response.json(readHistory(desk.store, { ...(work && { work }), ...(before && { before }) }));
};
