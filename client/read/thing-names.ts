/** client/read/thing-names.ts - what a thing is called in a sentence. */
import { drillElements } from "../state/passage.ts";
import { one } from "../state/rows.ts";
import type { Thing } from "./focus.ts";

export function nameOf(thing: Thing): string {
  switch (thing.kind) {
    case "elements": {
      const printed = drillElements.value.get(thing.id);
      if (printed?.number) return `step ${printed.number}${printed.title ? `, ${printed.title}` : ""}`;
      return one("elements", thing.id)?.is ?? "a step";
    }
    case "cruxes":
      return `the crux “${one("cruxes", thing.id)?.title ?? ""}”`;
    case "questions":
      return `the question “${one("questions", thing.id)?.text ?? ""}”`;
    case "terms":
      return `the term “${one("terms", thing.id)?.word ?? ""}”`;
    case "senses":
      return `the sense “${one("senses", thing.id)?.title ?? ""}”`;
    case "notes":
      return "a note";
    case "standings":
      return `the instruction “${one("standings", thing.id)?.title ?? ""}”`;
    case "rules":
      return `the rule “${one("rules", thing.id)?.sentence ?? ""}”`;
    case "faults":
      return `the fault “${one("faults", thing.id)?.fault ?? ""}”`;
    default:
      return `a mark (${thing.kind})`;
  }
}
