/** client/decide/decide-room.tsx - the Decide room: which readings hold together, and what to settle next, of one exercise or
 *  of a whole work; and the page of a term. */
import { useEffect } from "preact/hooks";
import { listedWorks } from "../read/contents-order.ts";
import { exerciseRefusal, openExercise, openWork } from "../state/exercise.ts";
import { contents, loadContents } from "../state/passage.ts";
import { follow, go } from "../state/route.ts";
import { answered, failure, keepCounting, openExercises } from "./answers.ts";
import { Apparatus, Problems } from "./apparatus-list.tsx";
import { CountHead } from "./count-head.tsx";
import { CruxTable } from "./crux-table.tsx";
import { NextList } from "./next-list.tsx";
import { QuestionsList } from "./questions-list.tsx";
import { TermPage } from "./term-page.tsx";
import { TermsList } from "./terms-list.tsx";
import { wishNothing } from "./wish.ts";

export function DecideRoom({ of, id }: { of: "exercise" | "work" | "term"; id: string | null }) {
  useEffect(() => {
    void loadContents();
  }, []);
  return of === "term" ? <TermPage id={id} /> : <WhatHolds of={of} id={id} />;
}

function WhatHolds({ of, id }: { of: "exercise" | "work"; id: string | null }) {
  const works = listedWorks.value;
  const first = works.flatMap(({ groups }) => groups.filter(({ isExercise }) => isExercise))[0]?.key ?? null;
  useEffect(() => {
    if (id === null) {
      if (of === "work" && works[0]) go(`/decide/work/${works[0].work.id}`, true);
      else if (first !== null) go(`/decide/${first}`, true);
      return;
    }
    wishNothing();
    void (of === "work" ? openWork(id) : openExercise(id));
    return keepCounting();
  }, [of, id, first]);
  if (id === null) return <NoExercise loaded={contents.value !== null} />;
  const ready = openExercises.value.length > 0;
  return (
    <main class="decide" id="main">
      <div class="decide-main">
        <header class="decide-head">
          <h1 class="spoken">Decide</h1>
          <WhichScope of={of} id={id} />
          {ready && <CountHead />}
        </header>
        {exerciseRefusal.value && (
          <p class="notice" role="alert">
            {exerciseRefusal.value.sentence}
          </p>
        )}
        {failure.value && (
          <p class="notice" role="alert">
            {failure.value}
          </p>
        )}
        {ready && answered.value && <Problems />}
        {ready && <CruxTable byExercise={of === "work"} />}
        {ready && answered.value && <Apparatus />}
      </div>
      {ready && (
        <div class="decide-side">
          <NextList />
          <QuestionsList />
          <TermsList />
        </div>
      )}
    </main>
  );
}

function WhichScope({ of, id }: { of: "exercise" | "work"; id: string }) {
  return (
    <label>
      <span class="label">Decide in</span>{" "}
      <select
        class="scope-select"
        value={`${of === "work" ? "work/" : ""}${id}`}
        onChange={(event) => go(`/decide/${event.currentTarget.value}`)}
      >
        {listedWorks.value.map(({ work, groups }) => (
          <optgroup key={work.id} label={work.title}>
            {groups
              .filter(({ isExercise }) => isExercise)
              .map((group) => (
                <option key={group.key} value={group.key}>
                  {group.label && `${group.label}. `}
                  {group.title}
                </option>
              ))}
            <option value={`work/${work.id}`}>the whole work</option>
          </optgroup>
        ))}
      </select>
    </label>
  );
}

function NoExercise({ loaded }: { loaded: boolean }) {
  return (
    <main class="room" id="main">
      <h1>Decide</h1>
      {loaded && (
        <p class="empty">
          There is no exercise here yet. Open a passage in{" "}
          <a href="/" onClick={follow}>
            Read
          </a>{" "}
          and start one there: as soon as its words can be understood in more than one way, the ways are counted here.
        </p>
      )}
    </main>
  );
}
