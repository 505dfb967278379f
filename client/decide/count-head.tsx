/** client/decide/count-head.tsx - what holds, in one sentence, and under what: what is picked, what is adopted, the rules left
 *  out. */
import { one } from "../state/rows.ts";
import { answered, askWhy, counting, countOnceMore, isAsked, noMoreWhy, stopCounting, stopped } from "./answers.ts";
import { progress } from "./count-desk.ts";
import { BrokenLast, CountDetails } from "./count-details.tsx";
import { countSentence } from "./count-words.ts";
import { ruleSentence, stageWords } from "./stage-words.ts";
import { WhyNotPart } from "./why-not.tsx";
import { asAdopted, countAgain, leftOut, letAllGo, letGo, picks, way } from "./wish.ts";

export function CountHead() {
  const now = answered.value;
  return (
    <div class="count-head">
      <p class="count" aria-live="polite">
        {now ? countSentence(now) : counting.value ? "Counting…" : ""}
      </p>
      {now && (
        <p class="meta">
          {now.treated && `${capital(now.treated)} `}
          {!now.exact && "These are bounds, not a count. "}
          “Surely” means: however one does what the text leaves unsaid. A share is a proportion of combinations, not a
          probability.
        </p>
      )}
      <Counting />
      <UnderWhat />
      <CountDetails />
      {now && now.all !== "0" && now.holding === "0" && now.exact && <NothingHolds />}
    </div>
  );
}

function NothingHolds() {
  const open = isAsked(null);
  return (
    <div>
      <BrokenLast />
      <button type="button" class="chief" aria-expanded={open} onClick={() => (open ? noMoreWhy() : askWhy(null))}>
        {open ? "Put the reason away" : "Why does nothing hold?"}
      </button>
      {open && <WhyNotPart />}
    </div>
  );
}

/** A count that takes its time says how far it is, and can be stopped. */
function Counting() {
  const told = progress.value;
  if (stopped.value) {
    return (
      <p class="meta">
        Stopped{answered.value ? ": what is shown is of before" : ""}.{" "}
        <button type="button" class="quiet" onClick={countOnceMore}>
          count on
        </button>
      </p>
    );
  }
  if (told === null || !counting.value) return null;
  return (
    <p class="meta row" role="status">
      Counting: at stage {told.stage} of {told.of}.{" "}
      <progress value={told.stage} max={told.of} aria-label="How far the count is" />
      <button type="button" class="quiet" onClick={stopCounting}>
        stop
      </button>
    </p>
  );
}

function UnderWhat() {
  const [list, rules] = [picks.value, leftOut.value];
  return (
    <div class="under-what">
      <div class="row">
        <label>
          <input
            type="checkbox"
            checked={asAdopted.value}
            onChange={(event) => (asAdopted.value = event.currentTarget.checked)}
          />{" "}
          as adopted
        </label>
        <fieldset class="ways">
          <legend class="spoken">Mounted or on foot</legend>
          {(["mounted", "on foot"] as const).map((option) => (
            <label key={option}>
              <input
                type="radio"
                name="decide-way"
                checked={way.value === option}
                onChange={() => (way.value = option)}
              />{" "}
              {option}
            </label>
          ))}
        </fieldset>
      </div>
      {list.length > 0 && (
        <p class="picked-list">
          <span class="label">If we follow:</span>{" "}
          {list.map(({ crux, reading }) => (
            <button
              key={crux}
              type="button"
              class="picked-word"
              aria-label={`let go of “${titleOf(reading)}”`}
              onClick={() => letGo(crux)}
            >
              {titleOf(reading)} <span aria-hidden="true">×</span>
            </button>
          ))}
          <button type="button" class="quiet" onClick={letAllGo}>
            let all go
          </button>
        </p>
      )}
      {rules.map((rule) => (
        <p key={`${rule.stage} ${rule.rule}`} class="notice">
          Shown without a rule: {ruleSentence(rule.rule)} It is not counted at {stageWords(rule.stage)}.{" "}
          <button type="button" class="quiet" onClick={() => countAgain(rule)}>
            count it again
          </button>
        </p>
      ))}
    </div>
  );
}

const titleOf = (reading: string): string => one("readings", reading)?.title ?? "a reading no longer there";
const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
