/** tests/drill/small-work.ts - a work of one exercise that has a bit of everything: what stands throughout, a crux that
 *  holds slots and guards a step, a crux inside a hold with an exception, one that only arises under another, an again,
 *  an advice, an untreated part, a question, a note, a version of the day. */
import { held, idOf, onlyWay, said, slotAt, supplied, supports, under, WorkBuilder } from "./build-rows.ts";

export function smallWork() {
  const book = new WorkBuilder("A riding book");
  const layer = book.layer("The translation", { urn: "urn:cts:demo:book.one.en:" });
  const exercise = book.exercise("First exercise", { label: "1" });
  const passage = book.passage("7.13", [{ kind: "section", from: ["7", "13"] }], exercise);
  const text = book.text(
    passage,
    layer,
    "Ride the circle about the well at a canter, then turn. Sit still throughout.",
  );
  const after = book.passage("7.14", [{ kind: "section", from: ["7", "14"] }], exercise);
  book.text(after, layer, "Then charge.");
  const spear = book.object("spear", "shaft");

  const canter = book.standing("At the canter throughout", exercise);
  book.action(canter, "go at", { gait: supplied("canter") });

  const carried = book.hold("carried upright", { slots: { zone: supplied("balance"), level: held("height") } });
  const height = book.crux("height", null, {
    exceptions: [{ element: idOf("The spear"), reading: idOf("at the thigh"), reason: "the picture shows it" }],
  });
  book.reading("at the thigh", height, { values: [{ at: slotAt(carried, "level", "holds"), value: supplied("low") }] });
  book.reading("at the shoulder", height, {
    values: [{ at: slotAt(carried, "level", "holds"), value: supplied("high") }],
  });

  const first = book.step("The circle", exercise);
  const mark = book.mark("elements", first, text, "Ride", "well");
  const ride = book.action(first, "ride", {
    figure: said("circle", "stated", [{ is: "words", mark }]),
    turn: held("side"),
  });
  book.action(first, "hold", { object: supplied(spear), hold: supplied(carried), hand: supplied("right") });
  const turning = book.step("The turn", exercise, {
    guard: under("side", "to the left"),
    existence: supports("stated", book.mark("elements", idOf("The turn"), text, "then turn")),
  });
  const turn = book.action(turning, "ride", { figure: supplied("turn"), manner: held("manner") });
  book.action(turning, "go at", { gait: supplied("walk") });
  const last = book.step("The spear", exercise);
  book.action(last, "hold", { object: supplied(spear), hold: supplied(carried), hand: supplied("right") });
  book.action(last, "carry", { object: supplied(spear), bearing: supplied({ is: "clock", hour: 9 }) });
  book.action(
    last,
    "look",
    { toward: supplied({ is: "words", words: "the horse’s ears" }) },
    { guard: onlyWay("mounted") },
  );
  book.element("Sit still", exercise, { is: "advice", demand: "Sit still", from: first, to: last, rule: null });
  book.element("Once more", exercise, {
    is: "again",
    of: { is: "elements", from: first, to: last },
    manner: "mirrored",
    except: [{ is: "without", action: turn }],
  });
  book.element("The charge", exercise, {
    is: "untreated",
    fromPassage: after,
    toPassage: after,
    estimate: { from: 1, to: 2 },
  });

  const side = book.crux("side", exercise);
  for (const to of ["left", "right"] as const) {
    book.reading(`to the ${to}`, side, {
      values: [{ at: slotAt(ride, "turn"), value: supplied({ to, viewpoint: "rider" }) }],
    });
  }
  const manner = book.crux("manner", exercise, {
    arisesWhen: [{ is: "reading", crux: side, readings: [idOf("to the left")] }],
  });
  for (const how of ["on the haunches", "halt and turn"] as const) {
    book.reading(how, manner, { values: [{ at: slotAt(turn, "manner"), value: supplied(how) }] });
  }
  book.question("To which side?", exercise, side);
  const note = book.put("notes", { id: idOf("a note"), work: book.work, text: "The well is dry." });
  book.mark("notes", note, text, "the well");
  const variant = book.put("variants", {
    id: idOf("beginners"),
    work: book.work,
    exercise,
    rank: "a0",
    name: "beginners",
    way: "on foot",
    deltas: [
      { is: "leave out", element: turning, reason: "too soon" },
      {
        is: "act instead",
        action: ride,
        act: { verb: "ride", slots: { figure: supplied("straight") } },
        reason: "no circle on foot",
      },
      { is: "words", words: "Bring a stick", reason: "no spears today" },
    ],
  });
  return { rows: book.rows(), exercise, side, manner, height, variant };
}
