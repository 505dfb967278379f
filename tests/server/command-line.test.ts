/** tests/server/command-line.test.ts - the command line: what it says, how it ends, and what it leaves in the store. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { runCommandLine } from "../../server/commands/run.ts";
import { demoBook } from "../../server/demo/book.ts";
import { loadDemo } from "../../server/demo/load.ts";
import { openStore } from "../../server/store/index.ts";
import { temporaryFolder, temporaryStorePath } from "../kit/temporary-store-path.ts";

const NOW = "2026-05-04T10:00:00.000Z";
const FILE_TEXT = "7.1\nLet him ride a circle.\n\n7.2\nLet him turn.\n";

async function run(file: string, ...args: string[]): Promise<{ code: number; out: string; error: string }> {
  const out: string[] = [];
  const errors: string[] = [];
  const code = await runCommandLine(args, {
    out: (text) => out.push(text),
    bytes: (bytes) => out.push(Buffer.from(bytes).toString("utf8")),
    error: (text) => errors.push(text),
    environment: { PASSAGEWORK_FILE: file },
    now: NOW,
  });
  return { code, out: out.join("\n"), error: errors.join("\n") };
}

function storeWithDemo(): string {
  const file = temporaryStorePath();
  const opened = openStore(file);
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  loadDemo(opened.value, NOW);
  opened.value.close();
  return file;
}

describe("what is asked wrongly", () => {
  let file: string;
  beforeAll(() => {
    file = storeWithDemo();
  });

  test.each<[name: string, args: string[], code: number, words: RegExp]>([
    ["no command", [], 2, /Usage: passagework COMMAND/],
    ["help", ["help"], 0, /drill +Gives the drill.*\n/],
    ["help on one", ["help", "import"], 0, /--from +first place to take/],
    ["a command's own help", ["drill", "--help"], 0, /--choice +readings to take/],
    ["an unknown command", ["dril"], 2, /no command “dril”.*works, exercises, passages, import, drill/],
    ["an unknown option", ["works", "--colour", "red"], 2, /--colour is not known to “works”; it has --file, --help/],
    ["an option without its value", ["drill", "1", "--out"], 2, /--out needs a value/],
    ["a word too few", ["passages"], 2, /takes 1 word .*got 0.*Usage: passagework passages WORK/],
    ["a word too many", ["works", "all"], 2, /got 1/],
    ["no such exercise", ["drill", "9"], 1, /No exercise is called “9”. Choose from “Of the circle/],
    ["a kind of paper that is none", ["paper", "leaflet", "1"], 1, /“leaflet” is no kind of paper.*ride-sheet/],
    ["a paper of no exercise there is", ["paper", "ride-sheet", "nowhere"], 1, /No exercise is called “nowhere”/],
    ["a form of paper that is none", ["paper", "ride-sheet", "1", "--as", "scroll"], 1, /--as/],
    ["a way that is none", ["drill", "1", "--way", "swimming"], 1, /way/],
    ["no such work", ["passages", "Nothing"], 1, /No work is called “Nothing”/],
    ["a change that is not there", ["undo", "99"], 1, /no change with the id 99/],
    ["a file that is not there", ["import", "/nowhere/book.xml"], 1, /cannot be read: ENOENT/],
    ["a store that is not there", ["works", "--file", "/nowhere/store.sqlite"], 1, /no store at .*--file/],
  ])("%s", async (_name, args, code, words) => {
    const ended = await run(file, ...args);
    expect(ended.code).toBe(code);
    expect(ended.out + ended.error).toMatch(words);
    expect(existsSync("/nowhere")).toBe(false);
  });
});

describe("the lists", () => {
  test("name works, exercises and passages with their ids", async () => {
    const file = storeWithDemo();
    expect((await run(file, "works")).out).toMatch(
      /^The Varne Riding-House Book\t.*\t\d exercises\t\d+ passages\t[0-9a-f-]{36}$/,
    );
    expect((await run(file, "exercises")).out.split("\n")).toHaveLength(Object.keys(demoBook().exercises).length);
    expect((await run(file, "passages", "the varne riding-house book")).out).toMatch(
      /^A f\. 2v, ll\. 4–15; .*\t\d+ %\tThe court/,
    );
    expect((await run(file, "history")).out).toMatch(/^1\t2026-05-04.*elements \+\d+/);
  });
});

describe("bringing in", () => {
  test("a preview stores nothing, not even a store with rows in it", async () => {
    const [file, source] = [temporaryStorePath(), join(temporaryFolder(), "book.txt")];
    writeFileSync(source, FILE_TEXT);
    const ended = await run(file, "import", source, "--preview");
    expect(ended.out).toMatch(/7\.1\t.*\tLet him ride a circle\.\n7\.2/);
    expect((await run(file, "works")).out).toBe("");
  });

  test("then it is there, is undone, and the log gives the rows", async () => {
    const [file, source] = [temporaryStorePath(), join(temporaryFolder(), "book.txt")];
    writeFileSync(source, FILE_TEXT);
    const options = [
      "--work",
      "A Book",
      "--layer",
      "English",
      "--as",
      "translation",
      "--exercises",
      "one",
      "--title",
      "Both",
    ];
    expect(await run(file, "import", source, ...options)).toMatchObject({
      code: 0,
      out: expect.stringMatching(/^2 passages brought in as “English”/),
    });
    expect((await run(file, "exercises")).out).toMatch(/\tBoth\tA Book\t/);
    expect(await run(file, "import", source, "--work", "A Book", "--layer", "English")).toMatchObject({
      code: 1,
      error: expect.stringMatching(/already has a text called “English”/),
    });
    expect((await run(file, "replay")).out).toMatch(/log of 1 changes gives exactly the \d+ rows/);
    expect(await run(file, "undo", "1")).toMatchObject({ code: 0, out: "Taken back by change 2." });
    expect((await run(file, "works")).out).toBe("");
    expect((await run(file, "undo", "1")).error).toMatch(/taken back/i);
    expect((await run(file, "replay")).code).toBe(0);
  });
});

test("a drill and a paper go into the files that are named", async () => {
  const file = storeWithDemo();
  const out = join(temporaryFolder(), "circle.html");
  const circle = "of the circle about the well";
  expect((await run(file, "paper", "ride-sheet", circle, "--as", "html", "--out", out)).code).toBe(0);
  expect(readFileSync(out, "utf8")).toMatch(/^<!doctype html>/);
  expect((await run(file, "drill", "1")).out).toMatch(/^\{\n {2}"format": "passagework-drill"/);
  expect(await run(file, "drill", "1", "--out", "/nowhere/x.json")).toMatchObject({
    code: 1,
    error: expect.stringMatching(/ENOENT/),
  });
});

test("a paper for one leaf is said to take more, with what to do", async () => {
  const file = storeWithDemo();
  const out = join(temporaryFolder(), "paper.pdf");
  const said = async (...exercises: string[]) =>
    (await run(file, "paper", "class-handout", ...exercises, "--out", out)).out.replace(out, "FILE");
  expect(await said("of the circle about the well")).toBe("The class handout was written to FILE. It takes 2 sides.");
  const titles = [
    "of the circle about the well",
    "of the change upon the wall",
    "of the two spears",
    "of the boar of straw",
  ];
  expect(await said(...titles)).toMatch(
    /^The class handout was written to FILE\. It takes [3-9] sides, and a leaf has 2: leave out an exercise, or print some of its steps from the window\.$/,
  );
}, 60_000);

test("the schemas are written anew into a folder", async () => {
  const folder = temporaryFolder();
  expect((await run("unused", "schemas", "--out", folder)).code).toBe(0);
  expect(JSON.parse(readFileSync(join(folder, "drill.schema.json"), "utf8")).$id).toMatch(/drill/);
});
