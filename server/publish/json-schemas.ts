/** server/publish/json-schemas.ts - the types of everything stored or exchanged as JSON Schemas, for programs that are
 *  not this one. May import: schema, server/paths, Node's own modules. The files in schema/published/ are committed, and
 *  a test keeps them current. What zod checks beyond the shape ("stated needs words") cannot be said in a JSON Schema and
 *  is left out. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { z } from "zod";
import { Act } from "../../schema/act.ts";
import { ChangeRequest } from "../../schema/change.ts";
import { Citation, Drill, DrillAction, DrillCrux, DrillElement, DrillValue } from "../../schema/drill.ts";
import { Guard } from "../../schema/guard.ts";
import { Day, Id, Name, Rank, Words } from "../../schema/id.ts";
import { ImportedFile } from "../../schema/imported.ts";
import { KINDS, RECORDS } from "../../schema/record.ts";
import { Reference } from "../../schema/reference.ts";
import { Basis, ReadingValue, Support, slotOf } from "../../schema/slot.ts";
import { VALUE_KINDS } from "../../schema/values.ts";
import { repoRoot } from "../paths.ts";

export const PUBLISHED = join(repoRoot, "schema", "published");

/** Rows by the name of their table. */
const Tables = z.strictObject(Object.fromEntries(KINDS.map((kind) => [kind, z.array(RECORDS[kind]).optional()])));

const FILES = {
  "drill.schema.json": { title: "A ridden drill", type: Drill },
  "record.schema.json": { title: "Rows of the store, by table", type: Tables },
  "change.schema.json": { title: "A change sent to the store", type: ChangeRequest },
  "imported.schema.json": { title: "A text that was read and is not stored yet", type: ImportedFile },
} as const;

/** Types that are named in the files instead of being spelt out wherever they are used. */
function namedTypes() {
  const names = z.registry<{ id: string }>();
  const named: Record<string, z.ZodType> = {
    ...{ Id, Rank, Day, Words, Name, Reference, Guard, Basis, Support, ReadingValue, Act },
    ...{ Citation, DrillValue, DrillAction, DrillCrux, DrillElement },
    ...RECORDS,
    ...Object.fromEntries(VALUE_KINDS.map((kind) => [`slot-${kind}`, slotOf(kind)])),
  };
  for (const [id, type] of Object.entries(named)) names.add(type, { id });
  return names;
}

/** Each file's name and text. */
export function jsonSchemas(): { name: string; text: string }[] {
  const metadata = namedTypes();
  return Object.entries(FILES).map(([name, { title, type }]) => {
    const made = z.toJSONSchema(type, { io: "input", reused: "ref", metadata });
    const { $schema, ...rest } = made;
    const head = { $schema, $id: `urn:passagework:schema:${name.replace(".schema.json", "")}:1`, title };
    return { name, text: `${JSON.stringify({ ...head, ...rest }, null, 2)}\n` };
  });
}

/** Writes the files into `folder`, which is made when it is not there; gives back their names. */
export function writeJsonSchemas(folder: string = PUBLISHED): string[] {
  mkdirSync(folder, { recursive: true });
  return jsonSchemas().map(({ name, text }) => {
    writeFileSync(join(folder, name), text);
    return name;
  });
}
