/** client/decide/crux-table.tsx - the cruxes in the order of the text, each with its readings. Arrows go from reading to reading,
 *  over all cruxes; Enter or the space bar picks. */
import type { WeighedCrux } from "../../shared/ride/puzzle/index.ts";
import { follow } from "../state/route.ts";
import { one } from "../state/rows.ts";
import { answered, laid } from "./answers.ts";
import { CruxEntry } from "./crux-entry.tsx";

export function CruxTable({ byExercise }: { byExercise: boolean }) {
  const now = laid.value;
  if (now === null) return null;
  const apart = new Set(answered.value?.apparatus.map(({ crux }) => crux));
  const cruxes = now.cruxes.filter(({ id }) => !apart.has(id));
  if (cruxes.length === 0) return <NoCrux some={apart.size > 0} />;
  return (
    <section class="cruxes" aria-label="Cruxes" onKeyDown={moveByArrows}>
      {!byExercise && <h2>Cruxes</h2>}
      {groupsOf(cruxes, byExercise).map(({ exercise, list }) => (
        <div key={exercise ?? ""} class="of-exercise">
          {byExercise && <h2>{exercise === null ? "Of the whole work" : one("exercises", exercise)?.title}</h2>}
          {list.map((crux) => (
            <CruxEntry key={crux.id} crux={crux.id} />
          ))}
        </div>
      ))}
    </section>
  );
}

function groupsOf(
  cruxes: readonly WeighedCrux[],
  byExercise: boolean,
): { exercise: string | null; list: readonly WeighedCrux[] }[] {
  if (!byExercise) return [{ exercise: null, list: cruxes }];
  const groups = new Map<string | null, WeighedCrux[]>();
  for (const crux of cruxes) groups.set(crux.exercise, [...(groups.get(crux.exercise) ?? []), crux]);
  return [...groups].map(([exercise, list]) => ({ exercise, list }));
}

function NoCrux({ some }: { some: boolean }) {
  return (
    <p class="empty">
      {some
        ? "No crux here has an effect on the ride: there is nothing to count. "
        : "There is no crux here: nothing was found that can be understood in more than one way. "}
      A doubtful place is made a crux in{" "}
      <a href="/" onClick={follow}>
        Read
      </a>
      : select its words and say in what they are in doubt.
    </p>
  );
}

function moveByArrows(event: KeyboardEvent & { currentTarget: HTMLElement }): void {
  const here = document.activeElement;
  if (!(here instanceof HTMLElement) || !here.matches(".pick")) return;
  const stops = [...event.currentTarget.querySelectorAll<HTMLElement>(".pick")];
  const at = stops.indexOf(here);
  const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: stops.length - 1 }[event.key];
  if (to === undefined) return;
  event.preventDefault();
  stops[Math.min(Math.max(0, to), stops.length - 1)]?.focus();
}
