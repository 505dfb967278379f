/** tests/papers-written/paper-kit.ts - papers made by hand for the writers: short builders for lines and blocks, and one
 *  rich paper with every block and every span. The story, its people and places are invented. */
import type { DrillStanding } from "../../schema/drill.ts";
import {
  type Block,
  type Line,
  PAPER_FORMAT,
  PAPER_FORMAT_VERSION,
  type Paper,
  type PaperKind,
  type PlainBlock,
  type Span,
} from "../../schema/paper.ts";
import { idOf } from "../editions/small-paper.ts";

export { idOf };

type Words = Extract<Span, { is: "words" }>;

export function w(text: string, more: Partial<Words> = {}): Words {
  return { is: "words", text, as: null, language: null, standing: null, to: null, ...more };
}
export const said = (text: string, language: string | null = null): Words => w(text, { as: "said", language });
export const ref = (text: string, to: string | null = null): Words => w(text, { as: "reference", to });
export const strong = (text: string): Words => w(text, { as: "strong" });
export const emphasis = (text: string): Words => w(text, { as: "emphasis" });
export const soft = (text: string): Words => w(text, { as: "soft" });
export const lined = (text: string, standing: DrillStanding): Words => w(text, { standing });
export const silent: Span = { is: "silent" };
export const nothing: Span = { is: "nothing" };
export const sign = (letter: string): Span => ({
  is: "sign",
  sign: `†${letter}`,
  crux: idOf(letter),
  to: `#crux-${letter}`,
});
export const call = (id: string): Span => ({ is: "note", note: id });

export function heading(level: number, text: string, anchor: string | null = null): PlainBlock {
  return { is: "heading", level, anchor, words: [w(text)], of: [] };
}
export function paragraph(as: Extract<Block, { is: "paragraph" }>["as"], ...words: Line): PlainBlock {
  return { is: "paragraph", as, words, of: [] };
}

type TableBlock = Extract<Block, { is: "table" }>;
export type StepCells = { horse: Line[]; hands: Line[]; shaft: Line[]; where?: Line[] };

/** A table of steps with the columns a built paper has: number, horse, hands, spear, where. */
export function steps(rows: readonly StepCells[], caption: Line = []): TableBlock {
  return {
    is: "table",
    as: "steps",
    caption,
    columns: [
      { name: "", share: 0.5 },
      { name: "Horse", share: 3 },
      { name: "Hands", share: 3 },
      { name: "Boar-spear", share: 2.5 },
      { name: "Where", share: 1.2 },
    ],
    rows: rows.map(({ horse, hands, shaft, where = [] }, index) => ({
      anchor: `step-${index + 1}`,
      of: [],
      element: idOf(`e${index + 1}`),
      shown: String(index + 1),
      cells: [[[strong(String(index + 1))]], horse, hands, shaft, where],
    })),
  };
}

export const LINE_KEY: Line = [
  lined("the text states it", "stated"),
  w("   "),
  lined("the text implies it", "implied"),
  w("   "),
  lined("supplied by the editor", "supplied"),
  w("   "),
  lined("not settled", "not settled"),
  w(" †   "),
  silent,
  w(" the text does not say   "),
  nothing,
  w(" nothing is done   empty: nothing entered"),
];

export const CAUTION = paragraph(
  "caution",
  w(
    "Ride this only under somebody qualified to teach it, with a blunt and flexible practice weapon, with protection for rider and horse, and with room to spare. The ground’s and the organiser’s own rules come first.",
  ),
);

/** A plan of a small court: walls, a round the well, names in italic. */
export const PLAN_SVG = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 60" width="120mm" height="60mm" role="img" aria-label="A plan of the low court"><rect x="4" y="4" width="112" height="52" fill="none" stroke="#211c16" stroke-width=".6"/><path d="M20 50 A20 20 0 0 1 60 30 A20 20 0 0 1 20 50" fill="none" stroke="#211c16" stroke-width=".5"/><path d="M60 30 L100 12" fill="none" stroke="#211c16" stroke-width=".5" stroke-dasharray=".2 1" stroke-linecap="round"/><path d="M60 26 l3 4 -3 4 -3 -4z" fill="#fff" stroke="#211c16" stroke-width=".4"/><text x="65" y="31.5" font-family="Gentium Plus" font-style="italic" font-size="4" fill="#6b6154">the well</text><text x="19" y="49" font-family="Source Sans 3" font-weight="600" font-size="4" fill="#9e2a2b">1</text></svg>`;

export const plan = (anchor: string | null = "plan"): PlainBlock => ({
  is: "figure",
  anchor,
  svg: PLAN_SVG,
  width: 110,
  caption: [w("The low court, 20 by 40 paces, with the round about "), said("the well"), w(".")],
  alternative: "A plan: from the gate once round the well on the left rein, then to the far corner.",
  of: [],
});

export interface PaperParts {
  kind?: PaperKind;
  size?: Paper["size"];
  notesAt?: Paper["notesAt"];
  title?: string;
  blocks: Block[];
  notes?: Paper["notes"];
  edition?: Paper["edition"];
  invented?: boolean;
}

export function paperOf({ blocks, notes = [], ...more }: PaperParts): Paper {
  const title = more.title ?? "Of the round about the well";
  return {
    format: PAPER_FORMAT,
    formatVersion: PAPER_FORMAT_VERSION,
    kind: more.kind ?? "appendix",
    size: more.size ?? "A4",
    language: "en-GB",
    title,
    work: {
      id: idOf("work"),
      title: "The book of the low court",
      author: "Brother Osmer of Tarn",
      invented: more.invented ?? true,
    },
    running: { left: "The book of the low court", right: title },
    edition: more.edition === undefined ? { number: 2, issued: "2026-05-04", check: "K7QX" } : more.edition,
    notesAt: more.notesAt ?? "foot",
    blocks,
    notes,
  };
}

const note = (id: string, ...lines: Line[]): Paper["notes"][number] => ({ id, lines, of: [] });

const STEPS: StepCells[] = [
  {
    horse: [[lined("canter on the left rein", "stated"), w(" from "), lined("the gate", "implied")]],
    hands: [
      [soft("left: "), lined("holds the reins", "implied")],
      [soft("right: "), lined("takes the spear at the balance", "stated"), sign("a")],
    ],
    shaft: [[lined("low, the point beside the horse’s ear", "stated")]],
    where: [[ref("f. 12r", "/read/0198c0de-0000-7000-8000-000000000001")]],
  },
  {
    horse: [[lined("once round the well", "not settled"), sign("b"), w(", as tight as it will go")]],
    hands: [
      [soft("left: "), silent],
      [soft("right: "), lined("slides to the butt", "supplied")],
    ],
    shaft: [[lined("turns over the head", "stated"), w(" "), soft("(sense "), silent, soft(")")]],
    where: [[ref("ff. 12r–12v")], [ref("p. 31")]],
  },
  {
    horse: [[lined("halt", "stated")]],
    hands: [
      [soft("left: "), nothing],
      [soft("right: "), lined("lowers the point", "implied")],
    ],
    shaft: [[lined("to the ground, and stands", "stated")]],
    where: [[ref("f. 12v")]],
  },
];

/** Every kind of block and span, in the order a book part has them. */
export function richPaper(more: Partial<PaperParts> = {}): Paper {
  return paperOf({
    blocks: [
      heading(1, "Of the round about the well"),
      paragraph("lead", w("The whole exercise, as the text has it; three steps, two open places.")),
      { is: "contents", depth: 2 },
      heading(2, "How to read this"),
      paragraph("key", ...LINE_KEY),
      {
        is: "facts",
        rows: [
          { name: "Where", words: [ref("ff. 12r–13v"), w("; "), ref("7.13–14")] },
          { name: "Original", words: [said("Liber curtis inferioris", "la"), w(", witness "), strong("T")] },
          { name: "Carried", words: [w("boar-spear of 2.10 m, blunt")] },
        ],
      },
      paragraph("body", w("The rider goes out from the gate and comes back to it."), call("n1"), w(" The book says: ")),
      paragraph(
        "quote",
        said("Equus circa puteum semel vertitur, hasta ad aurem inclinata.", "la"),
        w(" "),
        ref("f. 12r"),
        call("n2"),
      ),
      paragraph("quote", said("يدور الفرس حول البئر مرة واحدة (1)، والرمح عند الأذن.", "ar")),
      paragraph(
        "body",
        w("In one witness stands "),
        said("حول البئر", "ar"),
        w(", that is "),
        emphasis("about the well"),
        w("; the others are silent. Ḥāshiya, ṭarīqa, ẓill: letters with signs. The leaf is shown at "),
        w("www.example.org", { to: "https://www.example.org/leaf/12" }),
        w("."),
      ),
      paragraph("small", w("Small print: the leaf is stained at the foot.")),
      paragraph("open", w("Untreated: "), said("“and what follows of the second rider”", "en"), w(" "), ref("f. 13r")),
      {
        is: "list",
        ordered: false,
        items: [
          { words: [w("Canter throughout "), ref("f. 11v")], of: [] },
          { words: [w("The reins stay in "), lined("the left hand", "implied")], of: [] },
        ],
      },
      {
        is: "list",
        ordered: true,
        items: [
          { words: [w("First the gate")], of: [] },
          { words: [w("Then the well")], of: [] },
        ],
      },
      plan(),
      heading(2, "Steps", "steps"),
      steps(STEPS, [w("The steps, on the left rein.")]),
      {
        is: "table",
        as: "plain",
        caption: [w("What the holds ask.")],
        columns: [
          { name: "Hold", share: 1 },
          { name: "Length", share: 1 },
        ],
        rows: [
          { anchor: null, of: [], element: null, shown: null, cells: [[[w("low")]], [[w("at least 1.80 m")]]] },
          { anchor: "hold-high", of: [], element: null, shown: null, cells: [[[w("high")]], [[silent]]] },
          { anchor: null, of: [], element: null, shown: null, cells: [[[soft("Guessed from the plan alone.")]]] },
        ],
      },
      heading(3, "What to call"),
      {
        is: "calls",
        items: [
          { of: [], element: idOf("e1"), shown: "1", call: [w("Canter!")], when: [w("at the gate")], where: [] },
          {
            of: [],
            element: idOf("e2"),
            shown: "2",
            call: [w("Round!")],
            when: [w("a length before")],
            where: [said("the well")],
          },
        ],
      },
      {
        is: "beside",
        left: [paragraph("quote", said("He turns once about the well, the spear bent to the ear."))],
        right: [paragraph("small", sign("b"), w(" Once, or until he is called?")), { is: "writing", lines: 3 }],
      },
      { is: "page break" },
      heading(2, "Readings"),
      {
        is: "entries",
        as: "apparatus",
        items: [
          {
            anchor: "crux-a",
            head: [w("†a")],
            lines: [
              [soft("step 1 "), said("“ad aurem”", "la"), w("] "), strong("the near ear"), soft(" (adopted)")],
              [
                strong("the off ear"),
                w(" "),
                emphasis("Brother Osmer"),
                w(": the plan has it so, see "),
                ref("the plan", "#plan"),
              ],
            ],
            of: [],
          },
          {
            anchor: "crux-b",
            head: [w("†b")],
            lines: [
              [
                soft("step 2 "),
                said("“semel”", "la"),
                w("] "),
                lined("not settled", "not settled"),
                w(", see note "),
                ref("2", "#n2"),
              ],
            ],
            of: [],
          },
        ],
      },
      {
        is: "entries",
        as: "questions",
        items: [
          {
            anchor: null,
            head: [w("?")],
            lines: [[w("Is the well round or square?"), soft(" (to the ground’s keeper)")]],
            of: [],
          },
        ],
      },
      {
        is: "entries",
        as: "sigla",
        items: [
          { anchor: null, head: [w("T")], lines: [[w("the Tarn leaf-book, of about 1450")]], of: [] },
          { anchor: null, head: [w("V")], lines: [[w("the print of Vell")]], of: [] },
        ],
      },
      {
        is: "entries",
        as: "glossary",
        items: [
          {
            anchor: null,
            head: [w("balance")],
            lines: [[w("where the shaft lies level on one finger")], [ref("f. 2r")]],
            of: [],
          },
          { anchor: null, head: [w("volte")], lines: [[w("a small round")]], of: [] },
        ],
      },
      {
        is: "entries",
        as: "bibliography",
        items: [
          {
            anchor: null,
            head: [
              w("Osmer of Tarn, "),
              emphasis("The book of the low court"),
              w(", edited by Ilse Vorn (Tarn: The Low Press, 1911)."),
            ],
            lines: [],
            of: [],
          },
        ],
      },
      {
        is: "entries",
        as: "index",
        items: ["gate", "halt", "round", "well"].map((head, index) => ({
          anchor: null,
          head: [w(head)],
          lines: [[ref(`step ${(index % 3) + 1}`, `#step-${(index % 3) + 1}`)]],
          of: [],
        })),
      },
      CAUTION,
    ],
    notes: [
      note("n1", [
        w("So the translator; the original has "),
        said("ad portam", "la"),
        w(" twice, "),
        ref("f. 12v"),
        w("."),
      ]),
      note("n2", [w("Another hand writes "), said("“bis”", "la"), w(" in the margin.")], [w("The ink is younger.")]),
    ],
    ...more,
  });
}
