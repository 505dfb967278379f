/** server/commands/run.ts - finds the command that was asked for, reads its options, opens the store, runs it.
 *  May import: Node's own modules, siblings, server/store. Nothing here ends the process: tests run it too. */
import { existsSync } from "node:fs";
import { parseArgs } from "node:util";
import { storeFile } from "../start-options.ts";
import { openStore } from "../store/index.ts";
import {
  type Command,
  DONE,
  type ExitCode,
  MISUSED,
  type ParseOptions,
  REFUSED,
  type Speaking,
  tellRefusal,
} from "./command.ts";
import { drill } from "./drill.ts";
import { history, replay, undo } from "./history.ts";
import { importText } from "./import.ts";
import { letter } from "./letter.ts";
import { exercises, passages, works } from "./lists.ts";
import { annotations, tei } from "./machine-papers.ts";
import { editions, paper } from "./paper.ts";
import { plan } from "./plan.ts";
import { readings } from "./readings.ts";
import { schemas } from "./schemas.ts";

const COMMANDS: readonly Command[] = [
  works,
  exercises,
  passages,
  importText,
  drill,
  readings,
  plan,
  tei,
  annotations,
  letter,
  paper,
  editions,
  history,
  undo,
  replay,
  schemas,
];

export interface Surroundings extends Speaking {
  environment: Record<string, string | undefined>;
  /** ISO 8601, UTC. */
  now: string;
}

export async function runCommandLine(args: readonly string[], around: Surroundings): Promise<ExitCode> {
  const [name, ...rest] = args;
  if (name === undefined || name === "help" || name === "--help" || name === "-h") {
    const asked = COMMANDS.find((known) => known.name === rest[0]);
    around.out(asked === undefined ? helpForAll() : helpFor(asked));
    return name === undefined ? MISUSED : DONE;
  }
  const command = COMMANDS.find((candidate) => candidate.name === name);
  if (command === undefined) {
    around.error(
      `There is no command “${name}”. There are ${COMMANDS.map((known) => known.name).join(", ")}; see \`help\`.`,
    );
    return MISUSED;
  }
  const read = readArguments(command, rest);
  if ("problem" in read) {
    around.error(`${read.problem} Usage: passagework ${command.name} ${command.usage}`.trim());
    return MISUSED;
  }
  if (read.options.help === true) {
    around.out(helpFor(command));
    return DONE;
  }
  return runOnStore(command, read, around);
}

interface Arguments {
  words: string[];
  options: Record<string, string | boolean | undefined>;
}

function readArguments(command: Command, args: string[]): Arguments | { problem: string } {
  const known = { ...command.options, file: { type: "string" }, help: { type: "boolean" } } as ParseOptions;
  const { tokens } = parseArgs({ args, options: known, strict: false, allowPositionals: true, tokens: true });
  const options: Arguments["options"] = {};
  const words: string[] = [];
  for (const token of tokens) {
    if (token.kind === "positional") words.push(token.value);
    if (token.kind !== "option") continue;
    const option = known[token.name];
    if (option === undefined) {
      const names = Object.keys(known).map((name) => `--${name}`);
      return { problem: `The option ${token.rawName} is not known to “${command.name}”; it has ${names.join(", ")}.` };
    }
    if (option.type === "string" && token.value === undefined)
      return { problem: `The option ${token.rawName} needs a value.` };
    if (option.type === "boolean" && token.value !== undefined)
      return { problem: `The option ${token.rawName} takes no value.` };
    options[token.name] = option.type === "boolean" ? true : token.value;
  }
  const [fewest, most] = command.words;
  if (options.help !== true && (words.length < fewest || words.length > most)) {
    const wanted = fewest === most ? `${fewest}` : `${fewest} to ${most}`;
    return {
      problem: `“${command.name}” takes ${wanted} ${most === 1 ? "word" : "words"} besides its options; got ${words.length}.`,
    };
  }
  return { words, options };
}

async function runOnStore(command: Command, { words, options }: Arguments, around: Surroundings): Promise<ExitCode> {
  const named = storeFile(typeof options.file === "string" ? options.file : undefined, around.environment);
  const file = command.store === "untouched" ? ":memory:" : named;
  if (command.store === "there" && !existsSync(file)) {
    around.error(`There is no store at ${file}. Give another with --file, or start the program once to make it.`);
    return REFUSED;
  }
  const opened = openStore(file);
  if (!opened.ok) return tellRefusal(around, opened.refusal);
  const store = opened.value;
  try {
    return await command.run({ ...around, store, words, options });
  } finally {
    store.close();
  }
}

function helpForAll(): string {
  const widest = Math.max(...COMMANDS.map(({ name }) => name.length));
  return [
    "Usage: passagework COMMAND [options]",
    "",
    ...COMMANDS.map(({ name, says }) => `  ${name.padEnd(widest)}  ${says}`),
    "",
    "Every command takes --file PATH (the store; else PASSAGEWORK_FILE, else data/passagework.sqlite) and --help.",
    "It ends with 0 when done, 1 when refused, 2 when called wrongly.",
  ].join("\n");
}

function helpFor({ name, usage, says, options }: Command): string {
  const list = Object.entries({ ...options, file: { says: "the store file" } });
  const widest = Math.max(...list.map(([option]) => option.length));
  return [
    `Usage: passagework ${name} ${usage}`.trim(),
    "",
    says,
    "",
    ...list.map(([option, { says: what }]) => `  --${option.padEnd(widest)}  ${what}`),
  ].join("\n");
}
