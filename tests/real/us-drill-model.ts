/** tests/real/us-drill-model.ts - US Army, Infantry Drill Regulations 1911 (to 1917), paragraphs 782-785, marked up whole:
 *  draw, the sabre knot, present, honours, order; on foot and mounted. What differs mounted is guarded by the way; "as
 *  before" is an again with exceptions; who does it is a role. Long, because four paragraphs are said word by word. */
import type { ImportedText } from "../../schema/imported.ts";
import { held, idOf, onlyWay, said, slotAt, supplied, WorkBuilder } from "../drill/build-rows.ts";
import { Speaker, wordsByReference } from "./source-texts.ts";

export const PARAGRAPHS = ["782", "783", "784", "785"] as const;
type Paragraph = (typeof PARAGRAPHS)[number];

const METRES_PER_INCH = 0.0254;
const OFFICERS = "officers and noncommissioned officers";

/** Everything the exercises share. */
function open(source: ImportedText) {
  const book = new WorkBuilder("Infantry Drill Regulations", { levels: ["paragraph"], invented: false });
  const layer = book.layer("The regulations", { is: "original" });
  const exercises = {
    draw: book.exercise("Draw sabre"),
    present: book.exercise("Present sabre"),
    honors: book.exercise("Honours with troops"),
    order: book.exercise("Order sabre"),
  };
  const home: Record<Paragraph, string> = {
    782: exercises.draw,
    783: exercises.draw,
    784: exercises.present,
    785: exercises.order,
  };
  const words = wordsByReference(source);
  const texts = new Map<Paragraph, string>();
  for (const paragraph of PARAGRAPHS) {
    const passage = book.passage(paragraph, [{ kind: "section", from: [paragraph] }], home[paragraph]);
    texts.set(paragraph, book.text(passage, layer, words.get(paragraph) ?? ""));
  }
  const objects = {
    sabre: book.object("sabre", "blade"),
    scabbard: book.object("scabbard", "sheath"),
    knot: book.object("sabre knot", "other"),
  };
  const speak = (target: string, paragraph: Paragraph, of: "elements" | "cruxes" | "standings" = "elements") =>
    new Speaker(book, of, target, texts.get(paragraph) ?? "");
  return { book, exercises, objects, speak };
}
type Opened = ReturnType<typeof open>;

export function usDrillModel(source: ImportedText) {
  const opened = open(source);
  const draw = drawSabre(opened);
  presentSabre(opened);
  const order = orderSabre(opened);
  return { rows: opened.book.rows(), exercises: opened.exercises, ...draw, ...order };
}

/** 782, with the knot of 783. */
function drawSabre({ book, exercises, objects: { sabre, scabbard, knot }, speak }: Opened) {
  const exercise = exercises.draw;
  const carriedHooked = speak(idOf("scabbard on foot"), "782", "standings").words("On foot", "hooked up.");
  book.standing("scabbard on foot", exercise, {
    title: "The scabbard is hooked up",
    guard: onlyWay("on foot"),
    existence: carriedHooked.existence,
    note: "On foot, whenever nothing else is said",
  });

  // Mounted: before mounting.
  const unhooking = idOf("unhook before mounting");
  const before = speak(unhooking, "782").words("Officers and", "before mounting");
  book.step("unhook before mounting", exercise, {
    guard: onlyWay("mounted"),
    role: OFFICERS,
    cue: before.says("before mounting"),
    existence: before.existence,
  });
  book.action(unhooking, "unhook", { object: before.says(scabbard) }, { existence: before.existence });

  // 783: the knot, where it is used.
  const knotAdvice = idOf("the knot");
  const used = speak(knotAdvice, "783").words("when the saber knot", "returning saber");
  const suspended = speak(knotAdvice, "783").words("When publishing", "saber knot");
  book.element("the knot", exercise, {
    is: "advice",
    demand:
      "When the sabre knot is used, it is on the wrist from before drawing until after returning; from it the sabre hangs when orders are published or the roll is called",
    from: null,
    to: null,
    rule: null,
    existence: used.existence,
    guard: [{ is: "reading", crux: idOf("knot"), readings: [idOf("it is used")] }],
  });
  book.action(
    knotAdvice,
    "hook",
    {
      object: used.says(knot),
      to: suspended.implies("the right wrist", "the sabre is said to hang from the right wrist by it"),
    },
    { existence: used.existence, timing: used.says({ is: "before" }) },
  );
  const knotCrux = book.crux("knot", exercise, {
    title: "Whether the knot is used",
    is: "silent",
    leftFree: {
      on: "2026-05-04",
      sitting: null,
      reason: "The text leaves it to the man",
      default: idOf("it is not used"),
    },
  });
  speak(knotCrux, "783", "cruxes").words("when the saber knot is used");
  book.reading("it is used", knotCrux);
  book.reading("it is not used", knotCrux);

  // First motion, on foot.
  const first = idOf("draw, first motion");
  const at = speak(first, "782");
  const command = at.words("At the command draw");
  book.step("draw, first motion", exercise, {
    guard: onlyWay("on foot"),
    cue: command.says("the command “draw”"),
    existence: at.words("At the command draw", "left hand.").existence,
  });
  const unhook = at.words("unhook the saber", "upper ring");
  const a1 = book.action(
    first,
    "unhook",
    {
      hand: unhook.says("left"),
      object: unhook.implies(scabbard, "the sabre is in its scabbard, and the hook holds the scabbard’s ring"),
      how: unhook.says("with the thumb on the end of the hook, two fingers lifting the upper ring"),
    },
    { existence: unhook.existence },
  );
  const grasp = at.words("grasp the scabbard", "upper band");
  const a2 = book.action(
    first,
    "take",
    { hand: grasp.says("left"), object: grasp.says(scabbard), zone: grasp.says("upper band") },
    { existence: grasp.existence },
  );
  const hiltForward = at.words("bring the hilt", "forward");
  const a3 = book.action(
    first,
    "other",
    {
      who: hiltForward.implies("left hand", "it holds the scabbard"),
      object: hiltForward.says(sabre),
      words: hiltForward.says("bring the hilt a little forward"),
    },
    { existence: hiltForward.existence },
  );
  const seize = at.words("seize the grip", "right hand");
  const a4 = book.action(
    first,
    "take",
    { hand: seize.says("right"), object: seize.says(sabre), zone: seize.says("hilt") },
    { existence: seize.existence },
  );
  const six = at.words("draw the blade", "scabbard");
  const a5 = book.action(
    first,
    "draw",
    {
      hand: six.implies("right", "it has the grip"),
      object: six.says(sabre),
      from: six.says(scabbard),
      distance: six.says({ is: "exact", of: 6 * METRES_PER_INCH }),
    },
    { existence: six.existence },
  );
  const press = at.words("pressing the", "left hand");
  const a6 = book.action(
    first,
    "carry",
    { hand: press.says("left"), object: press.says(scabbard), contact: press.says({ with: "thigh", degree: "bears" }) },
    { existence: press.existence, timing: press.says({ is: "with", action: a5 }) },
  );

  // Second motion, on foot: it ends in the carry.
  const carry = book.hold("carry", {
    for: ["blade"],
    slots: {
      zone: supplied("hilt"),
      contact: supplied({ with: "shoulder", degree: "touches" }),
      edge: supplied("front"),
    },
  });
  const second = idOf("draw, second motion");
  const then = speak(second, "782");
  const saber = then.words("At the command saber");
  book.step("draw, second motion", exercise, {
    guard: onlyWay("on foot"),
    cue: saber.says("the command “sabre”"),
    existence: then.words("At the command saber", "by the side.").existence,
  });
  const quickly = then.words("draw the saber", "quickly");
  book.action(
    second,
    "draw",
    { hand: quickly.implies("right", "it has the grip"), object: quickly.says(sabre), how: quickly.says("quickly") },
    { existence: quickly.existence },
  );
  const raising = then.words("raising the arm", "the arm;");
  book.action(
    second,
    "carry",
    {
      hand: raising.implies("right", "it has the grip"),
      object: raising.says(sabre),
      bearing: raising.says({ is: "toward", what: "the right front" }),
      angle: raising.says({ is: "about", of: 45, spread: 0 }),
      edge: raising.says("down"),
      how: raising.says("the arm at its full extent, the sabre in a straight line with it"),
    },
    { existence: raising.existence },
  );
  const pause = then.words("make a", "pause");
  book.action(second, "wait", { how: pause.says("a slight pause") }, { existence: pause.existence });
  const shoulder = then.words("bring the back", "front");
  const b4 = book.action(
    second,
    "carry",
    {
      object: shoulder.implies(sabre, "the blade is the sabre’s"),
      edge: shoulder.says("front"),
      contact: shoulder.says({ with: "shoulder", degree: "touches", words: "with the back of the blade" }),
    },
    { existence: shoulder.existence },
  );
  const side = then.words("arm nearly", "elbow back");
  const b5 = book.action(
    second,
    "rest",
    {
      hand: side.implies("right", "it has the grip"),
      on: side.says({ with: "other", words: "the side", degree: "near" }),
      how: side.says("arm nearly extended, elbow back"),
    },
    { existence: side.existence },
  );
  const fingers = then.words("third and", "the grip");
  book.action(
    second,
    "keep",
    {
      hand: fingers.implies("right", "it has the grip"),
      object: fingers.implies(sabre, "the grip is the sabre’s"),
      zone: fingers.says("hilt"),
      how: fingers.says("third and fourth fingers back of the grip"),
    },
    { existence: fingers.existence },
  );
  const hook = then.words("at the same time", "supporting it");
  const b7 = book.action(
    second,
    "hook",
    {
      hand: hook.says("left"),
      object: hook.says(scabbard),
      how: hook.says("thumb through the upper ring, two fingers supporting it"),
    },
    { existence: hook.existence, timing: held("same time") },
  );
  const drop = then.words("drop the left", "the side");
  const b8 = book.action(
    second,
    "release",
    { hand: drop.says("left"), object: drop.implies(scabbard, "it held the scabbard") },
    { existence: drop.existence, timing: drop.implies({ is: "after action", action: b7 }, "it hooks first") },
  );
  const b9 = book.action(
    second,
    "rest",
    { hand: drop.says("left"), on: drop.says({ with: "other", words: "the side", degree: "near" }) },
    { existence: drop.existence, timing: drop.implies({ is: "after action", action: b7 }, "it hooks first") },
  );
  const position = then.words("This is", "dismounted");
  const b10 = book.action(
    second,
    "hold",
    {
      object: position.implies(sabre, "it is the sabre’s carry"),
      hold: position.says(carry),
      hand: position.implies("right", "it has the grip"),
    },
    { existence: position.existence, timing: position.implies({ is: "after" }, "it is where the motion ends") },
  );

  // "At the same time": as which?
  const sameTime = book.crux("same time", exercise, { title: "At the same time as what the scabbard is hooked up" });
  speak(sameTime, "782", "cruxes").words("at the same time");
  book.reading("with the shoulder", sameTime, {
    argument: "The words follow those that bring the blade to the shoulder.",
    values: [
      {
        at: slotAt(b7, "timing"),
        value: said({ is: "with", action: b4 }, "implied", [{ is: "premise", text: "it follows at once" }]),
      },
    ],
  });
  book.reading("throughout the motion", sameTime, {
    argument: "The two hands have each their own half of the motion.",
    values: [
      {
        at: slotAt(b7, "timing"),
        value: said({ is: "throughout" }, "implied", [{ is: "premise", text: "a semicolon parts the hands" }]),
      },
    ],
  });

  // Mounted: as before, with exceptions.
  const again = idOf("draw, mounted");
  const mounted = speak(again, "782");
  const reach = mounted.words("they reach", "bridle hand");
  const aid = mounted.words("without the", "bridle hand");
  const thigh = mounted.words("the right hand at", "right thigh");
  const over = {
    reach: idOf("reach over"),
    thigh: idOf("on the thigh"),
  };
  book.element("draw, mounted", exercise, {
    is: "again",
    guard: onlyWay("mounted"),
    role: OFFICERS,
    cue: mounted.words("when mounted", "draw saber").says("mounted, the command “draw sabre”"),
    of: { is: "elements", from: first, to: second },
    manner: "as it is",
    except: [
      ...[a1, a2, a3, a6, b7, b8, b9, b10].map((action) => ({ is: "without" as const, action })),
      { is: "instead", action: a4, by: over.reach },
      { is: "instead", action: b5, by: over.thigh },
    ],
    existence: mounted.words("draw the saber as", "before").existence,
  });
  book.action(
    again,
    "take",
    {
      hand: reach.says("right"),
      object: reach.implies(sabre, "it is what is drawn"),
      zone: reach.implies("hilt", "as before"),
      how: reach.says("over the bridle hand"),
    },
    { id: over.reach, existence: reach.existence },
  );
  book.action(again, "do nothing", { hand: aid.says("rein hand") }, { existence: aid.existence });
  book.action(
    again,
    "rest",
    { hand: thigh.says("right"), on: thigh.says({ with: "thigh", side: "right", degree: "touches" }) },
    { id: over.thigh, existence: thigh.existence },
  );
  return { knotCrux, sameTime };
}

/** 784: present, and who does which motion in honours. */
function presentSabre({ book, exercises, objects: { sabre }, speak }: Opened) {
  const first = idOf("present, first motion");
  const at = speak(first, "784");
  book.step("present, first motion", exercises.present, {
    cue: at.words("Being at", "carry").says("being at the order or the carry; the command “present”"),
    existence: at.words("At the command present", "the grip.").existence,
  });
  const raise = at.words("raise and", "the neck");
  book.action(
    first,
    "raise",
    {
      hand: raise.implies("right", "the sabre is in it"),
      object: raise.says(sabre),
      height: raise.says("base of the hilt as high as the chin, 6 inches in front of the neck"),
    },
    { existence: raise.existence },
  );
  const edge = at.words("edge to", "the hilt,");
  book.action(
    first,
    "carry",
    {
      object: edge.implies(sabre, "it is raised"),
      bearing: at.words("to the front", "front").says({ is: "clock", hour: 12 }),
      edge: edge.says("left"),
      how: edge.says("point 6 inches farther to the front than the hilt"),
    },
    { existence: edge.existence },
  );
  const thumb = at.words("thumb extended", "the grip.");
  book.action(
    first,
    "keep",
    {
      hand: thumb.implies("right", "the sabre is in it"),
      object: thumb.implies(sabre, "the grip is the sabre’s"),
      zone: thumb.says("hilt"),
      how: thumb.says("thumb extended on the left of the grip, all fingers grasping it"),
    },
    { existence: thumb.existence },
  );

  const second = idOf("present, second motion");
  const then = speak(second, "784");
  const command = then.words("At the command saber", "arms");
  book.step("present, second motion", exercises.present, {
    cue: command.says("the command “sabre” or “arms”"),
    existence: then.words("At the command saber", "arm extended").existence,
  });
  const lower = then.words("lower the saber", "the ground");
  book.action(
    second,
    "lower",
    {
      hand: lower.implies("right", "the sabre is in it"),
      object: lower.says(sabre),
      height: lower.says("near the ground"),
    },
    { existence: lower.existence },
  );
  const foot = then.words("point in", "right foot");
  book.action(
    second,
    "carry",
    {
      object: foot.implies(sabre, "it is lowered"),
      bearing: foot.says({ is: "toward", what: "the front of the right foot" }),
    },
    { existence: foot.existence, guard: onlyWay("on foot") },
  );
  const stirrup = then.words("point a little", "stirrup");
  book.action(
    second,
    "carry",
    {
      object: stirrup.implies(sabre, "it is lowered"),
      bearing: stirrup.says({ is: "toward", what: "a little to the right and front of the stirrup" }),
    },
    { existence: stirrup.existence, guard: onlyWay("mounted") },
  );
  const left = then.words("edge to the left, hand", "hand by");
  book.action(
    second,
    "carry",
    { object: left.implies(sabre, "it is lowered"), edge: left.says("left") },
    { existence: left.existence },
  );
  const side = then.words("hand by", "the side");
  book.action(
    second,
    "rest",
    {
      hand: side.implies("right", "the sabre is in it"),
      on: side.says({ with: "other", words: "the side", degree: "near" }),
      how: then.words("arm extended").says("arm extended"),
    },
    { existence: side.existence, guard: onlyWay("on foot") },
  );
  const thigh = then.words("If mounted", "the thigh");
  book.action(
    second,
    "rest",
    {
      hand: thigh.implies("right", "the sabre is in it"),
      on: thigh.says({ with: "thigh", degree: "near", words: "behind it" }),
    },
    { existence: thigh.existence, guard: onlyWay("mounted") },
  );
  const grip = then.words("thumb on left", "grip,");
  book.action(
    second,
    "keep",
    {
      hand: grip.implies("right", "the sabre is in it"),
      object: grip.implies(sabre, "the grip is the sabre’s"),
      how: grip.says("thumb on the left of the grip"),
    },
    { existence: grip.existence },
  );

  const honour = (name: string, role: string, motion: string, cue: string, ends: [string, string]) => {
    const says = speak(idOf(name), "784").words(...ends);
    book.element(name, exercises.honors, {
      is: "again",
      role,
      cue: says.says(cue),
      of: { is: "elements", from: motion, to: motion },
      manner: "as it is",
      except: [],
      existence: says.existence,
    });
  };
  honour("officers, first motion", "officers", first, "the command “present”", ["officers execute", "command present"]);
  honour("officers, second motion", "officers", second, "the command “arms”", ["the second motion", "command arms"]);
  honour("enlisted men", "enlisted men with the sabre", first, "the command “arms”; the second motion is omitted", [
    "enlisted men",
    "second motion.",
  ]);
}

/** 785. */
function orderSabre({ book, exercises, objects: { sabre }, speak }: Opened) {
  const exercise = exercises.order;
  const order = idOf("order");
  const at = speak(order, "785");
  book.step("order", exercise, {
    cue: at.words("Being at a carry", "carry").says("being at a carry; the commands “order”, “sabre” or “arms”"),
    existence: at.words("Drop the point", "of grip").existence,
  });
  const drop = at.words("Drop the point", "the front");
  book.action(
    order,
    "lower",
    { object: drop.says(sabre), bearing: drop.says({ is: "clock", hour: 12 }), how: drop.says("directly") },
    { existence: drop.existence },
  );
  const down = at.words("point on", "down");
  const lie = book.action(
    order,
    "carry",
    { object: down.implies(sabre, "it is dropped"), edge: down.says("down"), contact: held("ground") },
    { existence: down.existence },
  );
  const thumb = at.words("thumb on", "grip");
  book.action(
    order,
    "keep",
    {
      hand: thumb.implies("right", "the sabre is in it"),
      object: thumb.implies(sabre, "the grip is the sabre’s"),
      how: thumb.says("thumb on the back of the grip"),
    },
    { existence: thumb.existence },
  );
  const ground = book.crux("ground", exercise, {
    title: "Whether the point is on the ground or near it",
    leftFree: { on: "2026-05-04", sitting: null, reason: "The text allows both", default: idOf("near it") },
  });
  speak(ground, "785", "cruxes").words("on or near", "ground");
  const says = at.words("on or near", "ground");
  book.reading("on it", ground, {
    values: [{ at: slotAt(lie, "contact"), value: says.says({ with: "ground", degree: "touches" }) }],
  });
  book.reading("near it", ground, {
    values: [{ at: slotAt(lie, "contact"), value: says.says({ with: "ground", degree: "near" }) }],
  });

  const from = speak(idOf("order from the present"), "785");
  const next = from.words("Being at the present", "order saber");
  book.element("order from the present", exercise, {
    is: "again",
    role: OFFICERS,
    cue: next.says("being at the present; the next command is “order arms”"),
    of: { is: "elements", from: order, to: order },
    manner: "as it is",
    except: [],
    existence: next.existence,
  });
  const back = speak(idOf("carry from the present"), "785");
  const other = back.words("if the command", "carry saber");
  book.step("carry from the present", exercise, {
    role: OFFICERS,
    cue: other.says("being at the present; the next command is another"),
    existence: other.existence,
  });
  book.action(
    idOf("carry from the present"),
    "hold",
    {
      object: other.implies(sabre, "it is the sabre’s carry"),
      hold: other.says(idOf("carry")),
      hand: other.implies("right", "the sabre is in it"),
    },
    { existence: other.existence },
  );
  const brought = speak(idOf("with the arms"), "785").words("When arms", "order saber");
  book.element("with the arms", exercise, {
    is: "advice",
    demand: "When arms are brought to the order, those with the sabre drawn order sabre",
    from: order,
    to: order,
    rule: null,
    existence: brought.existence,
  });
  return { ground };
}
