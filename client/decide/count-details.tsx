/** client/decide/count-details.tsx - behind the sentence of the count: one way that holds with what it supplies, what breaks last where
 *  nothing holds, and how much had to be held in mind. */
import { one } from "../state/rows.ts";
import { answered, openExercises } from "./answers.ts";
import { grouped, leftOutSentence, ways } from "./count-words.ts";
import { openInRide } from "./goto.ts";
import { ruleSentence, stageWords } from "./stage-words.ts";

/** As many of the rules that broke last are listed. */
const MOST_BROKEN = 4;

export function CountDetails() {
  const now = answered.value;
  if (now === null) return null;
  const { peaks, exact } = now;
  return (
    <details class="fold count-details">
      <summary>{now.witness ? "one way that holds, and how it was counted" : "how it was counted"}</summary>
      <Witness />
      <Weighed />
      <p class="meta">
        {exact ? "Every way was counted." : now.why} {leftOutSentence(now)}{" "}
        {peaks.inPlay > 0 &&
          `At most ${grouped(String(peaks.inPlay))} ${peaks.inPlay === 1 ? "crux was" : "cruxes were"} in play at once. `}
        {peaks.states > 0 &&
          `At most ${grouped(String(peaks.states))} ${peaks.states === 1 ? "state" : "states"} of hands, reins and horse ${peaks.states === 1 ? "was" : "were"} kept apart.`}
      </p>
    </details>
  );
}

function Witness() {
  const witness = answered.value?.witness;
  const [exercise, another] = openExercises.value;
  if (!witness) return null;
  return (
    <div class="witness">
      <ul>
        {witness.readings.map(({ crux, reading }) => (
          <li key={crux}>
            <span class="ref" aria-hidden="true">
              †
            </span>{" "}
            <span class="soft">{one("cruxes", crux)?.title}:</span> {one("readings", reading)?.title}
          </li>
        ))}
        {witness.supplied.map(({ stage, words }) => (
          <li key={`${stage} ${words}`}>
            <span class="w-supplied">{words}</span> <span class="meta">supplied at {stageWords(stage)}</span>
          </li>
        ))}
      </ul>
      {exercise && another === undefined && (
        <button type="button" onClick={() => openInRide(exercise, witness.readings, null)}>
          Ride it so
        </button>
      )}
    </div>
  );
}

/** The same count with each way weighed by how sure the readings are held; nothing where nobody said. */
function Weighed() {
  const weighted = answered.value?.weighted ?? null;
  if (weighted === null) return null;
  const told = weighted.shares.flatMap(({ crux, reading, share }) => {
    const title = one("readings", reading)?.title;
    return share === null || title === undefined ? [] : { key: `${crux} ${reading}`, crux, title, share };
  });
  return (
    <div class="weighed">
      <p>
        Weighed by how sure the readings are said to be, what can be ridden has {weighted.holding} parts of{" "}
        {weighted.all}.
      </p>
      <ul>
        {told.map(({ key, crux, title, share }) => (
          <li key={key}>
            <span class="soft">{one("cruxes", crux)?.title}:</span> {title} <span class="meta">{share.toFixed(3)}</span>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Where nothing holds. */
export function BrokenLast() {
  const all = [...(answered.value?.broken ?? [])].sort(
    (a, b) => b.assignments.length - a.assignments.length || (b.assignments > a.assignments ? 1 : -1),
  );
  const broken = all.slice(0, MOST_BROKEN);
  if (broken.length === 0) return null;
  return (
    <ul class="broken-last">
      {broken.map(({ stage, rule, assignments }) => (
        <li key={`${stage} ${rule}`}>
          At {stageWords(stage)}: Broken: {ruleSentence(rule)}{" "}
          <span class="meta">
            {ways(assignments)} {assignments === "1" ? "breaks" : "break"} it there.
          </span>
        </li>
      ))}
      {all.length > broken.length && <li class="meta">and more</li>}
    </ul>
  );
}
