/** server/publish/tei/edition-header.ts - what the edition is, who made and reads what, from which witnesses and sources,
 *  and how it is encoded. May import: schema types, shared, siblings. Keeps rule X2 (server/publish/tei/RULES.md). */
import { encodedWord } from "../../../shared/cite/cited-range.ts";
import { compareRanked } from "../../../shared/rank.ts";
import type { Markup } from "../markup.ts";
import { element, inLines } from "../xml.ts";
import type { Edition } from "./edition.ts";
import { nameOf } from "./pointers.ts";
import { sourceEntry } from "./source-entry.ts";

export function editionHeader(edition: Edition): Markup {
  return inLines("teiHeader", {}, [fileDescription(edition), encodingDescription(edition)]);
}

function fileDescription(edition: Edition): Markup {
  const { work } = edition.rows;
  const author = work.author.trim() === "" ? null : element("author", {}, work.author);
  const invented = work.invented ? note("invented", "This book, its witnesses and its people are invented.") : null;
  const about = work.note.trim() === "" ? null : note("work", work.note);
  const notes = [invented, about].filter((one) => one !== null);
  return inLines("fileDesc", {}, [
    inLines("titleStmt", {}, [element("title", {}, work.title), author, ...responsibility(edition)]),
    element("publicationStmt", {}, element("p", {}, "Written from the rows of the work as they stand; not published.")),
    notes.length === 0 ? null : inLines("notesStmt", {}, notes),
    sourceDescription(edition),
  ]);
}

const note = (type: string, words: string): Markup => element("note", { type }, words);

function responsibility({ people }: Edition): Markup[] {
  return people.list.map(({ name, called, did }) =>
    element("respStmt", { "xml:id": name }, [
      ...did.map((one) => element("resp", {}, one)),
      element("name", {}, called),
    ]),
  );
}

function sourceDescription({ rows }: Edition): Markup {
  const ofWork = ({ work }: { work: string }) => work === rows.work.id;
  const witnesses = rows.all("witnesses").filter(ofWork).sort(compareRanked);
  const sources = rows.all("sources").filter(ofWork);
  if (witnesses.length === 0 && sources.length === 0)
    return element("sourceDesc", {}, element("p", {}, "No witness and no source was entered."));
  const listWit =
    witnesses.length === 0
      ? null
      : inLines(
          "listWit",
          {},
          witnesses.map(({ id, siglum, is, name, place, date, note: about }) =>
            element("witness", { "xml:id": nameOf("witnesses", id), n: siglum }, [
              element("abbr", { type: "siglum" }, siglum),
              ...[is, name, place, date].filter((part) => part.trim() !== "").map((part) => `, ${part}`),
              about.trim() === "" ? null : element("note", {}, about),
            ]),
          ),
        );
  const listBibl = sources.length === 0 ? null : inLines("listBibl", { type: "sources" }, sources.map(sourceEntry));
  return inLines("sourceDesc", {}, [listWit, listBibl]);
}

/** What a reader of the file must know of it; the last of these is for programs. */
const HOW_IT_IS_READ = [
  "Each text of the work is a TEI document of its own below. Its divisions of the type passage point (corresp) at the list of passages in the stand-off part, which says exactly how each is cited. Milestones of the type reference stand where a passage begins in a system it is cited by.",
  "Every blank inside a passage stands for itself. Anchors mark the ends of words that something is said of; spans in the stand-off part go from anchor to anchor and point (ana) at what is said: steps, actions, cruxes, readings, questions, terms and the other things of the work. A span of the type lost quotes words that no longer stand in the text.",
  "A feature points (ana) at its warrant: stated, implied or supplied; at not-said, not-applicable or not-settled where it has no value of its own, and then (corresp) at its crux.",
];

function encodingDescription({ rows }: Edition): Markup {
  const levels = rows.work.levels.map(encodedWord).filter((unit) => unit !== "");
  return inLines("encodingDesc", {}, [
    inLines(
      "editorialDecl",
      {},
      HOW_IT_IS_READ.map((words) => element("p", {}, words)),
    ),
    levels.length === 0
      ? null
      : inLines(
          "refsDecl",
          {},
          levels.map((unit) => element("refState", { unit, delim: "." })),
        ),
    element("variantEncoding", { method: "double-end-point", location: "external" }),
  ]);
}
