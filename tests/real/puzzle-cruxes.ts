/** tests/real/puzzle-cruxes.ts - cruxes and their ties as a counter takes them, from rows. */
import type { Rows } from "../../schema/record.ts";
import type { Puzzle, PuzzleCrux, ReadIn, Tie } from "../../shared/decide/puzzle.ts";

export function puzzleCruxes(rows: Rows, ids: readonly string[]): Pick<Puzzle, "cruxes" | "requires" | "excludes"> {
  const readings = (rows.readings ?? []).map(({ value }) => value);
  const own = (crux: string) => readings.filter((reading) => reading.crux === crux);
  const readIn = ({ crux, readings: some }: { crux: string; readings: string[] }): ReadIn => ({ crux, readings: some });
  const ties = (kind: "requires" | "excludes"): Tie[] =>
    readings.flatMap(({ id, crux, [kind]: conditions }) =>
      conditions.map((of) => ({ crux, reading: id, of: readIn(of) })),
    );
  const cruxes = ids.map((id): PuzzleCrux => {
    const crux = rows.cruxes?.find(({ value }) => value.id === id)?.value;
    return {
      id,
      readings: own(id).map((reading) => reading.id),
      ruledOut: own(id)
        .filter(({ status }) => status.is === "ruled out")
        .map((reading) => reading.id),
      arisesWhen: (crux?.arisesWhen ?? []).map(readIn),
    };
  });
  return { cruxes, requires: ties("requires"), excludes: ties("excludes") };
}
