/** server/store/open-store.ts - opens the one file that holds everything, and keeps its prepared statements.
 *  May import: Node's own modules, better-sqlite3, siblings, server/errors. Keeps rules S4-S7 (server/store/RULES.md). */
import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import Database from "better-sqlite3";
import { done, type Outcome, refused } from "../errors.ts";
import { type Migration, migrate, shippedMigrations } from "./migrate.ts";

/** An open store. Only files of server/store touch `db` and `prepare`; others hand the store about and close it. */
export interface Store {
  readonly path: string;
  readonly db: Database.Database;
  /** A statement, prepared once a store. */
  prepare(sql: string): Database.Statement;
  close(): void;
}

/** How long a writer waits for another program that is writing, in milliseconds. */
const BUSY_TIMEOUT_MS = 5000;

/** Opens the store at `path`, makes it and its folder when it is not there, and brings it up to date. ":memory:" gives
 *  a store that is gone when it is closed. `migrations` is given only by tests. */
export function openStore(path: string, migrations: readonly Migration[] = shippedMigrations()): Outcome<Store> {
  let db: Database.Database | undefined;
  try {
    if (path !== ":memory:") mkdirSync(dirname(path), { recursive: true });
    db = new Database(path, { timeout: BUSY_TIMEOUT_MS });
    db.pragma("foreign_keys = ON");
    const migrated = migrate(db, migrations);
    if (!migrated.ok) {
      db.close();
      return migrated;
    }
    // Only now: a file of another program stays as it was.
    db.pragma("journal_mode = WAL");
    db.pragma("synchronous = FULL");
    return done(new OpenStore(path, db));
  } catch (error) {
    db?.close();
    return storeError(error, path);
  }
}

class OpenStore implements Store {
  readonly #statements = new Map<string, Database.Statement>();

  constructor(
    readonly path: string,
    readonly db: Database.Database,
  ) {}

  prepare(sql: string): Database.Statement {
    const known = this.#statements.get(sql);
    if (known !== undefined) return known;
    const statement = this.db.prepare(sql);
    this.#statements.set(sql, statement);
    return statement;
  }

  close(): void {
    this.db.close();
  }
}

/** The refusal for an error of the database or the disk that a person can do something about. Throws all others on. */
export function storeError(error: unknown, path: string): ReturnType<typeof refused> {
  const code = typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";
  if (code === "SQLITE_NOTADB" || code === "SQLITE_CORRUPT") {
    return refused(
      code === "SQLITE_NOTADB" ? "store_foreign" : "store_damaged",
      `Expected a Passagework store at ${path}; the file cannot be read as one. Name another file, or put back the last good copy; this one was left as it is.`,
    );
  }
  if (code.startsWith("SQLITE_BUSY")) {
    return refused("store_busy", `Another program holds the store ${path}. Nothing was stored; try again in a moment.`);
  }
  if (code === "SQLITE_FULL" || code === "ENOSPC") {
    return refused("store_full", `There is no room left on the disk for ${path}. Nothing was stored; make room first.`);
  }
  const unreadable = ["SQLITE_CANTOPEN", "SQLITE_READONLY", "EACCES", "EPERM", "EROFS", "ENOTDIR", "EEXIST"];
  if (unreadable.some((start) => code.startsWith(start))) {
    return refused(
      "store_unreadable",
      `The store ${path} cannot be opened for writing (${code}). Check that the folder is there and that you may write in it.`,
    );
  }
  throw error;
}
