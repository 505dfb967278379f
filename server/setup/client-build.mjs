/** server/setup/client-build.mjs - builds the client into dist/ when its sources have changed.
 *  May import: Node's own modules and siblings. The sources are compared by content, not by date: a fresh checkout has
 *  new dates and old content. */
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { complaintOf } from "./run-command.mjs";

/** Folders whose files end up in the built client. */
const SOURCE_FOLDERS = ["client", "schema", "shared"];

/** Makes sure that `root`/dist is built from the present sources. Ends the process when the build fails. */
export function ensureClient(root) {
  const stampFile = join(root, "dist", ".built-from");
  const wanted = sourceHash(root);
  if (readIfThere(stampFile) === wanted) return;
  console.log("Building the window.");
  const complaint = complaintOf(process.execPath, viteBuild(root), { cwd: root, env: { NODE_ENV: "production" } });
  if (complaint !== null) {
    console.error(`${complaint}\n\nThe client could not be built; the reason stands above.`);
    process.exit(1);
  }
  writeFileSync(stampFile, wanted);
}

/** The arguments for Node that build the client; `--watch` may be added. */
export function viteBuild(root) {
  const vite = join(root, "node_modules", "vite", "bin", "vite.js");
  return [vite, "build", "--config", join(root, "client", "vite.config.ts"), "--logLevel", "warn"];
}

function sourceHash(root) {
  const hash = createHash("sha256").update(readFileSync(join(root, "package-lock.json")));
  for (const folder of SOURCE_FOLDERS) {
    const entries = readdirSync(join(root, folder), { recursive: true, withFileTypes: true });
    const files = entries
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath ?? entry.path, entry.name));
    for (const file of files.sort()) hash.update(`\0${file.slice(root.length)}\0`).update(readFileSync(file));
  }
  return hash.digest("hex");
}

function readIfThere(file) {
  try {
    return readFileSync(file, "utf8");
  } catch {
    return null;
  }
}
