/** server/commands/paper.ts - any paper as it would print now, or as an edition was issued: the same bytes as from the window.
 *  May import: schema, server/publish, server/store, siblings. */
import { PaperForm } from "../../schema/issue.ts";
import { type Paper, PaperAsk, type PaperPart } from "../../schema/paper.ts";
import { type Outcome, refused } from "../errors.ts";
import { readDrillOptions } from "../publish/drill-options.ts";
import { editionLines } from "../publish/editions/compare-editions.ts";
import { buildPaper } from "../publish/papers/build-paper.ts";
import { DEFAULT_STYLE } from "../publish/styles/citation-styles.ts";
import { sidesOfPaper, writePaper } from "../publish/write/write-paper.ts";
import { checked } from "../read-body.ts";
import { readRows } from "../store/index.ts";
import { type Call, type Command, DONE, tellRefusal } from "./command.ts";
import { findExercise, findWork } from "./find-row.ts";
import { writeOut } from "./write-out.ts";

export const paper: Command = {
  name: "paper",
  usage: "KIND EXERCISE … --out FILE [--as pdf|docx|html] [--size A4|Letter|A5] [--notes foot|end] …",
  says: "Writes a paper of one or more exercises: ride-sheet, class-handout, callers-sheet, working-sheet or appendix.",
  options: {
    as: { type: "string", says: "pdf, which is the default, docx or html" },
    out: { type: "string", says: "the file to write; without it the paper goes to the terminal" },
    size: { type: "string", says: "A4, which is the default, Letter or A5" },
    notes: { type: "string", says: "foot, which is the default, or end" },
    style: { type: "string", says: `the citation style; “${DEFAULT_STYLE}” when not given` },
    choice: { type: "string", says: "readings to take, as ids: CRUX:READING,CRUX:READING" },
    way: { type: "string", says: "mounted, or “on foot”" },
    variant: { type: "string", says: "the id of a version of the day" },
    occasion: { type: "string", says: "a line under the title" },
  },
  words: [2, 61],
  store: "there",
  run: async (call) => {
    const ask = askOf(call);
    if (!ask.ok) return tellRefusal(call, ask.refusal);
    const form = checked(call.options.as ?? "pdf", PaperForm, "--as");
    if (!form.ok) return tellRefusal(call, form.refusal);
    const built = buildPaper(call.store, ask.value);
    if (!built.ok) return tellRefusal(call, built.refusal);
    const made = await writePaper(built.value, form.value);
    if (!made.ok) return tellRefusal(call, made.refusal);
    const sides = await sidesTold(call, built.value, form.value);
    return writeOut(call, made.value, `The ${ask.value.kind}`, sides);
  },
};

/** Papers that are handed out as one leaf. */
const ONE_LEAF: ReadonlySet<Paper["kind"]> = new Set(["ride sheet", "class handout", "caller's sheet"]);
const SIDES_OF_A_LEAF = 2;

/** " It takes 4 sides, and a leaf has 2: leave out an exercise or steps." Of a PDF in a file, since only then somebody reads it. */
async function sidesTold({ options }: Call, made: Paper, form: PaperForm): Promise<string> {
  if (form !== "pdf" || options.out === undefined || !ONE_LEAF.has(made.kind)) return "";
  const counted = await sidesOfPaper(made, () => false);
  if (!counted.ok || counted.value === null) return "";
  const sides = counted.value === 1 ? "one side" : `${counted.value} sides`;
  const tooMany = counted.value > SIDES_OF_A_LEAF;
  return ` It takes ${sides}${tooMany ? `, and a leaf has ${SIDES_OF_A_LEAF}: leave out an exercise, or print some of its steps from the window` : ""}.`;
}

const KINDS: Readonly<Record<string, PaperAsk["kind"]>> = {
  "ride-sheet": "ride sheet",
  "class-handout": "class handout",
  "callers-sheet": "caller's sheet",
  "working-sheet": "working sheet",
  appendix: "appendix",
};

function askOf({ store, words, options }: Call): Outcome<PaperAsk> {
  const [named = "", ...exercises] = words;
  const kind = KINDS[named];
  if (kind === undefined) {
    return refused("body_invalid", `“${named}” is no kind of paper. Choose one of ${Object.keys(KINDS).join(", ")}.`);
  }
  const { choice, way, variant, size, notes, style, occasion } = options;
  const drill = readDrillOptions({ ...(choice && { choice }), ...(way && { way }), ...(variant && { variant }) });
  if (!drill.ok) return drill;
  const parts: PaperPart[] = [];
  for (const asked of exercises) {
    const exercise = findExercise(store, asked);
    if (!exercise.ok) return exercise;
    parts.push({ exercise: exercise.value.id, from: null, to: null, variant: drill.value.variant });
  }
  const ask = {
    kind,
    parts,
    size: size ?? "A4",
    way: drill.value.way ?? "mounted",
    choice: drill.value.choice,
    notesAt: notes ?? "foot",
    style: style ?? DEFAULT_STYLE,
    occasion: occasion ?? "",
  };
  return checked(ask, PaperAsk, "");
}

export const editions: Command = {
  name: "editions",
  usage: "[WORK]",
  says: "Lists what was issued: number, day, kind, title, check code, who holds it, and whether it is still right.",
  options: {},
  words: [0, 1],
  store: "there",
  run: (call) => {
    const { store, words, out } = call;
    const asked = words[0];
    const work = asked === undefined ? null : findWork(store, asked);
    if (work !== null && !work.ok) return tellRefusal(call, work.refusal);
    const works = work === null ? readRows(store, "works").map(({ value }) => value.id) : [work.value.id];
    for (const line of works.flatMap((id) => editionLines(store, id))) {
      const { number, issued, title, recipients, id } = line.edition;
      const right =
        line.differences === null
          ? line.problem
          : line.differences === 0
            ? "right"
            : `${line.differences} say otherwise`;
      const holders = recipients.map(({ who }) => who).join(", ");
      out([number, issued, line.ask.kind, title, line.check, holders, right, id].join("\t"));
    }
    return DONE;
  },
};
