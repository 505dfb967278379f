/** server/setup/dev.mjs - `npm run dev`: rebuilds the client on every change and restarts the server on every change.
 *  Reload the window to see it. Everything after `--` is passed on to the server. Control-C stops both. */
import { spawn } from "node:child_process";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { ensureClient, viteBuild } from "./client-build.mjs";
import { ensureDependencies } from "./dependencies.mjs";
import { requireNode } from "./node-version.mjs";

requireNode();
const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
ensureDependencies(root);
ensureClient(root);

const tsx = join(root, "node_modules", "tsx", "dist", "cli.mjs");
const children = [
  spawn(process.execPath, [...viteBuild(root), "--watch"], { cwd: root, stdio: "inherit" }),
  spawn(process.execPath, [tsx, "watch", join(root, "server", "main.ts"), ...process.argv.slice(2)], {
    cwd: root,
    stdio: "inherit",
  }),
];
for (const child of children) child.on("exit", () => stop());
process.on("SIGINT", () => stop());
process.on("SIGTERM", () => stop());

/** Ends what still runs; ending one part ends all. */
function stop() {
  for (const child of children) child.kill("SIGTERM");
}
