/** server/store/check-cruxes.ts - cruxes never arise in a circle, and have at most one reading adopted for good.
 *  May import: schema types, siblings in server/store. Keeps rules S18 and S19 (server/store/RULES.md).
 *  Runs inside the transaction, after the rows were written. */
import type { Crux, Reading } from "../../schema/crux.ts";
import type { Store } from "./open-store.ts";
import type { PlannedRow } from "./plan-edits.ts";
import type { Problem } from "./problem.ts";
import { listed, rowName } from "./row-name.ts";
import { getRow, rowsWhere } from "./row-store.ts";

export function checkCruxes(store: Store, rows: readonly PlannedRow[]): Problem[] {
  const problems: Problem[] = [];
  const seen = new Set<string>();
  for (const { kind, id, after, where } of rows) {
    if (after === null) continue;
    if (kind === "cruxes") {
      const circle = circleFrom(store, id);
      if (circle !== null) {
        const names = circle.map(({ title }) => `“${title}”`).join(" → ");
        const sentence = `The crux would arise only when it has arisen: ${names}. Take one of these conditions out.`;
        problems.push({ code: "crux_circle", where: `${where}.arisesWhen`, sentence });
      }
    }
    if (kind !== "readings") continue;
    const { crux } = after as unknown as Reading;
    const adopted = rowsWhere(store, "readings", { crux }).filter(({ value }) =>
      isAdopted(value as unknown as Reading),
    );
    if (adopted.length < 2 || seen.has(crux)) continue;
    seen.add(crux);
    const names = listed(adopted.map(({ value }) => rowName("readings", value)));
    const sentence = `Only one reading of a crux is adopted without a condition; here it would be ${names}. Give all but one a condition, or set them to standing or ruled out.`;
    problems.push({ code: "two_adopted", where: `${where}.status`, sentence });
  }
  return problems;
}

function isAdopted({ status }: Reading): boolean {
  return status.is === "adopted" && status.condition.trim() === "";
}

/** The cruxes of a circle that leads back to `start`, first and last the same; null when there is none. */
function circleFrom(store: Store, start: string): Crux[] | null {
  const done = new Set<string>();
  const walk = (id: string, path: readonly Crux[]): Crux[] | null => {
    const crux = getRow(store, "cruxes", id)?.value as unknown as Crux | undefined;
    if (crux === undefined) return null;
    const here = [...path, crux];
    if (id === start && path.length > 0) return here;
    if (done.has(id)) return null;
    done.add(id);
    for (const condition of crux.arisesWhen) {
      const circle = walk(condition.crux, here);
      if (circle !== null) return circle;
    }
    return null;
  };
  return walk(start, []);
}
