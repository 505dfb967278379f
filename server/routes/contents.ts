/** server/routes/contents.ts - that the server is there, and what the store holds.
 *  May import: express types, server/store, siblings of server. */
import type { Request, Response } from "express";
import type { Desk } from "../desk.ts";
import { readContents } from "../store/index.ts";

export const sendHealth = (desk: Desk) => (_request: Request, response: Response) => {
  response.json({ ok: true, store: desk.store.path });
};

export const sendContents = (desk: Desk) => (_request: Request, response: Response) => {
  response.json(readContents(desk.store));
};
