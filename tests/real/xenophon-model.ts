/** tests/real/xenophon-model.ts - Xenophon, On Horsemanship 7.13-17, marked up whole: the practice figure in its two forms,
 *  ridden both ways, with the advice on turns. The Greek is the original, the English a translation beside it.
 *  Three cruxes: what the figure (Greek pede, a fetter) is, what it is to change the exercise, and whose slant is meant. */

import type { Guard } from "../../schema/guard.ts";
import type { ImportedText } from "../../schema/imported.ts";
import { held, idOf, said, slotAt, under, WorkBuilder } from "../drill/build-rows.ts";
import { Speaker, wordsByReference } from "./source-texts.ts";

export const SECTIONS = ["7.13", "7.14", "7.15", "7.16", "7.17"] as const;
type Section = (typeof SECTIONS)[number];

export function xenophonModel(greek: ImportedText, english: ImportedText) {
  const book = new WorkBuilder("On Horsemanship", {
    author: "Xenophon",
    levels: ["chapter", "section"],
    invented: false,
  });
  // Catalogue numbers of the Thesaurus Linguae Graecae, as the digital texts beside these name them.
  const original = book.layer("Greek", {
    is: "original",
    language: "grc",
    urn: "urn:cts:greekLit:tlg0032.tlg013.perseus-grc2:",
  });
  const translation = book.layer("English", {
    by: "E. C. Marchant",
    urn: "urn:cts:greekLit:tlg0032.tlg013.perseus-eng2:",
  });
  const exercise = book.exercise("The ring", { label: "7" });
  const texts = { grc: new Map<Section, string>(), en: new Map<Section, string>() };
  const [inGreek, inEnglish] = [wordsByReference(greek), wordsByReference(english)];
  for (const section of SECTIONS) {
    const passage = book.passage(section, [{ kind: "section", from: section.split(".") }], exercise);
    texts.grc.set(section, book.text(passage, original, inGreek.get(section) ?? ""));
    texts.en.set(section, book.text(passage, translation, inEnglish.get(section) ?? ""));
  }
  const speaker = (of: "elements" | "cruxes" | "questions", target: string, language: "grc" | "en", section: Section) =>
    new Speaker(book, of, target, texts[language].get(section) ?? "");
  const inEn = (target: string, section: Section) => speaker("elements", target, "en", section);
  const inGrc = (target: string, section: Section) => speaker("elements", target, "grc", section);

  // 7.13: the figure itself.
  const round = idOf("the ring, round");
  const ring = inEn(round, "7.13").words("The exercise", "ring");
  book.step("the ring, round", exercise, { existence: ring.existence });
  inGrc(round, "7.13").words("τὴν πέδην", "καλουμένην");
  const rideRound = book.action(round, "ride", { figure: held("what the ring is") }, { existence: ring.existence });

  // 7.13: changed, so that both jaws are practised alike; one instruction in two places, by the reading.
  const change = inEn(idOf("on the other rein"), "7.13").words("It is also", "exercise.");
  book.element("on the other rein", exercise, {
    is: "again",
    title: "Change the exercise",
    of: { is: "elements", from: round, to: round },
    manner: "on the other rein",
    except: [],
    existence: change.existence,
    guard: under("what it is to change", "to the other rein"),
  });
  const otherLoop = inEn(idOf("the other loop first"), "7.13").words("It is also", "exercise.");
  book.element("the other loop first", exercise, {
    is: "again",
    title: "Change the exercise",
    of: { is: "elements", from: round, to: round },
    manner: "mirrored",
    except: [],
    existence: otherLoop.existence,
    guard: under("what it is to change", "to the other loop"),
    copyOf: idOf("on the other rein"),
  });

  // 7.14: the oblong form, which is preferred.
  const long = idOf("the ring, oblong");
  const oblong = inEn(long, "7.14").words("We recommend", "ring");
  book.step("the ring, oblong", exercise, { existence: oblong.existence });
  inGrc(long, "7.14").words("τὴν ἑτερομήκη", "πέδην");
  const rideLong = book.action(
    long,
    "ride",
    { figure: held("what the ring is"), how: held("what the ring is") },
    { existence: oblong.existence },
  );
  // 7.17: on the straight after the turn.
  const push = inEn(long, "7.17").words("As soon as", "at once");
  inGrc(long, "7.17").words("ἐπειδάν", "ὁρμάτω");
  book.action(
    long,
    "go at",
    { pace: push.says("increased"), how: push.says("at once") },
    {
      existence: push.existence,
      timing: push.says({ is: "when", event: "the horse faces the straight after the turn" }),
    },
  );

  const advise = (
    name: string,
    section: Section,
    ends: [string, string],
    demand: string,
    from: string,
    guard: Guard = [],
  ) => {
    const at = inEn(idOf(name), section).words(...ends);
    const element = book.element(name, exercise, {
      is: "advice",
      demand,
      from,
      to: long,
      rule: null,
      existence: at.existence,
      guard,
    });
    return { element, at };
  };
  advise("preferred", "7.14", ["We recommend", "ring"], "Ride the oblong ring rather than the round one", round);
  const collect = advise("collect", "7.15", ["It is necessary", "turns"], "Collect him at the turns", round);
  inGrc(collect.element, "7.15").words("δεῖ", "στροφαῖς");
  book.action(
    collect.element,
    "go at",
    { pace: collect.at.says("collected") },
    { existence: collect.at.existence, timing: collect.at.says({ is: "when", event: "the horse turns" }) },
  );
  advise(
    "not short",
    "7.15",
    ["neither easy", "slippery"],
    "Do not turn short when going fast, least of all on uneven or slippery ground",
    round,
  );
  advise("slant the horse", "7.16", ["must slant", "bit"], "Slant the horse as little as possible with the bit", round);
  advise(
    "slant himself",
    "7.16",
    ["slant his", "possible"],
    "Slant his own body as little as possible",
    round,
    under("whose slant", "the rider’s"),
  );
  const horse = advise(
    "slant itself",
    "7.16",
    ["slant his", "possible"],
    "Let the horse slant itself as little as possible",
    round,
    under("whose slant", "the horse’s"),
  );
  inGrc(horse.element, "7.16").words("ὡς ἥκιστα δ", "πλαγιοῦσθαι");
  advise("practise", "7.17", ["It is well", "turning"], "Practise increasing the pace after turning", long);

  // What the figure is.
  const pede = book.crux("what the ring is", exercise, { is: "translator's doubt", title: "What the ring (πέδη) is" });
  speaker("cruxes", pede, "grc", "7.13").words("πέδην");
  speaker("cruxes", pede, "en", "7.13").words("ring");
  book.reading("a circle", pede, {
    argument: "The translator’s word; and one form of it is called round.",
    holder: "the translator",
    values: [
      {
        at: slotAt(rideRound, "figure"),
        value: said("circle", "implied", [{ is: "premise", text: "a ring is a circle" }]),
      },
      {
        at: slotAt(rideLong, "figure"),
        value: said("oblong", "implied", [{ is: "premise", text: "a ring drawn out" }]),
      },
    ],
  });
  book.reading("a figure of eight", pede, {
    argument: "A fetter has two loops, and in itself it makes the horse turn on both jaws.",
    holder: "the editor",
    values: [
      {
        at: slotAt(rideRound, "figure"),
        value: said("figure of eight", "implied", [{ is: "premise", text: "it turns on both jaws" }]),
      },
      {
        at: slotAt(rideLong, "figure"),
        value: said("figure of eight", "implied", [{ is: "premise", text: "it turns on both jaws" }]),
      },
      {
        at: slotAt(rideLong, "how"),
        value: said("each loop drawn out long", "supplied", [{ is: "editor", note: "" }]),
      },
    ],
  });

  // What is changed.
  const changing = book.crux("what it is to change", exercise, { title: "What it is to change the exercise" });
  speaker("cruxes", changing, "grc", "7.13").words("τὸ μεταβάλλεσθαι", "ἱππασίαν");
  speaker("cruxes", changing, "en", "7.13").words("change the", "exercise");
  book.reading("to the other rein", changing, {
    argument: "Each side of the exercise is to practise both jaws alike.",
  });
  book.reading("to the other loop", changing, {
    argument: "The same figure begun with its other loop.",
    requires: [{ is: "reading", crux: pede, readings: [idOf("a figure of eight")] }],
  });
  book.reading("to another exercise", changing, { argument: "The words say only to change the exercise." });

  // Whose slant.
  const slant = book.crux("whose slant", exercise, { title: "Who is not to slant" });
  speaker("cruxes", slant, "grc", "7.16").words("αὐτὸν πλαγιοῦσθαι");
  book.reading("the rider’s", slant, { argument: "So the translator.", holder: "the translator" });
  book.reading("the horse’s", slant, { argument: "The pronoun may take up the horse just named." });

  const question = book.question("Is the πέδη one ring, or two loops like a fetter?", exercise, pede, {
    to: "a reader of Greek",
  });
  speaker("questions", question, "grc", "7.13").words("τὴν πέδην", "καλουμένην");
  return { rows: book.rows(), exercise, pede, changing, slant };
}
