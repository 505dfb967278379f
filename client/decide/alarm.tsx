/** client/decide/alarm.tsx - a dead adopted reading, told wherever it is used, with the way to its reasons. */
import { useEffect } from "preact/hooks";
import { openExercise, openExerciseId } from "../state/exercise.ts";
import { exercise } from "../state/passage.ts";
import { follow, route } from "../state/route.ts";
import { alarms } from "./alarms.ts";

/** Of one crux; nothing while nothing is the matter with it. */
export function Alarm({ crux }: { crux: string }) {
  return <Told list={alarms.value.filter((alarm) => alarm.crux === crux)} />;
}

/** Of all that lies open. */
export function Alarms() {
  return <Told list={alarms.value} />;
}

/** Of an exercise whose rows this window may not have yet: they are fetched. */
export function AlarmsOf({ exercise: id }: { exercise: string }) {
  const open = exercise.value?.id === id || openExerciseId.value === id;
  useEffect(() => {
    if (!open) void openExercise(id);
  }, [id, open]);
  return open ? <Alarms /> : null;
}

function Told({ list }: { list: readonly { sentence: string }[] }) {
  const here = exercise.value?.id;
  if (list.length === 0) return null;
  return (
    <div class="alarm" role="status">
      {list.map(({ sentence }) => (
        <p key={sentence} class="notice">
          {sentence}{" "}
          {here && route.value.room !== "decide" && (
            <a href={`/decide/${here}`} onClick={follow}>
              See why in Decide
            </a>
          )}
        </p>
      ))}
    </div>
  );
}
