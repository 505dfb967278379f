/** server/routes/find.ts - words searched through all works.
 *  May import: express types, schema, server/find, siblings of server. */
import type { Request, Response } from "express";
import { FindQuery } from "../../schema/find.ts";
import { answer } from "../answer.ts";
import type { Desk } from "../desk.ts";
import { finderOf } from "../find/finder.ts";
import { checked } from "../read-body.ts";

export const sendFound = (desk: Desk) => {
  const finder = finderOf(desk.store);
  return (request: Request, response: Response) => {
    const query = checked(request.query, FindQuery, "query");
    if (!query.ok) return answer(response, query);
    response.json(finder.find(query.value));
  };
};
