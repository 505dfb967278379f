/** server/publish/write/docx/run-styles.ts - names for stretches of a line: what kind of words, on what line of warrant.
 *  May import: docx, schema types, siblings. A run has one style, so words of a kind on a line have a style of their own,
 *  which rests on that of their kind; only those a paper uses are in it. */
import { type ICharacterStyleOptions, type IRunStylePropertiesOptions, UnderlineType } from "docx";
import type { Span } from "../../../../schema/paper.ts";
import { FIRM, INK, RUBRIC, SOFT } from "../print-colours.ts";
import { WRITTEN_FACE } from "./faces-of-runs.ts";

type Words = Extract<Span, { is: "words" }>;
type Role = NonNullable<Words["as"]>;
type Line = "stated" | "implied" | "supplied" | "not settled";

const ROLES: Record<Role, { id: string; name: string; run: IRunStylePropertiesOptions }> = {
  said: { id: "SaidWords", name: "Said words", run: { font: WRITTEN_FACE } },
  reference: { id: "Reference", name: "Reference", run: { color: RUBRIC } },
  strong: { id: "StrongWords", name: "Strong words", run: { bold: true, boldComplexScript: true } },
  emphasis: { id: "EmphasisedWords", name: "Emphasised words", run: { font: WRITTEN_FACE, italics: true } },
  soft: { id: "Aside", name: "Aside", run: { color: SOFT } },
};

const LINES: Record<Line, { id: string; name: string; run: IRunStylePropertiesOptions }> = {
  // Nearly all is stated: its line is the faintest a letter has.
  stated: { id: "Stated", name: "stated", run: { underline: { type: UnderlineType.SINGLE, color: FIRM } } },
  implied: { id: "Implied", name: "implied", run: { underline: { type: UnderlineType.DASH, color: INK } } },
  supplied: { id: "Supplied", name: "supplied", run: { underline: { type: UnderlineType.DOTTED, color: INK } } },
  "not settled": {
    id: "NotSettled",
    name: "not settled",
    run: { underline: { type: UnderlineType.DOUBLE, color: RUBRIC } },
  },
};

export const SIGN_STYLE = "CruxSign";
export const SILENT_STYLE = "SilentText";
export const NOTHING_STYLE = "NothingDone";

const OTHERS: ICharacterStyleOptions[] = [
  { id: SIGN_STYLE, name: "Crux sign", quickFormat: true, run: { color: RUBRIC, superScript: true } },
  { id: SILENT_STYLE, name: "Silent text", quickFormat: true, run: { color: SOFT } },
  { id: NOTHING_STYLE, name: "Nothing done", quickFormat: true, run: { color: SOFT } },
];

/** The kinds of words a paper has been found to use, by the id of their style. */
export class UsedRuns {
  readonly #used = new Map<string, ICharacterStyleOptions>();

  /** The id of the style for words; null for plain ones. */
  styleOf({ as, standing }: Pick<Words, "as" | "standing">): string | null {
    const role = as === null ? null : ROLES[as];
    const line = standing !== null && standing in LINES ? LINES[standing as Line] : null;
    if (role === null) return line === null ? null : line.id;
    if (line === null) return role.id;
    const id = role.id + line.id;
    const { run } = line;
    this.#used.set(id, { id, name: `${role.name}, ${line.name}`, basedOn: role.id, quickFormat: true, run });
    return id;
  }

  /** Sorted by id, so that the order of the words does not matter. */
  get combined(): ICharacterStyleOptions[] {
    return [...this.#used.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
  }
}

export function runStyles(used: UsedRuns): ICharacterStyleOptions[] {
  const plain = [...Object.values(ROLES), ...Object.values(LINES)].map(({ id, name, run }) => ({
    id,
    name: name.charAt(0).toUpperCase() + name.slice(1),
    quickFormat: true,
    run,
  }));
  return [...plain, ...OTHERS, ...used.combined];
}
