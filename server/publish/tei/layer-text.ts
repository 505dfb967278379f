/** server/publish/tei/layer-text.ts - one text of the work, an original or a translation, as a TEI document of its own
 *  within the edition. May import: schema types, shared, siblings. Keeps rules X2-X6 (server/publish/tei/RULES.md). */
import type { RecordOf } from "../../../schema/record.ts";
import type { Reference } from "../../../schema/reference.ts";
import { citedRangeOf, encodedWord } from "../../../shared/cite/cited-range.ts";
import { formatReference, formatReferences } from "../../../shared/cite/format-reference.ts";
import { locusOf } from "../../../shared/cite/locus.ts";
import type { Markup } from "../markup.ts";
import { element, inLines } from "../xml.ts";
import type { Edition } from "./edition.ts";
import { passageMarkup } from "./passage-markup.ts";
import type { PassageNow } from "./places.ts";
import { languageAttribute, nameOf, pointer, tokenOf } from "./pointers.ts";

type Layer = RecordOf<"layers">;

export function layerDocument(edition: Edition, layer: Layer): Markup {
  const language = languageAttribute(layer.language) || null;
  const text = element("text", { "xml:lang": language }, [inLines("body", {}, bodyParts(edition, layer))]);
  return inLines("TEI", { "xml:id": nameOf("layers", layer.id), type: layer.is }, [layerHeader(edition, layer), text]);
}

function layerHeader({ rows, people }: Edition, layer: Layer): Markup {
  const revision = rows.newestRevision(layer.id);
  const witness = layer.witness === null ? undefined : rows.find("witnesses", layer.witness);
  const person = people.named(layer.by);
  const by = layer.by.trim();
  const maker =
    by === ""
      ? null
      : element(
          "editor",
          { role: layer.is === "translation" ? "translator" : "editor", ref: person && pointer(person) },
          by,
        );
  const came = revision
    ? element("p", {}, [
        "As it came in: ",
        revision.label,
        revision.received === null ? "" : ", ",
        revision.received === null ? null : element("date", { when: revision.received }, revision.received),
        revision.note === "" ? "" : `. ${revision.note}`,
      ])
    : null;
  const source =
    witness === undefined
      ? element("p", {}, layer.is === "translation" ? "A translation." : "An original without a witness named.")
      : element(
          "listWit",
          {},
          element("witness", { corresp: pointer(nameOf("witnesses", witness.id)) }, witness.siglum),
        );
  const title = [element("title", {}, layer.title), maker];
  return inLines("teiHeader", {}, [
    inLines("fileDesc", {}, [
      inLines("titleStmt", {}, title),
      publication(layer.urn, came),
      element("sourceDesc", {}, source),
    ]),
    profile(layer.language),
  ]);
}

/** The CTS URN of the text, where it has one, and which state of it this is. */
function publication(urn: string, came: Markup | null): Markup {
  const state = element("availability", {}, came ?? element("p", {}, "Nothing of it came in yet."));
  const idno = urn === "" ? null : element("idno", { type: "CTS-URN" }, urn);
  return inLines("publicationStmt", {}, [element("distributor", {}, "Not published by itself."), idno, state]);
}

function profile(language: string): Markup | null {
  const ident = languageAttribute(language);
  return ident === null || ident === ""
    ? null
    : element("profileDesc", {}, element("langUsage", {}, element("language", { ident }, language)));
}

/** Exercises as divisions, in the order of their passages; a passage that stands in none is a division by itself. */
function bodyParts(edition: Edition, layer: Layer): Markup[] {
  const { rows, places } = edition;
  const runs: { exercise: string | null; passages: PassageNow[] }[] = [];
  for (const place of places.texts.get(layer.id) ?? []) {
    const last = runs.at(-1);
    if (last && last.exercise === place.passage.exercise) last.passages.push(place);
    else runs.push({ exercise: place.passage.exercise, passages: [place] });
  }
  const witness = layer.witness === null ? undefined : rows.find("witnesses", layer.witness);
  const holding = new Map<string, string>();
  const parts = runs.flatMap(({ exercise, passages }) => {
    const divisions = passages.map((place) => passageDivision(edition, place, witness?.siglum ?? null, holding));
    const row = exercise === null ? undefined : rows.find("exercises", exercise);
    if (row === undefined) return divisions;
    const attributes = { type: "exercise", n: row.label || null, corresp: pointer(nameOf("exercises", row.id)) };
    return [inLines("div", attributes, [element("head", {}, row.title), ...divisions])];
  });
  return parts.length === 0 ? [element("p")] : parts;
}

function passageDivision(
  edition: Edition,
  place: PassageNow,
  siglum: string | null,
  holding: Map<string, string>,
): Markup {
  const { id, references } = place.passage;
  const beginnings = references.flatMap((reference) =>
    beginningsOf(reference, siglum, edition.rows.work.levels, holding),
  );
  const attributes = {
    "xml:id": nameOf("passageTexts", place.text.id),
    type: "passage",
    n: formatReferences(references),
    corresp: pointer(nameOf("passages", id)),
    "xml:space": "preserve",
  };
  return inLines("div", attributes, [...beginnings, ...passageMarkup(place, edition.places.offsetsIn(place.text.id))]);
}

/** Where the passage begins, as milestones of the systems it is cited by; what already holds is not said again. A text of
 *  a witness has the leaves of that witness alone. */
function beginningsOf(
  reference: Reference,
  siglum: string | null,
  levels: readonly string[],
  holding: Map<string, string>,
): Markup[] {
  if (reference.kind === "folio" && siglum !== null && reference.witness !== siglum) return [];
  return pointsOf(reference, levels).flatMap(({ unit, ed, n }, index, all) => {
    const [system, value] = [`${unit} ${ed}`, JSON.stringify(all.slice(0, index + 1).map((one) => one.n))];
    if (holding.get(system) === value) return [];
    holding.set(system, value);
    return [element("milestone", { unit, ed: ed || null, n, type: "reference" })];
  });
}

interface Point {
  unit: string;
  ed: string;
  n: string;
}

function pointsOf(reference: Reference, levels: readonly string[]): Point[] {
  switch (reference.kind) {
    case "section":
      return reference.from.map((n, index) => ({ unit: encodedWord(levels[index] ?? "") || "section", ed: "", n }));
    case "folio": {
      const ed = editionWord(reference.witness);
      const { line, ...side } = reference.from;
      const { from } = locusOf({ ...reference, from: side, to: undefined });
      return [{ unit: "folio", ed, n: from }, ...(line === undefined ? [] : [{ unit: "line", ed, n: `${line}` }])];
    }
    case "page": {
      const ed = editionWord(reference.of);
      const { page, line } = reference.from;
      return [{ unit: "page", ed, n: page }, ...(line === undefined ? [] : [{ unit: "line", ed, n: `${line}` }])];
    }
  }
}

const editionWord = (name: string): string => (name === "" ? "" : tokenOf(name));

/** How each passage is cited, exactly, so that the divisions of every text can point at it. */
export function passageList({ passages }: Edition): Markup | null {
  if (passages.length === 0) return null;
  const list = passages.map((passage) =>
    inLines(
      "bibl",
      { "xml:id": nameOf("passages", passage.id) },
      passage.references.map((reference) => {
        const { unit, name, from, to } = citedRangeOf(reference);
        return element("citedRange", { unit, n: name || null, from, to }, formatReference(reference));
      }),
    ),
  );
  return inLines("listBibl", { type: "passages" }, list);
}
