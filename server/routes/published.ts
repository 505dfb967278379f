/** server/routes/published.ts - the published JSON Schemas, as they lie in schema/published.
 *  May import: Node's own modules, express types, server/publish, siblings of server. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Request, Response } from "express";
import { answer } from "../answer.ts";
import { refused } from "../errors.ts";
import { PUBLISHED } from "../publish/json-schemas.ts";

export const sendPublishedSchema = () => (request: Request<{ name: string }>, response: Response) => {
  const { name } = request.params;
  const bytes = /^[a-z][a-z0-9-]*(\.[a-z0-9-]+)*\.json$/.test(name) ? readIfThere(join(PUBLISHED, name)) : null;
  if (bytes === null) {
    return answer(
      response,
      refused("address_unknown", `No schema “${name}” is published here. Try drill.schema.json.`),
    );
  }
  response.type("application/schema+json").send(bytes);
};

function readIfThere(path: string): Buffer | null {
  try {
    return readFileSync(path);
  } catch {
    return null;
  }
}
