/** A small invented book with one of everything a paper can tell: readings of every status, a question, a trial, faults,
 *  a version of the day, an opponent, words not yet treated, a followed word, sources, a picture. */
import type { PaperAsk } from "../../schema/paper.ts";
import type { Rows } from "../../schema/record.ts";
import type { Reference } from "../../schema/reference.ts";
import { held, idOf, implied, said, slotAt, supplied, supports, under, WorkBuilder } from "../drill/build-rows.ts";

export interface SmallBook {
  rows: Rows;
  book: WorkBuilder;
  work: string;
  /** The first is complete, the second has a part not treated, the third nothing. */
  exercises: { circle: string; wall: string; empty: string };
  steps: Record<"ride" | "raise" | "pass" | "again" | "advice" | "untreated", string>;
}

const folio = (leaf: number, side: "r" | "v", from: number, to: number): Reference => ({
  kind: "folio",
  witness: "A",
  from: { leaf, side, line: from },
  to: { leaf, side, line: to },
});

/** The words of the first passage, in the translation. */
export const FIRST =
  "Let him ride a circle about the well. Then he raises the spear.\nAnd he gives it to the other, once or twice.";
export const SECOND = "Here he follows the wall. Then he vertit to the stair, and the rest is as before.";

export function smallBook(change: (book: WorkBuilder) => void = () => {}): SmallBook {
  const book = new WorkBuilder("The Small Book", { author: "a rider" });
  const tr = book.layer("Translation", { by: "T. Translator" });
  const la = book.layer("Latin", { is: "original", language: "la" });
  book.put("witnesses", {
    id: idOf("A"),
    work: book.work,
    rank: "a0",
    siglum: "A",
    is: "manuscript",
    name: "the house copy",
    place: "here",
    date: "about 1460",
    note: "",
  });
  const ground = idOf("the court");
  book.put("grounds", {
    id: ground,
    work: book.work,
    rank: "a0",
    name: "the court",
    is: "rectangular",
    slots: {
      length: supplied({ is: "exact", of: 40 }),
      width: supplied({ is: "exact", of: 20 }),
    },
    note: "",
  });
  const station = (name: string, x: number, y: number) =>
    book.put("stations", {
      id: idOf(name),
      ground,
      rank: `a${name.length}`,
      name,
      is: "point",
      outline: supplied({ is: "point", at: { x, y } }),
      partner: null,
      note: "",
    });
  const well = station("the well", 0, 0);
  station("the stair", 0, 20_000);

  const circle = book.exercise("The circle", { label: "1", ground });
  const wall = book.exercise("The wall", { label: "2", ground });
  const empty = book.exercise("The empty one", { label: "3" });
  const p1 = book.passage("p1", [folio(1, "r", 1, 9), { kind: "page", of: "tr.", from: { page: "18" } }], circle);
  const p2 = book.passage("p2", [folio(1, "r", 10, 18), { kind: "page", of: "tr.", from: { page: "19" } }], wall);
  const p3 = book.passage("p3", [folio(1, "v", 1, 9)], wall);
  const t1 = book.text(p1, tr, FIRST);
  const l1 = book.text(p1, la, "Circulum equitet circa puteum. Tum hastam tollit. Et alteri dat, semel aut bis.");
  const t2 = book.text(p2, tr, SECOND);
  book.text(p3, tr, "Of this nobody has said anything yet.");

  const spear = book.object("the spear", "shaft");
  const reins = book.object("the reins", "reins");
  const upright = book.hold("upright", { slots: { level: supplied("high"), zone: supplied("balance") } });
  const source = (key: string, item: Record<string, unknown>) =>
    book.put("sources", { id: idOf(key), work: book.work, item: { id: key, type: "book", ...item } });
  const marr = source("marr", {
    title: "The Balance of the Lance",
    author: [{ family: "Marr", given: "Ada" }],
    issued: { "date-parts": [[1998]] },
    publisher: "Holm Press",
  });
  source("quill", {
    title: "Of Reins",
    author: [{ family: "Quill", given: "C." }],
    issued: { "date-parts": [[2001]] },
    publisher: "Holm Press",
  });
  const picture = book.put("pictures", {
    id: idOf("drawing"),
    work: book.work,
    rank: "a0",
    title: "A drawing",
    witness: idOf("A"),
    where: "f. 2r",
    attachment: "none",
    width: 100,
    height: 50,
    note: "",
  });
  const region = book.put("regions", {
    id: idOf("the hand"),
    picture,
    corners: [
      [10, 10],
      [60, 40],
    ],
    label: "the hand",
  });

  const gait = book.standing("The gait throughout", null, { note: "" });
  book.action(gait, "go at", { gait: supplied("canter") });
  book.standing("On which leg he canters", null, { is: "never mentioned" });

  // The first exercise.
  const laps = book.crux("Once or twice", circle, { is: "ambiguous", note: "Both are in the text." });
  book.mark("cruxes", laps, t1, "once or twice");
  const ride = book.step("Ride the circle", circle, {
    existence: supports("stated", book.mark("elements", idOf("Ride the circle"), t1, "Let him ride a circle")),
  });
  book.mark("elements", ride, l1, "Circulum equitet");
  const rideAct = book.action(ride, "ride", {
    figure: said("circle", "stated", [{ is: "words", mark: book.mark("elements", ride, t1, "a circle") }]),
    turn: { is: "not said" },
    about: implied({ is: "station", station: well }, "What he goes about lies in the middle."),
    laps: held("Once or twice"),
  });
  book.reading("once", laps, {
    argument: "The first word counts.",
    values: [{ at: slotAt(rideAct, "laps"), value: supplied({ is: "times", n: 1 }) }],
    holder: "the editor",
    status: { is: "adopted", on: "2026-03-01", sitting: null, reason: "It is said first.", condition: "" },
    evidence: [{ is: "parallel", source: marr, where: "p. 12", text: "He does it once there." }],
  });
  book.reading("twice", laps, {
    argument: "The last word counts.",
    values: [{ at: slotAt(rideAct, "laps"), value: supplied({ is: "times", n: 2 }) }],
    holder: "T. Translator",
    evidence: [{ is: "parallel", source: marr, where: "p. 12", text: "" }],
  });
  book.reading("as often as he likes", laps, {
    status: { is: "ruled out", on: "2026-03-02", sitting: null, reason: "Nobody would write it so." },
  });
  const raise = book.step("Raise the spear", circle, {
    existence: supports("stated", book.mark("elements", idOf("Raise the spear"), t1, "Then he raises the spear")),
  });
  book.action(raise, "raise", {
    object: said(spear, "implied", [{ is: "parallel", source: marr, where: "p. 40", text: "So it is there." }]),
    hand: said("right", "implied", [{ is: "picture", region }]),
  });
  book.action(raise, "hold", { object: supplied(spear), hold: supplied(upright), hand: supplied("right") });
  book.action(raise, "do nothing", { hand: supplied("left") });
  book.put("faults", {
    id: idOf("fault"),
    work: book.work,
    of: "elements",
    target: raise,
    rank: "a0",
    fault: "The point wanders",
    correction: "Look where it goes",
  });
  book.put("faults", {
    id: idOf("hold fault"),
    work: book.work,
    of: "holds",
    target: upright,
    rank: "a0",
    fault: "It leans",
    correction: "",
  });
  const other = book.crux("The other", circle, { is: "silent" });
  book.mark("cruxes", other, t1, "the other");
  book.reading("the other hand", other, { holder: "the editor" });
  book.reading("the other side", other, { holder: "T. Translator" });
  const pass = book.step("Give it over", circle, {
    existence: supports("stated", book.mark("elements", idOf("Give it over"), t1, "he gives it to the other")),
  });
  book.action(
    pass,
    "pass",
    { object: supplied(spear), to: supplied("left") },
    { guard: under("The other", "the other hand") },
  );
  book.action(pass, "cross the neck", { object: supplied(spear) }, { guard: under("The other", "the other side") });
  book.action(pass, "keep", { object: supplied(reins), hand: supplied("left") });
  const advice = book.element("As round as you can", circle, {
    is: "advice",
    demand: "as round as you can",
    from: ride,
    to: ride,
    rule: null,
  });
  const question = book.question("Is the other always a hand?", circle, other, { asked: "2026-04-05" });
  book.mark("questions", question, t1, "to the other");
  const note = book.put("notes", { id: idOf("remark"), work: book.work, text: "The scribe was in a hurry." });
  book.mark("notes", note, t1, "once");
  book.put("trials", {
    id: idOf("trial"),
    exercise: circle,
    on: "2026-05-06",
    who: "N. Rider",
    way: "mounted",
    choice: [{ crux: laps, reading: idOf("once") }],
    variant: null,
    kit: null,
    edition: null,
    drill: null,
    outcome: "in part",
    findings: [{ element: raise, text: "the spear struck a branch" }],
    note: "",
  });
  book.put("variants", {
    id: idOf("the quiet day"),
    work: book.work,
    exercise: circle,
    rank: "a0",
    name: "the quiet day",
    way: "mounted",
    deltas: [
      { is: "leave out", element: pass, reason: "nobody is ready for it" },
      { is: "words", words: "All of it at a walk", reason: "the ground is wet" },
    ],
  });

  // The second, only begun.
  const follow = book.step("Follow the wall", wall, {
    existence: supports("stated", book.mark("elements", idOf("Follow the wall"), t2, "Here he follows the wall")),
  });
  book.action(follow, "ride", {
    figure: supplied("along the wall"),
    turn: supplied({ to: "left", viewpoint: "rider" }),
  });
  const again = book.element("The same again", wall, {
    is: "again",
    of: { is: "elements", from: follow, to: follow },
    manner: "mirrored",
    except: [],
    existence: supports("stated", book.mark("elements", idOf("The same again"), t2, "the rest is as before")),
  });
  const untreated = book.element("Not yet", wall, {
    is: "untreated",
    fromPassage: p3,
    toPassage: p3,
    estimate: { from: 2, to: 3 },
  });
  const term = book.put("terms", { id: idOf("vertit"), work: book.work, word: "vertit", language: "la", note: "" });
  const sense = book.put("senses", { id: idOf("turns"), term, rank: "a0", title: "he turns", gloss: "Horse and all." });
  book.mark("senses", sense, t2, "vertit");
  book.mark("stations", well, t1, "the well");
  change(book);
  return {
    rows: book.rows(),
    book,
    work: book.work,
    exercises: { circle, wall, empty },
    steps: { ride, raise, pass, again, advice, untreated },
  };
}

export const NO_FILES = { stylesFolder: null, attachment: () => null };

/** A paper of these exercises, in the manner of most tests. */
export function askFor(kind: PaperAsk["kind"], exercises: readonly string[], more: Partial<PaperAsk> = {}): PaperAsk {
  return {
    kind,
    parts: exercises.map((exercise) => ({ exercise, from: null, to: null, variant: null })),
    size: "A4",
    way: "mounted",
    choice: [],
    notesAt: "foot",
    style: "notes and bibliography",
    occasion: "",
    ...more,
  };
}
