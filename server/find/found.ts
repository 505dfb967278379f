/** server/find/found.ts - an entry that holds what is wanted, as it is answered: its words in context, and where it leads.
 *  May import: schema types, shared/text, shared/cite, server/store, siblings. Offsets: UTF-16 units from 0, half-open. */
import type { Found, FoundLead, FoundSpan, FoundWords } from "../../schema/find.ts";
import { formatReference } from "../../shared/cite/format-reference.ts";
import { foldWithOffsets, unfoldRange } from "../../shared/text/fold.ts";
import type { Hit, WordFinder } from "../../shared/text/wanted-words.ts";
import { densestHit, wordsInContext } from "../../shared/text/words-in-context.ts";
import { readFirstPassage, readFirstPlace, readRow, type Store } from "../store/index.ts";
import type { Entry, Part, Thing } from "./entry.ts";

/** About two lines of the list. */
const CONTEXT = { before: 60, after: 120 };
/** A title is shown whole unless it is a text in itself. */
const TITLE_UNITS = 200;
/** Letters that folding drops at the end of a word are few. */
const LONGEST_REST = 8;

export function foundOf(store: Store, entry: Entry, finder: WordFinder): Found {
  const title = wordsInContext(entry.title, [], { before: 0, after: TITLE_UNITS });
  const titleHits = hitsIn(entry.title, finder).filter(({ to }) => to <= title.quote.length);
  const best = bestPart(entry, titleHits, finder);
  const { lead, reference } = leadOf(store, entry, best?.part === entry.parts[0] ? (best?.hits ?? []) : []);
  const exercise = entry.exercise === null ? null : readRow(store, "exercises", entry.exercise);
  const { label = "", title: exerciseTitle = "" } = exercise?.value ?? {};
  return {
    kind: entry.kind,
    id: entry.id,
    title: title.cutAfter ? `${title.quote}…` : title.quote,
    titleHits: titleHits.map(bare),
    words: best === null ? null : contextOf(best.part, best.hits),
    reference,
    exercise: [label, exerciseTitle].filter(Boolean).join(" "),
    work: readRow(store, "works", entry.work)?.value.title ?? "",
    leads: lead,
  };
}

/** Where everything wanted stands in a text, in order and apart. */
function hitsIn(text: string, finder: WordFinder): Hit[] {
  const folded = foldWithOffsets(text);
  const hits: Hit[] = [];
  for (const { from, to, wanted } of finder.hits(folded.text)) {
    const range = unfoldRange(folded, from, to);
    // Two folded words may stand for one sign of the text, such as a fraction.
    if (range.from < (hits.at(-1)?.to ?? 0)) continue;
    hits.push({ from: range.from, to: endOfWord(text, range.to), wanted });
  }
  return hits;
}

/** The end of the word that goes on to `to`: folding drops some letters at the end of words, such as the h of qūwah. */
function endOfWord(text: string, to: number): number {
  return /[\p{L}\p{M}\p{N}]$/u.test(text.slice(Math.max(0, to - 2), to))
    ? to + (/^[\p{L}\p{M}\p{N}]*/u.exec(text.slice(to, to + LONGEST_REST))?.[0].length ?? 0)
    : to;
}

/** The part with the most of what is wanted; null where no part has more than the title has. A passage always shows
 *  its words. */
function bestPart(entry: Entry, titleHits: readonly Hit[], finder: WordFinder): { part: Part; hits: Hit[] } | null {
  const different = (hits: readonly Hit[]) => new Set(hits.map(({ wanted }) => wanted)).size;
  let best: { part: Part; hits: Hit[] } | null = null;
  for (const part of entry.parts) {
    const hits = hitsIn(part.text, finder);
    if (best === null || different(hits) > different(best.hits)) best = { part, hits };
  }
  if (entry.place.is === "text" || best === null) return best;
  return different(best.hits) > 0 && different(titleHits) < finder.wanted.length ? best : null;
}

function contextOf({ label, text, language }: Part, hits: readonly Hit[]): FoundWords {
  const {
    quote,
    hits: inQuote,
    cutBefore,
    cutAfter,
  } = wordsInContext(text, hits, CONTEXT, densestHit(hits, CONTEXT.after));
  return { part: label, language, quote, hits: [...inQuote], cutBefore, cutAfter };
}

function bare({ from, to }: FoundSpan): FoundSpan {
  return { from, to };
}

function leadOf(store: Store, entry: Entry, hits: readonly Hit[]): { lead: FoundLead; reference: string } {
  const lead: FoundLead = { work: entry.work, exercise: entry.exercise, passage: null, thing: null, words: null };
  if (entry.place.is === "text") {
    const { passage, text } = entry.place;
    const hit = hits[densestHit(hits, CONTEXT.after)];
    return { lead: { ...lead, passage, words: hit ? { text, ...bare(hit) } : null }, reference: entry.title };
  }
  const tied = entry.place.is === "tied" ? tiedPlace(store, entry) : null;
  const passage = tied?.passage ?? beginningOf(store, entry);
  const references = passage === null ? [] : (readRow(store, "passages", passage)?.value.references ?? []);
  const reference = references[0] ? formatReference(references[0]) : "";
  return { lead: { ...lead, passage, thing: tied?.shown ?? null }, reference: tied === null ? "" : reference };
}

function tiedPlace(store: Store, entry: Entry): { passage: string; shown: Thing | null } | null {
  for (let at: Entry | null = entry; at !== null && at.place.is === "tied"; at = at.place.after) {
    for (const { of, shown } of at.place.ties) {
      const passage = readFirstPlace(store, of.kind, of.id);
      if (passage === null) continue;
      // What is read with the thing before it is brought forward itself.
      return { passage, shown: at === entry ? shown : { kind: "elements", id: entry.id } };
    }
  }
  return null;
}

function beginningOf(store: Store, { exercise, work }: Entry): string | null {
  const ofExercise = exercise === null ? null : readFirstPassage(store, { exercise });
  return ofExercise ?? readFirstPassage(store, { work });
}
