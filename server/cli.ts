/** server/cli.ts - the command line: `npm run passagework -- COMMAND`. Everything the window writes on paper or into a
 *  file, it gives too. May import: server/commands. */
import { runCommandLine } from "./commands/run.ts";

process.exitCode = await runCommandLine(process.argv.slice(2), {
  out: (text) => process.stdout.write(`${text}\n`),
  bytes: (bytes) => process.stdout.write(bytes),
  error: (text) => process.stderr.write(`${text}\n`),
  environment: process.env,
  now: new Date().toISOString(),
});
