/** client/decide/why-not.tsx - the clash that was asked for: what cannot stand together, each member as words of the passage, a
 *  reading or a rule, what must give, and the picture without the weakest rule. */
import type { ToldMember } from "../../shared/ride/puzzle/index.ts";
import { follow } from "../state/route.ts";
import { asked, openExercises, why } from "./answers.ts";
import { openInRead, openInRide, passageOf, passageOfCitations } from "./goto.ts";
import { Quoted } from "./quoted.tsx";
import { basisOf, elementOf, ruleSentence, stageWords, weakestFirst } from "./stage-words.ts";
import { type LeftOut, leaveOut, picks } from "./wish.ts";

export function WhyNotPart() {
  const told = why.value;
  if (told === null) return <p class="meta inset">Looking for what stands in the way…</p>;
  if (told.is === "failed") return <p class="notice">{told.sentence}</p>;
  if (told.is === "dropped") return null;
  const { clashes, complete, shortest, mustGive, smallest, sentence } = told.value;
  const rules = weakestFirst(
    clashes
      .flat()
      .flatMap(({ member }): LeftOut[] => (member.is === "rule" ? [{ stage: member.stage, rule: member.rule }] : [])),
  );
  const [weakest] = rules;
  return (
    <section class="inset why-not" aria-label="Why not">
      {clashes.length === 0 && <p>{sentence}</p>}
      {clashes.map((clash, index) => (
        <div key={index} class="clash">
          <p>
            {clashLead(clashes.length, index)}
            {index === 0 && shortest && clashes.length > 1 && <span class="meta"> None is shorter.</span>}
          </p>
          <ul>
            {clash.map((member) => (
              <Member key={JSON.stringify(member.member)} told={member} />
            ))}
          </ul>
        </div>
      ))}
      {clashes.length > 0 && !complete && <p class="meta">There may be other reasons besides.</p>}
      {mustGive && mustGive.length > 0 && (
        <p>
          What must give{smallest ? "" : " (perhaps less would do)"}:{" "}
          {mustGive.map(({ words }) => words).join("; and ")}.
        </p>
      )}
      {weakest && (
        <p>
          <button type="button" onClick={() => leaveOut(weakest)}>
            Show it without the weakest rule
          </button>{" "}
          <span class="meta">
            {ruleSentence(weakest.rule)} ({basisOf(weakest.rule)}), at {stageWords(weakest.stage)}
          </span>
        </p>
      )}
    </section>
  );
}

function clashLead(many: number, index: number): string {
  if (many === 1) return "These cannot all stand; any of them given up, the rest can:";
  return index === 0 ? "These cannot all stand; any of them given up, the rest can:" : "Nor can these:";
}

function Member({ told }: { told: ToldMember }) {
  const { member, words, quote, element, crux } = told;
  const passage = passageOfCitations(quote);
  const thing = crux
    ? ({ kind: "cruxes", id: crux } as const)
    : element
      ? ({ kind: "elements", id: element } as const)
      : null;
  const place = passage ?? (thing ? passageOf(thing) : null);
  const exercise = "stage" in member ? (elementOf(member.stage)?.exercise ?? openExercises.value[0]) : null;
  return (
    <li>
      <span>{member.is === "rule" ? `${ruleSentence(member.rule)} At ${stageWords(member.stage)}.` : words}</span>{" "}
      <Quoted citations={quote} brief />
      <span class="says">
        {place && thing && (
          <a
            href={`/read/${place}`}
            class="quiet-link"
            onClick={(event) => (plain(event) ? void openInRead(thing, place) : follow(event))}
          >
            in Read
          </a>
        )}
        {exercise && element && (
          <a
            href={`/ride/${exercise}`}
            class="quiet-link"
            onClick={(event) =>
              plain(event)
                ? openInRide(exercise, [...picks.value, ...(asked.value?.target ? [asked.value.target] : [])], element)
                : follow(event)
            }
          >
            in Ride
          </a>
        )}
        {member.is === "rule" && (
          <button type="button" class="quiet" onClick={() => leaveOut({ stage: member.stage, rule: member.rule })}>
            without this rule
          </button>
        )}
      </span>
    </li>
  );
}

/** Whether the click is for this window; then it goes no further. */
function plain(event: MouseEvent): boolean {
  if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return false;
  event.preventDefault();
  return true;
}
