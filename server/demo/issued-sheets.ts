/** server/demo/issued-sheets.ts - the invented book handed out: a class handout, what the class found wrong, its correction.
 *  May import: schema types, server/publish, server/store, siblings. Apart from the book itself, since papers are set for it. */
import type { IssueRequest } from "../../schema/issue.ts";
import { done, type Outcome } from "../errors.ts";
import { issueEdition } from "../publish/editions/issue-edition.ts";
import { storeSlip } from "../publish/editions/slips.ts";
import { DEFAULT_STYLE } from "../publish/styles/citation-styles.ts";
import { readRows, type Store, writeChange } from "../store/index.ts";
import { demoBook } from "./book.ts";
import { demoId } from "./demo-id.ts";
import { EDITOR } from "./people.ts";

/** Past the ids of the book's own change. */
const FIRST = 1_000_010;
const TAUGHT_ON = "2026-10-17";
const CORRECTED_ON = "2026-10-19";

/** To be called once, after the book was put in. `now` is ISO 8601 in UTC. */
export async function issueDemoSheets(store: Store, now: string): Promise<Outcome<null>> {
  const { work, exercises } = demoBook();
  const handout = (change: number, issued: string, holders: readonly string[]): IssueRequest => ({
    id: demoId(FIRST + change),
    edition: demoId(FIRST + change + 1),
    who: EDITOR,
    sitting: null,
    ask: {
      kind: "class handout",
      parts: [exercises.circle, exercises.change].map((exercise) => ({
        exercise,
        from: null,
        to: null,
        variant: null,
      })),
      size: "A4",
      way: "mounted",
      choice: [],
      notesAt: "foot",
      style: DEFAULT_STYLE,
      occasion: "For the first class on the court",
    },
    title: "The circle and the change, for the first class",
    issued,
    forms: ["pdf"],
    recipients: holders.map((who) => ({ who, on: issued })),
  });

  const first = await issueEdition(store, handout(0, TAUGHT_ON, ["the October class", "Ede Marrin"]), { now });
  if (!first.ok) return first;
  const turn = readRows(store, "elements").find(
    ({ value }) => value.is === "step" && value.exercise === exercises.circle && value.title.startsWith("The turn"),
  );
  if (turn === undefined) throw new Error("The first exercise of the invented book has no turn.");
  const fault = {
    id: demoId(FIRST + 2),
    work,
    of: "elements",
    target: turn.value.id,
    rank: "a0",
    fault: "The hand that has the spear turns the horse, and the point goes round with it",
    correction: "Turn him with the rein hand and the leg; the spear stays upright and looks at nothing",
  };
  const found = {
    id: demoId(FIRST + 3),
    who: EDITOR,
    why: "Four of the six who rode it on the seventeenth turned the point with the horse.",
    sitting: null,
    group: null,
    edits: [{ do: "create", kind: "faults", value: fault } as const],
  };
  const written = writeChange(store, found, { now });
  if (!written.ok) return written;

  const second = await issueEdition(store, handout(4, CORRECTED_ON, ["Ede Marrin"]), { now });
  if (!second.ok) return second;
  const slip = storeSlip(
    store,
    {
      id: demoId(FIRST + 6),
      slip: demoId(FIRST + 7),
      who: EDITOR,
      sitting: null,
      from: first.value.edition,
      to: second.value.edition,
      on: CORRECTED_ON,
    },
    { now },
  );
  return slip.ok ? done(null) : slip;
}
