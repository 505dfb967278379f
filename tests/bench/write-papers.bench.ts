/** Papers written: an appendix of 25 exercises, 300 steps and 150 crux notes as PDF, letter and page; half of it, to see that
 *  time grows with the steps; and a ride sheet. The paper is the same every run. */
import type { Paper } from "../../schema/paper.ts";
import { type PaperForm, writePaper } from "../../server/publish/write/write-paper.ts";
import { longPaper } from "../papers-written/long-paper.ts";
import { richPaper } from "../papers-written/paper-kit.ts";
import type { Report } from "./harness.ts";

const FORMS: readonly PaperForm[] = ["pdf", "docx", "html"];

async function write(paper: Paper, form: PaperForm): Promise<number> {
  const made = await writePaper(paper, form);
  if (!made.ok) throw new Error(made.refusal.error.sentence);
  return made.value.length;
}

export default async (report: Report): Promise<void> => {
  const whole = longPaper({ exercises: 25, stepsEach: 12, cruxesEach: 6 });
  const half = longPaper({ exercises: 13, stepsEach: 12, cruxesEach: 6 });
  const sheet = richPaper({ kind: "ride sheet" });
  for (const form of FORMS) {
    // The first of a run makes the type setter and reads the faces; nothing of this paper is kept from before.
    const start = performance.now();
    const bytes = await write(sheet, form);
    report.samples(
      `a sheet as ${form}, the first of the run`,
      [performance.now() - start],
      `${Math.round(bytes / 1024)} KB`,
    );
    await report.bench(`a sheet as ${form}`, { runs: 10, warmUp: 2 }, () => write(sheet, form));
    await report.bench(`150 steps as ${form}`, { runs: 5, warmUp: 1 }, () => write(renamed(half), form));
    await report.bench(`300 steps, 150 notes as ${form}`, { runs: 5, warmUp: 1 }, () => write(renamed(whole), form));
  }
  const { rss } = process.memoryUsage();
  report.samples("memory of the process, in megabytes", [rss / 2 ** 20], "not milliseconds");
};

let runs = 0;

/** Another paper each time, so that no run lives on what the one before it left: a word of every step is changed. */
function renamed(paper: Paper): Paper {
  runs += 1;
  const text = JSON.stringify(paper);
  return JSON.parse(text.replaceAll("from the gate", `from the gate ${runs}`)) as Paper;
}
