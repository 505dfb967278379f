/** client/history/kind-words.ts - kinds of rows as a person calls them, one and several.
 *  May import: schema types. */
import type { HistoryEntry } from "../../schema/api.ts";
import type { Kind } from "../../schema/record.ts";

const WORDS: Record<Kind, readonly [one: string, more: string]> = {
  works: ["work", "works"],
  witnesses: ["witness", "witnesses"],
  layers: ["text", "texts"],
  revisions: ["revision", "revisions"],
  exercises: ["exercise", "exercises"],
  passages: ["passage", "passages"],
  passageTexts: ["wording of a passage", "wordings of passages"],
  passageLinks: ["split or merge", "splits and merges"],
  marks: ["mark", "marks"],
  anchors: ["place of a mark", "places of marks"],
  notes: ["note", "notes"],
  pictures: ["picture", "pictures"],
  regions: ["part of a picture", "parts of pictures"],
  elements: ["step, advice or part", "steps, advice and parts"],
  actions: ["action", "actions"],
  standings: ["standing instruction", "standing instructions"],
  variants: ["version of the day", "versions of the day"],
  cruxes: ["crux", "cruxes"],
  readings: ["reading", "readings"],
  questions: ["question", "questions"],
  sittings: ["sitting", "sittings"],
  terms: ["term", "terms"],
  senses: ["sense", "senses"],
  objects: ["object", "objects"],
  holds: ["hold", "holds"],
  movements: ["movement", "movements"],
  grounds: ["ground", "grounds"],
  stations: ["station", "stations"],
  threats: ["threat", "threats"],
  rules: ["rule", "rules"],
  waivers: ["waiver", "waivers"],
  faults: ["fault", "faults"],
  kits: ["kit", "kits"],
  trials: ["trial", "trials"],
  editions: ["edition", "editions"],
  slips: ["correction slip", "correction slips"],
  reports: ["report", "reports"],
  lessons: ["lesson", "lessons"],
  sources: ["source", "sources"],
};

/** "1 reading", "3 steps". */
export function counted(kind: Kind, count: number): string {
  return `${count} ${WORDS[kind][count === 1 ? 0 : 1]}`;
}

export function kindWord(kind: Kind): string {
  return WORDS[kind][0];
}

/** "Made 2 readings; changed 1 crux.": what an entry touched. */
export function touchedWords(touched: HistoryEntry["touched"]): string {
  const told = (verb: string, field: "made" | "changed" | "removed") => {
    const list = touched.filter((entry) => entry[field] > 0).map((entry) => counted(entry.kind, entry[field]));
    return list.length === 0 ? [] : [`${verb} ${list.join(", ")}`];
  };
  const words = [...told("made", "made"), ...told("changed", "changed"), ...told("took away", "removed")].join("; ");
  return words === "" ? "" : `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}
