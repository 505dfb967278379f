/** server/publish/write/look-of.ts - sizes of each kind of paper on each size of sheet.
 *  May import: schema types. Type in points, lengths in millimetres, `title`, `heading` and `leading` in parts of the base size. A sheet
 *  that must fit comes in several sizes, largest first. */
import type { Paper, PaperKind, PaperSize } from "../../../schema/paper.ts";

export interface Look {
  base: number;
  /** Of the steps. */
  table: number;
  /** Of what is called out. */
  call: number;
  /** Of running heads and feet. */
  margin: number;
  title: number;
  /** Space above headings. */
  heading: number;
  /** Between lines. */
  leading: number;
  /** Drawings are printed in this part of their size: they shrink with the type, but less. */
  figure: number;
  numberWidth: number;
  nameWidth: number;
  signWidth: number;
  siglaWidth: number;
  justify: boolean;
  /** Head of the column of numbers. */
  numberName: string;
  page: { width: number; height: number; top: number; bottom: number; left: number; right: number };
}

export interface Fit {
  /** Largest first. */
  looks: Look[];
  /** Numbers of pages to try for, the one wished for first; empty where it may be as long as it is. */
  pages: number[];
}

const SHEETS = { A4: [210, 297], Letter: [215.9, 279.4], A5: [148, 210] } as const;

interface KindLook {
  /** Base sizes on A4 and Letter, largest first. */
  bases: number[];
  /** Smaller ones for A5 alone, where these would not do. */
  smallerOnA5?: number[];
  pages: number[];
  /** Margins on A4: top, bottom, left, right. */
  margins: [number, number, number, number];
  title: number;
  heading: number;
  leading: number;
  tableScale: number;
  callScale: number;
  justify: boolean;
}

const KINDS: Record<PaperKind, KindLook> = {
  "ride sheet": {
    // Read with the reins in one hand: steps are set in twelve points at least.
    bases: [13.4, 12.4, 11.4, 10.7, 10.1],
    smallerOnA5: [9.6],
    pages: [1, 2],
    margins: [13, 15, 13, 13],
    title: 1.9,
    heading: 1.05,
    leading: 0.5,
    tableScale: 1.19,
    callScale: 2,
    justify: false,
  },
  "class handout": {
    bases: [11.4, 10.8, 10.2, 9.6, 9, 8.4],
    pages: [2],
    margins: [14, 16, 15, 15],
    title: 2,
    heading: 1.2,
    leading: 0.54,
    tableScale: 1,
    callScale: 2,
    justify: false,
  },
  "caller's sheet": {
    bases: [14, 12.6, 11.4, 10.2],
    pages: [1, 2],
    margins: [13, 15, 14, 14],
    title: 1.6,
    heading: 1,
    leading: 0.54,
    tableScale: 1,
    callScale: 2.1,
    justify: false,
  },
  "working sheet": {
    bases: [11],
    pages: [],
    margins: [16, 18, 16, 16],
    title: 1.9,
    heading: 1.3,
    leading: 0.62,
    tableScale: 0.95,
    callScale: 2,
    justify: false,
  },
  appendix: {
    bases: [10.5],
    pages: [],
    margins: [24, 26, 27, 27],
    title: 2,
    heading: 1.6,
    leading: 0.64,
    tableScale: 0.95,
    callScale: 1.6,
    justify: true,
  },
  "correction slip": {
    bases: [12.5, 11.5, 10.5, 9.5],
    pages: [1],
    margins: [20, 20, 22, 22],
    title: 1.7,
    heading: 1.2,
    leading: 0.6,
    tableScale: 1,
    callScale: 2,
    justify: false,
  },
};

/** A5 is read nearer and holds less. */
const A5_TYPE = 0.8;
const A5_MARGIN = 0.72;
const SMALLEST = 7.6;
/** A drawing shrinks no further than to this part of its size, or its words could not be read. */
const SMALLEST_FIGURE = 0.92;

export function looksOf(kind: PaperKind, size: PaperSize): Fit {
  const { bases, smallerOnA5 = [], pages, ...own } = KINDS[kind];
  const small = size === "A5";
  const [largest = 1] = bases;
  const looks = (small ? [...bases, ...smallerOnA5] : bases).map((base) => {
    const type = Math.max(SMALLEST, small ? rounded(base * A5_TYPE) : base);
    const figure = Math.sqrt(base / largest);
    return { ...lookOf(own, type, size), figure: rounded(Math.max(SMALLEST_FIGURE, figure)) };
  });
  return { looks, pages };
}

/** The look of what is not fitted to a number of pages: a letter, a page on a screen. */
export function middleLook({ kind, size }: Pick<Paper, "kind" | "size">): Look {
  const { looks } = looksOf(kind, size);
  const look = looks[Math.floor((looks.length - 1) / 2)];
  if (look === undefined) throw new RangeError(`A ${kind} has at least one look.`);
  return look;
}

function lookOf(
  kind: Omit<KindLook, "bases" | "smallerOnA5" | "pages">,
  base: number,
  size: PaperSize,
): Omit<Look, "figure"> {
  const [width, height] = SHEETS[size];
  const scale = size === "A5" ? A5_MARGIN : 1;
  const [top, bottom, left, right] = kind.margins.map((margin) => rounded(margin * scale)) as KindLook["margins"];
  return {
    base,
    table: rounded(base * kind.tableScale),
    call: rounded(base * kind.callScale),
    margin: Math.max(7.4, Math.min(8.6, rounded(base * 0.8))),
    title: kind.title,
    heading: kind.heading,
    leading: kind.leading,
    numberWidth: rounded(base * 0.78),
    nameWidth: rounded(base * 2.3),
    signWidth: rounded(base * 0.85),
    siglaWidth: rounded(base * 1.3),
    justify: kind.justify,
    numberName: "",
    page: { width, height, top, bottom, left, right },
  };
}

function rounded(size: number): number {
  return Math.round(size * 100) / 100;
}
