/** tests/publish/json-schemas.test.ts - the published JSON Schemas: current, valid, and true to what is exchanged. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import { describe, expect, test } from "vitest";
import { jsonSchemas, PUBLISHED } from "../../server/publish/json-schemas.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { smallWork } from "../drill/small-work.ts";

function validator(name: string) {
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  addFormats.default(ajv);
  return ajv.compile(JSON.parse(readFileSync(join(PUBLISHED, name), "utf8")));
}

describe("schema/published", () => {
  test.each(jsonSchemas().map(({ name, text }) => [name, text]))("%s is current", (name, text) => {
    const file = readFileSync(join(PUBLISHED, name), "utf8");
    expect(file === text, `Run \`npm run passagework -- schemas\` and commit ${name}.`).toBe(true);
  });

  test("holds nothing else", () => {
    expect(readdirSync(PUBLISHED).sort()).toEqual(
      jsonSchemas()
        .map(({ name }) => name)
        .sort(),
    );
  });

  test("a compiled drill fits drill.schema.json, and one with an unknown field does not", () => {
    const { rows, exercise } = smallWork();
    const drill = compileDrill(rows, exercise);
    const fits = validator("drill.schema.json");
    expect(fits(drill), JSON.stringify(fits.errors)).toBe(true);
    expect(fits({ ...drill, surprise: 1 })).toBe(false);
  });

  test("rows fit record.schema.json, by table", () => {
    const { rows } = smallWork();
    const tables = Object.fromEntries(
      Object.entries(rows).map(([kind, list]) => [kind, list.map(({ value }) => value)]),
    );
    const fits = validator("record.schema.json");
    expect(fits(tables), JSON.stringify(fits.errors?.slice(0, 3))).toBe(true);
    expect(fits({ ...tables, works: [{}] })).toBe(false);
  });
});
