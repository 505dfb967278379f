/** server/publish/editions/slips.ts - correction slips: kept between two editions, or made against the work as it is now.
 *  May import: schema types, server/store, siblings of server/publish. */
import type { SlipRequest } from "../../../schema/issue.ts";
import type { Paper } from "../../../schema/paper.ts";
import type { Slip } from "../../../schema/teaching.ts";
import { done, type Outcome, refused } from "../../errors.ts";
import { readRow, type Store, writeChange } from "../../store/index.ts";
import { compareEditions, readEdition } from "./compare-editions.ts";
import { slipPaper } from "./slip-paper.ts";

/** Keeps what the newer edition corrects in the older one. Refused when both say the same. */
export function storeSlip(store: Store, request: SlipRequest, { now }: { now: string }): Outcome<Slip> {
  const { id, slip, who, sitting, from, to, on } = request;
  const [older, newer] = [readEdition(store, from), readEdition(store, to)];
  if (!older.ok) return older;
  if (!newer.ok) return newer;
  const compared = compareEditions(store, from, to);
  if (!compared.ok) return compared;
  const { entries } = compared.value;
  if (entries.length === 0) {
    return refused(
      "nothing_to_correct",
      `Editions ${older.value.row.number} and ${newer.value.row.number} say the same of every step; there is nothing to correct.`,
    );
  }
  const row: Slip = { id: slip, from, to, on, entries };
  const why = `Correct edition ${older.value.row.number} by edition ${newer.value.row.number}`;
  const edits = [{ do: "create", kind: "slips", value: row as never } as const];
  const written = writeChange(store, { id, who, why, sitting, group: null, edits }, { now });
  return written.ok ? done(row) : written;
}

/** The kept slip as a paper. */
export function paperOfSlip(store: Store, id: string): Outcome<Paper> {
  const row = readRow(store, "slips", id);
  if (row === null)
    return refused("row_unknown", `There is no correction slip with the id ${id}. Load the list again.`);
  const { from, to, on, entries } = row.value;
  const compared = compareEditions(store, from, to);
  return slipBetween(store, from, to, on, entries, compared.ok ? compared.value.renumbered : "");
}

/** A slip against the work as it is now: not kept. `on` is the day it is made for. */
export function slipAgainstNow(store: Store, edition: string, on: string): Outcome<Paper> {
  const compared = compareEditions(store, edition, null);
  if (!compared.ok) return compared;
  return slipBetween(store, edition, null, on, compared.value.entries, compared.value.renumbered);
}

function slipBetween(
  store: Store,
  from: string,
  to: string | null,
  on: string,
  entries: Slip["entries"],
  renumbered: string,
): Outcome<Paper> {
  const older = readEdition(store, from);
  if (!older.ok) return older;
  const newer = to === null ? null : readEdition(store, to);
  if (newer !== null && !newer.ok) return newer;
  const { paper } = older.value.model;
  return done(
    slipPaper({
      older: { ...older.value.row, kind: paper.kind, check: paper.edition?.check ?? "" },
      newer: newer === null ? null : { ...newer.value.row, check: newer.value.model.paper.edition?.check ?? "" },
      work: paper.work,
      size: paper.size,
      on,
      entries,
      renumbered,
    }),
  );
}
