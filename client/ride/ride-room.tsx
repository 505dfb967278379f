/** client/ride/ride-room.tsx - the Ride room: the plan with its riders at the left, the words and what stands in the way
 *  at the right, the lanes below; then who else rides, what was supplied, and the rules. */
import { useEffect } from "preact/hooks";
import { CAUTION } from "../../shared/drill/caution.ts";
import type { Ridden } from "../../shared/ride/ridden.ts";
import { Alarms } from "../decide/alarm.tsx";
import { listedWorks } from "../read/contents-order.ts";
import { HandsFigure } from "../read/hands-figure.tsx";
import { exerciseRefusal, openExercise, openExerciseId } from "../state/exercise.ts";
import { contents, loadContents } from "../state/passage.ts";
import { follow, go } from "../state/route.ts";
import { Controls, NowLine, SpokenStep } from "./controls.tsx";
import { Findings } from "./findings.tsx";
import { Lanes, LanesNow } from "./lanes.tsx";
import { figure, onFoot } from "./moment.ts";
import { Plan } from "./plan.tsx";
import { goTo, goToStage, pause } from "./playing.ts";
import { HowRidden, Readings, ShownInstead, ToReadings, TwoTogether, WhichExercise } from "./ride-options.tsx";
import { RidersList } from "./riders-list.tsx";
import { ridden } from "./riding.ts";
import { RulesTable } from "./rules-table.tsx";
import { keepShownReadings } from "./shown-readings.ts";
import { Speeds } from "./speeds.tsx";
import { SuppliedList } from "./supplied-list.tsx";
import { wishAsAsked } from "./wish.ts";
import { WordsNow } from "./words-now.tsx";

export function RideRoom({ exercise }: { exercise: string | null }) {
  useEffect(() => {
    void loadContents();
    const end = keepShownReadings();
    return () => {
      end();
      pause();
    };
  }, []);
  const first =
    listedWorks.value.flatMap(({ groups }) => groups.filter(({ isExercise }) => isExercise))[0]?.key ?? null;
  useEffect(() => {
    if (exercise === null) {
      if (first !== null) go(`/ride/${first}`, true);
      return;
    }
    const element = wishAsAsked();
    goTo(0);
    void openExercise(exercise).then(() => {
      const stages = ridden.value?.stages ?? [];
      const index = stages.findIndex((stage) => stage.element === element || stage.source === element);
      if (element !== null && index >= 0) goToStage(index);
    });
  }, [exercise, first]);

  if (exercise === null) return <NoExercise loaded={contents.value !== null} />;
  const ride = openExerciseId.value === exercise ? ridden.value : null;
  return (
    <main class="ride" id="main">
      <header class="ride-head">
        <h1 class="spoken">Ride{ride ? `: ${ride.title}` : ""}</h1>
        <WhichExercise exercise={exercise} />
        {ride && <HowRidden />}
        {ride && <ToReadings />}
        {ride?.treated && <p class="meta treated">{ride.treated}</p>}
      </header>
      {exerciseRefusal.value && (
        <p class="notice" role="alert">
          {exerciseRefusal.value.sentence}
        </p>
      )}
      {ride && ride.stages.length > 0 && <Riding ride={ride} exercise={exercise} />}
      {ride && ride.stages.length === 0 && <NothingTreated />}
    </main>
  );
}

function Riding({ ride, exercise }: { ride: Ridden; exercise: string }) {
  return (
    <>
      <section class="on-the-ground" aria-label="On the ground">
        <div class="plan-and-hands">
          <Plan ride={ride} />
          <div class="beside-the-plan">
            <NowLine />
            <HandsNow />
          </div>
        </div>
        <Controls ride={ride} />
        {ride.groundSupplied && (
          <p class="meta">
            No ground is drawn for this exercise. Shown here: {ride.groundName}. Its own can be drawn in Read.
          </p>
        )}
      </section>
      <div class="beside-the-ground">
        <WordsNow exercise={exercise} />
        <Alarms />
        <ShownInstead />
        <Findings ride={ride} />
        <Readings />
        <p class="care">{CAUTION}</p>
      </div>
      <TwoTogether />
      <Lanes ride={ride} />
      <LanesNow ride={ride} />
      <div class="ride-more">
        <RidersList />
        <Speeds ride={ride} />
        <SuppliedList ride={ride} />
        <RulesTable />
      </div>
      <SpokenStep />
    </>
  );
}

/** By itself, since it changes more often than anything about it. */
function HandsNow() {
  const hands = figure.value;
  if (hands === null) return null;
  return (
    <div class="hands-now">
      <HandsFigure figure={hands} onFoot={onFoot.value} />
      <p class="meta">{hands.sentence.replace(/^Now: /, "")}</p>
    </div>
  );
}

function NoExercise({ loaded }: { loaded: boolean }) {
  return (
    <main class="room" id="main">
      <h1>Ride</h1>
      {loaded && (
        <p class="empty">
          There is no exercise to ride yet. Open a passage in{" "}
          <a href="/" onClick={follow}>
            Read
          </a>{" "}
          and start one there: as soon as it has a step, it can be watched here.
        </p>
      )}
    </main>
  );
}

function NothingTreated() {
  return (
    <p class="empty">
      Nothing of this exercise is treated yet. Mark its first step in{" "}
      <a href="/" onClick={follow}>
        Read
      </a>
      ; it can be ridden from then on, and what is missing is said.
    </p>
  );
}
