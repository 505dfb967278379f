/** server/publish/publish-drill.ts - drill.json as bytes, for the window and the command line.
 *  May import: schema types, shared/drill, server/store, siblings. The same rows and options give the same bytes. */
import type { Drill } from "../../schema/drill.ts";
import type { Rows } from "../../schema/record.ts";
import { canonicalJson } from "../../shared/drill/canonical-json.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { done, type Outcome, refused } from "../errors.ts";
import { readBundle, type Store } from "../store/index.ts";
import type { DrillOptions } from "./drill-options.ts";

/** The drill in the exchange format (schema/drill.ts), UTF-8. */
export function drillJson(store: Store, exercise: string, options: DrillOptions): Outcome<Uint8Array> {
  const drill = drillOf(store, exercise, options);
  return drill.ok ? done(new TextEncoder().encode(canonicalJson(drill.value))) : drill;
}

/** The drill as it stands now. */
export function drillOf(store: Store, exercise: string, options: DrillOptions): Outcome<Drill> {
  const rows = rowsForDrill(store, exercise, options);
  if (!rows.ok) return rows;
  const { choice, way, variant } = options;
  return done(compileDrill(rows.value, exercise, { choice, variant, ...(way && { way }) }));
}

/** What bears on the exercise; refused where the options name what it does not have. */
export function rowsForDrill(store: Store, exercise: string, options: DrillOptions): Outcome<Rows> {
  const bundle = readBundle(store, { exercise });
  if (!bundle.ok) return bundle;
  return problemWith(bundle.value.rows, options) ?? done(bundle.value.rows);
}

function problemWith(rows: Rows, { choice, variant }: DrillOptions): Extract<Outcome<never>, { ok: false }> | null {
  for (const { crux, reading } of choice) {
    const row = rows.readings?.find(({ value }) => value.id === reading && value.crux === crux);
    if (row !== undefined) continue;
    const title = rows.cruxes?.find(({ value }) => value.id === crux)?.value.title;
    const sentence =
      title === undefined
        ? `The exercise has no crux with the id ${crux}. Load the page again and choose from its cruxes.`
        : `The crux “${title}” has no reading with the id ${reading}. Choose one of its readings.`;
    return refused("reading_of_other_crux", sentence);
  }
  if (variant !== null && !rows.variants?.some(({ value }) => value.id === variant)) {
    return refused("row_unknown", `The exercise has no version with the id ${variant}. Choose one it has, or none.`);
  }
  return null;
}
