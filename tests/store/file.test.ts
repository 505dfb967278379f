/** tests/store/file.test.ts - the file itself: its tables, migrations, and files that are not taken. Rules S1-S7. */
import { readFileSync, writeFileSync } from "node:fs";
import Database from "better-sqlite3";
import { describe, expect, test } from "vitest";
import { KINDS, REFERENCES, TIES } from "../../schema/record.ts";
import { errorsAsMarkdown } from "../../server/errors.ts";
import { getAttachment, openStore, putAttachment } from "../../server/store/index.ts";
import { schemaText, shippedMigrations } from "../../server/store/migrate.ts";
import { temporaryStorePath } from "../kit/temporary-store-path.ts";
import { bookStore, emptyStore } from "./store-builders.ts";

const RENEW =
  "Renew it with: PASSAGEWORK_RENEW=1 npx vitest run tests/store/file.test.ts --config tests/vitest.config.ts";

/** Compares with a committed file; with PASSAGEWORK_RENEW set, writes it first. */
function expectCommitted(name: string, text: string): void {
  const file = new URL(`../../server/${name}`, import.meta.url);
  if (process.env.PASSAGEWORK_RENEW === "1") writeFileSync(file, text);
  expect(readFileSync(file, "utf8").replaceAll("\r\n", "\n"), `server/${name} is out of date. ${RENEW}`).toBe(text);
}

const columnsOf = (table: string): string[] =>
  (emptyStore().db.pragma(`table_info("${table}")`) as { name: string }[]).map(({ name }) => name);

const snake = (name: string) => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

describe("[S1] tables", () => {
  test.each(KINDS)("%s has a column for every field of its schema, and the version", async (kind) => {
    const { RECORDS } = await import("../../schema/record.ts");
    const schema = RECORDS[kind] as unknown as { options?: { shape: object }[]; shape?: object };
    const shapes = schema.options?.map(({ shape }) => shape) ?? [schema.shape ?? {}];
    const fields = new Set(shapes.flatMap((shape) => Object.keys(shape)));
    expect(columnsOf(snake(kind)).sort()).toEqual([...[...fields].map(snake), "row_version"].sort());
  });

  test("every reference is a deferred foreign key with an index, and every tie has one", () => {
    const { db } = emptyStore();
    const indexed = (table: string) =>
      (db.pragma(`index_list("${table}")`) as { name: string }[]).map(({ name }) =>
        (db.pragma(`index_info("${name}")`) as { name: string }[]).map((column) => column.name).join(" "),
      );
    for (const kind of KINDS) {
      const keys = db.pragma(`foreign_key_list("${snake(kind)}")`) as { from: string; table: string }[];
      const wanted = Object.entries(REFERENCES[kind] ?? {}).map(([field, { to }]) => `${snake(field)} ${snake(to)}`);
      expect(keys.map(({ from, table }) => `${from} ${table}`).sort(), kind).toEqual(wanted.sort());
      for (const field of Object.keys(REFERENCES[kind] ?? {})) expect(indexed(snake(kind))).toContain(snake(field));
      const tie = TIES[kind];
      if (tie !== undefined) expect(indexed(snake(kind))).toContain(`${snake(tie.kind)} ${snake(tie.id)}`);
    }
    expect(db.prepare("SELECT sql FROM sqlite_schema WHERE sql LIKE '%REFERENCES%'").pluck().all().join()).not.toMatch(
      /REFERENCES "(?!changes)\w+" \("id"\)(?! DEFERRABLE INITIALLY DEFERRED)/,
    );
  });

  test("[S4] the tables are those of the committed snapshot", () => {
    expectCommitted("store/schema-snapshot.sql", schemaText(emptyStore().db));
  });

  test("the page of refusals is printed from the table", () => {
    expectCommitted("errors.md", errorsAsMarkdown());
  });
});

test("[S7] foreign keys and WAL are on, and a full disk write is waited for", () => {
  const store = emptyStore(temporaryStorePath());
  expect(store.db.pragma("foreign_keys", { simple: true })).toBe(1);
  expect(store.db.pragma("journal_mode", { simple: true })).toBe("wal");
  expect(store.db.pragma("synchronous", { simple: true })).toBe(2);
  store.close();
});

describe("migrations", () => {
  const later = { number: 2, name: "002-later.sql", sql: 'CREATE TABLE "later" ("id" TEXT) STRICT' };
  const reopened = (first: ReturnType<typeof shippedMigrations>, second: ReturnType<typeof shippedMigrations>) => {
    const path = temporaryStorePath();
    const store = openStore(path, first);
    if (store.ok) store.value.close();
    const again = openStore(path, second);
    if (again.ok) again.value.close();
    return again.ok ? "opened" : again.refusal.error;
  };

  test("[S4] what is missing is run, once", () => {
    const ours = shippedMigrations();
    expect(reopened(ours, [...ours, later])).toBe("opened");
    expect(reopened([...ours, later], [...ours, later])).toBe("opened");
  });

  test("[S4] a gap is refused", () => {
    const gap = [...shippedMigrations(), { ...later, number: 3, name: "003-later.sql" }];
    expect(reopened(gap, gap)).toMatchObject({
      code: "migration_gap",
      sentence: expect.stringContaining("Expected migration 2; found 003-later.sql."),
    });
  });

  test("[S4] a migration that fails leaves nothing behind", () => {
    const path = temporaryStorePath();
    const broken = [
      ...shippedMigrations(),
      { ...later, sql: 'CREATE TABLE "later" ("id" TEXT) STRICT; SELEC nothing' },
    ];
    expect(() => openStore(path, broken)).toThrow("syntax error");
    const opened = openStore(path);
    expect(opened.ok).toBe(true);
  });

  test("[S5] one that was edited after it was shipped is refused", () => {
    const edited = shippedMigrations().map((one) => ({ ...one, sql: `${one.sql}\n-- a later thought` }));
    expect(reopened(shippedMigrations(), edited)).toMatchObject({
      code: "migration_edited",
      sentence: expect.stringContaining("Put it back as it was shipped, and write what is new as migration 2."),
    });
  });

  test("[S6] a store that is newer than the program is refused and left alone", () => {
    expect(reopened([...shippedMigrations(), later], shippedMigrations())).toMatchObject({
      code: "store_newer",
      sentence: expect.stringContaining("Update the program"),
    });
  });
});

describe("[S6] files that are not taken", () => {
  test("another program's database is left as it is", () => {
    const path = temporaryStorePath();
    const other = new Database(path);
    other.exec("CREATE TABLE recipes (id INTEGER)");
    other.close();
    const bytes = readFileSync(path);
    expect(openStore(path)).toMatchObject({ ok: false, refusal: { error: { code: "store_foreign" } } });
    expect(readFileSync(path).equals(bytes)).toBe(true);
  });

  test("a file that is no database is left as it is", () => {
    const path = temporaryStorePath();
    writeFileSync(path, "Dear diary, ".repeat(200));
    expect(openStore(path)).toMatchObject({ ok: false, refusal: { error: { code: "store_foreign" } } });
    expect(readFileSync(path, "utf8")).toMatch(/^Dear diary/);
  });

  test("a path below a file is refused", () => {
    const path = temporaryStorePath();
    writeFileSync(path, "x");
    expect(openStore(`${path}/store.sqlite`)).toMatchObject({
      ok: false,
      refusal: { error: { code: "store_unreadable" } },
    });
  });
});

test("a store is made with its folder, and keeps its rows and attachments when it is opened again", () => {
  const path = `${temporaryStorePath()}-folder/deep/store.sqlite`;
  const store = bookStore(path);
  const bytes = Uint8Array.from({ length: 256 }, (_, index) => index);
  const hash = putAttachment(store, { mediaType: "image/png", name: "a.png", bytes });
  expect(putAttachment(store, { mediaType: "text/plain", name: "b.txt", bytes })).toBe(hash);
  store.close();
  const again = emptyStore(path);
  // SHA-256 of the bytes 0 to 255, as any tool prints it.
  expect(hash).toBe("40aff2e9d2d8922e47afd4648e6967497158785fbd1da870e7110266bf944880");
  const kept = getAttachment(again, hash);
  expect(kept).toMatchObject({ mediaType: "image/png", name: "a.png", size: 256 });
  expect(new Uint8Array(kept?.bytes ?? [])).toEqual(bytes);
  expect(getAttachment(again, "00")).toBeNull();
  again.close();
});
