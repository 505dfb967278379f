/** tests/kit/running-app.ts - the whole server on a free port of this machine, with a store file of its own.
 *  Import it in test files only: it stops through vitest's hook when the file is done. */
import type { AddressInfo } from "node:net";
import { afterAll } from "vitest";
import { buildApp } from "../../server/app.ts";
import { deskFor } from "../../server/desk.ts";
import { openStore, type Store } from "../../server/store/index.ts";
import { temporaryStorePath } from "./temporary-store-path.ts";

export interface RunningApp {
  /** "http://127.0.0.1:PORT", without a slash at the end. */
  address: string;
  store: Store;
}

/** Opens an empty store and listens. Throws Error when the store cannot be opened. */
export async function startApp(): Promise<RunningApp> {
  const opened = openStore(temporaryStorePath());
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  const server = buildApp(deskFor(opened.value)).listen(0, "127.0.0.1");
  await new Promise((resolve) => server.once("listening", resolve));
  afterAll(() => {
    server.closeAllConnections();
    server.close();
  });
  return { address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`, store: opened.value };
}
