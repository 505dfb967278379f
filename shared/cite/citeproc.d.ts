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
  }
  export class Engine {
    constructor(system: System, style: string, language?: string);
    opt: { xclass: "note" | "in-text" };
    /** One [id, note, words] a cluster, in their order. Throws a string or an Error for what it cannot set. */
    rebuildProcessorState(clusters: CitationCluster[], mode: "html", uncited?: string[]): [string, number, string][];
    /** False where the style has no bibliography. */
    makeBibliography(): [{ entry_ids: string[][] }, string[]] | false;
  }
  const CSL: { Engine: typeof Engine };
  export default CSL;
}
