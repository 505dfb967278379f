/** server/start-options.ts - where the store is and which port is wanted, from the command line and the environment.
 *  May import: Node's own modules, siblings. */
import { resolve } from "node:path";
import { parseArgs } from "node:util";
import { defaultStorePath } from "./paths.ts";

/** The variable of the environment that names the store file. */
export const FILE_VARIABLE = "PASSAGEWORK_FILE";

export type StartOptions = { ok: true; file: string; port: number | null } | { ok: false; sentence: string };

/** `port` is null when none was given. Nothing is opened. */
export function startOptions(args: readonly string[], environment: Record<string, string | undefined>): StartOptions {
  let values: { file?: string; port?: string };
  try {
    ({ values } = parseArgs({ args: [...args], options: { file: { type: "string" }, port: { type: "string" } } }));
  } catch {
    return { ok: false, sentence: `Expected --file PATH or --port NUMBER; got: ${args.join(" ")}.` };
  }
  const port = values.port === undefined ? null : Number(values.port);
  if (port !== null && !(Number.isInteger(port) && port >= 0 && port <= 65535)) {
    return { ok: false, sentence: `Expected a port from 1 to 65535; got --port ${values.port}.` };
  }
  return { ok: true, file: storeFile(values.file, environment), port };
}

/** The option first, then the environment, then the data folder of the project. An absolute path. */
export function storeFile(option: string | undefined, environment: Record<string, string | undefined>): string {
  const named = option ?? environment[FILE_VARIABLE];
  return named === undefined || named === "" ? defaultStorePath : resolve(named);
}
