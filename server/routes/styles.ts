/** server/routes/styles.ts - the citation styles a paper can be asked for with, and files among them that cannot be used.
 *  May import: express types, server/publish, siblings of server. */
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import { done } from "../errors.ts";
import { listStyles, stylesFolderOf } from "../publish/styles/citation-styles.ts";

export const sendStyles = (desk: Desk) => (_request: Request, response: Response) => {
  const { styles, broken } = listStyles(stylesFolderOf(desk.store));
  answer(response, done({ styles: styles.map(({ name, inNotes }) => ({ name, inNotes })), broken }));
};
