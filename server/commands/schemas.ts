/** server/commands/schemas.ts - writes the published JSON Schemas anew, after the types were changed.
 *  May import: server/publish, siblings. */
import { PUBLISHED, writeJsonSchemas } from "../publish/json-schemas.ts";
import { type Command, DONE } from "./command.ts";

export const schemas: Command = {
  name: "schemas",
  usage: "[--out FOLDER]",
  says: "Writes the published JSON Schemas (schema/published) from the types.",
  options: { out: { type: "string", says: "another folder to write them into" } },
  words: [0, 0],
  store: "untouched",
  run: ({ options, out }) => {
    const folder = typeof options.out === "string" ? options.out : PUBLISHED;
    out(`Written to ${folder}: ${writeJsonSchemas(folder).join(", ")}.`);
    return DONE;
  },
};
