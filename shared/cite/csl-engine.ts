/** shared/cite/csl-engine.ts - citations of sources and a bibliography as a CSL style sets them.
 *  May import: citeproc, schema types, siblings in shared/cite. Keeps rules C23-C25 (shared/cite/RULES.md). An engine is slow to build
 *  (up to seconds for a large style) and quick to ask: whoever owns it keeps it. What it gives depends on what it is
 *  asked alone, not on what it was asked before. */
/// <reference path="./citeproc.d.ts" />
import CSL, { type CitationCluster, type Engine } from "citeproc";
import { readLocator } from "./locator.ts";
import { carried, type RichText, richText } from "./rich-text.ts";

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
      return { ...prepared(item), id };
    },
  };
  const build = (): Engine => told(() => new CSL.Engine(system, JSON.stringify(style), language));
  let engine = build();
  const setNow = ({ calls, uncited }: CslAsk): CslSet => {
    const citations = wordsOfAll(engine, calls.map(clusterOf)).map(richText);
    engine.updateUncitedItems([...uncited]);
    const made = engine.makeBibliography();
    const [about, entries] = made === false ? [{ entry_ids: [] }, []] : made;
    // Emptied while these sources are still known: what was set would colour what is set next.
    engine.rebuildProcessorState([], "html", []);
    return {
      citations,
      bibliography: entries.map((html, index) => ({ source: about.entry_ids[index]?.[0] ?? "", text: richText(html) })),
    };
  };
  return {
    inNotes: engine.opt.xclass === "note",
    set: (ask) => {
      items = ask.items;
      try {
        return told(() => setNow(ask));
      } catch (error) {
        // It may hold half of what was asked.
        engine = build();
        throw error;
      }
    },
  };
}

/** A copy, since citeproc writes into what it is given; with plain numbers in digits, since it looks for digits in words, and
 *  with what it cannot carry written otherwise. */
function prepared(item: CslItem): Record<string, unknown> {
  const copy = JSON.parse(carried(JSON.stringify(item))) as Record<string, unknown>;
  return Object.fromEntries(
    Object.entries(copy).map(([field, value]) => [field, typeof value === "number" ? String(value) : value]),
  );
}

/** The words of all clusters, in their order. Registered all at once and set by one call for the last of them, since citeproc
 *  looks at every cluster again with each that is added; a test holds this against its own way of one after another. */
function wordsOfAll(engine: Engine, clusters: CitationCluster[]): string[] {
  const last = clusters.at(-1);
  engine.setOutputFormat("html");
  engine.updateItems([...new Set(clusters.flatMap(({ citationItems }) => citationItems.map(({ id }) => id)))]);
  if (last === undefined) return [];
  const { citationById } = engine.registry.citationreg;
  for (const cluster of clusters) {
    cluster.sortedItems = cluster.citationItems.map((item) => [
      engine.retrieveItem(item.id),
      CSL.parseLocator.call(engine, { ...item }),
    ]);
    citationById[cluster.citationID] = cluster;
  }
  const before = clusters
    .slice(0, -1)
    .map(({ citationID, properties }): [string, number] => [citationID, properties.noteIndex]);
  return settingEachOnce(engine, () => {
    const [, set] = engine.processCitationCluster(last, before, [], ALL_ITEMS_ARE_THERE);
    const words = new Map(set);
    // A style that asks for no position changes none, and so gives the last alone.
    return clusters.map(
      (cluster, index) => words.get(index) ?? engine.process_CitationCluster(cluster.sortedItems, cluster),
    );
  });
}

/** Has the engine set each citation once that is the same as one before in everything its words depend on: most of a book
 *  are. Only for this work, since among other sources the same citation has other words. */
function settingEachOnce<T>(engine: Engine, work: () => T): T {
  const known = new Map<string, string>();
  const original = engine.process_CitationCluster;
  engine.process_CitationCluster = (items, cluster) => {
    const key = JSON.stringify(items?.map(([, item]) => ({ ...item, sortkeys: null })));
    const words = known.get(key) ?? original.call(engine, items, cluster);
    known.set(key, words);
    return words;
  };
  try {
    return work();
  } finally {
    engine.process_CitationCluster = original;
  }
}

const ALL_ITEMS_ARE_THERE = 2;

function clusterOf({ source, where, note }: SourceCall, index: number): CitationCluster {
  return {
    citationID: `c${index}`,
    citationItems: [{ id: source, ...readLocator(carried(where)) }],
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
