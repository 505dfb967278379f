/** server/import/match-passages.ts - which passage of the work each imported passage is, by its references.
 *  May import: schema types, shared/cite, shared/rank. Pure. */
import type { ImportedPassage } from "../../schema/imported.ts";
import type { Reference } from "../../schema/reference.ts";
import type { Passage } from "../../schema/work.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { compareReferences } from "../../shared/cite/order-references.ts";
import { ranksBetween } from "../../shared/rank.ts";

export interface Placed {
  imported: ImportedPassage;
  /** The passage of the work with the same section or folio; null for one that is new to it. */
  matched: Passage | null;
  /** Rank of a new passage; for a matched one its own. */
  rank: string;
}

/** `existing` in order of rank. Every passage of the work is matched once at most. New passages stand after the imported
 *  one before them, else before the one after them, else where their reference belongs. */
export function matchPassages(imported: readonly ImportedPassage[], existing: readonly Passage[]): Placed[] {
  const byReference = new Map<string, Passage>();
  for (const passage of [...existing].reverse()) {
    for (const reference of passage.references) {
      const key = keyOf(reference);
      if (key !== null) byReference.set(key, passage);
    }
  }
  const taken = new Set<Passage>();
  const matches = imported.map(({ references }) => {
    const found = references.flatMap((reference) => byReference.get(keyOf(reference) ?? "") ?? [])[0];
    if (found === undefined || taken.has(found)) return null;
    taken.add(found);
    return found;
  });

  const placed: Placed[] = [];
  for (let from = 0; from < imported.length; ) {
    const match = matches[from] ?? null;
    let to = from + 1;
    if (match === null) while (to < imported.length && matches[to] === null) to += 1;
    const ranks =
      match === null ? ranksAt(placeOf(imported, matches, existing, from, to), existing, to - from) : [match.rank];
    for (const [index, passage] of imported.slice(from, to).entries()) {
      placed.push({ imported: passage, matched: match, rank: ranks[index] ?? "" });
    }
    from = to;
  }
  return placed;
}

/** Sections and folios tell a passage; pages of a print may hold several. */
function keyOf(reference: Reference): string | null {
  return reference.kind === "page" ? null : `${reference.kind} ${formatReference(reference)}`;
}

/** Before which of the existing passages a run of new ones goes, from 0; their number puts it at the end. */
function placeOf(
  imported: readonly ImportedPassage[],
  matches: readonly (Passage | null)[],
  existing: readonly Passage[],
  from: number,
  to: number,
): number {
  const before = matches[from - 1];
  if (before) return existing.indexOf(before) + 1;
  const after = matches[to];
  if (after) return existing.indexOf(after);
  const [first] = imported[from]?.references ?? [];
  const next = existing.findIndex(({ references }) =>
    references.some((other) => first !== undefined && other.kind === first.kind && compareReferences(other, first) > 0),
  );
  return next === -1 ? existing.length : next;
}

function ranksAt(place: number, existing: readonly Passage[], count: number): string[] {
  return ranksBetween(existing[place - 1]?.rank ?? null, existing[place]?.rank ?? null, count);
}
