/** server/import/page-tracker.ts - which page or leaf the words stand on, per edition, while a text is read through.
 *  May import: schema types. A passage gets one reference per edition: from where its first word stands to its last (I9). */
import type { FolioPoint, FolioReference, PagePoint, PageReference } from "../../schema/reference.ts";

type Point = { kind: "folio"; point: FolioPoint } | { kind: "page"; point: PagePoint };

/** The points of all editions at one moment; never changed once made. */
export type PageMoment = ReadonlyMap<string, Point>;

const FOLIO = /^\s*(?:fols?\.?|ff?\.?)?\s*(\d{1,5})\s*([rv])\s*([abcd])?\s*$/;

export class PageTracker {
  /** Replaced by a new map at every turn, so that a moment can be kept by keeping the map. */
  #now: PageMoment = new Map();

  get now(): PageMoment {
    return this.#now;
  }

  #set(edition: string, point: Point | null): void {
    const next = new Map(this.#now);
    if (point === null) next.delete(edition);
    else next.set(edition, point);
    this.#now = next;
  }

  /** A page begins. Returns its kind; a page without a number ends the one before and is "page". */
  turn(edition: string, n: string): "folio" | "page" {
    const folio = FOLIO.exec(n);
    const leaf = Number(folio?.[1]);
    if (folio !== null && leaf >= 1) {
      const point: FolioPoint = { leaf, side: folio[2] === "v" ? "v" : "r" };
      if (folio[3] !== undefined) point.column = folio[3] as NonNullable<FolioPoint["column"]>;
      this.#set(edition, { kind: "folio", point });
      return "folio";
    }
    const page = n.trim().slice(0, 40);
    this.#set(edition, page === "" ? null : { kind: "page", point: { page } });
    return "page";
  }

  /** A column begins; only leaves have columns in a reference. */
  column(edition: string, n: string): void {
    const at = this.#now.get(edition);
    if (at?.kind !== "folio" || !/^[abcd]$/.test(n)) return;
    this.#set(edition, {
      kind: "folio",
      point: { leaf: at.point.leaf, side: at.point.side, column: n as NonNullable<FolioPoint["column"]> },
    });
  }

  /** A line begins. Lines without a number are not counted: nobody said where the count starts. */
  line(edition: string, n: string): void {
    const at = this.#now.get(edition);
    const line = /^\d{1,6}$/.test(n) ? Number(n) : 0;
    if (at === undefined || line < 1) return;
    this.#set(
      edition,
      at.kind === "folio"
        ? { kind: "folio", point: { ...at.point, line } }
        : { kind: "page", point: { ...at.point, line } },
    );
  }
}

/** The references of a passage whose first word stood at `first` and whose last at `last`. */
export const pageReferences = (first: PageMoment, last: PageMoment): (FolioReference | PageReference)[] => {
  const references: (FolioReference | PageReference)[] = [];
  for (const edition of new Set([...first.keys(), ...last.keys()])) {
    // Where the edition's first page begins inside the passage, that page is all that is known.
    const from = first.get(edition) ?? last.get(edition);
    const to = last.get(edition) ?? from;
    if (from === undefined || to === undefined) continue;
    const same = JSON.stringify(from) === JSON.stringify(to);
    if (from.kind === "folio") {
      const reference: FolioReference = { kind: "folio", witness: edition.slice(0, 20), from: from.point };
      if (!same && to.kind === "folio") reference.to = to.point;
      references.push(reference);
    } else {
      const reference: PageReference = { kind: "page", of: edition.slice(0, 40), from: from.point };
      if (!same && to.kind === "page") reference.to = to.point;
      references.push(reference);
    }
  }
  return references;
};
