/** client/read/pictured.ts - the pictures that something in the open passage rests on, and which parts of them.
 *  May import: types of schema, shared, client/state, siblings. */
import { computed } from "@preact/signals";
import type { Picture, Region } from "../../schema/mark.ts";
import { compareRanked } from "../../shared/rank.ts";
import { all, one } from "../state/rows.ts";
import type { Thing } from "./focus.ts";
import { placedThings } from "./things.ts";

export interface PicturedPart {
  region: Region;
  /** What rests on it here, in the order of the glosses; never none. */
  things: Thing[];
}
export interface Pictured {
  picture: Picture;
  parts: PicturedPart[];
}

/** Pictures in the order of the work, parts as their things come in the passage. */
export const pictured = computed<Pictured[]>(() => {
  const parts = new Map<string, PicturedPart>();
  for (const { thing } of placedThings.value) {
    for (const id of regionsOf(thing)) {
      const region = one("regions", id);
      if (region === null) continue;
      const part = parts.get(id) ?? { region, things: [] };
      part.things.push(thing);
      parts.set(id, part);
    }
  }
  const ids = [...new Set([...parts.values()].map(({ region }) => region.picture))];
  return ids
    .flatMap((id) => one("pictures", id) ?? [])
    .sort(compareRanked)
    .map((picture) => ({
      picture,
      parts: [...parts.values()].filter(({ region }) => region.picture === picture.id),
    }));
});

/** Ids of the regions a thing, what is done in it, and its readings rest on, or are marked in; each once. */
function regionsOf({ kind, id }: Thing): Set<string> {
  const rows: { id: string }[] = [one(kind, id)].filter((row) => row !== null);
  if (kind === "elements" || kind === "standings") {
    rows.push(...all("actions").filter((action) => action.ownerKind === kind && action.owner === id));
  }
  if (kind === "cruxes") rows.push(...all("readings").filter((reading) => reading.crux === id));
  const ids = new Set(rows.map((row) => row.id));
  const marks = new Set(all("marks").flatMap((mark) => (ids.has(mark.target) ? mark.id : [])));
  const anchored = all("anchors").flatMap((anchor) =>
    anchor.is === "region" && marks.has(anchor.mark) ? anchor.region : [],
  );
  return new Set([...rows.flatMap(basedOn), ...anchored]);
}

/** Regions that any basis within a value names. */
function basedOn(value: unknown): string[] {
  if (Array.isArray(value)) return value.flatMap(basedOn);
  if (typeof value !== "object" || value === null) return [];
  const { is, region } = value as { is?: unknown; region?: unknown };
  const own = is === "picture" && typeof region === "string" ? [region] : [];
  return [...own, ...Object.values(value).flatMap(basedOn)];
}
