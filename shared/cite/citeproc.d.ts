/** shared/cite/citeproc.d.ts - what is used of citeproc, which brings no types of its own.
 *  May import: nothing. A style and a locale are given as JSON of the tree of their XML. */
declare module "citeproc" {
  export interface System {
    /** The tree of a locale as JSON; falsy where there is none. */
    retrieveLocale(language: string): string;
    retrieveItem(id: string): Record<string, unknown>;
  }
  export interface CitationItem {
    id: string;
    locator?: string;
    label?: string;
    suffix?: string;
  }
  export interface CitationCluster {
    citationID: string;
    citationItems: CitationItem[];
    properties: { noteIndex: number };
    /** Each item's source with the item as it is set. */
    sortedItems?: [source: Record<string, unknown>, item: CitationItem][];
  }
  export class Engine {
    constructor(system: System, style: string, language?: string);
    opt: { xclass: "note" | "in-text" };
    registry: { citationreg: { citationById: Record<string, CitationCluster> } };
    setOutputFormat(mode: "html"): void;
    updateItems(ids: string[]): void;
    updateUncitedItems(ids: string[]): void;
    retrieveItem(id: string): Record<string, unknown>;
    /** Sets the cluster behind those in `before` ([id, note], registered by their ids). Gives the words of it and of each of
     *  those whose position has changed, as [index, words]. With `flag` 2 no item is looked up again. Throws a string or an
     *  Error for what it cannot set. */
    processCitationCluster(
      cluster: CitationCluster,
      before: [string, number][],
      after: [string, number][],
      flag: 2,
    ): [unknown, [index: number, words: string][]];
    /** The words of a cluster whose positions are set. */
    process_CitationCluster(items: CitationCluster["sortedItems"], cluster: CitationCluster): string;
    /** One [id, note, words] a cluster, in their order; slow for many. */
    rebuildProcessorState(clusters: CitationCluster[], mode: "html", uncited?: string[]): [string, number, string][];
    /** False where the style has no bibliography. */
    makeBibliography(): [{ entry_ids: string[][] }, string[]] | false;
  }
  const CSL: { Engine: typeof Engine; parseLocator: (this: Engine, item: CitationItem) => CitationItem };
  export default CSL;
}
