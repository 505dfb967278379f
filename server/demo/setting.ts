/** server/demo/setting.ts - what all exercises of the invented book share: the work and its texts, the things carried,
 *  the court and the opening words, the sitting with the translator, and the word that means two things.
 *  May import: siblings. Everything here is invented: book, house, people and places. */
import { BookBuilder, type Revisions } from "./builder.ts";
import { court } from "./court.ts";
import { demoId } from "./demo-id.ts";
import { about, supplied } from "./draft.ts";
import { EDITOR, SAT_ON, TRANSLATOR } from "./people.ts";

/** The book's own entry among the sources: the work names it before it is written. It stands outside the count of ids, so
 *  that no other row of the demo has another id for it. */
const OWN_ENTRY = demoId(100_000);

export type Setting = ReturnType<typeof setting>;

export function setting() {
  const book = new BookBuilder({
    title: "The Varne Riding-House Book",
    author: "an unnamed riding-master",
    levels: [],
    note:
      "Invented. This book comes with Passagework so that there is something to read and to try: there is no such " +
      "book, house, translator or court. Its exercises have been ridden on paper only.",
    source: OWN_ENTRY,
    invented: true,
  });
  book.rows.add(
    "sources",
    {
      work: book.work,
      item: {
        id: "varne",
        type: "manuscript",
        title: "The Varne Riding-House Book (invented)",
        author: [{ literal: "an unnamed riding-master" }],
        translator: [{ literal: TRANSLATOR }],
        issued: { literal: "about 1460" },
        archive: "Varne House",
        archive_location: "the house copy (A), the binding fragment (B), the stable copy (C)",
      },
    },
    OWN_ENTRY,
  );
  const { texts, houseCopy } = witnessesAndTexts(book);
  const things = {
    spear: book.object("shaft", "spear", "A boar-spear.", {
      length: supplied(
        about(2, 0.2),
        "The book never measures it. A longer one would strike the horse when it is passed.",
      ),
    }),
    reins: book.object("reins", "reins", "", {}),
  };
  const sitting = book.add("sittings", {
    on: SAT_ON,
    who: [TRANSLATOR, EDITOR],
    place: "Varne House, over the photographs of A and B",
    note: "The first exercise and two leaves of the second, read aloud with both manuscripts open.",
  });
  const turns = book.term(
    {
      word: "vertit",
      language: "la",
      note:
        "Englished “turns” throughout, so that the doubt stays to be seen. With an object it is the spear that is " +
        "turned; without one, the horse.",
    },
    {
      horse: {
        title: "the horse turns",
        gloss: "Horse and rider turn off their line, or about. Which way is never part of the word.",
      },
      spear: {
        title: "the spear is turned",
        gloss: "The spear is turned in the hand, point for butt, while the horse goes on as it was.",
      },
    },
  );
  return { book, texts, houseCopy, ...things, ...court(book, texts, things), sitting, turns };
}

function witnessesAndTexts(book: BookBuilder): { texts: Revisions; houseCopy: string } {
  const houseCopy = book.add("witnesses", {
    siglum: "A",
    is: "manuscript",
    name: "the house copy",
    place: "Varne House",
    date: "about 1460",
    note: "Complete. One hand, quick and untroubled; its a and its e are easily taken for each other.",
  });
  book.add("witnesses", {
    siglum: "B",
    is: "manuscript",
    name: "the binding fragment",
    place: "Varne House, in the binding of an account book",
    date: "a generation later than A",
    note: "Two leaves: the opening, the first exercise but for its end, and the beginning of the second. One is cut short, one has lost a corner.",
  });
  const translation = book.add("layers", {
    is: "translation",
    title: "Varne, tr.",
    by: TRANSLATOR,
    language: "en",
    witness: null,
    urn: "",
  });
  const original = book.add("layers", {
    is: "original",
    title: "Latin of A",
    by: EDITOR,
    language: "la",
    witness: houseCopy,
    urn: "",
  });
  const cameIn = { received: "2026-08-30", attachment: null, note: "" };
  const texts = {
    translation: book.rows.add("revisions", {
      layer: translation,
      label: "first print",
      from: "the translator's pages",
      ...cameIn,
    }),
    original: book.rows.add("revisions", { layer: original, label: "as copied", from: "the photographs", ...cameIn }),
  };
  return { texts, houseCopy };
}
