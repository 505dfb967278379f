/** server/store/read-contents.ts - all works with their exercises and passages, and how far each passage is worked.
 *  May import: schema, siblings in server/store. Keeps rule S28 (server/store/RULES.md). */
import type { Contents, PassageProgress } from "../../schema/api.ts";
import type { Layer, Passage, Revision } from "../../schema/work.ts";
import { newestNumber } from "./log.ts";
import type { Store } from "./open-store.ts";
import { gather, rowsWhere, type StoredRow } from "./row-store.ts";

/** As many units of a passage's text as are read to show how it begins. */
const OPENING_UNITS = 120;

/** Read as of one moment, even while another program writes. */
export function readContents(store: Store): Contents {
  return store.db.transaction(() => {
    const works = rowsWhere(store, "works", {}).sort(byRank);
    return { works: works.map((work) => contentsOf(store, work)), at: newestNumber(store) };
  })();
}

function contentsOf(store: Store, workRow: StoredRow): Contents["works"][number] {
  const work = workRow.value.id;
  const layers = rowsWhere(store, "layers", { work }).sort(byRank);
  const revisions = layers.flatMap(({ value }) => rowsWhere(store, "revisions", { layer: value.id }).sort(byRank));
  const passages = rowsWhere(store, "passages", { work }).sort(byRank);
  const rows = [
    workRow,
    ...rowsWhere(store, "witnesses", { work }).sort(byRank),
    ...layers,
    ...revisions,
    ...rowsWhere(store, "exercises", { work }).sort(byRank),
    ...passages,
  ];
  const leading = leadingRevisions(layers, revisions);
  return { rows: gather(rows), passages: progressOf(store, work, passages, leading) };
}

/** The newest revision of each layer, by layer: translations first, then originals, each by rank. The first that has a
 *  passage's words is the one its progress is told by. */
function leadingRevisions(layers: readonly StoredRow[], revisions: readonly StoredRow[]): string[] {
  const byLayer = (is: Layer["is"]) => layers.filter(({ value }) => value.is === is);
  return [...byLayer("translation"), ...byLayer("original")].flatMap(({ value }) => {
    const newest = revisions.findLast((row) => (row.value as unknown as Revision).layer === value.id);
    return newest === undefined ? [] : newest.value.id;
  });
}

/** One anchor of a mark in a current text. */
interface Placed {
  passage: string;
  text: string;
  from: number;
  to: number;
  fate: string;
  /** Kind and id of what is tied. */
  of: string;
  target: string;
  mark: string;
  /** Form of the element that is tied or that owns the action, or null. */
  element: string | null;
}

function progressOf(
  store: Store,
  work: string,
  passages: readonly StoredRow[],
  leading: readonly string[],
): PassageProgress[] {
  const current = currentTexts(store, work, leading);
  const placed = byPassage(placedMarks(store, work));
  const untreated = untreatedPassages(store, work, passages);
  const open = openRows(store, work);
  return passages.map(({ value: { id } }) => {
    const texts = current.get(id) ?? [];
    const lead = texts[0];
    const here = (placed.get(id) ?? []).filter(({ text }) => texts.some((held) => held.id === text));
    const onLead = here.filter(({ text, fate }) => text === lead?.id && fate !== "lost");
    const cruxes = here.flatMap(({ of, target }) =>
      of === "cruxes" ? target : (open.cruxOfReading.get(target) ?? []),
    );
    const questions = here.filter(({ of, target }) => of === "questions" && open.questions.has(target));
    const lost = here.filter(({ fate }) => fate === "lost");
    return {
      passage: id,
      opening: lead?.opening ?? "",
      worked: lead === undefined ? 0 : workedShare(store, lead.id, onLead.filter(isWork)),
      untreated: untreated.has(id) || onLead.some(({ of, element }) => of === "elements" && element === "untreated"),
      openCruxes: new Set(cruxes.filter((crux) => open.cruxes.has(crux))).size,
      openQuestions: new Set(questions.map(({ target }) => target)).size,
      lostMarks: new Set(lost.map(({ mark }) => mark)).size,
    };
  });
}

function byPassage(placed: readonly Placed[]): Map<string, Placed[]> {
  const groups = new Map<string, Placed[]>();
  for (const one of placed) {
    const group = groups.get(one.passage);
    if (group === undefined) groups.set(one.passage, [one]);
    else group.push(one);
  }
  return groups;
}

/** Whatever words are tied to is work on them; an untreated part says that the work is still to come. */
function isWork({ element }: Placed): boolean {
  return element !== "untreated";
}

/** Share of the words of the text that a range touches, 0 to 1. The text is read only where something is marked. */
function workedShare(store: Store, text: string, ranges: readonly Placed[]): number {
  if (ranges.length === 0) return 0;
  const words = String(store.prepare('SELECT "text" FROM "passage_texts" WHERE "id" = ?').pluck().get(text));
  const covered = new Uint8Array(words.length);
  for (const { from, to } of ranges) covered.fill(1, from, to);
  let all = 0;
  let worked = 0;
  for (const { index, 0: word } of words.matchAll(/\S+/gu)) {
    all += 1;
    if (covered.subarray(index, index + word.length).includes(1)) worked += 1;
  }
  return all === 0 ? 0 : worked / all;
}

interface CurrentText {
  id: string;
  opening: string;
}

/** The current texts of each passage in the given revisions, in the order of those. */
function currentTexts(store: Store, work: string, revisions: readonly string[]): Map<string, CurrentText[]> {
  const statement = store.prepare(
    `SELECT t."passage", t."id", substr(t."text", 1, ?) AS "opening" FROM "passage_texts" t
     JOIN "passages" p ON p."id" = t."passage"
     WHERE t."revision" = ? AND p."work" = ? AND NOT EXISTS (
       SELECT 1 FROM "passage_texts" l
       WHERE l."passage" = t."passage" AND l."revision" = t."revision" AND l."number" > t."number")`,
  );
  const current = new Map<string, CurrentText[]>();
  for (const revision of revisions) {
    const rows = statement.all(OPENING_UNITS, revision, work) as { passage: string; id: string; opening: string }[];
    for (const { passage, id, opening } of rows) {
      const list = current.get(passage) ?? [];
      current.set(passage, list);
      list.push({ id, opening: opening.replace(/\s+/gu, " ").trim() });
    }
  }
  return current;
}

function placedMarks(store: Store, work: string): Placed[] {
  return store
    .prepare(
      `SELECT a."passage", a."text", a."from", a."to", a."fate", m."of", m."target", m."id" AS "mark",
         coalesce(e."is", o."is") AS "element"
       FROM "marks" m
       JOIN "anchors" a ON a."mark" = m."id" AND a."is" = 'text'
       LEFT JOIN "elements" e ON m."of" = 'elements' AND e."id" = m."target"
       LEFT JOIN "actions" c ON m."of" = 'actions' AND c."id" = m."target" AND c."owner_kind" = 'elements'
       LEFT JOIN "elements" o ON o."id" = c."owner"
       WHERE m."work" = ?`,
    )
    .all(work) as Placed[];
}

/** Passages in the range of an untreated element. `passages` are in their order. */
function untreatedPassages(store: Store, work: string, passages: readonly StoredRow[]): Set<string> {
  const order = new Map(passages.map(({ value }, index) => [value.id, index]));
  const ranges = store
    .prepare(
      `SELECT e."from_passage" AS "from", e."to_passage" AS "to" FROM "elements" e
       JOIN "exercises" x ON x."id" = e."exercise" WHERE x."work" = ? AND e."is" = 'untreated'`,
    )
    .all(work) as { from: string; to: string }[];
  const untreated = new Set<string>();
  for (const { from, to } of ranges) {
    const first = order.get(from) ?? 0;
    const last = order.get(to) ?? -1;
    for (const { value } of passages.slice(first, last + 1)) untreated.add((value as unknown as Passage).id);
  }
  return untreated;
}

/** A crux is open while none of its readings is adopted and it is not left free; a question, until it is answered or
 *  withdrawn. */
function openRows(store: Store, work: string) {
  const cruxes = store
    .prepare(
      `SELECT c."id" FROM "cruxes" c WHERE c."work" = ? AND c."left_free" IS NULL AND NOT EXISTS (
         SELECT 1 FROM "readings" r WHERE r."crux" = c."id" AND r."status" ->> 'is' = 'adopted')`,
    )
    .pluck()
    .all(work) as string[];
  const questions = store
    .prepare(`SELECT "id" FROM "questions" WHERE "work" = ? AND "state" ->> 'is' = 'open'`)
    .pluck()
    .all(work) as string[];
  const readings = store
    .prepare(`SELECT r."id", r."crux" FROM "readings" r JOIN "cruxes" c ON c."id" = r."crux" WHERE c."work" = ?`)
    .all(work) as { id: string; crux: string }[];
  return {
    cruxes: new Set(cruxes),
    questions: new Set(questions),
    cruxOfReading: new Map(readings.map(({ id, crux }) => [id, crux])),
  };
}

function byRank(a: StoredRow, b: StoredRow): number {
  const left = String(a.value.rank);
  const right = String(b.value.rank);
  if (left !== right) return left < right ? -1 : 1;
  return a.value.id < b.value.id ? -1 : 1;
}
