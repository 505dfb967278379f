/** client/print/words-behind.ts - from a reference on the paper that is shown to its words in Read.
 *  May import: types of schema, shared/cite, client/decide, client/state, siblings. The page itself runs nothing: the window
 *  listens, so that a saved page has none of this. */
import type { Reference } from "../../schema/reference.ts";
import { containsReference } from "../../shared/cite/order-references.ts";
import { parseReferences } from "../../shared/cite/parse-reference.ts";
import { openInRead } from "../decide/goto.ts";
import { contents } from "../state/passage.ts";
import { go } from "../state/route.ts";
import { placedRow } from "./asking.ts";

/** Only on the screen, and only here: what is printed has no lines under its references. */
const STYLE =
  "@media screen{.ref[role=link]{cursor:pointer;text-decoration:underline dotted;text-underline-offset:.2em}" +
  ".ref[role=link]:hover{text-decoration-style:solid}.ref[role=link]:focus-visible{outline:2px solid;outline-offset:2px}}";

/** Makes each reference of the page that stands for a passage of this work lead there. */
export function leadToWords(page: Document, work: string): void {
  const style = page.createElement("style");
  style.textContent = STYLE;
  page.head.append(style);
  for (const reference of page.querySelectorAll<HTMLElement>(".ref")) {
    if (reference.closest("a") !== null) continue;
    const element = reference.closest("tr[id^='step-']")?.id.slice("step-".length) ?? null;
    const passage = passageAt(reference.textContent ?? "", work);
    if (passage === null) continue;
    reference.setAttribute("role", "link");
    reference.tabIndex = 0;
    reference.title = "To these words in Read";
    const lead = () => void toWords(element, passage);
    reference.addEventListener("click", lead);
    reference.addEventListener("keydown", (event) => {
      if (event.key !== "Enter") return;
      event.preventDefault();
      lead();
    });
  }
}

/** To the step in its own passage where the reference is that of a step, else to the passage. */
async function toWords(element: string | null, passage: string): Promise<void> {
  const own = element === null ? null : placedRow("elements", element);
  if (element === null || own === null) go(`/read/${passage}`);
  else await openInRead({ kind: "elements", id: element }, own);
}

/** The first passage of the work, in its order, that lies at one of the places or holds it; null where none does. */
function passageAt(words: string, work: string): string | null {
  const read = parseReferences(words);
  if (!read.ok) return null;
  const there = contents.value?.works.find(({ rows }) => rows.works?.[0]?.value.id === work);
  const byId = new Map(there?.rows.passages?.map(({ value }) => [value.id, value.references]));
  const inOrder = there?.passages.map(({ passage }) => ({ passage, references: byId.get(passage) ?? [] })) ?? [];
  const meets = (wanted: Reference, one: Reference) => containsReference(wanted, one) || containsReference(one, wanted);
  for (const wanted of read.references) {
    const found = inOrder.find(({ references }) => references.some((one) => meets(wanted, one)));
    if (found !== undefined) return found.passage;
  }
  return null;
}
