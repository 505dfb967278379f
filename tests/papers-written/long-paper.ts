/** tests/papers-written/long-paper.ts - a book part as long as asked for, the same each time: exercises with a plan, steps,
 *  apparatus and notes. Invented throughout. */
import type { Block, Line, Paper } from "../../schema/paper.ts";
import {
  call,
  heading,
  idOf,
  LINE_KEY,
  lined,
  PLAN_SVG,
  paperOf,
  paragraph,
  ref,
  said,
  silent,
  soft,
  strong,
  w,
} from "./paper-kit.ts";

export interface LongPaper {
  exercises: number;
  stepsEach: number;
  cruxesEach: number;
  notesAt?: Paper["notesAt"];
}

const FIGURES = ["once round the well", "along the wall", "a half volte", "straight to the elm", "halt"];
const HOLDS = ["at the balance", "at the butt", "under the arm", "across the neck"];
const WARRANTS = ["stated", "implied", "supplied"] as const;

export function longPaper({ exercises, stepsEach, cruxesEach, notesAt = "foot" }: LongPaper): Paper {
  const blocks: Block[] = [
    heading(1, "The exercises, spelt out"),
    { is: "contents", depth: 2 },
    heading(1, "How to read this"),
    paragraph("key", ...LINE_KEY),
  ];
  const notes: Paper["notes"] = [];
  for (let exercise = 1; exercise <= exercises; exercise += 1) {
    blocks.push(...exerciseBlocks(exercise, stepsEach, cruxesEach));
    for (let crux = 1; crux <= cruxesEach; crux += 1) {
      notes.push({ id: `n${exercise}-${crux}`, lines: cruxNote(exercise, crux), of: [] });
    }
  }
  blocks.push(heading(1, "Index"), {
    is: "entries",
    as: "index",
    items: Array.from({ length: exercises * 4 }, (_, index) => ({
      anchor: null,
      head: [w(`word ${index + 1}`)],
      lines: [[ref(`exercise ${(index % exercises) + 1}`, `#exercise-${(index % exercises) + 1}`)]],
      of: [],
    })),
  });
  return paperOf({ title: "The exercises, spelt out", blocks, notes, notesAt });
}

function exerciseBlocks(exercise: number, stepsEach: number, cruxesEach: number): Block[] {
  const marked = (step: number): Line => {
    // The cruxes are spread over the steps; each is called at its own.
    const from = Math.floor(((step - 1) * cruxesEach) / stepsEach);
    const to = Math.floor((step * cruxesEach) / stepsEach);
    return Array.from({ length: to - from }, (_, index) => call(`n${exercise}-${from + index + 1}`));
  };
  return [
    heading(2, `${exercise}. Of the round about the well, the ${exercise}th time`, `exercise-${exercise}`),
    {
      is: "facts",
      rows: [
        { name: "Where", words: [ref(`ff. ${exercise}r–${exercise}v`), w("; "), ref(`7.${exercise}`)] },
        { name: "Carried", words: [w("boar-spear of 2.10 m, blunt")] },
      ],
    },
    paragraph(
      "quote",
      said("Equus circa puteum semel vertitur, hasta ad aurem inclinata, donec ad portam redeat.", "la"),
      w(" "),
      ref(`f. ${exercise}r`),
    ),
    paragraph(
      "body",
      w(
        "The rider goes out from the gate, turns about the well on the left rein and comes back to the gate; the point stays low until the elm is passed, and is raised there. ",
      ),
    ),
    {
      is: "figure",
      anchor: `plan-${exercise}`,
      svg: PLAN_SVG.replace(">1<", `>${exercise}<`),
      width: 90,
      caption: [w(`The court, exercise ${exercise}.`)],
      alternative: `A plan of exercise ${exercise}.`,
      of: [],
    },
    {
      is: "table",
      as: "steps",
      caption: [],
      columns: [
        { name: "", share: 0.5 },
        { name: "Horse", share: 3 },
        { name: "Hands", share: 3 },
        { name: "Boar-spear", share: 2.5 },
        { name: "Where", share: 1.2 },
      ],
      rows: Array.from({ length: stepsEach }, (_, index) => stepRow(exercise, index + 1, marked(index + 1))),
    },
    {
      is: "entries",
      as: "apparatus",
      items: Array.from({ length: cruxesEach }, (_, index) => ({
        anchor: `crux-${exercise}-${index + 1}`,
        head: [w(`†${index + 1}`)],
        lines: [
          [
            soft(`step ${index + 1} `),
            said("“semel”", "la"),
            w("] "),
            strong("once"),
            soft(" (adopted); also “until he is called”"),
          ],
        ],
        of: [],
      })),
    },
  ];
}

function stepRow(exercise: number, step: number, calls: Line) {
  const pick = <T>(list: readonly T[], shift: number): T => list[(exercise * 7 + step * 3 + shift) % list.length] as T;
  return {
    anchor: `step-${exercise}-${step}`,
    of: [],
    element: idOf(`e${exercise}-${step}`.slice(0, 6)),
    shown: String(step),
    cells: [
      [[strong(String(step))]],
      [
        [strong(`The ${step}th time`)],
        [
          lined(pick(FIGURES, 0), pick(WARRANTS, 0)),
          w(", "),
          lined("on the left rein", pick(WARRANTS, 1)),
          w(", from the gate"),
          ...calls,
        ],
      ],
      [
        [soft("left: "), lined("holds the reins", "implied")],
        [soft("right: "), lined(`the spear ${pick(HOLDS, 1)}`, pick(WARRANTS, 2))],
      ],
      [[lined("low, the point beside the horse’s ear", "stated"), soft(" (sense "), silent, soft(")")]],
      [[ref(`f. ${exercise}r`)], [ref(`p. ${30 + step}`)]],
    ] as Line[][],
  };
}

function cruxNote(exercise: number, crux: number): Line[] {
  const text = `“Semel”, once: so A and the print; C has “bis”. The translator takes it of the horse, the editor of the spear; a trial on the ${crux}th day of riding gave no answer.`;
  return [[w(text), w(" See "), ref("the readings", `#crux-${exercise}-${crux}`), w(".")]];
}
