/** server/publish/annotations/collection.ts - every mark of a work as a Web Annotation, in one collection.
 *  May import: Node's own modules, schema types, shared, server/publish, siblings. Pure: no clock, nobody's name but those
 *  that readings and questions have; ids are those of the rows. */
import { createHash } from "node:crypto";
import type { Rows } from "../../../schema/record.ts";
import { exerciseRows, type WorkRows, workRows } from "../../../shared/drill/exercise-rows.ts";
import { namesOf } from "../../../shared/drill/names.ts";
import { compareRanked } from "../../../shared/rank.ts";
import { stepNumbers } from "../step-numbers.ts";
import { markedThing, type Telling } from "./marked-thing.ts";
import { codePointCounter, targetsOf, urnOf } from "./targets.ts";
import {
  type Annotation,
  type AnnotationCollection,
  CONTEXT,
  type NamedBody,
  type TextualBody,
} from "./web-annotation.ts";

/** `allRows` as a bundle of the work gives them. Throws RangeError when the work is not among them. */
export function annotationCollection(allRows: Rows, work: string): AnnotationCollection {
  const rows = workRows(allRows, work);
  const telling = tellingOf(allRows, rows);
  const codePoints = codePointCounter();
  const items = marksInOrder(rows).flatMap((mark): Annotation[] => {
    const thing = markedThing(telling, mark);
    const target = targetsOf(rows, rows.anchorsOf(mark.id), codePoints);
    if (thing === null || target.length === 0) return [];
    const tag: TextualBody = { ...plain(thing.tag), language: "en", purpose: "tagging" };
    const purpose = thing.motivation === "commenting" ? "commenting" : "describing";
    const says: TextualBody[] = thing.says === "" ? [] : [{ ...plain(thing.says), purpose }];
    const row: NamedBody = { type: "SpecificResource", source: urnOf(mark.target), purpose: "identifying" };
    return [
      { id: urnOf(mark.id), type: "Annotation", motivation: thing.motivation, body: [tag, ...says, row], target },
    ];
  });
  const id = nameWithin(work, "annotations");
  const head = { "@context": CONTEXT, id, type: "AnnotationCollection", label: rows.work.title } as const;
  if (items.length === 0) return { ...head, total: 0 };
  const page = { id: nameWithin(work, "annotations, page 1"), type: "AnnotationPage", partOf: id } as const;
  return { ...head, total: items.length, first: { ...page, startIndex: 0, items } };
}

const plain = (value: string) => ({ type: "TextualBody", value, format: "text/plain" }) as const;

function tellingOf(allRows: Rows, rows: WorkRows): Telling {
  const names = namesOf(allRows);
  const exercises = rows
    .all("exercises")
    .filter(({ work }) => work === rows.work.id)
    .map(({ id }) => {
      const own = exerciseRows(allRows, id, rows);
      return [id, { rows: own, numbers: stepNumbers(own, names) }] as const;
    });
  return { rows, names, exercises: new Map(exercises) };
}

/** By the first place of each in the book, then by their ids; marks without a place in the words come last. */
function marksInOrder(rows: WorkRows) {
  const passages = rows.all("passages").sort(compareRanked);
  const places = new Map(passages.map(({ id }, index) => [id, index]));
  const marks = rows.all("marks").filter(({ work }) => work === rows.work.id);
  const placed = marks.map((mark) => {
    const anchors = rows.anchorsOf(mark.id).flatMap((anchor) => (anchor.is === "text" ? [anchor] : []));
    const found = anchors.map(({ passage, from }) => [places.get(passage) ?? places.size, from] as const);
    return { mark, place: found.sort(byPlace)[0] ?? ([places.size + 1, 0] as const) };
  });
  // The rows come by id, and sorting keeps that where places are the same.
  return placed.sort((a, b) => byPlace(a.place, b.place)).map(({ mark }) => mark);
}

type Place = readonly [passage: number, from: number];
const byPlace = (a: Place, b: Place): number => a[0] - b[0] || a[1] - b[1];

/** A name of its own for a part of a work: a UUID made of the work's and of what it is (RFC 9562, version 5). */
function nameWithin(work: string, part: string): string {
  const space = Buffer.from(work.replaceAll("-", ""), "hex");
  const bytes = createHash("sha1").update(space).update(part, "utf8").digest().subarray(0, 16);
  bytes.writeUInt8((bytes.readUInt8(6) & 0x0f) | 0x50, 6);
  bytes.writeUInt8((bytes.readUInt8(8) & 0x3f) | 0x80, 8);
  const hex = bytes.toString("hex");
  return urnOf([hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-"));
}
