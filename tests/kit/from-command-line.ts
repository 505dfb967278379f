/** tests/kit/from-command-line.ts - a command run over the store of a running app. */
import { runCommandLine } from "../../server/commands/run.ts";
import { NOW, type RunningApp } from "./running-app.ts";

/** The bytes a command writes to the terminal. Throws Error with what it said when it does not end well. */
export async function fromCommandLine({ file }: RunningApp, ...args: string[]): Promise<Buffer> {
  const chunks: Uint8Array[] = [];
  const errors: string[] = [];
  const code = await runCommandLine([...args, "--file", file], {
    out: (text) => chunks.push(Buffer.from(`${text}\n`)),
    bytes: (bytes) => chunks.push(bytes),
    error: (text) => errors.push(text),
    environment: {},
    now: NOW,
  });
  if (code !== 0) throw new Error(errors.join("\n"));
  return Buffer.concat(chunks);
}
