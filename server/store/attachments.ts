/** server/store/attachments.ts - files kept in the store, each under the hash of its bytes.
 *  May import: Node's own modules, siblings in server/store. They are no rows: bytes never change, so there is no
 *  history to keep; a row that needs one names its hash. */
import { createHash } from "node:crypto";
import type { Store } from "./open-store.ts";

export interface Attachment {
  /** SHA-256 of the bytes, lower-case hex. */
  hash: string;
  mediaType: string;
  /** The name it came with; for people only. */
  name: string;
  /** In bytes. */
  size: number;
  bytes: Uint8Array;
}

/** Keeps the bytes and gives their hash. The same bytes are kept once, under the name they first came with. */
export function putAttachment(store: Store, file: Pick<Attachment, "mediaType" | "name" | "bytes">): string {
  const hash = createHash("sha256").update(file.bytes).digest("hex");
  store
    .prepare(
      `INSERT INTO "attachments" ("hash", "media_type", "name", "size", "bytes") VALUES (?, ?, ?, ?, ?)
       ON CONFLICT ("hash") DO NOTHING`,
    )
    .run(hash, file.mediaType, file.name, file.bytes.byteLength, file.bytes);
  return hash;
}

/** The attachment with that hash, or null. */
export function getAttachment(store: Store, hash: string): Attachment | null {
  const row = store
    .prepare(`SELECT "hash", "media_type" AS "mediaType", "name", "size", "bytes" FROM "attachments" WHERE "hash" = ?`)
    .get(hash);
  return (row as Attachment | undefined) ?? null;
}

export function hasAttachment(store: Store, hash: string): boolean {
  return store.prepare('SELECT 1 FROM "attachments" WHERE "hash" = ?').get(hash) !== undefined;
}
