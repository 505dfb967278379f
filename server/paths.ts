/** server/paths.ts - where things lie on disk, told from this file's own place and never from the folder a command was
 *  started in. May import: node:path, node:url. All values are absolute paths without a closing slash. */
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The top folder of the project. */
export const repoRoot = dirname(dirname(fileURLToPath(import.meta.url)));

/** The built client; made by `npm start` and `npm test`, absent before. */
export const distPath = join(repoRoot, "dist");

/** The store used when neither `--file` nor the environment names another. The folder is ignored by git and may be
 *  absent; whoever opens the store makes it. */
export const defaultStorePath = join(repoRoot, "data", "passagework.sqlite");
