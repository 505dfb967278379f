/** server/setup/run-command.mjs - runs another program and waits for it.
 *  May import: node:child_process. Plain JavaScript, because it runs before anything is installed. */
import { spawnSync } from "node:child_process";

/** Runs `command` with `args`, its output going where ours goes. True when it ended with code 0; false when it ended
 *  otherwise or could not be started at all. `env` is added to ours. */
export function runs(command, args, { cwd, env } = {}) {
  const result = spawnSync(command, args, {
    cwd,
    env: { ...process.env, ...env },
    stdio: ["ignore", "inherit", "inherit"],
  });
  return result.status === 0;
}

/** As `runs`, but silent: null when it ended with code 0, else its output together with why it could not start. */
export function complaintOf(command, args, { cwd, env } = {}) {
  const result = spawnSync(command, args, {
    cwd,
    env: { ...process.env, ...env },
    stdio: ["ignore", "pipe", "pipe"],
    encoding: "utf8",
    maxBuffer: 64 * 1024 * 1024,
  });
  if (result.status === 0) return null;
  return [result.error ? String(result.error.message) : "", result.stdout ?? "", result.stderr ?? ""].join("\n").trim();
}
