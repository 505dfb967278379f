/** server/demo/holds-and-greeting.ts - the three ways of carrying the spear and the greeting, with the words that first
 *  teach them. May import: siblings. Sides are parameters: a hold is described for whichever hand has the spear. */
import type { CircleWords } from "./circle-words.ts";
import { clock, does, implied, stated, supplied } from "./draft.ts";
import { addActions } from "./exercise-builder.ts";
import type { Setting } from "./setting.ts";

export function holdsAndGreeting({ book, spear }: Setting, { setOut, point, greet }: CircleWords) {
  const balance = implied("balance", "The opening words: held where it balances.");
  const oneHand = { for: ["shaft" as const], hands: "one" as const };
  const holds = {
    byTheBoot: book.hold(
      { name: "by the boot", ...oneHand, strong: false, note: "How the spear rests when nothing is asked of it." },
      {
        zone: balance,
        level: stated("low"),
        bearing: supplied(clock(1), "A point that looked backward could not be raised past the knee at a canter."),
        contact: stated({ with: "boot", degree: "near" }),
      },
      setOut.both("the spear low beside the right boot", "hasta demissa iuxta ocream dextram"),
    ),
    upright: book.hold(
      { name: "upright", ...oneHand, strong: true, note: "" },
      { zone: balance, level: stated("high"), contact: stated({ with: "thigh", degree: "bears" }) },
      setOut.both(
        "the spear upright, sets its butt upon his thigh",
        "hastam erectam tollit, calcem eius super femur ponit",
      ),
    ),
    beneathTheArm: book.hold(
      { name: "beneath the arm", ...oneHand, strong: true, note: "" },
      {
        zone: balance,
        level: implied("middle", "Shut beneath the arm and over the ears, it lies about level."),
        bearing: stated(clock(12)),
        contact: stated({ with: "arm", degree: "bears" }),
      },
      point.both(
        "it looks out over the horse's ears, the shaft shut beneath his arm",
        "super aures equi prospiciat, hastili sub brachio clauso",
      ),
    ),
  };

  const greeting = book.movement(
    { name: "the greeting", note: "Taught once, here, and afterwards only named." },
    greet.both(
      "The greeting is this: he lets the point sink before him until it nearly touches the ground, waits while he draws one breath, raises it again, and lays the spear back by the boot.",
      "Salutatio haec est: cuspidem ante se demittit, donec terram paene tangat; manet dum semel spiritum ducit; rursus eam erigit, et hastam ad ocream reponit.",
    ),
  );
  addActions(book, "movements", greeting.id, greeting.around, [
    does("lower", {
      object: stated(spear),
      level: implied("low", "The point all but touches the ground."),
      bearing: stated(clock(12)),
      height: stated("until it nearly touches the ground"),
    }),
    does("wait", { until: stated("he has drawn one breath") }),
    does("raise", { object: stated(spear), level: implied("high", "Again: as high as it was.") }),
    does("hold", { object: stated(spear), hold: stated(holds.byTheBoot) }),
  ]);
  return { holds, greeting: greeting.id };
}
