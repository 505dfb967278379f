/** The book part as its writer asks for it, from rows to bytes: an appendix of 75, 150, 300 and 600 steps in every form, to see
 *  that time grows with the steps; what a process takes that makes the PDF of 300 steps and nothing else; the same letter
 *  set by LibreOffice's converter, where it is installed; and the preview of every kind of paper of the invented book. */
import { execFileSync, spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { uuidv7 } from "uuidv7";
import type { Paper, PaperAsk } from "../../schema/paper.ts";
import { loadDemo } from "../../server/demo/load.ts";
import type { Outcome } from "../../server/errors.ts";
import { buildPaper, paperOf } from "../../server/publish/papers/build-paper.ts";
import { type PaperForm, writePaper } from "../../server/publish/write/write-paper.ts";
import { allRows, openStore, readRow, type Store, writeChange } from "../../server/store/index.ts";
import { printed } from "../papers/paper-lines.ts";
import { askFor, NO_FILES } from "../papers/small-book.ts";
import { type BigBook, bigBook } from "./big-book.ts";
import type { Report } from "./harness.ts";

const FORMS: readonly PaperForm[] = ["pdf", "docx", "html"];
/** Milliseconds for 300 steps. */
const TARGETS: Record<PaperForm, number> = { pdf: 1500, docx: 1500, html: 500 };
/** Of 12 steps and 6 cruxes each. */
const EXERCISES = [6, 13, 25, 50];
const WHOLE = 25;
const KINDS: readonly PaperAsk["kind"][] = [
  "ride sheet",
  "class handout",
  "caller's sheet",
  "working sheet",
  "appendix",
];

export default async (report: Report): Promise<void> => {
  alone(report);
  for (const exercises of EXERCISES) await ofSize(report, exercises);
  await besideConverter(report);
  await previews(report);
};

const bookOf = (exercises: number): BigBook => bigBook({ exercises, steps: 12, cruxes: 6 });

async function ofSize(report: Report, exercises: number): Promise<void> {
  const book = bookOf(exercises);
  const crux = printed(appendixOf(book, 0)).notes.filter(({ id }) => id.startsWith("crux-")).length;
  if (crux !== book.cruxes) throw new Error("The appendix is not whole.");
  let run = 0;
  for (const form of FORMS) {
    const target = exercises === WHOLE ? ` (target ${TARGETS[form]} ms)` : "";
    const name = `book part from rows: ${book.steps} steps, ${book.cruxes} crux notes, as ${form}${target}`;
    await report.bench(name, { runs: 3, warmUp: 1 }, () => {
      run += 1;
      return bytesOf(appendixOf(book, run), form);
    });
  }
}

/** Another paper each time, so that no run lives on what the one before it left: its readings are argued in other words. */
function appendixOf({ rows, exercises }: BigBook, run: number): Outcome<Paper> {
  const readings = (rows.readings ?? []).map((row) => ({
    ...row,
    value: { ...row.value, argument: `${run}, ${row.value.argument}` },
  }));
  return paperOf({ ...rows, readings }, askFor("appendix", exercises, {}), NO_FILES);
}

async function bytesOf(paper: Outcome<Paper>, form: PaperForm): Promise<Uint8Array> {
  const made = await writePaper(printed(paper), form);
  if (!made.ok) throw new Error(made.refusal.error.sentence);
  return made.value;
}

/** The most memory that a process took which did nothing else, in megabytes: from the paper, and from the rows. */
function alone(report: Report): void {
  const folder = report.folder();
  const book = join(folder, "book.json");
  const paper = join(folder, "paper.json");
  const { rows, exercises } = bookOf(WHOLE);
  writeFileSync(book, JSON.stringify({ rows, exercises }));
  writeFileSync(paper, JSON.stringify(printed(paperOf(rows, askFor("appendix", exercises, {}), NO_FILES))));
  for (const [from, place] of Object.entries({ paper, rows: book })) {
    const script = join(import.meta.dirname, "one-pdf.ts");
    const told = execFileSync(process.execPath, ["--import", "tsx", script, from, place], { encoding: "utf8" });
    const { megabytes, milliseconds } = JSON.parse(told) as { megabytes: number; milliseconds: number };
    const name = `book part: memory of a process that makes one PDF of 300 steps from its ${from} (target 400 MB)`;
    report.samples(name, [megabytes], "megabytes, not milliseconds");
    report.samples(`book part: the PDF in that process, the first it makes, from its ${from}`, [milliseconds]);
  }
}

/** The same words as a letter, made into PDF by LibreOffice: the time it takes with its start, a profile being there already. */
async function besideConverter(report: Report): Promise<void> {
  const name = "book part: the same 300 steps as PDF by LibreOffice's converter, from our letter";
  if (spawnSync("soffice", ["--version"]).status !== 0) {
    console.log(`${name}: not installed`);
    return;
  }
  const folder = report.folder();
  const letter = join(folder, "letter.docx");
  writeFileSync(letter, await bytesOf(appendixOf(bookOf(WHOLE), 0), "docx"));
  const profile = `-env:UserInstallation=file://${join(folder, "profile")}`;
  const convert = (): unknown =>
    execFileSync("soffice", [profile, "--headless", "--convert-to", "pdf", "--outdir", folder, letter], {
      stdio: "ignore",
    });
  await report.bench(name, { runs: 2, warmUp: 1 }, convert);
}

/** What the window shows while one chooses: the paper built from the store and written as a page. Asked for after something was
 *  written, under a reading nobody chose before, and again at the other size. */
async function previews(report: Report): Promise<void> {
  const opened = openStore(":memory:");
  if (!opened.ok) throw new Error(opened.refusal.error.sentence);
  const store = opened.value;
  const loaded = loadDemo(store, "2026-01-01T00:00:00Z");
  if (!loaded?.ok) throw new Error("The invented book was not written.");
  const { exercises: rows = [], readings = [], cruxes = [] } = allRows(store);
  const exercises = rows.map(({ value }) => value.id);
  for (const kind of KINDS) {
    const asked = kind === "working sheet" ? exercises.slice(0, 1) : exercises;
    const of = asked.length === 1 ? "one exercise" : `all ${asked.length} exercises`;
    const home = new Map(cruxes.map(({ value }) => [value.id, value.exercise ?? ""]));
    const choices = readings.flatMap(({ value: { id, crux } }) =>
      asked.includes(home.get(crux) ?? "") ? [{ crux, reading: id }] : [],
    );
    const changes = [
      { after: "something was written", runs: 12, before: () => write(store, asked[0] ?? ""), more: () => ({}) },
      {
        after: "another choice",
        runs: Math.min(12, choices.length),
        before: () => {},
        more: (run: number) => ({ choice: choices.slice(run, run + 1) }),
      },
      {
        after: "another size",
        runs: 12,
        before: () => {},
        more: (run: number) => ({ size: run % 2 === 0 ? "A4" : "A5" }) as const,
      },
    ];
    for (const { after, runs, before, more } of changes) {
      const samples: number[] = [];
      for (let run = 0; run < runs; run += 1) {
        before();
        const start = performance.now();
        await bytesOf(buildPaper(store, askFor(kind, asked, more(run))), "html");
        if (run >= Math.floor(runs / 2)) samples.push(performance.now() - start);
      }
      report.samples(`preview after ${after}: ${kind} of ${of} of the invented book (target 300 ms)`, samples);
    }
  }
  store.close();
}

/** A remark on the exercise that its papers print. */
function write(store: Store, id: string): void {
  const row = readRow(store, "exercises", id);
  if (row === null) throw new Error("The exercise is gone.");
  const { version, value } = row;
  const edits = [{ do: "set", kind: "exercises", id, base: version, fields: { note: `${value.note}.` } } as const];
  const change = { id: uuidv7(), who: "a bench", why: "Another remark", sitting: null, group: null, edits };
  const written = writeChange(store, change, { now: "2026-01-01T00:00:00Z" });
  if (!written.ok) throw new Error(written.refusal.error.sentence);
}
