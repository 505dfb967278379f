/** server/store/migrate.ts - brings a store file to the form this program works with, and refuses what it cannot.
 *  May import: Node's own modules, better-sqlite3, server/errors. Keeps rules S4-S6 (server/store/RULES.md).
 *  Migrations are numbered from 1; the store keeps number, name and hash of each one it has been through. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Database } from "better-sqlite3";
import { done, type Outcome, refused } from "../errors.ts";

export interface Migration {
  number: number;
  /** File name: "001-first.sql". */
  name: string;
  sql: string;
}

/** Tells our files from other SQLite files: "Pswk" as a number. */
const APPLICATION_ID = 0x5073776b;

const folder = join(dirname(fileURLToPath(import.meta.url)), "migrations");

/** The program's own migrations, in order. */
export function shippedMigrations(): Migration[] {
  const names = readdirSync(folder).filter((name) => name.endsWith(".sql"));
  return names.sort().map((name) => ({
    number: Number.parseInt(name, 10),
    name,
    // A checkout may turn line ends; the hash must not see that.
    sql: readFileSync(join(folder, name), "utf8").replaceAll("\r\n", "\n"),
  }));
}

/** Runs the migrations the store has not been through, all in one transaction; gives how many ran. */
export function migrate(db: Database, migrations: readonly Migration[]): Outcome<number> {
  const gap = findGap(migrations);
  if (gap !== null) return refused("migration_gap", gap);
  const run = db.transaction((): Outcome<number> => {
    const applicationId = db.pragma("application_id", { simple: true });
    const tables = db.prepare("SELECT count(*) FROM sqlite_schema WHERE type = 'table'").pluck().get();
    if (applicationId !== APPLICATION_ID && tables !== 0) {
      return refused(
        "store_foreign",
        `Expected a Passagework store at ${db.name}; found another program's database. Name another file; this one was left as it is.`,
      );
    }
    if (tables === 0) {
      db.pragma(`application_id = ${APPLICATION_ID}`);
      db.exec(
        'CREATE TABLE "migrations" ("number" INTEGER PRIMARY KEY, "name" TEXT NOT NULL, "hash" TEXT NOT NULL) STRICT',
      );
    }
    const stored = db.prepare('SELECT "number", "name", "hash" FROM "migrations" ORDER BY "number"').all() as {
      number: number;
      name: string;
      hash: string;
    }[];
    const newest = stored.at(-1);
    if (newest !== undefined && newest.number > migrations.length) {
      return refused(
        "store_newer",
        `The store ${db.name} was written by a newer version of the program (it has been through ${newest.name}; this version knows ${migrations.length} of them). Update the program, then open it again; nothing was changed.`,
      );
    }
    for (const { number, name, hash } of stored) {
      const ours = migrations[number - 1];
      if (ours !== undefined && (ours.name !== name || hashOf(ours) !== hash)) {
        return refused(
          "migration_edited",
          `Migration ${number} is not what it was when the store ${db.name} went through it (then ${name}, now ${ours.name}). Put it back as it was shipped, and write what is new as migration ${migrations.length + 1}.`,
        );
      }
    }
    const insert = db.prepare('INSERT INTO "migrations" ("number", "name", "hash") VALUES (?, ?, ?)');
    const missing = migrations.slice(stored.length);
    for (const migration of missing) {
      db.exec(migration.sql);
      insert.run(migration.number, migration.name, hashOf(migration));
    }
    return done(missing.length);
  });
  return run.immediate();
}

/** All tables and indexes of the store as SQL text, sorted by name: what the snapshot test compares. */
export function schemaText(db: Database): string {
  const rows = db.prepare("SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY type DESC, name").pluck().all();
  return `${rows.join(";\n\n")};\n`;
}

function findGap(migrations: readonly Migration[]): string | null {
  for (const [index, { number, name }] of migrations.entries()) {
    if (number !== index + 1) {
      return `Expected migration ${index + 1}; found ${name}. Migrations are numbered 001, 002, 003 without gaps: put the missing file back into server/store/migrations.`;
    }
  }
  return null;
}

function hashOf(migration: Migration): string {
  return createHash("sha256").update(migration.sql).digest("hex");
}
