/** client/read/what-follows.tsx - what the drill says under each reading of a crux, as far as it differs: all else is
 *  taken as it is adopted now. */
import type { Drill } from "../../schema/drill.ts";
import type { RecordOf } from "../../schema/record.ts";
import { compileDrill } from "../../shared/drill/compile.ts";
import { exercise } from "../state/passage.ts";
import { rowsNow } from "../state/rows.ts";
import { partName } from "./part-name.ts";

interface Line {
  key: string;
  number: number | null;
  words: string;
}

/** One line an action, one a thing done again; lines of the same words at the same step are the same. */
function linesOf(drill: Drill): Line[] {
  return drill.elements.flatMap((element) => {
    const own = element.text ? [{ key: element.id, words: element.text }] : [];
    const actions = element.actions
      .filter((action) => !action.inherited)
      .map((action) => ({ key: action.id, words: `${partName(action.part).toLowerCase()}: ${action.text}` }));
    return [...own, ...actions].map((line) => ({
      key: `${line.key} ${line.words}`,
      number: element.number,
      words: line.words,
    }));
  });
}

export function WhatFollows({
  crux,
  readings,
}: {
  crux: RecordOf<"cruxes">;
  readings: readonly RecordOf<"readings">[];
}) {
  const here = exercise.value?.id;
  if (here === undefined || readings.length < 2) return null;
  const under = readings.map((reading) => ({
    reading,
    lines: linesOf(compileDrill(rowsNow.value, here, { choice: [{ crux: crux.id, reading: reading.id }] })),
  }));
  const everywhere = (line: Line) => under.every(({ lines }) => lines.some((other) => other.key === line.key));
  const differing = under.map(({ reading, lines }) => ({ reading, lines: lines.filter((line) => !everywhere(line)) }));
  return (
    <section class="follows" aria-label="What follows">
      <h3>What follows</h3>
      {differing.every(({ lines }) => lines.length === 0) ? (
        <p class="meta">The drill is the same under each reading so far. Give each its values, or steps of its own.</p>
      ) : (
        <div class="readings">
          {differing.map(({ reading, lines }) => (
            <div key={reading.id}>
              <p class="label">{reading.title}</p>
              {lines.length === 0 && <p class="meta">nothing of its own</p>}
              {lines.map((line) => (
                <p key={line.key} class="follow-line">
                  <b class="ref">{line.number ?? "–"}</b> {line.words}
                </p>
              ))}
            </div>
          ))}
        </div>
      )}
    </section>
  );
}
