/** server/commands/command.ts - what a command of the command line is, and what it is called with.
 *  May import: types of server/store and server/errors. */
import type { ParseArgsConfig } from "node:util";
import type { CodedRefusal } from "../errors.ts";
import type { Store } from "../store/index.ts";

/** How a command ended: done, refused (the sentence was shown), or called wrongly. */
export const DONE = 0;
export const REFUSED = 1;
export const MISUSED = 2;
export type ExitCode = typeof DONE | typeof REFUSED | typeof MISUSED;

/** Where a command speaks; the process itself, or a test. */
export interface Speaking {
  out: (text: string) => void;
  /** Bytes as they are. */
  bytes: (bytes: Uint8Array) => void;
  error: (text: string) => void;
}

export interface Call extends Speaking {
  store: Store;
  /** What stands after the command's name, without options. */
  words: readonly string[];
  /** Options by name; those that were not given are missing. */
  options: Readonly<Record<string, string | boolean | undefined>>;
  /** ISO 8601, UTC. */
  now: string;
}

export interface Command {
  name: string;
  /** What follows the name: "EXERCISE [--out FILE]". */
  usage: string;
  says: string;
  /** Each option with its sentence for the help. */
  options: Readonly<Record<string, { type: "string" | "boolean"; says: string }>>;
  /** Fewest and most words after the name. */
  words: readonly [fewest: number, most: number];
  /** Whether the store must be there, is made when it is not, or is not touched at all. */
  store: "there" | "made" | "untouched";
  run: (call: Call) => ExitCode | Promise<ExitCode>;
}

export type ParseOptions = NonNullable<ParseArgsConfig["options"]>;

/** Shows a refusal with all its issues. */
export function tellRefusal({ error }: Speaking, refusal: CodedRefusal): typeof REFUSED {
  error(refusal.error.sentence);
  const { issues = [] } = refusal.error;
  if (issues.length > 1) for (const { where, sentence } of issues) error(`  ${where}: ${sentence}`);
  for (const { kind, field, who, when } of refusal.error.conflicts ?? []) {
    error(`  ${kind}${field === "" ? "" : `, ${field}`}: changed by ${who}, ${when}`);
  }
  return REFUSED;
}
