/** shared/drill/citations.ts - from a mark to the words it quotes and where they stand.
 *  May import: schema types, shared/cite, siblings in shared/drill. Offsets: UTF-16 units from 0, half-open. */
import type { Citation } from "../../schema/drill.ts";
import type { Mark, Markable, TextAnchor } from "../../schema/mark.ts";
import type { Support } from "../../schema/slot.ts";
import type { Passage } from "../../schema/work.ts";
import { passageUrn } from "../cite/cts-urn.ts";
import { formatReference } from "../cite/format-reference.ts";
import { compareCodeUnits } from "../rank.ts";
import { inKeyOrder } from "./canonical-json.ts";
import type { CurrentText, PlacedCitation, WorkRows } from "./exercise-rows.ts";

/** Longest quotation that is repeated within its URN; a longer one is cited by its section. */
const LONGEST_IN_URN = 80;

/** The words of a thing: those marked for it, and those its existence rests on. In the order of the text. */
export function citationsOf(rows: WorkRows, of: Markable, target: string, support?: Support): Citation[] {
  return citationsOfMarks(rows, [...rows.marksOf(of, target), ...marksIn(rows, support?.basis ?? [])]);
}

/** The words a basis names. */
export function citationsOfBasis(rows: WorkRows, basis: Support["basis"]): Citation[] {
  return citationsOfMarks(rows, marksIn(rows, basis));
}

/** Each place once, in the order of the text. */
export function inTextOrder(citations: readonly Citation[]): Citation[] {
  const seen = new Map(citations.map((citation) => [JSON.stringify(citation), citation]));
  return [...seen.values()];
}

function marksIn(rows: WorkRows, basis: Support["basis"]): Mark[] {
  return basis.flatMap((entry) => (entry.is === "words" ? (rows.find("marks", entry.mark) ?? []) : []));
}

function citationsOfMarks(rows: WorkRows, marks: readonly Mark[]): Citation[] {
  if (marks.length === 0) return [];
  const distinct = [...new Map(marks.map((mark) => [mark.id, mark])).values()];
  const placed = distinct.flatMap((mark) => placedOf(rows, mark)).sort(comparePlaced);
  return [...new Map(placed.map(({ key, citation }) => [key, citation])).values()];
}

function placedOf(rows: WorkRows, mark: Mark): readonly PlacedCitation[] {
  const known = rows.placed.get(mark.id);
  if (known !== undefined) return known;
  const placed = placedNow(rows, mark);
  rows.placed.set(mark.id, placed);
  return placed;
}

/** The anchors of a mark in the texts that are read now; where it has none there, the old ones, as lost. */
function placedNow(rows: WorkRows, mark: Mark): PlacedCitation[] {
  const anchors = rows.anchorsOf(mark.id).filter((anchor) => anchor.is === "text");
  const now = anchors.flatMap((anchor) => {
    const current = rows.currentText(anchor.text);
    return current ? [{ anchor, current }] : [];
  });
  if (now.length === 0) return anchors.flatMap((anchor) => placedAnchor(rows, anchor, null));
  return now.flatMap(({ anchor, current }) => placedAnchor(rows, anchor, current));
}

function placedAnchor(rows: WorkRows, anchor: TextAnchor, current: CurrentText | null): PlacedCitation[] {
  const passage = rows.find("passages", anchor.passage);
  if (!passage) return [];
  const lost = current === null || anchor.fate === "lost";
  const quote = lost ? anchor.quote : current.text.text.slice(anchor.from, anchor.to);
  const urn = lost ? null : urnOf(passage, current, anchor, quote);
  const [first] = passage.references;
  const citation: Citation = {
    reference: first ? formatReference(first) : "",
    references: inKeyOrder(passage.references),
    layer: current?.layer.title ?? "",
    language: current?.layer.language ?? "",
    quote,
    from: anchor.from,
    to: anchor.to,
    ...(urn === null ? {} : { urn }),
    state: lost ? "lost" : anchor.fate,
  };
  const place = [passage.rank, passage.id, current?.layer.rank ?? "", current?.layer.id ?? ""];
  return [{ citation, place, key: JSON.stringify(citation) }];
}

/** The words themselves where a CTS URN can name them, else their section; null where the text has no URN. */
function urnOf(passage: Passage, { layer, text }: CurrentText, anchor: TextAnchor, quote: string): string | null {
  const section = passage.references.find((reference) => reference.kind === "section");
  if (layer.urn === "" || section === undefined) return null;
  const nameable = quote !== "" && quote.length <= LONGEST_IN_URN && !quote.includes("\n");
  const words = nameable ? passageUrn(layer.urn, section, { quote, text: text.text, from: anchor.from }) : null;
  const found = words?.ok ? words : passageUrn(layer.urn, section);
  return found.ok ? found.urn : null;
}

function comparePlaced(first: PlacedCitation, second: PlacedCitation): number {
  for (const [index, part] of first.place.entries()) {
    const order = compareCodeUnits(part, second.place[index] ?? "");
    if (order !== 0) return order;
  }
  return (
    first.citation.from - second.citation.from ||
    first.citation.to - second.citation.to ||
    compareCodeUnits(first.citation.quote, second.citation.quote)
  );
}
