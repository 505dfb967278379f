/** client/decide/crux-entry.tsx - one crux of the table: its words, its readings with their shares, and under them what a person
 *  does about it: decide, look into what was decided, go to its words. */
import { useSignal } from "@preact/signals";
import { LeaveFree } from "../read/leave-free.tsx";
import { ReadingStatus } from "../read/reading-status.tsx";
import { follow } from "../state/route.ts";
import { one, ranked } from "../state/rows.ts";
import { Alarm } from "./alarm.tsx";
import { shares } from "./answers.ts";
import { wholeOf } from "./count-words.ts";
import { Decisions } from "./decisions.tsx";
import { openInRead, passageOf } from "./goto.ts";
import { Quoted } from "./quoted.tsx";
import { lastFocused, ReadingRow } from "./reading-row.tsx";
import { isPicked } from "./wish.ts";
import { citationsFor } from "./words-of.ts";

export function CruxEntry({ crux: id }: { crux: string }) {
  const more = useSignal<"decide" | "history" | null>(null);
  const crux = one("cruxes", id);
  if (crux === null) return null;
  const readings = ranked("readings").filter((reading) => reading.crux === id);
  const told = readings.flatMap((reading) => shares.value.get(reading.id) ?? []);
  const whole = wholeOf(told);
  const passage = passageOf({ kind: "cruxes", id });
  const stop =
    readings.find((reading) => reading.id === lastFocused.value) ??
    readings.find((reading) => isPicked(id, reading.id)) ??
    readings[0];
  const toggle = (what: "decide" | "history") => {
    more.value = more.value === what ? null : what;
  };
  return (
    <article class="crux-entry" aria-labelledby={`crux-${id}`} id={`entry-${id}`}>
      <header>
        <h3 id={`crux-${id}`}>
          <span class="ref" aria-hidden="true">
            †
          </span>{" "}
          {crux.title}
        </h3>
        <p class="meta crux-kind">
          {crux.is}
          {crux.leftFree && ", left free"}
          {crux.arisesWhen.length > 0 && <ArisesOnly crux={id} />}
        </p>
      </header>
      <p class="crux-words">
        <Quoted citations={citationsFor("cruxes", id)} />
      </p>
      <Alarm crux={id} />
      <ul class="reading-rows">
        {readings.map((reading) => (
          <ReadingRow
            key={reading.id}
            crux={crux}
            reading={reading}
            share={shares.value.get(reading.id) ?? null}
            whole={whole}
            stop={reading.id === stop?.id}
          />
        ))}
      </ul>
      {readings.length === 0 && <p class="meta">No reading is written down yet.</p>}
      <p class="says">
        <button type="button" class="quiet" aria-expanded={more.value === "decide"} onClick={() => toggle("decide")}>
          decide…
        </button>
        <button type="button" class="quiet" aria-expanded={more.value === "history"} onClick={() => toggle("history")}>
          what was decided
        </button>
        {passage && (
          <a
            class="quiet-link"
            href={`/read/${passage}`}
            onClick={(event) => {
              if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return follow(event);
              event.preventDefault();
              void openInRead({ kind: "cruxes", id }, passage, true);
            }}
          >
            open in Read
          </a>
        )}
      </p>
      {more.value === "decide" && (
        <div class="inset deciding">
          {readings.map((reading) => (
            <div key={reading.id} class="to-decide">
              <p class={reading.status.is === "ruled out" ? "out" : ""}>{reading.title}</p>
              <ReadingStatus crux={crux} reading={reading} />
            </div>
          ))}
          <LeaveFree crux={crux} readings={readings} />
        </div>
      )}
      {more.value === "history" && <Decisions crux={id} />}
    </article>
  );
}

function ArisesOnly({ crux }: { crux: string }) {
  const conditions = one("cruxes", crux)?.arisesWhen ?? [];
  const words = conditions.map(({ readings }) =>
    readings.map((id) => `“${one("readings", id)?.title ?? "a reading no longer there"}”`).join(" or "),
  );
  return <>, arises only under {words.join(" and ")}</>;
}
