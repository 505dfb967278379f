/** server/publish/tei/edition.ts - a work as one TEI P5 document: header, what is said of the texts, and the texts.
 *  May import: schema types, shared, siblings. Pure; keeps rules X1-X12 (server/publish/tei/RULES.md). */
import type { RecordOf, Rows } from "../../../schema/record.ts";
import { type ExerciseRows, exerciseRows, type WorkRows, workRows } from "../../../shared/drill/exercise-rows.ts";
import { namesOf } from "../../../shared/drill/names.ts";
import type { Names } from "../../../shared/drill/words.ts";
import { compareRanked } from "../../../shared/rank.ts";
import { element, inLines, XML_DECLARATION } from "../xml.ts";
import { editionHeader } from "./edition-header.ts";
import { facsimile } from "./facsimile.ts";
import { layerDocument } from "./layer-text.ts";
import { type NamedRows, namedRows } from "./named-rows.ts";
import { type People, peopleOf } from "./people.ts";
import { type Places, placesOf } from "./places.ts";
import { nameOf } from "./pointers.ts";
import { standOff } from "./stand-off.ts";

/** What every part of the edition is made from. */
export interface Edition {
  rows: WorkRows;
  names: Names;
  places: Places;
  people: People;
  named: NamedRows;
  /** In the order of the book. */
  passages: readonly RecordOf<"passages">[];
  exercises: readonly ExerciseRows[];
}

/** `rows` as a bundle of the work gives them. Throws RangeError when the work is not among them. */
export function teiEdition(allRows: Rows, work: string): string {
  const rows = workRows(allRows, work);
  const exercises = rows
    .all("exercises")
    .filter(({ work: of }) => of === work)
    .sort(compareRanked)
    .map(({ id }) => exerciseRows(allRows, id, rows));
  const named = namedRows(rows, exercises);
  const edition: Edition = {
    rows,
    names: namesOf(allRows),
    places: placesOf(rows),
    people: peopleOf(rows),
    named,
    passages: named.of("passages"),
    exercises,
  };
  const texts = rows.layers.map((layer) => layerDocument(edition, layer));
  const whole = inLines("teiCorpus", { xmlns: "http://www.tei-c.org/ns/1.0", "xml:lang": "en" }, [
    editionHeader(edition),
    facsimile(edition),
    standOff(edition),
    ...(texts.length === 0 ? [withoutText(edition)] : texts),
  ]);
  return `${XML_DECLARATION.text}${whole.text}\n`;
}

/** A work nobody has brought a text of: TEI wants one all the same. */
function withoutText({ rows }: Edition) {
  const title = element("titleStmt", {}, element("title", {}, rows.work.title));
  const none = element("p", {}, "No text of the work was brought in yet.");
  const header = element("fileDesc", {}, [
    title,
    element("publicationStmt", {}, none),
    element("sourceDesc", {}, none),
  ]);
  return element("TEI", { "xml:id": nameOf("layers", "none") }, [
    element("teiHeader", {}, header),
    element("text", {}, element("body", {}, element("p"))),
  ]);
}
