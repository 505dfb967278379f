/** tests/kit/running-app.ts - the app on a port of its own with a store file of its own, and how tests speak with it.
 *  Import it in test files only: it closes what it opened through vitest's hook when the file is done. */
import { request as httpRequest } from "node:http";
import { afterAll } from "vitest";
import type { Refusal } from "../../schema/api.ts";
import { buildApp } from "../../server/app.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { deskFor } from "../../server/desk.ts";
import { listen } from "../../server/listen.ts";
import { allRows, openStore, type Store } from "../../server/store/index.ts";
import { temporaryStorePath } from "./temporary-store-path.ts";

export const NOW = "2026-05-04T10:00:00.000Z";

export interface RunningApp {
  store: Store;
  file: string;
  /** Without a closing slash. */
  address: string;
}

const closers: (() => void)[] = [];
afterAll(() => {
  for (const close of closers.splice(0)) close();
});

/** With the invented book in it, unless `empty`. */
export async function runningApp({ empty = false } = {}): Promise<RunningApp> {
  const file = temporaryStorePath();
  const opened = openStore(file);
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  const store = opened.value;
  const desk = deskFor(store, () => NOW);
  if (!empty) loadDemo(store, NOW);
  const { server, address } = await listen(buildApp(desk), 0, 1);
  closers.push(() => {
    desk.news.close();
    server.closeAllConnections();
    server.close();
    store.close();
  });
  return { store, file, address: address.replace(/\/$/, "") };
}

export interface Sent {
  method?: string;
  headers?: Record<string, string>;
  body?: string | Uint8Array;
}

/** Sends exactly these headers; unlike `fetch` it lets a test say any Host and Origin. */
export function send(app: RunningApp, path: string, { method, headers = {}, body }: Sent = {}): Promise<Reply> {
  const { hostname, port } = new URL(app.address);
  return new Promise((resolve, reject) => {
    const sending = httpRequest(
      { agent: false, hostname, port, path, method: method ?? (body === undefined ? "GET" : "POST"), headers },
      (response) => {
        const chunks: Buffer[] = [];
        response.on("data", (chunk: Buffer) => chunks.push(chunk));
        response.on("end", () => {
          const bytes = Buffer.concat(chunks);
          resolve({ status: response.statusCode ?? 0, headers: response.headers, bytes, text: bytes.toString("utf8") });
        });
      },
    );
    sending.on("error", reject);
    sending.end(body);
  });
}

export interface Reply {
  status: number;
  headers: NodeJS.Dict<string | string[]>;
  bytes: Buffer;
  text: string;
}

export function sendJson(app: RunningApp, path: string, value: unknown): Promise<Reply> {
  return send(app, path, { headers: { "content-type": "application/json" }, body: JSON.stringify(value) });
}

export function refusalOf({ text }: Reply): Refusal["error"] {
  return (JSON.parse(text) as Refusal).error;
}

/** Everything the store holds, as text to compare; attachments are told by how many there are. */
export function storeAsText({ store }: RunningApp): string {
  const attachments = store.prepare('SELECT count(*) FROM "attachments"').pluck().get();
  const changes = store.prepare('SELECT count(*) FROM "changes"').pluck().get();
  return JSON.stringify([allRows(store), attachments, changes]);
}
