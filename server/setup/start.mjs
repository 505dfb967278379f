/** server/setup/start.mjs - `npm start`: installs what is missing, builds the client when it changed, runs the server.
 *  Everything after `--` is passed on to the server. Plain JavaScript, because it runs before anything is installed.
 *  The server runs in this same process, so that stopping the one stops the other. */
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { ensureClient } from "./client-build.mjs";
import { ensureDependencies } from "./dependencies.mjs";
import { requireNode } from "./node-version.mjs";

requireNode();
const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
ensureDependencies(root);
ensureClient(root);

const main = join(root, "server", "main.ts");
process.argv[1] = main;
const { register } = await import("tsx/esm/api");
register();
await import(pathToFileURL(main).href);
