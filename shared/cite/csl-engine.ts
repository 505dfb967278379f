/** shared/cite/csl-engine.ts - citations of sources and a bibliography as a CSL style sets them.
 *  May import: citeproc, schema types, siblings in shared/cite. Keeps rules C23-C25 (shared/cite/RULES.md). An engine is slow to build
 *  (up to seconds for a large style) and quick to ask: whoever owns it keeps it. What it gives depends on what it is
 *  asked alone, not on what it was asked before. */
/// <reference path="./citeproc.d.ts" />
import CSL, { type CitationCluster } from "citeproc";
import { readLocator } from "./locator.ts";
import { type RichText, richText } from "./rich-text.ts";

/** An element of a style or a locale: the tree of its XML, without white space between elements. */
export interface CslNode {
  name: string;
  attrs: Record<string, string>;
  children: (CslNode | string)[];
}

/** A source as CSL-JSON; its `id` is replaced by the key it is given under. */
export type CslItem = Readonly<Record<string, unknown>>;

/** One citation of one source, in the order of the paper. */
export interface SourceCall {
  source: string;
  /** Where in the source, as a person wrote it: "p. 12", "ff. 3r–4v", "at the end"; may be empty. */
  where: string;
  /** The number of the note it stands in, from 1; 0 in the text. */
  note: number;
}

export interface CslAsk {
  items: ReadonlyMap<string, CslItem>;
  calls: readonly SourceCall[];
  /** Sources that the bibliography lists though nothing cites them. */
  uncited: readonly string[];
}

export interface CslSet {
  /** One for each call. */
  citations: RichText[];
  /** In the order of the style; empty where the style has none. */
  bibliography: { source: string; text: RichText }[];
}

export interface CslEngine {
  /** Whether a citation belongs into a note. */
  inNotes: boolean;
  /** Throws Error, with what citeproc says, for an item it cannot set, and RangeError for a source that is not among the
   *  items. */
  set: (ask: CslAsk) => CslSet;
}

/** `localeOf` gives the locale for a language tag, or null. Throws Error, with what citeproc says, for a style that it
 *  cannot use. `language`: BCP 47 of the paper, taken where the style has none of its own. */
export function openCslEngine(
  style: CslNode,
  localeOf: (language: string) => CslNode | null,
  language: string,
): CslEngine {
  let items: ReadonlyMap<string, CslItem> = new Map();
  const system = {
    retrieveLocale: (tag: string): string => {
      const locale = localeOf(tag);
      return locale === null ? "" : JSON.stringify(locale);
    },
    retrieveItem: (id: string): Record<string, unknown> => {
      const item = items.get(id);
      if (item === undefined) throw new RangeError(`The source ${id} is not among those that were given.`);
      // A copy, since citeproc writes into what it is given.
      return { ...(JSON.parse(JSON.stringify(item)) as object), id };
    },
  };
  const engine = told(() => new CSL.Engine(system, JSON.stringify(style), language));
  return {
    inNotes: engine.opt.xclass === "note",
    set: ({ items: given, calls, uncited }) =>
      told(() => {
        items = given;
        // Twice, because a state that was built once colours the next: from nothing, then with what is asked.
        engine.rebuildProcessorState([], "html", []);
        const clusters = calls.map(clusterOf);
        const citations = engine
          .rebuildProcessorState(clusters, "html", [...uncited])
          .map(([, , html]) => richText(html));
        const made = engine.makeBibliography();
        const [about, entries] = made === false ? [{ entry_ids: [] }, []] : made;
        return {
          citations,
          bibliography: entries.map((html, index) => ({
            source: about.entry_ids[index]?.[0] ?? "",
            text: richText(html),
          })),
        };
      }),
  };
}

function clusterOf({ source, where, note }: SourceCall, index: number): CitationCluster {
  return {
    citationID: `c${index}`,
    citationItems: [{ id: source, ...readLocator(where) }],
    properties: { noteIndex: note },
  };
}

/** citeproc throws strings, which have no stack. */
function told<T>(work: () => T): T {
  try {
    return work();
  } catch (error) {
    if (error instanceof Error) throw error;
    throw new Error(String(error).replace(/^citeproc-js error: /, ""));
  }
}
