/** client/ride/rules-table.tsx - every rule a ride is held against, and how hard each is taken in this work. A severity that
 *  is set is stored for the work; the usual one is stored by nobody. */
import { useSignal } from "@preact/signals";
import { useLayoutEffect, useRef } from "preact/hooks";
import type { RecordOf } from "../../schema/record.ts";
import { ruleTable, type SetRule } from "../../shared/ride/rules/table.ts";
import { openExerciseId } from "../state/exercise.ts";
import { all, one } from "../state/rows.ts";
import { create, newId, remove, set, write } from "../state/write.ts";

type Severity = RecordOf<"rules">["severity"];
const SEVERITIES: readonly { value: Severity; words: string }[] = [
  { value: "bars", words: "bars" },
  { value: "warns", words: "warns" },
  { value: "notes", words: "is noted" },
  { value: "off", words: "is not asked" },
];

export function RulesTable() {
  const shown = useSignal(false);
  const section = useRef<HTMLElement>(null);
  // The table takes the whole breadth, below what stood beside it: one is taken along.
  useLayoutEffect(() => {
    if (shown.value) section.current?.scrollIntoView({ block: "start" });
  }, [shown.value]);
  const work = one("exercises", openExerciseId.value)?.work;
  if (work === undefined) return null;
  const rules = ruleTable(all("rules").filter((rule) => rule.work === work));
  const changed = rules.filter(({ row, usual, severity }) => row !== null && severity !== usual).length;
  return (
    <section class="rules-table" aria-label="The rules" ref={section}>
      <h2>The rules</h2>
      <p>
        {rules.length} rules are asked of every ride of this work
        {changed > 0 ? `; ${changed === 1 ? "one is" : `${changed} are`} taken otherwise than usual` : ""}.{" "}
        <button type="button" class="quiet" aria-expanded={shown.value} onClick={() => (shown.value = !shown.value)}>
          {shown.value ? "put them away" : "see and set them"}
        </button>
      </p>
      {shown.value && (
        <table>
          <thead>
            <tr>
              <th scope="col">Rule</th>
              <th scope="col">Basis</th>
              <th scope="col">A breach</th>
            </tr>
          </thead>
          <tbody>
            {rules.map((rule) => (
              <tr key={rule.code} class={rule.severity === "off" ? "off" : ""}>
                <td>
                  {rule.sentence} {rule.source && <span class="meta">{rule.source}</span>}
                  {rule.row && rule.checked && rule.row.sentence !== rule.sentence && (
                    <span class="meta">
                      {" "}
                      In this work: “{rule.row.sentence}” ({rule.row.basis}).
                    </span>
                  )}
                  {!rule.checked && <span class="meta">A rule of your own: no program checks it.</span>}
                </td>
                <td class="meta">{rule.basis}</td>
                <td>
                  <select
                    aria-label={`A breach of: ${rule.sentence}`}
                    value={rule.severity}
                    onChange={(event) => {
                      const chosen = SEVERITIES.find(({ value }) => value === event.currentTarget.value);
                      if (chosen) void take(work, rule, chosen);
                    }}
                  >
                    {SEVERITIES.map(({ value, words }) => (
                      <option key={value} value={value}>
                        {words}
                        {value === rule.usual ? " (usual)" : ""}
                      </option>
                    ))}
                  </select>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

/** Sets a rule for the work; back at the usual severity the row goes, unless it rests on something. */
function take(work: string, rule: SetRule, { value, words }: (typeof SEVERITIES)[number]): Promise<boolean> {
  const why = `A breach of “${rule.sentence}” ${words}`;
  if (rule.row !== null && value === rule.usual && rule.row.support.length === 0) {
    return write([remove("rules", rule.row.id)], why);
  }
  if (rule.row !== null) return write([set("rules", rule.row.id, { severity: value })], why);
  const { code, sentence, basis, reach } = rule;
  return write(
    [create("rules", { id: newId(), work, code, sentence, basis, support: [], severity: value, reach })],
    why,
  );
}
