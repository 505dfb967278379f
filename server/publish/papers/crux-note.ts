/** server/publish/papers/crux-note.ts - the apparatus of one crux: the words ] what is read, then every other reading.
 *  May import: schema types, server/publish, siblings. In the order of an apparatus: the reading taken first, with its reason; then
 *  those that stand, then those ruled out, each with who holds it, why, what it would give and what speaks for it. */

import type { ReadingStatus } from "../../../schema/crux.ts";
import type { DrillCrux, DrillElement } from "../../../schema/drill.ts";
import type { Line, Paper } from "../../../schema/paper.ts";
import type { SignedCrux } from "../crux-signs.ts";
import { stopped } from "../stopped.ts";
import { evidenceLines } from "./basis-lines.ts";
import { dayWords } from "./day-words.ts";
import { givesWords } from "./gives-words.ts";
import { numbersWords } from "./numbers-words.ts";
import type { PaperContext } from "./paper-context.ts";
import { cruxAnchor } from "./paper-signs.ts";
import { quotesLine } from "./quote-lines.ts";
import { emphasis, joinedLines, lined, type Of, soft, strong, words } from "./spans.ts";

type Other = DrillCrux["others"][number];

const BECAUSE = {
  adopted: "adopted",
  "left free": "left to the rider; shown with this",
  chosen: "chosen for this paper",
  exception: "read so here only",
} as const;

/** The note of each crux on the paper, by the crux. */
export function cruxNotes(context: PaperContext): Map<string, Paper["notes"][number]> {
  return new Map(
    context.signs.list.flatMap((signed) => {
      const [first] = signed.at;
      if (first === undefined) return [];
      const { crux } = first.crux;
      const note = { id: cruxAnchor(signed.sign), lines: cruxLines(context, signed), of: rowsOfCrux(first.crux) };
      return [[crux, note] as const];
    }),
  );
}

/** The crux and all its readings: a change of any of them changes what stands here. */
export function rowsOfCrux({ crux, taken, others }: DrillCrux): Of {
  const readings = [...(taken === null ? [] : [taken]), ...others];
  return [{ kind: "cruxes", id: crux }, ...readings.map(({ reading }) => ({ kind: "readings" as const, id: reading }))];
}

function cruxLines(context: PaperContext, { sign, at }: SignedCrux): Line[] {
  const [first] = at;
  if (first === undefined) throw new RangeError(`The crux ${sign} bears on nothing.`);
  const { crux } = first;
  const places = placesWords(at, context.parts.length > 1);
  const elsewhere = at.filter((other) => other.crux.taken?.reading !== crux.taken?.reading);
  const others = inApparatusOrder(crux.others);
  return [
    [
      strong(`†${sign}`),
      ...(places === "" ? [] : [soft(` ${places}`)]),
      words(" "),
      ...lemma(context, crux),
      words(" ] "),
      ...takenWords(context, crux),
    ],
    ...evidenceOf(context, crux.taken?.reading),
    ...elsewhere.map(
      ({ element, crux: other, drill }): Line => [
        words(`At ${placesWords([{ element, crux: other, drill }], context.parts.length > 1)}: `),
        ...takenWords(context, other),
      ],
    ),
    ...others.flatMap((other) => [
      otherLine(context, other, givesWords(at, other.reading)),
      ...evidenceOf(context, other.reading),
    ]),
    [soft(stopped(`${crux.title} (${crux.is})`)), ...(crux.note === "" ? [] : [soft(` ${stopped(crux.note)}`)])],
  ];
}

/** The words the crux is about; its title where it has none marked. */
function lemma({ places }: PaperContext, crux: DrillCrux): Line {
  const [first, ...more] = crux.citations;
  if (first === undefined) return [emphasis(crux.title)];
  return quotesLine(places, [first, ...more.filter(({ reference }) => reference === first.reference)]);
}

function takenWords({ book }: PaperContext, { taken }: DrillCrux): Line {
  if (taken === null) return [lined("not settled", "not settled"), words(".")];
  const status = book.find("readings", taken.reading)?.status;
  const when = taken.because === "adopted" && status !== undefined ? decidedOn(status) : "";
  const condition = taken.condition === "" ? "" : ` ${taken.condition}`;
  const why = `${BECAUSE[taken.because]}${condition}${when}`;
  return [
    strong(taken.title),
    soft(` (${why})`),
    words(taken.reason === "" ? "." : `: ${stopped(taken.reason)}`),
    ...argued(book.find("readings", taken.reading)),
  ];
}

/** Who holds it and with what argument, behind the reason it was taken for. */
function argued(reading: { holder: string; argument: string } | undefined): Line {
  if (reading === undefined) return [];
  const { holder, argument } = reading;
  return [
    ...(argument === "" ? [] : [words(` ${stopped(argument)}`)]),
    ...(holder === "" ? [] : [soft(" Held by "), emphasis(holder), soft(".")]),
  ];
}

function decidedOn(status: ReadingStatus): string {
  return status.is === "standing" ? "" : ` on ${dayWords(status.on)}`;
}

function otherLine({ book }: PaperContext, other: Other, gives: string): Line {
  const { title, holder, status, condition, argument, reason } = other;
  const row = book.find("readings", other.reading)?.status;
  const decided = row === undefined ? "" : decidedOn(row);
  const pieces: Line[] = [
    argument === "" ? [] : [words(stopped(argument))],
    reason === "" ? [] : [words(stopped(reason))],
    gives === "" ? [] : [soft(`Then ${gives}.`)],
  ];
  const said = joinedLines(pieces, " ");
  return [
    strong(title),
    ...(holder === "" ? [] : [words(" "), emphasis(holder)]),
    ...(status === "standing" ? [] : [soft(` (${status}${condition === "" ? "" : ` ${condition}`}${decided})`)]),
    ...(said.length === 0 ? [words(".")] : [words(": "), ...said]),
  ];
}

/** What stands before what is ruled out; otherwise in the order of the crux. */
function inApparatusOrder(others: readonly Other[]): Other[] {
  const place = { adopted: 0, standing: 1, "ruled out": 2 } as const;
  return [...others].sort((a, b) => place[a.status] - place[b.status]);
}

function evidenceOf(context: PaperContext, reading: string | undefined): Line[] {
  const row = reading === undefined ? undefined : context.book.find("readings", reading);
  const lines = row === undefined ? [] : evidenceLines(context, row.evidence);
  return lines.map((line) => [soft("For it: "), ...line]);
}

/** "steps 3–5"; with the exercise's own number where a paper has several: "2, steps 3–5; 4, step 1". */
function placesWords(at: SignedCrux["at"], several: boolean): string {
  const byExercise = new Map<string, { name: string; elements: DrillElement[] }>();
  for (const { element, drill } of at) {
    const { id, label, title } = drill.exercise;
    const known = byExercise.get(id) ?? { name: label === "" ? title : label, elements: [] };
    if (element !== null) known.elements.push(element);
    byExercise.set(id, known);
  }
  return [...byExercise.values()]
    .flatMap(({ name, elements }) => {
      const where = numbersWords(elements);
      return where === "" ? [] : [several ? `${name}, ${where}` : where];
    })
    .join("; ");
}
