/** server/publish/editions/compare-editions.ts - an edition held against another, or against the same paper made now.
 *  May import: schema types, server/store, siblings of server/publish. */
import { type Comparison, type EditionLine, IssuedModel } from "../../../schema/issue.ts";
import type { Paper } from "../../../schema/paper.ts";
import type { Edition } from "../../../schema/teaching.ts";
import { done, type Outcome, refused } from "../../errors.ts";
import { readRow, readRows, type Store } from "../../store/index.ts";
import { buildPaper } from "../papers/build-paper.ts";
import { stampOfStyles, stylesFolderOf } from "../styles/citation-styles.ts";
import { UntilNextChange } from "../until-next-change.ts";
import { comparePapers, type Difference } from "./compare-papers.ts";
import { itemsOf } from "./paper-items.ts";
import { reasonFor } from "./reason-for.ts";

export interface Held {
  row: Edition;
  model: IssuedModel;
}

export function readEdition(store: Store, id: string): Outcome<Held> {
  const row = readRow(store, "editions", id);
  if (row === null) {
    return refused("row_unknown", `There is no edition with the id ${id}. Load the list of editions again.`);
  }
  const model = IssuedModel.safeParse(row.value.model);
  if (model.success) return done({ row: row.value, model: model.data });
  return refused(
    "edition_unreadable",
    `Edition ${row.value.number}, “${row.value.title}”, was issued in a form this version does not read. Its papers are still there; it cannot be compared.`,
  );
}

/** What `older` said, and what stands there in the other edition, or now (null), each with its reason. */
export function compareEditions(store: Store, older: string, newer: string | null): Outcome<Comparison> {
  const from = readEdition(store, older);
  if (!from.ok) return from;
  const paper = newer === null ? buildPaper(store, from.value.model.ask) : paperOf(store, newer);
  if (!paper.ok) return paper;
  const { differences, renumbered } = comparePapers(from.value.model.paper, paper.value);
  const { at } = from.value.row;
  const entries = differences.map((difference) => ({
    element: difference.element,
    shown: placeOnSlip(difference),
    was: difference.was,
    now: difference.now,
    why: reasonFor(store, difference.of, at),
  }));
  return done({ entries, renumbered });
}

function paperOf(store: Store, id: string): Outcome<Paper> {
  const held = readEdition(store, id);
  return held.ok ? done(held.value.model.paper) : held;
}

/** As the holder of the older edition finds it: "Step 4, horse, in “2. Of the change upon the wall”". */
function placeOnSlip({ where, exercise }: Difference): string {
  return exercise === "" || where.includes(exercise) ? where : `${where}, in “${exercise}”`;
}

function placeWords({ is, where, shown }: Difference): string {
  return is === "added" && shown !== null ? `New step ${shown}` : where;
}

/** All editions of a work, newest first, each with what it says otherwise than now. */
export function editionLines(store: Store, work: string): EditionLine[] {
  const rows = readRows(store, "editions").filter(({ value }) => value.work === work);
  rows.sort((a, b) => b.value.number - a.value.number);
  const reports = readRows(store, "reports");
  const slips = readRows(store, "slips").map(({ value }) => value);
  const styles = stampOfStyles(stylesFolderOf(store));
  return rows.flatMap(({ value, version }) => {
    const { model: _model, ...edition } = value;
    const about = {
      edition,
      version,
      reports: reports
        .filter((report) => report.value.edition === value.id)
        .map(({ version: at, value: report }) => ({ version: at, value: report })),
      slips: slips.filter(({ from }) => from === value.id).map(({ id, to, on }) => ({ id, to, on })),
    };
    const told = toldOf.get(store, `${value.id} ${styles}`, () => {
      const held = readEdition(store, value.id);
      return held.ok ? toldBesideNow(store, held.value.model) : null;
    });
    return told === null ? [] : { ...about, ...told };
  });
}

/** By the edition and the styles there are: to make its paper again is dear, and the list is looked at often. */
const toldOf = new UntilNextChange<ReturnType<typeof toldBesideNow> | null>(200);

/** What an edition says, and what of that it would say otherwise now. */
function toldBesideNow(
  store: Store,
  { ask, paper }: IssuedModel,
): Pick<EditionLine, "ask" | "check" | "steps" | "differences" | "changed" | "problem"> {
  const now = buildPaper(store, ask);
  const more = { ask, check: paper.edition?.check ?? "", steps: stepsOf(paper) };
  if (!now.ok) return { ...more, differences: null, changed: [], problem: now.refusal.error.sentence };
  const { differences } = comparePapers(paper, now.value);
  return { ...more, differences: differences.length, changed: changedPlaces(differences), problem: "" };
}

/** Without the column and the line: these are for the slip. */
function changedPlaces(differences: readonly Difference[]): string[] {
  return [...new Set(differences.map((difference) => placeWords(difference).split(", ")[0] ?? ""))];
}

/** Each step once, under the number the edition shows. */
function stepsOf(paper: Paper): EditionLine["steps"] {
  const steps = new Map<string, EditionLine["steps"][number]>();
  for (const { element, shown, lines } of itemsOf(paper)) {
    if (element === null || shown === null || steps.has(element)) continue;
    steps.set(element, { element, shown, words: lines.map(({ words }) => words).join("; ") });
  }
  return [...steps.values()];
}
