/** server/routes/imports.ts - a file looked at before anything is stored, and a file brought in.
 *  May import: express types, zod, schema, server/import, siblings of server. */
import type { Request, Response } from "express";
import { z } from "zod";
import { ImportOptions } from "../../schema/api.ts";
import { IMPORT_LIMIT_BYTES } from "../../schema/imported.ts";
import { answer } from "../answer.ts";
import { type Desk, tell } from "../desk.ts";
import { done, type Outcome, refused } from "../errors.ts";
import { acceptImport } from "../import/accept.ts";
import { codedRefusal } from "../import/coded-refusal.ts";
import { readImport } from "../import/read-import.ts";
import { refuse } from "../import/refusals.ts";
import { checked, parseJson, readBytes } from "../read-body.ts";

const PreviewQuery = z.strictObject({
  name: z.string().trim().min(1).max(500),
  format: z.enum(["tei", "plain", "markdown"]).optional(),
});

export const previewFile = () => async (request: Request, response: Response) => {
  const query = checked(request.query, PreviewQuery, "query");
  const bytes = query.ok ? await fileBytes(request, query.value.name) : query;
  if (!query.ok || !bytes.ok) return answer(response, bytes as Outcome<never>);
  const { name, format } = query.value;
  const read = readImport(bytes.value, { name, ...(format && { format }) });
  answer(response, read.ok ? done(read.file) : codedRefusal(read.refusal));
};

export const acceptFile = (desk: Desk) => async (request: Request, response: Response) => {
  const options = importOptions(request.query.options);
  const bytes = options.ok ? await fileBytes(request, options.value.name) : options;
  if (!options.ok || !bytes.ok) return answer(response, bytes as Outcome<never>);
  const accepted = acceptImport(desk.store, bytes.value, options.value, { now: desk.now() });
  answer(response, accepted.ok ? done(accepted.value.imported) : accepted);
  if (accepted.ok) tell(desk, options.value, accepted.value.written);
};

function importOptions(text: unknown): Outcome<ImportOptions> {
  if (typeof text !== "string") {
    return refused(
      "body_invalid",
      "Expected the options of the import as JSON in the query: ?options={…}. Nothing was stored.",
    );
  }
  const json = parseJson(new TextEncoder().encode(text));
  return json.ok ? checked(json.value, ImportOptions, "options") : json;
}

/** The bytes as they are; forms and JSON are sent by mistake. */
async function fileBytes(request: Request, name: string): Promise<Outcome<Uint8Array>> {
  const type = request.headers["content-type"] ?? "";
  if (/^(application\/json|multipart\/|application\/x-www-form-urlencoded)/i.test(type)) {
    request.resume();
    const sentence = `Expected the bytes of the file as application/octet-stream; got “${type}”. Send the file itself.`;
    return refused("media_type_wrong", sentence);
  }
  return readBytes(request, IMPORT_LIMIT_BYTES, (size) => codedRefusal(refuse.tooLarge(name, size)));
}
