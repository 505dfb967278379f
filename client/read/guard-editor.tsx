/** client/read/guard-editor.tsx - conditions: under which readings, and on horseback or on foot, something is there. */
import { useSignal } from "@preact/signals";
import type { Condition, Guard, ReadingCondition } from "../../schema/guard.ts";
import { all, one, ranked } from "../state/rows.ts";
import { short } from "./row-names.ts";

/** "only under “the other hand” or “the other side” of † gives it to the other". */
export function conditionWords(condition: Condition): string {
  switch (condition.is) {
    case "reading": {
      const titles = condition.readings.map((id) => `“${one("readings", id)?.title ?? "no longer there"}”`);
      return `${titles.join(" or ")} of † ${short(one("cruxes", condition.crux)?.title ?? "", 40)}`;
    }
    case "way":
      return condition.way;
    case "variant":
      return condition.variants.map((id) => one("variants", id)?.name ?? "a version no longer there").join(" or ");
  }
}

/** The conditions with one more reading: beside those of the same crux, any of which will do. */
function withReading<C extends Condition>(list: readonly C[], crux: string, reading: string): (C | ReadingCondition)[] {
  const found = list.some((condition) => condition.is === "reading" && condition.crux === crux);
  if (!found) return [...list, { is: "reading", crux, readings: [reading] }];
  return list.map((condition) =>
    condition.is === "reading" && condition.crux === crux && !condition.readings.includes(reading)
      ? { ...condition, readings: [...condition.readings, reading] }
      : condition,
  );
}

/** A list of conditions on readings, all of which must hold. `lead` stands before it: "only under". */
export function ReadingConditions<C extends Condition>({
  list,
  lead,
  add,
  without = null,
  closed = false,
  store,
}: {
  list: readonly C[];
  lead: string;
  /** The word that offers another reading. */
  add: string;
  /** A crux whose own readings are not offered. */
  without?: string | null;
  /** Whether adding is put away for now. */
  closed?: boolean;
  store: (list: (C | ReadingCondition)[], why: string) => void;
}) {
  const cruxes = all("cruxes").filter((crux) => crux.id !== without);
  return (
    <div class="conditions">
      {list.map((condition, index) => (
        <p key={index}>
          <span class="label">{index === 0 ? lead : "and"}</span> {conditionWords(condition)}{" "}
          <button
            type="button"
            class="quiet"
            aria-label={`take this condition away: ${lead} ${conditionWords(condition)}`}
            onClick={() =>
              store(
                list.filter((_, other) => other !== index),
                `no longer ${lead} ${conditionWords(condition)}`,
              )
            }
          >
            take this condition away
          </button>
        </p>
      ))}
      {!closed && cruxes.length > 0 && (
        <select
          aria-label={add}
          value=""
          onChange={(event) => {
            const reading = one("readings", event.currentTarget.value);
            event.currentTarget.value = "";
            if (reading) store(withReading(list, reading.crux, reading.id), `${lead} “${reading.title}”`);
          }}
        >
          <option value="">{add}</option>
          {cruxes.map((crux) => (
            <optgroup key={crux.id} label={`† ${short(crux.title, 40)}`}>
              {ranked("readings")
                .filter((reading) => reading.crux === crux.id)
                .map((reading) => (
                  <option key={reading.id} value={reading.id}>
                    {reading.title}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
      )}
    </div>
  );
}

/** A whole guard: readings, the way it is done, and versions of the day. What can be added shows when it is asked for. */
export function GuardEditor({ guard, store }: { guard: Guard; store: (guard: Guard, why: string) => void }) {
  const changing = useSignal(guard.length === 0);
  const way = guard.find((condition) => condition.is === "way");
  const others = guard.filter((condition) => condition.is !== "way");
  return (
    <div class="guard">
      <ReadingConditions
        list={others}
        lead="only under"
        add="only under the reading…"
        closed={!changing.value}
        store={(list, why) => store(way ? [...list, way] : list, why)}
      />
      {!changing.value && way && <span>only {way.way}</span>}
      {changing.value ? (
        <select
          aria-label="Mounted or on foot"
          value={way?.way ?? "both"}
          onChange={(event) => {
            const chosen = event.currentTarget.value;
            const next: Guard =
              chosen === "mounted" || chosen === "on foot" ? [...others, { is: "way", way: chosen }] : others;
            store(next, chosen === "both" ? "mounted and on foot" : `only ${chosen}`);
          }}
        >
          <option value="both">mounted and on foot</option>
          <option value="mounted">only mounted</option>
          <option value="on foot">only on foot</option>
        </select>
      ) : (
        <button type="button" class="quiet" onClick={() => (changing.value = true)}>
          only under more…
        </button>
      )}
    </div>
  );
}

/** "only under “the other hand” of †…, only mounted"; empty for a guard that always holds. */
export function guardWords(guard: Guard): string {
  return guard
    .map((condition) => (condition.is === "way" ? `only ${condition.way}` : `only under ${conditionWords(condition)}`))
    .join(", ");
}
