/** server/commands/write-out.ts - bytes that a command made: to the terminal as they are, or into the file that was named.
 *  May import: Node's own modules, siblings. */
import { writeFileSync } from "node:fs";
import { type Call, DONE, type ExitCode, REFUSED } from "./command.ts";

/** `what` begins the sentence that says where it went: "The letter to Y. Varne"; `more` follows it. */
export function writeOut({ options, out, bytes, error }: Call, made: Uint8Array, what: string, more = ""): ExitCode {
  if (typeof options.out !== "string") {
    bytes(made);
    return DONE;
  }
  try {
    writeFileSync(options.out, made);
  } catch (problem) {
    error(`The file ${options.out} could not be written: ${problem instanceof Error ? problem.message : "unknown"}.`);
    return REFUSED;
  }
  out(`${what} was written to ${options.out}.${more}`);
  return DONE;
}
